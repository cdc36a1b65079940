"""A question answered on the picture: where the fitting cross belongs, told by the engravings."""

from collections.abc import Set

from lablib.optics.progressive import (
    DISTANCE_CIRCLE,
    FITTING_CROSS,
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    TEMPORAL_ENGRAVING,
)
from lablib.optics.progressive_layout import ProgressiveLayout, engravings_of
from lablib.optics.progressive_workings import made_to_workings
from lablib.questions.multifocals.case import millimetres
from lablib.questions.multifocals.levels import level_drawing
from lablib.questions.multifocals.progressive_case import below_cross_term, draw_layout, place_of
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.marker import MarkerAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_STEP_MM, _TOLERANCE_MM = 0.5, 0.5


class ReMarkCross(Maker[ProgressiveLayout]):
    """Where the fitting cross of a wiped progressive is put back, set on the picture."""

    name = "re-mark-cross"
    lesson = "08"
    skill = "marks-of-a-progressive"
    slips = (
        Slip(
            name="cross-on-the-engravings",
            step="the way from the engravings to the cross",
            words="You put the cross on the level of the engravings. Midway between them lies the prism "
            "reference point; the cross has a distance of its own on the chart.",
        ),
        Slip(
            name="cross-below-the-engravings",
            step="the way from the engravings to the cross",
            words="You went down from the engravings. On this chart they lie below the cross, so the cross "
            "is above them.",
        ),
        Slip(
            name="distance-circle-for-cross",
            step="the way from the engravings to the cross",
            words="You went up to the distance circle. The cross lies below it, before the pupil.",
        ),
        Slip(
            name="near-circle-for-cross",
            step="the way from the engravings to the cross",
            words="You went to the level of the near circle. That is where the addition is read.",
        ),
    )

    def draw(self, draws: Draws) -> ProgressiveLayout:
        """Return a finished progressive."""
        return draw_layout(draws)

    def kind(self, case: ProgressiveLayout) -> MarkerAnswer:
        """Return the kind: a level on the ruler from the lowest tangent to the top of the box."""
        return MarkerAnswer(
            label="fitting cross",
            unit="mm",
            low=0.0,
            high=case.frame.b_mm,
            step=_STEP_MM,
            start=0.0,
            tolerance=_TOLERANCE_MM,
            digits=1,
        )

    def answer(self, case: ProgressiveLayout, slips: Set[str] = NONE) -> float:
        """Return the height of the cross above the lowest tangent, or of the place a slip leads to."""
        found = engravings_of(case)
        up = {mark.name: mark.up_mm for mark in found.marks(case.design)}
        level, cross = up[NASAL_ENGRAVING], up[FITTING_CROSS]
        places = {
            "cross-on-the-engravings": level,
            "cross-below-the-engravings": 2.0 * level - cross,
            "distance-circle-for-cross": up[DISTANCE_CIRCLE],
            "near-circle-for-cross": up[NEAR_CIRCLE],
        }
        chosen = next((places[name] for name in slips), cross)
        return chosen + case.frame.b_mm / 2.0

    def prompt(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented progressive came back in its frame, the {case.eye} lens wiped clean. Its two "
            "engravings were found and dotted, as the picture shows. The distances are those of its chart.",
            "At what height above the lowest tangent is the fitting cross put back? Move the marker there, "
            "to 0.5 mm.",
        )

    def given(self, case: ProgressiveLayout) -> tuple[Term, ...]:
        """Return B, the level read off the ruler, and the chart's distances."""
        found, design = engravings_of(case), case.design
        return (
            millimetres("B", case.frame.b_mm, "boxed height"),
            millimetres("m_up", found.middle_mm[1], "engravings above the midline (minus: below)"),
            below_cross_term(design),
            millimetres(
                "f", design.distance_circle_above_cross_mm, "middle of the distance circle above the cross"
            ),
            millimetres("n", design.near_circle_below_cross_mm, "middle of the near circle below the cross"),
        )

    def solution(self, case: ProgressiveLayout) -> Solution:
        """Return the height, from the midline up."""
        steps = made_to_workings(case.frame, eye=case.eye, design=case.design, engravings=engravings_of(case))
        return Solution(
            words=(
                "The engravings are the only marks that cannot be wiped off, and every other mark is put "
                "back from them. Midway between them lies the prism reference point. The cross lies straight "
                "above it, by what the chart of this very lens says.",
            ),
            workings=(steps[-1],),
        )

    def hints(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Read the level of the two engravings on the ruler.",
            "Which distance of the chart leads from the engravings to the cross, and is it up or down?",
        )

    def drawing(self, case: ProgressiveLayout) -> Drawing:
        """Return the lens with its engravings and the ruler."""
        nasal, temporal = case.mark(NASAL_ENGRAVING), case.mark(TEMPORAL_ENGRAVING)
        return level_drawing(
            place_of(case),
            measured_from="lowest tangent",
            engravings_in_mm=(nasal.in_mm, temporal.in_mm),
            engravings_up_mm=nasal.up_mm,
        )
