"""What the finished lens weighs and measures: edge all round, volume, weight, sections to draw.

A `FinishedLens` is a lens cut to an outline with its optical centre at a place in the frame. Points round
the outline and everything measured there are numpy arrays in the outline's own order.
"""

import math
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from lablib.errors import LabError
from lablib.optics.frame import Outline, unit_circle
from lablib.optics.lens import Lens

# Gauss-Legendre nodes from the centre out: exact for the smooth shape a lens has, to the last digit shown.
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(12)
_SHARE, _SHARE_WEIGHT = (_NODES + 1.0) / 2.0, _WEIGHTS / 2.0


@dataclass(frozen=True, kw_only=True, eq=False)
class FinishedLens:
    """A lens cut to an outline.

    lens: the solid.
    outline: seen from the front, about the boxed centre.
    centre_x_mm, centre_y_mm: the optical centre, from the boxed centre [mm].

    Raises LabError where the lens runs out inside the outline, and SurfaceTooSteep where a surface does
    not reach it.
    """

    lens: Lens
    outline: Outline
    centre_x_mm: float
    centre_y_mm: float
    edge_mm: np.ndarray = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "edge_mm", self.thickness_mm(self.outline.x_mm, self.outline.y_mm))
        least = min(float(self.edge_mm.min()), float(self._inside_mm.min()))
        if least <= 0.0:
            raise LabError(
                f"lens runs out: with {self.lens.centre_thickness_mm:.2f} mm at the centre its thinnest "
                f"place inside the outline would have {least:.2f} mm: raise the centre thickness by more "
                f"than {-least:.2f} mm, or give the least edge"
            )

    def thickness_mm(self, x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
        """Return the thickness at points given from the boxed centre [mm].

        x_mm, y_mm: points [mm], of one shape.
        """
        return self.lens.thickness_mm(x_mm - self.centre_x_mm, y_mm - self.centre_y_mm)

    @cached_property
    def _inside_mm(self) -> np.ndarray:
        """Thickness at the integration nodes, shape (N, 12): N directions, from the boxed centre out."""
        reach = np.outer(self.outline.radius_mm, _SHARE)
        cosine, sine = unit_circle(self.outline.radius_mm.size)
        return self.thickness_mm(reach * cosine[:, None], reach * sine[:, None])

    @cached_property
    def volume_mm3(self) -> float:
        """Volume inside the outline, by integration over it [mm3]."""
        radius = self.outline.radius_mm
        per_direction = radius**2 * (self._inside_mm @ (_SHARE_WEIGHT * _SHARE))
        return float(per_direction.sum()) * 2.0 * math.pi / radius.size

    @property
    def least_mm(self) -> float:
        """The thinnest place of the finished lens, edge or inside [mm]."""
        return min(float(self.edge_mm.min()), float(self._inside_mm.min()), self.lens.centre_thickness_mm)

    def weight_g(self, density: float) -> float:
        """Return the weight [g].

        density: of the material [g/cm3].
        """
        return weight_of_volume_g(self.volume_mm3, density)

    def edge_at_mm(self, angle_deg: float) -> float:
        """Return the edge thickness in a direction from the boxed centre [mm].

        angle_deg: anticlockwise from +x [degrees]; between two points the nearer one counts.
        """
        points = self.edge_mm.size
        return float(self.edge_mm[round(angle_deg / 360.0 * points) % points])


def weight_of_volume_g(volume_mm3: float, density: float) -> float:
    """Return the weight of a volume [g].

    volume_mm3: [mm3]; density: of the material [g/cm3].
    """
    return volume_mm3 * density / 1000.0
