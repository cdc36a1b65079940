"""The panel of one lens's prism: where the eye looks through, and which base it meets there."""

import math
from collections.abc import Sequence

from lablib.optics.base_notation import base_notations
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import in_words, powers_for, prism_at
from lablib.optics.prism_field import prism_on_grid, prism_on_rings
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.prism_field import PrismFieldPicture
from lablib.pictures.prism_field_data import PrismThere

_LENS, _POINT = {"group": "Lens"}, {"group": "Where the eye looks through"}
_GRID_MM, _POINTS, _SPOKES = 18.0, 7, 72
_REACH_MM = 12.0


def _d(name: str, label: str, most: float, value: float) -> Slider:
    ends = {"low": -most, "high": most, "step": 0.25}
    return Slider(name=name, label=label, unit="D", value=value, **ends, **_LENS)


def _mm(name: str, label: str, value: float) -> Slider:
    ends = {"low": -_REACH_MM, "high": _REACH_MM, "step": 0.5}
    return Slider(name=name, label=label, unit="mm", value=value, **ends, **_POINT)


class PrismFieldPanel(Panel):
    """One lens, and an eye that looks through a point of it."""

    draws = PrismFieldPicture
    note = (
        "By Prentice's rule. A real lens bends light a little more than that, the more so the farther out "
        "the eye looks."
    )
    controls = (
        Choice(name="eye", label="Eye", options=tuple(eye.value for eye in Eye), value="right", **_LENS),
        _d("sphere_d", "Sphere", 10.0, -3.0),
        _d("cylinder_d", "Cylinder", 4.0, 0.0),
        Slider(name="axis_deg", label="Axis", unit="degrees", low=1, high=180, step=1, value=180, **_LENS),
        _mm("in_mm", "Inwards of centre", 0.0),
        _mm("up_mm", "Above centre", -8.0),
    )

    def compute(self, values: Values) -> PrismThere:
        """Return the prism all over the lens and at the point.

        values: by the control's name.

        Raises LabError for a lens that cannot be.
        """
        eye, cylinder = Eye.of(values["eye"]), values["cylinder_d"]
        rx = Prescription(
            sphere_d=values["sphere_d"],
            cylinder_d=cylinder,
            axis_deg=values["axis_deg"] if cylinder else None,
        )
        there = {"in_mm": values["in_mm"], "up_mm": values["up_mm"]}
        inwards, upwards = prism_at(rx, eye=eye, **there)
        grid = {"half_width_mm": _GRID_MM, "half_height_mm": _GRID_MM, "columns": _POINTS, "rows": _POINTS}
        corners = prism_on_rings(
            rx, eye=eye, radius_mm=math.hypot(_REACH_MM, _REACH_MM), rings=1, spokes=_SPOKES
        )
        return PrismThere(
            eye=eye,
            rx=rx,
            **there,
            in_prism_d=inwards,
            up_prism_d=upwards,
            notations=base_notations(eye=eye, in_prism_d=inwards, up_prism_d=upwards),
            field=prism_on_grid(rx, eye=eye, **grid),
            reach_prism_d=float(corners.amount_prism_d.max()),
        )

    def numbers(self, data: PrismThere) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: what is shown.
        """
        there, powers = data.notations, powers_for(data.rx, eye=data.eye)
        none = not _is_any(data)
        way = "" if none else there.half_circle.split(" base ")[1]
        return [
            ("Part in or out", f"{abs(data.in_prism_d):.2f}", _word(data.in_prism_d, "in", "out")),
            ("Part up or down", f"{abs(data.up_prism_d):.2f}", _word(data.up_prism_d, "up", "down")),
            ("As one prism", f"{there.amount_prism_d:.2f}", "prism dioptres"),
            ("Base, full circle", *_or_unknown(none, f"{round(there.full_circle_deg) % 360}", "degrees")),
            ("Base, half circle", *_or_unknown(none, way.removesuffix(" degrees"), "degrees")),
            ("In letters", *_or_unknown(none, there.letters, "")),
            *(
                (label, f"{power:+.2f}" if f"{abs(power):.2f}" != "0.00" else "0.00", "D")
                for label, power in zip(_POWERS, powers, strict=True)
            ),
        ]

    def sentence(self, data: PrismThere) -> str:
        """Return where the eye looks through and what it meets there.

        data: what is shown.
        """
        met = in_words(data.in_prism_d, data.up_prism_d)
        if " with " in met:
            met = f"{met}, as one prism {data.notations.full_circle}"
        return f"The {data.eye} eye looks {_where(data)} and meets {met}."


_POWERS = ("Power along 180", "Cross term", "Power along 90")


def _is_any(data: PrismThere) -> bool:
    return in_words(data.in_prism_d, data.up_prism_d) != "no prism"


def _word(part: float, plus: str, minus: str) -> str:
    if f"{abs(part):.2f}" == "0.00":
        return ""
    return f"base {plus if part > 0.0 else minus}"


def _or_unknown(none: bool, figure: str, unit: str) -> tuple[str, str]:
    return (NOT_KNOWN, "") if none else (figure, unit)


def _where(data: PrismThere) -> str:
    """The point in words."""
    parts = [
        f"{abs(away):g} mm {plus if away > 0.0 else minus}"
        for away, plus, minus in ((data.up_mm, "above", "below"), (data.in_mm, "in from", "out from"))
        if away
    ]
    if not parts:
        return "through the optical centre"
    return f"{' and '.join(parts)} the optical centre"
