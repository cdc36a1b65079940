"""Questions about the blank: the least one that covers, by the rule of thumb."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES
from lablib.optics.frame import OutlineShape
from lablib.optics.layout import blank_allowance_mm, minimum_blank_mm, minimum_blank_rule_mm
from lablib.optics.layout_workings import minimum_blank_rule_working
from lablib.questions.layout.case import LayoutCase
from lablib.questions.layout.frames import box_terms, draw_frame, outline_drawing
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

# Corners far enough out that the effective diameter is not the width.
_SHAPES = (
    OutlineShape.superellipse(3.0),
    OutlineShape.superellipse(3.6),
    OutlineShape.superellipse(4.2),
    OutlineShape.named("rectangle"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankCase:
    """A lens to be cut.

    layout: frame and wearer.
    effective_diameter_mm: of the outline, as it is told [mm].
    """

    layout: LayoutCase
    effective_diameter_mm: float

    @property
    def centre_x_mm(self) -> float:
        """The optical centre to the observer's right of the boxed centre [mm]."""
        return self.layout.eye.nasal_sign * self.layout.in_mm


class LeastBlankRule(Maker[BlankCase]):
    """The least blank by effective diameter, decentration and allowance."""

    name = "least-blank-rule"
    lesson = "05"
    skill = "least-blank"
    slips = (
        Slip(
            name="decentration-counted-once",
            step="how often the decentration counts",
            words="You counted the decentration once. The blank grows on both sides of its centre, so it "
            "counts twice.",
        ),
        Slip(
            name="total-counted-twice",
            step="how often the decentration counts",
            words="You took the decentration of both eyes together and doubled that. One lens has its own "
            "share, counted twice.",
        ),
        Slip(
            name="allowance-left-out",
            step="the allowance for the rim",
            words="You left the allowance out. The rim of a blank is not used.",
        ),
        Slip(
            name="allowance-twice",
            step="the allowance for the rim",
            words="You added the allowance twice. It belongs to the diameter and counts once.",
        ),
        Slip(
            name="width-for-effective-diameter",
            step="which diameter of the outline is taken",
            words="You started from A. The corners of this outline lie farther out than half its width; "
            "start from ED.",
        ),
    )

    def draw(self, draws: Draws) -> BlankCase:
        """Return a frame with corners, on a wearer whose eyes stand alike."""
        frame = draw_frame(draws, _SHAPES)
        pd, eye = draws.step(29.0, 34.0, 0.5), draws.one_of(EYES)
        layout = LayoutCase(frame=frame, eye=eye, right_pd_mm=pd, left_pd_mm=pd, is_binocular=True)
        return BlankCase(
            layout=layout, effective_diameter_mm=round(frame.outline(eye).effective_diameter_mm, 1)
        )

    def kind(self, case: BlankCase) -> NumberAnswer:
        """Return the kind: a diameter."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: BlankCase, slips: Set[str] = NONE) -> float:
        """Return the least blank. A wrong allowance is one that is added or taken off once more."""
        layout, inward = case.layout, case.layout.in_mm
        if "decentration-counted-once" in slips:
            inward /= 2.0
        if "total-counted-twice" in slips:
            inward *= 2.0
        across = layout.frame.a_mm if "width-for-effective-diameter" in slips else case.effective_diameter_mm
        times = ("allowance-twice" in slips) - ("allowance-left-out" in slips)
        return minimum_blank_rule_mm(across, inward) + times * blank_allowance_mm()

    def prompt(self, case: BlankCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The {case.layout.eye} lens of an invented pair is to be cut. Both pupils lie equally far from "
            "the middle of the bridge. The optical centre lies on the horizontal midline.",
            "How large must the blank be at least, by the rule of thumb? Answer in mm, to 0.1 mm.",
        )

    def given(self, case: BlankCase) -> tuple[Term, ...]:
        """Return the frame, the effective diameter, the wearer's distance and the allowance."""
        diameter = Term(
            symbol="ED",
            value=case.effective_diameter_mm,
            unit="mm",
            digits=1,
            meaning="effective diameter: twice the longest way from the boxed centre to the outline",
        )
        allowance = Term(
            symbol="a", value=blank_allowance_mm(), unit="mm", digits=0, meaning="allowance for the rim"
        )
        return (*box_terms(case.layout.frame), *case.layout.distances, diameter, allowance)

    def solution(self, case: BlankCase) -> Solution:
        """Return the way, and what the rule is worth on this outline."""
        exact = minimum_blank_mm(case.layout.frame.outline(case.layout.eye), x_mm=case.centre_x_mm, y_mm=0.0)
        return Solution(
            words=(
                "A blank is round about the optical centre. Move the centre by 1 mm, and the far side needs "
                "1 mm more. The near side gets it too, because the blank stays round: 2 mm on the diameter. "
                "Each lens has only its own decentration.",
                "The rule takes the longest way to the outline to lie on the far side. Measured on this "
                f"outline, with the same allowance, {exact:.1f} mm is enough.",
            ),
            workings=(
                *case.layout.workings,
                minimum_blank_rule_working(case.effective_diameter_mm, case.layout.in_mm),
            ),
        )

    def hints(self, case: BlankCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Work out the decentration of this one lens first.",
            "Draw a circle about the optical centre that takes in the whole outline. By how much does its "
            "diameter grow when the centre moves 1 mm?",
            "The rule adds three things: the effective diameter, twice the decentration, and the allowance.",
        )

    def drawing(self, case: BlankCase) -> Drawing:
        """Return the outline with its optical centre."""
        return outline_drawing(
            "blank",
            case.layout.frame.outline(case.layout.eye),
            centre_x_mm=case.centre_x_mm,
            centre_y_mm=0.0,
        )
