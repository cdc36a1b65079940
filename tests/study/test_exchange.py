"""A record written as text and taken in again: on another machine, twice, or after it was changed."""

import json
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from full_record import answer, as_attempt, exported, full_record, full_text, hex_id, moment
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.study import record_exchange
from lablib.study.record import Merged, Record

GOOD = answer(1)
DEALT = {"id": hex_id(50), "at": moment(3), "lesson": "07", "maker": "edge", "seed": 5}
BEGUN = {"lesson": "07", "at": moment(3)}
NOTE = {"id": hex_id(51), "at": moment(3), "words": "An older event."}


@pytest.fixture
def record(tmp_path: Path) -> Record:
    return Record(tmp_path / "record.sqlite3")


def contents(record: Record) -> dict:
    """Return what two records of one learner should agree on, whatever happened to each."""
    held = json.loads(record.export())
    return {name: held[name] for name in ("answers", "dealt", "begun")}


def hours_to_come(hours: float) -> str:
    """Return a time so many hours from now, as the record writes it."""
    return (datetime.now(UTC) + timedelta(hours=hours)).isoformat(timespec="microseconds")


def test_everything_but_drafts_comes_over(tmp_path: Path):
    first = full_record(tmp_path / "first.sqlite3", 130)
    first.add(
        lesson="09", maker="edge", seed=3, given=["a", {"ä": None}], state="wrong", slips=["x"], hints=2
    )
    second = Record(tmp_path / "second.sqlite3")
    learner = second.learner_id

    assert second.merge(first.export()) == Merged(added=131, known=0)
    assert second.attempts() == first.attempts()
    assert second.dealt("07") == first.dealt("07")
    assert second.begun() == first.begun()
    assert set(first.notes()) < set(second.notes())
    assert second.drafts("07") == {}
    assert first.drafts("07") != {}
    assert second.learner_id == Record(second.path).learner_id == learner


def test_the_text_is_json_with_a_line_for_each_row_always_in_the_same_order(tmp_path: Path):
    first, second = (Record(tmp_path / name) for name in ("first.sqlite3", "second.sqlite3"))
    rows = [answer(number) for number in (5, 3, 4, 1)] + [answer(6, at=moment(5))]
    first.merge(exported(rows))
    second.merge(exported(rows[::-1]))
    text = first.export()
    held = json.loads(text)

    assert list(held) == ["format", "learner_id", "answers", "dealt", "begun", "notes"]
    assert held["format"] == 1
    assert held["learner_id"] == first.learner_id
    assert held["answers"] == sorted(rows, key=lambda row: (row["at"], row["id"]))
    assert text.splitlines()[3:5] == ['"answers": [', json.dumps(answer(1), ensure_ascii=False) + ","]
    assert json.loads(second.export())["answers"] == held["answers"]
    assert first.export() == text


def test_an_empty_record_can_be_written_and_taken_in(tmp_path: Path, record: Record):
    text = Record(tmp_path / "other.sqlite3").export()

    assert record.merge(text) == Merged(added=0, known=0)
    assert record.notes() == ()
    assert json.loads(text)["answers"] == json.loads(text)["notes"] == []


def test_what_was_taken_in_is_noted_once(record: Record):
    record.merge(exported([answer(1)]))
    assert record.merge(exported([answer(1), answer(2)])) == Merged(added=1, known=1)
    before = record.export()
    assert record.merge(exported([answer(1), answer(2)])) == Merged(added=0, known=2)

    assert record.export() == before
    assert [words for _, words in record.notes()] == [
        f"An exported record was taken in, of the learner numbered {'a' * 32}: "
        "1 of its answers were new, 0 were here already.",
        f"An exported record was taken in, of the learner numbered {'a' * 32}: "
        "1 of its answers were new, 1 were here already.",
    ]


def test_answers_taken_in_find_their_place_in_time(record: Record):
    record.merge(exported([answer(number) for number in (8, 2)]))
    record.merge(exported([answer(number) for number in (5, 9, 1)]))

    assert record.attempts() == tuple(as_attempt(answer(number)) for number in (1, 2, 5, 8, 9))


def test_a_question_dealt_here_later_stands_and_all_are_counted(record: Record):
    record.deal(lesson="07", maker="edge", seed=7)
    record.merge(exported(dealt=[DEALT]))
    assert record.dealt("07") == {"edge": (7, 2)}

    record.merge(exported(dealt=[DEALT | {"id": hex_id(52), "at": hours_to_come(20), "seed": 9}]))
    assert record.dealt("07") == {"edge": (9, 3)}
    record.deal(lesson="07", maker="edge", seed=10)
    assert record.dealt("07") == {"edge": (10, 4)}


def test_a_lesson_was_begun_when_it_was_begun_first(record: Record):
    record.merge(exported(begun=[BEGUN | {"at": moment(9)}]))
    record.merge(exported(begun=[BEGUN | {"at": moment(2)}]))
    record.merge(exported(begun=[BEGUN | {"at": moment(5)}]))

    assert record.begun() == {"07": moment(2)}


@pytest.mark.parametrize(
    ("part", "row"),
    [("dealt", lambda: DEALT), ("begun", lambda: BEGUN), ("answers", lambda: answer(1))],
)
def test_what_has_a_time_to_come_is_refused(record: Record, part: str, row: Callable[[], dict]):
    late = row() | {"at": hours_to_come(30)}
    text = exported([late]) if part == "answers" else exported(**{part: [late]})
    with pytest.raises(LabError, match="1 has a time to come; set the clock of that machine"):
        record.merge(text)
    assert record.notes() == ()


ROWS = st.lists(st.integers(0, 40), max_size=12, unique=True)
ACTS = st.lists(st.sampled_from(["a from b", "b from a", "c from a", "c from b", "a from c"]), max_size=6)


@settings(max_examples=50)
@given(ROWS, ROWS, ROWS, ACTS)
def test_however_records_are_merged_they_come_to_agree(tmp_path_factory, one, two, three, acts):
    folder = tmp_path_factory.mktemp("merged")
    records = {}
    for name, numbers in zip("abc", (one, two, three), strict=True):
        records[name] = Record(folder / f"{name}.sqlite3")
        dealt = [DEALT | {"id": hex_id(100 + number), "at": moment(number)} for number in numbers]
        begun = [BEGUN | {"at": moment(number)} for number in numbers]
        records[name].merge(exported([answer(number) for number in numbers], dealt=dealt, begun=begun))
    for act in acts:
        records[act[0]].merge(records[act[-1]].export())
    for here, there in ("ab", "ca", "ac", "ba"):
        merged = records[here].merge(records[there].export())
        assert merged.added + merged.known == len(records[there].attempts())
    all_numbers = {*one, *two, *three}

    assert contents(records["a"]) == contents(records["b"]) == contents(records["c"])
    assert {found.seed // 7919 for found in records["a"].attempts()} == all_numbers
    assert len(records["a"].attempts()) == len(all_numbers)
    for here, there in ("ab", "ba", "ac"):
        before = contents(records[here])
        assert records[here].merge(records[there].export()).added == 0
        assert contents(records[here]) == before


def test_notes_alone_do_not_send_notes_to_and_fro(tmp_path: Path):
    first, second = (full_record(tmp_path / name, 5) for name in ("first.sqlite3", "second.sqlite3"))
    for _ in range(3):
        first.merge(second.export())
        second.merge(first.export())

    assert first.notes() == second.notes()
    assert len(first.notes()) == 3


SAID = "the exported record is no good, so nothing was taken in: "
AGAIN = "; export it again"
NAME = "give 1 to 100 of the letters a to z, digits and any of . _ -, beginning with a letter or a digit"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"{}", "b'{}' is no text"),
        (None, "None is no text"),
        ("", "it is no JSON (Expecting value: line 1 column 1 (char 0))"),
        ("{", "it is no JSON (Expecting property name enclosed in double quotes: line 1 column 2 (char 1))"),
        ("[]", "it does not begin as an exported record does"),
        ("{}", "it does not begin as an exported record does"),
        ("3", "it does not begin as an exported record does"),
        (exported(format=2), "its format 2 is not known here: this workbook reads format 1"),
        (exported(format="1"), "its format '1' is not known here: this workbook reads format 1"),
        (exported(format=True), "its format True is not known here: this workbook reads format 1"),
        (exported(format=1.0), "its format 1.0 is not known here: this workbook reads format 1"),
        (
            exported(extra=1),
            "it must have the keys answers, begun, dealt, format, learner_id, notes and no other",
        ),
        (
            '{"format": 1}',
            "it must have the keys answers, begun, dealt, format, learner_id, notes and no other",
        ),
        (
            exported(learner_id="../../etc"),
            "its learner: learner_id '../../etc' is no id: give 32 of the digits 0 to 9 and a to f",
        ),
        (exported(answers={}), "answers is no list"),
        (exported(dealt="x"), "dealt is no list"),
        (exported(begun=None), "begun is no list"),
        (exported(notes=0), "notes is no list"),
        ('{"format": 1, "format": 1}', "it has one key twice, among ['format', 'format']"),
        ('{"format": NaN}', "NaN is no number"),
        ('{"format": -Infinity}', "-Infinity is no number"),
        ("[" * 100_000, "its brackets are nested too deeply"),
        ('{"format":' * 100_000, "its brackets are nested too deeply"),
        (exported([GOOD, GOOD]), "answers holds one answer twice"),
        (exported(dealt=[DEALT, DEALT]), "dealt holds one dealt question twice"),
        (exported(begun=[BEGUN, BEGUN]), "begun holds one beginning twice"),
        (exported(notes=[NOTE, NOTE]), "notes holds one note twice"),
        (
            exported([GOOD, []]),
            "answer 2: [] has other keys: give at, given, hints, id, lesson, maker, seed, slips, state and "
            "no other",
        ),
        (
            exported(begun=[BEGUN | {"by": "x"}]),
            "beginning 1: {'lesson': '07', 'at': '2026-03-02T08:03:00.000000+00:00', '... has other keys: "
            "give at, lesson and no other",
        ),
        (exported([GOOD, answer(2, lesson="a/b")]), f"answer 2: lesson 'a/b' is no stable name: {NAME}"),
        (exported([answer(2, maker=None)]), f"answer 1: question maker None is no stable name: {NAME}"),
        (
            exported([answer(2, seed=1.0)]),
            f"answer 1: seed 1.0 is no number to keep: give a whole number from 0 to {2**63 - 1}",
        ),
        (
            exported([answer(2, hints=True)]),
            "answer 1: number of hints True is no number to keep: give a whole number from 0 to 1000",
        ),
        (
            exported([answer(2, slips={"a": 1})]),
            "answer 1: mistakes {'a': 1} cannot be kept: give a list of at most 100 names",
        ),
        (
            exported([answer(2, given="x")]).replace('"x"', "1e999"),
            "answer 1: the answer inf is not a finite number: give one, or the text as it was typed",
        ),
        (
            exported([answer(2, given="x")]).replace('"x"', "[" * 20 + "]" * 20),
            "answer 1: the answer holds lists within lists: give at most 8 within each other",
        ),
        (
            exported([answer(2, given="x")]).replace('"x"', '"\\ud800"'),
            "answer 1: the answer '\\ud800' holds half of a character: type it again",
        ),
        (
            exported(dealt=[DEALT | {"at": "2026-13-01T00:00:00.000000+00:00"}]),
            "dealt question 1: time of the dealt question '2026-13-01T00:00:00.000000+00:00' is no time of "
            "the record: give UTC from 1970 to 2999 written as in 2026-03-01T09:30:00.000000+00:00",
        ),
        (
            exported(dealt=[DEALT | {"id": "../x"}]),
            "dealt question 1: id of the dealt question '../x' is no id: give 32 of the digits 0 to 9 and a "
            "to f",
        ),
        (
            exported(notes=[NOTE | {"words": ""}]),
            "note 1: words of the note '' cannot be kept: give a text of 1 to 4000 characters",
        ),
        (
            exported(notes=[NOTE | {"words": "a\0b"}]),
            "note 1: words of the note 'a\\x00b' cannot be kept: give a text of 1 to 4000 characters",
        ),
        (
            exported(notes=[NOTE | {"words": "x" * 4001}]),
            f"note 1: words of the note '{'x' * 59}... cannot be kept: give a text of 1 to 4000 characters",
        ),
    ],
    ids=lambda value: str(value)[:40] if isinstance(value, str) and value[:1] not in '{["' else "",
)
def test_what_is_no_exported_record_is_refused_whole(record: Record, text: object, said: str):
    record.merge(full_text(3))
    before = record.export()
    with pytest.raises(LabError) as refused:
        record.merge(text)

    assert str(refused.value) == f"{SAID}{said}{AGAIN}"
    assert record.export() == before


def test_a_text_of_unlikely_length_is_not_even_read(record: Record, monkeypatch: pytest.MonkeyPatch):
    text = full_text(3)
    monkeypatch.setattr(record_exchange, "MOST_CHARACTERS", len(text))
    assert record.merge(text).added == 3
    with pytest.raises(LabError) as refused:
        record.merge(f"{text} ")

    assert (
        str(refused.value) == f"{SAID}it has {len(text) + 1} characters, and {len(text)} are the most{AGAIN}"
    )


def test_ten_years_of_answers_fit_into_a_text():
    rows = [answer(number, slips=["sign-turned"], given="-6.25 -2.75 x 20") for number in range(1000)]

    assert 30 * 220 * 10 * len(exported(rows)) / 1000 < record_exchange.MOST_CHARACTERS


@pytest.mark.parametrize(
    ("changed", "table"),
    [
        ({"answers": [answer(2), answer(1, state="right")]}, "attempt"),
        ({"answers": [answer(2), answer(1, given=1.0)]}, "attempt"),
        ({"answers": [answer(2), answer(1, given=True)]}, "attempt"),
        ({"answers": [answer(2), answer(1, hints=3)]}, "attempt"),
        ({"answers": [answer(2)], "dealt": [DEALT | {"seed": 6}]}, "dealing"),
        ({"answers": [answer(2)], "notes": [NOTE | {"words": "Another."}]}, "note"),
    ],
)
def test_a_row_that_was_changed_elsewhere_is_refused_with_the_rest(record: Record, changed: dict, table: str):
    assert answer(1)["given"] == 1
    record.merge(exported([answer(1)], dealt=[DEALT], notes=[NOTE]))
    before = record.export()
    key = {"attempt": answer(1)["id"], "dealing": DEALT["id"], "note": NOTE["id"]}[table]
    with pytest.raises(LabError) as refused:
        record.merge(exported(**changed))

    assert str(refused.value) == (
        f"the exported record does not fit this one, so nothing was taken in: the {table} {key} is here with "
        "other content; one of the two was changed by hand, so keep both and ask for help"
    )
    assert record.export() == before


def test_a_disk_that_fills_up_on_the_way_leaves_nothing_behind(
    record: Record, monkeypatch: pytest.MonkeyPatch
):
    record.merge(full_text(3))
    before = record.export()
    put, done = record_exchange.put_row, []

    def until_full(*row: object) -> None:
        done.append(row)
        if len(done) > 60:
            raise OSError(28, "No space left on device")
        put(*row)

    monkeypatch.setattr(record_exchange, "put_row", until_full)
    with pytest.raises(OSError, match="No space"):
        record.merge(full_text(200))
    monkeypatch.undo()

    assert record.export() == before
    assert record.merge(full_text(200)) == Merged(added=197, known=3)
