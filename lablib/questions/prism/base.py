"""A question about writing a base direction in degrees, from words or from the half circle."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.base_reading import base_direction_deg
from lablib.optics.eye import EYES, Eye
from lablib.optics.prism import resultant
from lablib.questions.prism.kinds import BaseInDegrees
from lablib.questions.prism.terms import SIDEWAYS, UPRIGHT, WAYS
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution

_WORD, _EQUAL_PARTS, _HALF_CIRCLE = "word", "equal parts", "half circle"
_FORMS = (_WORD, _EQUAL_PARTS, _EQUAL_PARTS, _HALF_CIRCLE, _HALF_CIRCLE)
_HALF_TURN_DEG, _TURN_DEG = 180.0, 360.0
_EXCHANGED, _CLOCKWISE, _HALF_TURN = "eyes-exchanged", "clockwise", "half-turn"


@dataclass(frozen=True, slots=True, kw_only=True)
class BaseCase:
    """A base direction as it is told.

    eye: the eye it is for; form: how it is told.
    across, upright: "in" or "out", "up" or "down"; empty for the part that is not told.
    line_deg: degrees of the half circle [degrees]; 0 where it is told in words.
    """

    eye: Eye
    form: str
    across: str = ""
    upright: str = ""
    line_deg: float = 0.0

    @property
    def base_deg(self) -> float:
        """The base in the full circle, from 0 and below 360 [degrees]."""
        if self.form == _WORD:
            return base_direction_deg(self.across or self.upright, eye=self.eye)
        if self.form == _EQUAL_PARTS:
            inwards, upwards = WAYS[self.across][0], WAYS[self.upright][1]
            return resultant(eye=self.eye, in_prism_d=inwards, up_prism_d=upwards).base
        return self.line_deg + (_HALF_TURN_DEG if self.upright == "down" else 0.0)

    @property
    def words(self) -> str:
        """The direction as it is told."""
        if self.form == _WORD:
            return f"base {self.across or self.upright}"
        if self.form == _EQUAL_PARTS:
            return f"the same amount base {self.across} and base {self.upright}"
        return f"base {self.upright} at {self.line_deg:g} in the notation of the half circle"


class BaseInDegreesMaker(Maker[BaseCase]):
    """A base direction in degrees of the full circle."""

    name = "base-in-degrees"
    lesson = "06"
    skill = "base-direction"
    slips = (
        Slip(
            name=_EXCHANGED,
            step="the side the nose lies on",
            words="You took the nose to lie on the other side. Facing the wearer, in is to your right on the "
            "right eye, which is 0 degrees, and to your left on the left eye, which is 180.",
        ),
        Slip(
            name=_CLOCKWISE,
            step="the way the degrees run",
            words="You counted clockwise. Degrees run anticlockwise as you face the wearer: up is 90 and "
            "down is 270.",
        ),
        Slip(
            name=_HALF_TURN,
            step="the end of the line that up or down names",
            words="You are half a turn off. In the half circle the word says which end of the line is meant: "
            "up leaves the degrees as they are, down adds 180.",
        ),
    )

    def draw(self, draws: Draws) -> BaseCase:
        """Return a direction in one of three forms."""
        form, eye = draws.one_of(_FORMS), draws.one_of(EYES)
        across, upright = draws.one_of(SIDEWAYS), draws.one_of(UPRIGHT)
        if form == _WORD:
            sideways = draws.whole(3) > 0
            return BaseCase(
                eye=eye, form=form, across=across if sideways else "", upright="" if sideways else upright
            )
        if form == _EQUAL_PARTS:
            return BaseCase(eye=eye, form=form, across=across, upright=upright)
        # At 90 the nose does not matter; so near to 180 nobody would say up or down.
        line = draws.step(10.0, 80.0, 5.0) + draws.one_of((0.0, 90.0))
        return BaseCase(eye=eye, form=form, upright=upright, line_deg=line)

    def kind(self, case: BaseCase) -> BaseInDegrees:
        """Return the kind: whole degrees."""
        return BaseInDegrees(eye=case.eye)

    def slips_in(self, case: BaseCase) -> tuple[Slip, ...]:
        """Return the slips that lead somewhere else: half a turn only in the half circle."""
        kind, right = self.kind(case), self.answer(case)
        return tuple(
            slip
            for slip in self.slips
            if (slip.name != _HALF_TURN or case.form == _HALF_CIRCLE)
            and kind.apart(self.answer(case, {slip.name}), right)
        )

    def answer(self, case: BaseCase, slips: Set[str] = NONE) -> float:
        """Return the direction; each slip mirrors or turns it."""
        base = case.base_deg
        if _EXCHANGED in slips:
            base = _HALF_TURN_DEG - base
        if _CLOCKWISE in slips:
            base = -base
        if _HALF_TURN in slips:
            base += _HALF_TURN_DEG
        return base % _TURN_DEG

    def prompt(self, case: BaseCase) -> tuple[str, ...]:
        """Return the direction as it is told and what is asked."""
        return (
            f"An invented ticket for the {case.eye} eye asks for {case.words}.",
            "Where is that in degrees of the full circle? Give whole degrees, from 0 to 359.",
        )

    def solution(self, case: BaseCase) -> Solution:
        """Return how to count, and where it comes out."""
        sides = ("right", "left")[:: case.eye.nasal_sign]
        nose = f"For the {case.eye} eye in lies to your {sides[0]} and out to your {sides[1]}."
        told = {
            _WORD: nose if case.across else "Up and down are the same for both eyes.",
            _EQUAL_PARTS: f"{nose} Equal parts put the base half-way between the two words.",
            _HALF_CIRCLE: "In the half circle, degrees are those of an axis and are the same for both eyes. "
            "Up names the upper end of the line, down the lower one, 180 degrees further on.",
        }
        return Solution(
            words=(
                "Face the wearer. Count from your right, anticlockwise: right 0, up 90, left 180, down 270.",
                f"{told[case.form]} So it is {self.kind(case).written(self.answer(case))}.",
            )
        )

    def hints(self, case: BaseCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the lens as you see it facing the wearer, and mark the nose.",
            "Zero is to your right, and the degrees run anticlockwise.",
        )
