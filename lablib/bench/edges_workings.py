"""Edges as workings: how a bevel wanders, size by circumference, what groove and chamfer leave."""

import math

from lablib.bench.bevel import bevel_wander_mm, curve_depth_mm
from lablib.bench.edges import edge_number
from lablib.bench.grip_workings import curve_radius_working
from lablib.bench.groove import Groove, chamfer_leg_mm, flat_left_mm
from lablib.bench.size import circumference_change_mm, width_change_mm
from lablib.errors import LabError
from lablib.working import Term, Working

_STEINER = "Steiner: a parallel curve at distance d is 2 pi d longer; the width grows by 2 d"
_SAGITTA = "s = r - sqrt(r^2 - y^2), exact sagitta of a sphere"
_PI = Term(symbol="pi", value=math.pi, digits=4, meaning="circle number")


def wander_workings(
    *, lens_curve_d: float, rim_curve_d: float, away_mm: float, from_mm: float
) -> tuple[Working, ...]:
    """Return both radii, the four sagittae, how far rim and front are apart at each place, and the wander.

    lens_curve_d, rim_curve_d: for index 1.530 [D]; away_mm, from_mm: as in `bevel_wander_mm` [mm].

    Raises LabError for a curve that is not above 0: a flat one has no radius to work with.
    """
    for thing, curve in (("lens curve", lens_curve_d), ("rim curve", rim_curve_d)):
        if curve <= 0.0:
            raise LabError(f"{thing} {curve:g} D is not above 0: there is no radius to work with")
    rim = curve_radius_working("rim", "r_r", "F_r", rim_curve_d, digits=3)
    front = curve_radius_working("lens front", "r_f", "F_f", lens_curve_d, digits=3)
    places = (
        Term(symbol="y_far", value=away_mm, unit="mm", digits=1, meaning="distance of the far place"),
        Term(symbol="y_near", value=from_mm, unit="mm", digits=1, meaning="distance of the near place"),
    )
    sags = [
        _sagitta(name, symbol + place.symbol[1:], radius, place, curve)
        for place in places
        for name, symbol, radius, curve in (
            ("rim", "s_r", rim, rim_curve_d),
            ("lens front", "s_f", front, lens_curve_d),
        )
    ]
    far, near = (
        Working(
            what=f"how much deeper the rim lies at the {name} place",
            symbol=f"g_{name}",
            formula=f"s_r_{name} - s_f_{name}",
            terms=tuple(one.as_term() for one in pair),
            value=bevel_wander_mm(lens_curve_d=lens_curve_d, rim_curve_d=rim_curve_d, away_mm=place.value),
            unit="mm",
            digits=3,
        )
        for name, pair, place in zip(("far", "near"), (sags[:2], sags[2:]), places, strict=True)
    )
    wander = Working(
        what="how far the bevel wanders along the edge",
        symbol="w",
        formula="g_far - g_near",
        terms=(far.as_term(), near.as_term()),
        value=bevel_wander_mm(
            lens_curve_d=lens_curve_d, rim_curve_d=rim_curve_d, away_mm=away_mm, from_mm=from_mm
        ),
        unit="mm",
        digits=3,
    )
    return rim, front, *sags, far, near, wander


def _sagitta(what: str, symbol: str, radius: Working, away: Term, curve_d: float) -> Working:
    return Working(
        what=f"sagitta of the {what} at the {away.symbol[2:]} place",
        symbol=symbol,
        formula=f"{radius.symbol} - sqrt({radius.symbol}^2 - {away.symbol}^2)",
        terms=(radius.as_term(), away),
        value=float(curve_depth_mm(curve_d, away.value)),
        unit="mm",
        digits=3,
        source=_SAGITTA,
    )


def width_working(change_of_circumference_mm: float) -> Working:
    """Return the step from a change of circumference to one of width.

    change_of_circumference_mm: [mm].
    """
    return Working(
        what="change of width",
        symbol="dA",
        formula="dC / pi",
        terms=(
            Term(symbol="dC", value=change_of_circumference_mm, unit="mm", meaning="change of circumference"),
            _PI,
        ),
        value=width_change_mm(change_of_circumference_mm),
        unit="mm",
        digits=3,
        source=_STEINER,
    )


def circumference_working(change_of_width_mm: float) -> Working:
    """Return the step from a change of width to one of circumference.

    change_of_width_mm: [mm].
    """
    return Working(
        what="change of circumference",
        symbol="dC",
        formula="pi * dA",
        terms=(
            _PI,
            Term(symbol="dA", value=change_of_width_mm, unit="mm", digits=3, meaning="change of width"),
        ),
        value=circumference_change_mm(change_of_width_mm),
        unit="mm",
        digits=3,
        source=_STEINER,
    )


def wall_workings(groove: Groove) -> tuple[Working, Working]:
    """Return the walls in front of and behind a groove.

    groove: at one place of an edge.
    """
    edge = Term(symbol="e", value=groove.edge_mm, unit="mm", meaning="thickness of the edge")
    width = Term(
        symbol="b",
        value=edge_number("cord_groove_mm", groove.width_mm),
        unit="mm",
        meaning="width of the groove",
    )
    middle = groove.edge_mm / 2.0 if groove.middle_mm is None else groove.middle_mm
    front = Working(
        what="wall in front of the groove",
        symbol="w_f",
        formula="m - b / 2",
        terms=(
            Term(symbol="m", value=middle, unit="mm", digits=3, meaning="front to the groove's middle"),
            width,
        ),
        value=groove.front_wall_mm,
        unit="mm",
        digits=3,
    )
    back = Working(
        what="wall behind the groove",
        symbol="w_b",
        formula="e - b - w_f",
        terms=(edge, width, front.as_term()),
        value=groove.back_wall_mm,
        unit="mm",
        digits=3,
    )
    return front, back


def chamfer_workings(edge_mm: float, face_mm: float | None = None) -> tuple[Working, Working]:
    """Return what one safety chamfer takes of an edge, and what two leave of it.

    edge_mm, face_mm: as in `lablib.bench.groove.flat_left_mm` [mm].
    """
    face = edge_number("chamfer_mm", face_mm)
    leg = Working(
        what="what one chamfer takes of the edge",
        symbol="k",
        formula="c / sqrt(2)",
        terms=(Term(symbol="c", value=face, unit="mm", meaning="width of the chamfer's face"),),
        value=chamfer_leg_mm(face),
        unit="mm",
        digits=4,
        source="right-angled triangle with equal legs, 45 degrees",
    )
    left = Working(
        what="what two chamfers leave of the edge",
        symbol="f",
        formula="e - 2 * k",
        terms=(
            Term(symbol="e", value=edge_mm, unit="mm", meaning="thickness of the edge"),
            leg.as_term(),
        ),
        value=flat_left_mm(edge_mm, face_mm=face),
        unit="mm",
        digits=3,
    )
    return leg, left
