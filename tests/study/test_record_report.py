"""What is said of a record in plain lines, and what is written to files and read from them."""

import json
import os
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from full_record import answer, exported, full_record, full_text

from lablib import places
from lablib.errors import LabError
from lablib.study import record_report
from lablib.study.record import Record
from lablib.study.record_report import export_to, import_from, record_text


@pytest.fixture(autouse=True)
def two_hours_ahead(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A time zone of its own, so that times are the same on every machine."""
    if hasattr(time, "tzset"):
        monkeypatch.setenv("TZ", "EET-2")
        time.tzset()
    yield
    monkeypatch.undo()
    if hasattr(time, "tzset"):
        time.tzset()


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "learner" / "record.sqlite3"


def test_without_a_record_it_says_so_and_makes_none(path: Path):
    assert record_text(path, name="Ana") == (
        f"Record of Ana\n{path}\n\n"
        "Nothing is there yet: the record is made when a lesson's self-check is first opened."
    )
    assert not path.parent.exists()


def test_a_record_with_nothing_in_it(path: Path):
    Record(path)

    assert record_text(path, name="") == f"Record of this account's learner\n{path}\n\nNo answers."


@pytest.mark.skipif(sys.platform == "win32", reason="the time zone is the machine's there")
def test_lessons_are_told_in_their_order_with_what_was_right_in_the_end(path: Path):
    tries = [
        ("07", 1, "wrong"),
        ("07", 1, "right"),
        ("07", 2, "right"),
        ("07", 2, "faulty"),
        ("20", 1, "right"),
    ]
    rows = [
        answer(number, lesson=lesson, maker="edge", seed=seed, state=state)
        for number, (lesson, seed, state) in enumerate(tries)
    ]
    rows.append(answer(9, lesson="07", maker="blank", seed=1, state="right"))
    begun = [
        {"lesson": lesson, "at": f"2026-03-0{day}T23:30:00.000000+00:00"}
        for lesson, day in (("07", 1), ("03", 2))
    ]
    note = {"id": "c" * 32, "at": "2026-03-05T12:00:00.000000+00:00", "words": "Something happened."}
    record = Record(path)
    record.merge(exported(rows, begun=begun, notes=[note]))
    (imported,) = (at for at, words in record.notes() if "taken in" in words)

    assert record_text(path, name="Ana").splitlines() == [
        "Record of Ana",
        str(path),
        "",
        "6 answers.",
        "",
        "Lesson 03, begun 2026-03-03 01:30: no question answered yet.",
        "Lesson 07, begun 2026-03-02 01:30: 3 questions answered, 3 of them right in the end.",
        "Lesson 20, its beginning not noted: 1 question answered, 1 of them right in the end.",
        "",
        "What happened to the record:",
        "2026-03-05 14:00  Something happened.",
        f"{record_report._local(imported)}  An exported record was taken in, of the learner numbered "
        f"{'a' * 32}: 6 of its answers were new, 0 were here already.",
    ]


def test_damage_found_while_telling_is_told(path: Path):
    full_record(path, 5)
    with path.open("r+b") as file:
        file.write(bytes(200))
    text = record_text(path, name="")

    assert "5 answers.\n" in text
    assert "was damaged (file is not a database). 5 answers could be rescued into a new record." in text


def test_what_would_move_a_terminals_cursor_is_not_printed(path: Path):
    record = Record(path)
    other = json.loads(record.export())
    note = {"id": "0" * 32, "at": "2026-01-01T00:00:00.000000+00:00", "words": "\x1b[2Jgone"}
    known = next(name for name, value in other.items() if isinstance(value, list) and "note" in name)
    record.merge(json.dumps(other | {known: [note]}))
    told = record_text(path, name="")
    assert "?[2Jgone" in told
    assert "\x1b" not in told


def test_a_record_goes_to_a_file_and_into_another_record(path: Path, tmp_path: Path):
    first = full_record(path, 5)
    file = tmp_path / "Ünicode name.json"
    assert export_to(path, file) == f"The record is written to {file}; half-typed answers stay behind."
    assert file.read_text(encoding="utf-8") == first.export()
    assert json.loads(file.read_text(encoding="utf-8"))["learner_id"] == first.learner_id

    other = tmp_path / "other" / "record.sqlite3"
    where = f"The record is {other}"
    assert import_from(other, file) == f"New entries: 5. Entries that were here before: 0. {where}"
    assert import_from(other, file) == f"New entries: 0. Entries that were here before: 5. {where}"
    assert Record(other).attempts() == first.attempts()


def refused(act) -> str:
    with pytest.raises(LabError) as said:
        act()
    return str(said.value)


def test_a_file_that_is_there_is_never_written_over(path: Path, tmp_path: Path):
    full_record(path, 5)
    file = tmp_path / "notes.txt"
    file.write_text("my notes", encoding="utf-8")

    assert refused(lambda: export_to(path, file)) == (
        f"{file} is there already and was left as it is: give another name"
    )
    assert file.read_text(encoding="utf-8") == "my notes"


def test_without_a_record_there_is_nothing_to_export(path: Path, tmp_path: Path):
    assert refused(lambda: export_to(path, tmp_path / "out.json")) == (
        f"there is no record {path} to export: give --learner NAME if it is another learner's"
    )
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_cannot_be_written_is_named(path: Path, tmp_path: Path):
    full_record(path, 5)
    file = tmp_path / "nowhere" / "out.json"

    assert refused(lambda: export_to(path, file)) == (
        f"{file} cannot be written ({os.strerror(2)}): give a file in a folder you may write in"
    )


def test_half_a_file_is_not_left_behind(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    full_record(path, 5)
    file = tmp_path / "out.json"

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(places.os, "fsync", full)

    assert refused(lambda: export_to(path, file)) == (
        f"{file} cannot be written (No space left on device): give a file in a folder you may write in"
    )
    assert not file.exists()


@pytest.mark.parametrize("name", ["missing.json", "folder", "link.json", "link to nothing"])
def test_only_a_file_itself_is_read(path: Path, tmp_path: Path, name: str):
    (tmp_path / "folder").mkdir()
    (tmp_path / "good.json").write_text(full_text(3), encoding="utf-8")
    (tmp_path / "link.json").symlink_to(tmp_path / "good.json")
    (tmp_path / "link to nothing").symlink_to(tmp_path / "nothing")

    assert refused(lambda: import_from(path, tmp_path / name)) == (
        f"{tmp_path / name} is no file, or a link to one: give the exported file itself"
    )
    assert not path.exists()


def test_a_file_that_cannot_be_read_is_named(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    file = tmp_path / "in.json"
    file.touch()

    def barred(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", barred)

    assert refused(lambda: import_from(path, file)) == (
        f"{file} cannot be read (Permission denied): give a file you may read"
    )


def test_a_file_of_unlikely_length_is_not_read_to_its_end(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    file = tmp_path / "in.json"
    file.write_text(full_text(3), encoding="utf-8")
    size = file.stat().st_size
    monkeypatch.setattr(record_report, "MOST_CHARACTERS", size - 1)

    assert refused(lambda: import_from(path, file)) == (
        f"{file} is longer than {size - 1} bytes: give a record that was exported here"
    )
    monkeypatch.setattr(record_report, "MOST_CHARACTERS", size)
    assert import_from(path, file).startswith("New entries: 3.")


def test_a_file_of_bytes_is_no_text(path: Path, tmp_path: Path):
    file = tmp_path / "in.json"
    file.write_bytes(b"\xff\xfe{}")

    assert refused(lambda: import_from(path, file)) == (
        f"{file} is no UTF-8 text: give the exported file as it was written"
    )


def test_a_mark_that_some_editors_put_in_front_does_not_matter(path: Path, tmp_path: Path):
    file = tmp_path / "in.json"
    file.write_text(full_text(3), encoding="utf-8-sig")

    assert import_from(path, file).startswith("New entries: 3.")


def test_a_file_that_is_no_export_is_named_with_what_is_wrong(path: Path, tmp_path: Path):
    file = tmp_path / "in.json"
    file.write_text("{}", encoding="utf-8")

    assert refused(lambda: import_from(path, file)) == (
        f"{file}: the exported record is no good, so nothing was taken in: it does not begin as an exported "
        "record does; export it again"
    )
