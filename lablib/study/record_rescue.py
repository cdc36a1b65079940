"""Rescuing a damaged record: the file is set aside, and every row that can still be read goes into a new one.

The file stays in its place and is given new content, with everybody else kept from it. Were another file put
there, whoever still had the old one open would take the new one's journal for the old one's. The copy set
aside and the new content are whole before the file is touched, so a process may die at any moment.
"""

import os
import shutil
import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from datetime import datetime
from pathlib import Path
from typing import BinaryIO

from lablib.errors import LabError
from lablib.study.record_file import UnusableError, cannot, transaction
from lablib.study.record_pages import PAGE_BYTES, Row, rows_on_pages
from lablib.study.record_schema import Migrations, make_owner, migrate, owner_of, tables_after
from lablib.study.record_values import KINDS, Note, columns_of, from_row, new_id, now, row_of

# The half-typed answers: a row of them on a deleted page is an older one, so they are asked of the database.
_WRITTEN_OVER = "draft"
# What stands on the page in these columns means nothing: it is the number of the row.
_ROW_NUMBERS = ("place", "one")
_MOST_SHOWN = 200
# Stands at the head of a file while it is given its new content; no database begins like this.
_UNDER_WAY = b"The rescued record is being put in place here.\n"


def finish_rescue(path: Path) -> bool:
    """Give a record its new content, if a process died while it did so, and return whether one had.

    path: the record's file. To be called alone (`record_file.alone`).
    """
    with _in_words(path), suppress(FileNotFoundError), path.open("r+b") as file:
        if file.read(len(_UNDER_WAY)) == _UNDER_WAY:
            _set_journal_aside(path, _free_name(path))
            _put_in_place(file, _new_beside(path))
            return True
    return False


def rescue(path: Path, migrations: Migrations, *, damage: str) -> str:
    """Set a damaged record aside, put what can be rescued in its place, and return what to tell the learner.

    path: the record's file. To be called alone (`record_file.alone`).
    migrations: as in `record_schema`.
    damage: what is wrong with it.

    Raises LabError when the folder cannot be written, or somebody else keeps the file in use.
    """
    # The file is closed before the lock is given back: closing it, POSIX drops what locks this process has.
    with _in_words(path), _held(path) as old, path.open("r+b") as file:
        aside = _free_name(path)
        _copy(file, aside)
        trouble = _make_new(path, migrations, rows_on_pages(file), _drafts(old), damage=damage, aside=aside)
        _set_journal_aside(path, aside)
        _put_in_place(file, _new_beside(path))
    return trouble


def _copy(file: BinaryIO, aside: Path) -> None:
    with aside.open("xb") as copy:
        shutil.copyfileobj(file, copy)
        _flush(copy)


def _set_journal_aside(path: Path, aside: Path) -> None:
    # One that was left would be taken for that of the new content.
    if _journal_of(path).exists():
        _journal_of(path).replace(_journal_of(aside))


def _put_in_place(file: BinaryIO, new: Path) -> None:
    """Write new content over a file, its first page last: until then nobody takes it for a database."""
    with new.open("rb") as content:
        file.seek(0)
        file.write(_UNDER_WAY)
        _flush(file)
        first = content.read(PAGE_BYTES)
        file.seek(PAGE_BYTES)
        shutil.copyfileobj(content, file)
        file.truncate()
        _flush(file)
        file.seek(0)
        file.write(first)
        _flush(file)
    new.unlink()


def _flush(file: BinaryIO) -> None:
    file.flush()
    os.fsync(file.fileno())


def _make_new(
    path: Path, migrations: Migrations, rows: Iterable[Row], drafts: list[tuple], *, damage: str, aside: Path
) -> str:
    """Make the new content in a file beside the record, and return what to tell the learner."""
    new = _new_beside(path)
    for left in (new, _journal_of(new)):
        left.unlink(missing_ok=True)
    with transaction(new, make=True, record=path) as db:
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
    # The table's own checks refuse what is no row of it.
    _put(db, table, names, tuple(None if name in _ROW_NUMBERS else named[name] for name in names))


def _put(db: sqlite3.Connection, table: str, names: Iterable[str], columns: tuple) -> None:
    marks = ", ".join("?" for _ in columns)
    # Not every value fits into every column, and what does not is no error but damage.
    with suppress(OverflowError, sqlite3.IntegrityError):
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
def _in_words(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as fault:
        raise cannot(path, "rescued", fault) from None


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
