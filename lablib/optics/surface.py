"""Lens surfaces, exact: spheres and tori of tyre formation, level or tilted.

A surface is described where it crosses the axis of the lens (its vertex). Coordinates are those of an
observer facing the wearer: x to the right, y up; z is the depth behind the vertex, towards the eye.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from lablib.errors import LabError, require_finite
from lablib.optics.limits import require_in_limits

# Depths of a tilted surface are found to this, far below anything a gauge can show.
_DEPTH_ERROR_MM = 1e-10
_MOST_STEPS = 25


class SurfaceTooSteep(LabError):
    """A surface that curls up before it reaches the point asked for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surface:
    """A toric surface of tyre formation: the arc of the steeper meridian swept along the flatter.

    flat_per_mm, steep_per_mm: curvatures of the two principal meridians [1/mm], positive when the
        centre of curvature lies on the eye's side; equal for a sphere, zero for a flat meridian.
        They are put in order when the surface is made: the steeper is the one more strongly curved.
    flat_meridian_deg: direction of the flatter meridian [degrees], anticlockwise from +x.
    tilt_x, tilt_y: how much the surface, turned about its vertex, recedes towards the eye per
        millimetre along +x and +y at the vertex [mm/mm].

    Raises LabError for a number that is not finite or a tilt beyond 30 degrees.
    Source: tyre and barrel formation, ISO 13666; M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """

    flat_per_mm: float
    steep_per_mm: float
    flat_meridian_deg: float = 0.0
    tilt_x: float = 0.0
    tilt_y: float = 0.0

    def __post_init__(self) -> None:
        for name in ("flat_per_mm", "steep_per_mm", "flat_meridian_deg", "tilt_x", "tilt_y"):
            require_finite(f"surface: {name}", getattr(self, name))
        require_in_limits("surface: tilt", self.tilt_deg, "surface_tilt_deg")
        if abs(self.flat_per_mm) > abs(self.steep_per_mm):
            flat, steep = self.steep_per_mm, self.flat_per_mm
            object.__setattr__(self, "flat_per_mm", flat)
            object.__setattr__(self, "steep_per_mm", steep)
            object.__setattr__(self, "flat_meridian_deg", self.flat_meridian_deg + 90.0)

    @property
    def tilt_deg(self) -> float:
        """The angle between the surface's normal at the vertex and the axis [degrees]."""
        return math.degrees(math.atan(math.hypot(self.tilt_x, self.tilt_y)))

    def sag_mm(self, x_mm: ArrayLike, y_mm: ArrayLike) -> np.ndarray:
        """Return the depth of the surface behind its vertex, measured along the axis [mm].

        x_mm, y_mm: points [mm], of one shape.

        Raises SurfaceTooSteep where the surface does not reach a point.
        """
        depth = self.sag_or_nan_mm(x_mm, y_mm)
        missed = ~np.isfinite(depth)
        if np.any(missed):
            reach = float(np.min(np.hypot(x_mm, y_mm)[missed]))
            radius = 1.0 / abs(self.steep_per_mm)
            raise SurfaceTooSteep(
                f"surface radius {radius:.1f} mm does not reach {reach:.1f} mm from its vertex: a surface "
                f"reaches less than its radius: take a smaller frame or blank, a higher index or less power"
            )
        return depth

    def sag_or_nan_mm(self, x_mm: ArrayLike, y_mm: ArrayLike) -> np.ndarray:
        """Return the depth as `sag_mm` does, not-a-number where the surface does not reach [mm].

        x_mm, y_mm: points [mm], of one shape.
        """
        x, y = np.asarray(x_mm, dtype=float), np.asarray(y_mm, dtype=float)
        if self.tilt_x or self.tilt_y:
            return self._tilted_sag(x, y)
        return self._level(*self._along_meridians(x, y))[0]

    def _along_meridians(self, x: np.ndarray, y: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        turn = math.radians(self.flat_meridian_deg)
        return x * math.cos(turn) + y * math.sin(turn), y * math.cos(turn) - x * math.sin(turn)

    def _level(self, u: np.ndarray, v: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Depth of the untilted surface and its slopes along and across the flatter meridian.

        Written in curvatures so that a flat meridian needs no case of its own: the steep arc has the
        depth p at v, and the circle it is swept along there has the radius 1/c - p.
        """
        with np.errstate(invalid="ignore", divide="ignore"):
            rise = np.sqrt(1.0 - (self.steep_per_mm * v) ** 2)
            arc = self.steep_per_mm * v**2 / (1.0 + rise)
            swept = self.flat_per_mm / (1.0 - self.flat_per_mm * arc)
            depth = arc + swept * u**2 / (1.0 + np.sqrt(1.0 - (swept * u) ** 2))
            left = 1.0 - self.flat_per_mm * depth
            along = self.flat_per_mm * u / left
            across = self.steep_per_mm * v / rise * (1.0 - self.flat_per_mm * arc) / left
        return depth, along, across

    def _tilted_sag(self, x: np.ndarray, y: np.ndarray) -> np.ndarray:
        """Newton's method along z: the point (x, y, z) must lie on the surface in its own frame."""
        frame = self._own_frame()
        z = x * self.tilt_x + y * self.tilt_y
        z = z + self._level(*self._along_meridians(x, y))[0]
        for _ in range(_MOST_STEPS):
            own_x, own_y, own_z = (row[0] * x + row[1] * y + row[2] * z for row in frame)
            depth, along, across = self._level(*self._along_meridians(own_x, own_y))
            du, dv = self._along_meridians(frame[0][2], frame[1][2])
            step = (own_z - depth) / (frame[2][2] - along * du - across * dv)
            z = z - step
            if not np.any(np.abs(step) > _DEPTH_ERROR_MM):
                break
        return z

    def _own_frame(self) -> np.ndarray:
        """Rows are the surface's own x, y and normal; the turn is about a line in the vertex plane."""
        normal = np.array([-self.tilt_x, -self.tilt_y, 1.0])
        normal /= np.linalg.norm(normal)
        nx, ny, nz = normal
        return np.array(
            [
                [1.0 - nx * nx / (1.0 + nz), -nx * ny / (1.0 + nz), -nx],
                [-nx * ny / (1.0 + nz), 1.0 - ny * ny / (1.0 + nz), -ny],
                [nx, ny, nz],
            ]
        )


def curvature_per_mm(power_d: float, index: float) -> float:
    """Return the curvature of a front surface of so much power [1/mm].

    power_d: surface power in air [D]; for a back surface hand in minus its power.
    index: refractive index of the lens.
    """
    return power_d / (1000.0 * (index - 1.0))


def surface_power_d(curvature: float, index: float) -> float:
    """Return the power of a front surface of this curvature [D]; a back surface has minus that.

    curvature: [1/mm]; index: refractive index of the lens.
    """
    return 1000.0 * (index - 1.0) * curvature


def sagitta_mm(radius_mm: float, half_diameter_mm: float) -> float:
    """Return the height of a spherical cap, exactly [mm].

    radius_mm: radius of the surface [mm].
    half_diameter_mm: half the chord across the cap [mm].

    Raises SurfaceTooSteep when the half-diameter is larger than the radius.
    Source: s = r - sqrt(r^2 - y^2), M. Jalie, Lens Talk 2023.
    """
    sphere = Surface(flat_per_mm=1.0 / radius_mm, steep_per_mm=1.0 / radius_mm)
    return float(sphere.sag_mm(half_diameter_mm, 0.0))


def sagitta_approximate_mm(power_d: float, index: float, half_diameter_mm: float) -> float:
    """Return the height of a cap by the parabola through it, too small on steep surfaces [mm].

    power_d: surface power [D]; index: refractive index; half_diameter_mm: half the chord [mm].
    Source: s = y^2 F / (2000 (n - 1)), the trade's approximation.
    """
    return half_diameter_mm**2 * power_d / (2000.0 * (index - 1.0))


# A lens measure is engraved for this index, whatever the lens is made of.
LENS_MEASURE_INDEX = 1.530


def power_from_lens_measure_d(reading_d: float, index: float) -> float:
    """Return the surface power of a lens from what the lens measure shows [D].

    reading_d: what the dial shows [D], engraved for index 1.530; index: index of the lens.
    """
    return reading_d * (index - 1.0) / (LENS_MEASURE_INDEX - 1.0)
