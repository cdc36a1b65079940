"""A question about how much thicker a prism makes one edge than the other."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.material import materials
from lablib.optics.prism import thickness_difference_mm
from lablib.optics.prism_workings import thickness_difference_working
from lablib.questions.prism.terms import given_to
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_PER_CENT = 100.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WedgeCase:
    """A plano lens with prism.

    amount_prism_d: prism [prism D]; across_mm: from apex edge to base edge [mm]; index: of the material.
    """

    amount_prism_d: float
    across_mm: float
    index: float

    @property
    def working(self) -> Working:
        """The one step."""
        return thickness_difference_working(
            amount_prism_d=self.amount_prism_d, across_mm=self.across_mm, index_n=self.index
        )


class ThicknessDifference(Maker[WedgeCase]):
    """How much thicker a prism makes one edge than the other."""

    name = "thickness-difference"
    lesson = "06"
    skill = "thickness-of-a-prism"
    slips = (
        Slip(
            name="index-not-less-one",
            step="the index in the formula",
            words="You divided by the index. Light is bent by what the index has more than air: take one "
            "away.",
        ),
        Slip(
            name="half-the-width",
            step="the distance from edge to edge",
            words="You took half the width. Apex and base are opposite edges, so the whole width counts.",
        ),
        Slip(
            name="hundred-left-out",
            step="the hundred of the prism dioptre",
            words="You left the hundred out. A prism dioptre is one centimetre to a metre, one part in a "
            "hundred.",
        ),
    )

    def draw(self, draws: Draws) -> WedgeCase:
        """Return a prism over the width of a lens, in a material the package knows."""
        return WedgeCase(
            amount_prism_d=draws.step(1.5, 6.0, 0.5),
            across_mm=draws.step(42.0, 58.0, 1.0),
            index=draws.one_of(tuple(material.index for material in materials().values())),
        )

    def kind(self, case: WedgeCase) -> NumberAnswer:
        """Return the kind: a thickness."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=2)

    def answer(self, case: WedgeCase, slips: Set[str] = NONE) -> float:
        """Return the difference; an index one too large stands for the index that is not lessened by one."""
        across = case.across_mm / (2.0 if "half-the-width" in slips else 1.0)
        difference = thickness_difference_mm(
            amount_prism_d=case.amount_prism_d, across_mm=case.across_mm, index_n=case.index
        )
        difference = difference * across / case.across_mm
        if "index-not-less-one" in slips:
            difference = difference * (case.index - 1.0) / case.index
        return difference * (_PER_CENT if "hundred-left-out" in slips else 1.0)

    def prompt(self, case: WedgeCase) -> tuple[str, ...]:
        """Return the prism and what is asked."""
        return (
            "A plano lens of an invented job has prism alone. Compare its edge at the base with its edge at "
            "the apex, straight across.",
            "How much thicker is the base edge? Answer in mm, to 0.1 mm.",
        )

    def given(self, case: WedgeCase) -> tuple[Term, ...]:
        """Return prism, width and index."""
        return given_to((case.working,))

    def solution(self, case: WedgeCase) -> Solution:
        """Return the formula and why."""
        return Solution(
            words=(
                "A prism dioptre bends light by 1 cm to a metre. A thin wedge bends it by its angle times "
                "the index less one, and the two edges differ by that angle times the way across.",
                "An approximation for thin wedges, good enough to order by.",
            ),
            workings=(case.working,),
        )

    def hints(self, case: WedgeCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "More prism, a wider lens, or a lower index: which of them makes the base edge thicker?",
            "Difference = prism times width / (100 times the index less one).",
        )
