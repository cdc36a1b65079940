"""How sure a fitted number is, and how many readings would make it surer, as questions."""

import math
from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.fitted import Fitted, student_factor
from lablib.bench.grip_line import readings_needed
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working, plain

_CONFIDENCE, _FITTED = 0.95, 2
_REACH = "how far the interval reaches"
_ONE_ERROR = Slip(
    name="one-error-taken",
    step=_REACH,
    words="You went down by one standard error. That holds in about two fits of three; for 95 % the error is "
    "taken t times.",
)
_DIVIDED = Slip(
    name="divided-by-the-readings-again",
    step=_REACH,
    words="You divided the error by the root of the readings. The error of a fitted number has that in it "
    "already.",
)
_UPPER = Slip(
    name="upper-end-given",
    step="which end was asked for",
    words="You gave the upper end. The lower end is the one that matters when a lens must hold.",
)
_LINEAR = Slip(
    name="root-forgotten",
    step="from error to readings",
    words="You took the error to fall as the readings grow. It falls with their square root: half the error "
    "takes four times as many.",
)
_FURTHER = Slip(
    name="further-readings-given",
    step="which readings are counted",
    words="You gave the readings still to be taken. All of them were asked for, those you have among them.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class IntervalCase:
    """A fitted friction.

    fitted: mu and its standard error; readings: it rests on.
    """

    fitted: Fitted
    readings: int

    @property
    def freedom(self) -> int:
        """Readings less the two numbers of a line."""
        return self.readings - _FITTED

    @property
    def factor(self) -> float:
        """How many standard errors the interval reaches."""
        return student_factor(_CONFIDENCE, freedom=self.freedom)


class FitInterval(Maker[IntervalCase]):
    """Give the lower end of what a fit says."""

    name = "lower-end-of-a-fit"
    lesson = "31"
    skill = "error-of-a-fit"
    slips = (_ONE_ERROR, _DIVIDED, _UPPER)

    def draw(self, draws: Draws) -> IntervalCase:
        """Return a friction with its error."""
        fitted = Fitted(value=draws.step(0.16, 0.42, 0.01), error=draws.step(0.008, 0.03, 0.001))
        return IntervalCase(fitted=fitted, readings=draws.one_of((12, 16, 20, 24)))

    def kind(self, case: IntervalCase) -> AnswerKind:
        """Return a pure number to three decimals."""
        return NumberAnswer(unit="", tolerance=0.001, digits=3)

    def answer(self, case: IntervalCase, slips: Set[str] = NONE) -> object:
        """Return the lower end, or what is taken for it."""
        low, high = case.fitted.interval(_CONFIDENCE, freedom=case.freedom)
        reach = (high - low) / 2.0
        if _ONE_ERROR.name in slips:
            reach = case.fitted.error
        if _DIVIDED.name in slips:
            reach /= math.sqrt(case.readings)
        return case.fitted.value + (reach if _UPPER.name in slips else -reach)

    def prompt(self, case: IntervalCase) -> tuple[str, ...]:
        """Return the fit and what is asked."""
        return (
            f"A line through {case.readings} invented break-loose readings gives the friction mu below, with "
            "its standard error. For a confidence of 95 % the interval reaches t standard errors each way; "
            f"for the {case.freedom} readings that are left after two numbers were fitted, t is "
            f"{plain(case.factor, 3)}.",
            "Above which value does the true mu lie, by the lower end of that interval? Give a number "
            "without a unit, to 0.001.",
        )

    def given(self, case: IntervalCase) -> tuple[Term, ...]:
        """Return value and error."""
        return (
            Term(symbol="mu", value=case.fitted.value, meaning="friction of the fit"),
            Term(symbol="s", value=case.fitted.error, digits=3, meaning="standard error of mu"),
        )

    def solution(self, case: IntervalCase) -> Solution:
        """Return the lower end."""
        times = Term(symbol="t", value=case.factor, digits=3, meaning="standard errors to 95 %")
        low = Working(
            what="lower end of the interval",
            symbol="mu_low",
            formula="mu - t * s",
            terms=(*self.given(case), times),
            value=self.answer(case),
            digits=4,
            source="Student's t",
        )
        return Solution(
            words=(
                "A fit is a number and how well it is known. A claim is made at the end that could hurt: for "
                "what holds, that is the lower one.",
            ),
            workings=(low,),
        )

    def hints(self, case: IntervalCase) -> tuple[str, ...]:
        """Return what the three numbers are for."""
        return (
            "How far does the interval reach to each side?",
            "The standard error belongs to mu itself, not to one reading.",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NeededCase:
    """An error that is too large.

    readings: taken so far; error: of mu with them; wanted: the error to come down to.
    """

    readings: int
    error: float
    wanted: float


class ReadingsNeeded(Maker[NeededCase]):
    """Tell how many readings bring an error down."""

    name = "readings-for-an-error"
    lesson = "31"
    skill = "error-of-a-fit"
    slips = (_LINEAR, _FURTHER)

    def draw(self, draws: Draws) -> NeededCase:
        """Return an error, and one that is smaller by a plain ratio."""
        wanted = draws.step(0.004, 0.012, 0.002)
        ratio = draws.one_of((1.5, 2.0, 2.5, 3.0))
        return NeededCase(
            readings=draws.one_of((8, 12, 16, 20)), error=round(ratio * wanted, 6), wanted=wanted
        )

    def kind(self, case: NeededCase) -> AnswerKind:
        """Return a whole number."""
        return NumberAnswer(unit="", tolerance=0.5, digits=0)

    def answer(self, case: NeededCase, slips: Set[str] = NONE) -> object:
        """Return all readings that are needed, or what is taken for them."""
        needed = readings_needed(case.readings, error=case.error, wanted=case.wanted)
        if _LINEAR.name in slips:
            needed = case.readings * case.error / case.wanted
        return needed - (case.readings if _FURTHER.name in slips else 0)

    def prompt(self, case: NeededCase) -> tuple[str, ...]:
        """Return how it stands, and what is asked."""
        return (
            f"A line through {case.readings} invented break-loose readings gives mu with the standard error "
            "below. It is to come down by further readings at the same forces, taken with the same care.",
            "How many readings does that take in all, those taken already among them? Give a whole number, "
            "to 1.",
        )

    def given(self, case: NeededCase) -> tuple[Term, ...]:
        """Return readings and both errors."""
        return (
            Term(symbol="n", value=case.readings, digits=0, meaning="readings taken so far"),
            Term(symbol="s", value=case.error, digits=3, meaning="standard error of mu with them"),
            Term(symbol="s_w", value=case.wanted, digits=3, meaning="standard error that is wanted"),
        )

    def solution(self, case: NeededCase) -> Solution:
        """Return the readings."""
        needed = Working(
            what="readings in all",
            symbol="n_w",
            formula="n * (s / s_w)^2",
            terms=self.given(case),
            value=self.answer(case),
            digits=0,
            source="an error falls with the square root of the readings",
        )
        return Solution(
            words=(
                "The error falls with the square root of the number of readings. So a surer number soon "
                "costs an afternoon, and less scatter in each reading is often the cheaper way.",
            ),
            workings=(needed,),
        )

    def hints(self, case: NeededCase) -> tuple[str, ...]:
        """Return how an error falls."""
        return (
            "How many times smaller is the error to be?",
            "Half the error takes four times as many readings.",
        )
