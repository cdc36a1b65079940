"""A question about the blank of a bifocal: where its centre comes to lie, when its segment lies right."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.segment import segment
from lablib.optics.segment_blank import CutOut, SegmentBlank
from lablib.optics.segment_layout import SegmentLayout
from lablib.optics.segment_workings import cut_out_workings
from lablib.questions.multifocals.case import WHOLE_HEIGHT, FramedEye, draw_framed_eye, millimetres
from lablib.questions.multifocals.levels import level_drawing
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_HALF = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankCase:
    """An outline laid over the blank of a bifocal.

    cut_out: which.
    """

    cut_out: CutOut


class SegmentBlankCentre(Maker[BlankCase]):
    """How far above the boxed centre the centre of a bifocal blank comes to lie."""

    name = "segment-blank-centre"
    lesson = "08"
    skill = "segment-blank"
    slips = (
        Slip(
            name="own-drop-left-out",
            step="where the segment lies on its blank",
            words="You left out the blank's own drop. Its segment does not begin at its centre.",
        ),
        Slip(
            name="drop-taken-off",
            step="where the segment lies on its blank",
            words="You took the drop off. The top lies below the blank's centre, so the centre is higher "
            "than the top.",
        ),
        WHOLE_HEIGHT,
        Slip(
            name="blank-centre-at-the-boxed-centre",
            step="what is laid over what",
            words="You laid the blank's centre on the boxed centre and moved the segment. The segment is "
            "part of the blank; it is the outline that is slid until the top lies right.",
        ),
    )

    def draw(self, draws: Draws) -> BlankCase:
        """Return a blank with a segment of its own place, wanted in an invented frame."""
        place = draw_framed_eye(draws)
        far = draws.step(30.0, 33.0, 0.5)
        layout = SegmentLayout(
            frame=place.frame,
            eye=place.eye,
            segment=segment("flat-top-28"),
            far_pd_mm=far,
            near_pd_mm=far - 2.0,
            segment_height_mm=place.frame.b_mm * _HALF + draws.one_of((-5.0, -4.0, -3.0, -2.0, -1.0)),
        )
        blank = SegmentBlank(
            diameter_mm=draws.one_of((70.0, 75.0)),
            inset_mm=draws.one_of((2.0, 3.0, 4.0)),
            drop_mm=draws.one_of((3.0, 4.0, 5.0, 6.0)),
        )
        return BlankCase(cut_out=CutOut(layout=layout, blank=blank))

    def kind(self, case: BlankCase) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: BlankCase, slips: Set[str] = NONE) -> float:
        """Return where the blank's centre lies; left out or taken off is its own drop, once or twice."""
        cut_out = case.cut_out
        up, drop = cut_out.blank_centre_mm[1], cut_out.blank.drop_mm
        times = ("own-drop-left-out" in slips) + 2 * ("drop-taken-off" in slips)
        up -= times * drop
        if WHOLE_HEIGHT.name in slips:
            up -= cut_out.layout.frame.b_mm * _HALF
        return 0.0 if "blank-centre-at-the-boxed-centre" in slips else up

    def prompt(self, case: BlankCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "A semi-finished blank of an invented chart, flat top 28. Its segment is part of it and cannot "
            f"be moved. The outline of the {case.cut_out.layout.eye} lens is slid over the blank until the "
            "top of the segment lies at its height.",
            "How far above the boxed centre does the centre of the blank then lie? Write below as minus. "
            "Answer in mm, to 0.1 mm.",
        )

    def given(self, case: BlankCase) -> tuple[Term, ...]:
        """Return B, the segment height, and where the segment lies on the blank."""
        layout, blank = case.cut_out.layout, case.cut_out.blank
        return (
            millimetres("B", layout.frame.b_mm, "boxed height"),
            millimetres("h_s", layout.segment_height_mm, "segment height above the lowest tangent"),
            millimetres("d_b", blank.drop_mm, "the blank's own drop: its top below its centre"),
        )

    def solution(self, case: BlankCase) -> Solution:
        """Return the top first, then the centre above it, and what the blank must measure."""
        steps = cut_out_workings(case.cut_out)
        least = case.cut_out.least_blank_mm
        return Solution(
            words=(
                "Lay out the top of the segment from the midline. The blank's centre lies above that top by "
                "the drop of the chart, wherever the top comes to lie.",
                "Sideways it is the same with the blank's own inset. The outline is then seldom in the "
                f"middle of the blank: measured on this one, with the allowance, {least:.1f} mm are needed.",
            ),
            workings=tuple(step for step in steps if step.symbol in {"t_up", "b_up"}),
        )

    def hints(self, case: BlankCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How far from the midline does the top of the segment lie?",
            "On the blank, is its centre above or below the top of its segment, and by how much?",
        )

    def drawing(self, case: BlankCase) -> Drawing:
        """Return the lens in its box."""
        layout = case.cut_out.layout
        return level_drawing(FramedEye(frame=layout.frame, eye=layout.eye), measured_from="midline")
