"""Rows read from bare pages are those the database gives."""

import io
import random
import sqlite3
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.study.record_pages import PAGE_BYTES, rows_on_pages

CELL = st.one_of(
    st.none(),
    st.integers(-(2**63), 2**63 - 1),
    st.sampled_from([0, 1, -1, 127, 128, -129, 2**15, 2**23, -(2**31), 2**47, 2**63 - 1]),
    st.floats(allow_nan=False),
    st.text(st.characters(exclude_categories=["Cs"])),
    st.binary(),
    st.sampled_from(["x" * size for size in (3900, 4040, 4061, 4062, 4090, 8150, 20_000)]),
)
ROW_NUMBER = st.integers(-(2**63), 2**63 - 1)


def database(rows: dict[int, tuple], path: Path | None = None) -> bytes:
    """Return the file of a database with one table of three columns."""
    db = sqlite3.connect(":memory:" if path is None else path, isolation_level=None)
    db.execute("PRAGMA page_size = 4096")
    db.execute("BEGIN")
    db.execute("CREATE TABLE t (a, b, c)")
    for number, row in rows.items():
        db.execute("INSERT INTO t (rowid, a, b, c) VALUES (?, ?, ?, ?)", (number, *row))
    db.execute("COMMIT")
    found = db.serialize() if path is None else path.read_bytes()
    db.close()
    return found


def rows_of(file: bytes) -> dict[int, tuple]:
    # The list of tables is itself a table, of five columns.
    return {number: row for number, row in rows_on_pages(io.BytesIO(file)) if len(row) == 3}


@given(st.dictionaries(ROW_NUMBER, st.tuples(CELL, CELL, CELL), max_size=8))
def test_every_kind_of_cell_is_read(rows: dict[int, tuple]):
    found = rows_of(database(rows))

    assert {number - 2**64 * (number >= 2**63): repr(row) for number, row in found.items()} == {
        number: repr(row) for number, row in rows.items()
    }


def test_rows_are_found_on_every_page_of_a_large_table(tmp_path: Path):
    rng = random.Random(1)
    rows = {number: (number, "y" * rng.randrange(300), None) for number in range(1, 5000)}
    file = database(rows, tmp_path / "large.sqlite3")

    assert rows_of(file) == rows
    # Without its first page, and without all that lies beyond some page, the rest is still there.
    assert rows_of(bytes(4096) + file[4096:]) == rows
    some = rows_of(file[: len(file) // 2])
    assert 2000 < len(some) < 5000
    assert some.items() <= rows.items()


@pytest.mark.parametrize("seed", range(40))
def test_harm_anywhere_costs_only_the_rows_it_touches(seed: int):
    rng = random.Random(seed)
    rows = {number: (f"row-{number:05}", "z" * rng.randrange(400), number) for number in range(1, 400)}
    file = bytearray(database(rows))
    pages = {number: file.index(row[0].encode()) // PAGE_BYTES for number, row in rows.items()}
    places = [rng.randrange(len(file)) for _ in range(rng.choice([1, 5, 25]))]
    for place in places:
        file[place] ^= rng.randrange(1, 256)
    found = rows_of(bytes(file))
    harmed = {place // PAGE_BYTES for place in places}
    sound = {number: row for number, row in rows.items() if pages[number] not in harmed}

    assert sound
    assert sound.items() <= found.items()


@given(st.binary(max_size=9000))
def test_anything_at_all_can_be_looked_through(file: bytes):
    for start in (b"", b"\x0d", bytes(100) + b"\x0d\x00\x00\x01\x00"):
        assert isinstance(list(rows_on_pages(io.BytesIO(start + file))), list)


def test_a_chain_of_pages_that_goes_in_a_circle_comes_to_an_end():
    file = bytearray(database({1: ("a", "x" * 50_000, "b")}))
    for page in range(2, len(file) // 4096):
        file[page * 4096 : page * 4096 + 4] = (3).to_bytes(4, "big")

    assert len(rows_of(bytes(file))) <= 1
