"""The panel of a compensated lens on the focimeter: order, check value and reading side by side."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from lablib.job.check_values import CheckedLens, Compared
from lablib.optics.material import material
from lablib.optics.power import wrapped_axis_deg, written_power
from lablib.optics.prescription import Prescription
from lablib.optics.tilt import Tilt, compensated
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.check_values import CheckValuesPicture
from lablib.pictures.check_values_data import CheckRow, CheckView

AS_CHECKED, AS_ORDERED = "to the check value", "as ordered"
_ORDER, _WORN, _MADE = {"group": "Ordered"}, {"group": "As worn"}, {"group": "On the focimeter"}
_MATERIAL = "hard-resin-1.50"


def _d(name: str, label: str, low: float, high: float, value: float) -> Slider:
    return Slider(name=name, label=label, unit="D", low=low, high=high, step=0.25, value=value, **_ORDER)


def _angle(name: str, label: str, ends: tuple[float, float], value: float, group: dict[str, str]) -> Slider:
    low, high = ends
    return Slider(name=name, label=label, unit="degrees", low=low, high=high, step=1, value=value, **group)


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckSheet(CheckView):
    """An inspected lens.

    lens: its three columns.
    """

    lens: CheckedLens


class CheckValuesPanel(Panel):
    """What was ordered, what the maker says the focimeter shows, and what it shows."""

    draws = CheckValuesPicture
    note = (
        "Right lens, single vision, index 1.50. The check value here makes up for tilt and wrap alone; a "
        "maker's own is on the packet, and it decides. Limits: ANSI Z80.1-2015."
    )
    controls = (
        _d("sphere_d", "Sphere", -8.0, 8.0, -6.0),
        _d("cylinder_d", "Cylinder", -4.0, 0.0, -1.0),
        _angle("axis_deg", "Axis", (1, 180), 30, _ORDER),
        _angle("tilt_deg", "Tilt", (0, 20), 10, _WORN),
        _angle("wrap_deg", "Wrap", (0, 25), 15, _WORN),
        Choice(name="made", label="Lens made", options=(AS_CHECKED, AS_ORDERED), value=AS_CHECKED, **_MADE),
        Slider(
            name="sphere_off_d",
            label="Sphere off by",
            unit="D",
            low=-0.3,
            high=0.3,
            step=0.01,
            value=0.0,
            **_MADE,
        ),
        _angle("axis_off_deg", "Axis off by", (-10, 10), 0, _MADE),
    )

    def compute(self, values: Values) -> CheckSheet:
        """Return the lens with its three columns.

        values: by the control's name.

        Raises LabError for a lens that cannot be.
        """
        cylinder = values["cylinder_d"]
        order = Prescription(
            sphere_d=values["sphere_d"],
            cylinder_d=cylinder,
            axis_deg=values["axis_deg"] if cylinder else None,
        )
        tilt = Tilt(pantoscopic_deg=values["tilt_deg"], wrap_deg=values["wrap_deg"])
        # As printed on a packet: what is not written there cannot be compared.
        check = Prescription.parse(str(compensated(order, tilt=tilt, index=material(_MATERIAL).index)))
        reading = _off(check if values["made"] == AS_CHECKED else order, values)
        lens = CheckedLens(order=order, check_value=check, reading=reading)
        return CheckSheet(
            lens=lens,
            rows=_rows(lens),
            passes=lens.passes,
            would_pass_the_order=lens.would_pass_the_order,
        )

    def numbers(self, data: CheckSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: from `compute`.
        """
        lens = data.lens
        return [
            ("Ordered", str(lens.order), ""),
            ("Check value", str(lens.check_value), ""),
            ("Reading", str(lens.reading), ""),
            ("By check value", "passes" if data.passes else "fails", "this decides"),
            ("By the order", "passes" if data.would_pass_the_order else "fails", "decides nothing"),
        ]

    def sentence(self, data: CheckSheet) -> str:
        """Return the verdict.

        data: from `compute`.
        """
        if data.passes:
            start = "The lens passes against its check value"
        else:
            wrong = " and ".join(row.quantity for row in data.rows if not row.passes)
            start = f"The lens fails against its check value: {wrong}"
        if data.passes == data.would_pass_the_order:
            return f"{start}; against the order it would too."
        return f"{start}; against the order it would {'pass' if data.would_pass_the_order else 'fail'}."


def _off(lens: Prescription, values: Values) -> Prescription:
    """The lens as it was made: its sphere and axis off by what the sliders say."""
    axis = lens.axis_deg
    return Prescription(
        sphere_d=lens.sphere_d + values["sphere_off_d"],
        cylinder_d=lens.cylinder_d,
        axis_deg=None if axis is None else wrapped_axis_deg(axis + values["axis_off_deg"]),
    )


def _rows(lens: CheckedLens) -> tuple[CheckRow, ...]:
    """Sphere, cylinder and axis; the order is held against the check value as a reading is."""
    ordered = CheckedLens(order=lens.order, check_value=lens.check_value, reading=lens.order)
    there = {line.quantity: line for line in ordered.against_check_value}
    return tuple(_row(line, there.get(line.quantity)) for line in lens.against_check_value)


def _row(line: Compared, ordered: Compared | None) -> CheckRow:
    """One quantity; an order that is a sphere has no axis."""
    first = NOT_KNOWN if ordered is None else _written(line, ordered.read)
    return CheckRow(
        quantity=line.quantity,
        unit=line.unit,
        columns=(first, _written(line, line.wanted), _written(line, line.read)),
        order_off=math.nan if ordered is None else ordered.off,
        read_off=line.off,
        limit=line.limit,
        passes=line.passes,
    )


def _written(line: Compared, value: float) -> str:
    return f"{round(value) or 180:03d}" if line.unit == "degrees" else written_power(value)
