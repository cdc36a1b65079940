"""A question about a compensated lens on the focimeter: how far off it is, counted from the right column."""

from collections.abc import Set

from lablib.job.check_values import CheckedLens
from lablib.optics.terms import power_step
from lablib.questions.answers.units import DIOPTRE
from lablib.questions.wearing.checked_case import columns, draw_checked, kind_of_lens
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_COLUMN = "the column the reading is compared with"


class OffTheCheckValue(Maker[CheckedLens]):
    """How far the sphere of a compensated lens is off."""

    name = "off-the-check-value"
    lesson = "09"
    skill = "reading-against-the-check-value"
    slips = (
        Slip(
            name="against-the-order",
            step=_COLUMN,
            words="You compared the reading with the order. A compensated lens is not made to the powers "
            "ordered: compare it with the maker's check value.",
        ),
        Slip(
            name="check-value-against-order",
            step=_COLUMN,
            words="You took the check value from the order, or the other way round. That is what the tilt "
            "is made up by; the lens in your hand is the reading.",
        ),
        Slip(
            name="other-way-round",
            step="what is taken from what",
            words="You took the reading from the check value. An error is what is read less what should be.",
        ),
    )

    def draw(self, draws: Draws) -> CheckedLens:
        """Return a lens near its check value."""
        return draw_checked(draws)

    def kind(self, case: CheckedLens) -> NumberAnswer:
        """Return the kind: a difference to the hundredth, with its sign."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.005, digits=2, signed=True)

    def answer(self, case: CheckedLens, slips: Set[str] = NONE) -> float:
        """Return how far the sphere is off."""
        lines = case.against_order if "against-the-order" in slips else case.against_check_value
        off = lines[0].off
        if "check-value-against-order" in slips:
            off = case.check_value.sphere_d - case.order.sphere_d
        return round(-off if "other-way-round" in slips else off, 2)

    def prompt(self, case: CheckedLens) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"An invented compensated {kind_of_lens(case)} for a wrapped frame lies on the focimeter, "
            "square to the stop. Its packet carries a check value.",
            "By how much is its sphere off, in the comparison that decides? Give it in D with its sign, "
            "plus where too much plus is read, to 0.01 D.",
        )

    def given(self, case: CheckedLens) -> tuple[Term, ...]:
        """Return the three columns."""
        return columns(case)

    def solution(self, case: CheckedLens) -> Solution:
        """Return the difference, and what the other column would say."""
        against = case.against_order[0].off
        return Solution(
            words=(
                "The maker has worked out what the focimeter shows if the lens is as it should be: the "
                "check value. The reading is compared with that.",
                f"Against the order the sphere would seem {against:+.2f} D off, which says nothing about "
                "the lens.",
            ),
            workings=(self._working(case),),
        )

    def _working(self, case: CheckedLens) -> Working:
        terms = {term.symbol: term for term in columns(case)}
        return power_step(
            "how far the sphere is off", "e", "S_r - S_c", (terms["S_r"], terms["S_c"]), self.answer(case)
        )

    def hints(self, case: CheckedLens) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which of the columns says what the focimeter should show?",
            "An error is what is read less what should be read.",
        )
