"""Layout as workings a learner can follow: decentration and the least blank."""

from lablib.optics.frame import Frame, Outline
from lablib.optics.layout import (
    blank_allowance_mm,
    blank_reaching_mm,
    decentration_mm,
    minimum_blank_rule_mm,
)
from lablib.working import Term, Working

_PRACTICE = "common practice"


def decentration_workings(
    frame: Frame, *, monocular_pd_mm: float, height_mm: float | None
) -> tuple[Working, ...]:
    """Return how far in, and where a height is given how far up, the centration point lies.

    frame, monocular_pd_mm, height_mm: as in `decentration_mm`, which also says what it raises.
    """
    inward, up = decentration_mm(frame, monocular_pd_mm=monocular_pd_mm, height_mm=height_mm)
    across = Working(
        what="decentration in (minus: out)",
        symbol="d_in",
        formula="(A + DBL) / 2 - PD",
        terms=(
            Term(symbol="A", value=frame.a_mm, unit="mm", meaning="boxed width"),
            Term(symbol="DBL", value=frame.dbl_mm, unit="mm", meaning="distance between lenses"),
            Term(symbol="PD", value=monocular_pd_mm, unit="mm", meaning="monocular distance"),
        ),
        value=inward,
        unit="mm",
        source="C. Brooks, Essentials of Ophthalmic Lens Finishing, 2nd ed., p. 391",
    )
    if height_mm is None:
        return (across,)
    upright = Working(
        what="decentration up (minus: down)",
        symbol="d_up",
        formula="h - B / 2",
        terms=(
            Term(symbol="h", value=height_mm, unit="mm", meaning="height above the lowest tangent"),
            Term(symbol="B", value=frame.b_mm, unit="mm", meaning="boxed height"),
        ),
        value=up,
        unit="mm",
        source=_PRACTICE,
    )
    return across, upright


def minimum_blank_workings(outline: Outline, *, x_mm: float, y_mm: float) -> tuple[Working, ...]:
    """Return the least blank, exactly and by the rule of thumb.

    outline: of the lens; x_mm, y_mm: the optical centre from the boxed centre [mm].
    """
    exact = blank_about_working(
        outline, x_mm=x_mm, y_mm=y_mm, what="least blank, exact", symbol="D", centre="the optical centre"
    )
    return exact, minimum_blank_rule_working(outline.effective_diameter_mm, abs(x_mm))


def blank_about_working(
    outline: Outline, *, x_mm: float, y_mm: float, what: str, symbol: str, centre: str
) -> Working:
    """Return the least blank about a point, exactly.

    outline: of the lens; x_mm, y_mm: the blank's centre from the boxed centre [mm].
    what, symbol: of the result; centre: what lies at the blank's centre, in words.
    """
    away_x, away_y = outline.x_mm - x_mm, outline.y_mm - y_mm
    far = int((away_x**2 + away_y**2).argmax())
    across = f"farthest outline point, across from {centre}"
    return blank_reaching_working(
        Term(symbol="x", value=away_x[far], unit="mm", meaning=across),
        Term(symbol="y", value=away_y[far], unit="mm", meaning="the same point, up from it"),
        what=what,
        symbol=symbol,
    )


def blank_reaching_working(
    across: Term, upright: Term, *, what: str = "least blank, exact", symbol: str = "D"
) -> Working:
    """Return the blank that reaches a point of the outline.

    across, upright: the point from the blank's centre, as terms [mm].
    what, symbol: of the result.
    """
    return Working(
        what=what,
        symbol=symbol,
        formula=f"2 * sqrt({across.symbol}^2 + {upright.symbol}^2) + a",
        terms=(across, upright, _allowance()),
        value=blank_reaching_mm(across.value, upright.value),
        unit="mm",
        digits=1,
        source="geometry of the real outline",
    )


def minimum_blank_rule_working(effective_diameter_mm: float, in_mm: float) -> Working:
    """Return the least blank by the rule of thumb.

    effective_diameter_mm: [mm]; in_mm: decentration across, in or out [mm].
    """
    return Working(
        what="least blank, by the rule of thumb",
        symbol="D_rule",
        formula="ED + 2 * abs(d_in) + a",
        terms=(
            Term(symbol="ED", value=effective_diameter_mm, unit="mm", meaning="effective diameter"),
            Term(symbol="d_in", value=in_mm, unit="mm", meaning="decentration across, in or out"),
            _allowance(),
        ),
        value=minimum_blank_rule_mm(effective_diameter_mm, in_mm),
        unit="mm",
        digits=1,
        source=_PRACTICE,
    )


def _allowance() -> Term:
    return Term(symbol="a", value=blank_allowance_mm(), unit="mm", meaning="allowance for the rim")
