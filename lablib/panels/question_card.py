"""One question on the screen: what is asked, the control to answer, feedback beside it, and what follows."""

from collections.abc import Callable

import ipywidgets as widgets

from lablib.errors import LabError
from lablib.panels import check_markup as markup
from lablib.panels.entries import entry_for
from lablib.panels.panel import NamedImage
from lablib.panels.tickets import ActionButton
from lablib.pictures.asked import Asked, picture_for
from lablib.study.answer import Given
from lablib.study.marking import State, mark
from lablib.study.quiz import Place

_PICTURE_NAME = "Picture to the question; its numbers stand beside it"


class QuestionCard:
    """One place of a self-check.

    place: what stands there.
    number, count: which question of how many.
    on_answered: called with this card after each answer that was marked.
    """

    def __init__(
        self, place: Place, *, number: int, count: int, on_answered: Callable[["QuestionCard"], None]
    ) -> None:
        self.place = place
        self._number, self._count = number, count
        self._on_answered = on_answered
        self._title, self._prompt, self._feedback, self._hints, self._solution = (
            widgets.HTML() for _ in range(5)
        )
        self.check = ActionButton(self.hand_in, description="Check", tooltip=f"check answer {number}")
        self.hint = ActionButton(self._open_hint, description="One more hint")
        self.solve = ActionButton(self._solve, description="Worked solution")
        self.again = ActionButton(self._new_numbers, description="New numbers")
        self._entry_box, self._picture_box = widgets.VBox(), widgets.VBox()
        for box, name in ((self._picture_box, "lab-shown"), (self._entry_box, "lab-entry")):
            box.add_class(name)
        row = widgets.HBox([self.check, self.hint, self.solve, self.again], layout={"flex_flow": "row wrap"})
        row.add_class("lab-row")
        words = widgets.VBox(
            [self._prompt, self._hints, self._entry_box, row, self._feedback, self._solution]
        )
        words.add_class("lab-words")
        columns = widgets.HBox([words, self._picture_box], layout={"flex_flow": "row wrap"})
        self.widget = widgets.VBox([self._title, columns])
        self.widget.add_class("lab-card")
        self._take_question()

    def hand_in(self) -> None:
        """Mark the answer as it stands, show the mark, and keep it; a question solved here is over."""
        if self._solved:
            return
        try:
            self.place.answer(self.entry.given)
        except LabError as fault:
            self._feedback.value = markup.trouble(f"Your answer was not kept. {fault}")
            return
        self._show_mark()
        if self.place.mark.state.is_answer:
            self._on_answered(self)

    def focus(self) -> None:
        """Put the keyboard into the answer."""
        self.entry.focus()

    def _take_question(self) -> None:
        """Show the question that stands here now, with what was answered or begun."""
        question = self.place.question
        self.entry = entry_for(question.kind, self._changed, self.hand_in)
        self._solved = False
        self._entry_box.children = [self.entry.widget]
        self._prompt.value = markup.prompt(question)
        self._picture = self._image = None
        if question.drawing is not None:
            self._picture = picture_for(question.drawing)
            self._image = NamedImage(format="png", tooltip=_PICTURE_NAME)
        self._picture_box.children = [self._image] if self._image else []
        _show_if(self._picture_box, self._image is not None)
        self.entry.set(self.place.mark.given if self.place.draft is None else self.place.draft)
        self._show_mark()

    def _show_mark(self) -> None:
        place = self.place
        answered = place.mark.state.is_answer
        self._title.value = markup.title(self._number, self._count, place.maker.skill, place.mark)
        self._feedback.value = markup.feedback(place.mark, place.repeated)
        # The right answer is kept back until it was found or asked for: a slip that was named can be mended.
        found = place.mark.state in (State.RIGHT, State.FAULTY)
        self._solution.value = self._solution_shown(found)
        _show_if(self.check, not self._solved)
        _show_if(self.solve, answered and not found and not self._solved)
        _show_if(self.again, answered)
        self._show_hints()
        self._draw(place.mark.value, right=found or self._solved)

    def _solution_shown(self, found: bool) -> str:
        if not (found or self._solved):
            return ""
        return markup.solution(self.place.question.solution, unfolded=self._solved)

    def _show_hints(self) -> None:
        texts, shown = self.place.question.hints, self.place.hints_open
        self._hints.value = markup.hints(texts[:shown])
        _show_if(self.hint, shown < len(texts) and not self._solved)

    def _draw(self, given: object, *, right: bool) -> None:
        if self._picture is None:
            return
        question = self.place.question
        asked = Asked(
            values=question.drawing.values,
            given=_number(given),
            right=_number(question.right) if right else None,
        )
        self._picture.update(asked)
        self._image.value = self._picture.png()

    def _changed(self, given: Given) -> None:
        try:
            self.place.keep(given)
        except LabError as fault:
            self._feedback.value = markup.trouble(f"What you write cannot be kept yet. {fault}")
        if self.place.question.kind.name == "marker":
            moved = mark(self.place.question, given)
            self._draw(moved.value, right=False)

    def _open_hint(self) -> None:
        self.place.open_hint()
        self._show_hints()

    def _solve(self) -> None:
        self._solved = True
        self._show_mark()

    def _new_numbers(self) -> None:
        try:
            self.place.new_numbers()
        except LabError as fault:
            self._feedback.value = markup.trouble(f"There are no new numbers. {fault}")
            return
        self._take_question()
        self.focus()


def _number(value: object) -> float | None:
    """A value that can be drawn, or None for one of another kind."""
    return value if isinstance(value, int | float) else None


def _show_if(widget: widgets.Widget, wanted: bool) -> None:
    widget.layout.display = None if wanted else "none"
