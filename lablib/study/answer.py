"""What every kind of answer can do, and what it says of an answer it has read.

An answer is kept as it was given, as JSON data: a text, a number, or a list of texts. A kind turns it
into a value it can compare; it never guesses, and what it had to assume it says.
"""

from dataclasses import dataclass
from typing import ClassVar, Generic, Protocol, TypeVar

from lablib.errors import LabError

ValueT = TypeVar("ValueT")
# An answer as it was given.
Given = str | float | list[str] | None
_LONGEST_QUOTED = 40


class NotUnderstood(LabError):
    """An answer that cannot be read: no value, no mark, only words on how to write it."""


def quoted(given: Given) -> str:
    """Return an answer as a message can repeat it: between quotation marks where it is a text, and short.

    given: as it was given.
    """
    text = repr(given)
    return text if len(text) <= _LONGEST_QUOTED else f"{text[:_LONGEST_QUOTED]}..."


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood(Generic[ValueT]):
    """What an answer was read as.

    meanings: the value; or all the values it can mean, where the writing leaves that open.
    words: the value in words, as understood.
    faults: what is wrong with the writing; with any of them the answer is never simply right.
    notes: what a reader should know about how it was taken.
    stands_for: the least and greatest number that an answer written more coarsely than asked can stand for;
        None for all others.
    """

    meanings: tuple[ValueT, ...]
    words: str
    faults: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    stands_for: tuple[float, float] | None = None


class AnswerKind(Protocol[ValueT]):
    """One way of answering.

    name: stable name of the kind; a panel chooses the control by it.
    """

    name: ClassVar[str]

    def is_blank(self, given: Given) -> bool:
        """Return whether nothing has been answered yet."""

    def read(self, given: Given) -> Understood[ValueT]:
        """Return what an answer means.

        given: as it was given, not blank.

        Raises NotUnderstood with the way to write it.
        """

    def matches(self, value: ValueT, other: object) -> bool:
        """Return whether a value is the same as another within what is asked.

        value: of an answer.
        other: the right value, or the wrong one of a mistake.
        """

    def apart(self, one: object, other: object) -> bool:
        """Return whether two values can be told apart with certainty, tolerance and all.

        one, other: right or wrong values of a question.
        """

    def written(self, value: ValueT) -> str:
        """Return a value as it should be written."""
