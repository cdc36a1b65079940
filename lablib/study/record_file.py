"""The file of a record: a transaction on it, its errors in words, and the lock of whoever rescues it.

Not WAL: Pythons in common use link an SQLite with a fault in it, and it fails on network drives. A connection
lives for one transaction, so that nothing is left open when a kernel is killed.
"""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import quote

from lablib.errors import LabError
from lablib.places import FOLDER_VARIABLE

TIMEOUT_S = 10.0
# The low byte of an SQLite error code says what kind of error it is.
_KIND = 0xFF
_HARMED = (
    sqlite3.SQLITE_CORRUPT,
    sqlite3.SQLITE_NOTADB,
    sqlite3.SQLITE_ERROR,
    sqlite3.SQLITE_FORMAT,
    sqlite3.SQLITE_TOOBIG,
)
_BUSY = (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
_FORBIDDEN = (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH)
_BROKEN = (sqlite3.SQLITE_IOERR, sqlite3.SQLITE_PROTOCOL)


class UnusableError(Exception):
    """A file that cannot be used as it is: damaged, gone, or no record. The text says which."""


@contextmanager
def transaction(
    path: Path, kind: str = "IMMEDIATE", *, make: bool = False, record: Path | None = None
) -> Iterator[sqlite3.Connection]:
    """Yield a connection within a transaction: one that writes is committed at the end, undone by any error.

    path: the file.
    kind: "IMMEDIATE" to write, "DEFERRED" to read, "EXCLUSIVE" to do neither and keep out all others.
    make: whether to make the file if it is not there.
    record: the record that messages name, if it is another file.

    Raises UnusableError for a file that is damaged or gone, LabError when it cannot be read or written.
    """
    if not make and not is_there(path):
        raise UnusableError("it is not there any more")
    try:
        db = _connected(path, "rwc" if make else "rw")
        try:
            _begin(db, kind)
            yield db
            if kind == "IMMEDIATE":
                db.execute("COMMIT")
        finally:
            # An open transaction is rolled back by it.
            db.close()
    except sqlite3.Error as fault:
        raise _in_words(record or path, fault) from fault
    except UnicodeDecodeError as fault:
        # SQLite's own message quotes harmed bytes.
        raise UnusableError("its tables have no proper names") from fault


@contextmanager
def alone(path: Path) -> Iterator[None]:
    """Keep out everybody else who would rescue a record.

    path: the record's file. The lock is a file of its own beside it, which SQLite locks on every platform
    and the system releases when a process dies. It stays there: removed, it would give errors to those
    who wait for it.

    Raises LabError when somebody else is at it for longer than TIMEOUT_S.
    """
    lock = path.with_name(f"{path.name}.lock")
    with transaction(lock, "EXCLUSIVE", make=True, record=path):
        yield


def is_there(path: Path) -> bool:
    """Return whether there is a file at a path, as far as one may look."""
    try:
        return path.exists()
    except OSError:
        return False


def cannot(path: Path, doing: str, fault: OSError) -> LabError:
    """Return the error for something that the system does not allow.

    path: the record's file; doing: such as "made".
    """
    return LabError(
        f"the record {path} cannot be {doing} ({fault.strerror}): see that its disk has room and that you "
        f"may write in its folder, or set {FOLDER_VARIABLE} to a folder you can write to"
    )


def _connected(path: Path, mode: str) -> sqlite3.Connection:
    posix = path.as_posix()
    # Three slashes stand before a full path, five before one of a network drive.
    full = posix if posix.startswith("/") else f"/{posix}"
    address = f"file://{quote(os.fsencode(full), safe='/:')}?mode={mode}"
    db = sqlite3.connect(address, uri=True, timeout=TIMEOUT_S, isolation_level=None)
    # Harm done to a letter must not keep the rest of a text from being read.
    db.text_factory = _text
    return db


def _begin(db: sqlite3.Connection, kind: str) -> None:
    db.execute("PRAGMA journal_mode = DELETE").fetchone()
    db.execute("PRAGMA synchronous = FULL")
    # On a Mac a plain sync leaves it to the disk when to write.
    db.execute("PRAGMA fullfsync = 1")
    db.execute("PRAGMA cell_size_check = 1")
    db.execute(f"BEGIN {kind}")


def _text(raw: bytes) -> str:
    return raw.decode("utf-8", errors="replace")


def _may_be_written(path: Path) -> bool:
    return os.access(path, os.W_OK, effective_ids=os.access in os.supports_effective_ids)


def _in_words(path: Path, fault: sqlite3.Error) -> Exception:
    kind = getattr(fault, "sqlite_errorcode", 0) & _KIND
    if kind in _HARMED:
        return UnusableError(str(fault))
    if getattr(fault, "sqlite_errorcode", 0) == sqlite3.SQLITE_READONLY and _may_be_written(path):
        return UnusableError("it says of itself that it cannot be written")
    if kind in _BUSY:
        return LabError(
            f"the record {path} has been in use elsewhere for {TIMEOUT_S:g} s: close what else has it open "
            "(another window of the workbook, a backup program), then try again"
        )
    if kind in _FORBIDDEN:
        return LabError(
            f"the record {path} cannot be opened or written ({fault}): see that you may write in its folder, "
            f"or set {FOLDER_VARIABLE} to a folder you can write to"
        )
    if kind == sqlite3.SQLITE_FULL:
        return LabError(
            f"the record {path} cannot be written ({fault}): make room on the disk, then try again; "
            "what was kept before is still there"
        )
    if kind in _BROKEN:
        return LabError(
            f"the record {path} cannot be read or written ({fault}): see that its disk is connected and "
            "sound, then try again"
        )
    return fault
