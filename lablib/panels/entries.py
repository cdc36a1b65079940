"""What an answer is given with: one control for each kind of answer."""

from lablib.panels.controls import PairedControl
from lablib.panels.entry import Entry, OnChange, OnEnter
from lablib.panels.line_entries import LineEntry, PrescriptionEntry
from lablib.panels.picking import ChoiceEntry, OrderEntry, SeveralEntry
from lablib.panels.specs import Slider
from lablib.study.answer import AnswerKind, Given


class MarkerEntry:
    """A marker that is moved on the picture with a slider and a number box.

    kind: of the answer, with its scale.
    on_change: see `OnChange`.
    """

    def __init__(self, kind: AnswerKind, on_change: OnChange) -> None:
        self._spec = Slider(
            name="marker",
            label=kind.label,
            unit=kind.unit,
            low=kind.low,
            high=kind.high,
            step=kind.step,
            value=kind.start,
        )
        self._moved = False
        self._on_change = on_change
        self.control = PairedControl(self._spec, self._changed)
        self.widget = self.control.widget
        self.widget.add_class("lab-control")

    @property
    def marker(self) -> float:
        """Where the marker stands, moved yet or not."""
        return self.control.value

    @property
    def given(self) -> Given:
        """Where the marker stands, or what was typed and is no place; None until it was moved."""
        if self.control.fault:
            return self.control.box.value
        return self.control.value if self._moved else None

    def set(self, given: Given) -> None:
        """Put the marker somewhere."""
        self._moved = isinstance(given, int | float)
        # One that was kept on another scale stands at the nearest place of this one.
        self.control.set(self._spec.nearest(given) if self._moved else self._spec.value)

    def focus(self) -> None:
        """Put the keyboard into the number box."""
        self.control.box.focus()

    def _changed(self) -> None:
        self._moved = True
        self._on_change(self.given)


# By the name of the kind: what is written is handed in with Enter, what is picked or moved is not.
_WRITTEN: dict[str, type] = {
    "number": LineEntry,
    "prism": LineEntry,
    "base": LineEntry,
    "prescription": PrescriptionEntry,
}
_PICKED: dict[str, type] = {
    "choice": ChoiceEntry,
    "several": SeveralEntry,
    "order": OrderEntry,
    "marker": MarkerEntry,
}


def entry_for(kind: AnswerKind, on_change: OnChange, on_enter: OnEnter) -> Entry:
    """Return the control for a kind of answer.

    kind: by its name.
    on_change, on_enter: see `OnChange`, `OnEnter`.
    """
    if kind.name in _WRITTEN:
        return _WRITTEN[kind.name](kind, on_change, on_enter)
    return _PICKED[kind.name](kind, on_change)
