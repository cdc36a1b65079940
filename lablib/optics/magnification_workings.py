"""Spectacle magnification as workings to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.magnification import Magnification, pupil_distance_mm, spectacle_magnification
from lablib.optics.practice import source_of, usual_or
from lablib.optics.prescription import Prescription
from lablib.optics.terms import distance_term, in_full, power_step, power_term, sphere_and_cylinder
from lablib.working import Term, Working

_JALIE = "M. Jalie, The Principles of Ophthalmic Lenses (from memory)"


def spectacle_magnification_workings(
    rx: Prescription,
    *,
    front_curve_d: float,
    centre_thickness_mm: float,
    index: float,
    vertex_distance_mm: float,
    pupil_depth_mm: float | None = None,
) -> tuple[Working, ...]:
    """Return the magnification, worked: shape factor, way to the pupil, then each meridian in percent.

    rx, front_curve_d, centre_thickness_mm, index, vertex_distance_mm, pupil_depth_mm: as in
        `spectacle_magnification`, which also says what it raises.
    """
    along, across = spectacle_magnification(
        rx,
        front_curve_d=front_curve_d,
        centre_thickness_mm=centre_thickness_mm,
        index=index,
        vertex_distance_mm=vertex_distance_mm,
        pupil_depth_mm=pupil_depth_mm,
    )
    shape = _factor(
        "shape factor",
        "M_shape",
        "1 / (1 - t / 1000 * F_1 / n)",
        (
            distance_term("t", centre_thickness_mm, "centre thickness"),
            power_term("F_1", front_curve_d, "front curve"),
            in_full("n", index, "", least_digits=3, meaning="index"),
        ),
        along.shape_factor,
        source=_JALIE,
    )
    away = _way_to_the_pupil(vertex_distance_mm, pupil_depth_mm)
    sphere, cylinder = sphere_and_cylinder(rx)
    first = _meridian(shape, away, sphere, along, where=" along the axis" if rx.cylinder_d else "")
    if not rx.cylinder_d:
        return (shape, away, *first)
    sum_d = rx.sphere_d + rx.cylinder_d
    power = power_step("power across the axis", "F", "S + C", (sphere, cylinder), sum_d, digits=3)
    second = _meridian(shape, away, power.as_term(), across, where=" across the axis", mark="_x")
    return (shape, away, *first, power, *second)


def _way_to_the_pupil(vertex_distance_mm: float, pupil_depth_mm: float | None) -> Working:
    depth = usual_or("pupil_depth", "entrance pupil behind the cornea", pupil_depth_mm)
    meaning = "entrance pupil behind the cornea"
    if pupil_depth_mm is None:
        meaning = f"{meaning}, {source_of('pupil_depth')}"
    return Working(
        what="from the back vertex to the entrance pupil",
        symbol="a",
        formula="d + q",
        terms=(
            distance_term("d", vertex_distance_mm, "vertex distance"),
            distance_term("q", depth, meaning),
        ),
        value=pupil_distance_mm(vertex_distance_mm, pupil_depth_mm=pupil_depth_mm),
        unit="mm",
    )


def _meridian(
    shape: Working, away: Working, power: Term, reached: Magnification, *, where: str, mark: str = ""
) -> tuple[Working, ...]:
    by_power = _factor(
        f"power factor{where}",
        f"M_power{mark}",
        f"1 / (1 - a / 1000 * {power.symbol})",
        (away.as_term(), power),
        reached.power_factor,
        source=_JALIE,
    )
    factor = _factor(
        f"spectacle magnification{where}",
        f"SM{mark}",
        f"M_shape * {by_power.symbol}",
        (shape.as_term(), by_power.as_term()),
        reached.factor,
    )
    percent = Working(
        what=f"magnification{where} in percent (minus: smaller)",
        symbol=f"p{mark}",
        formula=f"({factor.symbol} - 1) * 100",
        terms=(factor.as_term(),),
        value=reached.percent,
        unit="%",
    )
    return by_power, factor, percent


def _factor(
    what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float, *, source: str = ""
) -> Working:
    return Working(
        what=what, symbol=symbol, formula=formula, terms=terms, value=value, digits=5, source=source
    )
