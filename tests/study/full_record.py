"""Answers made up from numbers, exported texts made from them, and processes that write to a record."""

import json
import random
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path

from lablib.study.record import Attempt, Record

_START = datetime(2026, 3, 2, 8, tzinfo=UTC)
_STATES = ("right", "faulty", "wrong")


def hex_id(number: int) -> str:
    """Return an id that belongs to a number."""
    return f"{random.Random(number).getrandbits(128):032x}"


def moment(number: int) -> str:
    """Return the time that belongs to a number: so many minutes after the first."""
    return (_START + timedelta(minutes=number)).isoformat(timespec="microseconds")


def answer(number: int, **changed: object) -> dict:
    """Return an answer as it stands in an exported text; every 40th is longer than a page of the file."""
    kinds = [f"{number / 4:.2f} mm", number, number / 8, ["a", "c"], {"axis": number}, "schräg — 20°"]
    answered = {
        "id": hex_id(number),
        "at": moment(number),
        "lesson": f"{number % 5 + 1:02}",
        "maker": f"maker-{number % 7}",
        "seed": number * 7919,
        "given": "long " * 1900 if number % 40 == 39 else kinds[number % 6],
        "state": _STATES[number % 3],
        "slips": ["sign-turned", "axis-left"][: number % 3],
        "hints": number % 4,
    }
    return answered | changed


def exported(
    answers: list[dict] | tuple = (),
    *,
    dealt: list[dict] | tuple = (),
    begun: list[dict] | tuple = (),
    notes: list[dict] | tuple = (),
    **changed: object,
) -> str:
    """Return an exported text."""
    parts = {
        "format": 1,
        "learner_id": "a" * 32,
        "answers": answers,
        "dealt": dealt,
        "begun": begun,
        "notes": notes,
    }
    return json.dumps(parts | changed)


def full_text(count: int) -> str:
    """Return an exported text with something of everything, and so many answers."""
    return exported(
        [answer(number) for number in range(count)],
        dealt=[
            {
                "id": hex_id(10_000 + number),
                "at": moment(number),
                "lesson": "07",
                "maker": f"maker-{number % 3}",
                "seed": number,
            }
            for number in range(40)
        ],
        begun=[{"lesson": f"{number:02}", "at": moment(number)} for number in range(1, 6)],
        notes=[{"id": hex_id(20_000), "at": moment(0), "words": "An older event."}],
    )


def full_record(path: Path, count: int) -> Record:
    """Return a record with something of everything, and so many answers."""
    record = Record(path)
    record.merge(full_text(count))
    record.keep_draft(lesson="07", maker="maker-1", seed=37, given="half an ans")
    return record


def as_attempt(row: dict) -> Attempt:
    """Return the answer that stands in an exported text."""
    return Attempt(**(row | {"slips": tuple(row["slips"])}))


def kept_answers(record: Record) -> dict[str, Attempt]:
    """Return the answers of a record by their ids."""
    found = record.attempts()
    by_id = {one.id: one for one in found}
    assert len(by_id) == len(found)
    return by_id


def process(code: str, *words: object) -> subprocess.Popen:
    """Start Python on some code with words after it, its output read line by line."""
    return subprocess.Popen(
        [sys.executable, "-c", code, *map(str, words)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        bufsize=1,
    )
