"""Answers that are picked: one option, several, or all of them in an order."""

from collections.abc import Callable

import ipywidgets as widgets

from lablib.panels.entry import OnChange
from lablib.panels.quiet import Quiet
from lablib.panels.tickets import ActionButton
from lablib.study.answer import AnswerKind, Given


class ChoiceEntry:
    """One of several options.

    kind: of the answer, with its options.
    on_change: see `OnChange`.
    """

    marker = None

    def __init__(self, kind: AnswerKind, on_change: OnChange) -> None:
        self._keys = [option.key for option in kind.options]
        options = [(option.words, option.key) for option in kind.options]
        self.widget = widgets.RadioButtons(options=options, index=None)
        self.widget.add_class("lab-choice")
        self._quiet = Quiet()
        self._on_change = on_change
        self.widget.observe(self._picked, names="index")

    @property
    def given(self) -> Given:
        """The key of the option picked, None where none is."""
        return self.widget.value

    def set(self, given: Given) -> None:
        """Show a pick."""
        with self._quiet:
            self.widget.index = self._keys.index(given) if given in self._keys else None

    def focus(self) -> None:
        """Put the keyboard on the first option."""
        self.widget.focus()

    def _picked(self, _: dict) -> None:
        if not self._quiet:
            self._on_change(self.given)


class SeveralEntry:
    """All options that are true.

    kind: of the answer, with its options.
    on_change: see `OnChange`.
    """

    marker = None

    def __init__(self, kind: AnswerKind, on_change: OnChange) -> None:
        self.boxes = {
            option.key: widgets.Checkbox(description=option.words, value=False, indent=False)
            for option in kind.options
        }
        self.widget = widgets.VBox(list(self.boxes.values()))
        self.widget.add_class("lab-several")
        self._quiet = Quiet()
        self._on_change = on_change
        for box in self.boxes.values():
            box.observe(self._picked, names="value")

    @property
    def given(self) -> Given:
        """The keys picked, in the order shown; None where none is."""
        return [key for key, box in self.boxes.items() if box.value] or None

    def set(self, given: Given) -> None:
        """Show picks."""
        with self._quiet:
            for key, box in self.boxes.items():
                box.value = isinstance(given, list) and key in given

    def focus(self) -> None:
        """Put the keyboard on the first option."""
        next(iter(self.boxes.values())).focus()

    def _picked(self, _: dict) -> None:
        if not self._quiet:
            self._on_change(self.given)


class OrderEntry:
    """All options in an order, moved one place at a time.

    kind: of the answer, with its options as they stand at first.
    on_change: see `OnChange`.
    """

    marker = None

    def __init__(self, kind: AnswerKind, on_change: OnChange) -> None:
        self._words = {option.key: option.words for option in kind.options}
        self._on_change = on_change
        self._order, self._moved = list(self._words), False
        self.rows = [_Row(number, self._move) for number in range(len(self._order))]
        self.widget = widgets.VBox([row.widget for row in self.rows])
        self.widget.add_class("lab-order")
        self._show()

    @property
    def given(self) -> Given:
        """The keys in their order; None until one was moved."""
        return list(self._order) if self._moved else None

    def set(self, given: Given) -> None:
        """Show an order."""
        self._moved = isinstance(given, list) and sorted(given) == sorted(self._words)
        self._order = list(given if self._moved else self._words)
        self._show()

    def focus(self) -> None:
        """Put the keyboard on the first row's button."""
        self.rows[0].later.focus()

    def _move(self, at: int, by: int) -> None:
        to, self._moved = at + by, True
        self._order[at], self._order[to] = self._order[to], self._order[at]
        self._show()
        # The keyboard goes with the thing that was moved.
        self.rows[to].focus(by)
        self._on_change(self.given)

    def _show(self) -> None:
        for number, key in enumerate(self._order):
            self.rows[number].show(self._words[key], last=number == len(self._order) - 1)


class _Row:
    """One place of an order: what stands there, and two buttons that move it."""

    def __init__(self, number: int, move: Callable[[int, int], None]) -> None:
        self._number = number
        self.words = widgets.Label()
        self.earlier = ActionButton(lambda: move(number, -1), description="earlier")
        self.later = ActionButton(lambda: move(number, 1), description="later")
        self.widget = widgets.HBox([self.earlier, self.later, self.words])

    def show(self, words: str, *, last: bool) -> None:
        """Show what stands here now."""
        self.words.value = f"{self._number + 1}. {words}"
        self.earlier.tooltip, self.later.tooltip = f"earlier: {words}", f"later: {words}"
        self.earlier.disabled, self.later.disabled = self._number == 0, last

    def focus(self, by: int) -> None:
        """Put the keyboard on the button that moves on the same way, or on the other at an end."""
        ways = (self.earlier, self.later) if by < 0 else (self.later, self.earlier)
        next(button for button in ways if not button.disabled).focus()
