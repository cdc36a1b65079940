"""The two surfaces of a lens where block and back tip press on it, as numbers."""

import math
from dataclasses import dataclass, fields

import numpy as np

from lablib.errors import require_finite

# Block curves and lens measures are engraved for this index, whatever the lens is made of.
ENGRAVED_INDEX = 1.530


def engraved_curvature_per_mm(curve_d: float) -> float:
    """Return the curvature of a block or lens front by its curve [1/mm].

    curve_d: curve [D], engraved for index 1.530.
    """
    return curve_d / (1000.0 * (ENGRAVED_INDEX - 1.0))


def engraved_curve_d(curvature_per_mm: float) -> float:
    """Return the curve that belongs to a curvature, for index 1.530 [D].

    curvature_per_mm: [1/mm].
    """
    return 1000.0 * (ENGRAVED_INDEX - 1.0) * curvature_per_mm


def sphere_sag_mm(curvature_per_mm: np.ndarray | float, away_mm: np.ndarray | float) -> np.ndarray:
    """Return how far a sphere has fallen off, exactly; not-a-number beyond its radius [mm].

    curvature_per_mm: [1/mm], positive with the centre on the eye's side; away_mm: from its vertex [mm].
    """
    with np.errstate(invalid="ignore"):
        rise = np.sqrt(1.0 - (curvature_per_mm * np.asarray(away_mm)) ** 2)
    return curvature_per_mm * np.asarray(away_mm) ** 2 / (1.0 + rise)


@dataclass(frozen=True, slots=True, kw_only=True)
class LensFaces:
    """Front and back of a lens at the chuck axis, seen from the front.

    front_flat_per_mm, front_steep_per_mm, back_flat_per_mm, back_steep_per_mm: curvatures of the principal
        meridians [1/mm], positive when the centre lies on the eye's side: a front is positive where it
        bulges, a back where it is hollow.
    front_flat_deg, back_flat_deg: direction of the flatter meridian [degrees], anticlockwise from +x.
    tilt_x, tilt_y: how much the back recedes towards the eye per millimetre along +x and +y, against the
        front there, which the block sits square on [mm/mm].

    Raises LabError for a number that is not finite.
    """

    front_flat_per_mm: float
    front_steep_per_mm: float
    back_flat_per_mm: float
    back_steep_per_mm: float
    front_flat_deg: float = 0.0
    back_flat_deg: float = 0.0
    tilt_x: float = 0.0
    tilt_y: float = 0.0

    def __post_init__(self) -> None:
        for one in fields(self):
            require_finite(f"lens face: {one.name}", getattr(self, one.name))

    @classmethod
    def spheres(cls, *, front_d: float, back_d: float) -> "LensFaces":
        """Return two spheres square on the axis.

        front_d, back_d: curves a lens measure shows, for index 1.530 [D]; a hollow back is minus.
        """
        front, back = engraved_curvature_per_mm(front_d), -engraved_curvature_per_mm(back_d)
        return cls(
            front_flat_per_mm=front, front_steep_per_mm=front, back_flat_per_mm=back, back_steep_per_mm=back
        )

    @property
    def tilt_deg(self) -> float:
        """Angle between back and front at the chuck axis [degrees]."""
        return math.degrees(math.atan(math.hypot(self.tilt_x, self.tilt_y)))

    def front_mm(self, x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
        """Return how far the front has fallen off at points about the axis [mm].

        x_mm, y_mm: [mm]. In each direction the arc of that meridian's curvature, exactly.
        """
        flat, steep = self.front_flat_per_mm, self.front_steep_per_mm
        return _sag_mm(x_mm, y_mm, flat, steep, self.front_flat_deg)

    def back_mm(self, x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
        """Return how far the back has receded towards the eye at points about the axis, tilt and all [mm].

        x_mm, y_mm: [mm].
        """
        flat, steep = self.back_flat_per_mm, self.back_steep_per_mm
        curved = _sag_mm(x_mm, y_mm, flat, steep, self.back_flat_deg)
        return curved + self.tilt_x * x_mm + self.tilt_y * y_mm


def _sag_mm(x: np.ndarray, y: np.ndarray, flat: float, steep: float, flat_deg: float) -> np.ndarray:
    """The normal section in each direction (Euler), as an arc."""
    along = np.arctan2(y, x) - math.radians(flat_deg)
    return sphere_sag_mm(flat * np.cos(along) ** 2 + steep * np.sin(along) ** 2, np.hypot(x, y))
