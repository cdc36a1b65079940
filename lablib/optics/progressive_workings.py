"""The layout of a progressive as workings to follow by hand: its marks, its height, and its engravings.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.layout_workings import decentration_workings
from lablib.optics.progressive import (
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    TEMPORAL_ENGRAVING,
    ProgressiveDesign,
)
from lablib.optics.progressive_layout import Engravings, ProgressiveLayout, made_to
from lablib.optics.terms import distance_term
from lablib.working import Term, Working

_CHART = "the maker's chart, here an invented one"
_PRACTICE = "common practice"


def progressive_layout_workings(layout: ProgressiveLayout) -> tuple[Working, ...]:
    """Return the layout of a progressive, worked: the cross, the engravings, the near circle.

    layout: for one eye.
    """
    across, upright = decentration_workings(
        layout.frame, monocular_pd_mm=layout.monocular_pd_mm, height_mm=layout.height_mm
    )
    level = engraving_level_working(layout, upright)
    apart = distance_term("w", layout.design.engravings_apart_mm, "from engraving to engraving")
    near = layout.mark(NEAR_CIRCLE)
    inset = distance_term("n_in", layout.design.near_inset_mm, "near circle inwards of the cross")
    below = distance_term("n", layout.design.near_circle_below_cross_mm, "near circle below the cross")
    return (
        across,
        upright,
        level,
        _chart_step(
            "nasal engraving inwards of the boxed centre",
            "g_n",
            "d_in + w / 2",
            (across.as_term(), apart),
            layout.mark(NASAL_ENGRAVING).in_mm,
        ),
        _chart_step(
            "temporal engraving inwards of the boxed centre (minus: outwards)",
            "g_t",
            "d_in - w / 2",
            (across.as_term(), apart),
            layout.mark(TEMPORAL_ENGRAVING).in_mm,
        ),
        _chart_step(
            "near circle inwards of the boxed centre",
            "c_in",
            "d_in + n_in",
            (across.as_term(), inset),
            near.in_mm,
        ),
        _chart_step(
            "near circle above the midline (minus: below)",
            "c_up",
            "d_up - n",
            (upright.as_term(), below),
            near.up_mm,
        ),
    )


def engraving_level_working(layout: ProgressiveLayout, upright: Working) -> Working:
    """Return the level of the engravings, worked.

    layout: for one eye; upright: the step that gave the height of its cross above the midline.
    """
    return _chart_step(
        "engravings above the midline (minus: below)",
        "g_up",
        f"{upright.symbol} - e",
        (upright.as_term(), _below_cross(layout.design)),
        layout.mark(NASAL_ENGRAVING).up_mm,
    )


def near_room_working(layout: ProgressiveLayout) -> Working:
    """Return how high the middle of the near circle lies above the lowest tangent, worked.

    layout: for one eye.
    """
    return _chart_step(
        "middle of the near circle above the lowest tangent",
        "r_n",
        "h - n",
        (
            distance_term("h", layout.height_mm, "height of the cross above the lowest tangent"),
            distance_term("n", layout.design.near_circle_below_cross_mm, "near circle below the cross"),
        ),
        layout.near_centre_room_mm,
    )


def made_to_workings(
    frame: Frame, *, eye: Eye, design: ProgressiveDesign, engravings: Engravings
) -> tuple[Working, ...]:
    """Return what a finished progressive was made to, worked; the last two steps are distance and height.

    frame, eye, design, engravings: as in `made_to`, which also says what it raises.
    """
    told = made_to(frame, eye=eye, design=design, engravings=engravings)
    names = ("in", "up")
    ends = [
        (
            distance_term(f"n_{way}", engravings.nasal_mm[at], f"nasal engraving, {word}"),
            distance_term(f"t_{way}", engravings.temporal_mm[at], f"temporal engraving, {word}"),
        )
        for at, (way, word) in enumerate(zip(names, ("inwards", "above the midline"), strict=True))
    ]
    middle = tuple(
        _step(
            f"midway between the engravings, {word}",
            f"m_{way}",
            f"(n_{way} + t_{way}) / 2",
            ends[at],
            engravings.middle_mm[at],
        )
        for at, (way, word) in enumerate(zip(names, ("inwards", "above the midline"), strict=True))
    )
    tilt, terms, level = _tilt(eye, engravings, ends)
    below = _below_cross(design)
    box = (
        distance_term("A", frame.a_mm, "boxed width"),
        distance_term("DBL", frame.dbl_mm, "distance between lenses"),
    )
    distance = _step(
        "monocular distance it was made to",
        "PD",
        "(A + DBL) / 2 - m_in" if level else "(A + DBL) / 2 - m_in + e * sin(q)",
        (*box, middle[0].as_term()) if level else (*box, middle[0].as_term(), below, *terms),
        told.monocular_pd_mm,
    )
    height = _step(
        "height of the cross it was made to",
        "h",
        "m_up + e + B / 2" if level else "m_up + e * cos(q) + B / 2",
        (middle[1].as_term(), below, distance_term("B", frame.b_mm, "boxed height"), *terms),
        told.height_mm,
    )
    return (*middle, *tilt, distance, height)


def _tilt(
    eye: Eye, engravings: Engravings, ends: list[tuple[Term, Term]]
) -> tuple[tuple[Working, ...], tuple[Term, ...], bool]:
    """The angle by which the nasal engraving lies higher, where it does."""
    if engravings.nasal_mm[1] == engravings.temporal_mm[1]:
        return (), (), True
    (nasal_in, temporal_in), (nasal_up, temporal_up) = ends
    step = Working(
        what="nasal engraving higher by the angle",
        symbol="q",
        formula="atan((n_up - t_up) / (n_in - t_in))",
        terms=(nasal_up, temporal_up, nasal_in, temporal_in),
        value=eye.nasal_sign * engravings.tilt_deg(eye),
        unit="degrees",
        digits=2,
    )
    return (step,), (step.as_term(),), False


def _below_cross(design: ProgressiveDesign) -> Term:
    return distance_term("e", design.engraving_below_cross_mm, "engravings below the cross")


def _chart_step(what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    return _step(what, symbol, formula, terms, value, source=_CHART)


def _step(
    what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float, *, source: str = _PRACTICE
) -> Working:
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="mm",
        digits=max(2, *(term.digits for term in terms)),
        source=source,
    )
