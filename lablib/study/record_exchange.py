"""A record as one JSON text, and such a text taken into a record: nothing of it is trusted unchecked."""

import json
import sqlite3
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from lablib.errors import LabError
from lablib.study.record_checks import require_id, shown
from lablib.study.record_rows import put_row, read_rows
from lablib.study.record_schema import owner_of
from lablib.study.record_values import (
    Attempt,
    Beginning,
    Dealing,
    Note,
    Value,
    as_json,
    columns_of,
    from_json,
    new_id,
    now,
    row_of,
    table_of,
)

FORMAT = 1
_JSON = json.JSONEncoder(ensure_ascii=False, allow_nan=False)
# Thirty answers on each of 220 days for ten years are some 20 million characters.
MOST_CHARACTERS = 32_000_000
_PARTS: dict[str, type[Value]] = {"answers": Attempt, "dealt": Dealing, "begun": Beginning, "notes": Note}
_ONE_OF = {"answers": "answer", "dealt": "dealt question", "begun": "beginning", "notes": "note"}
_NOTHING_TAKEN = "so nothing was taken in"


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """What became of the answers in a text.

    added: how many were new to the record.
    known: how many it held already.
    """

    added: int
    known: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Contents:
    """What a checked text holds.

    learner_id: of the record it came from.
    values: all of them, each once.
    """

    learner_id: str
    values: tuple[Value, ...]


def export_text(db: sqlite3.Connection) -> str:
    """Return all of a record but its drafts, one line for each row, always in the same order.

    db: connection in a transaction.
    """
    parts = [f'"format": {FORMAT}', f'"learner_id": {_line(owner_of(db))}']
    for name, kind in _PARTS.items():
        order = "at, lesson" if kind is Beginning else "at, id"
        lines = ",\n".join(_line(as_json(value)) for value in read_rows(db, kind, order=order))
        parts.append(f'"{name}": [\n{lines}\n]' if lines else f'"{name}": []')
    return "{{\n{}\n}}\n".format(",\n".join(parts))


def contents_of(text: object) -> Contents:
    """Return what an exported text holds.

    Raises LabError for anything but a text that `export_text` could have given.
    """
    data = _parsed(text)
    wanted = {"format", "learner_id", *_PARTS}
    if not isinstance(data, dict) or "format" not in data:
        raise _refused("it does not begin as an exported record does")
    if type(data["format"]) is not int or data["format"] != FORMAT:
        raise _refused(
            f"its format {shown(data['format'])} is not known here: this workbook reads format {FORMAT}"
        )
    if set(data) != wanted:
        raise _refused(f"it must have the keys {', '.join(sorted(wanted))} and no other")
    learner_id = _checked("its learner", lambda: require_id("learner_id", data["learner_id"]))
    values = tuple(value for name, kind in _PARTS.items() for value in _values(name, kind, data[name]))
    return Contents(learner_id=learner_id, values=values)


def take_in(db: sqlite3.Connection, contents: Contents) -> Merged:
    """Add to a record what it does not hold yet.

    db: connection in a transaction that may write; what raises must undo it.

    Raises LabError when the record holds something else under the same id.
    """
    new = [value for value in contents.values if not _is_known(db, value)]
    for value in new:
        put_row(db, value)
    merged = Merged(added=_answers(new), known=_answers(contents.values) - _answers(new))
    # The other record's notes alone are no event: else two records would send notes to and fro for ever.
    if any(not isinstance(value, Note) for value in new):
        put_row(db, Note(id=new_id(), at=now(), words=_told(merged, contents.learner_id)))
    return merged


def _told(merged: Merged, learner_id: str) -> str:
    return (
        f"An exported record was taken in, of the learner numbered {learner_id}: "
        f"{merged.added} of its answers were new, {merged.known} were here already."
    )


def _answers(values: Iterable[Value]) -> int:
    return sum(isinstance(value, Attempt) for value in values)


def _is_known(db: sqlite3.Connection, value: Value) -> bool:
    kind = type(value)
    if kind is Beginning:
        return bool(read_rows(db, kind, lesson=value.lesson, at=value.at))
    found = read_rows(db, kind, id=value.id)
    if found and row_of(found[0]) != row_of(value):
        raise LabError(
            f"the exported record does not fit this one, {_NOTHING_TAKEN}: the {table_of(kind)} {value.id} "
            "is here with other content; one of the two was changed by hand, so keep both and ask for help"
        )
    return bool(found)


def _values(name: str, kind: type[Value], rows: object) -> tuple[Value, ...]:
    if not isinstance(rows, list):
        raise _refused(f"{name} is no list")
    found = tuple(
        _checked(f"{_ONE_OF[name]} {place}", lambda row=row: from_json(kind, row))
        for place, row in enumerate(rows, start=1)
    )
    late = next((place for place, one in enumerate(found, start=1) if one.at > _latest()), None)
    if late is not None:
        raise _refused(f"{_ONE_OF[name]} {late} has a time to come; set the clock of that machine")
    key = columns_of(kind) if kind is Beginning else ("id",)
    if len({tuple(getattr(value, column) for column in key) for value in found}) < len(found):
        raise _refused(f"{name} holds one {_ONE_OF[name]} twice")
    return found


def _latest() -> str:
    """The latest time that clocks of two machines that are not quite right can make believe."""
    return (datetime.now(UTC) + timedelta(days=1)).isoformat(timespec="microseconds")


def _checked(thing: str, make: Callable) -> object:
    try:
        return make()
    except LabError as fault:
        raise _refused(f"{thing}: {fault}") from None


def _parsed(text: object) -> object:
    if not isinstance(text, str):
        raise _refused(f"{shown(text)} is no text")
    if len(text) > MOST_CHARACTERS:
        raise _refused(f"it has {len(text)} characters, and {MOST_CHARACTERS} are the most")
    try:
        return json.loads(text, object_pairs_hook=_without_doubles, parse_constant=_no_number)
    except LabError:
        raise
    except RecursionError:
        raise _refused("its brackets are nested too deeply") from None
    except ValueError as fault:
        raise _refused(f"it is no JSON ({fault})") from None


def _without_doubles(pairs: list[tuple[str, object]]) -> dict:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise _refused(f"it has one key twice, among {shown([key for key, _ in pairs])}")
    return found


def _no_number(word: str) -> None:
    raise _refused(f"{word} is no number")


def _refused(why: str) -> LabError:
    return LabError(f"the exported record is no good, {_NOTHING_TAKEN}: {why}; export it again")


def _line(data: object) -> str:
    return _JSON.encode(data)
