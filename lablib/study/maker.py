"""What makes questions from seeds: one case is drawn, and the wrong answers come out of the right way."""

from abc import ABC, abstractmethod
from collections.abc import Set
from itertools import combinations
from typing import ClassVar, Generic, TypeVar

from lablib.errors import LabError
from lablib.study.answer import AnswerKind
from lablib.study.draws import MOST_DRAWS, Draws
from lablib.study.question import Drawing, Mistake, Question, Slip, Solution
from lablib.working import Term

CaseT = TypeVar("CaseT")
NONE: frozenset[str] = frozenset()


class Maker(ABC, Generic[CaseT]):
    """Makes one kind of question, with new numbers for every seed.

    name: stable name, kept in records.
    lesson: number of the lesson it belongs to, "07".
    skill: what it shows that somebody can do.
    slips: the usual mistakes.

    A subclass draws a case and gives the rest from it. `answer` is told which slips were made: the wrong
    values come out of the same steps as the right one, with one step done wrong. A case in which two
    values could be taken for one another is drawn again.
    """

    name: ClassVar[str]
    lesson: ClassVar[str]
    skill: ClassVar[str]
    slips: ClassVar[tuple[Slip, ...]]

    @abstractmethod
    def draw(self, draws: Draws) -> CaseT:
        """Return a case.

        draws: to draw its numbers from.
        """

    @abstractmethod
    def kind(self, case: CaseT) -> AnswerKind:
        """Return how the question is answered."""

    @abstractmethod
    def answer(self, case: CaseT, slips: Set[str] = NONE) -> object:
        """Return the right value, or the value that comes out with slips made on the way.

        slips: names of the slips made; none for the right value.
        """

    @abstractmethod
    def prompt(self, case: CaseT) -> tuple[str, ...]:
        """Return what is asked, one paragraph each."""

    def given(self, case: CaseT) -> tuple[Term, ...]:
        """Return the numbers that are given beside the prompt."""
        return ()

    @abstractmethod
    def solution(self, case: CaseT) -> Solution:
        """Return the way to the answer."""

    @abstractmethod
    def hints(self, case: CaseT) -> tuple[str, ...]:
        """Return hints, the gentlest first; none of them holds the answer."""

    def drawing(self, case: CaseT) -> Drawing | None:
        """Return the picture of the question, if it has one."""
        return None

    def slips_in(self, case: CaseT) -> tuple[Slip, ...]:
        """Return the slips that can be made in a case: all of them, unless a subclass says otherwise."""
        return self.slips

    def make(self, seed: int) -> Question:
        """Return the question of a seed: the same one on every machine.

        seed: a whole number, 0 or more.

        Raises LabError for another seed, or when no case in many could be told from its own mistakes.
        """
        draws = Draws(seed)
        for _ in range(MOST_DRAWS):
            case = self.draw(draws)
            kind, right = self.kind(case), self.answer(case)
            mistakes = [
                Mistake(slips=(slip,), value=self.answer(case, {slip.name})) for slip in self.slips_in(case)
            ]
            values = [right, *(mistake.value for mistake in mistakes)]
            if all(kind.apart(one, other) for one, other in combinations(values, 2)):
                return self._question(case, seed, kind, right, tuple(mistakes))
        raise LabError(
            f"{self.name}: none of {MOST_DRAWS} cases could be told from its own mistakes: widen the draws"
        )

    def pairs(self, case: CaseT, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return what two slips in different steps give at once, where that is a value of its own.

        known: values that have a meaning already.
        """
        found = []
        for one, other in combinations(self.slips_in(case), 2):
            if one.step != other.step:
                value = self.answer(case, {one.name, other.name})
                if all(kind.apart(value, meaning) for meaning in known):
                    found.append(Mistake(slips=(one, other), value=value))
        return tuple(found)

    def _question(
        self, case: CaseT, seed: int, kind: AnswerKind, right: object, mistakes: tuple[Mistake, ...]
    ) -> Question:
        known = (right, *(mistake.value for mistake in mistakes))
        return Question(
            maker=self.name,
            seed=seed,
            prompt=self.prompt(case),
            given=self.given(case),
            kind=kind,
            right=right,
            mistakes=mistakes,
            guesses=self.pairs(case, kind, known),
            solution=self.solution(case),
            hints=self.hints(case),
            drawing=self.drawing(case),
        )
