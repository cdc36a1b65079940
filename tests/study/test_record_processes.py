"""Several processes at one record, some of them killed: no answer that was acknowledged is lost."""

import random
import re
import sqlite3
import subprocess
import sys
import time
from pathlib import Path

import pytest
from full_record import full_record, kept_answers, process

from lablib.study.record import Record

PAGE = 4096

# Opens the record, waits for a line, then adds answers and prints the id of each once it is kept.
WRITER = """
import sys
from pathlib import Path
from lablib.study.record import Record

path, number, count = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
record = Record(path)
print("ready", flush=True)
sys.stdin.readline()
for seed in range(count):
    kept = record.add(lesson="07", maker=f"maker-{number}", seed=seed, given=f"{seed} mm", state="right")
    print(kept.id, flush=True)
print("trouble:", record.trouble)
"""

# Waits for a line before it opens the record.
OPENER = WRITER.replace("record = Record(path)\n", "").replace(
    "sys.stdin.readline()\n", "sys.stdin.readline()\nrecord = Record(path)\n"
)


def is_sound(path: Path) -> bool:
    db = sqlite3.connect(path, isolation_level=None)
    try:
        return db.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    finally:
        db.close()


def started(code: str, path: Path, numbers: range, count: int) -> list[subprocess.Popen]:
    """Start writers, and return them when all are ready."""
    writers = [process(code, path, number, count) for number in numbers]
    assert [writer.stdout.readline() for writer in writers] == ["ready\n"] * len(writers)
    return writers


def let_go(*writers: subprocess.Popen) -> None:
    """Let them write."""
    for writer in writers:
        writer.stdin.write("\n")
        writer.stdin.flush()


def lines_of(*writers: subprocess.Popen) -> list[list[str]]:
    """Wait for writers and return the lines each has printed: ids, and its trouble last."""
    return [writer.communicate(timeout=60)[0].splitlines() for writer in writers]


def ids_of(lines: list[list[str]]) -> set[str]:
    """Return what was acknowledged, all of it by writers that came to their end."""
    assert all(printed[-1].startswith("trouble:") for printed in lines)
    return {line for printed in lines for line in printed[:-1]}


def test_four_writers_at_once_lose_nothing(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    writers = started(WRITER, path, range(4), 200)
    let_go(*writers)
    lines = lines_of(*writers)
    record = Record(path)
    kept = kept_answers(record)

    assert ids_of(lines) == kept.keys()
    assert len(kept) == 800
    assert [printed[-1] for printed in lines] == ["trouble: "] * 4
    for number, printed in enumerate(lines):
        own = record.attempts(maker=f"maker-{number}")
        assert [one.seed for one in own] == list(range(200))
        assert [one.id for one in own] == printed[:-1]
    assert is_sound(path)


def test_processes_that_make_the_record_at_the_same_moment_make_one(tmp_path: Path):
    path = tmp_path / "new" / "record.sqlite3"
    writers = started(OPENER, path, range(6), 5)
    let_go(*writers)
    lines = lines_of(*writers)

    assert ids_of(lines) == kept_answers(Record(path)).keys()
    assert len(kept_answers(Record(path))) == 30
    assert [printed[-1] for printed in lines] == ["trouble: "] * 6
    assert len(list(path.parent.glob("*.sqlite3"))) == 1


def test_a_hundred_killed_writers_lose_no_answer_that_was_acknowledged(tmp_path: Path):
    rng = random.Random(1)
    path = tmp_path / "record.sqlite3"
    acknowledged: set[str] = set()
    killed = 0
    while killed < 100 or len(acknowledged) < 100:
        writers = started(WRITER, path, range(4), 100_000)
        let_go(*writers)
        for writer in writers:
            # Some before they have kept anything, most while they write.
            time.sleep(rng.random() * 0.02)
            writer.kill()
        killed += len(writers)
        for writer in writers:
            printed = writer.communicate(timeout=60)[0]
            acknowledged |= set(re.findall(r"[0-9a-f]{32}(?=\n)", printed))
    record = Record(path)
    kept = kept_answers(record)

    assert acknowledged <= kept.keys()
    # At most one for each that was killed had been written and not yet acknowledged.
    assert len(kept) <= len(acknowledged) + killed
    assert record.trouble == ""
    assert is_sound(path)


def zero_a_page(path: Path, page: int) -> None:
    with path.open("r+b") as file:
        file.seek(page * PAGE)
        file.write(bytes(PAGE))


@pytest.mark.parametrize("page", [0, 12], ids=["first page", "page of answers"])
def test_processes_that_open_a_damaged_record_at_the_same_moment_lose_nothing(tmp_path: Path, page: int):
    path = tmp_path / "record.sqlite3"
    before = kept_answers(full_record(path, 400))
    file = path.read_bytes()
    writers = started(OPENER, path, range(4), 40)
    zero_a_page(path, page)
    let_go(*writers)
    lines = lines_of(*writers)
    record = Record(path)
    kept = kept_answers(record)

    assert ids_of(lines) <= kept.keys()
    assert {key for key in before if f"{key}20".encode() not in file[page * PAGE :][:PAGE]} <= kept.keys()
    assert len([1 for printed in lines if "damaged" in printed[-1]]) == 1
    assert len(list(tmp_path.glob("record.damaged-*"))) == 1
    assert len(record.notes()) == 3
    assert is_sound(path)


@pytest.mark.skipif(sys.platform == "win32", reason="an open file cannot be harmed from outside there")
@pytest.mark.parametrize("harm", ["first page", "table", "page of answers"])
def test_damage_under_the_hands_of_writers_costs_no_acknowledged_answer(tmp_path: Path, harm: str):
    path = tmp_path / "record.sqlite3"
    full_record(path, 400)
    writers = started(WRITER, path, range(4), 60)
    if harm == "table":
        db = sqlite3.connect(path, isolation_level=None)
        db.execute("DROP TABLE note")
        db.close()
    else:
        zero_a_page(path, 0 if harm == "first page" else 12)
    let_go(*writers[:2])
    # Meanwhile the record is opened, found damaged and rescued, while two write and two begin to.
    opened = [Record(path) for _ in range(3)]
    let_go(*writers[2:])
    lines = lines_of(*writers)
    kept = kept_answers(Record(path))

    assert len(ids_of(lines)) == 240
    assert ids_of(lines) <= kept.keys()
    assert kept_answers(opened[0]) == kept
    assert is_sound(path)
