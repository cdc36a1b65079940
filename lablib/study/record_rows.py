"""Values of a record put into its tables and read from them, within a transaction that is open."""

import sqlite3

from lablib.errors import LabError
from lablib.study.record_file import UnusableError
from lablib.study.record_values import Value, columns_of, from_row, row_of, table_of


def put_row(db: sqlite3.Connection, value: Value) -> None:
    """Add a value to its table."""
    names, cells = columns_of(type(value)), row_of(value)
    marks = ", ".join("?" for _ in cells)
    db.execute(f"INSERT INTO {table_of(type(value))} ({', '.join(names)}) VALUES ({marks})", cells)


def read_rows(
    db: sqlite3.Connection, kind: type[Value], *, order: str = "rowid", **wanted: str | None
) -> tuple[Value, ...]:
    """Return the values of one kind.

    order: the columns to sort by.
    wanted: what columns must be equal to; None for anything.

    Raises UnusableError when a row holds no such value.
    """
    names = columns_of(kind)
    asked = {name: value for name, value in wanted.items() if value is not None}
    where = f" WHERE {' AND '.join(f'{name} = ?' for name in asked)}" if asked else ""
    query = f"SELECT {', '.join(names)} FROM {table_of(kind)}{where} ORDER BY {order}"
    # All at once: an error that still holds rows under way would keep the file locked when it is closed.
    rows = db.execute(query, tuple(asked.values())).fetchall()
    try:
        return tuple(from_row(kind, dict(zip(names, row, strict=True))) for row in rows)
    except LabError as fault:
        raise UnusableError(str(fault)) from None
