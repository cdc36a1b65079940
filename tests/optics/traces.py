"""Traces for tests: known outlines as a faultless tracer would read them, and files that hold them."""

from collections.abc import Callable

import numpy as np

from lablib.optics.eye import Eye
from lablib.optics.trace import Trace

Radius = Callable[[np.ndarray], np.ndarray]


def ellipse(a_mm: float, b_mm: float) -> Radius:
    """Return the distances of an ellipse from its centre, by angle [rad]."""
    return lambda angle: 1.0 / np.hypot(np.cos(angle) * 2.0 / a_mm, np.sin(angle) * 2.0 / b_mm)


def rectangle(a_mm: float, b_mm: float) -> Radius:
    """Return the distances of a sharp rectangle from its centre, by angle [rad]."""

    def radius(angle: np.ndarray) -> np.ndarray:
        with np.errstate(divide="ignore"):
            return np.minimum(a_mm / 2.0 / np.abs(np.cos(angle)), b_mm / 2.0 / np.abs(np.sin(angle)))

    return radius


def traced(radius: Radius, *, radii: int = 400, eye: Eye = Eye.RIGHT) -> Trace:
    """Return a trace at equal angles about the centre."""
    found = radius(np.arange(radii) * 2.0 * np.pi / radii)
    return Trace(eye=eye, radii=tuple(np.rint(found * 100.0).astype(int).tolist()))


def traced_off_centre(
    radius: Radius, *, x_mm: float, y_mm: float, points: int = 720, eye: Eye = Eye.RIGHT
) -> Trace:
    """Return a trace at unequal angles about an origin off the centre, through points of the outline."""
    angle = np.arange(points) * 2.0 * np.pi / points
    ring = radius(angle) * np.exp(1j * angle) - complex(x_mm, y_mm)
    whole = np.rint(np.degrees(np.angle(ring)) * 100.0).astype(int) % 36000
    # Two points may fall on one hundredth of a degree, and the first need not have the least angle.
    angles, at = np.unique(whole, return_index=True)
    radii = np.rint(np.abs(ring[at]) * 100.0).astype(int)
    return Trace(eye=eye, radii=tuple(radii.tolist()), angles=tuple(angles.tolist()))


def lines(*, radii: int = 40, of_mm: float = 25.0, eye: str = "R", spacing: str = "E") -> list[str]:
    """Return the records of one round rim."""
    found = [f"TRCFMT=1;{radii};{spacing};{eye};F"]
    numbers = [str(round(of_mm * 100))] * radii
    found += [f"R={';'.join(numbers[at : at + 15])}" for at in range(0, radii, 15)]
    if spacing == "U":
        angles = [str(round(at * 36000 / radii)) for at in range(radii)]
        found += [f"A={';'.join(angles[at : at + 12])}" for at in range(0, radii, 12)]
    return found


def raw(records: list[str], end: str = "\r\n") -> bytes:
    """Return the bytes of a file of records."""
    return "".join(f"{record}{end}" for record in records).encode("latin-1")
