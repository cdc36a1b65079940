"""Prism as workings to follow by hand: resolved, put together, by decentration, and in the thickness.

Every value is the numeric function's; only the steps are written here.
"""

import math

from lablib.optics.eye import Eye
from lablib.optics.power import without_noise
from lablib.optics.power_workings import power_matrix_workings
from lablib.optics.prescription import Prescription
from lablib.optics.prism import Prism, decentration_for, resultant, thickness_difference_mm
from lablib.optics.terms import (
    direction_term,
    distance_term,
    in_full,
    power_step,
    prism_step,
    prism_term,
    sphere_and_cylinder,
)
from lablib.working import Term, Working

_ISO = "360 notation of ISO 8429"
_PRENTICE = "inverse of Prentice's rule in matrix form, W. F. Long, Am. J. Optom. 53 (1976) 27"
# Below this a meridian counts as plano, as it does for `decentration_for`.
_NO_POWER_D = 1e-6
_IN, _UP = "base in (minus is base out)", "base up (minus is base down)"
# By whether the base lies to the observer's left, and below.
_QUARTERS = {
    (False, False): "a",
    (True, False): "180 - a",
    (True, True): "180 + a",
    (False, True): "360 - a",
}
_WORD_FORMULAE = {"in": ("P", "0"), "out": ("-P", "0"), "up": ("0", "P"), "down": ("0", "-P")}


def resolving_workings(prism: Prism, *, eye: Eye | str) -> tuple[Working, Working]:
    """Return the parts base in and base up of a prism, worked.

    prism: the prism; eye: the eye it is for.

    Raises LabError for no eye.
    """
    inwards, upwards = prism.resolved(eye=eye)
    amount = prism_term("P", prism.amount_prism_d, "the prism")
    if isinstance(prism.base, str):
        formulae, terms = _WORD_FORMULAE[prism.base], (amount,)
    else:
        sign = "" if Eye.of(eye) is Eye.RIGHT else "-"
        formulae = (f"{sign}P * cos(b)", "P * sin(b)")
        terms = (amount, direction_term("b", prism.base, "its base"))
    return tuple(
        prism_step(what, symbol, formula, terms if formula != "0" else (), value, source=_ISO)
        for what, symbol, formula, value in (
            (_IN, "P_in", formulae[0], inwards),
            (_UP, "P_up", formulae[1], upwards),
        )
    )


def resultant_workings(*, eye: Eye | str, in_prism_d: float, up_prism_d: float) -> tuple[Working, ...]:
    """Return the one prism two parts make, worked: amount, angle from the horizontal, base.

    eye, in_prism_d, up_prism_d: as in `resultant`, which also says what it raises.

    Where both parts are nothing there is no base and the amount stands alone.
    """
    prism = resultant(eye=eye, in_prism_d=in_prism_d, up_prism_d=up_prism_d)
    parts = prism_term("P_in", in_prism_d, _IN), prism_term("P_up", up_prism_d, _UP)
    amount = prism_step("amount", "P", "sqrt(P_in^2 + P_up^2)", parts, prism.amount_prism_d)
    sideways = without_noise(Eye.of(eye).nasal_sign * in_prism_d)
    upright = without_noise(up_prism_d)
    if not sideways and not upright:
        return (amount,)
    angle = _degrees(
        "angle from the horizontal",
        "a",
        "atan(abs(P_up) / abs(P_in))" if sideways else "90",
        parts if sideways else (),
        math.degrees(math.atan2(abs(upright), abs(sideways))),
    )
    formula = _QUARTERS[sideways < 0.0, upright < 0.0]
    return amount, angle, _degrees("base", "b", formula, (angle.as_term(),), prism.base, source=_ISO)


def decentration_workings(
    rx: Prescription, *, eye: Eye | str, in_prism_d: float, up_prism_d: float
) -> tuple[Working, ...]:
    """Return where the optical centre must lie for a prism, worked; the last two steps are in and up.

    rx, eye, in_prism_d, up_prism_d: as in `decentration_for`, which also says what it raises.
    """
    in_mm, up_mm = decentration_for(rx, eye=eye, in_prism_d=in_prism_d, up_prism_d=up_prism_d)
    wanted = (
        prism_term("P_in", in_prism_d, f"prism wanted, {_IN}"),
        prism_term("P_up", up_prism_d, f"prism wanted, {_UP}"),
    )
    sphere, cylinder = sphere_and_cylinder(rx)
    principal = rx.sphere_d, without_noise(rx.sphere_d + rx.cylinder_d)
    if all(abs(power) < _NO_POWER_D for power in principal):
        return _centre(("0", "0"), ((), ()), in_mm, up_mm)
    if not rx.cylinder_d:
        terms = tuple((part, sphere) for part in wanted)
        return _centre(("10 * P_in / S", "10 * P_up / S"), terms, in_mm, up_mm)
    if any(abs(power) < _NO_POWER_D for power in principal):
        only = power_step(
            "power of the only meridian that has any",
            "F",
            "2 * S + C",
            (sphere, cylinder),
            sum(principal),
            digits=3,
        )
        terms = tuple((part, only.as_term()) for part in wanted)
        return only, *_centre(("10 * P_in / F", "10 * P_up / F"), terms, in_mm, up_mm)
    return _by_matrix(rx, eye, wanted, in_mm, up_mm)


def _by_matrix(
    rx: Prescription, eye: Eye | str, wanted: tuple[Term, Term], in_mm: float, up_mm: float
) -> tuple[Working, ...]:
    matrix = power_matrix_workings(rx, eye)
    along_in, crossed, along_up = (step.as_term() for step in matrix)
    product = Working(
        what="product of the two principal powers",
        symbol="D",
        formula="S * (S + C)",
        terms=sphere_and_cylinder(rx),
        value=rx.sphere_d * (rx.sphere_d + rx.cylinder_d),
        unit="D2",
        digits=4,
    )
    formulae = ("10 * (F90 * P_in - Fx * P_up) / D", "10 * (F180 * P_up - Fx * P_in) / D")
    terms = tuple((power, *wanted, crossed, product.as_term()) for power in (along_up, along_in))
    return *matrix, product, *_centre(formulae, terms, in_mm, up_mm)


def thickness_difference_working(*, amount_prism_d: float, across_mm: float, index_n: float) -> Working:
    """Return how much thicker a prism is at its base than at its apex, worked.

    amount_prism_d, across_mm, index_n: as in `thickness_difference_mm`, which also says what it raises.
    """
    return Working(
        what="base edge thicker than apex edge by",
        symbol="g",
        formula="P * d / (100 * (n - 1))",
        terms=(
            prism_term("P", amount_prism_d, "prism"),
            distance_term("d", across_mm, "distance from apex to base"),
            in_full("n", index_n, "", least_digits=3, meaning="index"),
        ),
        value=thickness_difference_mm(amount_prism_d=amount_prism_d, across_mm=across_mm, index_n=index_n),
        unit="mm",
        source="common practice",
    )


def _centre(
    formulae: tuple[str, str], terms: tuple[tuple[Term, ...], ...], in_mm: float, up_mm: float
) -> tuple[Working, Working]:
    return tuple(
        Working(
            what=f"optical centre {way} of the point (minus: {other})",
            symbol=symbol,
            formula=formula,
            terms=put_in,
            value=value,
            unit="mm",
            source=_PRENTICE,
        )
        for way, other, symbol, formula, put_in, value in (
            ("inwards", "outwards", "d_in", formulae[0], terms[0], in_mm),
            ("upwards", "downwards", "d_up", formulae[1], terms[1], up_mm),
        )
    )


def _degrees(
    what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float, *, source: str = ""
) -> Working:
    return Working(
        what=what, symbol=symbol, formula=formula, terms=terms, value=value, unit="degrees", source=source
    )
