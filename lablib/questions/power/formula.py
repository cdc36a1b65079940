"""A question of choice: which formula a task at the bench asks for, before any number is put in."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.questions.power.tasks import FORMULAS, TASKS
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_STEP = "what is known here and what is asked"
_SHOWN = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class FormulaCase:
    """A task, and the formulas to choose from.

    right: key of the formula it asks for; words: the task; shown: keys of the formulas, in order.
    """

    right: str
    words: str
    shown: tuple[str, ...]


class WhichFormula(Maker[FormulaCase]):
    """Which formula a task asks for."""

    name = "which-formula"
    lesson = "03"
    skill = "choose-the-formula"
    slips = tuple(Slip(name=f"takes-{key}", step=_STEP, words=one.not_here) for key, one in FORMULAS.items())

    def draw(self, draws: Draws) -> FormulaCase:
        """Return a task with numbers, and four formulas."""
        right = draws.one_of(tuple(FORMULAS))
        wrong = draws.some([key for key in FORMULAS if key != right], _SHOWN - 1)
        task = draws.one_of(TASKS[right])
        return FormulaCase(right=right, words=task(draws), shown=draws.shuffled((right, *wrong)))

    def kind(self, case: FormulaCase) -> ChoiceAnswer:
        """Return the formulas."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=FORMULAS[key].words) for key in case.shown))

    def slips_in(self, case: FormulaCase) -> tuple[Slip, ...]:
        """Return the slips of the wrong formulas shown."""
        wrong = {f"takes-{key}" for key in case.shown if key != case.right}
        return tuple(slip for slip in self.slips if slip.name in wrong)

    def answer(self, case: FormulaCase, slips: Set[str] = NONE) -> str:
        """Return the formula, or the one a slip takes."""
        return next((name.removeprefix("takes-") for name in slips), case.right)

    def pairs(self, case: FormulaCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong formula has its own slip."""
        return ()

    def prompt(self, case: FormulaCase) -> tuple[str, ...]:
        """Return the task."""
        return (
            f"{case.words} The numbers are invented.",
            "Which formula does this ask for? No number is wanted.",
        )

    def solution(self, case: FormulaCase) -> Solution:
        """Return what the formula is for."""
        one = FORMULAS[case.right]
        return Solution(words=(f"{one.words}.", one.used_for))

    def hints(self, case: FormulaCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Write down what is known and what is asked, each with its unit.",
            "Cross out every formula that asks for something nobody has told you.",
        )
