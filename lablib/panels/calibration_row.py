"""The row under the calibration panel: your own readings, and a bench profile made of them."""

import html
from collections.abc import Callable
from pathlib import Path

import ipywidgets as widgets

from lablib.errors import LabError
from lablib.panels.tickets import ActionButton, file_name, write_new


class ReadingsRow:
    """A box for readings, a name for the bench, and a button that saves a profile.

    folder: where the profile is saved.
    changed: called when other readings have been typed.
    write: returns the text of a profile; a LabError from it is said and nothing is saved.

    A file that is there already is never written over.
    """

    def __init__(self, folder: Path, *, changed: Callable[[], None], write: Callable[[], str]) -> None:
        self.folder, self._write = folder, write
        self.readings = widgets.Textarea(
            description="Readings",
            placeholder="force [N], torque [N m], sliding torque [N m]\n100 0.285 0.230\n100 0.291 0.228",
            rows=7,
            continuous_update=False,
            layout={"width": "360px"},
        )
        self.readings.observe(lambda _: changed(), names="value")
        self.bench_name = widgets.Text(description="Bench", value="my bench")
        self.name = widgets.Text(description="File name", value="my-bench")
        self.save = ActionButton(self._saved, description="Save bench profile", layout={"width": "auto"})
        self.status = widgets.HTML()
        right = widgets.VBox([self.bench_name, self.name, self.save])
        row = widgets.HBox([self.readings, right], layout={"flex_flow": "row wrap"})
        self.widget = widgets.VBox([row, self.status])
        self.widget.add_class("lab-tickets")
        self.say("")

    @property
    def text(self) -> str:
        """What was typed."""
        return self.readings.value

    @property
    def bench(self) -> str:
        """What the bench is called."""
        return self.bench_name.value.strip() or "my bench"

    def say(self, words: str) -> None:
        """Show words in the status line.

        words: plain text.
        """
        self.status.value = f'<p class="lab-said" role="status">{html.escape(words)}</p>'

    def _saved(self) -> None:
        try:
            path = self.folder / file_name(self.name.value)
            write_new(path, self._write())
        except LabError as error:
            self.say(f"Nothing was saved. {error}")
            return
        self.say(f"Saved as {path.name} in {self.folder}. Use it: lablib job TICKET --bench {path.name}")
