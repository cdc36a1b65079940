"""Contact shapes of block and tip: what they carry in torque, in closed form.

For a contact of area A with W = integral of r dA, a joint of even shear strength tau that slips all over
carries the torque tau W, and even pressure under the force N carries mu N W / A.
"""

import math
from dataclasses import dataclass
from typing import Protocol

import numpy as np
from scipy.special import ellipe

from lablib.bench.parameter import table
from lablib.errors import require_between, require_one_of

_LARGEST_MM = 60.0


class Contact(Protocol):
    """A flat contact about the chuck axis."""

    @property
    def area_mm2(self) -> float:
        """Area A [mm2]."""

    @property
    def w_mm3(self) -> float:
        """Integral of the distance from the axis over the area, W [mm3]."""


def r_eff_mm(contact: Contact) -> float:
    """Return the radius at which the whole contact would carry the same torque, W / A [mm].

    contact: the shape.
    """
    return contact.w_mm3 / contact.area_mm2


def _require_size(shape: object, *names: str) -> None:
    for name in names:
        thing = f"{type(shape).__name__.lower()} {name}"
        require_between(thing, getattr(shape, name), low=0.0, high=_LARGEST_MM, unit="mm", open_low=True)


@dataclass(frozen=True, slots=True, kw_only=True)
class Annulus:
    """A ring, or a disc where there is no hole.

    radius_mm: outer radius [mm].
    hole_mm: radius of the hole [mm].

    Raises LabError for a radius that is not above 0, or a hole as large as the ring.
    """

    radius_mm: float
    hole_mm: float = 0.0

    def __post_init__(self) -> None:
        _require_size(self, "radius_mm")
        require_between("annulus hole_mm", self.hole_mm, low=0.0, high=0.99 * self.radius_mm, unit="mm")

    @property
    def area_mm2(self) -> float:
        """Area [mm2]."""
        return math.pi * (self.radius_mm**2 - self.hole_mm**2)

    @property
    def w_mm3(self) -> float:
        """W = 2 pi (a^3 - b^3) / 3 [mm3]."""
        return 2.0 * math.pi * (self.radius_mm**3 - self.hole_mm**3) / 3.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Ellipse:
    """An ellipse, its half width along x and its half height along y.

    half_width_mm, half_height_mm: [mm].

    Raises LabError for a half axis that is not above 0.
    """

    half_width_mm: float
    half_height_mm: float

    def __post_init__(self) -> None:
        _require_size(self, "half_width_mm", "half_height_mm")

    @property
    def area_mm2(self) -> float:
        """Area [mm2]."""
        return math.pi * self.half_width_mm * self.half_height_mm

    @property
    def perimeter_mm(self) -> float:
        """Perimeter, by the complete elliptic integral [mm]."""
        longer = max(self.half_width_mm, self.half_height_mm)
        shorter = min(self.half_width_mm, self.half_height_mm)
        return 4.0 * longer * float(ellipe(1.0 - (shorter / longer) ** 2))

    @property
    def w_mm3(self) -> float:
        """W = (a b / 3) x perimeter [mm3]."""
        return self.half_width_mm * self.half_height_mm / 3.0 * self.perimeter_mm

    def reach_mm(self, angle_rad: np.ndarray) -> np.ndarray:
        """Return the distance from the axis to the rim in each direction [mm].

        angle_rad: shape (N,), anticlockwise from +x [radians].
        """
        across = np.cos(angle_rad) / self.half_width_mm
        return 1.0 / np.hypot(across, np.sin(angle_rad) / self.half_height_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rectangle:
    """A rectangle.

    half_width_mm, half_height_mm: half sides [mm].

    Raises LabError for a half side that is not above 0.
    """

    half_width_mm: float
    half_height_mm: float

    def __post_init__(self) -> None:
        _require_size(self, "half_width_mm", "half_height_mm")

    @property
    def area_mm2(self) -> float:
        """Area [mm2]."""
        return 4.0 * self.half_width_mm * self.half_height_mm

    @property
    def w_mm3(self) -> float:
        """W = (4/3) p q D + (2/3) p^3 ln((q + D) / p) + (2/3) q^3 ln((p + D) / q) [mm3]."""
        p, q = self.half_width_mm, self.half_height_mm
        diagonal = math.hypot(p, q)
        corners = p**3 * math.log((q + diagonal) / p) + q**3 * math.log((p + diagonal) / q)
        return 4.0 / 3.0 * p * q * diagonal + 2.0 / 3.0 * corners


def block_words() -> dict[str, str]:
    """Return the blocks by name, and what each is in words."""
    return {name: row["words"] for name, row in table()["block"].items()}


def block_contact(name: str) -> Ellipse:
    """Return the shape in which a block holds the lens.

    name: "round" or "half-eye".

    Raises LabError with the blocks there are.
    """
    row = table()["block"][require_one_of("block", name, tuple(table()["block"]))]
    return Ellipse(half_width_mm=row["half_width_mm"], half_height_mm=row["half_height_mm"])
