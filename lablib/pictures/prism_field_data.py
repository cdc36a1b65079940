"""What the picture of a lens's prism shows."""

from dataclasses import dataclass

from lablib.optics.base_notation import BaseNotations
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism_field import PrismField


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PrismThere:
    """The prism of a lens all over, and at the point an eye looks through.

    eye: the eye; rx: the power of its lens.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].
    in_prism_d, up_prism_d: the prism there, base in and base up [prism D].
    notations: the same in every notation.
    field: the prism at points all over the lens.
    reach_prism_d: the greatest prism at any point that can be looked through [prism D].
    """

    eye: Eye
    rx: Prescription
    in_mm: float
    up_mm: float
    in_prism_d: float
    up_prism_d: float
    notations: BaseNotations
    field: PrismField
    reach_prism_d: float

    @property
    def point(self) -> complex:
        """The point as drawn, facing the wearer, x + iy [mm]."""
        return complex(self.eye.nasal_sign * self.in_mm, self.up_mm)

    @property
    def base(self) -> complex:
        """The prism at the point as an arrow to draw, x + iy [prism D]."""
        return complex(self.eye.nasal_sign * self.in_prism_d, self.up_prism_d)
