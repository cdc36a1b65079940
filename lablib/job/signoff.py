"""Tasks at the bench for the sign-off sheet: what is done, when it is right, and who signs.

Nothing here tests hands. What was seen at the bench is signed by whoever saw it.
"""

import re
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.errors import LabError

# Each task is tried on three dates.
TRIES = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchTask:
    """One task.

    done: what is done; right_when: the criterion.

    Raises LabError when one of them is empty.
    """

    done: str
    right_when: str

    def __post_init__(self) -> None:
        if not (self.done.strip() and self.right_when.strip()):
            raise LabError(f"bench task {self.done!r}, right when {self.right_when!r}: give words for both")


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchTasks:
    """The tasks of one lesson.

    number: two digits; title: of the lesson.
    bench_minutes: how long they take together [min].
    caution: what to mind.
    tasks: in their order.
    """

    number: str
    title: str
    bench_minutes: int
    caution: str
    tasks: tuple[BenchTask, ...]


def tasks_numbers() -> tuple[str, ...]:
    """Return the numbers of the lessons that have tasks at the bench."""
    return tuple(sorted(_rows()))


def bench_tasks(lesson: str) -> BenchTasks:
    """Return the tasks of a lesson.

    lesson: its number, with a leading zero or without.

    Raises LabError with the numbers there are.
    """
    number = lesson.strip().zfill(2)
    if not re.fullmatch(r"\d\d", number) or number not in _rows():
        raise LabError(
            f"lesson {lesson!r} has no tasks at the bench to sign: give one of {', '.join(tasks_numbers())}"
        )
    row = _rows()[number]
    tasks = tuple(BenchTask(**task) for task in row["tasks"])
    return BenchTasks(number=number, **(row | {"tasks": tasks}))


def _rows() -> dict:
    return read_table("lablib.job", "signoff.toml")["lesson"]
