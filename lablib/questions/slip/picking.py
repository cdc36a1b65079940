"""A question with one right option, where every other option has a slip of its own."""

from abc import abstractmethod
from collections.abc import Mapping, Set
from typing import ClassVar, TypeVar

from lablib.study.answer import AnswerKind
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip

CaseT = TypeVar("CaseT")


class PickMaker(Maker[CaseT]):
    """Makes questions with one right option among several.

    by_option: the slip that leads to an option, by the option's key.

    A subclass says which options a case has, and which of them is right.
    """

    by_option: ClassVar[Mapping[str, Slip]]

    @abstractmethod
    def options(self, case: CaseT) -> tuple[Option, ...]:
        """Return what is offered, in the order shown."""

    @abstractmethod
    def right(self, case: CaseT) -> str:
        """Return the key of the right option."""

    def slip_of(self, case: CaseT, key: str) -> Slip:
        """Return the slip that leads to a wrong option.

        case: the question's; key: of the option.
        """
        return self.by_option[key]

    def kind(self, case: CaseT) -> AnswerKind:
        """Return the options."""
        return ChoiceAnswer(options=self.options(case))

    def answer(self, case: CaseT, slips: Set[str] = NONE) -> object:
        """Return the right option, or the one that a slip leads to."""
        return next((key for key, slip in self._wrong(case).items() if slip.name in slips), self.right(case))

    def slips_in(self, case: CaseT) -> tuple[Slip, ...]:
        """Return the slips that lead to the wrong options shown."""
        return tuple(self._wrong(case).values())

    def pairs(self, case: CaseT, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each wrong option has its own slip."""
        return ()

    def _wrong(self, case: CaseT) -> dict[str, Slip]:
        right = self.right(case)
        return {one.key: self.slip_of(case, one.key) for one in self.options(case) if one.key != right}
