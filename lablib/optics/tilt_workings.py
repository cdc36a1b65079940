"""A tilted lens and the order that makes up for it, as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

import math

from lablib.optics.prescription import Prescription
from lablib.optics.terms import direction_term, in_full, power_step, power_term
from lablib.optics.tilt import NEW_SPHERE, Tilt, compensated, sphere_factor, tilt_effect
from lablib.optics.tilt_axis_workings import obliquity_working, tilted_axis_working
from lablib.working import Term, Working

_BOTH_FORMS = "both forms are published; M. Jalie, The Principles of Ophthalmic Lenses (from memory)"


def tilt_effect_workings(
    sphere_d: float, *, tilt: Tilt, index: float, form: str = NEW_SPHERE
) -> tuple[Working, ...]:
    """Return what a tilted sphere does, worked: factor, sphere, cylinder and its axis.

    sphere_d: the lens, a sphere that is not 0 [D].
    tilt, index, form: as in `tilt_effect`, which also says what it raises.

    The cylinder has the sign of the sphere, with its axis along the line the lens is tilted about.
    """
    reached = _as_the_tilt_writes_it(
        tilt_effect(_sphere(sphere_d), tilt=tilt, index=index, form=form), sphere_d
    )
    oblique, angle, factor = _start(tilt, index)
    given = power_term("S", sphere_d, "sphere of the lens")
    sphere = power_step(
        "sphere with the tilt", "S'", "S * K", (given, factor.as_term()), reached.sphere_d, digits=3
    )
    taken_from = sphere.as_term() if form == NEW_SPHERE else given
    cylinder = power_step(
        "cylinder of the tilt",
        "C'",
        f"{taken_from.symbol} * tan(i)^2",
        (taken_from, angle),
        reached.cylinder_d,
        digits=3,
        source=_BOTH_FORMS,
    )
    return (*oblique, factor, sphere, cylinder, *tilted_axis_working(tilt, reached.axis_deg, on_lens=False))


def compensated_workings(sphere_d: float, *, tilt: Tilt, index: float) -> tuple[Working, ...]:
    """Return what to order so that a tilted lens does what a sphere was prescribed to do, worked.

    sphere_d: what the eye is to have, a sphere that is not 0 [D].
    tilt, index: as in `compensated` in its first form, which also says what it raises.

    Across the line of the tilt the power is divided by 1 + tan^2 as well, so the cylinder ordered has the
    other sign than the sphere.
    """
    order = _as_the_tilt_writes_it(compensated(_sphere(sphere_d), tilt=tilt, index=index), -sphere_d)
    oblique, angle, factor = _start(tilt, index)
    wanted = power_term("S", sphere_d, "sphere prescribed")
    sphere = power_step(
        "sphere to order", "S_o", "S / K", (wanted, factor.as_term()), order.sphere_d, digits=3
    )
    across = power_step(
        "power to order across the line of the tilt",
        "F_o",
        "S / (K * (1 + tan(i)^2))",
        (wanted, factor.as_term(), angle),
        order.sphere_d + order.cylinder_d,
        digits=3,
    )
    cylinder = power_step(
        "cylinder to order",
        "C_o",
        "F_o - S_o",
        (across.as_term(), sphere.as_term()),
        order.cylinder_d,
        digits=3,
    )
    return (
        *oblique,
        factor,
        sphere,
        across,
        cylinder,
        *tilted_axis_working(tilt, order.axis_deg, on_lens=True),
    )


def sphere_factor_working(angle: Term, index: float) -> Working:
    """Return the factor of the sphere, worked.

    angle: of the tilt [degrees]; index: refractive index.

    Raises LabError for an index out of range.
    """
    return Working(
        what="factor of the sphere",
        symbol="K",
        formula=f"1 + sin({angle.symbol})^2 / (2 * n)",
        terms=(angle, in_full("n", index, "", least_digits=3, meaning="index")),
        value=sphere_factor(angle.value, index),
        digits=5,
        source=_BOTH_FORMS,
    )


def _start(tilt: Tilt, index: float) -> tuple[tuple[Working, ...], Term, Working]:
    oblique = obliquity_working(tilt)
    angle = (
        oblique[0].as_term()
        if oblique
        else direction_term("i", tilt.pantoscopic_deg + tilt.wrap_deg, "tilt of the lens")
    )
    return oblique, angle, sphere_factor_working(angle, index)


def _sphere(sphere_d: float) -> Prescription:
    return Prescription(sphere_d=sphere_d)


def _as_the_tilt_writes_it(lens: Prescription, sign_d: float) -> Prescription:
    """The form whose cylinder has a sign, so that its axis is the line of the tilt."""
    return lens.in_form("plus" if math.copysign(1.0, sign_d) > 0.0 else "minus")
