"""Answers that are picked from what is there: one, several, or all in their order."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from lablib.errors import LabError
from lablib.study.answer import Given, NotUnderstood, Understood, quoted

_FEWEST = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing to pick.

    key: its stable name, by which an answer is kept.
    words: as it is read.
    """

    key: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Earlier:
    """A mistake in an order: one thing stands before another.

    first, second: keys; first stands before second where the mistake was made.
    """

    first: str
    second: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WrongPick:
    """A mistake among several picks: a key that should not be there, or is missing.

    key: of the option.
    picked: whether the mistake is to pick it, or to leave it out.
    """

    key: str
    picked: bool


def _keys(options: Sequence[Option]) -> tuple[str, ...]:
    """Return the keys of options, or say that there are too few or that one comes twice."""
    keys = tuple(option.key for option in options)
    if len(keys) < _FEWEST or len(set(keys)) < len(keys):
        raise LabError(f"options {', '.join(keys)}: give two or more, each with a key of its own")
    return keys


@dataclass(frozen=True, slots=True, kw_only=True)
class _Picks:
    """Options to pick from.

    options: in the order shown at first.

    Raises LabError for fewer than two options, or a key that comes twice.
    """

    options: tuple[Option, ...]

    def __post_init__(self) -> None:
        _keys(self.options)

    def is_blank(self, given: Given) -> bool:
        """Return whether nothing has been picked yet."""
        return given is None or given == [] or given == ""

    def _words(self, key: str) -> str:
        return next(option.words for option in self.options if option.key == key)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceAnswer(_Picks):
    """One of several options; an answer is its key.

    Options and errors are those of every kind that is picked.
    """

    name: ClassVar[str] = "choice"

    def read(self, given: Given) -> Understood[str]:
        """Return the option that was picked.

        given: a key.

        Raises NotUnderstood for a key that is not there.
        """
        if given not in _keys(self.options):
            raise NotUnderstood(f"{quoted(given)} is not one of the options: pick one of them")
        return Understood(meanings=(given,), words=self._words(given))

    def matches(self, value: str, other: object) -> bool:
        """Return whether they are the same option."""
        return value == other

    def apart(self, one: object, other: object) -> bool:
        """Return whether they are different options."""
        return one != other

    def written(self, value: str) -> str:
        """Return the words of an option."""
        return self._words(value)


@dataclass(frozen=True, slots=True, kw_only=True)
class SeveralAnswer(_Picks):
    """All options that are true; an answer is a list of their keys.

    Options and errors are those of every kind that is picked.
    """

    name: ClassVar[str] = "several"

    def read(self, given: Given) -> Understood[frozenset[str]]:
        """Return the options that were picked.

        given: a list of keys.

        Raises NotUnderstood for a key that is not there, or comes twice.
        """
        keys = _keys(self.options)
        if not _are_keys(given, keys):
            raise NotUnderstood(f"{quoted(given)} is not some of the options, each once: pick among them")
        picked = frozenset(given)
        return Understood(meanings=(picked,), words=self.written(picked))

    def matches(self, value: frozenset[str], other: object) -> bool:
        """Return whether the picks are the same, or show the one mistake."""
        if isinstance(other, WrongPick):
            return (other.key in value) == other.picked
        return value == other

    def apart(self, one: object, other: object) -> bool:
        """Return whether a mistake is none of the right picks, or two mistakes differ."""
        if isinstance(one, frozenset) != isinstance(other, frozenset):
            picks, mistake = (one, other) if isinstance(one, frozenset) else (other, one)
            return not self.matches(picks, mistake)
        return one != other

    def written(self, value: frozenset[str]) -> str:
        """Return the words of the picks, in the order shown."""
        return "; ".join(option.words for option in self.options if option.key in value)


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderAnswer(_Picks):
    """All options in their order; an answer is the list of their keys.

    Options and errors are those of every kind that is picked.
    """

    name: ClassVar[str] = "order"

    def read(self, given: Given) -> Understood[tuple[str, ...]]:
        """Return the order.

        given: a list of all keys.

        Raises NotUnderstood when one is missing, comes twice, or is not there.
        """
        keys = _keys(self.options)
        if not _are_keys(given, keys) or len(given) != len(keys):
            raise NotUnderstood(f"{quoted(given)} is not every option once: put all of them in order")
        return Understood(meanings=(tuple(given),), words=self.written(tuple(given)))

    def matches(self, value: tuple[str, ...], other: object) -> bool:
        """Return whether the order is the same, or shows the one mistake."""
        if isinstance(other, Earlier):
            return value.index(other.first) < value.index(other.second)
        return value == other

    def apart(self, one: object, other: object) -> bool:
        """Return whether a mistake is not in the right order, or two mistakes differ."""
        if isinstance(one, tuple) != isinstance(other, tuple):
            order, mistake = (one, other) if isinstance(one, tuple) else (other, one)
            return not self.matches(order, mistake)
        return one != other

    def written(self, value: tuple[str, ...]) -> str:
        """Return the words in their order, numbered."""
        return "; ".join(f"{place} {self._words(key)}" for place, key in enumerate(value, start=1))


def _are_keys(given: Given, keys: tuple[str, ...]) -> bool:
    """Whether a given answer is a list of known keys, none of them twice."""
    if not isinstance(given, list) or not all(isinstance(key, str) for key in given):
        return False
    return set(given) <= set(keys) and len(set(given)) == len(given)
