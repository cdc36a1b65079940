"""The self-check: marked at once, kept at once, taken up again, honest when the disk will not write."""

import re
import threading
from html import unescape
from pathlib import Path

import pytest

from lablib.errors import LabError
from lablib.panels.question_card import QuestionCard
from lablib.panels.self_check import SelfCheck
from lablib.questions.course import lessons
from lablib.study.marking import State
from lablib.study.picked import OrderAnswer
from lablib.study.record import Record

LESSONS = [one.number for one in lessons()]
SHOWN = None


@pytest.fixture
def record(tmp_path: Path) -> Record:
    return Record(tmp_path / "record.sqlite3")


@pytest.fixture
def check(record: Record) -> SelfCheck:
    return SelfCheck("07", record=record)


def card_of(check: SelfCheck, maker: str) -> QuestionCard:
    return next(card for card in check.cards if card.place.maker.name == maker)


def written(card: QuestionCard, value: object) -> object:
    """Return a value of the question's kind in the form an answer is given in."""
    kind = card.place.question.kind
    if kind.name in ("choice", "marker"):
        return value
    if kind.name == "several":
        return sorted(value)
    return list(value) if isinstance(kind, OrderAnswer) else kind.written(value)


def answer(card: QuestionCard, value: object) -> None:
    card.entry.set(written(card, value))
    card.check.click()


def said(card: QuestionCard) -> str:
    return unescape(re.sub(r"<[^>]*>", " ", card._trouble.value + card._feedback.value))


def displays(*widgets) -> list[object]:
    return [widget.layout.display for widget in widgets]


@pytest.mark.parametrize("number", LESSONS)
def test_every_lesson_shows_all_its_questions_unanswered(number: str, tmp_path: Path):
    check = SelfCheck(number, record=Record(tmp_path / "record.sqlite3"))

    assert [card.place.maker.name for card in check.cards] == list(check.lesson.self_check)
    for card in check.cards:
        assert "not answered yet" in card._title.value
        assert card.place.question.prompt[-1] in unescape(card._prompt.value)
        assert said(card).strip() == ""
        assert displays(card.check, card.solve, card.again) == [SHOWN, "none", "none"]


@pytest.mark.parametrize("number", LESSONS)
def test_every_question_is_answered_right_and_wrong_through_its_control(number: str, tmp_path: Path):
    check = SelfCheck(number, record=Record(tmp_path / "record.sqlite3"))
    for card in check.cards:
        question = card.place.question
        if question.kind.name in ("number", "choice", "marker"):
            answer(card, question.mistakes[0].value)
            assert card.place.mark.state is State.WRONG
            assert question.mistakes[0].slips[0].words in said(card)
        answer(card, question.right)
        assert card.place.mark.state is State.RIGHT, question
        assert displays(card.check, card.solve, card.again) == ["none", "none", SHOWN]

    count = len(check.cards)
    assert f"{count} of {count} questions right once: this lesson is done." in check._summary.value


def test_a_wrong_answer_shows_on_the_picture_and_the_right_one_stays_hidden(check: SelfCheck):
    card = card_of(check, "temporal-edge")
    shown = []
    card._picture.update = shown.append
    answer(card, card.place.question.mistakes[0].value)

    assert [(one.given, one.right) for one in shown] == [
        (pytest.approx(card.place.question.mistakes[0].value, abs=0.05), None)
    ]
    assert card._solution.value == ""


def test_the_worked_solution_ends_the_question(check: SelfCheck, record: Record):
    card = card_of(check, "sagitta")
    answer(card, card.place.question.mistakes[0].value)
    shown = []
    card._picture.update = shown.append
    card.solve.click()

    assert "<details open>" in card._solution.value
    assert shown[-1].right == card.place.question.right
    assert displays(card.check, card.hint, card.solve, card.again) == ["none", "none", "none", SHOWN]
    answer(card, card.place.question.right)
    assert [attempt.state for attempt in record.attempts()] == ["wrong", "solution-shown"]
    again = card_of(SelfCheck("07", record=record), "sagitta")
    assert "<details open>" in again._solution.value
    assert again.entry.line.box.disabled


def test_after_a_right_answer_the_solution_waits_folded(check: SelfCheck):
    card = card_of(check, "sagitta")
    answer(card, card.place.question.right)

    assert card._solution.value.startswith("<details><summary>Worked solution</summary>")


def test_a_right_answer_leads_to_the_next_that_is_not_over(check: SelfCheck, monkeypatch: pytest.MonkeyPatch):
    focused = []
    for card in check.cards:
        monkeypatch.setattr(card, "focus", lambda card=card: focused.append(card))
    answer(check.cards[1], check.cards[1].place.question.right)
    answer(check.cards[0], check.cards[0].place.question.right)
    answer(check.cards[-1], check.cards[-1].place.question.right)

    assert focused == [check.cards[2]] * 3


def test_a_wrong_answer_leaves_the_keyboard_where_the_slip_is_mended(check, monkeypatch: pytest.MonkeyPatch):
    for card in check.cards:
        monkeypatch.setattr(card, "focus", lambda: pytest.fail("the keyboard was moved"))
    card = card_of(check, "sagitta")
    answer(card, card.place.question.mistakes[0].value)

    assert card.place.mark.state is State.WRONG


def test_what_cannot_be_read_is_not_an_answer(check: SelfCheck, record: Record):
    card = card_of(check, "sagitta")
    card.entry.set("<b>four</b>")
    card.check.click()

    assert "not answered yet" in card._title.value
    assert "Not marked" in said(card)
    assert "<b>" not in card._feedback.value
    assert "&lt;b&gt;four&lt;/b&gt;" in card._feedback.value
    assert record.attempts() == ()


def test_nothing_handed_in_is_not_an_answer(check: SelfCheck, record: Record):
    for card in (*check.cards, *SelfCheck("01", record=record).cards):
        card.check.click()
        assert "not answered yet" in card._title.value
        assert "There is nothing to mark yet: write, pick or move something first." in said(card)
    assert record.attempts() == ()


def test_new_numbers_bring_another_question_and_an_empty_answer(check: SelfCheck):
    for card in check.cards:
        before = card.place.question
        answer(card, before.right)
        card.again.click()
        assert card.place.question.seed != before.seed
        assert card.place.question.maker == before.maker
        assert "not answered yet" in card._title.value
        assert (said(card).strip(), card._solution.value) == ("", "")


def test_hints_open_one_by_one(check: SelfCheck):
    card = card_of(check, "temporal-edge")
    hints = card.place.question.hints
    while card.hint.layout.display is SHOWN:
        opened = card.place.hints_open
        card.hint.click()
        assert card.place.hints_open == opened + 1
        assert unescape(card._hints.value).count("Hint: ") == opened + 1
    assert hints[-1] in unescape(card._hints.value)


def test_all_comes_back_with_another_panel_on_the_same_record(check: SelfCheck, record: Record):
    first, second, third = check.cards[:3]
    answer(first, first.place.question.mistakes[0].value)
    second.entry.line.box.value = "12."
    again = SelfCheck("07", record=Record(record.path))

    assert said(again.cards[0]) == said(first)
    assert again.cards[0].entry.given == first.entry.given
    assert again.cards[1].entry.given == "12."
    assert "not answered yet" in again.cards[1]._title.value
    assert again.cards[2].place.question == third.place.question


def test_a_marker_is_drawn_where_it_stands_before_it_is_handed_in(check: SelfCheck, record: Record):
    card = card_of(check, "thickest-edge-place")
    shown = []
    card._picture.update = shown.append
    card.entry.control.slider.value = 45.0

    assert (shown[-1].given, shown[-1].right) == (45.0, None)
    assert record.attempts() == ()


def test_a_marker_is_seen_before_it_was_moved_and_told_where_it_cannot_stand(check: SelfCheck):
    card = card_of(check, "thickest-edge-place")
    shown = []
    card._picture.update = shown.append
    card._draw(None)
    assert shown[-1].given == card.place.question.kind.start
    card.entry.control.box.value = "400"
    assert "Not marked: '400' is not a place on the picture" in said(card)
    card.entry.control.box.value = "40"
    assert said(card).strip() == ""


def test_what_is_over_can_be_read_and_no_longer_moved(tmp_path: Path):
    for number in LESSONS:
        check = SelfCheck(number, record=Record(tmp_path / "record.sqlite3"))
        for card in check.cards:
            answer(card, card.place.question.right)
            parts = [card.entry.widget]
            while parts:
                part = parts.pop()
                assert getattr(part, "disabled", True)
                parts.extend(getattr(part, "children", ()))


def test_somebody_else_can_be_told_after_each_answer(record: Record):
    told = []
    check = SelfCheck("07", record=record, after=lambda: told.append(len(record.attempts())))
    answer(check.cards[0], check.cards[0].place.question.right)

    assert told == [0, 1]


def test_the_same_slip_in_two_of_three_tries_is_said(check: SelfCheck):
    card = card_of(check, "sagitta")
    words = "The same slip came in two of your last three tries"
    answer(card, card.place.question.mistakes[0].value)
    assert words not in said(card)
    card.again.click()
    answer(card, card.place.question.mistakes[0].value)
    assert words in said(card)


def test_an_answer_that_cannot_be_kept_is_said_and_stays_written(check: SelfCheck, monkeypatch):
    card = card_of(check, "sagitta")

    def full(**_: object) -> None:
        raise LabError("the record cannot be written (disk is full): make room")

    monkeypatch.setattr(check.quiz.record, "keep_draft", full)
    card.entry.line.box.value = "3.6"
    assert "What you write cannot be kept yet. the record cannot be written (disk is full)" in said(card)
    monkeypatch.setattr(check.quiz.record, "add", full)
    card.check.click()
    assert "Your answer was not kept. the record cannot be written (disk is full): make room" in said(card)
    assert card.entry.given == "3.6"
    assert "not answered yet" in card._title.value
    monkeypatch.setattr(check.quiz.record, "deal", full)
    card._take_another()
    assert "There is no other question now. " in said(card)
    card._solve()
    assert "The solution cannot be opened now. " in said(card)


def test_a_record_that_cannot_be_opened_is_said_where_the_questions_would_stand(tmp_path, monkeypatch):
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("LABLIB_FOLDER", str(tmp_path / "file" / "inside"))
    check = SelfCheck("07")

    assert check.cards == []
    assert 'role="alert"' in check.widget.children[1].value
    assert "cannot be made" in check.widget.children[1].value


def test_damage_is_told_above_the_questions(tmp_path: Path):
    path = tmp_path / "record.sqlite3"
    path.write_text("this was a record once " * 400)
    check = SelfCheck("07", record=Record(path))

    assert "The record of your answers was damaged" in unescape(check._trouble.value)
    assert len(check.cards) == len(check.lesson.self_check)


def test_damage_that_comes_to_light_later_is_told_as_well(check: SelfCheck, record: Record):
    answer(check.cards[0], check.cards[0].place.question.mistakes[0].value)
    record.path.write_bytes(b"no record any more " * 400)
    answer(check.cards[0], check.cards[0].place.question.right)

    assert "damaged" in check._trouble.value


def test_the_keyboard_goes_back_to_what_is_left_and_then_to_another_question(check, monkeypatch):
    focused = []
    for card in check.cards:
        monkeypatch.setattr(card, "focus", lambda card=card: focused.append(card))
        monkeypatch.setattr(card.again, "focus", lambda card=card: focused.append(card.again))
    for card in reversed(check.cards):
        answer(card, card.place.question.right)

    first, *rest = check.cards
    assert focused == [*([first] * len(rest)), first.again]


def test_what_cannot_be_read_leaves_the_last_answer_and_its_buttons(check: SelfCheck):
    card = card_of(check, "sagitta")
    answer(card, card.place.question.mistakes[0].value)
    card.entry.set("abc")
    card.check.click()

    assert "not right yet" in card._title.value
    assert displays(card.check, card.solve, card.again) == [SHOWN, SHOWN, SHOWN]


@pytest.mark.parametrize("odd", [[["a"]], {"a": 1}, 12.5, ["a", "a"], True, "text"])
def test_a_draft_that_no_control_can_show_is_left_out(odd: object, tmp_path: Path):
    for number in LESSONS:
        record = Record(tmp_path / f"{number}.sqlite3")
        for card in SelfCheck(number, record=record).cards:
            question = card.place.question
            record.keep_draft(lesson=number, maker=question.maker, seed=question.seed, given=odd)
        assert len(SelfCheck(number, record=record).cards) == len(SelfCheck(number).lesson.self_check)


def test_two_threads_keep_one_answer_once(check: SelfCheck, record: Record):
    card = card_of(check, "sagitta")
    card.entry.set(written(card, card.place.question.right))
    threads = [threading.Thread(target=card.hand_in) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert [one.state for one in record.attempts()] == ["right"]


def test_a_lesson_that_is_not_written_is_named():
    with pytest.raises(LabError, match="lesson '99' is not written: give one of 01"):
        SelfCheck("99")


def test_a_prism_shows_on_its_picture_with_both_its_parts(record: Record):
    card = card_of(SelfCheck("06", record=record), "prism-at-a-point-toric")
    shown = []
    card._picture.update = shown.append
    question = card.place.question
    answer(card, question.mistakes[0].value)
    answer(card, question.right)

    wrong, right = shown
    assert (wrong.given, wrong.right) == (pytest.approx(question.mistakes[0].value, abs=0.005), None)
    assert (right.given, right.right) == (pytest.approx(question.right, abs=0.005), question.right)
