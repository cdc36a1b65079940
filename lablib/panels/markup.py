"""The HTML in a panel: style sheet, table of numbers, sentence, words in the picture's place."""

from collections.abc import Sequence
from html import escape

# Sizes in ch follow the reader's font, so no label is cut off when it is larger than ours.
# A letter is narrower than the figure 0 that ch measures: "Between lenses (DBL) [mm]" took 0.88 of its ch.
CH_PER_CHARACTER = 0.92
_STYLE = """\
.lab-panel { gap: 8px 20px; }
.lab-panel .lab-left { flex: 1 1 345px; min-width: 300px; max-width: 430px; }
.lab-panel .lab-right { flex: 1000 1 460px; min-width: min(460px, 100%); max-width: var(--lab-width); }
.lab-panel .lab-stage { width: 100%; aspect-ratio: var(--lab-ratio); overflow: hidden; background: #fff; }
.lab-panel .lab-stage img { width: 100%; height: 100%; margin: 0; }
.lab-panel .lab-stage :is(.widget-html, .widget-html-content) { width: 100%; height: 100%; margin: 0; }
.lab-panel .lab-control .widget-label {
  flex: 0 0 auto; width: var(--lab-label); text-align: left; overflow: visible; text-overflow: clip;
}
.lab-panel .lab-control { width: auto; overflow: visible; }
.lab-panel .lab-control .widget-text { flex: 0 0 auto; width: calc(var(--lab-label) + 76px); }
.lab-panel .lab-control .widget-text input { text-align: right; font-variant-numeric: tabular-nums; }
.lab-panel .lab-control .widget-dropdown { flex: 1 1 0; width: auto; min-width: 0; }
.lab-panel .lab-control select { min-width: 0; }
.lab-panel .lab-control .widget-slider { flex: 1 1 80px; width: auto; min-width: 80px; }
.lab-panel .lab-group { margin: 8px 0 2px; font-size: 13px; line-height: 1.4; font-weight: 600; }
.lab-panel .noUi-handle:focus-visible { outline: 2px solid #0072b2; outline-offset: 2px; }
.lab-panel .lab-refused {
  display: flex; align-items: center; height: 100%; padding: 0 12%; box-sizing: border-box;
  border: 1px solid #595959; font-size: 16px; line-height: 1.5; color: #000; background: #fff;
  white-space: pre-line; overflow-wrap: anywhere;
}
.lab-panel .lab-numbers {
  border-collapse: collapse; width: 100%; margin-top: 10px; font-size: 13px; line-height: 1.5;
}
.lab-panel .lab-numbers tr { border-top: 1px solid var(--jp-border-color2, #ddd); background: none; }
.lab-panel .lab-numbers th { text-align: left; font-weight: normal; padding: 2px 8px 2px 0; }
.lab-panel .lab-numbers td { text-align: right; padding: 2px 0; white-space: nowrap; }
.lab-panel .lab-numbers td { font-variant-numeric: tabular-nums; }
.lab-panel .lab-numbers td + td { text-align: left; padding-left: 6px; width: auto; min-width: 3em; }
.lab-panel .lab-right .lab-numbers tbody { display: block; columns: 3 210px; column-gap: 24px; }
.lab-panel .lab-right .lab-numbers tr { display: flex; break-inside: avoid; }
.lab-panel .lab-right .lab-numbers th { flex: 1; }
.lab-panel .lab-sentence { margin: 8px 0 0; font-size: 14px; line-height: 1.45; min-height: 2.9em; }
.lab-panel .lab-note { margin: 4px 0 0; font-size: 13px; line-height: 1.45; color: #595959; }
.lab-panel .lab-tickets { flex: 1 1 100%; padding-top: 6px; }
.lab-panel .lab-tickets { border-top: 1px solid var(--jp-border-color2, #ddd); }
.lab-panel .lab-tickets > .widget-hbox { gap: 0 24px; }
.lab-panel .lab-tickets .widget-label { width: auto; margin-right: 6px; }
.lab-panel .lab-said { margin: 2px 0 0; line-height: 1.45; min-height: 1.45em; overflow-wrap: anywhere; }
"""


def size_class(*, width_px: int, height_px: int, label_chars: int) -> str:
    """Return the class that gives a panel its size; panels of one size share it.

    width_px, height_px: of the picture as shown [px].
    label_chars: characters in the longest label.
    """
    return f"lab-{width_px}-{height_px}-{label_chars}"


def style_sheet(*, width_px: int, height_px: int, label_chars: int) -> str:
    """Return the style sheet of a panel.

    width_px, height_px, label_chars: as in `size_class`.
    """
    size = size_class(width_px=width_px, height_px=height_px, label_chars=label_chars)
    label = f"{label_chars * CH_PER_CHARACTER:.1f}ch"
    picture = f"--lab-width: {width_px}px; --lab-ratio: {width_px} / {height_px}"
    return f"<style>\n.{size} {{ {picture}; --lab-label: {label}; }}\n{_STYLE}</style>"


def table(rows: Sequence[tuple[str, str, str]]) -> str:
    """Return a table of numbers with a heading to each row.

    rows: label, figure and unit, each as plain text.
    """
    lines = (
        f'<tr><th scope="row">{escape(label)}</th><td>{escape(figure)}</td><td>{escape(unit)}</td></tr>'
        for label, figure, unit in rows
    )
    return f'<table class="lab-numbers"><tbody>{"".join(lines)}</tbody></table>'


def group(words: str) -> str:
    """Return the heading of a group of controls.

    words: plain text.
    """
    return f'<p class="lab-group">{escape(words)}</p>'


def sentence(words: str) -> str:
    """Return the sentence under the picture, which screen readers speak when it changes.

    words: plain text.
    """
    return f'<p class="lab-sentence" role="status" aria-live="polite">{escape(words)}</p>'


def note(words: str) -> str:
    """Return the line that stands under the sentence all the time.

    words: plain text.
    """
    return f'<p class="lab-note">{escape(words)}</p>'


def refusal(words: str) -> str:
    """Return the words that stand in the picture's place.

    words: plain text.
    """
    return f'<div class="lab-refused" role="alert">{escape(words)}</div>'
