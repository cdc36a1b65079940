"""Where a running workbook answers, and whether one is running already."""

import http.client
import json
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from pathlib import Path
from urllib.parse import quote

HOST = "127.0.0.1"
_ASK_SECONDS = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Address:
    """Where a running workbook answers.

    port: its port, on this machine alone.
    token: what it asks for before it lets a browser in.
    python: the interpreter it runs on.
    """

    port: int
    token: str
    python: str = sys.executable

    @property
    def root(self) -> str:
        """The address that every page's address begins with."""
        return f"http://{HOST}:{self.port}/"

    def page(self, lesson: str) -> str:
        """Return the page of a lesson, for a browser that was let in before."""
        return f"{self.root}doc/tree/{quote(lesson)}"

    def full(self, lesson: str) -> str:
        """Return the page of a lesson with the token that lets a browser in."""
        return f"{self.page(lesson)}?token={self.token}"

    def answers(self) -> bool:
        """Return whether a workbook is there and knows the token."""
        connection = http.client.HTTPConnection(HOST, self.port, timeout=_ASK_SECONDS)
        try:
            connection.request("GET", "/api/status", headers={"Authorization": f"token {self.token}"})
            return connection.getresponse().status == http.client.OK
        except (OSError, http.client.HTTPException):
            return False
        finally:
            connection.close()


def running(folder: Path) -> Address | None:
    """Return where a workbook of the same Python is running from this learner's folder, if one is.

    folder: the learner's folder.
    """
    address = _read_note(folder)
    return address if address and address.python == sys.executable and address.answers() else None


@contextmanager
def noted(folder: Path) -> Iterator[Callable[[Address], None]]:
    """Yield a function that notes where this workbook runs; the note goes when the workbook stops.

    folder: the learner's folder.
    """
    written: list[Address] = []

    def note(address: Address) -> None:
        _write_note(folder, address)
        written.append(address)

    try:
        yield note
    finally:
        # Another workbook may have left its own note since.
        if written and _read_note(folder) == written[0]:
            _note(folder).unlink(missing_ok=True)


def _note(folder: Path) -> Path:
    return folder / "running.json"


def _read_note(folder: Path) -> Address | None:
    try:
        return Address(**json.loads(_note(folder).read_text(encoding="utf-8")))
    except (OSError, ValueError, TypeError):
        return None


def _write_note(folder: Path, address: Address) -> None:
    note = _note(folder)
    note.unlink(missing_ok=True)
    # Before anything stands in it: the token in it is for this user alone.
    note.touch(mode=0o600)
    note.write_text(json.dumps(asdict(address)), encoding="utf-8")
