"""A damaged record is set aside, what can be read of it is rescued, and the learner is told in words."""

import random
import re
import sqlite3
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import BinaryIO

import pytest
from full_record import full_record, full_text, kept_answers

from lablib.study import record_rescue
from lablib.study.record import Attempt, Record

COUNT = 400
PAGE = 4096
NEW = ["record.sqlite3", "record.sqlite3.lock"]


class Sound:
    """A record before it comes to harm: its bytes and what it holds."""

    def __init__(self, path: Path) -> None:
        record = full_record(path, COUNT)
        self.answers = kept_answers(record)
        self.learner_id, self.notes = record.learner_id, record.notes()
        self.dealt, self.begun, self.drafts = record.dealt("07"), record.begun(), record.drafts("07")
        self.file = path.read_bytes()
        # An id stands in its index as well; only in the row itself a time follows it.
        self.pages = {key: _pages_with(self.file, key.encode() + b"20") for key in self.answers}
        self.long_pages = _pages_with(self.file, b"long long long")

    def out_of_harm(self, harmed: set[int]) -> dict[str, Attempt]:
        """Return the answers that have no byte on any of these pages.

        A long one goes on from its own page to others, which its text is found on.
        """
        return {
            key: one
            for key, one in self.answers.items()
            if self.pages[key].isdisjoint(harmed)
            and not (str(one.given).startswith("long") and harmed & self.long_pages)
        }


def _pages_with(file: bytes, words: bytes) -> set[int]:
    return {found.start() // PAGE for found in re.finditer(re.escape(words), file)}


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Sound:
    return Sound(tmp_path_factory.mktemp("sound") / "record.sqlite3")


@pytest.fixture
def path(tmp_path: Path, sound: Sound) -> Path:
    """A sound record of its own for each test."""
    (tmp_path / "record.sqlite3").write_bytes(sound.file)
    return tmp_path / "record.sqlite3"


def set_aside(path: Path) -> Path:
    (aside,) = path.parent.glob("record.damaged-*.sqlite3")
    return aside


def with_bytes(path: Path, place: int, content: bytes) -> None:
    with path.open("r+b") as file:
        file.seek(place)
        file.write(content)


def ask(path: Path, *statements: str) -> None:
    db = sqlite3.connect(path, isolation_level=None)
    for statement in statements:
        db.execute(statement)
    db.close()


def test_the_sound_record_is_large_enough_to_be_harmed_in_many_places(sound: Sound):
    assert len(sound.file) > 40 * PAGE
    assert {len(pages) for pages in sound.pages.values()} == {1}
    assert sound.out_of_harm(set()) == sound.answers


def test_a_sound_record_is_not_touched(path: Path, sound: Sound):
    record = Record(path)

    assert record.trouble == ""
    assert path.read_bytes() == sound.file
    assert [file.name for file in path.parent.iterdir()] == ["record.sqlite3"]


def test_what_was_done_is_said_and_noted(path: Path, sound: Sound):
    damaged = b"not a database any more" + sound.file[23:]
    path.write_bytes(damaged)
    before = datetime.now().replace(microsecond=0)
    record = Record(path)
    aside = set_aside(path)

    assert record.trouble == (
        "The record of your answers was damaged (file is not a database). 400 answers could be rescued into "
        f"a new record. The damaged file is kept as {aside}"
    )
    assert [words for _, words in record.notes()] == [words for _, words in sound.notes] + [record.trouble]
    assert aside.read_bytes() == damaged
    told = re.fullmatch(r"record\.damaged-(\d{4}-\d\d-\d\d-\d{6})\.sqlite3", aside.name)[1]
    assert before <= datetime.strptime(told, "%Y-%m-%d-%H%M%S") <= datetime.now()
    assert sorted(file.name for file in path.parent.glob("*.sqlite3*")) == [aside.name, *NEW]
    assert Record(path).trouble == ""
    assert Record(path).notes() == record.notes()


KINDS: dict[str, Callable[[Path], None]] = {
    "header overwritten": lambda path: with_bytes(path, 0, b"overwritten" * 9),
    "first page zeroed": lambda path: with_bytes(path, 0, bytes(PAGE)),
    "list of tables zeroed": lambda path: with_bytes(path, 100, bytes(PAGE - 100)),
    "length in the header wrong": lambda path: with_bytes(path, 28, (9999).to_bytes(4, "big")),
    "a table missing": lambda path: ask(path, "DROP TABLE draft"),
    "a column missing": lambda path: ask(path, "ALTER TABLE draft RENAME COLUMN given TO taken"),
    "rows that break the rules": lambda path: ask(
        path, "PRAGMA ignore_check_constraints = 1", "UPDATE draft SET given = '{', seed = -1"
    ),
    "unknown format": lambda path: with_bytes(path, 44, (77).to_bytes(4, "big")),
}


@pytest.mark.parametrize("harm", KINDS.values(), ids=KINDS)
def test_harm_beside_the_answers_costs_none_of_them(path: Path, sound: Sound, harm: Callable):
    harm(path)
    record = Record(path)

    assert "400 answers could be rescued" in record.trouble
    assert kept_answers(record) == sound.answers
    assert record.learner_id == sound.learner_id
    assert record.dealt("07") == sound.dealt
    assert record.begun() == sound.begun
    assert set(sound.notes) < set(record.notes())
    assert [one.at for one in record.attempts()] == sorted(one.at for one in sound.answers.values())


def test_half_typed_answers_are_kept_where_the_database_still_gives_them(path: Path, sound: Sound):
    ask(path, "DROP TABLE note")

    assert Record(path).drafts("07") == sound.drafts == {"maker-1": (37, "half an ans")}


def test_a_cell_of_another_type_than_its_column_is_no_obstacle(path: Path, sound: Sound):
    file = bytearray(sound.file)
    # In the head of a row stand its own number and two texts of 32 letters: now three texts, one empty.
    for found in re.finditer(rb"\x00\x4d\x4d", sound.file[PAGE:]):
        file[PAGE + found.start()] = 0x0D
    path.write_bytes(bytes(PAGE) + file[PAGE:])

    assert kept_answers(Record(path)) == sound.answers


@pytest.mark.parametrize("first_page_too", [False, True])
def test_a_letter_that_came_to_harm_costs_that_letter(path: Path, sound: Sound, first_page_too: bool):
    place = sound.file.index(b'"21.00 mm"')
    with_bytes(path, place + 2, b"\xff")
    if first_page_too:
        with_bytes(path, 0, bytes(PAGE))
    record = Record(path)
    kept = kept_answers(record)

    assert bool(record.trouble) == first_page_too
    changed = [key for key, one in kept.items() if one != sound.answers[key]]
    assert [(kept[key].given, sound.answers[key].given) for key in changed] == [("2\ufffd.00 mm", "21.00 mm")]
    assert len(kept) == COUNT


def test_what_came_behind_the_damaged_file_goes(path: Path, sound: Sound):
    path.write_bytes(bytes(PAGE) + sound.file[PAGE:] + bytes(50 * PAGE))

    assert kept_answers(Record(path)) == sound.answers
    assert path.stat().st_size <= len(sound.file)


def test_a_missing_owner_is_damage_too(path: Path, sound: Sound):
    ask(path, "PRAGMA secure_delete = 1", "DELETE FROM owner")
    record = Record(path)

    assert record.trouble.startswith(
        "The record of your answers was damaged (it lacks its owner). 400 answers could be rescued into a "
        "new record. The id that tells this learner from others was lost; there is a new one. The damaged"
    )
    assert record.learner_id != sound.learner_id
    assert kept_answers(record) == sound.answers


@pytest.mark.parametrize("table", ["attempt", "dealing", "beginning", "note", "owner"])
def test_a_table_that_is_gone_is_still_found_on_the_pages_it_left(path: Path, sound: Sound, table: str):
    ask(path, "PRAGMA secure_delete = 0", f"DROP TABLE {table}")
    record = Record(path)

    assert f"was damaged (it lacks {table}). 400 answers" in record.trouble
    assert kept_answers(record) == sound.answers
    assert record.dealt("07") == sound.dealt


@pytest.mark.parametrize("length", [2, 100, 512, 4096, 4097, 30_000, 100_000, 150_000])
def test_what_is_left_of_a_file_cut_short_is_rescued(path: Path, sound: Sound, length: int):
    path.write_bytes(sound.file[:length])
    record = Record(path)
    lost = set(range(length // PAGE, len(sound.file) // PAGE))

    assert f"{len(record.attempts()) or 'No'} answer" in record.trouble
    assert sound.out_of_harm(lost).items() <= kept_answers(record).items() <= sound.answers.items()
    assert set_aside(path).read_bytes() == sound.file[:length]


def test_each_page_in_turn_can_be_zeroed(tmp_path: Path, sound: Sound):
    for page in range(len(sound.file) // PAGE):
        path = tmp_path / str(page) / "record.sqlite3"
        path.parent.mkdir()
        path.write_bytes(sound.file)
        with_bytes(path, page * PAGE, bytes(PAGE))
        record = Record(path)

        assert record.trouble
        kept = kept_answers(record)
        assert sound.out_of_harm({page}).items() <= kept.items() <= sound.answers.items()
        assert len(kept) > COUNT - 40


# SQLite takes a file of one byte for an empty one.
TEXTS = {"a text": "Dear diary,\n" * 500, "a short text": "xy", "zeros": "\0" * 9000, "two lines": "\n\n"}


@pytest.mark.parametrize("text", TEXTS.values(), ids=TEXTS)
def test_a_file_that_is_no_database_is_kept_beside_a_new_one(tmp_path: Path, text: str):
    path = tmp_path / "record.sqlite3"
    path.write_text(text, encoding="utf-8", newline="\n")
    record = Record(path)

    assert "No answer could be rescued" in record.trouble
    assert set_aside(path).read_text(encoding="utf-8") == text
    assert record.merge(full_text(5)).added == 5


def test_nothing_that_was_set_aside_is_ever_written_over(path: Path, sound: Sound):
    for number in range(4):
        path.write_text(f"text {number}", encoding="utf-8")
        assert Record(path).trouble
    kept = {file.read_text(encoding="utf-8") for file in path.parent.glob("record.damaged-*")}

    assert kept == {f"text {number}" for number in range(4)}


@pytest.mark.parametrize("seed", range(60))
def test_flipped_bytes_cost_no_answer_beyond_the_pages_they_are_on(path: Path, sound: Sound, seed: int):
    rng = random.Random(seed)
    file = bytearray(sound.file)
    # The version in the header is left out: another number there is another workbook's record.
    drawn = [rng.randrange(len(file)) for _ in range(rng.choice([1, 2, 5, 12]))]
    places = [place for place in drawn if not 60 <= place < 64]
    for place in places:
        file[place] ^= rng.randrange(1, 256)
    path.write_bytes(file)
    record = Record(path)
    kept = kept_answers(record)

    assert sound.out_of_harm({place // PAGE for place in places}).items() <= kept.items()
    assert len(kept) <= COUNT
    assert sum(len(record.attempts(lesson=f"{number:02}")) for number in range(1, 6)) >= COUNT - 40
    record.dealt("07"), record.begun(), record.drafts("07"), record.notes(), record.export()
    record.keep_draft(lesson="07", maker="maker-1", seed=3, given="again")
    record.deal(lesson="07", maker="maker-1", seed=4)
    record.begin("09")
    added = record.add(lesson="07", maker="edge", seed=1, given="x", state="right")
    assert added in Record(path).attempts()
    if record.trouble:
        assert set_aside(path).read_bytes() == file
        assert record.notes()[-1][1].startswith("The record of your answers was damaged")


def test_damage_that_shows_at_work_is_put_right_and_the_work_is_done(path: Path, sound: Sound):
    record = Record(path)
    with_bytes(path, 0, bytes(PAGE))
    added = record.add(lesson="07", maker="edge", seed=1, given="x", state="right")

    assert "400 answers could be rescued" in record.trouble
    assert kept_answers(record) == sound.answers | {added.id: added}


def test_a_file_that_says_it_cannot_be_written_is_put_right_when_it_is_written(path: Path, sound: Sound):
    with_bytes(path, 18, b"\x77")
    record = Record(path)
    assert kept_answers(record) == sound.answers
    added = record.add(lesson="07", maker="edge", seed=1, given="x", state="right")

    assert "was damaged (it says of itself that it cannot be written). 400 answers" in record.trouble
    assert kept_answers(Record(path)) == sound.answers | {added.id: added}


@pytest.mark.parametrize(
    "change",
    [
        "slips = '-'",
        "state = ' '",
        "at = '2026-02-31T0:00+00:00'",
        "given = '1e999'",
        "hints = 5000",
    ],
)
def test_a_row_the_database_has_nothing_against_may_still_be_no_answer(path: Path, sound: Sound, change: str):
    (lost,) = (one for one in sound.answers.values() if one.seed == 7919)
    ask(path, f"UPDATE attempt SET {change} WHERE id = '{lost.id}'")
    record = Record(path)
    assert record.trouble == ""
    kept = kept_answers(record)

    assert kept.keys() == sound.answers.keys() - {lost.id}
    assert "was damaged (a row of the table attempt cannot be read (" in record.trouble
    assert "399 answers could be rescued" in record.trouble


def test_a_draft_that_came_to_harm_is_passed_over(path: Path, sound: Sound):
    ask(path, "PRAGMA ignore_check_constraints = 1", "UPDATE draft SET given = '{'")
    record = Record.__new__(Record)
    record.path, record.trouble = path, ""

    assert record.drafts("07") == {}


def test_a_journal_left_beside_a_damaged_file_goes_aside_with_it(path: Path, sound: Sound):
    path.write_text("no database", encoding="utf-8")
    journal = path.with_name("record.sqlite3-journal")
    journal.write_bytes(bytes(600))
    Record(path)

    assert not journal.exists()
    assert kept_answers(Record(path)) == {}


@pytest.mark.parametrize("flushed", range(5), ids=["copying", "copied", "marked", "written", "done"])
def test_whenever_a_rescue_is_cut_off_the_next_opening_finishes_it(
    path: Path, sound: Sound, flushed: int, monkeypatch: pytest.MonkeyPatch
):
    with_bytes(path, 12 * PAGE, bytes(PAGE))
    damaged, answers = path.read_bytes(), sound.out_of_harm({12})
    real, flushes = record_rescue._flush, []

    def flush(file: BinaryIO) -> None:
        if len(flushes) == flushed:
            raise KeyboardInterrupt
        flushes.append(file)
        real(file)

    monkeypatch.setattr(record_rescue, "_flush", flush)
    if flushed < 4:
        with pytest.raises(KeyboardInterrupt):
            Record(path)
    else:
        Record(path)
    monkeypatch.undo()
    record = Record(path)

    # Who finishes a rescue tells of it as who did it would have.
    assert (record.trouble == record.notes()[-1][1]) == (flushed < 3)
    assert answers.items() <= kept_answers(record).items()
    assert record.learner_id == sound.learner_id
    assert f"{len(record.attempts())} answers could be rescued" in record.notes()[-1][1]
    assert len(record.notes()) == len(sound.notes) + 1
    assert damaged in [file.read_bytes() for file in path.parent.glob("record.damaged-*")]


def test_new_content_that_is_gone_before_it_is_in_place_is_made_again(path: Path, sound: Sound):
    with_bytes(path, 0, record_rescue._UNDER_WAY)
    record = Record(path)

    assert "400 answers could be rescued" in record.trouble
    assert kept_answers(record) == sound.answers


def test_new_content_left_from_another_day_is_not_used(path: Path, sound: Sound):
    full_record(path.with_name("record.sqlite3.rescued"), 5)
    with_bytes(path, 0, b"not a database any more")

    assert kept_answers(Record(path)) == sound.answers
    assert not path.with_name("record.sqlite3.rescued").exists()
