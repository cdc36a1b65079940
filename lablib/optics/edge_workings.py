"""The edge as workings a learner can follow: how deep both surfaces lie there, and what is left between.

Every value comes from the function that computes it elsewhere; here only the steps are put in words.
"""

import math

from lablib.optics.solid import FinishedLens
from lablib.optics.surface import Surface
from lablib.optics.surface_workings import sagitta_working
from lablib.working import Term, Working


def edge_workings(finished: FinishedLens, at: int, *, name: str) -> tuple[Working, ...]:
    """Return the edge thickness at one point of the outline, from the depths of both surfaces there.

    finished: the lens in its outline.
    at: which point of the outline.
    name: of the point in words, for example "thickest edge".
    """
    lens = finished.lens
    x = float(finished.outline.x_mm[at]) - finished.centre_x_mm
    y = float(finished.outline.y_mm[at]) - finished.centre_y_mm
    away = _away(name, x, y)
    front = _depths(lens.front, "front surface", "s_1", "r_1", x, y, away)
    back = _depths(lens.back, "back surface", "s_2", "r_2", x, y, away)
    depths = [
        steps[-1].as_term()
        if steps
        else Term(
            symbol=symbol,
            value=float(surface.sag_mm(x, y)),
            unit="mm",
            digits=3,
            meaning=f"depth of the {side} there, solved along the axis",
        )
        for steps, symbol, surface, side in (
            (front, "s_1", lens.front, "front surface"),
            (back, "s_2", lens.back, "tilted back surface"),
        )
    ]
    thickness = Term(
        symbol="t", value=lens.centre_thickness_mm, unit="mm", digits=3, meaning="centre thickness"
    )
    edge = Working(
        what=name,
        symbol="e",
        formula="t + s_2 - s_1",
        terms=(thickness, depths[1], depths[0]),
        value=float(finished.edge_mm[at]),
        unit="mm",
        source="geometry; thickness is measured along the axis",
    )
    return (away, *front, *back, edge)


def _away(name: str, x: float, y: float) -> Working:
    return Working(
        what=f"distance of the {name} from the optical centre",
        symbol="y",
        formula="sqrt(across^2 + up^2)",
        terms=(
            Term(symbol="across", value=x, unit="mm", digits=3, meaning="to the observer's right"),
            Term(symbol="up", value=y, unit="mm", digits=3),
        ),
        value=math.hypot(x, y),
        unit="mm",
        digits=3,
    )


def _depths(
    surface: Surface, side: str, symbol: str, radius: str, x: float, y: float, away: Working
) -> tuple[Working, ...]:
    """Depth of a sphere in one step, of a torus in two; none for a tilted surface, which has no formula."""
    if surface.tilt_x or surface.tilt_y:
        return ()
    if surface.flat_per_mm == surface.steep_per_mm:
        arc = _radius(radius, surface.steep_per_mm)
        return (sagitta_working(f"depth of the {side} there", symbol, arc, away.as_term("")),)
    return _torus(surface, side, symbol, x, y)


def _radius(symbol: str, curvature: float) -> Term | None:
    return Term(symbol=symbol, value=1.0 / curvature, unit="mm", digits=3) if curvature else None


def _torus(surface: Surface, side: str, symbol: str, x: float, y: float) -> tuple[Working, ...]:
    """First down the steep arc, then along the flat circle it is swept on."""
    turn = Term(
        symbol="m", value=surface.flat_meridian_deg, unit="degrees", meaning="direction of the flat meridian"
    )
    place = (
        Term(symbol="across", value=x, unit="mm", digits=3),
        Term(symbol="up", value=y, unit="mm", digits=3),
    )
    angle = math.radians(surface.flat_meridian_deg)
    along = Working(
        what="place along the flat meridian",
        symbol="u",
        formula="across * cos(m) + up * sin(m)",
        terms=(*place, turn),
        value=x * math.cos(angle) + y * math.sin(angle),
        unit="mm",
        digits=3,
    )
    across = Working(
        what="place along the steep meridian",
        symbol="v",
        formula="up * cos(m) - across * sin(m)",
        terms=(*place, turn),
        value=y * math.cos(angle) - x * math.sin(angle),
        unit="mm",
        digits=3,
    )
    steep = _radius("r_s", surface.steep_per_mm)
    arc = sagitta_working("depth of the steep arc", "p", steep, across.as_term(""))
    return along, across, arc, _swept(surface, side, symbol, x, y, along, arc)


def _swept(
    surface: Surface, side: str, symbol: str, x: float, y: float, along: Working, arc: Working
) -> Working:
    value, what = float(surface.sag_mm(x, y)), f"depth of the {side} there"
    if abs(surface.flat_per_mm) < 1e-12:
        return Working(
            what=what, symbol=symbol, formula="p", terms=(arc.as_term(),), value=value, unit="mm", digits=3
        )
    sign = "-" if surface.flat_per_mm > 0.0 else "+"
    radius = Term(
        symbol="r_f",
        value=1.0 / surface.flat_per_mm,
        unit="mm",
        digits=3,
        meaning="radius of the flat meridian",
    )
    return Working(
        what=what,
        symbol=symbol,
        formula=f"r_f {sign} sqrt((r_f - p)^2 - u^2)",
        terms=(radius, arc.as_term(), along.as_term()),
        value=value,
        unit="mm",
        digits=3,
        source="torus of tyre formation: the steep arc swept along the flat circle, ISO 13666",
    )
