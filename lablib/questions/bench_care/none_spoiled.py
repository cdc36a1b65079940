"""None spoiled in so many, as a question: what share may still be behind it."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.bench.trials import share_at_most
from lablib.bench.trials_workings import none_working
from lablib.questions.bench_care.terms import JOBS_FOR_LENSES, count_term, lenses_of, lenses_working
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_STEP = "what none in so many says"
_NEVER = Slip(
    name="none-read-as-never",
    step=_STEP,
    words="You read none as never. A rare thing does not show in every row of so many lenses.",
)
_ONE = Slip(
    name="one-in-so-many",
    step=_STEP,
    words="You took one in so many for the bound. With that share, none would be seen in more than a third "
    "of such rows: that is no surprise, and no bound.",
)
_TESTED = (
    ("a new kind of pad", "turned on its block"),
    ("a new film", "turned on its block"),
    ("a new way of wiping", "was scratched"),
    ("a new tool for deblocking", "was chipped"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class NoneCase:
    """Jobs without a spoiled lens.

    tried: what was new; happened: what did not happen to any lens; jobs: pairs cut.
    """

    tried: str
    happened: str
    jobs: int


class NoneInSoMany(Maker[NoneCase]):
    """Say what none in so many lenses means."""

    name = "none-in-so-many"
    lesson = "15"
    skill = "none-is-not-never"
    slips = (JOBS_FOR_LENSES, _NEVER, _ONE)

    def draw(self, draws: Draws) -> NoneCase:
        """Return some dozens of jobs."""
        tried, happened = draws.one_of(_TESTED)
        return NoneCase(tried=tried, happened=happened, jobs=int(draws.step(25.0, 70.0, 1.0)))

    def kind(self, case: NoneCase) -> NumberAnswer:
        """Return a share to 0.1 %, so that three in so many, the rule of thumb, is taken as well."""
        return NumberAnswer(unit="%", tolerance=0.2, digits=1)

    def answer(self, case: NoneCase, slips: Set[str] = NONE) -> float:
        """Return the bound, or what a slip takes for it."""
        seen = case.jobs if JOBS_FOR_LENSES.name in slips else lenses_of(case.jobs)
        if _NEVER.name in slips:
            return 0.0
        if _ONE.name in slips:
            return 100.0 / seen
        return 100.0 * _bound(seen)

    def prompt(self, case: NoneCase) -> tuple[str, ...]:
        """Return what was tried and what is asked."""
        return (
            f"An invented lens room tries {case.tried} on {case.jobs} jobs, both lenses of each. Not one "
            f"lens {case.happened}.",
            "If the true share were p, none in n would be seen with the chance (1 - p)^n. The share for "
            "which that chance is a, 0.05, is the bound: 95 % sure, the true share is at most so much.",
            "At most what share of lenses may it still happen to? Give it in %, to 0.1 %.",
        )

    def given(self, case: NoneCase) -> tuple[Term, ...]:
        """Return the jobs and the chance."""
        return (
            count_term("J", case.jobs, "jobs cut"),
            Term(symbol="a", value=0.05, meaning="chance of being wrong"),
        )

    def solution(self, case: NoneCase) -> Solution:
        """Return the lenses and the bound."""
        jobs, _ = self.given(case)
        return Solution(
            words=(
                "Having seen none in so many is not never: it only bounds the share. As a rule of thumb the "
                "bound is three in so many.",
            ),
            workings=(lenses_working(jobs, "n_L", "lenses seen"), _working(lenses_of(case.jobs))),
        )

    def hints(self, case: NoneCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How many lenses were cut, not how many jobs?",
            "Solve (1 - p)^n = a for p: the n-th root of a comes first.",
        )


# The exact bound takes milliseconds, and the questions draw from few numbers.
@cache
def _bound(seen: int) -> float:
    return share_at_most(0, seen)


_working = cache(none_working)
