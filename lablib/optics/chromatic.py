"""Colour: the Abbe number, and the fringe that comes with prism at a point of a lens.

A prism turns blue light more than red. How much more is the prism over the Abbe number: the transverse
chromatic aberration, seen as a coloured fringe. At the optical centre there is no prism and no fringe.
"""

import math
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.errors import LabError, require_between
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits
from lablib.optics.prescription import Prescription
from lablib.optics.prism import in_words, prism_at

_INDEX_LOW, _INDEX_HIGH = 1.0, 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fringe:
    """Prism at a point of a lens, and what its material makes of it.

    in_prism_d, up_prism_d: components base in and base up of the prism [prism D].
    abbe: Abbe number of the material.

    Raises LabError for an Abbe number no lens material has.
    """

    in_prism_d: float
    up_prism_d: float
    abbe: float

    def __post_init__(self) -> None:
        require_in_limits("Abbe number", self.abbe, "abbe")

    @property
    def prism_prism_d(self) -> float:
        """The prism at the point, whatever its base [prism D]."""
        return math.hypot(self.in_prism_d, self.up_prism_d)

    @property
    def amount_prism_d(self) -> float:
        """The transverse chromatic aberration P / V [prism D]."""
        return fringe_prism_d(self.prism_prism_d, self.abbe)

    @property
    def is_noticed(self) -> bool:
        """Whether it is above the usual value from which colour is noticed."""
        return round(self.amount_prism_d, 3) > fringe_noticed_prism_d()

    @property
    def words(self) -> str:
        """What the wearer may see, and on which side, as a sentence."""
        amount = f"{self.amount_prism_d:.2f} prism dioptre"
        if f"{self.amount_prism_d:.2f}" == "0.00":
            return "No colour here: there is next to no prism at this point."
        seen = "colour is noticed by many" if self.is_noticed else "colour is hardly noticed"
        base = _main_base(self.in_prism_d, self.up_prism_d)
        opposite = {"in": "temporal", "out": "nasal", "up": "lower", "down": "upper"}[base]
        return (
            f"{amount}: {seen}. Prism {in_words(self.in_prism_d, self.up_prism_d)}: a white thing on dark "
            f"ground has its blue rim on the {opposite} side, away from the base, and its red one opposite."
        )

    def width_mm(self, distance_mm: float) -> float:
        """Return how wide the fringe is on things so far away [mm]: 1 prism dioptre is 1 cm a metre.

        distance_mm: from the lens [mm], above 0.

        Raises LabError for a distance that is not above 0 or beyond 100 m.
        """
        far = require_between(
            "distance of the fringe", distance_mm, low=0.0, high=100_000.0, unit="mm", open_low=True
        )
        return self.amount_prism_d * far / 100.0


def fringe_prism_d(prism_prism_d: float, abbe: float) -> float:
    """Return the transverse chromatic aberration of a prism, P / V [prism D].

    prism_prism_d: amount of prism [prism D], not minus.
    abbe: Abbe number.

    Raises LabError for a minus prism or an Abbe number no lens material has.
    Source: A. Bhootra, Ophthalmic Lenses, p. 117.
    """
    prism = require_between("prism at the point", prism_prism_d, low=0.0, high=200.0, unit="prism dioptres")
    return prism / require_in_limits("Abbe number", abbe, "abbe")


def fringe_at(rx: Prescription, *, eye: Eye | str, in_mm: float, up_mm: float, abbe: float) -> Fringe:
    """Return the fringe at a point of a lens.

    rx: the power for distance, sphere, cylinder and axis.
    eye: the eye it is for.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].
    abbe: Abbe number of the material.

    Raises LabError as `prism_at` does, and for an Abbe number no lens material has.
    """
    in_prism, up_prism = prism_at(rx, eye=eye, in_mm=in_mm, up_mm=up_mm)
    return Fringe(in_prism_d=in_prism, up_prism_d=up_prism, abbe=abbe)


def fringe_noticed_prism_d() -> float:
    """Return the fringe above which colour begins to be noticed, a usual value [prism D]."""
    return read_table("lablib.optics", "chromatic.toml")["fringe_noticed"]["value"]


def fringe_noticed_source() -> str:
    """Return where that value comes from, as a learner reads it."""
    return read_table("lablib.optics", "chromatic.toml")["fringe_noticed"]["source"]


def abbe_number(*, n_f: float, n_d: float, n_c: float) -> float:
    """Return the Abbe number from three indices, (n_d - 1) / (n_F - n_C).

    n_f, n_d, n_c: indices for blue, yellow and red light, the lines F, d and C.

    Raises LabError for an index out of range, or unless blue is bent most and red least.
    Source: ISO 13666 (from memory); checked against the Dictionary of Optometry.
    """
    for name, value in (("n_F", n_f), ("n_d", n_d), ("n_C", n_c)):
        require_between(f"index {name}", value, low=_INDEX_LOW, high=_INDEX_HIGH, open_low=True)
    if not n_f > n_d > n_c:
        raise LabError(
            f"indices F {n_f:g}, d {n_d:g}, C {n_c:g} are not in order: blue is bent most and red least, so "
            "give them from the greatest to the least"
        )
    return (n_d - 1.0) / (n_f - n_c)


def _main_base(in_prism_d: float, up_prism_d: float) -> str:
    """Which of in, out, up and down the base is nearest to."""
    if abs(in_prism_d) > abs(up_prism_d):
        return "in" if in_prism_d > 0.0 else "out"
    return "up" if up_prism_d > 0.0 else "down"
