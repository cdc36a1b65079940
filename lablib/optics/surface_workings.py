"""A surface as workings a learner can follow: its radius from its power, and how deep it lies.

Every value comes from the function that computes it elsewhere; here only the steps are put in words.
"""

from lablib.optics.surface import sagitta_mm
from lablib.working import Term, Working

_SAGITTA = "exact sagitta, M. Jalie, Lens Talk 2023"


def radius_working(what: str, power_d: float, index: float, *, is_back: bool) -> Working | None:
    """Return the radius of a surface from its power, worked; none for a flat one.

    what: name of the radius in words.
    power_d: surface power [D]; index: refractive index.
    is_back: whether it is the back surface. A radius is positive where the surface bulges away from the eye.
    """
    if abs(power_d) < 1e-9:
        return None
    side, turned = ("2", "1 - n") if is_back else ("1", "n - 1")
    return Working(
        what=what,
        symbol=f"r_{side}",
        formula=f"1000 * ({turned}) / F_{side}",
        terms=(
            Term(symbol="n", value=index, digits=3),
            Term(symbol=f"F_{side}", value=power_d, unit="D", digits=3, meaning="surface power"),
        ),
        value=1000.0 * (index - 1.0) / (-power_d if is_back else power_d),
        unit="mm",
        source="definition of surface power",
    )


def sagitta_working(what: str, symbol: str, radius: Term | None, away: Term) -> Working:
    """Return the depth of a spherical surface at a distance from its vertex, worked.

    what: the depth in words; symbol: of the depth.
    radius: of the surface [mm], negative where it bulges towards the eye; None for a flat one.
    away: distance from the vertex, half the chord [mm].

    Raises SurfaceTooSteep where the surface does not reach so far.
    """
    if radius is None:
        return Working(what=what, symbol=symbol, formula="0", terms=(), value=0.0, unit="mm", digits=3)
    sign = "-" if radius.value > 0.0 else "+"
    return Working(
        what=what,
        symbol=symbol,
        formula=f"{radius.symbol} {sign} sqrt({radius.symbol}^2 - {away.symbol}^2)",
        terms=(radius, away),
        value=sagitta_mm(radius.value, away.value),
        unit="mm",
        digits=3,
        source=_SAGITTA,
    )
