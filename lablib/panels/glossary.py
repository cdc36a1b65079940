"""The glossary on the page: a table of the trade's words, and a box to find one."""

from collections.abc import Sequence
from html import escape
from importlib.resources import files

import ipywidgets as widgets
from IPython.display import display

from lablib.panels.tickets import ActionButton
from lablib.questions.glossary import STANDARDS, Entry, entries, found

_STYLE = f"<style>{files('lablib.panels').joinpath('glossary.css').read_text(encoding='utf-8')}</style>"
# Heading and class of each column.
_COLUMNS = (
    ("Word", "word"),
    ("What it means", "meaning"),
    ("Symbol, unit", "symbol"),
    ("Lesson", "lesson"),
    ("Whose word", "standard"),
)


class Glossary:
    """All words, and those that answer to what is typed into the box, at each key."""

    def __init__(self) -> None:
        self.box = widgets.Text(
            description="Find", placeholder="a word, a symbol, a lesson: pin, F_1, 06", continuous_update=True
        )
        self.all = ActionButton(self._clear, description="Show all")
        self._count, self._table = widgets.HTML(), widgets.HTML()
        row = widgets.HBox([self.box, self.all], layout={"flex_flow": "row wrap"})
        row.add_class("lab-find")
        style = widgets.HTML(_STYLE, layout={"display": "none"})
        self.widget = widgets.VBox([style, row, self._count, self._table, widgets.HTML(_whose_words())])
        self.widget.add_class("lab-glossary")
        self.box.observe(self._typed, names="value")
        self._show(entries())

    def show(self) -> None:
        """Display box and table under the cell."""
        display(self.widget)

    _ipython_display_ = show

    def _typed(self, change: dict) -> None:
        self._show(found(change["new"]))

    def _clear(self) -> None:
        self.box.value = ""
        self.box.focus()

    def _show(self, shown: Sequence[Entry]) -> None:
        self._count.value = _count(len(shown), self.box.value.strip())
        self._table.value = _table(shown) if shown else ""


def _count(shown: int, wanted: str) -> str:
    """Say how many words there are, for those who do not see the table change."""
    if not wanted:
        words = f"All {shown} words."
    elif shown:
        words = f"{shown} of {len(entries())} words for “{wanted}”, the nearest first."
    else:
        words = f"No word for “{wanted}”. Try its beginning, or fewer letters."
    return f'<p role="status" aria-live="polite">{escape(words)}</p>'


def _table(shown: Sequence[Entry]) -> str:
    columns = "".join(f'<col class="lab-{name}">' for _, name in _COLUMNS)
    heads = "".join(f'<th scope="col">{words}</th>' for words, _ in _COLUMNS)
    rows = "".join(map(_row, shown))
    return (
        f"<table><colgroup>{columns}</colgroup><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _row(entry: Entry) -> str:
    # Some names have a comma of their own, as they stand on panels.
    also = f'<span class="lab-other">also: {escape("; ".join(entry.other))}</span>' if entry.other else ""
    rest = (entry.meaning, _measure(entry), entry.lesson, entry.standard)
    cells = "".join(f"<td>{escape(words)}</td>" for words in rest)
    return f'<tr><th scope="row">{escape(entry.word)}{also}</th>{cells}</tr>'


def _measure(entry: Entry) -> str:
    unit = f"[{entry.unit}]" if entry.unit else ""
    return f"{', '.join(entry.symbols)} {unit}".strip()


def _whose_words() -> str:
    named = "; ".join(f"{name}: {words}" for name, words in STANDARDS.items())
    return f"<p>{escape(named)}. The standards' words are given from memory; the meanings are our own.</p>"
