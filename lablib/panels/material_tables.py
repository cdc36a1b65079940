"""Tables of facts about materials on the page: what each bears, what comes before what, what is refused."""

from collections.abc import Mapping, Sequence
from html import escape
from importlib.resources import files

import ipywidgets as widgets
from IPython.display import display

from lablib.optics.care import care_cautions, care_table
from lablib.optics.fitness import DECISIONS, pairings
from lablib.optics.impact import impact_cautions
from lablib.optics.operations import before_rules, operations, operations_source

# The look of every table of words in the workbook.
_STYLE = f"<style>{files('lablib.panels').joinpath('glossary.css').read_text(encoding='utf-8')}</style>"


class FactTable:
    """A table of words with what must be known about it below.

    heads: heading of each column, with the share of the width it takes [%].
    rows: cells of each row; the first names the row.
    notes: sentences that stand below the table.
    """

    def __init__(
        self, *, heads: Mapping[str, int], rows: Sequence[Sequence[str]], notes: Sequence[str]
    ) -> None:
        self.heads, self.rows, self.notes = dict(heads), tuple(map(tuple, rows)), tuple(notes)
        style = widgets.HTML(_STYLE, layout={"display": "none"})
        self.widget = widgets.VBox([style, widgets.HTML(self.html)])
        self.widget.add_class("lab-glossary")

    @property
    def html(self) -> str:
        """The table and its notes as HTML."""
        columns = "".join(f'<col style="width: {share}%">' for share in self.heads.values())
        heads = "".join(f'<th scope="col">{escape(words)}</th>' for words in self.heads)
        body = "".join(map(_row, self.rows))
        notes = "".join(f"<p>{escape(words)}</p>" for words in self.notes)
        head = f"<colgroup>{columns}</colgroup><thead><tr>{heads}</tr></thead>"
        return f"<table>{head}<tbody>{body}</tbody></table>{notes}"

    def show(self) -> None:
        """Display the table under the cell."""
        display(self.widget)


def care_facts() -> FactTable:
    """Return what each material bears, with the cautions."""
    shown = care_table()
    return FactTable(
        heads={
            "Material": 14,
            "Knocks": 20,
            "Holes": 17,
            "Tint in the bath": 16,
            "Wiped with": 17,
            "Cut": 16,
        },
        rows=[
            (
                row.material.words,
                *map(
                    _as_sentence,
                    (row.toughness_words, row.holes_words, row.bath_words, row.wipe_words, row.cut_words),
                ),
            )
            for row in shown.values()
        ],
        notes=(*care_cautions(), _source(next(iter(shown.values())).source)),
    )


def order_facts() -> FactTable:
    """Return which operation comes before which, with the reason."""
    words = operations()
    return FactTable(
        heads={"First": 22, "Then": 21, "Why": 47, "Holds for": 10},
        rows=[
            (
                _as_sentence(words[rule.first]),
                _as_sentence(words[rule.then]),
                rule.reason,
                rule.only or "all",
            )
            for rule in before_rules()
        ],
        notes=(_source(operations_source()),),
    )


def pairing_facts() -> FactTable:
    """Return what does not go together in one order, the refused first, and cautions of safety eyewear."""
    gravest_first = sorted(pairings().values(), key=lambda row: -DECISIONS.index(row.decision))
    return FactTable(
        heads={"What does not go together": 20, "Decision": 9, "Why": 31, "Instead": 26, "Source": 14},
        rows=[
            (_as_sentence(row.words), row.decision, row.reason, row.instead, _as_sentence(row.source))
            for row in gravest_first
        ],
        notes=impact_cautions(),
    )


def _row(cells: Sequence[str]) -> str:
    first, *others = cells
    rest = "".join(f"<td>{escape(words)}</td>" for words in others)
    return f'<tr><th scope="row">{escape(first)}</th>{rest}</tr>'


def _as_sentence(words: str) -> str:
    return f"{words[0].upper()}{words[1:].removesuffix('.')}"


def _source(words: str) -> str:
    return f"{_as_sentence(words)}."
