"""How far a lens that is tilted and wrapped is turned in all, and about which line, as workings."""

from lablib.optics.terms import direction_term
from lablib.optics.tilt import Tilt
from lablib.working import Term, Working


def obliquity_working(tilt: Tilt) -> tuple[Working, ...]:
    """Return the angle of a lens that is both tilted and wrapped, worked; nothing where it is turned once.

    tilt: how the lens is turned.
    """
    if not _is_double(tilt):
        return ()
    wrap, pantoscopic = _angles(tilt)
    return (
        Working(
            what="angle between the lens's axis and the line straight ahead",
            symbol="i",
            formula="asin(sqrt(sin(w)^2 + sin(p)^2 * cos(w)^2))",
            terms=(wrap, pantoscopic),
            value=tilt.obliquity_deg,
            unit="degrees",
            digits=3,
        ),
    )


def tilted_axis_working(tilt: Tilt, axis_deg: float) -> tuple[Working, ...]:
    """Return the line a tilted and wrapped lens is turned about, worked; nothing where it is turned once.

    tilt: how the lens is turned; axis_deg: the axis that the numeric function found [degrees].

    It lies at right angles to the direction in which the lens leans.
    """
    if not _is_double(tilt):
        return ()
    lean = tilt.wrap_deg * tilt.eye.nasal_sign * tilt.pantoscopic_deg
    return (
        Working(
            what=f"axis of the cylinder, {tilt.eye} eye",
            symbol="A",
            formula=f"{'180 - ' if lean > 0.0 else ''}atan(tan(w) / sin(p))",
            terms=_angles(tilt, all_plus=True),
            value=axis_deg,
            unit="degrees",
            digits=1,
        ),
    )


def _is_double(tilt: Tilt) -> bool:
    return bool(tilt.pantoscopic_deg and tilt.wrap_deg)


def _angles(tilt: Tilt, *, all_plus: bool = False) -> tuple[Term, Term]:
    wrap, pantoscopic = tilt.wrap_deg, tilt.pantoscopic_deg
    if all_plus:
        wrap, pantoscopic = abs(wrap), abs(pantoscopic)
    return (
        direction_term("w", wrap, "wrap"),
        direction_term("p", pantoscopic, "pantoscopic tilt"),
    )
