"""The panel of the optical cross: a lens in both its forms, and a meridian that turns over it."""

from collections.abc import Sequence

import numpy as np

from lablib.optics.optical_cross import OpticalCross, at_right_angles_deg
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.cross import CrossPicture
from lablib.pictures.cross_data import CrossThere, on

_WRITTEN, _READ = "Lens as written", "Where it is read"
_ROUND_DEG = np.arange(0.0, 181.0, 1.0)


def _d(name: str, label: str, most: float, value: float) -> Slider:
    ends = {"low": -most, "high": most, "step": 0.25}
    return Slider(name=name, label=label, unit="D", value=value, group=_WRITTEN, **ends)


def _deg(name: str, label: str, value: float, group: str) -> Slider:
    return Slider(name=name, label=label, unit="degrees", low=1, high=180, step=1, value=value, group=group)


class CrossPanel(Panel):
    """One lens, written in either form, and the power along one meridian of it."""

    draws = CrossPicture
    note = (
        "Axes and meridians are counted anticlockwise, as an observer facing the wearer sees them; 180 is "
        "written, never 0."
    )
    controls = (
        _d("sphere_d", "Sphere", 10.0, 2.0),
        _d("cylinder_d", "Cylinder", 6.0, -1.5),
        _deg("axis_deg", "Axis", 20, _WRITTEN),
        _deg("meridian_deg", "Meridian", 180, _READ),
        Choice(name="cross", label="Cross and forms", options=("yes", "no"), value="yes", group=_READ),
    )

    def compute(self, values: Values) -> CrossThere:
        """Return the lens in both forms, and its powers.

        values: by the control's name.
        """
        cylinder, meridian = values["cylinder_d"], values["meridian_deg"]
        rx = Prescription(
            sphere_d=values["sphere_d"],
            cylinder_d=cylinder,
            axis_deg=values["axis_deg"] if cylinder else None,
        )
        minus = rx.in_form("minus")
        return CrossThere(
            minus=minus,
            plus=rx.in_form("plus"),
            cross=OpticalCross.of(minus),
            meridian_deg=meridian,
            power_d=rx.power_in_meridian_d(meridian),
            meridians_deg=_ROUND_DEG,
            powers_d=rx.power_in_meridian_d(_ROUND_DEG),
            is_hidden=values["cross"] == "no",
        )

    def numbers(self, data: CrossThere) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: from `compute`.
        """
        cross = data.cross
        rows = [
            ("Minus form", str(data.minus), ""),
            ("Plus form", str(data.plus), ""),
            ("Cross, more plus", on(cross.first_d, cross.first_meridian_deg), ""),
            ("Cross, less plus", on(cross.second_d, cross.second_meridian_deg), ""),
            ("Spherical equivalent", _in_eighths(data.minus.spherical_equivalent_d), "D"),
        ]
        if data.is_hidden:
            rows = [(label, NOT_KNOWN, "") for label, _, _ in rows]
        return [(f"Power on {data.meridian_deg:03.0f}", written_power(data.power_d), "D"), *rows]

    def sentence(self, data: CrossThere) -> str:
        """Return the power on the meridian, and what it is of this lens.

        data: from `compute`.
        """
        power = written_power(data.power_d)
        if data.is_hidden:
            return f"Along {data.meridian_deg:03.0f} the lens has {power} D."
        if not data.is_toric:
            return f"A sphere: it has {power} D along every meridian, and no axis."
        return f"Along {data.meridian_deg:03.0f} the lens has {power} D: {_what(data)}."


def _in_eighths(power_d: float) -> str:
    # Two decimals would cut an eighth off, which half a cylinder often is.
    return f"{power_d:+.3f}" if power_d else "0.000"


def _what(data: CrossThere) -> str:
    cross = data.cross
    for name, which, form, meridian in (
        ("minus", "most", data.minus, cross.first_meridian_deg),
        ("plus", "least", data.plus, cross.second_meridian_deg),
    ):
        if data.meridian_deg == meridian:
            return f"its {which} plus power, on the axis of its {name} form, {form}"
    first, second = (
        on(power, meridian)
        for power, meridian in (
            (cross.first_d, cross.first_meridian_deg),
            (cross.second_d, cross.second_meridian_deg),
        )
    )
    halfway = at_right_angles_deg(2.0 * (data.meridian_deg - cross.first_meridian_deg)) == 180.0
    if halfway:
        return f"halfway between {first} and {second}, the spherical equivalent"
    return f"between {first} and {second}"
