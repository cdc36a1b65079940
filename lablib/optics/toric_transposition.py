"""Toric transposition: a sphere and a cylinder as one toric surface and one spherical surface.

Powers are nominal: the surfaces of a thin lens simply add. What thickness does to them is in `lens`.
A power stands on the meridian along which it works; base is the flatter curve, cross the steeper.
"""

from dataclasses import dataclass

from lablib.errors import LabError
from lablib.optics.limits import require_in_limits
from lablib.optics.optical_cross import OpticalCross, at_right_angles_deg
from lablib.optics.power import without_noise, written_power
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True)
class ToricForm:
    """A lens by its nominal surface powers: one surface toric, the other a sphere.

    toric_side: "front" or "back".
    base_d, cross_d: flatter and steeper power of the toric surface [D].
    base_meridian_deg, cross_meridian_deg: the meridians they stand on [degrees], 90 apart.
    sphere_curve_d: power of the other surface [D].
    """

    toric_side: str
    base_d: float
    base_meridian_deg: float
    cross_d: float
    cross_meridian_deg: float
    sphere_curve_d: float

    def prescription(self, form: str = "minus") -> Prescription:
        """Return the nominal power of the lens, the sum of both surfaces.

        form: "minus" or "plus" cylinder.

        Raises LabError for another form.
        """
        return OpticalCross(
            first_d=without_noise(self.base_d + self.sphere_curve_d),
            first_meridian_deg=self.base_meridian_deg,
            second_d=without_noise(self.cross_d + self.sphere_curve_d),
            second_meridian_deg=self.cross_meridian_deg,
        ).prescription(form)

    def written(self) -> str:
        """Return both surfaces as they are spoken, with the meridians the toric powers stand on."""
        base, cross = (
            f"{written_power(power)} on {round(meridian) or 180:03d}"
            for power, meridian in (
                (self.base_d, self.base_meridian_deg),
                (self.cross_d, self.cross_meridian_deg),
            )
        )
        other = "back" if self.toric_side == "front" else "front"
        return (
            f"toric {self.toric_side}: base {base}, cross {cross}; "
            f"{other} sphere {written_power(self.sphere_curve_d)}"
        )


def toric_form(rx: Prescription, *, base_curve_d: float) -> ToricForm:
    """Return a lens with its cylinder on a toric surface of a given base curve.

    rx: the prescription, in either form.
    base_curve_d: base curve [D]; plus puts the toric surface on the front, minus on the back.

    The prescription is taken in the form whose cylinder has the sign of the base curve; the sphere curve is
    the sphere less the base curve, the cross curve the base curve and the cylinder.
    Raises LabError for a sphere, for a plano base curve, and for curves no lens has.
    Source: common practice; plain sum of thin surfaces.
    """
    base = require_in_limits("base curve", base_curve_d, "front_curve_d")
    if not base:
        raise LabError(
            "base curve 0 D has no side: a toric surface is put on the front with a plus base curve, on the "
            "back with a minus one; give the base curve with its sign"
        )
    if not rx.cylinder_d:
        raise LabError(f"prescription {rx} has no cylinder: a sphere needs no toric surface; give a cylinder")
    lens = rx.in_form("plus" if base > 0.0 else "minus")
    return ToricForm(
        toric_side="front" if base > 0.0 else "back",
        base_d=base,
        base_meridian_deg=lens.axis_deg,
        cross_d=_curve("cross curve", base + lens.cylinder_d),
        cross_meridian_deg=at_right_angles_deg(lens.axis_deg),
        sphere_curve_d=_curve("sphere curve", lens.sphere_d - base),
    )


def _curve(thing: str, power_d: float) -> float:
    return require_in_limits(thing, without_noise(power_d), "front_curve_d")
