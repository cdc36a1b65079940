"""What a record keeps and gives back, for one learner at one desk."""

import re
import sqlite3
from datetime import UTC, datetime, timedelta
from enum import StrEnum
from pathlib import Path

import pytest

from lablib import places
from lablib.study import record as record_module
from lablib.study import record_file, record_values
from lablib.study.record import Attempt, Record

ANSWERED = {"lesson": "07", "maker": "temporal-edge", "seed": 5, "given": "4.20 mm", "state": "right"}


class Clock:
    """A clock that is set by hand."""

    def __init__(self) -> None:
        self.time = datetime(2026, 3, 2, 8, tzinfo=UTC)

    def now(self) -> str:
        return self.time.isoformat(timespec="microseconds")

    def goes(self, **by: float) -> None:
        self.time += timedelta(**by)


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> Clock:
    """The clock of the record."""
    by_hand = Clock()
    for module in (record_values, record_module):
        monkeypatch.setattr(module, "now", by_hand.now)
    return by_hand


@pytest.fixture
def record(tmp_path: Path) -> Record:
    return Record(tmp_path / "record.sqlite3")


def test_a_new_record_makes_its_folder_and_its_file(tmp_path: Path):
    record = Record(tmp_path / "new" / "folder" / "record.sqlite3")

    assert [path.name for path in record.path.parent.glob("*.sqlite3")] == ["record.sqlite3"]
    assert record.path == tmp_path / "new" / "folder" / "record.sqlite3"
    assert re.fullmatch("[0-9a-f]{32}", record.learner_id)
    assert record.trouble == ""
    assert record.attempts() == record.notes() == ()
    assert record.begun() == record.dealt("07") == record.drafts("07") == {}


def test_an_empty_file_is_simply_new(tmp_path: Path):
    (tmp_path / "record.sqlite3").touch()
    record = Record(tmp_path / "record.sqlite3")

    assert record.trouble == ""
    assert record.attempts() == record.notes() == ()
    assert [path.name for path in tmp_path.iterdir()] == ["record.sqlite3"]


def test_the_learner_keeps_the_id_and_no_two_have_the_same(tmp_path: Path):
    first = Record(tmp_path / "a" / "record.sqlite3")

    assert Record(first.path).learner_id == first.learner_id
    assert Record(tmp_path / "b" / "record.sqlite3").learner_id != first.learner_id


def test_the_learners_record_lies_in_the_learners_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv(places.FOLDER_VARIABLE, str(tmp_path))
    assert Record.of_learner().path == tmp_path / "record.sqlite3"

    monkeypatch.setenv(places.LEARNER_VARIABLE, "Ana")
    assert Record.of_learner().path == tmp_path / "learners" / "ana" / "record.sqlite3"


def test_a_path_stays_the_same_when_one_goes_elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(tmp_path)
    record = Record(Path("record.sqlite3"))
    (tmp_path / "elsewhere").mkdir()
    monkeypatch.chdir(tmp_path / "elsewhere")
    record.add(**ANSWERED)

    assert len(Record(tmp_path / "record.sqlite3").attempts()) == 1


@pytest.mark.parametrize("name", ["Ünicode größe ✓", "a%20b?mode=memory#x", 'it\'s "quoted"'])
def test_any_name_of_a_folder_will_do(tmp_path: Path, name: str):
    Record(tmp_path / name / "record.sqlite3").add(**ANSWERED)

    assert len(Record(tmp_path / name / "record.sqlite3").attempts()) == 1
    assert [path.name for path in tmp_path.iterdir()] == [name]


def test_an_answer_is_given_back_as_it_was_given(record: Record):
    before = datetime.now(UTC).isoformat(timespec="microseconds")
    added = record.add(**ANSWERED, slips=("sign-turned", "axis-left"), hints=2)

    assert re.fullmatch("[0-9a-f]{32}", added.id)
    assert before <= added.at <= datetime.now(UTC).isoformat(timespec="microseconds")
    assert added == Attempt(id=added.id, at=added.at, **ANSWERED, slips=("sign-turned", "axis-left"), hints=2)
    assert Record(record.path).attempts() == (added,)


@pytest.mark.parametrize(
    "given",
    [
        "",
        "4.20 mm",
        "“schräg” 20°\n\0\x7f \U0001f453",
        0,
        -1.25,
        -0.0,
        5e-324,
        10**400,
        True,
        None,
        [],
        ["a", "c", "b"],
        {"rest": [None, {"deep": [1.5]}], "sphere": -6.25},
        "x" * 9_998,
        [[[[[[[[1]]]]]]]],
    ],
    ids=lambda given: repr(given)[:20],
)
def test_whatever_is_json_can_be_an_answer(record: Record, given: object):
    added = record.add(**ANSWERED | {"given": given})
    (kept,) = Record(record.path).attempts()

    assert repr(kept.given) == repr(added.given) == repr(given)


def test_rows_become_lists_and_special_texts_become_plain_ones(record: Record):
    class Picked(StrEnum):
        RIGHT = "right"

    record.add(
        **ANSWERED | {"given": ("a", ("b", Picked.RIGHT)), "state": Picked.RIGHT}, slips=[Picked.RIGHT]
    )
    (kept,) = record.attempts()

    assert kept.given == ["a", ["b", "right"]]
    assert kept.slips == ("right",)
    assert [type(text) for text in (kept.state, kept.given[1][1], *kept.slips)] == [str, str, str]


def test_answers_can_be_had_by_lesson_and_by_maker(record: Record):
    for lesson, maker in [("07", "edge"), ("07", "blank"), ("20", "edge"), ("07", "edge")]:
        record.add(**ANSWERED | {"lesson": lesson, "maker": maker})

    def asked(**wanted: str) -> list[tuple[str, str]]:
        return [(one.lesson, one.maker) for one in record.attempts(**wanted)]

    assert asked() == [("07", "edge"), ("07", "blank"), ("20", "edge"), ("07", "edge")]
    assert asked(lesson="07") == [("07", "edge"), ("07", "blank"), ("07", "edge")]
    assert asked(maker="edge") == [("07", "edge"), ("20", "edge"), ("07", "edge")]
    assert asked(lesson="20", maker="edge") == [("20", "edge")]
    assert asked(lesson="20", maker="blank") == asked(lesson="11") == []


def test_a_clock_that_stands_still_or_is_set_right_does_not_change_the_order(record: Record, clock: Clock):
    added = [record.add(**ANSWERED | {"seed": number}) for number in range(3)]
    clock.goes(seconds=-50)
    added.append(record.add(**ANSWERED | {"seed": 3}))

    assert [one.at[-15:-6] for one in added] == ["00.000000", "00.000001", "00.000002", "00.000003"]
    assert record.attempts() == tuple(added)


def test_a_clock_that_was_wrong_by_more_does_not_spoil_the_times_after_it(record: Record, clock: Clock):
    clock.goes(days=365)
    ahead = record.add(**ANSWERED)
    clock.goes(days=-365)
    right = record.add(**ANSWERED)

    assert right.at == clock.now()
    assert record.attempts() == (right, ahead)


def test_a_dealt_question_stands_until_the_next_is_dealt(record: Record):
    assert record.dealt("07") == {}
    for lesson, maker, seed in [("07", "edge", 5), ("07", "blank", 6), ("08", "edge", 7), ("07", "edge", 5)]:
        record.deal(lesson=lesson, maker=maker, seed=seed)
    record.deal(lesson="07", maker="edge", seed=2**63 - 1)

    assert Record(record.path).dealt("07") == {"edge": (2**63 - 1, 3), "blank": (6, 1)}
    assert record.dealt("08") == {"edge": (7, 1)}


@pytest.mark.parametrize("by", [{"seconds": 0}, {"seconds": -1}, {"days": -365}], ids=str)
def test_the_question_dealt_last_stands_whatever_the_clock_says(record: Record, clock: Clock, by: dict):
    for seed in (1, 2, 3):
        record.deal(lesson="07", maker="edge", seed=seed)
        clock.goes(**by)

    assert record.dealt("07") == {"edge": (3, 3)}


def test_a_draft_replaces_the_one_before_and_none_removes_it(record: Record):
    for given in ("4", "4.2", ["a"]):
        record.keep_draft(lesson="07", maker="edge", seed=5, given=given)
    record.keep_draft(lesson="07", maker="blank", seed=6, given=0)
    record.keep_draft(lesson="08", maker="edge", seed=7, given="")

    assert Record(record.path).drafts("07") == {"edge": (5, ["a"]), "blank": (6, 0)}
    assert record.drafts("08") == {"edge": (7, "")}
    for _ in range(2):
        record.keep_draft(lesson="07", maker="edge", seed=5, given=None)
        assert record.drafts("07") == {"blank": (6, 0)}


def test_a_lesson_is_begun_once(record: Record, clock: Clock):
    record.begin("07")
    first = clock.now()
    clock.goes(hours=1)
    record.begin("07")
    record.begin("01")

    assert list(Record(record.path).begun().items()) == [("07", first), ("01", clock.now())]


def test_writing_is_done_as_the_disk_needs_it(record: Record, monkeypatch: pytest.MonkeyPatch):
    said: list[str] = []
    connected = record_file._connected

    def listened(*words):
        db = connected(*words)
        db.set_trace_callback(said.append)
        return db

    monkeypatch.setattr(record_file, "_connected", listened)
    record.add(**ANSWERED)

    assert said[:2] == ["PRAGMA journal_mode = DELETE", "PRAGMA synchronous = FULL"]
    assert "BEGIN IMMEDIATE" in said
    assert said[-1] == "COMMIT"
    assert not list(record.path.parent.glob("*-journal"))
    assert record_file.TIMEOUT_S == 10.0


def test_a_record_that_is_taken_away_is_begun_anew_and_said(record: Record):
    record.add(**ANSWERED)
    learner = record.learner_id
    record.path.unlink()
    added = record.add(**ANSWERED)

    assert record.trouble == f"The record {record.path} was taken away. A new one was begun in its place."
    assert record.learner_id != learner
    assert Record(record.path).attempts() == (added,)


def test_nothing_is_left_open(record: Record):
    record.add(**ANSWERED)
    other = sqlite3.connect(record.path, timeout=0, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    other.close()
    record.path.rename(record.path.with_name("moved"))

    assert Record(record.path.with_name("moved")).attempts()[0].given == "4.20 mm"


def test_a_draft_is_kept_only_for_the_question_dealt_last(tmp_path: Path):
    record = Record(tmp_path / "r.sqlite3")
    record.keep_draft(lesson="07", maker="edge", seed=1, given="1.")
    record.deal(lesson="07", maker="edge", seed=2)
    record.keep_draft(lesson="07", maker="edge", seed=2, given="2.")
    record.keep_draft(lesson="07", maker="edge", seed=1, given="1.5")
    record.keep_draft(lesson="07", maker="edge", seed=1, given=None)
    assert record.drafts("07") == {"edge": (2, "2.")}


def test_an_answer_takes_the_place_of_its_own_draft_alone(tmp_path: Path):
    record = Record(tmp_path / "r.sqlite3")
    for maker in ("edge", "blank"):
        record.keep_draft(lesson="07", maker=maker, seed=1, given="1.")
    record.add(lesson="07", maker="edge", seed=1, given="1.5", state="wrong")
    record.add(lesson="07", maker="blank", seed=9, given="1.5", state="wrong")
    assert record.drafts("07") == {"blank": (1, "1.")}


def test_makers_are_found_by_how_their_answers_were_marked(tmp_path: Path):
    record = Record(tmp_path / "r.sqlite3")
    for lesson, maker, state in (("07", "edge", "right"), ("07", "edge", "right"), ("01", "cost", "wrong")):
        record.add(lesson=lesson, maker=maker, seed=1, given="1", state=state)
    assert record.makers_with("right") == {("07", "edge")}
    assert record.makers_with("faulty") == frozenset()
