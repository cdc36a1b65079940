"""A lens measure on a front surface: what its dial shows, and what that is in the lens it stands on."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from lablib.optics.lens_measure import PinsOnSurface, pins_on, reading_d, sagitta_of_pins_mm, warpage_d
from lablib.optics.material import material, materials
from lablib.optics.power import wrapped_axis_deg, written_power
from lablib.optics.prescription import Prescription
from lablib.optics.surface import Surface, curvature_per_mm, power_from_lens_measure_d
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.measure import MeasurePicture
from lablib.pictures.measure_drawings import Held

_ACROSS_MM, _POINTS = 8.0, 41


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MeasureSheet(Held):
    """A lens measure as it is held, with what its readings mean.

    index: of the lens.
    from_dial_d: the power that the reading stands for in this lens [D].
    square_d: reading along the pins with the measure held square [D].
    on_180_d, on_90_d: readings along 180 and along 90, held square [D].
    """

    index: float
    from_dial_d: float
    square_d: float
    on_180_d: float
    on_90_d: float

    @property
    def warpage_d(self) -> float:
        """How far the readings along 180 and 90 are apart [D]."""
        return warpage_d(self.on_180_d, self.on_90_d)


class MeasurePanel(Panel):
    """A surface, what it is made of, and how the measure is held on it."""

    draws = MeasurePicture
    note = (
        "The dial is engraved for index 1.530. Here the outer pins stand 10 mm from the plunger; instruments "
        "differ."
    )
    controls = (
        Slider(name="first_d", label="Power along 180", unit="D", low=-10.0, high=10.0, step=0.25, value=6.0),
        Slider(name="second_d", label="Power along 90", unit="D", low=-10.0, high=10.0, step=0.25, value=6.0),
        Choice(name="material", label="Material", options=tuple(materials()), value="polycarbonate-1.59"),
        Slider(name="along_deg", label="Pins on", unit="degrees", low=1, high=180, step=1, value=180),
        Slider(name="lean_deg", label="Leans sideways", unit="degrees", low=-30, high=30, step=1, value=0),
    )

    def compute(self, values: Values) -> MeasureSheet:
        """Return the measure as it is held.

        values: by the control's name.
        """
        index, along, lean = material(values["material"]).index, values["along_deg"], values["lean_deg"]
        surface = _surface(values["first_d"], values["second_d"], index)
        pins, held = pins_on(surface, along_deg=along), reading_d(surface, along_deg=along, lean_deg=lean)
        across, vertex, at_pin = _across(surface, pins, along)
        powers = Prescription(
            sphere_d=values["first_d"], cylinder_d=values["second_d"] - values["first_d"], axis_deg=180.0
        )
        return MeasureSheet(
            pins=pins,
            across_mm=across,
            vertex_height_mm=vertex,
            pin_height_mm=at_pin,
            along_deg=along,
            lean_deg=lean,
            sagitta_mm=sagitta_of_pins_mm(surface, along_deg=along, lean_deg=lean),
            reading_d=held,
            power_d=powers.power_in_meridian_d(along),
            flat_deg=wrapped_axis_deg(surface.flat_meridian_deg) if powers.cylinder_d else None,
            index=index,
            from_dial_d=power_from_lens_measure_d(held, index),
            square_d=pins.reading_d,
            on_180_d=reading_d(surface, along_deg=180.0),
            on_90_d=reading_d(surface, along_deg=90.0),
        )

    def numbers(self, data: MeasureSheet) -> Sequence[tuple[str, str, str]]:
        """Return the readings and the powers.

        data: from `compute`.
        """
        return [
            ("Dial shows", written_power(data.reading_d), "D"),
            ("Power from the dial", written_power(data.from_dial_d), "D"),
            ("Power on the pins", written_power(data.power_d), "D"),
            ("Index of the lens", f"{data.index:.3f}", ""),
            ("Square, on 180", written_power(data.on_180_d), "D"),
            ("Square, on 90", written_power(data.on_90_d), "D"),
            ("These two differ by", f"{data.warpage_d:.2f}", "D"),
        ]

    def sentence(self, data: MeasureSheet) -> str:
        """Return what the dial shows and what it stands for.

        data: from `compute`.
        """
        shown = f"the dial shows {written_power(data.reading_d)} D"
        if data.lean_deg:
            start = (
                f"Leaning {abs(data.lean_deg):g} degrees on {data.along_deg:g}, {shown}; held square it "
                f"shows {written_power(data.square_d)} D"
            )
        else:
            worth = written_power(data.from_dial_d)
            start = f"Square on {data.along_deg:g}, {shown}; in index {data.index:.3f} that is {worth} D"
        differ = f"{data.warpage_d:.2f}"
        return f"{start}; 180 and 90 differ by {differ} D." if float(differ) else f"{start}."


def _surface(along_180_d: float, along_90_d: float, index: float) -> Surface:
    return Surface(
        flat_per_mm=curvature_per_mm(along_180_d, index),
        steep_per_mm=curvature_per_mm(along_90_d, index),
        flat_meridian_deg=180.0,
    )


def _across(
    surface: Surface, pins: PinsOnSurface, along_deg: float
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Places across the pins, and the heights of the surface there at the vertex and at an outer pin."""
    turn, aside = np.radians(along_deg), np.linspace(-_ACROSS_MM, _ACROSS_MM, _POINTS)
    away = np.array([[0.0], [pins.pin_along_mm[-1]]])
    depth = surface.sag_mm(
        away * np.cos(turn) - aside * np.sin(turn), away * np.sin(turn) + aside * np.cos(turn)
    )
    return aside, -depth[0], -depth[1]
