"""The tables of a learner's record, and how a file is brought from one version to the next.

The number of migrations a file has had is its version (`PRAGMA user_version`). A migration that has been
given out is never changed; what is to be different is a further one. Rows of `attempt`, `dealing`,
`beginning` and `note` are only ever added, `draft` alone is written over.
"""

import sqlite3
from collections.abc import Sequence
from functools import cache

from lablib.study.record_values import new_id

Migrations = tuple[tuple[str, ...], ...]

_ID = "TEXT NOT NULL UNIQUE CHECK (length(id) = 32 AND id NOT GLOB '*[^0-9a-f]*')"
_AT = "TEXT NOT NULL CHECK (at GLOB '[12][0-9][0-9][0-9]-[01][0-9]-[0-3][0-9]T*+00:00')"
_TEXT = "TEXT NOT NULL CHECK ({0} <> '' AND typeof({0}) = 'text')"
_WHOLE = "INTEGER NOT NULL CHECK (typeof({0}) = 'integer' AND {0} >= 0)"
_GIVEN = "TEXT NOT NULL CHECK (json_valid(given))"
_LESSON, _MAKER, _STATE, _WORDS = (_TEXT.format(name) for name in ("lesson", "maker", "state", "words"))
_SEED, _HINTS = (_WHOLE.format(name) for name in ("seed", "hints"))

# Each migration is a row of statements. The checks let `PRAGMA quick_check` find harm done inside a row.
MIGRATIONS: Migrations = (
    (
        "CREATE TABLE owner (one INTEGER PRIMARY KEY CHECK (one = 1), "
        "learner_id TEXT NOT NULL CHECK (length(learner_id) = 32 AND learner_id NOT GLOB '*[^0-9a-f]*'))",
        f"CREATE TABLE attempt (place INTEGER PRIMARY KEY, id {_ID}, at {_AT}, lesson {_LESSON}, "
        f"maker {_MAKER}, seed {_SEED}, given {_GIVEN}, state {_STATE}, slips TEXT NOT NULL, hints {_HINTS})",
        f"CREATE TABLE dealing (place INTEGER PRIMARY KEY, id {_ID}, at {_AT}, lesson {_LESSON}, "
        f"maker {_MAKER}, seed {_SEED})",
        f"CREATE TABLE beginning (lesson {_LESSON}, at {_AT}, UNIQUE (lesson, at))",
        f"CREATE TABLE note (place INTEGER PRIMARY KEY, id {_ID}, at {_AT}, words {_WORDS})",
        f"CREATE TABLE draft (lesson {_LESSON}, maker {_MAKER}, seed {_SEED}, given {_GIVEN}, "
        "PRIMARY KEY (lesson, maker))",
    ),
)


def version_of(db: sqlite3.Connection) -> int:
    """Return how many migrations a file has had."""
    return db.execute("PRAGMA user_version").fetchone()[0]


def migrate(db: sqlite3.Connection, migrations: Migrations) -> None:
    """Apply the migrations a file has not had yet, within the transaction that is open.

    db: connection with a transaction that may write.
    """
    for statements in migrations[version_of(db) :]:
        for statement in statements:
            db.execute(statement)
    db.execute(f"PRAGMA user_version = {len(migrations)}")


def make_owner(db: sqlite3.Connection) -> None:
    """Give a record without an owner the id of a new one."""
    db.execute("INSERT OR IGNORE INTO owner (one, learner_id) VALUES (1, ?)", (new_id(),))


def owner_of(db: sqlite3.Connection) -> str | None:
    """Return the learner's id, or None where it is missing."""
    row = db.execute("SELECT learner_id FROM owner").fetchone()
    return row[0] if row else None


def tables_of(db: sqlite3.Connection) -> dict[str, tuple[str, ...]]:
    """Return the columns of each table of a file."""
    names = db.execute("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    return {
        name: tuple(row[1] for row in db.execute(f'PRAGMA table_info("{name}")'))
        for (name,) in names.fetchall()
    }


@cache
def tables_after(migrations: Migrations) -> dict[str, tuple[str, ...]]:
    """Return the columns each table has after these migrations; the caller must not change it."""
    db = sqlite3.connect(":memory:", isolation_level=None)
    try:
        migrate(db, migrations)
        return tables_of(db)
    finally:
        db.close()


def lacking(db: sqlite3.Connection, wanted: dict[str, Sequence[str]]) -> tuple[str, ...]:
    """Return the names of tables that are missing from a file, or lack a column."""
    there = tables_of(db)
    return tuple(name for name, columns in wanted.items() if not set(columns) <= set(there.get(name, ())))
