"""What a higher index saves: the curve variation factor, the rule it gives, and the exact lens beside it."""

from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.errors import LabError
from lablib.optics.lens import Lens, lens_for, lens_with_least_thickness
from lablib.optics.limits import require_in_limits
from lablib.optics.prescription import Prescription

_WEAKEST_D = 0.25


def reference_index() -> float:
    """Return the index other materials are compared with, that of crown glass."""
    return _table()["reference"]["value"]


def curve_variation_factor(index: float) -> float:
    """Return how strongly curved a surface must be against one of crown glass, 0.523 / (n - 1).

    index: refractive index at the d line, not the rounded figure in a trade name.

    Raises LabError for an index no lens material has.
    Source: M. Jalie; n 1.700 gives 0.75.
    """
    return (reference_index() - 1.0) / (require_in_limits("index", index, "index") - 1.0)


def saving_by_rule(from_index: float, to_index: float) -> float:
    """Return the share by which curves get flatter from one index to a higher one, 1 - (n1 - 1) / (n2 - 1).

    from_index, to_index: refractive indices; minus where the second is the lower one.

    As a rule it stands for the saving in thickness too. Raises LabError for an index no lens material has.
    """
    return 1.0 - curve_variation_factor(to_index) / curve_variation_factor(from_index)


def index_class(index: float) -> str:
    """Return the class of an index in words, for example "high index".

    index: refractive index.

    Raises LabError for an index below the lowest class.
    Source: BS 7394-2.
    """
    n = require_in_limits("index", index, "index")
    rows = [row for row in _table()["class"].values() if row["from"] <= round(n, 6)]
    if not rows:
        raise LabError(
            f"index {n:g} lies below every class: the lowest begins at "
            f"{_table()['class']['normal']['from']:g}; check the index"
        )
    return rows[-1]["words"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Saving:
    """One power in two materials: what the rule promises and what the exact lenses give.

    low, high: the lens in the lower and in the higher index.
    low_mm, high_mm: its thickest place, edge of a minus lens or centre of a plus lens [mm].
    least_mm: its thinnest place, the same in both [mm].
    """

    low: Lens
    high: Lens
    low_mm: float
    high_mm: float
    least_mm: float

    @property
    def by_rule(self) -> float:
        """The saving the rule promises, a share from 0 to 1."""
        return saving_by_rule(self.low.index, self.high.index)

    @property
    def of_the_difference(self) -> float:
        """The share saved of what the lens is thicker than its thinnest place, exactly."""
        return 1.0 - (self.high_mm - self.least_mm) / (self.low_mm - self.least_mm)

    @property
    def of_the_whole(self) -> float:
        """The share saved of the thickest place: what a caliper and the wearer find."""
        return 1.0 - self.high_mm / self.low_mm


def saving(
    power_d: float,
    *,
    from_index: float,
    to_index: float,
    front_curve_d: float,
    least_mm: float,
    away_mm: float,
) -> Saving:
    """Return one spherical power in two materials, made with the same front power and least thickness.

    power_d: back vertex power, at least a quarter plus or minus [D].
    from_index, to_index: refractive indices.
    front_curve_d: front surface power in either material [D].
    least_mm: thickness at the thinnest place, the centre of a minus lens or the edge of a plus lens [mm].
    away_mm: the edge, from the optical centre [mm].

    Raises LabError for a power with nothing to save, and for a lens that cannot be.
    """
    if abs(power_d) < _WEAKEST_D:
        raise LabError(
            f"power {power_d:+.2f} D is too weak for a saving: give at least {_WEAKEST_D:g} D, plus or minus"
        )
    lenses = [
        _thin_lens(power_d, index, front_curve_d, least_mm, away_mm) for index in (from_index, to_index)
    ]
    thickest = [
        float(lens.thickness_mm(away_mm, 0.0)) if power_d < 0.0 else lens.centre_thickness_mm
        for lens in lenses
    ]
    return Saving(low=lenses[0], high=lenses[1], low_mm=thickest[0], high_mm=thickest[1], least_mm=least_mm)


def _thin_lens(power_d: float, index: float, front_curve_d: float, least_mm: float, away_mm: float) -> Lens:
    rx = Prescription(sphere_d=power_d)
    if power_d < 0.0:
        return lens_for(rx, index=index, front_curve_d=front_curve_d, centre_thickness_mm=least_mm)
    return lens_with_least_thickness(
        rx, index=index, front_curve_d=front_curve_d, least_mm=least_mm, x_mm=[away_mm], y_mm=[0.0]
    )


def _table() -> dict:
    return read_table("lablib.optics", "index_classes.toml")
