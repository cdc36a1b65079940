"""Causes of spoiled lenses ranked by what they cost together, as a question."""

from collections.abc import Set
from dataclasses import dataclass
from datetime import date
from itertools import pairwise

from lablib.bench.spoilage import SpoiledLens
from lablib.bench.spoilage_log import LogRow, SpoilageLog
from lablib.questions.bench_care.terms import count_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term, Working

_STEP = "what the causes are ranked by"
_COUNT = Slip(
    name="ranked-by-count",
    step=_STEP,
    words="You ranked the causes by their number. A rare cause of dear lenses costs more than a frequent one "
    "of cheap ones.",
)
_EACH = Slip(
    name="ranked-by-one-lens",
    step=_STEP,
    words="You ranked the causes by what one lens costs. How often it happens counts as much.",
)
_CHEAPEST = Slip(
    name="cheapest-first",
    step="which end of the ranking is on top",
    words="You put the cheapest cause on top. The dearest was asked for first.",
)
# What happens at a bench, with how often in a quarter and what one such lens costs, from and to.
_CAUSES = {
    "scratched": ((14, 30), (12.0, 26.0)),
    "wrong size": ((8, 16), (24.0, 40.0)),
    "chipped edge": ((6, 14), (20.0, 36.0)),
    "turned on the block": ((4, 12), (60.0, 90.0)),
    "wrong centres": ((4, 9), (56.0, 84.0)),
    "ticket misread": ((3, 7), (80.0, 130.0)),
    "segment or cross height": ((3, 7), (130.0, 190.0)),
    "crazed coat": ((2, 5), (60.0, 80.0)),
}
_SHOWN, _LETTERS, _APART = 4, "ABCD", 15.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CausesCase:
    """Causes in the order shown.

    names: what went wrong; counts: lenses of each; each: what one of them costs, all counted [money].
    """

    names: tuple[str, ...]
    counts: tuple[int, ...]
    each: tuple[float, ...]

    @property
    def log(self) -> SpoilageLog:
        """A log with so many rows of each cause."""
        return SpoilageLog(
            rows=tuple(
                _row(name, cost)
                for name, count, cost in zip(self.names, self.counts, self.each, strict=True)
                for _ in range(count)
            ),
            faults=(),
        )

    def by(self, values: tuple[float, ...]) -> tuple[str, ...]:
        """Return the names, those with the largest values first."""
        named = dict(zip(self.names, values, strict=True))
        return tuple(sorted(self.names, key=lambda name: -named[name]))


def _row(name: str, cost: float) -> LogRow:
    return LogRow(
        day=date(2026, 1, 5),
        job="",
        lens="right",
        cause=name,
        station="",
        found_by="",
        spoiled=SpoiledLens(lens_price=cost, labour_min=0.0, hourly_rate=0.0),
    )


class CausesByMoney(Maker[CausesCase]):
    """Rank four causes by what they cost."""

    name = "causes-by-money"
    lesson = "15"
    skill = "dearest-cause"
    slips = (_COUNT, _EACH, _CHEAPEST)

    def draw(self, draws: Draws) -> CausesCase:
        """Return four causes whose sums are clearly apart, as are their counts and prices."""
        return draws.until("four causes", _draw_causes, _are_apart)

    def kind(self, case: CausesCase) -> OrderAnswer:
        """Return the causes as they are shown."""
        return OrderAnswer(options=tuple(Option(key=name, words=name.capitalize()) for name in case.names))

    def answer(self, case: CausesCase, slips: Set[str] = NONE) -> tuple[str, ...]:
        """Return the dearest first, or what a slip puts first."""
        dearest = tuple(cause.name for cause in case.log.causes())
        if _COUNT.name in slips:
            return case.by(case.counts)
        if _EACH.name in slips:
            return case.by(case.each)
        return dearest[::-1] if _CHEAPEST.name in slips else dearest

    def pairs(self, case: CausesCase, kind: OrderAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each ranking is seen by itself."""
        return ()

    def prompt(self, case: CausesCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Four causes from the log of an invented lens room, over a quarter of a year, with the lenses "
            "spoiled and what one of them costs: lens, labour and delivery. The cause to work on first is "
            "the one that costs most.",
            "Put the causes in order of what they cost together, the dearest on top.",
        )

    def given(self, case: CausesCase) -> tuple[Term, ...]:
        """Return how many lenses each cause spoils, and what one costs."""
        return tuple(
            term
            for letter, name in zip(_LETTERS, case.names, strict=True)
            for term in _terms(case, letter, name)
        )

    def solution(self, case: CausesCase) -> Solution:
        """Return the sum of each cause."""
        costs = {cause.name: cause.cost for cause in case.log.causes()}
        sums = tuple(
            Working(
                what=f"cost of: {name}",
                symbol=f"k_{letter}",
                formula=f"c_{letter} * e_{letter}",
                terms=_terms(case, letter, name),
                value=costs[name],
            )
            for letter, name in zip(_LETTERS, case.names, strict=True)
        )
        return Solution(
            words=(
                "Number times cost, for each cause. What is frequent is seen every day; what is dear is seen "
                "in the log.",
            ),
            workings=sums,
        )

    def hints(self, case: CausesCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Neither the number alone nor the price alone decides.",
            "Multiply them for each cause.",
        )


def _terms(case: CausesCase, letter: str, name: str) -> tuple[Term, Term]:
    at = case.names.index(name)
    return (
        count_term(f"c_{letter}", case.counts[at], f"lenses: {name}"),
        Term(symbol=f"e_{letter}", value=case.each[at], meaning=f"cost of one: {name}"),
    )


def _draw_causes(draws: Draws) -> CausesCase:
    names = draws.some(tuple(_CAUSES), _SHOWN)
    drawn = [(_CAUSES[name][0], _CAUSES[name][1]) for name in names]
    return CausesCase(
        names=names,
        counts=tuple(int(draws.step(low, high, 1.0)) for (low, high), _ in drawn),
        each=tuple(draws.step(low, high, 1.0) for _, (low, high) in drawn),
    )


def _are_apart(case: CausesCase) -> bool:
    costs = tuple(count * each for count, each in zip(case.counts, case.each, strict=True))
    sums = sorted(costs)
    clear = min(high - low for low, high in pairwise(sums)) > _APART
    alike = len(set(case.counts)) < _SHOWN or len(set(case.each)) < _SHOWN
    # What is shown in the right order already asks nothing.
    return clear and not alike and case.by(costs) != case.names
