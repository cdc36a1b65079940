"""The lens measure as workings to follow by hand: from the pins to the dial, from the dial to the power.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.lens_measure import dial_d, reading_of_power_d, warpage_d
from lablib.optics.practice import usual_or
from lablib.optics.surface import LENS_MEASURE_INDEX, power_from_lens_measure_d
from lablib.optics.surface_workings import radius_working, sagitta_working
from lablib.optics.terms import distance_term, in_full, power_step, power_term
from lablib.working import Term, Working

_ENGRAVED = "the dial is engraved for index 1.530; common practice"


def power_of_reading_workings(reading_d: float, index: float) -> tuple[Working, ...]:
    """Return the power of a surface from what the dial shows, worked: the ratio of indices, then the power.

    reading_d: what the dial shows [D]; index: refractive index of the lens.
    """
    ratio = Working(
        what="what a dioptre on the dial is worth in this lens",
        symbol="k",
        formula="(n - 1) / (n_m - 1)",
        terms=(in_full("n", index, "", least_digits=3, meaning="index of the lens"), _dial_index()),
        value=power_from_lens_measure_d(1.0, index),
        digits=4,
        source=_ENGRAVED,
    )
    power = power_step(
        "power of the surface",
        "F",
        "R * k",
        (power_term("R", reading_d, "reading of the lens measure"), ratio.as_term()),
        power_from_lens_measure_d(reading_d, index),
        digits=3,
    )
    return ratio, power


def reading_workings(power_d: float, index: float, *, pin_mm: float | None = None) -> tuple[Working, ...]:
    """Return what the dial shows on a spherical surface, worked: radius, sagitta of the pins, reading.

    power_d: surface power [D], plus where it bulges towards the instrument; index: of the lens.
    pin_mm: distance of the outer pins from the plunger [mm]; None for the usual one.

    A flat surface has no radius and so no step for it.
    Raises LabError for a distance out of range, SurfaceTooSteep where the pins do not reach the surface.
    """
    away = _pin(pin_mm)
    radius = radius_working("radius of the surface", power_d, index, is_back=False)
    sagitta = sagitta_working("sagitta of the pins", "s", radius and radius.as_term(), away)
    dial = _dial(sagitta.as_term(), away, reading_of_power_d(power_d, index))
    return (radius, sagitta, dial) if radius else (sagitta, dial)


def dial_working(sagitta_mm: float, *, pin_mm: float | None = None) -> Working:
    """Return what the dial shows for a sagitta, worked.

    sagitta_mm, pin_mm: as in `dial_d`, which also says what it raises.
    """
    sagitta = in_full("s", sagitta_mm, "mm", least_digits=3, meaning="sagitta of the pins")
    return _dial(sagitta, _pin(pin_mm), dial_d(sagitta_mm, pin_mm=pin_mm))


def warpage_working(reading_along_d: float, reading_across_d: float) -> Working:
    """Return the warpage of a surface that should be a sphere, worked.

    reading_along_d, reading_across_d: as in `warpage_d`, which also says what it raises.
    """
    return power_step(
        "warpage",
        "W",
        "abs(R1 - R2)",
        (
            power_term("R1", reading_along_d, "reading along one meridian"),
            power_term("R2", reading_across_d, "reading at right angles to it"),
        ),
        warpage_d(reading_along_d, reading_across_d),
        source="common practice",
    )


def _dial(sagitta: Term, away: Term, value: float) -> Working:
    return power_step(
        "reading of the lens measure",
        "R",
        "1000 * (n_m - 1) * 2 * s / (y^2 + s^2)",
        (_dial_index(), sagitta, away),
        value,
        source="radius of a sphere from its sagitta, r = (y^2 + s^2) / (2 s); " + _ENGRAVED,
    )


def _pin(pin_mm: float | None) -> Term:
    distance = usual_or("pin_distance", "distance of the outer pins from the plunger", pin_mm)
    return distance_term("y", distance, "distance of the outer pins from the plunger")


def _dial_index() -> Term:
    return Term(symbol="n_m", value=LENS_MEASURE_INDEX, digits=3, meaning="index the dial is engraved for")
