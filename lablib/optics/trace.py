"""The trace of one rim: radii round a point inside it, as a tracer reads them.

The first radius of equal angles points to the right of an observer who faces the wearer, the next follow
anticlockwise. So the first points to the nose of a right eye, and to the temple of a left one. Right and
left are the wearer's (ISO 8429; for traces ISO 16284, from memory).
"""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of
from lablib.optics.eye import Eye
from lablib.optics.frame import Outline
from lablib.optics.limits import require_in_limits

# Hundredths of a millimetre, and of a degree: the steps of the standard.
STEPS = 100
_ROUND = 360 * STEPS


def trace_format() -> dict:
    """Return the data table of the trace format; the caller must not change it."""
    return read_table("lablib.optics", "trace_format.toml")


@dataclass(frozen=True, slots=True, kw_only=True)
class Trace:
    """One rim as it was traced, in the whole numbers of the standard.

    eye: whose rim.
    radii: from the tracer's own origin, which need not be the boxed centre [0.01 mm].
    angles: of the radii, rising, anticlockwise from the observer's right [0.01 degree]; None for equal ones.
    traced: "frame", "pattern" or "lens".

    Raises LabError for too few or too many radii, a number out of range, angles that do not rise, or a gap.
    """

    eye: Eye
    radii: tuple[int, ...]
    angles: tuple[int, ...] | None = None
    traced: str = "frame"

    def __post_init__(self) -> None:
        require_one_of("what was traced", self.traced, tuple(trace_format()["traced"].values()))
        require_in_limits("trace of a rim with", len(self.radii), "trace_radii")
        for place, radius in enumerate(self.radii, start=1):
            require_radius(f"radius {place}", radius)
        if self.angles is not None:
            self._check_angles()

    def _check_angles(self) -> None:
        if len(self.angles) != len(self.radii):
            raise LabError(
                f"{len(self.angles)} angles and {len(self.radii)} radii: give one angle for each radius"
            )
        for place, angle in enumerate(self.angles, start=1):
            require_angle(f"angle {place}", angle)
        for place, (angle, following) in enumerate(pairwise((*self.angles, self.angles[0] + _ROUND)), 1):
            if following <= angle:
                raise LabError(
                    f"angle {place + 1} of {following} follows {angle}: angles rise all the way round, in "
                    "hundredths of a degree"
                )
            require_in_limits(f"gap after angle {place} of", (following - angle) / STEPS, "trace_gap_deg")

    @property
    def angle_deg(self) -> np.ndarray:
        """Shape (N,), direction of every radius, anticlockwise from the observer's right [degrees]."""
        if self.angles is None:
            return np.arange(len(self.radii)) * (360.0 / len(self.radii))
        return np.array(self.angles) / STEPS

    @property
    def radius_mm(self) -> np.ndarray:
        """Shape (N,), length of every radius [mm]."""
        return np.array(self.radii) / STEPS

    @property
    def points_mm(self) -> np.ndarray:
        """Shape (N,), complex: points of the rim from the tracer's origin, x to the observer's right [mm]."""
        return self.radius_mm * np.exp(1j * np.radians(self.angle_deg))


def require_radius(thing: str, radius: object) -> int:
    """Return a radius of a trace, or say what it may be.

    thing: what it is, as it should appear in the message; radius: [0.01 mm].

    Raises LabError for what is no whole number, or out of range.
    """
    _require_whole(thing, radius, "hundredths of a millimetre")
    require_in_limits(f"{thing}: {radius} hundredths or", radius / STEPS, "trace_radius_mm")
    return radius


def require_angle(thing: str, angle: object) -> int:
    """Return an angle of a trace, or say what it may be.

    thing: what it is, as it should appear in the message; angle: [0.01 degree].

    Raises LabError for what is no whole number, or not from 0 to under 360 degrees.
    """
    _require_whole(thing, angle, "hundredths of a degree")
    if not 0 <= angle < _ROUND:
        raise LabError(f"{thing}: {angle} is out of range: give 0 to {_ROUND - 1} hundredths of a degree")
    return angle


def _require_whole(thing: str, value: object, unit: str) -> None:
    if isinstance(value, bool) or not isinstance(value, int):
        raise LabError(f"{thing}: {value!r} is not a whole number: give {unit}")


def trace_of(
    outline: Outline,
    eye: Eye,
    *,
    radii: int = 400,
    traced: str = "frame",
    origin_mm: tuple[float, float] = (0.0, 0.0),
) -> Trace:
    """Return the trace that a faultless tracer would read off an outline.

    outline: of one lens; eye: whose.
    radii: how many, at equal angles.
    traced: as in `Trace`, which also says what it raises.
    origin_mm: the tracer's own origin, to the observer's right of the boxed centre and above it [mm].

    Between two points of the outline the distance is taken as straight in the angle.
    """
    require_in_limits("trace of a rim with", radii, "trace_radii")
    ring = outline.x_mm + 1j * outline.y_mm - complex(*origin_mm)
    wanted = np.arange(radii) * (360.0 / radii)
    found = np.interp(wanted, np.degrees(np.angle(ring)), np.abs(ring), period=360.0)
    return Trace(eye=eye, radii=tuple(np.rint(found * STEPS).astype(int).tolist()), traced=traced)
