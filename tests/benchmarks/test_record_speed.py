"""How long the learner's record takes, new and with 20,000 answers in it: three years of thirty a day.

Run by `pytest tests/benchmarks/test_record_speed.py --benchmark-only`; the goals are medians on two cores.
"""

import itertools
import json
import random
from pathlib import Path

import pytest

from lablib.study.record import Record

COUNT = 20_000
LESSONS, MAKERS = 16, 80


@pytest.fixture(scope="module")
def large(tmp_path_factory: pytest.TempPathFactory) -> Record:
    """A record with 20,000 answers."""
    rng = random.Random(1)
    answers = [
        {
            "id": f"{rng.getrandbits(128):032x}",
            "at": f"{2023 + number // 7000}-03-02T08:00:00.{number:06}+00:00",
            "lesson": f"{number % LESSONS + 1:02}",
            "maker": f"maker-{number % MAKERS}",
            "seed": rng.getrandbits(48),
            "given": f"{number / 4:.2f} mm",
            "state": "right",
            "slips": ["sign-turned"],
            "hints": 1,
        }
        for number in range(COUNT)
    ]
    record = Record(tmp_path_factory.mktemp("large") / "record.sqlite3")
    parts = {"format": 1, "learner_id": "a" * 32, "dealt": [], "begun": [], "notes": []}
    record.merge(json.dumps(parts | {"answers": answers}))
    return record


@pytest.mark.parametrize("kind", ["new", "20,000 answers"])
def test_an_answer_until_it_is_on_the_disk_goal_5_ms(
    benchmark, tmp_path: Path, large: Record, kind: str
) -> None:
    record = Record(tmp_path / "record.sqlite3") if kind == "new" else large
    seeds = itertools.count()

    def add() -> None:
        record.add(lesson="30", maker="edge", seed=next(seeds), given="4.20 mm", state="wrong", slips=["a"])

    benchmark(add)
    assert record.attempts(lesson="30")[-1].seed == next(seeds) - 1


@pytest.mark.parametrize(
    ("asked", "count"),
    [
        ({"lesson": "05"}, COUNT // LESSONS),
        ({"maker": "maker-4"}, COUNT // MAKERS),
        ({"lesson": "05", "maker": "maker-4"}, COUNT // MAKERS),
    ],
    ids=["of a lesson", "of a maker", "of both"],
)
def test_answers_asked_for_of_20_000_goal_25_ms(benchmark, large: Record, asked: dict, count: int) -> None:
    assert len(benchmark(large.attempts, **asked)) == count


def test_all_20_000_answers_goal_400_ms(benchmark, large: Record) -> None:
    assert len(benchmark(large.attempts)) >= COUNT


def test_opening_a_record_of_20_000_answers_goal_60_ms(benchmark, large: Record) -> None:
    assert benchmark(Record, large.path).trouble == ""


def test_a_draft_goal_5_ms(benchmark, large: Record) -> None:
    texts = itertools.count()

    def keep() -> None:
        large.keep_draft(lesson="30", maker="edge", seed=1, given=str(next(texts)))

    benchmark(keep)
    assert large.drafts("30") == {"edge": (1, str(next(texts) - 1))}


def test_writing_out_20_000_answers_goal_600_ms(benchmark, large: Record) -> None:
    assert len(benchmark.pedantic(large.export, rounds=5)) > 3_000_000


def test_rescuing_20_000_answers_goal_1500_ms(benchmark, tmp_path: Path, large: Record) -> None:
    path = tmp_path / "record.sqlite3"
    damaged = bytes(4096) + large.path.read_bytes()[4096:]

    def again() -> None:
        path.write_bytes(damaged)

    record = benchmark.pedantic(lambda: Record(path), setup=again, rounds=5)
    assert len(record.attempts()) >= COUNT
