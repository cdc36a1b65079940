"""Tasks at the bench: every lesson with bench time has some, and the lessons' own tables say the same."""

import re

import pytest
from notebooks.lesson import cells, lesson_paths

from lablib.errors import LabError
from lablib.job.signoff import BenchTask, bench_tasks, tasks_numbers
from lablib.questions.course import lessons

COURSE = {one.number: one for one in lessons()}


def on_your_own(path) -> str:
    (found,) = [cell.source for cell in cells(path) if cell.source.startswith("## On your own")]
    return found


def test_every_lesson_with_bench_time_has_tasks_and_no_other_lesson_has():
    at_bench = {number for number, one in COURSE.items() if one.bench_minutes}
    assert at_bench <= set(tasks_numbers())
    assert not {number for number, one in COURSE.items() if not one.bench_minutes} & set(tasks_numbers())


@pytest.mark.parametrize("number", tasks_numbers())
def test_title_and_minutes_are_those_of_the_course(number: str):
    tasks = bench_tasks(number)
    if number in COURSE:
        one = COURSE[number]
        assert (tasks.title, tasks.bench_minutes) == (one.title, one.bench_minutes)
    assert 2 <= len(tasks.tasks) <= 6
    assert tasks.caution.endswith(".")


@pytest.mark.parametrize("path", lesson_paths(), ids=lambda path: path.stem)
def test_a_table_of_tasks_in_a_lesson_is_the_one_on_the_sheet(path):
    rows = re.findall(r"^\|(.+)\|(.+)\|$", on_your_own(path), flags=re.MULTILINE)
    if ("task", "right when") in rows:
        told = [(one.done, one.right_when) for one in bench_tasks(path.stem[:2]).tasks]
        assert told == rows[2:]


@pytest.mark.parametrize("written", ["15", " 15", "5", "05"])
def test_a_number_is_taken_with_a_leading_zero_or_without(written: str):
    assert bench_tasks(written).number == written.strip().zfill(2)


@pytest.mark.parametrize("written", ["02", "99", "slip", "", "1O"])
def test_a_lesson_without_tasks_is_refused(written: str):
    with pytest.raises(LabError, match=r"has no tasks at the bench to sign: give one of 01, 03, 05"):
        bench_tasks(written)


def test_a_task_needs_both_words():
    with pytest.raises(LabError, match="bench task 'cut', right when ' ': give words for both"):
        BenchTask(done="cut", right_when=" ")
