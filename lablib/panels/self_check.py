"""The self-check at the end of a lesson: its questions, answered and marked on the page."""

import ipywidgets as widgets
from IPython.display import display

from lablib.errors import LabError
from lablib.panels import check_markup as markup
from lablib.panels import markup as panel_markup
from lablib.panels.question_card import QuestionCard
from lablib.questions.course import lesson
from lablib.study.marking import State
from lablib.study.quiz import Quiz
from lablib.study.record import Record


class SelfCheck:
    """The questions of a lesson, one below the other; answers are kept in the learner's record.

    number: of the lesson, two digits.
    record: where answers are kept; the learner's own when not given.

    A record that cannot be opened is said in words where the questions would stand.

    Raises LabError for a lesson that is not written.
    """

    def __init__(self, number: str, *, record: Record | None = None) -> None:
        self.lesson = lesson(number)
        self.cards: list[QuestionCard] = []
        self._summary, self._trouble = widgets.HTML(), widgets.HTML()
        style = widgets.HTML(markup.STYLE, layout={"display": "none"})
        try:
            self.quiz = Quiz(record or Record.of_learner(), lesson=number, makers=self.lesson.makers)
        except LabError as fault:
            self.widget = widgets.VBox([style, widgets.HTML(panel_markup.refusal(str(fault)))])
        else:
            self._trouble.value = markup.trouble(self.quiz.record.trouble) if self.quiz.record.trouble else ""
            self._make_cards()
            self.widget = widgets.VBox(
                [style, self._trouble, self._summary, *(card.widget for card in self.cards)]
            )
            self._sum_up()
        self.widget.add_class("lab-check")

    def show(self) -> None:
        """Display the questions under the cell."""
        display(self.widget)

    _ipython_display_ = show

    def _make_cards(self) -> None:
        count = len(self.quiz.places)
        self.cards = [
            QuestionCard(place, number=number, count=count, on_answered=self._answered)
            for number, place in enumerate(self.quiz.places, start=1)
        ]

    def _answered(self, card: QuestionCard) -> None:
        self._sum_up()
        at = self.cards.index(card)
        waiting = [one for one in self.cards[at + 1 :] if one.place.mark.state is not State.RIGHT]
        if waiting:
            waiting[0].focus()

    def _sum_up(self) -> None:
        self._summary.value = markup.summary(
            answered=self.quiz.answered, right=self.quiz.right, count=len(self.cards)
        )
