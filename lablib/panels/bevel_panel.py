"""The panel of edge and rim: where a bevel runs, whether the rim takes its curve, groove and hole."""

from collections.abc import Sequence
from dataclasses import replace

from lablib.bench.edges import RIMS, edge_default, edge_parameters
from lablib.panels.bevel_edges import (
    A_MM,
    B_MM,
    BEVEL,
    FIRST,
    GROOVE,
    HOLE_IN_MM,
    HOLES,
    WAYS,
    EdgeSheet,
    edge_sheet,
)
from lablib.panels.lens_panel import LensPanel
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.bevel import BevelPicture

_LENS, _FRAME, _LOOK = {"group": "Lens"}, {"group": "Frame and edge"}, {"group": "Where it is cut across"}
_RIM = edge_parameters()["rim_curve_d"]


def _d(name: str, label: str, low: float, high: float, value: float, **group: str) -> Slider:
    return Slider(name=name, label=label, unit="D", low=low, high=high, step=0.5, value=value, **group)


class BevelPanel(Panel):
    """The edge of one lens, its bevel beside the curve of the rim, its groove or its hole."""

    draws = BevelPicture
    note = (
        f"A right lens, outline {A_MM:g} x {B_MM:g}, its optical centre 3 mm towards the nose. Both curves "
        f"are for 1.530, as a lens measure has them. A hole is {HOLE_IN_MM:g} mm inside the outline, at "
        "the place shown. Rim, rim curve and how the bevel runs count for a bevel only. All limits are "
        "teaching estimates from common practice. The rim's section is drawn "
        "as a sign for it."
    )
    controls = (
        Slider(name="place_deg", label="Place", unit="degrees", low=0, high=360, step=5, value=180, **_LOOK),
        Choice(name="mounting", label="Mounting", options=(BEVEL, GROOVE, HOLES), value=BEVEL, **_FRAME),
        Choice(name="way", label="Bevel runs", options=(FIRST, *WAYS), value=FIRST, **_FRAME),
        Choice(name="rim", label="Rim", options=RIMS, value="metal", **_FRAME),
        _d("rim_curve_d", "Rim curve", _RIM.low, _RIM.high, _RIM.default, **_FRAME),
        _d("sphere_d", "Sphere", -8.0, 6.0, -4.0, **_LENS),
        _d("front_curve_d", "Front curve", 1.0, 9.0, 4.0, **_LENS),
        replace(LensPanel.ranges["thickness_at"], **_LENS),
        Slider(
            name="thickness_mm",
            label="Thickness",
            unit="mm",
            low=0.8,
            high=6.0,
            step=0.1,
            value=1.5,
            **_LENS,
        ),
        replace(LensPanel.ranges["material"], value="polycarbonate-1.59", **_LENS),
    )

    def compute(self, values: Values) -> EdgeSheet:
        """Return the lens in its frame.

        values: by the control's name.

        Raises LabError where no lens can be made so, or the rim does not reach its outline.
        """
        return edge_sheet(values)

    def numbers(self, data: EdgeSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: from `compute`.
        """
        return [
            ("Edge here", f"{data.here(data.edge_mm):.2f}", "mm"),
            ("Thinnest edge", f"{data.edge_mm.min():.2f}", "mm"),
            ("Thickest edge", f"{data.edge_mm.max():.2f}", "mm"),
            *_ROWS[data.mounting](data),
        ]

    def sentence(self, data: EdgeSheet) -> str:
        """Return what holds, or what speaks against it.

        data: from `compute`.
        """
        words = _WORDS[data.mounting](data)
        return f"{words[0].upper()}{words[1:]}."


def _bevel_rows(data: EdgeSheet) -> list[tuple[str, str, str]]:
    line, shown = data.shown.line, data.shown
    return [
        ("Least beside the tip", f"{line.least_side_mm:.2f}", f"mm, needs {data.limit_mm:g}"),
        ("Bevel wanders", f"{line.wander_mm:.2f}", "mm"),
        ("Curve of the bevel", f"{line.curve_d:.1f}", "D"),
        ("Rim would bend", f"{shown.departs_mm:.2f}", "mm"),
        ("Rim gives", f"{shown.give_mm:g}", "mm"),
    ]


def _groove_rows(data: EdgeSheet) -> list[tuple[str, str, str]]:
    needed = edge_default("groove_wall_mm")
    return [
        ("Groove", f"{data.across.groove_mm:g}", "mm wide"),
        ("Least groove wall", f"{data.groove.least_wall_mm:.2f}", f"mm, needs {needed:g}"),
    ]


def _hole_rows(data: EdgeSheet) -> list[tuple[str, str, str]]:
    wall = data.hole.wall_mm(data.edge.radius_mm)
    return [
        ("Thickness at the hole", f"{data.hole.thickness_mm:.2f}", f"mm, needs {data.limit_mm:g}"),
        ("Hole to the outline", f"{wall:.2f}", f"mm, needs {edge_default('hole_wall_mm'):g}"),
    ]


def _bevel_words(data: EdgeSheet) -> str:
    if data.asked != FIRST:
        return f"bevel {data.shown.words}"
    drawn = "" if data.choice.chosen else ". Drawn is the one that follows the rim"
    return f"{data.choice.words}{drawn}"


def _groove_words(data: EdgeSheet) -> str:
    least = data.groove.least_wall_mm
    walls = f"in the middle of the edge it leaves walls of {least:.2f} mm at the thinnest place"
    needed = edge_default("groove_wall_mm")
    if data.groove.holds:
        return f"the groove holds: {walls}, and {needed:g} mm are needed"
    return f"no groove: {walls} where {needed:g} mm are needed; order it with a thicker edge"


def _hole_words(data: EdgeSheet) -> str:
    faults = data.hole_faults
    if faults:
        return f"no hole here: {'; '.join(faults)}"
    thick = data.hole.thickness_mm
    return (
        f"a hole may be drilled here, where the lens is {thick:.2f} mm thick ({data.care.material.words}: "
        f"{data.care.holes_words})"
    )


_ROWS = {BEVEL: _bevel_rows, GROOVE: _groove_rows, HOLES: _hole_rows}
_WORDS = {BEVEL: _bevel_words, GROOVE: _groove_words, HOLES: _hole_words}
