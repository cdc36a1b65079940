"""The course: which lessons there are, what each asks, and how far a learner has come."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from lablib.datafile import read_table
from lablib.errors import LabError
from lablib.questions.makers import maker
from lablib.study.maker import Maker
from lablib.study.quiz import right_once
from lablib.study.record import Record


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """One lesson of the course.

    number: two digits, "07".
    title: as it stands at its top.
    needs: numbers of the lessons it builds on, also of those that are not written yet.
    screen_minutes, bench_minutes: how long it takes [min].
    self_check: names of the makers of its questions, in order.
    """

    number: str
    title: str
    needs: tuple[str, ...]
    screen_minutes: int
    bench_minutes: int
    self_check: tuple[str, ...]

    @property
    def makers(self) -> tuple[Maker, ...]:
        """The makers of its questions, in order."""
        return tuple(maker(name) for name in self.self_check)


class Progress(StrEnum):
    """How far a learner is with a lesson."""

    NOT_BEGUN = "not begun"
    BEGUN = "begun"
    DONE = "done"


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """One lesson of one learner.

    lesson: which.
    progress: how far.
    right: how many of its questions were answered right at least once.
    """

    lesson: Lesson
    progress: Progress
    right: int


@cache
def lessons() -> tuple[Lesson, ...]:
    """Return the lessons that are written, in the order of their numbers."""
    table = read_table("lablib.questions", "course.toml")["lesson"]
    return tuple(
        Lesson(number=number, **{key: _fixed(value) for key, value in row.items()})
        for number, row in sorted(table.items())
    )


def _fixed(value: object) -> object:
    return tuple(value) if isinstance(value, list) else value


def lesson(number: str) -> Lesson:
    """Return the lesson of a number.

    number: two digits.

    Raises LabError with the numbers there are.
    """
    found = next((one for one in lessons() if one.number == number), None)
    if found is None:
        known = ", ".join(one.number for one in lessons())
        raise LabError(f"lesson {number!r} is not written: give one of {known}")
    return found


def standings(record: Record) -> tuple[Standing, ...]:
    """Return how far the learner is with each lesson.

    record: of the learner. A lesson is done when each of its questions was answered right once.
    """
    begun, right = record.begun(), right_once(record)
    return tuple(
        _standing(one, one.number in begun, {maker for lesson, maker in right if lesson == one.number})
        for one in lessons()
    )


def _standing(one: Lesson, begun: bool, right: set[str]) -> Standing:
    known = right & set(one.self_check)
    done = len(known) == len(one.self_check)
    progress = Progress.DONE if done else Progress.BEGUN if begun or known else Progress.NOT_BEGUN
    return Standing(lesson=one, progress=progress, right=len(known))


def what_next(found: tuple[Standing, ...]) -> Lesson | None:
    """Return the lesson to go on with: the first that is not done. None when all are.

    found: the standing of every lesson, in order.
    """
    return next((one.lesson for one in found if one.progress is not Progress.DONE), None)
