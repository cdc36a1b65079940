"""A turn read from marks as workings to follow by hand: the turn and its doubt.

Every value is the numeric function's; only the steps are written here.
"""

import math

from lablib.inspection.marks import (
    MARKS_APART_MM,
    RISE_WITHIN_MM,
    read_turn,
    small_angle_deg,
    top_apart_mm,
    turn_deg,
)
from lablib.working import Term, Working

_APART = "distance of the two marks on the lens"
_RADIAN = Term(
    symbol="k",
    value=math.degrees(1.0),
    unit="degrees",
    digits=2,
    meaning="the angle whose arc is as long as its radius",
)


def apart_term(apart_mm: float, meaning: str = _APART) -> Term:
    """Return the distance of two marks as a term.

    apart_mm: [mm], to a tenth at most; meaning: what the marks are.
    """
    return Term(symbol="w", value=apart_mm, unit="mm", digits=1, meaning=meaning)


def rise_term(rise_mm: float) -> Term:
    """Return the rise of two marks as a term.

    rise_mm: [mm], to a hundredth at most.
    """
    return Term(
        symbol="e",
        value=rise_mm,
        unit="mm",
        digits=2,
        meaning="rise from one mark to the other",
    )


def turn_working(rise_mm: float, *, apart_mm: float = MARKS_APART_MM, apart: Term | None = None) -> Working:
    """Return the turn from two marks, worked.

    rise_mm, apart_mm: as in `turn_deg`, which also says what it raises.
    apart: the distance as it was reached before; None where it is given.
    """
    return Working(
        what="how far the marks stand out of the level",
        symbol="turn",
        formula="asin(e / w)",
        terms=(rise_term(rise_mm), apart or apart_term(apart_mm)),
        value=turn_deg(rise_mm, apart_mm=apart_mm),
        unit="degrees",
        digits=2,
    )


def small_angle_working(rise_mm: float, *, apart_mm: float = MARKS_APART_MM) -> Working:
    """Return the turn by the rule for small angles, worked, as it is done in the head.

    rise_mm, apart_mm: as in `turn_deg`, which also says what it raises.
    """
    return Working(
        what="the same by the rule for small angles, the rise taken as an arc",
        symbol="turn_s",
        formula="k * e / w",
        terms=(_RADIAN, rise_term(rise_mm), apart_term(apart_mm)),
        value=small_angle_deg(rise_mm, apart_mm=apart_mm),
        unit="degrees",
        digits=2,
    )


def doubt_workings(
    rise_mm: float, *, apart_mm: float = MARKS_APART_MM, within_mm: float = RISE_WITHIN_MM
) -> tuple[Working, Working]:
    """Return the least and the greatest turn that fit a reading, worked.

    rise_mm, apart_mm, within_mm: as in `read_turn`, which also says what it raises.
    """
    reading = read_turn(rise_mm, apart_mm=apart_mm, within_mm=within_mm)
    within = Term(
        symbol="d", value=within_mm, unit="mm", digits=2, meaning="how far the rise may be off, either way"
    )
    terms = (rise_term(rise_mm), apart_term(apart_mm), within)
    low, high = (
        Working(
            what=f"{word} turn that fits the reading",
            symbol=symbol,
            formula=formula,
            terms=terms,
            value=value,
            unit="degrees",
            digits=2,
        )
        for word, symbol, formula, value in (
            ("least", "low", "asin((e - d) / w)", reading.low_deg),
            ("greatest", "high", "asin((e + d) / w)", reading.high_deg),
        )
    )
    return low, high


def top_apart_working(*, width_mm: float, centre_below_top_mm: float) -> Working:
    """Return the distance of the corners of a straight segment top, worked.

    width_mm, centre_below_top_mm: as in `top_apart_mm`, which also says what it raises.
    """
    return Working(
        what="from corner to corner of the segment's top, less than the segment is wide",
        symbol="w",
        formula="2 * sqrt((b / 2)^2 - c^2)",
        terms=(
            Term(symbol="b", value=width_mm, unit="mm", digits=1, meaning="width of the segment"),
            Term(
                symbol="c", value=centre_below_top_mm, unit="mm", digits=1, meaning="its centre below its top"
            ),
        ),
        value=top_apart_mm(width_mm=width_mm, centre_below_top_mm=centre_below_top_mm),
        unit="mm",
        digits=2,
    )
