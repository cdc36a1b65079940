"""The course as data: it names the lessons that are there, and questions that can be made."""

import json
import re

import pytest

from lablib import places
from lablib.errors import LabError
from lablib.questions.course import Progress, lesson, lessons, standings, what_next
from lablib.questions.makers import MAKERS, maker
from lablib.study.record import Record

by_lesson = pytest.mark.parametrize("one", lessons(), ids=lambda one: one.number)


def test_the_course_has_the_lessons_that_are_there_with_their_titles():
    found = {}
    for path in sorted(places.shipped("lessons").glob("[0-9]*.ipynb")):
        first = json.loads(path.read_text(encoding="utf-8"))["cells"][0]["source"]
        number, title = re.match(r"# (\d\d) (.*)", "".join(first)).groups()
        found[number] = title.strip()

    assert {one.number: one.title for one in lessons()} == found


@by_lesson
def test_a_lesson_asks_five_to_eight_different_questions_that_can_be_made(one):
    assert 5 <= len(one.makers) <= 8
    assert len(set(one.self_check)) == len(one.self_check)
    assert all(each.make(0).prompt for each in one.makers)


@by_lesson
def test_a_lesson_builds_only_on_earlier_ones_and_takes_a_sensible_time(one):
    assert all(number < one.number for number in one.needs)
    assert 10 <= one.screen_minutes <= 90
    assert 0 <= one.bench_minutes <= 90


def test_a_maker_that_is_not_there_is_named():
    assert maker("sagitta") is MAKERS["sagitta"]
    with pytest.raises(LabError, match="question maker 'sagita' is not known: give one of "):
        maker("sagita")


def test_a_lesson_that_is_not_there_is_named():
    with pytest.raises(LabError, match="lesson '7' is not written: give one of 01"):
        lesson("7")


def test_standing_counts_each_question_once(tmp_path):
    record = Record(tmp_path / "record.sqlite3")
    for seed in range(3):
        record.add(lesson="01", maker="spoilage-cost", seed=seed, given="1", state="right")
    first, *rest = standings(record)

    assert (first.progress, first.right) == (Progress.BEGUN, 1)
    assert all(one.progress is Progress.NOT_BEGUN for one in rest)
    assert what_next((first, *rest)).number == "01"
