"""Surfaces whose section is a conic, the simplest aspheres: flatter or steeper outwards than a sphere.

y^2 = 2 r z - p z^2, z the depth: p is 1 for a sphere, between 0 and 1 for an ellipse that flattens outwards,
0 for a parabola, below 0 for a hyperbola. Curvatures at the vertex are those of the sphere with the same r.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike

from lablib.errors import LabError, require_finite
from lablib.optics.lens import Lens, lens_for
from lablib.optics.limits import require_in_limits
from lablib.optics.prescription import Prescription
from lablib.optics.surface import Surface, SurfaceTooSteep

_MOST_TURNS = 60
_THICKNESS_ERROR_MM = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Conic(Surface):
    """A conic turned about its axis, wherever a lens takes a surface.

    flat_per_mm, steep_per_mm: curvature at the vertex [1/mm], one and the same.
    flat_meridian_deg, tilt_x, tilt_y: as in `Surface`.
    p_value: 1 for a sphere, less for a surface that flattens towards its edge.

    Raises LabError as `Surface` does, for two curvatures, and for a p value out of range.
    Source: y^2 = 2 r z - p z^2, M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """

    p_value: float = 1.0

    def __post_init__(self) -> None:
        Surface.__post_init__(self)
        require_in_limits("p value", self.p_value, "p_value")
        if self.flat_per_mm != self.steep_per_mm:
            raise LabError(
                f"conic with curvatures {self.flat_per_mm:g} and {self.steep_per_mm:g} per mm: it is turned "
                "about its axis and has one at the vertex: give the same number twice, or a toric surface"
            )

    def sag_mm(self, x_mm: ArrayLike, y_mm: ArrayLike) -> np.ndarray:
        """Return the depth of the surface behind its vertex, measured along the axis [mm].

        x_mm, y_mm: points [mm], of one shape.

        Raises SurfaceTooSteep where the surface does not reach a point.
        """
        depth = self.sag_or_nan_mm(x_mm, y_mm)
        missed = ~np.isfinite(depth)
        if np.any(missed):
            away = float(np.min(np.hypot(x_mm, y_mm)[missed]))
            raise SurfaceTooSteep(
                f"conic of radius {1.0 / abs(self.steep_per_mm):.1f} mm and p {self.p_value:g} does not "
                f"reach {away:.1f} mm from its vertex: take a smaller frame or blank, a lower p or a "
                "flatter curve"
            )
        return depth

    def curvatures_per_mm(self, away_mm: ArrayLike) -> tuple[np.ndarray, np.ndarray]:
        """Return the curvatures along and across the radius at a distance from the axis [1/mm].

        away_mm: distance from the axis [mm], a number or an array of any shape.

        Not-a-number where the surface does not reach.
        Source: derived; across, the normal meets the axis; along, the curvature of the section itself.
        """
        rise = (self.steep_per_mm * np.asarray(away_mm, dtype=float)) ** 2
        with np.errstate(invalid="ignore"):
            bend = np.sqrt(np.where(self.p_value * rise < 1.0, 1.0 + (1.0 - self.p_value) * rise, np.nan))
        return self.steep_per_mm / bend**3, self.steep_per_mm / bend

    def _level(self, u: np.ndarray, v: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Depth of the untilted surface and its slopes along and across."""
        squared = u**2 + v**2
        with np.errstate(invalid="ignore", divide="ignore"):
            root = np.sqrt(1.0 - self.p_value * self.steep_per_mm**2 * squared)
            depth = self.steep_per_mm * squared / (1.0 + root)
            slope = self.steep_per_mm / root
        return depth, slope * u, slope * v


def conic_front(lens: Lens, p_value: float) -> Lens:
    """Return a lens with the same curves at the vertices whose spherical front is made a conic.

    lens: with a spherical front.
    p_value: of the front, as in `Conic`.

    Raises LabError for a toric front or a p value out of range.
    """
    front = lens.front
    conic = Conic(flat_per_mm=front.flat_per_mm, steep_per_mm=front.steep_per_mm, p_value=p_value)
    return replace(lens, front=conic)


def conic_lens_with_edge(
    rx: Prescription, *, index: float, front_curve_d: float, p_value: float, edge_mm: float, away_mm: float
) -> Lens:
    """Return the lens with a conic front that is so thick at its thinnest edge, all round a circle.

    rx: back vertex power; the thinnest edge lies on its stronger plus meridian.
    index: refractive index.
    front_curve_d: front surface power at the vertex [D].
    p_value: of the front, as in `Conic`.
    edge_mm: least thickness to be left [mm]; away_mm: radius of the circle [mm].

    Thickness and back surface are brought together in turns, since each depends on the other.
    Raises LabError where no centre is left, for a value no lens has, and SurfaceTooSteep where a surface does
    not reach so far.
    """
    require_in_limits("edge", edge_mm, "least_edge_mm")
    away = require_finite("away_mm", away_mm, unit="mm")
    round_the_circle = away * np.exp(1j * np.radians((rx.axis_deg or 0.0) + np.array([0.0, 90.0])))
    centre = edge_mm
    for _ in range(_MOST_TURNS):
        lens = conic_front(
            lens_for(rx, index=index, front_curve_d=front_curve_d, centre_thickness_mm=centre), p_value
        )
        short = edge_mm - float(lens.thickness_mm(round_the_circle.real, round_the_circle.imag).min())
        centre += short
        if centre <= 0.0:
            raise LabError(
                f"edge {edge_mm:g} mm leaves no centre: this lens is thinnest in the middle, not at its "
                "edge: give the centre thickness instead"
            )
        if abs(short) < _THICKNESS_ERROR_MM:
            break
    return lens
