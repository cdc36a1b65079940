"""The upper limit of one week on the chart, as a question: pooled share, and that week's own lenses."""

from collections.abc import Set
from dataclasses import dataclass, replace

import numpy as np

from lablib.bench.trials import CHART_SCATTERS, ShareChart
from lablib.bench.trials_workings import limit_workings
from lablib.questions.bench_care.terms import count_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_MEAN = Slip(
    name="mean-of-shares",
    step="which share the limits lie about",
    words="You took the mean of the weekly shares. The small week then counts as much as a large one; the "
    "limits belong to the pooled share.",
)
_ALL = Slip(
    name="lenses-of-all-weeks",
    step="how many lenses scatter",
    words="You put the lenses of all weeks under the root. A week scatters by its own lenses, and few lenses "
    "scatter more.",
)
_ONE = Slip(
    name="one-standard-deviation",
    step="how far the limits lie away",
    words="You went one standard deviation up. One week in six is beyond that by chance alone; the limits "
    "lie three away.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitCase:
    """Weeks of a log; the last is the one asked about.

    spoiled, cut: lenses in each.
    """

    spoiled: tuple[int, ...]
    cut: tuple[int, ...]

    @property
    def chart(self) -> ShareChart:
        """The chart of these weeks."""
        return ShareChart(counts=self.spoiled, sizes=self.cut)


class ChartLimit(Maker[LimitCase]):
    """Give the upper limit of the last week."""

    name = "chart-limit"
    lesson = "15"
    skill = "limits-of-a-chart"
    slips = (_MEAN, _ALL, _ONE)

    def draw(self, draws: Draws) -> LimitCase:
        """Return three large weeks and a small bad one, in any order."""
        large = [(2 + draws.whole(4), int(draws.step(70.0, 120.0, 5.0))) for _ in range(3)]
        weeks = draws.shuffled((*large, (3 + draws.whole(3), int(draws.step(20.0, 40.0, 5.0)))))
        spoiled, cut = zip(*weeks, strict=True)
        return LimitCase(spoiled=spoiled, cut=cut)

    def kind(self, case: LimitCase) -> NumberAnswer:
        """Return a share to 0.1 %."""
        return NumberAnswer(unit="%", tolerance=0.1, digits=1)

    def answer(self, case: LimitCase, slips: Set[str] = NONE) -> float:
        """Return the upper limit, or what a slip takes for it."""
        chart = case.chart
        if not slips:
            return 100.0 * float(chart.upper[-1])
        share = float(chart.shares.mean()) if _MEAN.name in slips else chart.share
        size = sum(case.cut) if _ALL.name in slips else case.cut[-1]
        scatters = 1.0 if _ONE.name in slips else CHART_SCATTERS
        return 100.0 * (share + scatters * float(np.sqrt(share * (1.0 - share) / size)))

    def prompt(self, case: LimitCase) -> tuple[str, ...]:
        """Return the weeks and what is asked."""
        return (
            "Four weeks of an invented log. The upper limit lies three standard deviations above the pooled "
            "share p. In %, a standard deviation of a week with n lenses is the square root of "
            "p (100 - p) / n.",
            "What is the upper limit for week 4? Give it in %, to 0.1 %.",
        )

    def given(self, case: LimitCase) -> tuple[Term, ...]:
        """Return what was cut and spoiled in each week."""
        return (
            *(
                count_term(f"n_{one}", cut, f"lenses cut in week {one}")
                for one, cut in enumerate(case.cut, 1)
            ),
            *(
                count_term(f"c_{one}", spoiled, f"lenses spoiled in week {one}")
                for one, spoiled in enumerate(case.spoiled, 1)
            ),
        )

    def solution(self, case: LimitCase) -> Solution:
        """Return the sums, the pooled share and the limit."""
        steps = limit_workings(case.chart, len(case.cut))
        given = self.given(case)
        weeks = len(case.cut)
        spoiled, lenses = steps[0].terms
        return Solution(
            words=(
                "First all weeks together: the pooled share. Then three standard deviations for the lenses "
                "of the one week. A small week has wide limits, and a high share in it may be chance.",
            ),
            workings=(
                _sum(lenses, given[:weeks]),
                _sum(spoiled, given[weeks:]),
                *(_with_week(step, given[weeks - 1]) for step in steps),
            ),
        )

    def hints(self, case: LimitCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Add up all that were spoiled and all that were cut, and divide once.",
            "Whose lenses scatter in week 4? Only their number stands under the root.",
        )


def _sum(whole: Term, parts: tuple[Term, ...]) -> Working:
    return Working(
        what=whole.meaning,
        symbol=whole.symbol,
        formula=" + ".join(part.symbol for part in parts),
        terms=parts,
        value=whole.value,
        digits=0,
    )


def _with_week(step: Working, cut: Term) -> Working:
    """The step with the symbol that the question gives to the lenses of its last week."""
    if all(term.symbol != "n_b" for term in step.terms):
        return step
    terms = tuple(cut if term.symbol == "n_b" else term for term in step.terms)
    return replace(step, formula=step.formula.replace("n_b", cut.symbol), terms=terms)
