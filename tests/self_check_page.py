"""What a learner does in the self-check of a lesson's page, and what the record on disk says meanwhile."""

from playwright.sync_api import Locator, Page

from lablib.questions.course import lesson
from lablib.study.quiz import Place, Quiz
from lablib.study.record import Record


def cards(page: Page) -> Locator:
    """Return the questions of the lesson, in reading order."""
    return page.locator(".jp-NotebookPanel:not(.lm-mod-hidden) .lab-card")


def card(page: Page, number: int) -> Locator:
    """Return one question, counted from 1."""
    return cards(page).nth(number - 1)


def line(page: Page, number: int) -> Locator:
    """Return the box of a question that is answered on one line."""
    return card(page, number).get_by_role("textbox")


def feedback(page: Page, number: int) -> Locator:
    """Return what is said about an answer."""
    return card(page, number).get_by_role("status")


def places(number: str) -> dict[str, Place]:
    """Return what stands in the self-check of a lesson, as the learner's record has it now, by maker.

    number: of the lesson.
    """
    quiz = Quiz(Record.of_learner(), lesson=number, makers=lesson(number).makers)
    return {place.maker.name: place for place in quiz.places}


def number_of(lesson_number: str, maker: str) -> int:
    """Return which question of a lesson a maker makes, counted from 1."""
    return lesson(lesson_number).self_check.index(maker) + 1


def right_text(place: Place) -> str:
    """Return the right answer to the question that stands in a place, as it is written."""
    return place.question.kind.written(place.question.right)
