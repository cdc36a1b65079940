"""Focal length and vergence as workings to follow by hand, in centimetres as a ruler has them.

Every value is the numeric function's; only the steps are written here.
"""

import math

from lablib.optics.power import without_noise
from lablib.optics.terms import in_full, power_step, power_term
from lablib.optics.vergence import (
    ahead_of_vergence_mm,
    focal_length_mm,
    image_vergence_d,
    object_vergence_d,
    power_of_focal_length_d,
)
from lablib.working import Term, Working

_DIOPTRE = "definition of the dioptre"


def focal_length_working(power_d: float, *, index: float = 1.0) -> Working:
    """Return the focal length of a power in centimetres, worked.

    power_d, index: as in `focal_length_mm`, which also says what it raises.
    """
    length = focal_length_mm(power_d, index=index)
    formula, medium = _in_index("100", index)
    return _centimetres(
        "focal length", "f", f"{formula} / F", (*medium, power_term("F", power_d, "power")), length
    )


def power_of_focal_length_working(length_mm: float, *, index: float = 1.0) -> Working:
    """Return the power that has a focal length, worked.

    length_mm, index: as in `power_of_focal_length_d`, which also says what it raises.
    """
    power = power_of_focal_length_d(length_mm, index=index)
    formula, medium = _in_index("100", index)
    terms = (*medium, _distance("f", length_mm, "focal length"))
    return power_step("power", "F", f"{formula} / f", terms, power, source=_DIOPTRE)


def image_workings(
    power_d: float, *, in_front_mm: float = math.inf, index: float = 1.0
) -> tuple[Working, ...]:
    """Return where the light from an object meets behind a thin lens, worked.

    power_d, in_front_mm, index: as in `image_vergence_d`, which also says what it raises; behind the lens
        there is air.

    The steps are what comes in, what leaves, and the distance at which it meets; where the light leaves
    parallel there is no distance and so no last step.
    """
    leaving = image_vergence_d(power_d, in_front_mm=in_front_mm, index=index)
    coming = _coming(in_front_mm, index)
    behind = power_step(
        "vergence behind the lens",
        "L'",
        "L + F",
        (coming.as_term(), power_term("F", power_d, "power")),
        leaving,
        digits=3,
    )
    ahead = ahead_of_vergence_mm(leaving)
    if ahead == math.inf:
        return coming, behind
    where = "behind the lens" if ahead > 0.0 else "to where the light seems to come from (minus: in front)"
    return coming, behind, _centimetres(f"distance {where}", "l'", "100 / L'", (behind.as_term(),), ahead)


def _coming(in_front_mm: float, index: float) -> Working:
    value = object_vergence_d(in_front_mm, index=index)
    if in_front_mm == math.inf:
        return power_step("vergence at the lens of light from far off", "L", "0", (), 0.0, digits=3)
    formula, medium = _in_index("-100", index)
    terms = (*medium, _distance("x", in_front_mm, "distance of the object in front of the lens"))
    return power_step("vergence at the lens", "L", f"{formula} / x", terms, value, digits=3)


def _in_index(hundred: str, index: float) -> tuple[str, tuple[Term, ...]]:
    if index == 1.0:
        return hundred, ()
    return f"{hundred} * n", (in_full("n", index, "", meaning="index"),)


def _distance(symbol: str, distance_mm: float, meaning: str) -> Term:
    return in_full(symbol, without_noise(distance_mm / 10.0), "cm", least_digits=1, meaning=meaning)


def _centimetres(what: str, symbol: str, formula: str, terms: tuple[Term, ...], value_mm: float) -> Working:
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value_mm / 10.0,
        unit="cm",
        source=_DIOPTRE,
    )
