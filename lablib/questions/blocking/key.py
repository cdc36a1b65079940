"""Play at a worn block key in degrees of axis, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.grip_workings import key_working
from lablib.bench.key_play import play_deg
from lablib.optics.terms import distance_term, in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_ARM_STEP = "how far from the axis the key bears"
_ANGLE_STEP = "the angle that belongs to a sideways play"
_ACROSS = Slip(
    name="width-for-radius",
    step=_ARM_STEP,
    words="You put in the width across both keys. The block turns about its middle, so half of it is the "
    "arm.",
)
_TWICE = Slip(
    name="play-counted-twice",
    step=_ANGLE_STEP,
    words="You counted the play twice. It was given from one side to the other already.",
)
_TURNED_OVER = Slip(
    name="arm-over-play",
    step=_ANGLE_STEP,
    words="You took the angle whose tangent is arm over play. The play lies opposite the angle, so it goes "
    "on top.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyCase:
    """A worn key.

    play_mm: from one side to the other [mm]; across_mm: from the middle of one key to that of the other [mm].
    """

    play_mm: float
    across_mm: float


class KeyPlay(Maker[KeyCase]):
    """Say how far off the axis may be before anything slips."""

    name = "key-play"
    lesson = "10"
    skill = "worn-block-key"
    slips = (_ACROSS, _TWICE, _TURNED_OVER)

    def draw(self, draws: Draws) -> KeyCase:
        """Return a play and a block."""
        return KeyCase(play_mm=draws.step(0.1, 0.5, 0.02), across_mm=draws.step(8.0, 15.0, 0.5))

    def kind(self, case: KeyCase) -> NumberAnswer:
        """Return an angle to 0.1 degree."""
        return NumberAnswer(unit="degrees", tolerance=0.06, digits=1)

    def answer(self, case: KeyCase, slips: Set[str] = NONE) -> float:
        """Return the play in degrees, or what a slip makes of it."""
        radius = case.across_mm if _ACROSS.name in slips else case.across_mm / 2.0
        turned = play_deg(case.play_mm, key_radius_mm=radius)
        if _TURNED_OVER.name in slips:
            turned = 90.0 - turned
        return 2.0 * turned if _TWICE.name in slips else turned

    def prompt(self, case: KeyCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "The blocks of an invented bench have two keys, one on each side of the middle. One block is "
            "worn. In the chuck its keys move from one side of their slots to the other, and that play was "
            "measured at a key.",
            "By how much may the axis of a lens on this block be off before anything slips? Give it in "
            "degrees, to 0.1 degree.",
        )

    def given(self, case: KeyCase) -> tuple[Term, ...]:
        """Return play and width across the keys."""
        return (
            in_full("p", case.play_mm, "mm", meaning="play at a key, from one side to the other"),
            distance_term("w", case.across_mm, "width across both keys, middle to middle"),
        )

    def solution(self, case: KeyCase) -> Solution:
        """Return the arm and the angle."""
        _, across = self.given(case)
        arm = Working(
            what="arm of a key",
            symbol="r_k",
            formula="w / 2",
            terms=(across,),
            value=case.across_mm / 2.0,
            unit="mm",
        )
        turned = key_working(case.play_mm, key_radius_mm=case.across_mm / 2.0)
        return Solution(
            words=(
                "The block turns about its middle until its key meets the other side of the slot. Blocked "
                "on one side and cut on the other, the lens is off by the whole of it, though no joint has "
                "slipped.",
                "Such a block is not used: its lens shows a line that is off level, and the cause is "
                "sought in the grip.",
            ),
            workings=(arm, turned),
        )

    def hints(self, case: KeyCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the block from the front, with its middle and one key. About which point does it turn?",
            "The play stands square on the arm. Which function of the angle is play over arm?",
        )
