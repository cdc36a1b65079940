"""Centre drop, the prism of a tilt and distances along a wrapped lens as workings to follow by hand."""

from lablib.optics.practice import source_of, usual, usual_or
from lablib.optics.terms import direction_term, distance_term, in_full, power_term, prism_step
from lablib.optics.tilt_place import (
    centre_drop_by_rule_mm,
    centre_drop_mm,
    lens_height_mm,
    tilt_prism_prism_d,
    wrapped_decentration_in_mm,
)
from lablib.working import Term, Working


def centre_drop_working(pantoscopic_deg: float, *, centre_of_rotation_mm: float | None = None) -> Working:
    """Return how far the optical centre goes down, worked from the eye's centre of rotation.

    pantoscopic_deg, centre_of_rotation_mm: as in `centre_drop_mm`, which also says what it raises.
    """
    distance = usual_or("centre_of_rotation", "centre of rotation", centre_of_rotation_mm)
    meaning = "lens to the eye's centre of rotation"
    if centre_of_rotation_mm is None:
        meaning = f"{meaning}, {source_of('centre_of_rotation')}"
    terms = (distance_term("s", distance, meaning), _tilt(pantoscopic_deg))
    value = centre_drop_mm(pantoscopic_deg, centre_of_rotation_mm=centre_of_rotation_mm)
    return _millimetres("drop of the optical centre (minus: above)", "d", "s * tan(p)", terms, value)


def centre_drop_by_rule_workings(pantoscopic_deg: float, pupil_height_mm: float) -> tuple[Working, Working]:
    """Return the drop by the rule and the height of the optical centre, worked.

    pantoscopic_deg: as in `centre_drop_by_rule_mm`.
    pupil_height_mm: height of the pupil above the lowest tangent [mm].

    Raises LabError as `centre_drop_by_rule_mm` and `lens_height_mm` do.
    """
    rule = in_full("r", usual("centre_drop"), "mm", meaning="for each degree, 1 mm for 2 degrees")
    value = centre_drop_by_rule_mm(pantoscopic_deg)
    terms = (rule, _tilt(pantoscopic_deg))
    drop = _millimetres(
        "drop of the optical centre by the rule", "d", "r * p", terms, value, source="common practice"
    )
    pupil = distance_term("h", pupil_height_mm, "height of the pupil")
    height = lens_height_mm(pupil_height_mm, drop_mm=value)
    return drop, _millimetres("height of the optical centre", "h_c", "h - d", (pupil, drop.as_term()), height)


def tilt_prism_working(
    tilt_deg: float, *, front_curve_d: float, centre_thickness_mm: float, index: float
) -> Working:
    """Return the prism of a tilted lens straight ahead, worked.

    tilt_deg, front_curve_d, centre_thickness_mm, index: as in `tilt_prism_prism_d`, which also says what it
        raises.
    """
    return prism_step(
        "prism of the tilt, base out for wrap, down for pantoscopic tilt",
        "P",
        "100 * tan(i) * t / 1000 / n * F_1",
        (
            direction_term("i", tilt_deg, "tilt of the lens"),
            distance_term("t", centre_thickness_mm, "centre thickness"),
            in_full("n", index, "", least_digits=3, meaning="index"),
            power_term("F_1", front_curve_d, "front curve"),
        ),
        tilt_prism_prism_d(
            tilt_deg, front_curve_d=front_curve_d, centre_thickness_mm=centre_thickness_mm, index=index
        ),
        source="derived: Prentice's rule for the front, where a ray to the back vertex meets it",
    )


def wrapped_decentration_working(
    *, a_mm: float, dbl_mm: float, monocular_pd_mm: float, wrap_deg: float
) -> Working:
    """Return the decentration along a wrapped lens, worked.

    a_mm, dbl_mm, monocular_pd_mm, wrap_deg: as in `wrapped_decentration_in_mm`, which also says what it
        raises.
    """
    value = wrapped_decentration_in_mm(
        a_mm=a_mm, dbl_mm=dbl_mm, monocular_pd_mm=monocular_pd_mm, wrap_deg=wrap_deg
    )
    terms = (
        distance_term("DBL", dbl_mm, "distance between lenses"),
        distance_term("A", a_mm, "boxed width along the lens"),
        direction_term("w", wrap_deg, "wrap"),
        distance_term("PD", monocular_pd_mm, "monocular distance"),
    )
    return _millimetres(
        "decentration along the lens, in (minus is out)",
        "D",
        "(DBL / 2 + A / 2 * cos(w) - PD) / cos(w)",
        terms,
        value,
        source="derived: the lens as a flat plate, turned about its nasal edge",
    )


def _tilt(pantoscopic_deg: float) -> Term:
    return direction_term("p", pantoscopic_deg, "pantoscopic tilt")


def _millimetres(
    what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float, *, source: str = ""
) -> Working:
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="mm",
        digits=2,
        source=source,
    )
