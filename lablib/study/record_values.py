"""What stands in a record: answers, dealt questions, beginnings and notes, each checked when made."""

import json
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import UTC, datetime, timedelta
from functools import cache

from lablib.errors import LabError
from lablib.study import record_checks as checks


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """An answer, as it was given and as it was marked.

    id: of the answer; no other answer in any record has it.
    at: when it was given; UTC to the microsecond, so that it sorts as text.
    lesson: number of the lesson, "07".
    maker: stable name of the question maker.
    seed: of the question that was answered.
    given: the answer as it was given, as JSON data.
    state: stable name of the mark.
    slips: stable names of the mistakes it matched.
    hints: how many hints were open.

    Raises LabError for a value that cannot be kept.
    """

    id: str
    at: str
    lesson: str
    maker: str
    seed: int
    given: object
    state: str
    slips: tuple[str, ...] = ()
    hints: int = 0

    def __post_init__(self) -> None:
        checks.require_id("id of the answer", self.id)
        checks.require_moment("time of the answer", self.at)
        _require_place(self)
        _put(self, "given", checks.json_data(self.given))
        _put(self, "state", checks.require_name("state", self.state))
        _put(self, "slips", checks.require_names("mistake", self.slips))
        checks.require_whole("number of hints", self.hints, high=checks.MOST_HINTS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dealing:
    """A question that was put in its maker's place in a lesson.

    id, at: as in `Attempt`.
    lesson, maker, seed: of the question.

    Raises LabError for a value that cannot be kept.
    """

    id: str
    at: str
    lesson: str
    maker: str
    seed: int

    def __post_init__(self) -> None:
        checks.require_id("id of the dealt question", self.id)
        checks.require_moment("time of the dealt question", self.at)
        _require_place(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class Beginning:
    """A lesson that was begun.

    lesson: its number, "07".
    at: when; as in `Attempt`.

    Raises LabError for a value that cannot be kept.
    """

    lesson: str
    at: str

    def __post_init__(self) -> None:
        _put(self, "lesson", checks.require_name("lesson", self.lesson))
        checks.require_moment("time of the beginning", self.at)


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """Something that happened to the record itself.

    id, at: as in `Attempt`.
    words: what happened, in a sentence or more.

    Raises LabError for a value that cannot be kept.
    """

    id: str
    at: str
    words: str

    def __post_init__(self) -> None:
        checks.require_id("id of the note", self.id)
        checks.require_moment("time of the note", self.at)
        checks.require_words("words of the note", self.words)


Value = Attempt | Dealing | Beginning | Note
# The tables that are only ever added to, and what stands in a row of each.
KINDS: dict[str, type[Value]] = {
    "attempt": Attempt,
    "dealing": Dealing,
    "beginning": Beginning,
    "note": Note,
}
_TABLES = {kind: table for table, kind in KINDS.items()}


def new_id() -> str:
    """Return an id that nothing else in any record has."""
    return uuid.uuid4().hex


def now() -> str:
    """Return the time as the record writes it."""
    return _moment_text(datetime.now(UTC))


def now_after(last: str | None, *, within: timedelta | None = None) -> str:
    """Return the time now, or the microsecond after an earlier one where the clock shows no later time.

    last: the earlier time, if there is one.
    within: how far the clock may be behind it; by any time if not given.
    """
    time = now()
    if last is None or time > last:
        return time
    earlier = datetime.fromisoformat(last)
    if within is not None and earlier - datetime.fromisoformat(time) > within:
        return time
    return _moment_text(earlier + timedelta(microseconds=1))


def table_of(kind: type[Value]) -> str:
    """Return the name of the table that keeps a kind of value."""
    return _TABLES[kind]


@cache
def columns_of(kind: type[Value]) -> tuple[str, ...]:
    """Return the columns that keep a kind of value, in the order of `row_of`."""
    return tuple(field.name for field in fields(kind))


def row_of(value: Value) -> tuple:
    """Return a value as it stands in its table."""
    return tuple(_to_column(name, getattr(value, name)) for name in columns_of(type(value)))


def from_row(kind: type[Value], cells: Mapping[str, object]) -> Value:
    """Return the value that stands in a row of its table.

    kind: what should stand there; cells: by the names of their columns.

    Raises LabError when something else stands there.
    """
    try:
        return kind(**{name: _from_column(name, cell) for name, cell in cells.items()})
    except (ValueError, TypeError, AttributeError, RecursionError) as fault:
        raise LabError(f"a row of the table {table_of(kind)} cannot be read ({fault})") from None


def as_json(value: Value) -> dict:
    """Return a value as JSON data, for the exchange between records."""
    return {name: _to_json(getattr(value, name)) for name in columns_of(type(value))}


def from_json(kind: type[Value], data: object) -> Value:
    """Return the value that JSON data describe.

    kind: what it should be; data: as `as_json` gives it.

    Raises LabError for other keys, or a value that cannot be kept.
    """
    names = set(columns_of(kind))
    if not isinstance(data, Mapping) or set(data) != names:
        raise LabError(f"{checks.shown(data)} has other keys: give {', '.join(sorted(names))} and no other")
    return kind(**data)


def _to_column(name: str, value: object) -> object:
    if name == "given":
        return checks.json_text(value)
    return " ".join(value) if name == "slips" else value


def _from_column(name: str, cell: object) -> object:
    if name == "given":
        return json.loads(cell)
    return tuple(cell.split()) if name == "slips" else cell


def _to_json(value: object) -> object:
    return list(value) if isinstance(value, tuple) else value


def _moment_text(moment: datetime) -> str:
    return moment.isoformat(timespec="microseconds")


def _require_place(value: Attempt | Dealing) -> None:
    _put(value, "lesson", checks.require_name("lesson", value.lesson))
    _put(value, "maker", checks.require_name("question maker", value.maker))
    checks.require_whole("seed", value.seed, high=checks.GREATEST_SEED)


def _put(value: Value, name: str, content: object) -> None:
    object.__setattr__(value, name, content)
