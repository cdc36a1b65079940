"""A question about the curve variation factor."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.index_effect import curve_variation_factor, reference_index
from lablib.optics.material_workings import curve_variation_working
from lablib.optics.terms import in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

# Trade names of invented materials: rounded, and counted at another line than the index.
_NAMES = (1.58, 1.6, 1.61, 1.64, 1.67, 1.7, 1.71, 1.74, 1.76)


@dataclass(frozen=True, slots=True, kw_only=True)
class FactorCase:
    """A material by its trade name and by its index.

    trade_name: the figure in its name; index: at the d line.
    """

    trade_name: float
    index: float


class CurveFactor(Maker[FactorCase]):
    """How strongly curved a lens is against one of crown glass."""

    name = "curve-factor"
    lesson = "04"
    skill = "curve-factor"
    slips = (
        Slip(
            name="trade-name-for-index",
            step="which figure is the index",
            words="You worked with the figure in the name. Names are rounded, some of them counted at "
            "another line of the spectrum. The lens is worked with its index at the d line.",
        ),
        Slip(
            name="factor-turned-over",
            step="which way round the ratio stands",
            words="You turned the factor over. A higher index needs flatter curves, so its factor is below "
            "1.",
        ),
        Slip(
            name="whole-indices",
            step="what of an index bends light",
            words="You compared whole indices. What bends is the step from air to lens, so take 1 off each "
            "index first.",
        ),
    )

    def draw(self, draws: Draws) -> FactorCase:
        """Return an invented material whose index is a little below the figure in its name."""
        trade_name = draws.one_of(_NAMES)
        return FactorCase(trade_name=trade_name, index=round(trade_name - draws.step(0.007, 0.014, 0.001), 3))

    def kind(self, case: FactorCase) -> NumberAnswer:
        """Return the kind: a pure number with three decimals."""
        return NumberAnswer(unit="", tolerance=0.0015, digits=3)

    def answer(self, case: FactorCase, slips: Set[str] = NONE) -> float:
        """Return the factor, from the figure in the name or of whole indices where that was done."""
        index = case.trade_name if "trade-name-for-index" in slips else case.index
        factor = curve_variation_factor(index)
        if "whole-indices" in slips:
            factor = reference_index() / index
        return 1.0 / factor if "factor-turned-over" in slips else factor

    def prompt(self, case: FactorCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented material is sold as {case.trade_name:.2f}. Its data sheet gives the index at the d "
            f"line as {case.index:.3f}. Crown glass has 1.523.",
            "What is its curve variation factor against crown glass? Answer to 0.001.",
        )

    def given(self, case: FactorCase) -> tuple[Term, ...]:
        """Return name, index, and that of crown glass."""
        return (
            Term(symbol="N", value=case.trade_name, digits=2, meaning="figure in the trade name"),
            in_full("n", case.index, "", least_digits=3, meaning="index at the d line"),
            in_full("n_g", reference_index(), "", least_digits=3, meaning="index of crown glass"),
        )

    def solution(self, case: FactorCase) -> Solution:
        """Return what the factor says, and the step."""
        return Solution(
            words=(
                "The factor says how strongly a surface must be curved against one of crown glass that has "
                "the same power. Below 1 means flatter.",
                "The name of a material is a name. The figure to work with is the index at the d line.",
            ),
            workings=(curve_variation_working(case.index),),
        )

    def hints(self, case: FactorCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Two figures describe this material. Which of them is measured at the d line?",
            "Power is curve times index less 1. With the same power, how do the curves compare? A higher "
            "index makes them flatter: is your factor above or below 1?",
        )
