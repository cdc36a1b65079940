"""A question: what is asked, what is right, and which wrong answers the usual mistakes give."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from lablib.study.answer import AnswerKind
from lablib.working import Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """A mistake people are known to make.

    name: its stable name.
    step: the step of the solution that failed, in words.
    words: what was done instead, to the person who did it.
    """

    name: str
    step: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Mistake:
    """A slip, or two at once, with the wrong value it gives in one question.

    slips: one, or two.
    value: the wrong value, in whatever form the answer kind compares.
    """

    slips: tuple[Slip, ...]
    value: object


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A picture as data: which one, and what it shows.

    name: of the drawing.
    values: numbers, texts or rows of numbers, by name; what they mean is the drawing's matter.
    """

    name: str
    values: Mapping[str, object] = field(default_factory=dict)

    def __post_init__(self) -> None:
        object.__setattr__(self, "values", MappingProxyType(dict(self.values)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """How the answer is reached.

    words: why, one paragraph each.
    workings: the steps in numbers; the last gives the answer where the answer is a number.
    """

    words: tuple[str, ...] = ()
    workings: tuple[Working, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question with its own numbers.

    maker, seed: what it was made by and from.
    prompt: what is asked, one paragraph each.
    given: the numbers that are given, with what they mean.
    kind: how it is answered.
    right: the right value.
    mistakes: single slips with their wrong values, all of them apart from the right value and each other.
    guesses: two slips at once, offered only as a guess.
    solution: the way there.
    hints: from the gentlest to the one that gives most away.
    drawing: the picture to look at, if there is one.
    """

    maker: str
    seed: int
    prompt: tuple[str, ...]
    given: tuple[Term, ...]
    kind: AnswerKind
    right: object
    mistakes: tuple[Mistake, ...]
    guesses: tuple[Mistake, ...]
    solution: Solution
    hints: tuple[str, ...] = ()
    drawing: Drawing | None = None
