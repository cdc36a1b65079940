"""The size of a lens is counted round its edge: circumference, what a change of width does to it, touch-ups.

Taking the same off all round moves the outline to a parallel curve. On every outline without bays that
changes the circumference by 2 pi for each millimetre of distance, whatever the shape (Steiner), and the
width by 2: so by pi for each millimetre of width.
"""

import math
from dataclasses import dataclass

from lablib.bench.edges import RIMS, edge_default, edge_number
from lablib.errors import LabError, require_between, require_one_of

# Lenses anybody cuts [mm].
_CIRCUMFERENCE_MM = (60.0, 280.0)
_CHANGE_MM = 30.0
_DECIMALS = 6
LARGE, FITS, SMALL = "too large", "fits", "too small"


def circumference_change_mm(width_change_mm: float) -> float:
    """Return by how much the circumference changes when a lens gets wider by so much all round [mm].

    width_change_mm: change of A, and of B with it [mm].

    Source: Steiner's formula for parallel curves: pi times the change of width.
    """
    return math.pi * require_between(
        "change of width", width_change_mm, low=-_CHANGE_MM, high=_CHANGE_MM, unit="mm"
    )


def width_change_mm(change_of_circumference_mm: float) -> float:
    """Return by how much a lens gets wider when its circumference changes by so much [mm].

    change_of_circumference_mm: [mm]; 0.5 gives 0.16.
    """
    return (
        require_between(
            "change of circumference", change_of_circumference_mm, low=-_CHANGE_MM, high=_CHANGE_MM, unit="mm"
        )
        / math.pi
    )


def visible_circumference_mm(groove_mm: float, *, depth_mm: float | None = None) -> float:
    """Return how long the visible inner rim is where its groove's bottom is so long [mm].

    groove_mm: circumference at the bottom of the groove [mm].
    depth_mm: of the groove [mm]; None for the usual one.

    A lens cut to what is seen is too small by the difference: the size is that of the groove's bottom.

    Raises LabError for a number no rim has.
    """
    depth = edge_number("rim_groove_depth_mm", depth_mm)
    return _circumference("circumference at the groove's bottom", groove_mm) - 2.0 * math.pi * depth


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeFit:
    """A lens compared with its rim by what both are round.

    lens_mm: circumference of the lens, at the tip of its bevel [mm].
    groove_mm: circumference of the rim, at the bottom of its groove [mm].
    rim: "plastic" or "metal".

    Raises LabError for a number no lens has, or another rim.
    """

    lens_mm: float
    groove_mm: float
    rim: str

    def __post_init__(self) -> None:
        _circumference("circumference of the lens", self.lens_mm)
        _circumference("circumference at the groove's bottom", self.groove_mm)
        require_one_of("rim", self.rim, RIMS)

    @property
    def wanted_full_mm(self) -> float:
        """How much longer the lens should be than the groove: a little in plastic, nothing in metal [mm]."""
        return edge_default(f"full_{self.rim}_mm")

    @property
    def aim_mm(self) -> float:
        """The circumference aimed at [mm]."""
        return self.groove_mm + self.wanted_full_mm

    @property
    def over_mm(self) -> float:
        """How much longer the lens is than what is aimed at [mm]."""
        return round(self.lens_mm - self.aim_mm, _DECIMALS) + 0.0

    @property
    def verdict(self) -> str:
        """ "too large", "fits" or "too small"."""
        within = edge_default("size_within_mm")
        if self.over_mm > within:
            return LARGE
        return FITS if self.over_mm >= -within else SMALL

    @property
    def take_off_mm(self) -> float:
        """By how much the size setting goes down for the touch-up, in width [mm].

        Whole steps of the setting, rounded down: what is off cannot be put on again.

        Raises LabError for a lens that is too small: no touch-up makes it larger.
        """
        if self.verdict == SMALL:
            raise LabError(
                f"lens of {self.lens_mm:.2f} mm round is {-self.over_mm:.2f} mm too small for this "
                f"{self.rim} rim: nothing puts material on again: check the trace, and cut another lens"
            )
        if self.verdict == FITS:
            return 0.0
        step = edge_default("size_step_mm")
        return round(math.floor(width_change_mm(self.over_mm) / step + 10.0**-_DECIMALS) * step, _DECIMALS)

    def after(self, take_off_mm: float) -> "SizeFit":
        """Return the fit once so much has been taken off.

        take_off_mm: in width [mm], 0 or more.

        Raises LabError below 0.
        """
        off = require_between("width taken off", take_off_mm, low=0.0, high=_CHANGE_MM, unit="mm")
        less = circumference_change_mm(off)
        return SizeFit(lens_mm=self.lens_mm - less, groove_mm=self.groove_mm, rim=self.rim)


def _circumference(thing: str, value: float) -> float:
    low, high = _CIRCUMFERENCE_MM
    return require_between(thing, value, low=low, high=high, unit="mm")
