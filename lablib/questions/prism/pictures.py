"""The pictures of questions on prism, as data: one lens of the pair with a point, or the whole pair."""

from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at
from lablib.study.question import Drawing

_NAME = "prism-pair"
# From the middle of a lens an arrow has so much more room than from a point far out.
_MORE_ROOM = 1.6


def lens_drawing(eye: Eye, rx: Prescription, *, in_mm: float, up_mm: float, farthest_mm: float) -> Drawing:
    """Return a lens with the point that is looked through; the answer is the prism there.

    eye: whose lens; rx: its power.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].
    farthest_mm: how far from its centre any point of such a question lies [mm].
    """
    values = {"asked": "base", "eye": eye.value, "in_mm": in_mm, "up_mm": up_mm}
    return _drawing(values, reach=_reach(rx, farthest_mm), axis_deg=rx.axis_deg or 0.0)


def prism_drawing(eye: Eye, *, most_prism_d: float) -> Drawing:
    """Return a lens of which nothing is known; the answer is a prism before it, its base in degrees.

    eye: whose lens; most_prism_d: the greatest prism such a question asks about [prism D].
    """
    values = {"asked": "base", "eye": eye.value, "has_centre": False, "in_degrees": True}
    return _drawing(values, reach=most_prism_d / _MORE_ROOM)


def centre_drawing(
    eye: Eye, wanted: tuple[float, float], *, is_sideways: bool, most_prism_d: float
) -> Drawing:
    """Return a lens with an ordered prism; the answer is where its optical centre must lie.

    eye: whose lens; wanted: the order, base in and base up [prism D].
    is_sideways: whether the answer runs inwards; else upwards.
    most_prism_d: the greatest prism such a question orders [prism D].
    """
    values = {
        "asked": "centre inwards" if is_sideways else "centre upwards",
        "eye": eye.value,
        "has_centre": False,
        "order_in_prism_d": wanted[0],
        "order_up_prism_d": wanted[1],
    }
    return _drawing(values, reach=most_prism_d)


def centres_drawing(rx: Prescription, *, centre_mm: float, in_mm: float, most_in_mm: float) -> Drawing:
    """Return a pair whose centres do not stand before the pupils; the answer is the prism of both together.

    rx: the power of both lenses.
    centre_mm: from the middle of the bridge to each optical centre [mm].
    in_mm: how far inwards of it each eye looks through [mm]; most_in_mm: at most in such a question [mm].
    """
    values = {
        "asked": "base of both together",
        "eye": "both",
        "right_centre_mm": centre_mm,
        "left_centre_mm": centre_mm,
        "in_mm": in_mm,
    }
    return _drawing(values, reach=_reach(rx, most_in_mm))


def near_drawing(
    right: Prescription,
    left: Prescription,
    *,
    drop_mm: float,
    up_prism_d: dict[Eye, float],
    most_drop_mm: float,
) -> Drawing:
    """Return a pair with points below both centres; the answer is the imbalance there.

    right, left: the powers.
    drop_mm: below the optical centres [mm]; most_drop_mm: at most in such a question [mm].
    up_prism_d: base up of each eye, shown with the right answer [prism D].
    """
    values = {"asked": "between the eyes", "eye": "both", "up_mm": -drop_mm}
    values |= {f"{eye}_up_prism_d": amount for eye, amount in up_prism_d.items()}
    # The imbalance of a plus and a minus lens is the sum of both.
    return _drawing(values, reach=_reach(right, most_drop_mm) + _reach(left, most_drop_mm))


def _reach(rx: Prescription, away_mm: float) -> float:
    """How much prism the strongest meridian has so far out, without its sign [prism D]."""
    strongest = max(abs(rx.sphere_d), abs(rx.sphere_d + rx.cylinder_d))
    return abs(prism_at(Prescription(sphere_d=strongest), eye=Eye.RIGHT, in_mm=away_mm, up_mm=0.0)[0])


def _drawing(values: dict[str, object], *, reach: float, **more: object) -> Drawing:
    return Drawing(name=_NAME, values=values | {"reach_prism_d": round(reach, 6)} | more)
