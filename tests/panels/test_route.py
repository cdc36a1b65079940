"""The route: lessons begun and done, and what comes next."""

from html import unescape
from pathlib import Path

import pytest

from lablib.panels.route import Route
from lablib.questions.course import lesson, lessons
from lablib.study.record import Record


@pytest.fixture
def record(tmp_path: Path) -> Record:
    return Record(tmp_path / "record.sqlite3")


def row(route: Route, number: str) -> str:
    return next(part for part in unescape(route._table.value).split("<tr>") if f">{number} " in part)


def finish(record: Record, number: str) -> None:
    for name in lesson(number).self_check:
        record.add(lesson=number, maker=name, seed=1, given="", state="right")


def test_at_first_nothing_is_begun_and_the_first_lesson_comes_next(record: Record):
    route = Route(record)

    assert all("○ not begun" in row(route, one.number) for one in lessons())
    assert "What comes next: 01 Start here." in route._table.value


def test_a_lesson_is_begun_when_its_questions_were_shown_and_done_when_all_were_right(record: Record):
    route = Route(record)
    record.begin("01")
    record.add(lesson="01", maker="sagitta", seed=1, given="1", state="right")
    record.add(lesson="01", maker="spoilage-cost", seed=1, given="1", state="wrong")
    assert "not begun" in row(route, "01")
    route._again.click()
    assert "… begun</td><td>0 of 8" in row(route, "01")
    finish(record, "01")
    route.look()
    assert "✓ done</td><td>8 of 8" in row(route, "01")
    assert "What comes next: 01" not in route._table.value


def test_when_all_is_done_nothing_comes_next(record: Record):
    for one in lessons():
        finish(record, one.number)

    assert "All lessons that are written are done." in Route(record)._table.value


def test_what_a_lesson_builds_on_and_is_not_written_is_said(record: Record):
    finish(record, "01")
    coming = next(one for one in lessons() if one.number != "01")
    missing = [number for number in coming.needs if number not in {one.number for one in lessons()}]
    said = (
        f"It builds on {', '.join(missing)}, not written yet."
        if missing
        else f"{coming.number} {coming.title}.<"
    )

    assert said in unescape(Route(record)._table.value)


def test_a_record_that_cannot_be_opened_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "file" / "inside"))

    assert 'role="alert"' in Route()._table.value


def test_damage_is_told_above_the_table(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    path.write_text("this was a record once " * 400)

    assert "The record of your answers was damaged" in unescape(Route(Record(path))._table.value)
