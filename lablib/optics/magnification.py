"""Spectacle magnification: how much larger the eye's image is with the lens than without it.

It is the product of a shape factor, from front curve, thickness and index, and a power factor, from back
vertex power and the distance from the lens to the entrance pupil. That distance is the vertex distance and
the way on to the pupil behind the cornea.
"""

from dataclasses import dataclass

from lablib.errors import LabError
from lablib.optics.limits import require_in_limits
from lablib.optics.power import POWER_LIMIT_D, require_power
from lablib.optics.practice import usual_or
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True)
class Magnification:
    """Spectacle magnification along one meridian, by its two factors.

    shape_factor: what front curve, thickness and index make.
    power_factor: what power and distance make.
    """

    shape_factor: float
    power_factor: float

    @property
    def factor(self) -> float:
        """Shape factor times power factor."""
        return self.shape_factor * self.power_factor

    @property
    def percent(self) -> float:
        """How much larger the image is [%], minus where it is smaller."""
        return (self.factor - 1.0) * 100.0


def shape_factor(*, front_curve_d: float, centre_thickness_mm: float, index: float) -> float:
    """Return the shape factor, 1 / (1 - t F1 / n).

    front_curve_d: front surface power [D].
    centre_thickness_mm: [mm].
    index: refractive index.

    Raises LabError for a value out of range, and for a lens so thick that light meets inside it.
    Source: M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """
    front = require_in_limits("front curve", front_curve_d, "front_curve_d")
    thickness = require_in_limits("centre thickness", centre_thickness_mm, "centre_thickness_mm")
    left = 1.0 - thickness / 1000.0 * front / require_in_limits("index", index, "index")
    if left <= 0.0:
        raise LabError(
            f"centre thickness {thickness:g} mm reaches the focus of the front curve {front:g} D: give a "
            "thinner lens or a flatter front curve"
        )
    return 1.0 / left


def pupil_distance_mm(vertex_distance_mm: float, *, pupil_depth_mm: float | None = None) -> float:
    """Return the distance from the back vertex to the entrance pupil [mm].

    vertex_distance_mm: from the back vertex to the cornea [mm].
    pupil_depth_mm: from the cornea to the entrance pupil [mm]; None for the usual value.

    Raises LabError for a distance out of range.
    Source: common value of the depth, from memory (practice.toml).
    """
    vertex = require_in_limits("vertex distance", vertex_distance_mm, "vertex_distance_mm")
    return vertex + usual_or("pupil_depth", "entrance pupil behind the cornea", pupil_depth_mm)


def power_factor(power_d: float, *, vertex_distance_mm: float, pupil_depth_mm: float | None = None) -> float:
    """Return the power factor, 1 / (1 - a F), a from the lens to the entrance pupil.

    power_d: back vertex power [D].
    vertex_distance_mm, pupil_depth_mm: as in `pupil_distance_mm`.

    Raises LabError for a value out of range, and for a lens whose focus lies before the pupil.
    Source: M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """
    power = require_power("back vertex power", power_d, POWER_LIMIT_D)
    away = pupil_distance_mm(vertex_distance_mm, pupil_depth_mm=pupil_depth_mm)
    left = 1.0 - away / 1000.0 * power
    if left <= 0.0:
        raise LabError(
            f"back vertex power {power:+.2f} D brings light to a focus before the pupil, {away:g} mm behind "
            "the lens: give less power or a shorter vertex distance"
        )
    return 1.0 / left


def spectacle_magnification(
    rx: Prescription,
    *,
    front_curve_d: float,
    centre_thickness_mm: float,
    index: float,
    vertex_distance_mm: float,
    pupil_depth_mm: float | None = None,
) -> tuple[Magnification, Magnification]:
    """Return the magnification along the axis and across it; equal for a sphere.

    rx: back vertex power; the front surface is a sphere, so both meridians share the shape factor.
    front_curve_d, centre_thickness_mm, index: as in `shape_factor`.
    vertex_distance_mm, pupil_depth_mm: as in `pupil_distance_mm`.

    Raises LabError as `shape_factor` and `power_factor` do.
    Source: M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """
    shape = shape_factor(front_curve_d=front_curve_d, centre_thickness_mm=centre_thickness_mm, index=index)
    along, across = (
        Magnification(
            shape_factor=shape,
            power_factor=power_factor(
                power, vertex_distance_mm=vertex_distance_mm, pupil_depth_mm=pupil_depth_mm
            ),
        )
        for power in (rx.sphere_d, rx.sphere_d + rx.cylinder_d)
    )
    return along, across
