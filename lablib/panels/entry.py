"""What every control for an answer can do."""

from collections.abc import Callable
from typing import Protocol

import ipywidgets as widgets

from lablib.study.answer import Given

# Called with the answer as it stands after each change; and without arguments when Enter hands it in.
OnChange = Callable[[Given], None]
OnEnter = Callable[[], None]


class Entry(Protocol):
    """The control for one answer.

    widget: to show.
    given: the answer as it stands, None where nothing was given.
    marker: where a marker stands on the picture, moved yet or not; None for a control without one.
    """

    widget: widgets.Widget
    given: Given
    marker: float | None

    def set(self, given: Given) -> None:
        """Show an answer that was given before, and say nothing."""

    def focus(self) -> None:
        """Put the keyboard into the control."""
