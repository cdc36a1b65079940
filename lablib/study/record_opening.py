"""Opening a record: it is made if it is not there, brought up to date, and rescued if it is damaged."""

import sqlite3
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from lablib.errors import LabError
from lablib.study.record_file import UnusableError, alone, cannot, is_there, transaction
from lablib.study.record_rescue import finish_rescue, rescue
from lablib.study.record_rows import read_rows
from lablib.study.record_schema import (
    Migrations,
    lacking,
    make_owner,
    migrate,
    owner_of,
    tables_after,
    tables_of,
    version_of,
)
from lablib.study.record_values import KINDS, Note

# Versions go up by one at a time: a number like this is damage, not a later workbook.
_MOST_VERSIONS = 50


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """What was found at opening.

    learner_id: of the record's owner.
    trouble: what was wrong with the file and what was done about it, in words; "" if nothing was.
    """

    learner_id: str
    trouble: str = ""


def open_record(path: Path, migrations: Migrations, *, thorough: bool = False) -> Opened:
    """Make sure that there is a sound record of this version at a path, and return what was found.

    path: where the record is, or is to be.
    migrations: as in `record_schema`.
    thorough: whether to read every row as well, because one turned out to be no good.

    Raises LabError when the record cannot be made, read or written, or a later workbook made it.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as fault:
        raise cannot(path, "made", fault) from None
    with suppress(UnusableError):
        return Opened(learner_id=_sound(path, migrations, thorough=thorough))
    try:
        with alone(path):
            return _put_right(path, migrations, thorough=thorough)
    except UnusableError as fault:
        raise hopeless(path, fault) from None


def hopeless(path: Path, fault: UnusableError) -> LabError:
    """Return the error for a record that is not sound even after it was put right."""
    return LabError(
        f"the record {path} cannot be put right ({fault}): see that its disk is sound, keep a copy of the "
        "file elsewhere, move the file away and try again"
    )


def _put_right(path: Path, migrations: Migrations, *, thorough: bool) -> Opened:
    """Rescue the record, unless somebody else did so while one waited to be alone."""
    finished = finish_rescue(path)
    try:
        learner_id = _sound(path, migrations, thorough=thorough)
        return Opened(learner_id=learner_id, trouble=_last_note(path) if finished else "")
    except UnusableError as fault:
        damage = str(fault)
    trouble = rescue(path, migrations, damage=damage)
    return Opened(learner_id=_sound(path, migrations), trouble=trouble)


def _sound(path: Path, migrations: Migrations, *, thorough: bool = False) -> str:
    """Return the learner's id from a record that is sound, made or brought up to date if need be.

    Raises UnusableError when it is not sound.
    """
    if is_there(path):
        with transaction(path, "DEFERRED") as db:
            version = version_of(db)
            _require_known(path, version, len(migrations))
            _require_no_harm(db, migrations[:version])
            owner = _require_owner(db) if version else ""
        if version == len(migrations):
            if thorough:
                _require_rows_and_writing(path)
            return owner
    with transaction(path, make=True) as db:
        _update(db, path, migrations)
    return _sound(path, migrations, thorough=thorough)


def _last_note(path: Path) -> str:
    with transaction(path, "DEFERRED") as db:
        return read_rows(db, Note)[-1].words


def _require_rows_and_writing(path: Path) -> None:
    with transaction(path) as db:
        for kind in KINDS.values():
            read_rows(db, kind)
        # Writes, and changes nothing.
        db.execute(f"PRAGMA user_version = {version_of(db)}")


def _require_known(path: Path, version: int, known: int) -> None:
    if not 0 <= version <= _MOST_VERSIONS:
        raise UnusableError("its version is no number of a version")
    if version > known:
        raise LabError(
            f"the record {path} is of version {version}, and this workbook knows versions up to {known}: "
            "it was left as it is; install the newer workbook again"
        )


def _require_no_harm(db: sqlite3.Connection, migrations: Migrations) -> None:
    if not migrations and tables_of(db):
        raise UnusableError("it is a database of something else")
    ((found,),) = db.execute("PRAGMA quick_check(1)").fetchall()
    if found != "ok":
        raise UnusableError(found.replace("\n", " ").removeprefix("*** in database main *** "))
    if missing := lacking(db, tables_after(migrations)):
        raise UnusableError(f"it lacks {', '.join(missing)}")


def _require_owner(db: sqlite3.Connection) -> str:
    if (owner := owner_of(db)) is None:
        raise UnusableError("it lacks its owner")
    return owner


def _update(db: sqlite3.Connection, path: Path, migrations: Migrations) -> None:
    version = version_of(db)
    try:
        migrate(db, migrations)
    except sqlite3.Error as fault:
        if fault.sqlite_errorcode != sqlite3.SQLITE_ERROR:
            raise
        raise LabError(
            f"the record {path} cannot be brought from version {version} to {len(migrations)} ({fault}): "
            "it was left as it was; install the workbook again"
        ) from None
    if version == 0:
        make_owner(db)
