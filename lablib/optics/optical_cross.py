"""The optical cross: the powers of a lens on its two principal meridians, and crossed cylinders.

A power stands on the meridian along which it works. The sphere of a prescription works along its axis,
sphere and cylinder together at right angles to it: a cylinder has no power along its own axis.
"""

from dataclasses import dataclass

from lablib.errors import LabError, require_between
from lablib.optics.power import (
    POWER_LIMIT_D,
    require_power,
    without_noise,
    wrapped_axis_deg,
    written_power,
)
from lablib.optics.prescription import Prescription, combine


@dataclass(frozen=True, slots=True, kw_only=True)
class OpticalCross:
    """Powers on two meridians at right angles.

    first_d, second_d: powers [D], from -40 to +40.
    first_meridian_deg, second_meridian_deg: the meridians they stand on [degrees], above 0 and up to 180,
        90 apart.

    Raises LabError for a value out of range and for meridians that are not 90 apart.
    Source: common practice.
    """

    first_d: float
    first_meridian_deg: float
    second_d: float
    second_meridian_deg: float

    def __post_init__(self) -> None:
        for which in ("first", "second"):
            meridian = require_between(
                f"{which} meridian",
                getattr(self, f"{which}_meridian_deg"),
                low=0.0,
                high=180.0,
                unit="degrees; 0 is written 180",
                open_low=True,
            )
            power = require_power(f"power on {meridian:g}", getattr(self, f"{which}_d"), POWER_LIMIT_D)
            object.__setattr__(self, f"{which}_meridian_deg", meridian)
            object.__setattr__(self, f"{which}_d", power)
        first, second = self.first_meridian_deg, self.second_meridian_deg
        apart = without_noise(abs(first - second))
        if apart != 90.0:
            raise LabError(
                f"meridians {first:g} and {second:g} are {apart:g} degrees apart: the meridians of a cross "
                f"stand 90 apart; give {first:g} with {at_right_angles_deg(first):g}"
            )

    @classmethod
    def of(cls, rx: Prescription) -> "OpticalCross":
        """Return the cross of a prescription: first the sphere on the axis, then the power across it.

        rx: the prescription, in either form; a sphere has the same power on 180 and on 90.

        Source: common practice; the power in a meridian at 0 and 90 degrees from the axis.
        """
        axis = rx.axis_deg or 180.0
        return cls(
            first_d=rx.sphere_d,
            first_meridian_deg=axis,
            second_d=without_noise(rx.sphere_d + rx.cylinder_d),
            second_meridian_deg=at_right_angles_deg(axis),
        )

    def prescription(self, form: str = "minus") -> Prescription:
        """Return the prescription of the cross.

        form: "minus" or "plus" cylinder; the sphere is the power on the meridian that becomes the axis.

        Raises LabError for another form or a cylinder out of range.
        """
        lens = Prescription(
            sphere_d=self.first_d,
            cylinder_d=without_noise(self.second_d - self.first_d),
            axis_deg=self.first_meridian_deg,
        )
        return lens.in_form(form)

    def cylinders(self) -> tuple[Prescription, Prescription]:
        """Return the two plano cylinders that make the cross, each with its axis on the other's meridian.

        Raises LabError for a power that no cylinder has.
        """
        return (
            Prescription(sphere_d=0.0, cylinder_d=self.first_d, axis_deg=self.second_meridian_deg),
            Prescription(sphere_d=0.0, cylinder_d=self.second_d, axis_deg=self.first_meridian_deg),
        )

    def written(self) -> str:
        """Return the cross as it is spoken: "+2.00 on 020, +0.50 on 110"."""
        return ", ".join(
            f"{written_power(power)} on {round(meridian) or 180:03d}"
            for power, meridian in (
                (self.first_d, self.first_meridian_deg),
                (self.second_d, self.second_meridian_deg),
            )
        )


def at_right_angles_deg(angle_deg: float) -> float:
    """Return the axis or meridian at right angles to another, above 0 and up to 180 [degrees].

    angle_deg: the other [degrees].
    """
    return wrapped_axis_deg(angle_deg + 90.0)


def crossed_cylinders(
    *, first_d: float, first_axis_deg: float, second_d: float, second_axis_deg: float
) -> Prescription:
    """Return the one lens that does what two thin plano cylinders in contact do, in minus-cylinder form.

    first_d, second_d: the cylinders [D]; first_axis_deg, second_axis_deg: their axes [degrees].

    Raises LabError for a cylinder or an axis out of range.
    Source: the sum of two lenses, `prescription.combine`.
    """
    return combine(
        Prescription(sphere_d=0.0, cylinder_d=first_d, axis_deg=first_axis_deg),
        Prescription(sphere_d=0.0, cylinder_d=second_d, axis_deg=second_axis_deg),
    )
