"""A lesson as the tests see it: its cells, its prose, and the namespace its code leaves behind."""

import io
import re
from contextlib import redirect_stdout
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import nbformat

from lablib.places import shipped

FIGURE = re.compile(r"(?<![\w.])[-+]?\d+\.\d+(?![\w.]*\d)")
RANGE = re.compile(r"(?<![\w.])\d+(?:\.\d+)? to \d+(?:\.\d+)?")


def notebook_paths() -> list[Path]:
    """Return every notebook that stands with the lessons: those with a number first, in reading order."""
    return sorted(shipped("lessons").glob("*.ipynb"))


def lesson_paths() -> list[Path]:
    """Return every lesson, in reading order. A lesson has a number; a notebook without one is a page."""
    return [path for path in notebook_paths() if path.stem[0].isdigit()]


def cells(path: Path) -> list[nbformat.NotebookNode]:
    """Return the cells of a notebook."""
    return nbformat.read(path, as_version=4).cells


def prose(path: Path) -> str:
    """Return what a reader reads: the markdown cells without their HTML tags."""
    text = "\n\n".join(cell.source for cell in cells(path) if cell.cell_type == "markdown")
    return re.sub(r"<[^>]+>", " ", text)


def headings(path: Path) -> list[tuple[int, str]]:
    """Return level and text of every heading."""
    found = re.findall(r"^(#+) (.+)$", prose(path), flags=re.MULTILINE)
    return [(len(marks), text.strip()) for marks, text in found]


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """What a notebook's code left behind.

    names: what it defined, with the package's own names beside it.
    printed: what it printed, as it was before it became text.
    """

    names: dict
    printed: list


@cache
def run(path: Path) -> Run:
    """Run the code of a notebook once and return what it left."""
    from lablib.optics import prescription, prism, surface, thick_lens

    names: dict = {}
    for module in (prescription, prism, surface, thick_lens):
        names |= {name: value for name, value in vars(module).items() if not name.startswith("_")}
    shown: list = []
    names["print"] = lambda *things, **_: shown.extend(things)
    for cell in cells(path):
        if cell.cell_type == "code":
            # Panels are for the reader; nbval is what runs them as the reader does.
            with redirect_stdout(io.StringIO()):
                exec(compile(cell.source, f"{path.name}:{cell.id}", "exec"), names)
    return Run(names=names, printed=shown)


def namespace(path: Path) -> dict:
    """Return the names that a notebook's code leaves, with the package's own beside them."""
    return run(path).names


def printed(value: object, like: str) -> str:
    """Return a value as prose would print it: with the decimals of the figure it is compared with.

    value: a number, or a control whose range is meant.
    like: the figure as it stands in the prose, a unit behind it allowed.
    """
    if hasattr(value, "low"):
        return f"{value.low:g} to {value.high:g}"
    number = re.match(r"[-+]?\d+(?:\.(\d+))?", like)
    digits = len(number[1] or "")
    sign = "+" if like.startswith("+") else ""
    return f"{float(value):{sign}.{digits}f}{like[number.end() :]}"
