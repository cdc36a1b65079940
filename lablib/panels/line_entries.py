"""Answers that are written: on one line, or a prescription with a box for each part."""

import ipywidgets as widgets

from lablib.panels.entry import OnChange, OnEnter
from lablib.panels.line import Line
from lablib.panels.quiet import Quiet
from lablib.study.answer import AnswerKind, Given

_EXAMPLE = "+2.00 -1.50 x 020"
_ONE_LINE, _BOXES = "one line", "a box for each part"


class LineEntry:
    """One line of text.

    kind: of the answer; its unit stands before the box.
    on_change, on_enter: see `OnChange`, `OnEnter`.
    example: of how to write, shown while the line is empty.
    """

    marker = None

    def __init__(
        self, kind: AnswerKind, on_change: OnChange, on_enter: OnEnter, *, example: str = ""
    ) -> None:
        unit = getattr(kind, "unit", "")
        self.line = Line(
            description=f"Your answer [{unit}]" if unit else "Your answer",
            placeholder=example,
            on_change=lambda text: on_change(text or None),
            on_enter=on_enter,
        )
        self.widget = self.line.box
        self.focus = self.line.focus

    @property
    def given(self) -> Given:
        """The text, None where there is none."""
        return self.line.text or None

    def set(self, given: Given) -> None:
        """Show a text."""
        self.line.set(given if isinstance(given, str) else "")


class PrescriptionEntry:
    """A prescription as one line or with a box for each part, whichever the learner picks.

    kind: of the answer, with the names of its boxes.
    on_change, on_enter: see `OnChange`, `OnEnter`; Enter in a box that is not the last goes on to the next.
    """

    marker = None

    def __init__(self, kind: AnswerKind, on_change: OnChange, on_enter: OnEnter) -> None:
        self._quiet = Quiet()
        self._on_change = on_change
        self.how = widgets.Dropdown(description="Write it as", options=(_ONE_LINE, _BOXES))
        self.whole = LineEntry(kind, on_change, on_enter, example=_EXAMPLE)
        self.boxes = [
            Line(
                description=name.capitalize(),
                placeholder="",
                on_change=lambda _: on_change(self.given),
                on_enter=on_enter if number == len(kind.boxes) - 1 else self._next(number),
            )
            for number, name in enumerate(kind.boxes)
        ]
        self._row = widgets.HBox([box.box for box in self.boxes], layout={"flex_flow": "row wrap"})
        self.widget = widgets.VBox([self.how, self.whole.widget, self._row])
        self.how.observe(self._picked, names="value")
        self._show()

    @property
    def given(self) -> Given:
        """The line, or the texts of the boxes; None where nothing is written."""
        if self.how.value == _ONE_LINE:
            return self.whole.given
        texts = [box.text for box in self.boxes]
        return texts if any(texts) else None

    def set(self, given: Given) -> None:
        """Show a prescription as it was written."""
        in_boxes = isinstance(given, list) and len(given) == len(self.boxes)
        for box, text in zip(self.boxes, given if in_boxes else [""] * len(self.boxes), strict=True):
            box.set(text)
        self.whole.set(None if in_boxes else given)
        if given is not None:
            with self._quiet:
                self.how.value = _BOXES if in_boxes else _ONE_LINE

    def focus(self) -> None:
        """Put the cursor where writing begins."""
        (self.whole if self.how.value == _ONE_LINE else self.boxes[0]).focus()

    def _next(self, number: int) -> OnEnter:
        return lambda: self.boxes[number + 1].focus()

    def _picked(self, _: dict) -> None:
        self._show()
        if not self._quiet:
            self._on_change(self.given)

    def _show(self) -> None:
        one = self.how.value == _ONE_LINE
        self.whole.widget.layout.display = None if one else "none"
        self._row.layout.display = "none" if one else None
