"""A question about the level of a progressive's engravings."""

from collections.abc import Set

from lablib.optics.layout_workings import decentration_workings
from lablib.optics.progressive import NASAL_ENGRAVING
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.progressive_workings import engraving_level_working
from lablib.questions.multifocals.case import (
    WHOLE_HEIGHT,
    millimetres,
)
from lablib.questions.multifocals.levels import level_drawing
from lablib.questions.multifocals.progressive_case import below_cross_term, draw_layout, place_of
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_HALF = 0.5


class EngravingLevel(Maker[ProgressiveLayout]):
    """How far above or below the midline the engravings of a progressive lie."""

    name = "engraving-level"
    lesson = "08"
    skill = "progressive-layout"
    slips = (
        Slip(
            name="engravings-where-the-cross-belongs",
            step="the way from the cross to the engravings",
            words="You put the engravings where the cross belongs. The chart has them lower by a distance of "
            "its own.",
        ),
        Slip(
            name="engravings-above-the-cross",
            step="the way from the cross to the engravings",
            words="You put the engravings above the cross. On this chart they lie below it.",
        ),
        WHOLE_HEIGHT,
        Slip(
            name="near-circle-for-engravings",
            step="the way from the cross to the engravings",
            words="You went down to the near circle. The engravings have a level of their own, and their own "
            "distance on the chart.",
        ),
    )

    def draw(self, draws: Draws) -> ProgressiveLayout:
        """Return a progressive whose engravings do not lie on the midline."""
        return draws.until(
            "a progressive", draw_layout, lambda layout: layout.mark(NASAL_ENGRAVING).up_mm != 0.0
        )

    def kind(self, case: ProgressiveLayout) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: ProgressiveLayout, slips: Set[str] = NONE) -> float:
        """Return the level above the midline; another way down from the cross goes the same way."""
        cross = case.cross_mm[1]
        up = case.mark(NASAL_ENGRAVING).up_mm
        if "engravings-where-the-cross-belongs" in slips:
            up = cross
        if "engravings-above-the-cross" in slips:
            up = cross + case.design.engraving_below_cross_mm
        if "near-circle-for-engravings" in slips:
            up = cross - case.design.near_circle_below_cross_mm
        return up - (case.frame.b_mm * _HALF if WHOLE_HEIGHT.name in slips else 0.0)

    def prompt(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented progressive for the {case.eye} eye. The height of its fitting cross was measured "
            "up from the lowest tangent; the other distances are those of its chart.",
            "How far above the horizontal midline do the engravings belong? Write below as minus. Answer in "
            "mm, to 0.1 mm.",
        )

    def given(self, case: ProgressiveLayout) -> tuple[Term, ...]:
        """Return B, the height, and the chart's distances."""
        return (
            millimetres("B", case.frame.b_mm, "boxed height"),
            millimetres("h", case.height_mm, "height of the fitting cross"),
            below_cross_term(case.design),
            millimetres("n", case.design.near_circle_below_cross_mm, "near circle below the fitting cross"),
        )

    def solution(self, case: ProgressiveLayout) -> Solution:
        """Return the cross first, then the engravings."""
        steps = decentration_workings(
            case.frame, monocular_pd_mm=case.monocular_pd_mm, height_mm=case.height_mm
        )
        upright = steps[-1]
        return Solution(
            words=(
                "First the cross: what its height has more than half of B lies above the midline. The "
                "engravings lie below the cross by what the chart says, and never where the cross is.",
            ),
            workings=(upright, engraving_level_working(case, upright)),
        )

    def hints(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Find the level of the fitting cross from the midline first.",
            "Which distance of the chart leads from the cross to the engravings, and which way?",
        )

    def drawing(self, case: ProgressiveLayout) -> Drawing:
        """Return the lens in its box."""
        return level_drawing(place_of(case), measured_from="midline")
