"""Where the parts of a panel stand."""

from collections.abc import Sequence
from dataclasses import dataclass

import ipywidgets as widgets

from lablib.panels import markup
from lablib.panels.controls import ChoiceControl, PairedControl

# So many controls leave room for the numbers below them.
_FEW = 6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Parts:
    """The parts of a panel.

    controls: those that are shown.
    stage: what takes turns in the picture's place.
    table: the numbers.
    sentence: what the picture shows in words.
    note: what must be known about every figure; None for a panel without one.
    whole: whether these are all the controls there are; then they stand under headings.
    below: what stands below the whole panel; None for nothing.
    """

    controls: Sequence[PairedControl | ChoiceControl]
    stage: Sequence[widgets.Widget]
    table: widgets.Widget
    sentence: widgets.Widget
    note: widgets.Widget | None
    whole: bool
    below: widgets.Widget | None


def arranged(parts: Parts, *, width_px: int, height_px: int) -> widgets.Widget:
    """Return a panel: controls at the left, picture and sentence at the right, the rest below.

    parts: what stands in it.
    width_px, height_px: of the picture as shown [px].

    The numbers stand under the controls where these are few, else under the sentence: beside many
    controls they would be out of sight.
    """
    label_chars = max((len(control.spec.title) for control in parts.controls), default=0)
    size = {"width_px": width_px, "height_px": height_px, "label_chars": label_chars}
    stage = _classed(widgets.Box(parts.stage), "lab-stage")
    many = len(parts.controls) > _FEW
    left, right = _column(parts.controls, headings=parts.whole), [stage, parts.sentence]
    if parts.note:
        right.append(parts.note)
    (right if many else left).append(parts.table)
    columns = [
        widgets.HTML(markup.style_sheet(**size), layout={"display": "none"}),
        _classed(widgets.VBox(left), "lab-left"),
        _classed(widgets.VBox(right), "lab-right"),
    ]
    rows = [*columns, parts.below] if parts.below else columns
    panel = _classed(widgets.HBox(rows, layout={"flex_flow": "row wrap"}), "lab-panel")
    return _classed(panel, markup.size_class(**size))


def _column(controls: Sequence[PairedControl | ChoiceControl], *, headings: bool) -> list[widgets.Widget]:
    """Return the controls, with or without a heading wherever a group begins."""
    column, group = [], ""
    for control in controls:
        if headings and control.spec.group != group:
            group = control.spec.group
            column.append(widgets.HTML(markup.group(group)))
        column.append(_classed(control.widget, "lab-control"))
    return column


def _classed(widget: widgets.DOMWidget, name: str) -> widgets.DOMWidget:
    """Return a widget after giving it a class of the style sheet."""
    widget.add_class(name)
    return widget
