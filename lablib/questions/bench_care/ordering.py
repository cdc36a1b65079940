"""When to order pads, film or tape, and how many at most, as questions."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.supplies import Ordering, Pace
from lablib.bench.supplies_workings import (
    order_at_most_workings,
    order_at_workings,
    ordering_terms,
    pace_terms,
)
from lablib.questions.bench_care.terms import JOBS_FOR_LENSES, count_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_AT_STEP = "what must be left when the order goes out"
_MOST_STEP = "what is used before it dries"
_EMPTY = Slip(
    name="ordered-when-empty",
    step=_AT_STEP,
    words="You order when the box is empty. Until the delivery the bench stands still.",
)
_NO_SPARE = Slip(
    name="spare-left-out",
    step=_AT_STEP,
    words="You left the spare out. One late delivery, or one busy week, and nothing is there.",
)
_NO_LEAD = Slip(
    name="lead-time-left-out",
    step=_AT_STEP,
    words="You order when only the spare is left. It is used up while the delivery is on its way.",
)
_SPARE_DRIES = Slip(
    name="spare-not-counted",
    step=_MOST_STEP,
    words="You forgot the spare. The spare is used before the new ones, and they grow older meanwhile.",
)
_DRIES = Slip(
    name="buys-what-dries",
    step=_MOST_STEP,
    words="You took the whole offer. What is not used before it dries is thrown away, however cheap it was.",
)
_LEAD_TAKEN = Slip(
    name="lead-time-taken-off",
    step="from when on the shelf life counts",
    words="You took the lead time off the shelf life. Shelf life counts from the delivery.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderCase:
    """One kind of supply.

    things: what it is; ordering: pace and times, one piece a lens; offer: pieces that a dealer offers.
    """

    things: str
    ordering: Ordering
    offer: int = 0


def _draw_ordering(draws: Draws) -> OrderCase:
    pace = Pace(jobs_per_day=draws.step(3.0, 16.0, 1.0), days_per_week=draws.one_of((4.0, 5.0, 6.0)))
    ordering = Ordering(
        pace=pace,
        lead_weeks=draws.step(1.0, 5.0, 1.0),
        spare_weeks=draws.step(1.0, 3.0, 1.0),
        shelf_weeks=draws.one_of((26.0, 39.0, 52.0)),
    )
    # A little more or much more than the bench uses before it dries.
    offer = 500 * (ordering.order_at_most // 500 + 1 + draws.whole(3))
    return OrderCase(things=draws.one_of(("pads", "pieces of film")), ordering=ordering, offer=offer)


def _changed(ordering: Ordering, slips: Set[str]) -> Ordering:
    """The case as somebody sees it who counts jobs for lenses, or leaves a time out."""
    if JOBS_FOR_LENSES.name in slips:
        pace = ordering.pace
        ordering = replace(ordering, pace=replace(pace, jobs_per_day=pace.jobs_per_day / 2.0))
    if slips & {_NO_SPARE.name, _SPARE_DRIES.name}:
        ordering = replace(ordering, spare_weeks=0.0)
    if _NO_LEAD.name in slips:
        ordering = replace(ordering, lead_weeks=0.0)
    if _LEAD_TAKEN.name in slips:
        ordering = replace(ordering, shelf_weeks=ordering.shelf_weeks - ordering.lead_weeks)
    return ordering


class OrderAt(Maker[OrderCase]):
    """Say in how many left the next order goes out."""

    name = "order-at"
    lesson = "15"
    skill = "when-to-order"
    slips = (JOBS_FOR_LENSES, _EMPTY, _NO_SPARE, _NO_LEAD)

    def draw(self, draws: Draws) -> OrderCase:
        """Return a bench of ordinary pace, with whole weeks."""
        return _draw_ordering(draws)

    def kind(self, case: OrderCase) -> NumberAnswer:
        """Return a whole number of pieces."""
        return NumberAnswer(unit="", tolerance=1.0, digits=0)

    def answer(self, case: OrderCase, slips: Set[str] = NONE) -> float:
        """Return how many are left when the order goes out, or what a slip takes for it."""
        return 0.0 if _EMPTY.name in slips else float(_changed(case.ordering, slips).order_at)

    def prompt(self, case: OrderCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented lens room uses one of its {case.things} on each lens, and hardly a lens is cut "
            "twice. An order takes some weeks to arrive, and a spare is kept against a late delivery.",
            f"In how many {case.things} left does the next order go out? Give the number, to 1.",
        )

    def given(self, case: OrderCase) -> tuple[Term, ...]:
        """Return jobs, days, lead time and spare."""
        lead, spare, _ = ordering_terms(case.ordering)
        return (*pace_terms(case.ordering.pace), lead, spare)

    def solution(self, case: OrderCase) -> Solution:
        """Return the pieces of a week and the order point."""
        return Solution(
            words=(
                "When the order goes out, what is left must last until the delivery, and the spare must "
                "still be there.",
            ),
            workings=order_at_workings(case.ordering),
        )

    def hints(self, case: OrderCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How many go in a week? A job has more than one lens.",
            "How many weeks must what is left cover?",
        )


class OrderAtMost(Maker[OrderCase]):
    """Say how many to order at once, at most."""

    name = "order-at-most"
    lesson = "15"
    skill = "shelf-life"
    slips = (JOBS_FOR_LENSES, _SPARE_DRIES, _DRIES, _LEAD_TAKEN)

    def draw(self, draws: Draws) -> OrderCase:
        """Return a bench of ordinary pace, and an offer of more than it uses in time."""
        return _draw_ordering(draws)

    def kind(self, case: OrderCase) -> NumberAnswer:
        """Return a whole number of pieces."""
        return NumberAnswer(unit="", tolerance=1.0, digits=0)

    def answer(self, case: OrderCase, slips: Set[str] = NONE) -> float:
        """Return the most to order, or what a slip takes for it."""
        if _DRIES.name in slips:
            return float(case.offer)
        return float(_changed(case.ordering, slips).order_at_most)

    def prompt(self, case: OrderCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented lens room uses one of its {case.things} on each lens, and hardly a lens is cut "
            f"twice. When a delivery comes, only the spare is left, and the oldest are used first. A dealer "
            f"offers {case.offer:,} at half the price.",
            f"How many {case.things} may be ordered at once, so that none dries? Give the number, to 1.",
        )

    def given(self, case: OrderCase) -> tuple[Term, ...]:
        """Return jobs, days and the three times."""
        pace = pace_terms(case.ordering.pace)
        return (*pace, *ordering_terms(case.ordering), count_term("O", case.offer, "pieces offered"))

    def solution(self, case: OrderCase) -> Solution:
        """Return the pieces of a week and the most to order."""
        return Solution(
            words=(
                "The spare is used first. What comes behind it has its shelf life, less the weeks that the "
                "spare lasts.",
            ),
            workings=order_at_most_workings(case.ordering),
        )

    def hints(self, case: OrderCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "For how many weeks may what is delivered lie there?",
            "For how many of those weeks does the bench still use the spare?",
        )
