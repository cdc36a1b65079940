"""One line to write an answer on: Enter hands it in, leaving the box does not."""

from collections.abc import Callable

import ipywidgets as widgets

from lablib.panels.quiet import Quiet


class Line:
    """A box of one line that says what stands in it at each key, and when it is handed in.

    description: what stands before the box.
    placeholder: an example of how to write, shown while the box is empty.
    on_change: called with the text after each change a person makes.
    on_enter: called without arguments when Enter is pressed, whatever stands in the box.

    It is a text area of one row. In a text box of one line the page sends Enter before the last
    characters, or not at all for a text that is there already; here Enter arrives as a line break inside the
    text, so both come together.
    """

    def __init__(
        self,
        *,
        description: str,
        placeholder: str,
        on_change: Callable[[str], None],
        on_enter: Callable[[], None],
    ) -> None:
        self._on_change = on_change
        self._on_enter = on_enter
        self._quiet = Quiet()
        self.box = widgets.Textarea(
            description=description, placeholder=placeholder, rows=1, continuous_update=True
        )
        self.box.add_class("lab-line")
        self.box.observe(self._typed, names="value")

    @property
    def text(self) -> str:
        """What stands in the box."""
        return _one_line(self.box.value)

    def set(self, text: str) -> None:
        """Write into the box, and say nothing.

        text: one line.
        """
        with self._quiet:
            self.box.value = text

    def focus(self) -> None:
        """Put the cursor into the box."""
        self.box.focus()

    def _typed(self, change: dict) -> None:
        if self._quiet:
            return
        new, old = change["new"], change["old"]
        # A break among other letters that came at once was pasted: nobody pressed Enter.
        pasted = "\n" in new.strip("\n") and new.replace("\n", "", 1) != old
        entered = "\n" in new and not pasted
        if "\n" in new:
            self.set(" ".join(new.split("\n")).strip() if pasted else _one_line(new))
        if self.text != _one_line(old):
            self._on_change(self.text)
        if entered:
            self._on_enter()


def _one_line(text: str) -> str:
    return text.replace("\r", "").replace("\n", "")
