"""Reading one table of a ticket field by field, and gathering every fault on the way."""

import reprlib
from collections.abc import Callable, Iterator
from contextlib import contextmanager

from lablib.errors import LabError, require_finite

# What stands in a ticket may be long, and tables in tables deeper than Python goes.
_BRIEF = reprlib.Repr()
_BRIEF.maxlevel, _BRIEF.maxdict, _BRIEF.maxlist, _BRIEF.maxstring, _BRIEF.maxother = 3, 3, 3, 60, 60


class TicketFaults(LabError):
    """A ticket that cannot be read.

    faults: one line for each fault: file, key, value, rule, next step.
    """

    def __init__(self, faults: list[str]) -> None:
        super().__init__("\n".join(faults))
        self.faults = tuple(faults)


class Fields:
    """The fields of one table, each taken once; what is left over at the end is an unknown key.

    table: as the TOML reader gave it.
    where: the table's name in messages, empty for the top of the file.
    faults: the list every fault is added to.
    """

    def __init__(self, table: dict, *, where: str, faults: list[str]) -> None:
        self._left = dict(table)
        self._known: list[str] = []
        self.where = where
        self.faults = faults

    def __contains__(self, key: str) -> bool:
        return key in self._left

    def fault(self, text: str) -> None:
        """Note a fault of this table.

        text: key, value, rule and next step.
        """
        self.faults.append(f"[{self.where}] {text}" if self.where else text)

    @contextmanager
    def noting(self) -> Iterator[None]:
        """Turn an error raised inside the block into a fault of this table."""
        try:
            yield
        except LabError as error:
            self.fault(str(error))

    def take(self, key: str, default: object = None) -> object:
        """Return a field as it stands, or the default."""
        self._known.append(key)
        return self._left.pop(key, default)

    def number(self, key: str, *, required: bool = False) -> float | None:
        """Return a field that must be a finite number, or None where it is absent or faulty."""
        return self._checked(key, lambda value: require_finite(key, value), required=required)

    def text(self, key: str, *, required: bool = False) -> str | None:
        """Return a field that must be text, or None where it is absent or faulty."""
        return self._checked(key, lambda value: _text(key, value), required=required)

    def table(self, key: str, *, required: bool = False) -> "Fields | None":
        """Return a field that must be a table, as Fields of its own, or None."""
        table = self._checked(key, lambda value: _table(key, value), required=required)
        if table is None:
            return None
        where = f"{self.where}.{key}" if self.where else key
        return Fields(table, where=where, faults=self.faults)

    def done(self) -> None:
        """Note every key that nobody asked for."""
        for key, value in self._left.items():
            known = ", ".join(sorted(set(self._known)))
            self.fault(f"{key} = {_short(value)}: unknown key: give one of {known}")

    def _checked(self, key: str, check: Callable[[object], object], *, required: bool) -> object:
        value = self.take(key)
        if value is None:
            if required:
                self.fault(f"{key} is missing: add it")
            return None
        with self.noting():
            return check(value)
        return None


def _text(key: str, value: object) -> str:
    if not isinstance(value, str):
        raise LabError(f"{key} = {_short(value)} is not text: put it in quotes")
    return value


def _table(key: str, value: object) -> dict:
    if not isinstance(value, dict):
        raise LabError(f"{key} = {_short(value)} is not a table: write it as [{key}] with its keys below")
    return value


def _short(value: object) -> str:
    return _BRIEF.repr(value)
