"""What cannot be kept in a record is refused in words, and nothing is written."""

from pathlib import Path

import pytest

from lablib.errors import LabError
from lablib.study.record import Attempt, Record

ANSWERED = {"lesson": "07", "maker": "temporal-edge", "seed": 5, "given": "4.20 mm", "state": "right"}


@pytest.fixture
def record(tmp_path: Path) -> Record:
    return Record(tmp_path / "record.sqlite3")


NAME = "give 1 to 100 of the letters a to z, digits and any of . _ -, beginning with a letter or a digit"
ID = "give 32 of the digits 0 to 9 and a to f"
SEED = f"give a whole number from 0 to {2**63 - 1}"


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"lesson": 7}, f"lesson 7 is no stable name: {NAME}"),
        ({"lesson": ""}, f"lesson '' is no stable name: {NAME}"),
        ({"maker": "temporal edge"}, f"question maker 'temporal edge' is no stable name: {NAME}"),
        ({"maker": "-edge"}, f"question maker '-edge' is no stable name: {NAME}"),
        ({"maker": "e" * 101}, f"question maker '{'e' * 59}... is no stable name: {NAME}"),
        ({"state": "Größe"}, f"state 'Größe' is no stable name: {NAME}"),
        ({"state": "right\n"}, f"state 'right\\n' is no stable name: {NAME}"),
        ({"seed": -1}, f"seed -1 is no number to keep: {SEED}"),
        ({"seed": 2**63}, f"seed {2**63} is no number to keep: {SEED}"),
        ({"seed": 1.0}, f"seed 1.0 is no number to keep: {SEED}"),
        ({"seed": True}, f"seed True is no number to keep: {SEED}"),
        ({"hints": -1}, "number of hints -1 is no number to keep: give a whole number from 0 to 1000"),
        ({"hints": None}, "number of hints None is no number to keep: give a whole number from 0 to 1000"),
        ({"slips": "sign"}, "mistakes 'sign' cannot be kept: give a list of at most 100 names"),
        (
            {"slips": ("a",) * 101},
            f"mistakes {repr(('a',) * 101)[:60]}... cannot be kept: give a list of at most 100 names",
        ),
        ({"slips": ("a b",)}, f"mistake 'a b' is no stable name: {NAME}"),
        (
            {"given": float("nan")},
            "the answer nan is not a finite number: give one, or the text as it was typed",
        ),
        (
            {"given": ["a", float("-inf")]},
            "the answer -inf is not a finite number: give one, or the text as it was typed",
        ),
        (
            {"given": {1, 2}},
            "the answer {1, 2} is of type set: give a text, a number, or a list of these",
        ),
        ({"given": b"4"}, "the answer b'4' is of type bytes: give a text, a number, or a list of these"),
        ({"given": {4: "a"}}, "the answer has the key 4, which is no text: give texts as keys"),
        ({"given": "\ud800"}, "the answer '\\ud800' holds half of a character: type it again"),
        ({"given": {"\udfff": 1}}, "the answer '\\udfff' holds half of a character: type it again"),
        ({"given": "x" * 9_999}, f"the answer '{'x' * 59}... has 10001 characters: give 10000 at most"),
        (
            {"given": [[[[[[[[[1]]]]]]]]]},
            "the answer holds lists within lists: give at most 8 within each other",
        ),
    ],
    ids=lambda value: repr(value)[:30] if isinstance(value, dict) else "",
)
def test_what_cannot_be_kept_is_refused_in_words(record: Record, changed: dict, said: str):
    with pytest.raises(LabError) as refused:
        record.add(**ANSWERED | changed)

    assert str(refused.value) == said
    assert record.attempts() == ()


def test_numbers_of_thousands_of_digits_are_refused(record: Record):
    with pytest.raises(LabError) as refused:
        record.add(**ANSWERED | {"seed": 10**5000})
    assert str(refused.value) == f"seed (int) is no number to keep: {SEED}"

    with pytest.raises(LabError) as refused:
        record.add(**ANSWERED | {"given": [10**5000]})
    assert str(refused.value) == "the answer holds a number with thousands of digits: give a shorter one"


def test_a_list_that_holds_itself_is_refused(record: Record):
    given: list = []
    given.append(given)
    with pytest.raises(LabError, match="lists within lists"):
        record.add(**ANSWERED | {"given": given})


@pytest.mark.parametrize("path", ["record.sqlite3", None, 5])
def test_a_record_wants_a_path(path: object):
    with pytest.raises(LabError) as refused:
        Record(path)
    assert str(refused.value) == f"record {path!r} is no path: give a pathlib.Path"


@pytest.mark.parametrize(
    "act",
    [
        lambda record: record.attempts(lesson="a b"),
        lambda record: record.attempts(lesson=7),
        lambda record: record.drafts(None),
        lambda record: record.deal(lesson="a b", maker="edge", seed=1),
        lambda record: record.dealt(7),
        lambda record: record.keep_draft(lesson="a b", maker="edge", seed=1, given="x"),
        lambda record: record.drafts("a b"),
        lambda record: record.begin("a b"),
    ],
)
def test_every_method_refuses_what_is_no_lesson(record: Record, act):
    with pytest.raises(LabError, match=r"lesson ('a b'|7|None) is no stable name"):
        act(record)


@pytest.mark.parametrize(
    "act",
    [
        lambda record: record.attempts(maker="a b"),
        lambda record: record.deal(lesson="07", maker="a b", seed=1),
        lambda record: record.keep_draft(lesson="07", maker="a b", seed=1, given="x"),
    ],
)
def test_every_method_refuses_what_is_no_maker(record: Record, act):
    with pytest.raises(LabError, match="question maker 'a b' is no stable name"):
        act(record)


def test_drafts_and_deals_refuse_what_cannot_be_kept(record: Record):
    with pytest.raises(LabError, match="seed -1 is no number to keep"):
        record.deal(lesson="07", maker="edge", seed=-1)
    with pytest.raises(LabError, match=r"seed 1\.5 is no number to keep"):
        record.keep_draft(lesson="07", maker="edge", seed=1.5, given="x")
    with pytest.raises(LabError, match="the answer nan is not a finite number"):
        record.keep_draft(lesson="07", maker="edge", seed=1, given=float("nan"))

    assert record.dealt("07") == record.drafts("07") == {}


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        (
            {"id": "g" * 32},
            f"id of the answer '{'g' * 32}' is no id: {ID}",
        ),
        ({"id": 5}, f"id of the answer 5 is no id: {ID}"),
        *(
            (
                {"at": at},
                f"time of the answer {at!r} is no time of the record: give UTC from 1970 to 2999 "
                "written as in 2026-03-01T09:30:00.000000+00:00",
            )
            for at in (
                "2026-03-01",
                "2026-03-01T09:30:00.000000+01:00",
                "2026-03-01T09:30:00+00:00",
                "2026-02-31T09:30:00.000000+00:00",
                "1969-03-01T09:30:00.000000+00:00",
                "2026-03-01T24:30:00.000000+00:00",
                1.5,
            )
        ),
    ],
    ids=lambda value: repr(value)[:40] if isinstance(value, dict) else "",
)
def test_an_answer_is_checked_when_it_is_made(changed: dict, said: str):
    good = {"id": "0" * 32, "at": "2026-03-01T09:30:00.000000+00:00", **ANSWERED}
    assert Attempt(**good).hints == 0
    with pytest.raises(LabError) as refused:
        Attempt(**good | changed)

    assert str(refused.value) == said
