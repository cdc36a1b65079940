"""A record from another version of the workbook: brought up to date, or left alone."""

import sqlite3
from pathlib import Path

import pytest
from full_record import answer, full_record, full_text, kept_answers

from lablib.errors import LabError
from lablib.study.record import MIGRATIONS, Record

COLUMN = ("ALTER TABLE attempt ADD COLUMN seconds REAL DEFAULT 0.5", "CREATE TABLE extra (word TEXT)")
LATER = (*MIGRATIONS, COLUMN, ("INSERT INTO extra VALUES ('third')",))


def ask(path: Path, query: str) -> list[tuple]:
    db = sqlite3.connect(path, isolation_level=None)
    try:
        return db.execute(query).fetchall()
    finally:
        db.close()


def test_an_older_record_is_brought_up_to_date_with_all_it_holds(tmp_path: Path):
    before = full_record(tmp_path / "record.sqlite3", 30)
    after = Record(before.path, migrations=LATER)

    assert ask(before.path, "PRAGMA user_version") == [(len(LATER),)]
    assert ask(before.path, "SELECT seconds, count(*) FROM attempt") == [(0.5, 30)]
    assert ask(before.path, "SELECT word FROM extra") == [("third",)]
    assert after.learner_id == before.learner_id
    assert after.trouble == ""
    after.add(**{key: answer(99)[key] for key in ("lesson", "maker", "seed", "given", "state")})
    assert len(Record(before.path, migrations=LATER).attempts()) == 31
    assert ask(before.path, "SELECT word FROM extra") == [("third",)]


def test_a_new_record_goes_through_every_migration(tmp_path: Path):
    Record(tmp_path / "record.sqlite3", migrations=LATER)

    assert ask(tmp_path / "record.sqlite3", "SELECT word FROM extra") == [("third",)]


def test_a_record_of_a_later_workbook_is_left_alone(tmp_path: Path):
    path = full_record(tmp_path / "record.sqlite3", 3).path
    Record(path, migrations=LATER)
    before = path.read_bytes()
    with pytest.raises(LabError) as refused:
        Record(path)

    assert str(refused.value) == (
        f"the record {path} is of version 3, and this workbook knows versions up to 1: "
        "it was left as it is; install the newer workbook again"
    )
    assert path.read_bytes() == before
    assert [file.name for file in tmp_path.iterdir()] == ["record.sqlite3"]


def test_a_migration_that_fails_changes_nothing_at_all(tmp_path: Path):
    record = full_record(tmp_path / "record.sqlite3", 3)
    before = record.path.read_bytes()
    with pytest.raises(LabError) as refused:
        Record(record.path, migrations=(*LATER, ("ALTER TABLE nowhere ADD COLUMN x",)))

    assert str(refused.value) == (
        f"the record {record.path} cannot be brought from version 1 to 4 (no such table: nowhere): "
        "it was left as it was; install the workbook again"
    )
    assert record.path.read_bytes() == before
    assert len(record.attempts()) == 3


def test_a_kernel_of_the_older_workbook_goes_on_with_a_record_brought_up_to_date(tmp_path: Path):
    record = full_record(tmp_path / "record.sqlite3", 3)
    Record(record.path, migrations=LATER)
    record.add(lesson="07", maker="edge", seed=1, given="x", state="right")

    assert len(record.attempts()) == 4


def test_rows_from_before_a_column_was_added_are_rescued_as_well(tmp_path: Path):
    record = full_record(tmp_path / "record.sqlite3", 100)
    before = kept_answers(record)
    later = Record(record.path, migrations=LATER)
    new = later.add(lesson="07", maker="edge", seed=1, given="x", state="right")
    with record.path.open("r+b") as file:
        file.write(bytes(4096))
    rescued = Record(record.path, migrations=LATER)

    assert rescued.trouble.startswith(
        "The record of your answers was damaged (file is not a database). 101 answers could be rescued"
    )
    assert kept_answers(rescued) == before | {new.id: new}
    assert rescued.learner_id == record.learner_id
    assert ask(record.path, "SELECT word FROM extra") == [("third",), ("third",)]


def test_a_version_that_cannot_be_is_damage(tmp_path: Path):
    path = full_record(tmp_path / "record.sqlite3", 3).path
    ask(path, "PRAGMA user_version = 16777217")
    rescued = Record(path)

    assert "was damaged (its version is no number of a version). 3 answers" in rescued.trouble


def test_a_database_of_something_else_is_set_aside_whole(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    ask(path, "CREATE TABLE recipe (name TEXT)")
    ask(path, "INSERT INTO recipe VALUES ('soup')")
    record = Record(path)
    (aside,) = tmp_path.glob("record.damaged-*")

    assert record.trouble == (
        "The record of your answers was damaged (it is a database of something else). No answer could be "
        "rescued into a new record. The id that tells this learner from others was lost; there is a new one. "
        f"The damaged file is kept as {aside}"
    )
    assert ask(aside, "SELECT name FROM recipe") == [("soup",)]
    assert record.merge(full_text(2)).added == 2
