"""One question on the screen: what is asked, the control to answer, feedback beside it, and what follows."""

from collections.abc import Callable
from threading import RLock

import ipywidgets as widgets

from lablib.errors import LabError
from lablib.panels import check_markup as markup
from lablib.panels.entries import entry_for
from lablib.panels.panel import NamedImage
from lablib.panels.tickets import ActionButton
from lablib.pictures.asked import Asked, picture_for
from lablib.study.answer import AnswerKind, Given, NotUnderstood
from lablib.study.marking import State, mark
from lablib.study.quiz import Place

_PICTURE_NAME = "Picture to the question; its numbers stand beside it"


class QuestionCard:
    """One place of a self-check.

    place: what stands there.
    number, count: which question of how many.
    on_marked: called with this card after each answer that was marked, and after each new question.
    """

    def __init__(
        self, place: Place, *, number: int, count: int, on_marked: Callable[["QuestionCard"], None]
    ) -> None:
        self.place = place
        self._number, self._count = number, count
        self._on_marked = on_marked
        self._one_at_a_time = RLock()
        self._title, self._prompt, self._feedback, self._trouble, self._hints, self._solution = (
            widgets.HTML() for _ in range(6)
        )
        self.check = ActionButton(self.hand_in, description="Check", tooltip=f"check answer {number}")
        self.hint = ActionButton(self._open_hint, description="One more hint")
        self.solve = ActionButton(self._solve, description="Worked solution")
        self.again = ActionButton(self._take_another, description="Another like it")
        self._entry_box, self._picture_box = widgets.VBox(), widgets.VBox()
        row = widgets.HBox([self.check, self.hint, self.solve, self.again])
        answer = widgets.VBox([self._hints, self._entry_box, row, self._trouble, self._feedback])
        parts = {
            "lab-asked": self._prompt,
            "lab-shown": self._picture_box,
            "lab-answer": answer,
            "lab-solved": self._solution,
        }
        for name, part in (*parts.items(), ("lab-row", row)):
            part.add_class(name)
        self.widget = widgets.VBox([self._title, *parts.values()])
        self.widget.add_class("lab-card")
        self._take_question()

    def hand_in(self) -> None:
        """Mark the answer as it stands, show the mark, and keep it."""
        # A kernel may hear its page in a second thread: the same answer must not be kept twice.
        with self._one_at_a_time:
            if not self.place.is_over:
                self._hand_in()

    def _hand_in(self) -> None:
        try:
            marked = self.place.answer(self.entry.given)
        except LabError as fault:
            self._trouble.value = markup.trouble(f"Your answer was not kept. {fault}")
            return
        self._trouble.value = ""
        self._show_mark()
        repeated = self.place.repeated if marked.state.is_answer else ()
        self._feedback.value = markup.feedback(marked, repeated)
        if marked.state.is_answer:
            self._on_marked(self)

    def focus(self) -> None:
        """Put the keyboard into the answer."""
        self.entry.focus()

    def _take_question(self) -> None:
        """Show the question that stands here now, with what was answered or begun."""
        question = self.place.question
        close(*self._entry_box.children, *self._picture_box.children)
        self.entry = entry_for(question.kind, self._changed, self.hand_in)
        self._entry_box.children = [self.entry.widget]
        self._prompt.value = markup.prompt(question)
        self._picture = self._image = None
        if question.drawing is not None:
            self._picture = picture_for(question.drawing)
            self._image = NamedImage(format="png", tooltip=_PICTURE_NAME)
        self._picture_box.children = [self._image] if self._image else []
        _show_if(self._picture_box, self._image is not None)
        self.entry.set(_shown_again(question.kind, self.place))
        self._feedback.value = self._trouble.value = ""
        self._show_mark()
        if self.place.mark.state.is_answer:
            self._feedback.value = markup.feedback(self.place.mark, self.place.repeated)

    def _show_mark(self) -> None:
        place = self.place
        answered = place.mark.state.is_answer
        self._title.value = markup.title(self._number, self._count, place.maker.skill, place.mark)
        # The right answer is kept back until it was found or asked for: a slip that was named can be mended.
        self._solution.value = self._worked_out() if place.is_over else ""
        _show_if(self.check, not place.is_over)
        _show_if(self.solve, answered and not place.is_over)
        _show_if(self.again, answered)
        if place.is_over:
            freeze(self.entry.widget)
        self._show_hints()
        self._draw(place.mark.value)

    def _worked_out(self) -> str:
        return markup.solution(self.place.question.solution, unfolded=self.place.is_solved)

    def _show_hints(self) -> None:
        texts, shown = self.place.question.hints, self.place.hints_open
        self._hints.value = markup.hints(texts[:shown])
        _show_if(self.hint, shown < len(texts) and not self.place.is_over)

    def _draw(self, value: object) -> None:
        if self._picture is None:
            return
        question = self.place.question
        # A marker that was not moved yet is seen where it stands.
        given = self.entry.marker if value is None else value
        asked = Asked(
            values=question.drawing.values,
            given=_drawable(given),
            right=_drawable(question.right) if self.place.is_over else None,
            is_over=self.place.is_over,
        )
        self._picture.update(asked)
        self._image.value = self._picture.png()

    def _changed(self, given: Given) -> None:
        try:
            self.place.keep(given)
            self._trouble.value = ""
        except LabError as fault:
            self._trouble.value = markup.trouble(f"What you write cannot be kept yet. {fault}")
        if self.entry.marker is not None:
            self._move_marker(given)

    def _move_marker(self, given: Given) -> None:
        """Draw the marker where it was moved, or say why it cannot stand there."""
        moved = mark(self.place.question, given)
        self._feedback.value = ""
        if moved.state is State.NOT_UNDERSTOOD:
            self._feedback.value = markup.feedback(moved, ())
        else:
            self._draw(moved.value)

    def _open_hint(self) -> None:
        try:
            self.place.open_hint()
        except LabError as fault:
            self._trouble.value = markup.trouble(f"That this hint was opened cannot be kept. {fault}")
        self._show_hints()
        if self.hint.layout.display == "none":
            self.focus()

    def _solve(self) -> None:
        try:
            self.place.show_solution()
        except LabError as fault:
            self._trouble.value = markup.trouble(f"The solution cannot be opened now. {fault}")
            return
        self._show_mark()
        self.again.focus()

    def _take_another(self) -> None:
        try:
            self.place.new_numbers()
        except LabError as fault:
            self._trouble.value = markup.trouble(f"There is no other question now. {fault}")
            return
        self._take_question()
        self._on_marked(self)
        self.focus()


def freeze(widget: widgets.Widget) -> None:
    """Let a control be read and no longer moved, with all its parts.

    widget: the control, or a box of them.
    """
    if widget.has_trait("disabled"):
        widget.disabled = True
    for part in getattr(widget, "children", ()):
        freeze(part)


def close(*parts: widgets.Widget) -> None:
    """Let controls go that are shown no more, with all their parts: the kernel would keep them for ever."""
    for part in parts:
        close(*getattr(part, "children", ()))
        part.close()


def _shown_again(kind: AnswerKind, place: Place) -> Given:
    """What stands in the control at first: the draft or the last answer, where the control can show it."""
    given = place.mark.given if place.draft is None else place.draft
    if isinstance(given, str):
        return given
    if isinstance(given, list):
        return given if all(isinstance(part, str) for part in given) else None
    try:
        kind.read(given)
    except NotUnderstood:
        return None
    return given


def _drawable(value: object) -> float | tuple[float, float] | None:
    """A value that can be drawn, a number or both parts of a prism, or None for one of another kind."""
    parts = value if isinstance(value, tuple) and len(value) == 2 else (value,)
    return value if all(isinstance(part, int | float) for part in parts) else None


def _show_if(widget: widgets.Widget, wanted: bool) -> None:
    widget.layout.display = None if wanted else "none"
