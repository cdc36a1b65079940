"""A lens as a solid: two exact surfaces, a thickness, and what can be measured on it.

Coordinates have their origin on the front vertex at the optical centre: x to the right as an observer
facing the wearer sees it, y up, z towards the eye. Thickness is measured along z.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy.optimize import brentq

from lablib.errors import LabError
from lablib.optics.limits import limit, require_in_limits
from lablib.optics.prescription import Prescription
from lablib.optics.surface import Surface, curvature_per_mm, surface_power_d
from lablib.optics.thick_lens import back_surface_d, back_vertex_power_d


@dataclass(frozen=True, slots=True, kw_only=True)
class Lens:
    """Front and back surface, centre thickness and index.

    front, back: surfaces; the back one may be tilted, which is how a prescribed prism is made.
    centre_thickness_mm: at the optical centre [mm].
    index: refractive index.

    Raises LabError for a centre thickness that is not above 0, or no lens has.
    """

    front: Surface
    back: Surface
    centre_thickness_mm: float
    index: float

    def __post_init__(self) -> None:
        require_in_limits("centre thickness", self.centre_thickness_mm, "centre_thickness_mm")

    def thickness_mm(self, x_mm: ArrayLike, y_mm: ArrayLike) -> np.ndarray:
        """Return the thickness at points of the lens [mm], negative where the surfaces have crossed.

        x_mm, y_mm: points from the optical centre [mm], of one shape.

        Raises SurfaceTooSteep where a surface does not reach a point.
        """
        return self.centre_thickness_mm + self.back.sag_mm(x_mm, y_mm) - self.front.sag_mm(x_mm, y_mm)

    def thickness_or_nan_mm(self, x_mm: ArrayLike, y_mm: ArrayLike) -> np.ndarray:
        """Return the thickness as `thickness_mm` does, not-a-number where a surface does not reach [mm].

        x_mm, y_mm: points from the optical centre [mm], of one shape.
        """
        front, back = self.front.sag_or_nan_mm(x_mm, y_mm), self.back.sag_or_nan_mm(x_mm, y_mm)
        return self.centre_thickness_mm + back - front

    @property
    def front_curve_d(self) -> float:
        """Front surface power in the lens's own index [D]."""
        return surface_power_d(self.front.steep_per_mm, self.index)

    @property
    def back_curves_d(self) -> tuple[float, float]:
        """Back surface powers, the flatter (base) and the steeper (cross) [D]."""
        base = -surface_power_d(self.back.flat_per_mm, self.index)
        return base, -surface_power_d(self.back.steep_per_mm, self.index)

    @property
    def prism_prism_d(self) -> float:
        """Amount of prism the tilt of the back surface gives a ray along the axis [prism D]."""
        lean = math.radians(self.back.tilt_deg)
        return 100.0 * math.tan(math.asin(self.index * math.sin(lean)) - lean)

    def back_vertex_power(self) -> Prescription:
        """Return the power of the lens at its back vertex, near the axis and without the tilt's effect."""
        base, cross = (
            back_vertex_power_d(self.front_curve_d, curve, self.centre_thickness_mm, self.index)
            for curve in self.back_curves_d
        )
        along = math.radians(self.back.flat_meridian_deg)
        direction = np.array([math.cos(along), math.sin(along)])
        matrix = cross * np.eye(2) + (base - cross) * np.outer(direction, direction)
        return Prescription.from_power_matrix(matrix)


def lens_for(
    rx: Prescription,
    *,
    index: float,
    front_curve_d: float,
    centre_thickness_mm: float,
    prism_x_prism_d: float = 0.0,
    prism_y_prism_d: float = 0.0,
) -> Lens:
    """Return the lens with a spherical front that has the prescribed back vertex power.

    rx: prescription, its addition left aside.
    index: refractive index.
    front_curve_d: front surface power in this index [D].
    centre_thickness_mm: [mm].
    prism_x_prism_d, prism_y_prism_d: base direction of the prescribed prism along x and y [prism D].

    Raises LabError for a curve, thickness or prism no lens has.
    """
    require_in_limits("front curve", front_curve_d, "front_curve_d")
    _require_focus_behind(front_curve_d, centre_thickness_mm, index)
    front = curvature_per_mm(front_curve_d, index)
    along_axis, across_axis = (
        curvature_per_mm(-back_surface_d(power, front_curve_d, centre_thickness_mm, index), index)
        for power in (rx.sphere_d, rx.sphere_d + rx.cylinder_d)
    )
    tilt_x, tilt_y = _tilt_for(prism_x_prism_d, prism_y_prism_d, index)
    back = Surface(
        flat_per_mm=along_axis,
        steep_per_mm=across_axis,
        flat_meridian_deg=rx.axis_deg or 0.0,
        tilt_x=tilt_x,
        tilt_y=tilt_y,
    )
    return Lens(
        front=Surface(flat_per_mm=front, steep_per_mm=front),
        back=back,
        centre_thickness_mm=centre_thickness_mm,
        index=index,
    )


def _require_focus_behind(front_curve_d: float, centre_thickness_mm: float, index: float) -> None:
    """Refuse a lens so thick that its front surface brings light to a focus inside it."""
    if centre_thickness_mm * front_curve_d >= 1000.0 * index:
        raise LabError(
            f"centre thickness {centre_thickness_mm:g} mm reaches the focus of the front curve "
            f"{front_curve_d:g} D: it stays below {1000.0 * index / front_curve_d:.1f} mm: "
            f"take a thinner lens or a flatter front curve"
        )


def _tilt_for(prism_x_prism_d: float, prism_y_prism_d: float, index: float) -> tuple[float, float]:
    """Slope of the back surface that turns the ray along the axis by the prism, by Snell's law.

    n sin(a) = sin(a + d) with tan(d) = P / 100 gives tan(a) = sin(d) / (n - cos(d)).
    """
    amount = math.hypot(prism_x_prism_d, prism_y_prism_d)
    if amount == 0.0:
        return 0.0, 0.0
    require_in_limits("prescribed prism", amount, "prescribed_prism_d")
    deviation = math.atan(amount / 100.0)
    slope = math.sin(deviation) / (index - math.cos(deviation))
    return slope * prism_x_prism_d / amount, slope * prism_y_prism_d / amount


def lens_with_least_thickness(
    rx: Prescription,
    *,
    index: float,
    front_curve_d: float,
    least_mm: float,
    x_mm: ArrayLike,
    y_mm: ArrayLike,
    prism_x_prism_d: float = 0.0,
    prism_y_prism_d: float = 0.0,
) -> Lens:
    """Return the lens whose thinnest point among those given has the thickness asked for.

    rx, index, front_curve_d, prism_x_prism_d, prism_y_prism_d: as in `lens_for`.
    least_mm: the least thickness [mm].
    x_mm, y_mm: shape (N,), points of the rim from the optical centre [mm].

    Thickness and back surface are solved together, since each depends on the other.
    Raises LabError where the rim is thicker than that even with no centre left (a minus lens), or where
    no lens up to 60 mm thick will do.
    """

    def lens(centre_thickness_mm: float) -> Lens:
        return lens_for(
            rx,
            index=index,
            front_curve_d=front_curve_d,
            centre_thickness_mm=centre_thickness_mm,
            prism_x_prism_d=prism_x_prism_d,
            prism_y_prism_d=prism_y_prism_d,
        )

    def excess(centre_thickness_mm: float) -> float:
        return float(lens(centre_thickness_mm).thickness_mm(x_mm, y_mm).min()) - least_mm

    require_in_limits("least edge", least_mm, "least_edge_mm")
    thinnest, thickest = 1e-6, limit("centre_thickness_mm")[1]
    missing = -excess(thinnest)
    if missing <= 0.0:
        raise LabError(
            f"least edge {least_mm:g} mm leaves no centre: this lens is thinnest in the middle, "
            f"not at its edge: give the centre thickness instead"
        )
    # A thicker centre needs a steeper back, so the edge gains at least what the centre does: the centre
    # wanted is never above this, and a still thicker trial might not even have a possible back surface.
    enough = thinnest + missing + 1e-6
    if enough > thickest and excess(thickest) <= 0.0:
        raise LabError(
            f"least edge {least_mm:g} mm needs a centre above {thickest:g} mm: "
            f"take a smaller frame or blank, a higher index or less power"
        )
    return lens(brentq(excess, thinnest, min(enough, thickest), xtol=1e-10))
