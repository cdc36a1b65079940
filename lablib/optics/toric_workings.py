"""Toric transposition as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.power_workings import transposition_workings
from lablib.optics.prescription import Prescription
from lablib.optics.terms import axis_term, power_step, power_term, quarter_turn_step, sphere_and_cylinder
from lablib.optics.toric_transposition import toric_form
from lablib.working import Term, Working

_PRACTICE = "common practice; nominal powers of thin surfaces add"


def toric_form_workings(rx: Prescription, *, base_curve_d: float) -> tuple[Working, ...]:
    """Return the curves of a toric lens, worked.

    rx, base_curve_d: as in `toric_form`, which also says what it raises.

    First the other form where the cylinder has not the sign of the base curve; then sphere curve, cross
    curve and the meridian the cross curve stands on. The base curve stands on the axis.
    """
    toric = toric_form(rx, base_curve_d=base_curve_d)
    turned = rx.cylinder_d * toric.base_d < 0.0
    steps = transposition_workings(rx) if turned else ()
    sphere, cylinder, axis = _parts(rx, steps)
    base = power_term("B", toric.base_d, f"base curve, on the {toric.toric_side}")
    other = "back" if toric.toric_side == "front" else "front"
    return (
        *steps,
        power_step(
            f"sphere curve, on the {other}",
            "F_s",
            f"{sphere.symbol} - B",
            (sphere, base),
            toric.sphere_curve_d,
            source=_PRACTICE,
        ),
        power_step(
            f"cross curve, on the {toric.toric_side}",
            "F_c",
            f"B + {cylinder.symbol}",
            (base, cylinder),
            toric.cross_d,
            source=_PRACTICE,
        ),
        quarter_turn_step("meridian of the cross curve", "m_c", axis, toric.cross_meridian_deg),
    )


def _parts(rx: Prescription, steps: tuple[Working, ...]) -> tuple[Term, ...]:
    """Sphere, cylinder and axis in the form that is used."""
    if steps:
        return tuple(step.as_term() for step in steps)
    return (*sphere_and_cylinder(rx), axis_term(rx))
