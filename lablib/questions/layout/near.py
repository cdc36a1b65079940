"""A question about near: which of two distances a pair for one purpose is made to."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.questions.layout.frames import draw_frame
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

_WHICH = "which of the two distances the pair is made to"
_SHARE = "sharing a distance between the eyes"


@dataclass(frozen=True, slots=True, kw_only=True)
class NearCase:
    """A wearer with both distances, and what the pair is for.

    frame: the frame of the picture; eye: the one asked about.
    far_mm, near_mm: from pupil to pupil, both eyes alike [mm].
    is_near: whether the pair is for reading alone.
    """

    frame: Frame
    eye: Eye
    far_mm: float
    near_mm: float
    is_near: bool


class NearDistance(Maker[NearCase]):
    """The distance to which a single vision pair for one purpose is made."""

    name = "near-distance"
    lesson = "05"
    skill = "near-distance"
    slips = (
        Slip(
            name="far-for-near",
            step=_WHICH,
            words="You took the far distance for a reading pair. Eyes turn in to read, and the optical "
            "centres follow them.",
        ),
        Slip(
            name="near-for-far",
            step=_WHICH,
            words="You took the near distance for a pair to look far with. Eyes that look far stand "
            "straight.",
        ),
        Slip(
            name="half-the-inset",
            step="how far each eye turns in",
            words="You let each eye turn in by half of its share. The difference of the two distances "
            "belongs to both eyes; each has half of it, not a quarter.",
        ),
        Slip(
            name="whole-inset-for-each",
            step="how far each eye turns in",
            words="You moved this one eye by the whole difference of the two distances. Both eyes turn in, "
            "each by half of it.",
        ),
        Slip(
            name="both-eyes-for-one",
            step=_SHARE,
            words="You gave the distance from pupil to pupil. One lens has its own distance, from the middle "
            "of the bridge.",
        ),
    )

    def draw(self, draws: Draws) -> NearCase:
        """Return a wearer whose eyes stand alike, and a pair for reading more often than one for far."""
        far = draws.step(58.0, 70.0, 1.0)
        return NearCase(
            frame=draw_frame(draws, (OutlineShape(),)),
            eye=draws.one_of(EYES),
            far_mm=far,
            near_mm=far - draws.step(3.0, 5.0, 1.0),
            is_near=draws.whole(3) > 0,
        )

    def kind(self, case: NearCase) -> NumberAnswer:
        """Return the kind: a monocular distance."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def slips_in(self, case: NearCase) -> tuple[Slip, ...]:
        """Return the slips that fit the pair's purpose."""
        wrong = (
            ("near-for-far",) if case.is_near else ("far-for-near", "half-the-inset", "whole-inset-for-each")
        )
        return tuple(slip for slip in self.slips if slip.name not in wrong)

    def answer(self, case: NearCase, slips: Set[str] = NONE) -> float:
        """Return the monocular distance. Each eye has half of what is told for both."""
        far, near = case.far_mm / 2.0, case.near_mm / 2.0
        distance = near if case.is_near else far
        if "far-for-near" in slips:
            distance = far
        if "near-for-far" in slips:
            distance = near
        if "half-the-inset" in slips:
            distance += (far - near) / 2.0
        if "whole-inset-for-each" in slips:
            distance -= far - near
        return 2.0 * distance if "both-eyes-for-one" in slips else distance

    def prompt(self, case: NearCase) -> tuple[str, ...]:
        """Return what is asked."""
        purpose = (
            "to read with and for nothing else" if case.is_near else "to drive with and for nothing else"
        )
        return (
            "The ticket of an invented wearer gives two distances from pupil to pupil, one for looking far "
            f"and one for reading. Both eyes stand alike. The pair is single vision, {purpose}.",
            f"To which monocular distance is the optical centre of the {case.eye} lens set? Answer in mm, to "
            "0.1 mm.",
        )

    def given(self, case: NearCase) -> tuple[Term, ...]:
        """Return both distances."""
        return (
            Term(symbol="PD_far", value=case.far_mm, unit="mm", digits=0, meaning="pupil to pupil, far"),
            Term(symbol="PD_near", value=case.near_mm, unit="mm", digits=0, meaning="pupil to pupil, near"),
        )

    def solution(self, case: NearCase) -> Solution:
        """Return which distance it is, and its half."""
        told = self.given(case)[1 if case.is_near else 0]
        other = "far" if case.is_near else "near"
        return Solution(
            words=(
                f"A pair for one purpose is made to the distance of that purpose. With the {other} distance "
                "the eyes would look through points beside the optical centres, and that is prism.",
                "Both eyes stand alike, so each has half of the distance from pupil to pupil.",
            ),
            workings=(
                Working(
                    what=f"monocular distance of the {case.eye} eye",
                    symbol="PD",
                    formula=f"{told.symbol} / 2",
                    terms=(told,),
                    value=self.answer(case),
                    unit="mm",
                    digits=1,
                ),
            ),
        )

    def hints(self, case: NearCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Where do both eyes point while this pair is worn: straight ahead, or inwards?",
            "The distance that is told runs from pupil to pupil. How much of it belongs to one lens?",
        )

    def drawing(self, case: NearCase) -> Drawing:
        """Return both rims without pupils: else the choice would show."""
        return Drawing(
            name="pair",
            values={
                "a_mm": case.frame.a_mm,
                "b_mm": case.frame.b_mm,
                "dbl_mm": case.frame.dbl_mm,
                "right_pd_mm": 0.0,
                "left_pd_mm": 0.0,
                "eye": case.eye.value,
                "measured_from": "bridge",
            },
        )
