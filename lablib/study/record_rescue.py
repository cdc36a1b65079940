"""Rescuing a damaged record: the file is set aside, and every row that can still be read goes into a new one.

The new file is made whole before the old one is moved, and nobody can write to the old one from when it is
read until it is moved. So whenever a process dies on the way, the next opening finds either the old file or
the new one finished.
"""

import os
import sqlite3
import time
from collections.abc import Iterable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from datetime import datetime
from pathlib import Path

from lablib.errors import LabError
from lablib.study.record_file import TIMEOUT_S, UnusableError, cannot, transaction
from lablib.study.record_pages import Row, rows_on_pages
from lablib.study.record_schema import Migrations, make_owner, migrate, owner_of, tables_after
from lablib.study.record_values import KINDS, Note, columns_of, from_row, new_id, now, row_of

# The half-typed answers: a row of them on a deleted page is an older one, so they are asked of the database.
_WRITTEN_OVER = "draft"
# Windows moves no file that anybody has open, this program included.
_MOVES_OPEN_FILES = os.name != "nt"
_PAUSE_S = 0.05
_MOST_SHOWN = 200


def finish_rescue(path: Path) -> None:
    """Put a rescued record in its place, if a process died just before it did so.

    path: the record's file. To be called alone (`record_file.alone`).
    """
    if not path.exists() and (new := _new_beside(path)).exists():
        _move(new, path)


def rescue(path: Path, migrations: Migrations, *, damage: str) -> str:
    """Set a damaged record aside, put what can be rescued in its place, and return what to tell the learner.

    path: the record's file. To be called alone (`record_file.alone`).
    migrations: as in `record_schema`.
    damage: what is wrong with it.

    Raises LabError when the folder cannot be written, or somebody else keeps the file open.
    """
    aside, new = _free_name(path), _new_beside(path)
    with ExitStack() as held:
        # It stays open to the end: on closing a file, POSIX lets go whatever locks the process has on it.
        raw = held.enter_context(_raw(path))
        old = held.enter_context(_held(path))
        trouble = _make_new(new, migrations, rows_on_pages(raw), _drafts(old), damage=damage, aside=aside)
        if not _MOVES_OPEN_FILES:
            held.close()
        _swap(path, aside, new)
    if not _MOVES_OPEN_FILES:
        # Somebody may have written between closing and moving. A row that is there already is passed over.
        with _raw(aside) as raw, transaction(path) as db:
            _put_rows(db, migrations, rows_on_pages(raw))
    return trouble


def _make_new(
    new: Path, migrations: Migrations, rows: Iterable[Row], drafts: list[tuple], *, damage: str, aside: Path
) -> str:
    for left in (new, _journal_of(new)):
        _remove(left)
    with transaction(new, make=True) as db:
        migrate(db, migrations)
        _put_rows(db, migrations, rows)
        for draft in drafts:
            _put(db, _WRITTEN_OVER, ("lesson", "maker", "seed", "given"), draft)
        has_owner = owner_of(db) is not None
        make_owner(db)
        trouble = _told(_count(db), has_owner=has_owner, damage=damage, aside=aside)
        note = Note(id=new_id(), at=now(), words=trouble)
        _put(db, "note", columns_of(Note), row_of(note))
    return trouble


def _told(count: int, *, has_owner: bool, damage: str, aside: Path) -> str:
    answers = {0: "No answer", 1: "1 answer"}.get(count, f"{count} answers")
    owner = "" if has_owner else " The id that tells this learner from others was lost; there is a new one."
    return (
        f"The record of your answers was damaged ({damage[:_MOST_SHOWN]}). {answers} could be rescued "
        f"into a new record.{owner} The damaged file is kept as {aside}"
    )


def _count(db: sqlite3.Connection) -> int:
    return db.execute("SELECT count(*) FROM attempt").fetchone()[0]


def _put_rows(db: sqlite3.Connection, migrations: Migrations, rows: Iterable[Row]) -> None:
    """Put every row into the table it fits, in the order of the row numbers."""
    tables = _tables_by_width(migrations)
    for _, columns in sorted((row for row in rows if len(row[1]) in tables), key=lambda row: row[0]):
        for table, names in tables[len(columns)]:
            _put_if_it_fits(db, table, names, columns)


def _tables_by_width(migrations: Migrations) -> dict[int, list[tuple[str, tuple[str, ...]]]]:
    """Return tables with their columns by the number of columns a row can have.

    A row that was written before a column was added to its table has so many columns fewer.
    """
    found: dict[int, list[tuple[str, tuple[str, ...]]]] = {}
    last = tables_after(migrations)
    for count in range(1, len(migrations) + 1):
        for table, names in tables_after(migrations[:count]).items():
            entry = (table, names)
            if table in last and table != _WRITTEN_OVER and entry not in found.setdefault(len(names), []):
                found[len(names)].append(entry)
    return found


def _put_if_it_fits(db: sqlite3.Connection, table: str, names: tuple[str, ...], columns: tuple) -> None:
    named = dict(zip(names, columns, strict=True))
    if kind := KINDS.get(table):
        try:
            from_row(kind, {name: named[name] for name in columns_of(kind) if name in named})
        except LabError:
            return
    # What is no row of this table is refused by the table's own checks.
    _put(db, table, names, columns)


def _put(db: sqlite3.Connection, table: str, names: Iterable[str], columns: tuple) -> None:
    marks = ", ".join("?" for _ in columns)
    with suppress(OverflowError):
        db.execute(f"INSERT OR IGNORE INTO {table} ({', '.join(names)}) VALUES ({marks})", columns)


def _drafts(old: sqlite3.Connection | None) -> list[tuple]:
    found = []
    with suppress(sqlite3.Error):
        for row in old.execute("SELECT lesson, maker, seed, given FROM draft") if old else ():
            found.append(row)
    return found


@contextmanager
def _held(path: Path) -> Iterator[sqlite3.Connection | None]:
    """Keep everybody from writing to a file; where SQLite cannot do so, nobody can write to it either."""
    with ExitStack() as held:
        try:
            db = held.enter_context(transaction(path, "EXCLUSIVE"))
        except UnusableError:
            db = None
        yield db


@contextmanager
def _raw(path: Path) -> Iterator:
    try:
        with path.open("rb") as file:
            yield file
    except OSError as fault:
        raise cannot(path, "read", fault) from None


def _swap(path: Path, aside: Path, new: Path) -> None:
    _move(path, aside)
    # A journal that was left would be taken for the new file's.
    if _journal_of(path).exists():
        _move(_journal_of(path), _journal_of(aside))
    _move(new, path)


def _remove(left: Path) -> None:
    try:
        left.unlink(missing_ok=True)
    except OSError as fault:
        raise cannot(left, "removed", fault) from None


def _move(old: Path, new: Path) -> None:
    end = time.monotonic() + TIMEOUT_S
    while True:
        try:
            old.replace(new)
            return
        except PermissionError as fault:
            # On Windows: somebody else has it open just now.
            if _MOVES_OPEN_FILES or time.monotonic() > end:
                raise cannot(old, "moved", fault) from None
            time.sleep(_PAUSE_S)
        except OSError as fault:
            raise cannot(old, "moved", fault) from None


def _free_name(path: Path) -> Path:
    """Return a name beside a file that nothing has: with the day and time in it, and a number if need be."""
    stem = f"{path.stem}.damaged-{datetime.now().strftime('%Y-%m-%d-%H%M%S')}"
    free, count = path.with_name(f"{stem}{path.suffix}"), 1
    while free.exists() or _journal_of(free).exists():
        count += 1
        free = path.with_name(f"{stem}-{count}{path.suffix}")
    return free


def _new_beside(path: Path) -> Path:
    return path.with_name(f"{path.name}.rescued")


def _journal_of(path: Path) -> Path:
    return path.with_name(f"{path.name}-journal")
