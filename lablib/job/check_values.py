"""A compensated lens inspected: order, maker's check value and reading side by side.

A lens made for a tilted or wrapped frame is not made to the powers ordered. Its maker says what the focimeter
should show, the check value, and the lens passes or fails against that.
"""

from dataclasses import dataclass

from lablib.inspection.axis import STANDARD, axis_limit_deg
from lablib.inspection.power import cylinder_limit_d, sphere_limit_d
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One quantity of a lens against what it should be.

    quantity: "sphere", "cylinder" or "axis".
    wanted, read: both values, in the unit, of the minus-cylinder form.
    limit: how far off it may be; None where the standard sets none.
    unit: "D" or "degrees".
    """

    quantity: str
    wanted: float
    read: float
    limit: float | None
    unit: str

    @property
    def off(self) -> float:
        """How far the reading is from what is wanted, of either sign; an axis the shorter way round."""
        apart = self.read - self.wanted
        return (apart + 90.0) % 180.0 - 90.0 if self.unit == "degrees" else apart

    @property
    def passes(self) -> bool:
        """Whether it is within its limit, compared after rounding to 0.01 D or 0.1 degree."""
        digits = 1 if self.unit == "degrees" else 2
        # A share of a power, such as 0.135 D, is not rounded: only what was read and written is.
        return self.limit is None or round(abs(self.off), digits) <= self.limit + 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedLens:
    """A compensated lens with its three columns.

    order: what was prescribed and ordered.
    check_value: what the maker says the focimeter shows where the lens is as it should be.
    reading: what it shows.
    progressive: whether it is a progressive, which has limits of its own.
    standard: name of the tolerance table.
    """

    order: Prescription
    check_value: Prescription
    reading: Prescription
    progressive: bool = False
    standard: str = STANDARD

    @property
    def against_check_value(self) -> tuple[Compared, ...]:
        """Sphere, cylinder and axis against the check value: these decide."""
        return self._against(self.check_value)

    @property
    def against_order(self) -> tuple[Compared, ...]:
        """The same against the powers ordered, which decide nothing: shown for the mistake it is."""
        return self._against(self.order)

    @property
    def passes(self) -> bool:
        """Whether the lens passes, against its check value."""
        return all(line.passes for line in self.against_check_value)

    @property
    def would_pass_the_order(self) -> bool:
        """Whether it would pass if it were read against the powers ordered."""
        return all(line.passes for line in self.against_order)

    def _against(self, wanted: Prescription) -> tuple[Compared, ...]:
        target, read = wanted.in_form("minus"), self.reading.in_form("minus")
        kind = {"progressive": self.progressive, "standard": self.standard}
        powers = (
            Compared(
                quantity="sphere",
                wanted=target.sphere_d,
                read=read.sphere_d,
                limit=sphere_limit_d(target.sphere_d, **kind),
                unit="D",
            ),
            Compared(
                quantity="cylinder",
                wanted=target.cylinder_d,
                read=read.cylinder_d,
                limit=cylinder_limit_d(target.cylinder_d, **kind),
                unit="D",
            ),
        )
        if not target.cylinder_d or not read.cylinder_d:
            return powers
        axis = Compared(
            quantity="axis",
            wanted=target.axis_deg,
            read=read.axis_deg,
            limit=axis_limit_deg(target.cylinder_d, standard=self.standard),
            unit="degrees",
        )
        return (*powers, axis)
