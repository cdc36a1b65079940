"""Optical crosses and crossed cylinders as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

import math

from lablib.optics.optical_cross import OpticalCross, crossed_cylinders
from lablib.optics.power import without_noise
from lablib.optics.prescription import Prescription
from lablib.optics.terms import (
    axis_term,
    direction_term,
    power_step,
    power_term,
    quarter_turn_step,
    sphere_and_cylinder,
)
from lablib.working import Term, Working

_JALIE = "M. Jalie, Lens Talk 2022"
_NONE = 1e-9


def cross_workings(rx: Prescription) -> tuple[Working, ...]:
    """Return the cross of a prescription, worked: power on the axis, the other meridian, power on it.

    rx: the prescription; for a sphere the one power both meridians have.
    """
    cross = OpticalCross.of(rx)
    sphere, cylinder = sphere_and_cylinder(rx)
    if not rx.cylinder_d:
        return (power_step("power on every meridian", "F1", "S", (sphere,), cross.first_d),)
    axis = axis_term(rx)
    return (
        power_step(f"power on the axis, {axis.printed}", "F1", "S", (sphere,), cross.first_d),
        quarter_turn_step("the meridian across the axis", "m2", axis, cross.second_meridian_deg),
        power_step("power across the axis", "F2", "S + C", (sphere, cylinder), cross.second_d),
    )


def cross_prescription_workings(cross: OpticalCross, *, form: str = "minus") -> tuple[Working, ...]:
    """Return the prescription of a cross, worked: sphere, cylinder, axis; of equal powers the sphere alone.

    cross: the cross; form: "minus" or "plus" cylinder.

    Raises LabError for another form.
    """
    rx = cross.prescription(form)
    first = (cross.first_d, cross.first_meridian_deg)
    second = (cross.second_d, cross.second_meridian_deg)
    is_first = not rx.cylinder_d or rx.axis_deg == cross.first_meridian_deg
    (base_d, axis_deg), (across_d, _) = (first, second) if is_first else (second, first)
    base = power_term("F_a", base_d, f"the {'more' if form == 'minus' else 'less'} plus of the two powers")
    sphere = power_step("sphere", "S", "F_a", (base,), rx.sphere_d)
    if not rx.cylinder_d:
        return (sphere,)
    across = power_term("F_b", across_d, "the other power")
    return (
        sphere,
        power_step("cylinder", "C", "F_b - F_a", (across, base), rx.cylinder_d),
        Working(
            what="axis: the meridian the sphere stands on",
            symbol="A",
            formula="m_a",
            terms=(direction_term("m_a", axis_deg, "meridian of the sphere's power"),),
            value=rx.axis_deg,
            unit="degrees",
            digits=direction_term("m_a", axis_deg, "").digits,
        ),
    )


def crossed_cylinders_workings(
    *, first_d: float, first_axis_deg: float, second_d: float, second_axis_deg: float
) -> tuple[Working, ...]:
    """Return the sum of two plano cylinders, worked; the last steps are sphere, cylinder and, if any, axis.

    first_d, first_axis_deg, second_d, second_axis_deg: as in `crossed_cylinders`, which also says what
        it raises.

    The form of the result is the one the formula leads to; `Prescription.in_form` gives the other.
    """
    total = crossed_cylinders(
        first_d=first_d, first_axis_deg=first_axis_deg, second_d=second_d, second_axis_deg=second_axis_deg
    )
    first, second = power_term("C1", first_d, "first cylinder"), power_term("C2", second_d, "second cylinder")
    start, end = (
        direction_term(f"A{one}", axis, f"axis of the {name} cylinder")
        for one, axis, name in ((1, first_axis_deg, "first"), (2, second_axis_deg, "second"))
    )
    apart = Working(
        what="angle from the first axis to the second",
        symbol="a",
        formula="A2 - A1",
        terms=(end, start),
        value=second_axis_deg - first_axis_deg,
        unit="degrees",
        digits=max(start.digits, end.digits),
    )
    turn = _turn(first, second, apart)
    rx = _in_the_form_of(total, first_axis_deg + turn.value)
    between = (first, second, apart.as_term(), turn.as_term())
    sphere = power_step(
        "sphere", "S", "C1 * (sin(t))^2 + C2 * (sin(a - t))^2", between, rx.sphere_d, digits=3, source=_JALIE
    )
    cylinder = power_step(
        "cylinder",
        "C",
        "C1 + C2 - 2 * S",
        (first, second, sphere.as_term()),
        rx.cylinder_d,
        digits=3,
        source=_JALIE,
    )
    steps = (apart, turn, sphere, cylinder)
    return (*steps, _axis(start, turn, rx)) if rx.cylinder_d else steps


def _turn(first: Term, second: Term, apart: Working) -> Working:
    """The turn from the first axis to an axis of the sum; both principal meridians satisfy the formula."""
    twice = math.radians(2.0 * apart.value)
    level = first.value + second.value * math.cos(twice)
    upright = second.value * math.sin(twice)
    formula, terms = "atan(C2 * sin(2 * a) / (C1 + C2 * cos(2 * a))) / 2", (first, second, apart.as_term())
    if abs(level) < _NONE:
        # The tangent has no value there: the sum lies halfway, or there is no cylinder left to turn.
        formula, terms, value = ("0", (), 0.0) if abs(upright) < _NONE else ("45", (), 45.0)
    else:
        value = math.degrees(math.atan(upright / level)) / 2.0
    return Working(
        what="angle from the first axis to the axis of the sum",
        symbol="t",
        formula=formula,
        terms=terms,
        value=without_noise(value),
        unit="degrees",
        digits=3,
        source=_JALIE,
    )


def _in_the_form_of(total: Prescription, axis_deg: float) -> Prescription:
    """Return the form of the sum whose axis is the one the formula led to."""
    if not total.cylinder_d:
        return total
    off = math.sin(math.radians(total.axis_deg - axis_deg))
    return total if abs(off) < 0.5 else total.transposed()


def _axis(start: Term, turn: Working, rx: Prescription) -> Working:
    formula, reached = "A1 + t", start.value + turn.value
    if without_noise(reached) <= 0.0:
        formula = "A1 + t + 180"
    elif without_noise(reached) > 180.0:
        formula = "A1 + t - 180"
    return Working(
        what="axis",
        symbol="A",
        formula=formula,
        terms=(start, turn.as_term()),
        value=rx.axis_deg,
        unit="degrees",
        digits=3,
        source=_JALIE,
    )
