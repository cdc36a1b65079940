"""The panel of the lever arms: where the wheel touches an oval lens, and how far from the chuck it pulls."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from lablib.bench.cutting import Touch, touch_of
from lablib.bench.geometry import angles_rad
from lablib.bench.parameter import parameters
from lablib.panels.panel import Panel, Values
from lablib.panels.specs import Slider
from lablib.pictures.cutting_arm import ArmPicture
from lablib.pictures.cutting_arm_data import ArmView

_POINTS = 720
_LENS, _WHEEL = {"group": "Lens"}, {"group": "Wheel"}
_DIAMETER = parameters()["wheel_diameter_mm"]


def _mm(name: str, label: str, ends: tuple[float, float], value: float, step: float, group: dict) -> Slider:
    low, high = ends
    return Slider(name=name, label=label, unit="mm", low=low, high=high, step=step, value=value, **group)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ArmSheet(ArmView):
    """A lens under the wheel with its figures.

    support_mm, slope_mm: h, from the chuck axis to the tangent, and h', its slope [mm].
    bite_deg: angle from the contact to where the removal is centred, about the wheel's centre [degrees].
    """

    support_mm: float
    slope_mm: float
    bite_deg: float


class ArmPanel(Panel):
    """An oval lens, the place where the wheel touches it, and the arms of both cutting forces."""

    draws = ArmPicture
    note = (
        "An oval lens blocked at its middle; the wheel runs against its edge. The arrows show directions, "
        "not amounts."
    )
    controls = (
        _mm("half_width_mm", "Half width", (20.0, 30.0), 25.0, 0.5, _LENS),
        _mm("half_height_mm", "Half height", (12.0, 30.0), 18.0, 0.5, _LENS),
        Slider(
            name="direction_deg",
            label="Normal",
            unit="degrees",
            low=0,
            high=360,
            step=5,
            value=45,
            **_LENS,
        ),
        _mm("bite_mm", "Depth of the bite", (0.0, 3.0), 0.0, 0.25, _WHEEL),
        _mm("wheel_mm", "Wheel diameter", (_DIAMETER.low, _DIAMETER.high), _DIAMETER.default, 5.0, _WHEEL),
    )

    def compute(self, values: Values) -> ArmSheet:
        """Return the lens under the wheel.

        values: by the control's name.
        """
        normal = np.radians(values["direction_deg"])
        wheel, depth = values["wheel_mm"] / 2.0, values["bite_mm"]
        across, up = values["half_width_mm"], values["half_height_mm"]
        # Where an ellipse has this normal; the points are counted from there, so that one of them lies on it.
        start = float(np.arctan2(up**2 * np.sin(normal), across**2 * np.cos(normal)))
        angle = start + angles_rad(_POINTS)
        radius = across * up / np.hypot(up * np.cos(angle), across * np.sin(angle))
        touch = touch_of(radius[None, :], np.full((1, _POINTS), depth), wheel)
        way = np.exp(1j * angle)
        return ArmSheet(
            rim=radius * way,
            before=(radius + depth) * way,
            direction_deg=values["direction_deg"],
            distance_mm=float(radius[0]),
            wheel_radius_mm=wheel,
            **_here(touch, np.exp(1j * normal), wheel),
            **_around(touch, angle, radius),
        )

    def numbers(self, data: ArmSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: from `compute`.
        """
        return [
            ("Distance to contact", f"{data.distance_mm:.2f}", "mm"),
            ("Distance to tangent, h", f"{data.support_mm:.2f}", "mm"),
            ("Its slope, h'", _signed(data.slope_mm), "mm"),
            ("Angle of the bite", f"{data.bite_deg:.2f}", "degrees"),
            ("Tangential arm", f"{data.arm_tangential_mm:.2f}", "mm"),
            ("Normal arm", _signed(data.arm_normal_mm), "mm"),
        ]

    def sentence(self, data: ArmSheet) -> str:
        """Return both arms and what they are not.

        data: from `compute`.
        """
        turns = "turns it the same way" if data.arm_normal_mm > 0.0 else "turns it back"
        normal = f"the normal force has an arm of {abs(data.arm_normal_mm):.1f} mm and {turns}"
        if abs(data.arm_normal_mm) < 0.05:
            normal = "the normal force passes through the chuck axis"
        return (
            f"The contact is {data.distance_mm:.1f} mm from the chuck axis; the tangential force pulls on an "
            f"arm of {data.arm_tangential_mm:.1f} mm; {normal}."
        )


def _signed(arm_mm: float) -> str:
    """A length with its sign; nothing has none."""
    text = f"{arm_mm:+.2f}"
    return text if text.strip("+-0.") else "0.00"


def _here(touch: Touch, normal: complex, wheel_mm: float) -> dict[str, object]:
    """Points and arms at the contact, under the names of `ArmSheet`."""
    support, slope, bite = (float(part[0, 0]) for part in (touch.support_mm, touch.slope_mm, touch.bite_rad))
    along, off = (float(part[0, 0]) for part in (touch.arm_tangential_mm, touch.arm_normal_mm))
    ahead = 1j * normal
    centre = (support + wheel_mm) * normal + slope * ahead
    inward = -normal * np.exp(-1j * bite)
    return {
        "support_mm": support,
        "slope_mm": slope,
        "bite_deg": float(np.degrees(bite)),
        "contact": support * normal + slope * ahead,
        "wheel": centre,
        "bears": centre + wheel_mm * inward,
        "tangential": -1j * inward,
        "normal": inward,
        "foot_tangential": -along * inward,
        "foot_normal": -off * 1j * inward,
        "arm_tangential_mm": along,
        "arm_normal_mm": off,
    }


def _around(touch: Touch, angle: np.ndarray, radius: np.ndarray) -> dict[str, np.ndarray]:
    """The arms by the direction of the normal, from 0 round to 360, under the names of `ArmView`."""
    normal = np.degrees(angle - np.arctan2(touch.slope_mm[0], touch.support_mm[0])) % 360.0
    order = np.argsort(normal)
    found = {
        "around_deg": normal,
        "around_distance_mm": radius,
        "around_tangential_mm": touch.arm_tangential_mm[0],
        "around_normal_mm": touch.arm_normal_mm[0],
    }
    return {name: _closed(values[order], name == "around_deg") for name, values in found.items()}


def _closed(values: np.ndarray, is_angle: bool) -> np.ndarray:
    """A curve all round with its last point before the first and its first after the last."""
    turn = 360.0 if is_angle else 0.0
    return np.concatenate([[values[-1] - turn], values, [values[0] + turn]])
