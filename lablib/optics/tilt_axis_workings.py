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


def tilted_axis_working(tilt: Tilt, axis_deg: float, *, on_lens: bool) -> tuple[Working, ...]:
    """Return the line a tilted and wrapped lens is turned about, worked; nothing where it is turned once.

    tilt: how the lens is turned; axis_deg: the axis that the numeric function found [degrees].
    on_lens: whether the axis is counted on the lens held square, as an order is, or as the eye has it.

    It lies at right angles to the direction in which the lens leans.
    """
    if not _is_double(tilt):
        return ()
    lean = tilt.wrap_deg * tilt.eye.nasal_sign * tilt.pantoscopic_deg
    ratio = "sin(w) / tan(p)" if on_lens else "tan(w) / sin(p)"
    return (
        Working(
            what=f"axis of the cylinder, {tilt.eye} eye",
            symbol="A",
            formula=f"{'180 - ' if lean > 0.0 else ''}atan(abs({ratio}))",
            terms=_angles(tilt),
            value=axis_deg,
            unit="degrees",
            digits=1,
        ),
    )


def _is_double(tilt: Tilt) -> bool:
    return bool(tilt.pantoscopic_deg and tilt.wrap_deg)


def _angles(tilt: Tilt) -> tuple[Term, Term]:
    return (
        direction_term("w", tilt.wrap_deg, "wrap"),
        direction_term("p", tilt.pantoscopic_deg, "pantoscopic tilt"),
    )
