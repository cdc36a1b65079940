"""Learners made up for the tests: each makes one slip, or none, and has the habits people have with numbers.

How a value is written down is a habit: with a point or a comma, with its unit or without, rounded to what
is asked, not rounded at all, or rounded at every step on the way there.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from evaluation import evaluate

from lablib.optics.prescription import Prescription
from lablib.study.answer import AnswerKind, Given
from lablib.study.draws import Draws
from lablib.study.picked import Earlier, WrongPick
from lablib.study.question import Mistake, Question, Solution


def as_given(kind: AnswerKind, value: object) -> Given:
    """Return a value as the control of its kind hands it over.

    kind: how the question is answered; value: a right one, or a whole wrong one.
    """
    match kind.name:
        case "choice":
            return value
        case "several":
            return sorted(value)
        case "order":
            return list(value)
        case "marker":
            return _stop_beside(kind, value)
    return kind.written(value)


def with_mistake(question: Question, mistake: Mistake) -> Given:
    """Return an answer that is right but for one mistake.

    question: asked; mistake: one of its own.
    """
    wrong, right = mistake.value, question.right
    if isinstance(wrong, Earlier):
        order = [key for key in right if key != wrong.first]
        order.insert(order.index(wrong.second), wrong.first)
        return order
    if isinstance(wrong, WrongPick):
        return sorted(right | {wrong.key} if wrong.picked else right - {wrong.key})
    return as_given(question.kind, wrong)


def _stop_beside(kind: AnswerKind, value: float) -> float:
    """Return the slider's stop nearest to a place."""
    stop = kind.low + round((value - kind.low) / kind.step) * kind.step
    return round(min(max(stop, kind.low), kind.high), kind.digits)


def worked_by_hand(solution: Solution, *, digits: int | None = None) -> float:
    """Return what the last step of a solution gives to somebody who works with the printed numbers.

    solution: with workings.
    digits: decimals kept at every step; as printed when left out.

    Results of earlier steps go on as they were rounded. The last result is not rounded.
    """
    kept: dict[tuple[str, str], float] = {}
    for working in solution.workings:
        terms = tuple(
            replace(term, value=kept.get((term.symbol, term.printed), float(term.printed)))
            for term in working.terms
        )
        value = evaluate(replace(working, terms=terms).substituted)
        decimals = working.digits if digits is None else min(digits, working.digits)
        kept[working.symbol, working.as_term().printed] = round(value, decimals)
    return value


def step_asked(question: Question) -> str:
    """Return how exact a prompt wants a number, as it says it: "0.1" where it says "to 0.1 mm".

    question: answered with a number.

    Raises AssertionError when the prompt does not say it, or says it twice.
    """
    (found,) = re.findall(r"\bto (\d+\.\d+|1)(?=\W)", question.prompt[-1])
    return found


def rounded_as_asked(question: Question, value: float) -> float:
    """Return a number rounded to what the prompt asks.

    question: answered with a number; value: of the answer.
    """
    step = float(step_asked(question))
    return round(value / step) * step


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """How somebody works and writes.

    words: the habit in words.
    comma: whether decimals stand behind a comma.
    unit: what is written between number and unit; None leaves the unit out.
    minus: the sign used for minus.
    decimals: how many more decimals than asked are written; all of them when None.
    rounds_on_the_way: whether every step is rounded to the decimals that are asked for in the end.
    """

    words: str
    comma: bool = False
    unit: str | None = " "
    minus: str = "-"
    decimals: int | None = 0
    rounds_on_the_way: bool = False


HABITS = (
    Habit(words="as asked"),
    Habit(words="comma, no unit", comma=True, unit=None),
    Habit(words="unit glued on, real minus", unit="", minus="\u2212"),
    Habit(words="all decimals of the calculator", unit=None, decimals=None),
    Habit(words="one decimal more than asked, comma", comma=True, decimals=1),
    Habit(words="rounds on the way", rounds_on_the_way=True),
)


def habits_of(question: Question) -> tuple[Habit, ...]:
    """Return the habits that make a difference in a question: of rounding where there are steps to round."""
    match question.kind.name:
        case "number":
            return HABITS
        case "prescription":
            return HABITS[:3]
    return HABITS[:1]


def written_by_habit(question: Question, value: object, habit: Habit) -> Given:
    """Return a value as somebody with a habit writes it; what is picked or pointed at leaves no choice.

    question: asked; value: right or wrong; habit: of the learner.
    """
    kind = question.kind
    if kind.name == "prescription":
        return _prescription(kind.written(value), habit)
    if kind.name != "number":
        return as_given(kind, value)
    if habit.rounds_on_the_way:
        value = _with_rounding(question, value)
    return _number(question, value, habit)


def _prescription(text: str, habit: Habit) -> str:
    text = text.replace("-", habit.minus)
    if habit.comma:
        text = text.replace(".", ",").replace(" x ", "X")
    return text.replace(" ", "") if habit.unit == "" else text


def _with_rounding(question: Question, value: float) -> float:
    """Return a value with the error of rounding on the way, taken from the right way in proportion."""
    if not question.solution.workings or not question.right:
        return value
    decimals = len(step_asked(question).partition(".")[2])
    by_hand = worked_by_hand(question.solution, digits=decimals)
    return value * by_hand / question.right


def _number(question: Question, value: float, habit: Habit) -> str:
    kind, asked = question.kind, len(step_asked(question).partition(".")[2])
    decimals = 12 if habit.decimals is None else asked + habit.decimals
    # Three figures behind a comma can be taken for thousands and are asked about.
    if habit.comma and decimals == 3 > kind.digits:
        decimals = asked
    rounded = rounded_as_asked(question, value) if decimals == asked else round(value, decimals)
    text = replace(kind, unit="", digits=decimals, tolerance=1.0).written(rounded)
    text = text.replace("-", habit.minus)
    if habit.comma:
        text = text.replace(".", ",")
    return text if habit.unit is None or not kind.unit else f"{text}{habit.unit}{kind.unit}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Learner:
    """Somebody who makes one slip.

    slip: its name; None for one who makes none.
    habit: of writing.
    often: how often the slip is made, from 0 to 1.
    """

    slip: str | None
    habit: Habit = HABITS[0]
    often: float = 1.0

    def slips_on(self, question: Question) -> Mistake | None:
        """Return the mistake this learner makes in a question, or None where none is made.

        question: asked. A slip that cannot be made in it is not made.
        """
        found = next((one for one in question.mistakes if one.slips[0].name == self.slip), None)
        # Settled by the question, but by other draws than its numbers: the same on every run.
        is_made = Draws(2 * question.seed + 1).whole(1000) < 1000 * self.often
        return found if is_made else None

    def answer(self, question: Question) -> Given:
        """Return the answer this learner gives.

        question: asked.
        """
        mistake = self.slips_on(question)
        if mistake is None:
            return written_by_habit(question, question.right, self.habit)
        if isinstance(mistake.value, Earlier | WrongPick):
            return with_mistake(question, mistake)
        return written_by_habit(question, mistake.value, self.habit)


def guess(question: Question, draws: Draws) -> Given:
    """Return an answer of somebody who has no idea and gives anything of the right size.

    question: asked; draws: of the guess.
    """
    return _GUESSES[question.kind.name](question, draws)


def _any_number(question: Question, draws: Draws) -> Given:
    values = [question.right, *(mistake.value for mistake in question.mistakes)]
    low, high = min(values), max(values)
    span = high - low
    share = draws.whole(10_001) / 10_000
    return _number(question, low - span / 2.0 + 2.0 * span * share, HABITS[0])


def _any_place(question: Question, draws: Draws) -> Given:
    kind = question.kind
    stops = round((kind.high - kind.low) / kind.step)
    return _stop_beside(kind, kind.low + draws.whole(stops + 1) * kind.step)


def _any_option(question: Question, draws: Draws) -> Given:
    return draws.one_of([option.key for option in question.kind.options])


def _any_order(question: Question, draws: Draws) -> Given:
    return list(draws.shuffled([option.key for option in question.kind.options]))


def _any_picks(question: Question, draws: Draws) -> Given:
    keys = [option.key for option in question.kind.options]
    return list(draws.some(keys, 1 + draws.whole(len(keys))))


def _any_lens(question: Question, draws: Draws) -> Given:
    lens = Prescription(
        sphere_d=question.right.sphere_d + draws.step(-2.0, 2.0, 0.25),
        cylinder_d=draws.step(-3.0, 3.0, 0.25),
        axis_deg=draws.step(1.0, 180.0, 1.0),
    )
    return as_given(question.kind, lens)


def _any_prism(question: Question, draws: Draws) -> Given:
    values = [question.right, *(mistake.value for mistake in question.mistakes)]
    most = max(abs(part) for value in values for part in value)
    return as_given(question.kind, tuple(most * draws.step(-1.0, 1.0, 0.01) for _ in range(2)))


def _any_base(question: Question, draws: Draws) -> Given:
    return as_given(question.kind, draws.step(0.0, 359.0, 1.0))


_GUESSES: dict[str, Callable[[Question, Draws], Given]] = {
    "number": _any_number,
    "marker": _any_place,
    "choice": _any_option,
    "order": _any_order,
    "several": _any_picks,
    "prescription": _any_lens,
    "prism": _any_prism,
    "base": _any_base,
}
