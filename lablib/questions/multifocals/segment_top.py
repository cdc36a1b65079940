"""A question about where the top of a segment lies in its frame."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.segment_layout import top_up_mm
from lablib.optics.segment_workings import top_up_working
from lablib.questions.multifocals.case import (
    WHOLE_HEIGHT,
    FramedEye,
    draw_framed_eye,
    millimetres,
)
from lablib.questions.multifocals.levels import level_drawing
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_HALF = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class TopCase:
    """A segment to be laid out.

    place: frame and eye.
    segment_height_mm, centre_height_mm: of its top and of the distance centre, above the lowest tangent [mm].
    """

    place: FramedEye
    segment_height_mm: float
    centre_height_mm: float


class SegmentTop(Maker[TopCase]):
    """How far the top of a segment lies above or below the midline."""

    name = "segment-top"
    lesson = "08"
    skill = "segment-height"
    slips = (
        WHOLE_HEIGHT,
        Slip(
            name="above-for-below",
            step="which height is taken from which",
            words="You took the height from half of B. A top lower than the midline lies below it and is "
            "written with minus, one that is higher with plus.",
        ),
        Slip(
            name="height-of-the-distance-centre",
            step="which height on the ticket belongs to the top",
            words="You laid out the distance centre. The top of the segment has a height of its own.",
        ),
    )

    def draw(self, draws: Draws) -> TopCase:
        """Return a top below the midline more often than above it."""
        place = draw_framed_eye(draws)
        half = place.frame.b_mm * _HALF
        top = half + draws.one_of((-6.0, -5.0, -4.0, -3.0, -2.5, -2.0, -1.5, -1.0, 1.0, 1.5))
        return TopCase(
            place=place,
            segment_height_mm=top,
            centre_height_mm=top + draws.one_of((3.0, 3.5, 4.0, 4.5, 5.0)),
        )

    def kind(self, case: TopCase) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: TopCase, slips: Set[str] = NONE) -> float:
        """Return the top above the midline; whoever takes all of B off takes half of it too much."""
        is_centre = "height-of-the-distance-centre" in slips
        height = case.centre_height_mm if is_centre else case.segment_height_mm
        up = top_up_mm(case.place.frame, segment_height_mm=height)
        if WHOLE_HEIGHT.name in slips:
            up -= case.place.frame.b_mm * _HALF
        return -up if "above-for-below" in slips else up

    def prompt(self, case: TopCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "An invented pair of flat tops. Both heights are counted up from the lowest tangent of the "
            f"{case.place.eye} lens.",
            "How far above the horizontal midline does the top of the segment lie? Write below as minus. "
            "Answer in mm, to 0.1 mm.",
        )

    def given(self, case: TopCase) -> tuple[Term, ...]:
        """Return B and both heights."""
        return (
            millimetres("B", case.place.frame.b_mm, "boxed height"),
            millimetres("h_s", case.segment_height_mm, "segment height"),
            millimetres("h_c", case.centre_height_mm, "height of the distance centre"),
        )

    def solution(self, case: TopCase) -> Solution:
        """Return the way: the midline lies half of B up."""
        return Solution(
            words=(
                "The midline lies half of B above the lowest tangent. What the segment height has more than "
                "that lies above the midline, what it has less lies below. The height of the distance "
                "centre is not needed here.",
            ),
            workings=(top_up_working(case.place.frame, segment_height_mm=case.segment_height_mm),),
        )

    def hints(self, case: TopCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How high above the lowest tangent does the midline itself lie?",
            "Compare that with the segment height. Is the top higher or lower?",
        )

    def drawing(self, case: TopCase) -> Drawing:
        """Return the lens in its box."""
        return level_drawing(case.place, measured_from="midline")
