"""Texts changed at random are refused in words or taken in whole; the record is sound either way."""

import copy
import json
import random
from pathlib import Path

import pytest
from full_record import answer, as_attempt, exported, full_record, full_text
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.study.record import Merged, Record

ODD = [None, True, -1, 2**63, 1.5, 1e308, "", "x", "\0", "07", "\ud800", "x" * 5000, [], {}, [[]], {"a": []}]
SIMPLE = st.none() | st.booleans() | st.integers() | st.floats() | st.text()
ANY = st.recursive(SIMPLE, st.lists, max_leaves=20)


@pytest.fixture(scope="module")
def record(tmp_path_factory: pytest.TempPathFactory) -> Record:
    return full_record(tmp_path_factory.mktemp("fuzz") / "record.sqlite3", 20)


def tried(record: Record, text: str) -> Merged | str:
    """Take a text in; where it is refused, in words and with nothing changed, return the words."""
    before = record.export()
    said = ""
    try:
        merged = record.merge(text)
    except LabError as refused:
        said = str(refused)
    if said:
        assert record.export() == before
        assert 40 < len(said) < 700
        return said
    held = json.loads(text)
    assert merged.added + merged.known == len(held["answers"])
    assert {as_attempt(row).id for row in held["answers"]} <= {one.id for one in record.attempts()}
    return merged


def places(part: object, way: tuple = ()) -> list[tuple]:
    """Return the way to every part of JSON data."""
    found = [way]
    if isinstance(part, dict | list):
        for key, inner in part.items() if isinstance(part, dict) else enumerate(part):
            found += places(inner, (*way, key))
    return found


@pytest.mark.parametrize("seed", range(150))
def test_a_part_put_in_place_of_another(record: Record, seed: int):
    rng = random.Random(seed)
    held = json.loads(full_text(12))
    for _ in range(rng.choice([1, 1, 3])):
        *way, last = rng.choice(places(held)[1:])
        inner = held
        for key in way:
            inner = inner[key]
        # An earlier change may have taken away what was chosen.
        if isinstance(inner, dict | list):
            inner[last] = copy.deepcopy(rng.choice([*ODD, held["answers"]]))
    tried(record, json.dumps(held))


@pytest.mark.parametrize("seed", range(100))
def test_letters_put_in_place_of_others(record: Record, seed: int):
    rng = random.Random(seed)
    letters = list(full_text(12))
    for _ in range(rng.choice([1, 4])):
        place = rng.randrange(len(letters))
        letters[place : place + rng.choice([0, 1, 1, 30])] = rng.choice('{}[],:"\\0e-9NaNé\0 ')
    tried(record, "".join(letters))


@given(st.text())
def test_any_text(record: Record, text: str):
    assert tried(record, text)


@given(ANY)
def test_any_answer(tmp_path_factory: pytest.TempPathFactory, given_answer: object):
    record = Record(tmp_path_factory.mktemp("any") / "record.sqlite3")
    said = tried(record, exported([answer(1, given=given_answer)]))
    if isinstance(said, Merged):
        (kept,) = record.attempts()
        assert repr(kept.given) == repr(given_answer)
        other = Record(Path(record.path).with_name("other.sqlite3"))
        assert other.merge(record.export()).added == 1
        assert repr(other.attempts()[0].given) == repr(given_answer)
    else:
        assert any(why in said for why in ("is no number", "lists within lists", "half of a character"))
