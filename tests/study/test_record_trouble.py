"""When the disk or the system says no, the learner is told which file, what is wrong and what to do."""

import os
import re
import resource
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

import pytest
from full_record import full_record

from lablib.errors import LabError
from lablib.study import record_file, record_rescue
from lablib.study.record import Record

ANSWERED = {"lesson": "07", "maker": "edge", "seed": 5, "given": "4.20 mm", "state": "right"}
NOBODY = 65534
WHERE = "see that you may write in its folder, or set LABLIB_FOLDER to a folder you can write to"
ROOM = f"see that its disk has room and that you {WHERE.removeprefix('see that you ')}"
on_posix = pytest.mark.skipif(sys.platform == "win32", reason="rights are another matter there")


@contextmanager
def as_nobody() -> Iterator[None]:
    """Be a user whom rights bind, where the tests run as root."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(NOBODY)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.fixture
def shared() -> Iterator[Path]:
    """A folder that others may look into, unlike the tests' own."""
    with tempfile.TemporaryDirectory() as name:
        Path(name).chmod(0o755)
        yield Path(name)


@pytest.fixture
def impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(record_file, "TIMEOUT_S", 0.2)


def said_by(act) -> str:
    with pytest.raises(LabError) as said:
        act()
    return str(said.value)


@on_posix
def test_a_record_in_a_folder_that_cannot_be_written_is_read_all_the_same(shared: Path):
    record = full_record(shared / "record.sqlite3", 5)
    shared.chmod(0o555)
    record.path.chmod(0o444)
    with as_nobody():
        opened = Record(record.path)
        assert len(opened.attempts()) == 5
        opened.begin("03")
        said = said_by(lambda: opened.add(**ANSWERED))
    shared.chmod(0o755)

    assert said == (
        f"the record {record.path} cannot be opened or written "
        f"(attempt to write a readonly database): {WHERE}"
    )
    assert len(record.attempts()) == 5


@on_posix
def test_a_folder_that_cannot_be_written_keeps_a_record_from_being_made(shared: Path):
    shared.chmod(0o555)
    path = shared / "record.sqlite3"
    with as_nobody():
        here = said_by(lambda: Record(path))
        below = said_by(lambda: Record(shared / "folder" / "record.sqlite3"))
    shared.chmod(0o755)

    assert here == f"the record {path} cannot be opened or written (unable to open database file): {WHERE}"
    assert below == (
        f"the record {shared / 'folder' / 'record.sqlite3'} cannot be made ({os.strerror(13)}): {ROOM}"
    )
    assert list(shared.iterdir()) == []


@on_posix
def test_a_journal_that_cannot_be_made_is_said_in_the_same_way(shared: Path):
    record = full_record(shared / "record.sqlite3", 5)
    record.path.chmod(0o666)
    shared.chmod(0o555)
    with as_nobody():
        said = said_by(lambda: record.add(**ANSWERED))
    shared.chmod(0o755)

    assert re.fullmatch(
        re.escape(f"the record {record.path} cannot be opened or written (")
        + r"(unable to open database file|attempt to write a readonly database)"
        + re.escape(f"): {WHERE}"),
        said,
    )


@on_posix
def test_a_damaged_record_that_cannot_be_set_aside_is_said_so_and_left(shared: Path):
    path = shared / "record.sqlite3"
    path.write_text("no database", encoding="utf-8")
    shared.chmod(0o555)
    with as_nobody():
        said = said_by(lambda: Record(path))
    shared.chmod(0o755)

    assert said == f"the record {path} cannot be opened or written (unable to open database file): {WHERE}"
    assert path.read_text(encoding="utf-8") == "no database"


@on_posix
def test_a_file_that_may_not_be_read_is_named(shared: Path):
    path = full_record(shared / "record.sqlite3", 5).path
    path.chmod(0)
    with as_nobody():
        said = said_by(lambda: Record(path))

    assert said == f"the record {path} cannot be opened or written (unable to open database file): {WHERE}"


@on_posix
def test_a_folder_that_may_not_be_looked_into_is_said(shared: Path):
    path = full_record(shared / "record.sqlite3", 5).path
    shared.chmod(0)
    with as_nobody():
        said = said_by(lambda: Record(path))
    shared.chmod(0o755)

    assert said == f"the record {path} cannot be opened or written (unable to open database file): {WHERE}"


def test_a_folder_in_place_of_the_file_is_named(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    path.mkdir()

    assert said_by(lambda: Record(path)) == (
        f"the record {path} cannot be opened or written (unable to open database file): {WHERE}"
    )


def test_a_file_in_place_of_the_folder_is_named(tmp_path: Path):
    (tmp_path / "file").touch()
    path = tmp_path / "file" / "record.sqlite3"

    assert said_by(lambda: Record(path)).startswith(f"the record {path} cannot be made (")


def test_a_full_disk_is_said_and_what_was_kept_before_is_still_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    record = full_record(tmp_path / "record.sqlite3", 5)
    connected = record_file._connected

    def with_no_room(*words):
        db = connected(*words)
        pages = db.execute("PRAGMA page_count").fetchone()[0]
        db.execute(f"PRAGMA max_page_count = {pages}")
        return db

    monkeypatch.setattr(record_file, "_connected", with_no_room)
    added = []

    def until_full() -> None:
        while True:
            added.append(record.add(**ANSWERED | {"given": "x" * 2000}))

    assert said_by(until_full) == (
        f"the record {record.path} cannot be written (database or disk is full): make room on the disk, then "
        "try again; what was kept before is still there"
    )
    monkeypatch.undo()
    assert record.attempts()[5:] == tuple(added)
    record.add(**ANSWERED)
    assert len(Record(record.path).attempts()) == 6 + len(added)
    assert record.trouble == ""


@on_posix
def test_a_disk_that_fails_while_it_is_written_is_said(tmp_path: Path):
    record = full_record(tmp_path / "record.sqlite3", 5)
    size = record.path.stat().st_size
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, before[1]))
    try:
        said = said_by(lambda: record.add(**ANSWERED | {"given": "x" * 9000}))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)

    assert said == (
        f"the record {record.path} cannot be read or written (disk I/O error): see that its disk is "
        "connected and sound, then try again"
    )
    assert len(Record(record.path).attempts()) == 5


@pytest.mark.usefixtures("impatient")
def test_a_record_that_somebody_else_holds_is_said(tmp_path: Path):
    record = full_record(tmp_path / "record.sqlite3", 5)
    other = sqlite3.connect(record.path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    held = [
        said_by(act) for act in (lambda: record.add(**ANSWERED), record.attempts, lambda: Record(record.path))
    ]
    other.close()

    assert (
        held
        == [
            f"the record {record.path} has been in use elsewhere for 0.2 s: close what else has it open "
            "(another window of the workbook, a backup program), then try again"
        ]
        * 3
    )
    record.add(**ANSWERED)
    assert len(record.attempts()) == 6


@pytest.mark.usefixtures("impatient")
def test_who_only_reads_keeps_nobody_from_reading(tmp_path: Path):
    record = full_record(tmp_path / "record.sqlite3", 5)
    other = sqlite3.connect(record.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    assert len(Record(record.path).attempts()) == 5
    other.close()


@pytest.mark.usefixtures("impatient")
def test_a_damaged_record_that_somebody_else_holds_is_left_to_them(tmp_path: Path):
    path = full_record(tmp_path / "record.sqlite3", 5).path
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("DROP TABLE note")
    other.execute("BEGIN")
    other.execute("SELECT * FROM attempt").fetchone()

    assert said_by(lambda: Record(path)).startswith(f"the record {path} has been in use elsewhere for 0.2 s")
    assert [file.name for file in tmp_path.glob("record.damaged*")] == []
    other.close()
    assert len(Record(path).attempts()) == 5


@pytest.mark.usefixtures("impatient")
def test_whoever_is_at_a_rescue_already_is_waited_for(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    path.write_text("no database", encoding="utf-8")
    with record_file.alone(path):
        said = said_by(lambda: Record(path))

    assert said.startswith(f"the record {path} has been in use elsewhere for 0.2 s: close what else has it")
    assert path.read_text(encoding="utf-8") == "no database"
    assert "No answer could be rescued" in Record(path).trouble


def test_a_disk_that_spoils_the_new_record_too_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    path = tmp_path / "record.sqlite3"
    path.write_text("no database", encoding="utf-8")
    put = record_rescue._put_in_place

    def spoilt(file: BinaryIO, new: Path) -> None:
        put(file, new)
        file.seek(0)
        file.write(b"no database again")

    monkeypatch.setattr(record_rescue, "_put_in_place", spoilt)

    assert said_by(lambda: Record(path)) == (
        f"the record {path} cannot be put right (file is not a database): see that its disk is sound, keep a "
        "copy of the file elsewhere, move the file away and try again"
    )


def test_a_file_that_gets_damaged_again_and_again_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    record = full_record(tmp_path / "record.sqlite3", 5)
    opened = record._open_again

    def spoilt() -> None:
        opened()
        record.path.write_text("no database", encoding="utf-8")

    record.path.write_text("no database", encoding="utf-8")
    monkeypatch.setattr(record, "_open_again", spoilt)

    assert said_by(lambda: record.add(**ANSWERED)).startswith(
        f"the record {record.path} cannot be put right (file is not a database): see that its disk is sound"
    )


@pytest.mark.parametrize("step", ["_copy", "_journal_of", "_put_in_place", "finish_rescue"])
def test_a_rescue_that_the_system_refuses_is_said_and_done_the_next_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
):
    path = full_record(tmp_path / "record.sqlite3", 5).path
    with path.open("r+b") as file:
        file.write(b"no database any more")

    def refused(*_: object) -> None:
        raise OSError(28, "No space left on device")

    if step == "finish_rescue":
        monkeypatch.setattr(Path, "open", refused)
    else:
        monkeypatch.setattr(record_rescue, step, refused)

    said = said_by(lambda: Record(path))
    assert said == f"the record {path} cannot be rescued (No space left on device): {ROOM}"
    monkeypatch.undo()
    record = Record(path)
    assert "5 answers could be rescued" in record.trouble
    assert len(record.attempts()) == 5
