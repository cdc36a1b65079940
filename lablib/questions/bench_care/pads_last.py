"""How long a box of pads, film or tape lasts, as a question."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.supplies import Pace
from lablib.bench.supplies_workings import pace_terms, weeks_workings
from lablib.questions.bench_care.terms import JOBS_FOR_LENSES, count_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_WEEK_STEP = "how many working days a week has"
_ALL_DAYS = Slip(
    name="seven-days-a-week",
    step=_WEEK_STEP,
    words="You let the bench work on seven days. Only working days use pads up.",
)
_DAYS = Slip(
    name="days-for-weeks",
    step="what is asked, days or weeks",
    words="You gave the working days that the box lasts. A week has several of them.",
)
_THINGS = ("pads", "pieces of film", "strips of tape for the back tip")


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyCase:
    """What lies in the box, and how fast it goes.

    things: what it is; pieces: how many; pace: of the bench, one piece a lens.
    """

    things: str
    pieces: int
    pace: Pace


class PadsLast(Maker[SupplyCase]):
    """Say for how many weeks a box lasts."""

    name = "pads-last"
    lesson = "15"
    skill = "pace-of-supplies"
    slips = (JOBS_FOR_LENSES, _ALL_DAYS, _DAYS)

    def draw(self, draws: Draws) -> SupplyCase:
        """Return a box of some hundred pieces, and a bench of ordinary pace."""
        return SupplyCase(
            things=draws.one_of(_THINGS),
            pieces=int(draws.step(400.0, 2000.0, 100.0)),
            pace=Pace(jobs_per_day=draws.step(4.0, 20.0, 1.0), days_per_week=draws.one_of((4.0, 5.0, 6.0))),
        )

    def kind(self, case: SupplyCase) -> NumberAnswer:
        """Return weeks to a tenth."""
        return NumberAnswer(unit="weeks", tolerance=0.1, digits=1, also=("week", "w"))

    def answer(self, case: SupplyCase, slips: Set[str] = NONE) -> float:
        """Return how long the box lasts, or what a slip takes for it."""
        pace = case.pace
        if _ALL_DAYS.name in slips:
            pace = replace(pace, days_per_week=7.0)
        if JOBS_FOR_LENSES.name in slips:
            pace = replace(pace, jobs_per_day=pace.jobs_per_day / 2.0)
        weeks = pace.weeks(case.pieces)
        return weeks * pace.days_per_week if _DAYS.name in slips else weeks

    def prompt(self, case: SupplyCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented lens room has {case.pieces:,} {case.things} left and uses one on each lens. Hardly "
            "a lens is cut twice.",
            "How many weeks do they last? Give it in weeks, to 0.1 weeks.",
        )

    def given(self, case: SupplyCase) -> tuple[Term, ...]:
        """Return pieces, jobs and days."""
        return (count_term("P", case.pieces, "pieces in hand"), *pace_terms(case.pace))

    def solution(self, case: SupplyCase) -> Solution:
        """Return the pieces of a week, and the weeks."""
        return Solution(
            words=(
                "Supplies go by lenses, not by jobs: a job takes two. So first the pieces of a week, then "
                "how often that goes into the box.",
            ),
            workings=weeks_workings(case.pace, case.pieces),
        )

    def hints(self, case: SupplyCase) -> tuple[str, ...]:
        """Return hints."""
        return ("How many pieces does one job take?", "How many go in a week? Divide the box by that.")
