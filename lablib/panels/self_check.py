"""The self-check at the end of a lesson: its questions, answered and marked on the page."""

from collections.abc import Callable

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
    after: called without arguments once the questions stand there, and after each answer.

    A record that cannot be opened is said in words where the questions would stand.

    Raises LabError for a lesson that is not written.
    """

    def __init__(
        self, number: str, *, record: Record | None = None, after: Callable[[], None] = lambda: None
    ) -> None:
        self._after = after
        self.lesson = lesson(number)
        self.cards: list[QuestionCard] = []
        self._summary, self._trouble = widgets.HTML(), widgets.HTML()
        style = widgets.HTML(markup.STYLE, layout={"display": "none"})
        try:
            self.quiz = Quiz(record or Record.of_learner(), lesson=number, makers=self.lesson.makers)
        except LabError as fault:
            self.widget = widgets.VBox([style, widgets.HTML(panel_markup.refusal(str(fault)))])
        else:
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
            QuestionCard(place, number=number, count=count, on_marked=self._marked)
            for number, place in enumerate(self.quiz.places, start=1)
        ]

    def _marked(self, card: QuestionCard) -> None:
        self._sum_up()
        # After a wrong answer the keyboard stays: what was said is read there, and the slip mended.
        if card.place.mark.state is State.RIGHT:
            at = self.cards.index(card)
            in_turn = (*self.cards[at + 1 :], *self.cards[:at])
            waiting = [one for one in in_turn if not one.place.is_over]
            (waiting[0] if waiting else card.again).focus()

    def _sum_up(self) -> None:
        try:
            right = self.quiz.right_once
        except LabError as fault:
            self._trouble.value = markup.trouble(str(fault))
            return
        self._summary.value = markup.summary(right=right, count=len(self.cards))
        # Also damage that comes to light while the page stands there.
        self._trouble.value = markup.trouble(self.quiz.record.trouble) if self.quiz.record.trouble else ""
        self._after()
