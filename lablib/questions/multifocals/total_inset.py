"""A question about how far in the middle of a segment lies."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.segment_layout import segment_inset_mm, total_inset_mm
from lablib.optics.segment_workings import segment_inset_working, total_inset_working
from lablib.questions.multifocals.case import (
    FramedEye,
    draw_framed_eye,
    millimetres,
    pair_drawing,
)
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term


@dataclass(frozen=True, slots=True, kw_only=True)
class InsetCase:
    """A wearer whose segments are laid out.

    place: frame and eye.
    right_far_mm, left_far_mm, right_near_mm, left_near_mm: from the middle of the bridge [mm].
    """

    place: FramedEye
    right_far_mm: float
    left_far_mm: float
    right_near_mm: float
    left_near_mm: float

    def far_mm(self, eye: Eye) -> float:
        """Return the far distance of an eye [mm].

        eye: which.
        """
        return self.right_far_mm if eye is Eye.RIGHT else self.left_far_mm

    def near_mm(self, eye: Eye) -> float:
        """Return the near distance of an eye [mm].

        eye: which.
        """
        return self.right_near_mm if eye is Eye.RIGHT else self.left_near_mm


class TotalInset(Maker[InsetCase]):
    """How far inwards of the boxed centre the middle of a segment lies."""

    name = "total-inset"
    lesson = "08"
    skill = "segment-inset"
    slips = (
        Slip(
            name="far-distance-for-near",
            step="the distance the segment belongs to",
            words="You used the far distance. That is where the distance centre lies; the segment is read "
            "through, so its middle follows the near distance.",
        ),
        Slip(
            name="segment-inset-alone",
            step="the point the inset is counted from",
            words="You gave the segment inset. That counts from the distance centre, which lies off the "
            "boxed centre itself.",
        ),
        Slip(
            name="total-of-both-eyes",
            step="each eye's own share",
            words="You gave the insets of both eyes together. Each lens has its own.",
        ),
        Slip(
            name="other-eye",
            step="the choice of this eye's own distance",
            words="You used the distance of the other eye. Facing the wearer, the right eye is on your left.",
        ),
    )

    def draw(self, draws: Draws) -> InsetCase:
        """Return a wearer whose eyes stand unlike and turn in by 1.5 to 2.5 mm each."""
        right = draws.step(30.0, 34.0, 0.5)
        left = right + draws.one_of((-2.0, -1.5, -1.0, 1.0, 1.5, 2.0))
        turn = draws.one_of((1.5, 2.0, 2.5))
        return InsetCase(
            place=draw_framed_eye(draws),
            right_far_mm=right,
            left_far_mm=left,
            right_near_mm=right - turn,
            left_near_mm=left - turn,
        )

    def kind(self, case: InsetCase) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: InsetCase, slips: Set[str] = NONE) -> float:
        """Return the total inset, or what another distance or another point to count from gives."""
        eye = case.place.eye.other if "other-eye" in slips else case.place.eye
        if "segment-inset-alone" in slips:
            inset = {
                one: segment_inset_mm(far_pd_mm=case.far_mm(one), near_pd_mm=case.near_mm(one)) for one in Eye
            }
        else:
            use = case.far_mm if "far-distance-for-near" in slips else case.near_mm
            inset = {one: total_inset_mm(case.place.frame, near_pd_mm=use(one)) for one in Eye}
        return sum(inset.values()) if "total-of-both-eyes" in slips else inset[eye]

    def prompt(self, case: InsetCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Layout of an invented pair of flat tops. Far and near distances were measured for each eye, "
            "from the middle of the bridge.",
            f"How far in from the boxed centre does the middle of the {case.place.eye} segment lie, the "
            "total inset? In is towards the nose; write out as minus. Answer in mm, to 0.1 mm.",
        )

    def given(self, case: InsetCase) -> tuple[Term, ...]:
        """Return A, DBL and all four distances; those of this eye carry the symbols of the solution."""
        frame, eye = case.place.frame, case.place.eye
        other = eye.other
        return (
            millimetres("A", frame.a_mm, "boxed width"),
            millimetres("DBL", frame.dbl_mm, "distance between lenses"),
            millimetres("PD", case.far_mm(eye), f"far distance, {eye} eye"),
            millimetres("NPD", case.near_mm(eye), f"near distance, {eye} eye"),
            millimetres("PD_o", case.far_mm(other), f"far distance, {other} eye"),
            millimetres("NPD_o", case.near_mm(other), f"near distance, {other} eye"),
        )

    def solution(self, case: InsetCase) -> Solution:
        """Return both insets, the total last."""
        far, near = case.far_mm(case.place.eye), case.near_mm(case.place.eye)
        return Solution(
            words=(
                "The segment is read through, so its middle lies at the near distance of its own eye. The "
                "boxed centre lies half of A and half of DBL from the middle of the bridge; the difference "
                "is the total inset.",
                "The segment inset is a smaller number for another purpose: it counts from the distance "
                "centre and shows how far the eye turns in.",
            ),
            workings=(
                segment_inset_working(far_pd_mm=far, near_pd_mm=near),
                total_inset_working(case.place.frame, near_pd_mm=near),
            ),
        )

    def hints(self, case: InsetCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Through which part of the lens does the wearer read, and which distance goes with it?",
            "Count both the boxed centre and the middle of the segment from the middle of the bridge.",
        )

    def drawing(self, case: InsetCase) -> Drawing:
        """Return both rims, without distances: which of them counts is the question."""
        return pair_drawing(case.place.frame, case.place.eye)
