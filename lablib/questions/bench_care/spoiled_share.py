"""The share of lenses spoiled over two weeks, as a question: lenses, not jobs, and pooled."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.trials import ShareChart
from lablib.bench.trials_workings import pooled_working
from lablib.questions.bench_care.terms import JOBS_FOR_LENSES, count_term, lenses_of
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_STEP = "how the two weeks come together"
_MEAN = Slip(
    name="mean-of-shares",
    step=_STEP,
    words="You took the mean of the two shares. That lets the small week count as much as the large one.",
)
_LAST = Slip(
    name="one-week-alone",
    step=_STEP,
    words="You gave the share of the second week alone. Both weeks were asked for together.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareCase:
    """Two weeks.

    jobs: pairs cut in each; spoiled: lenses spoiled in each.
    """

    jobs: tuple[int, int]
    spoiled: tuple[int, int]

    def chart(self, *, jobs_counted: bool = False) -> ShareChart:
        """Return both weeks as a chart.

        jobs_counted: whether jobs are taken for lenses.
        """
        sizes = self.jobs if jobs_counted else tuple(map(lenses_of, self.jobs))
        return ShareChart(counts=self.spoiled, sizes=sizes)


class SpoiledShare(Maker[ShareCase]):
    """Give the share of lenses spoiled in two weeks together."""

    name = "spoiled-share"
    lesson = "15"
    skill = "share-spoiled"
    slips = (JOBS_FOR_LENSES, _MEAN, _LAST)

    def draw(self, draws: Draws) -> ShareCase:
        """Return a large week and a small one, in either order."""
        weeks = draws.shuffled(
            (
                (int(draws.step(35.0, 60.0, 1.0)), 1 + draws.whole(3)),
                (int(draws.step(10.0, 20.0, 1.0)), 2 + draws.whole(3)),
            )
        )
        jobs, spoiled = zip(*weeks, strict=True)
        return ShareCase(jobs=jobs, spoiled=spoiled)

    def kind(self, case: ShareCase) -> NumberAnswer:
        """Return a share to 0.1 %."""
        return NumberAnswer(unit="%", tolerance=0.06, digits=1)

    def answer(self, case: ShareCase, slips: Set[str] = NONE) -> float:
        """Return the pooled share, or what a slip takes for it."""
        chart = case.chart(jobs_counted=JOBS_FOR_LENSES.name in slips)
        if _MEAN.name in slips:
            return 100.0 * float(chart.shares.mean())
        if _LAST.name in slips:
            return 100.0 * float(chart.shares[-1])
        return 100.0 * chart.share

    def prompt(self, case: ShareCase) -> tuple[str, ...]:
        """Return both weeks and what is asked."""
        (first, second), (spoiled, more) = case.jobs, case.spoiled
        return (
            f"In an invented lens room {first} jobs were cut in the first week, and the log names {spoiled} "
            f"{_lenses(spoiled)} spoiled. In the second week it was {second} jobs and {more} "
            f"{_lenses(more)}.",
            "What share of the lenses was spoiled in both weeks together? Give it in %, to 0.1 %.",
        )

    def given(self, case: ShareCase) -> tuple[Term, ...]:
        """Return jobs and spoiled lenses."""
        return (
            *(count_term(f"J_{one}", jobs, f"jobs in week {one}") for one, jobs in enumerate(case.jobs, 1)),
            *(
                count_term(f"c_{one}", count, f"lenses spoiled in week {one}")
                for one, count in enumerate(case.spoiled, 1)
            ),
        )

    def solution(self, case: ShareCase) -> Solution:
        """Return all lenses, all that were spoiled, and their share."""
        share = pooled_working(case.chart())
        spoiled, lenses = share.terms
        jobs_terms, spoiled_terms = self.given(case)[:2], self.given(case)[2:]
        sums = (
            Working(
                what=lenses.meaning,
                symbol=lenses.symbol,
                formula="2 * (J_1 + J_2)",
                terms=jobs_terms,
                value=lenses.value,
                digits=0,
            ),
            Working(
                what=spoiled.meaning,
                symbol=spoiled.symbol,
                formula="c_1 + c_2",
                terms=spoiled_terms,
                value=spoiled.value,
                digits=0,
            ),
        )
        return Solution(
            words=(
                "All that were spoiled over all that were cut, in lenses: a job has two. The shares of the "
                "weeks are never averaged, because the weeks are not alike in size.",
            ),
            workings=(*sums, share),
        )

    def hints(self, case: ShareCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "The log counts lenses. In what are the weeks counted?",
            "Add up first, and divide once.",
        )


def _lenses(count: int) -> str:
    return "lens" if count == 1 else "lenses"
