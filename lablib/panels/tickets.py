"""The row under a panel that saves its settings as a ticket and opens one from the working folder."""

import html
import re
from collections.abc import Callable
from pathlib import Path

import ipywidgets as widgets

from lablib.errors import LabError

SUFFIX = ".toml"
_NAME = re.compile(r"\w[\w .()-]{0,99}")
_NONE_YET = "none in this folder yet"


class ActionButton(widgets.Button):
    """A button whose action may fail aloud: handlers given to `on_click` have their errors swallowed.

    action: called without arguments at each press.
    """

    def __init__(self, action: Callable[[], None], **traits: object) -> None:
        super().__init__(**traits)
        self._action = action

    def click(self) -> None:
        """Do what a press does."""
        self._action()


class TicketRow:
    """A name to save under, a list to open from, and a line that says what happened.

    folder: where tickets are saved and looked for.
    name: the file name to begin with.
    write: returns the text of a ticket; a LabError from it is said and nothing is saved.
    take: sets the panel from a ticket file and returns a remark, empty if there is none; a LabError from it
        is said.

    A file that is there already is never written over.
    """

    def __init__(
        self, folder: Path, *, name: str, write: Callable[[], str], take: Callable[[Path], str]
    ) -> None:
        self.folder = folder
        self._write = write
        self._take = take
        self.name = widgets.Text(description="File name", value=name)
        self.save = ActionButton(self._saved, description="Save ticket")
        self.files = widgets.Dropdown(description="Tickets in this folder")
        self.open = ActionButton(self._opened, description="Open ticket")
        self.again = ActionButton(
            self.look, description="Look again", tooltip="list the tickets in this folder again"
        )
        self.status = widgets.HTML()
        saving, opening = (
            widgets.HBox([self.name, self.save]),
            widgets.HBox([self.files, self.open, self.again]),
        )
        self.widget = widgets.VBox(
            [widgets.HBox([saving, opening], layout={"flex_flow": "row wrap"}), self.status]
        )
        self.widget.add_class("lab-tickets")
        self.look()
        self.say("")

    def look(self) -> None:
        """List the tickets that are in the folder now, keeping the one that was picked."""
        picked = self.files.value
        names = sorted(path.name for path in self.folder.glob(f"*{SUFFIX}") if path.is_file())
        self.files.options = names or [_NONE_YET]
        self.files.disabled = self.open.disabled = not names
        self.files.value = picked if picked in names else self.files.options[0]

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
        self.look()
        self.files.value = path.name
        self.say(f"Saved as {path.name} in {self.folder}.")

    def _opened(self) -> None:
        name = self.files.value
        try:
            remark = self._take(self.folder / name)
        except LabError as error:
            self.say(f"{name} was not opened, and nothing was changed. {error}")
            return
        self.say(f"Opened {name}. {remark}".rstrip())


def file_name(text: str) -> str:
    """Return the file name of a ticket, with its ending.

    text: what was typed.

    Raises LabError for a name that some computer would not take or that leads to another folder.
    """
    bare = text.strip()
    if not _NAME.fullmatch(bare):
        raise LabError(
            f"file name {text!r} cannot be used: give 1 to 100 letters, digits, spaces or any of . _ - ( ), "
            "beginning with a letter or a digit"
        )
    return bare if bare.lower().endswith(SUFFIX) else bare + SUFFIX


def write_new(path: Path, text: str) -> None:
    """Write a file that is not there yet.

    path: where.
    text: all of it.

    Raises LabError when the file is there already, or cannot be written.
    """
    try:
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        raise LabError(
            f"file {path.name} is there already and was left as it is: give another name"
        ) from None
    except OSError as error:
        raise LabError(
            f"file {path.name} cannot be written in {path.parent} ({error.strerror}): "
            "start the workbook from a folder you may write in"
        ) from error
