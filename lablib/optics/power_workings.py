"""Powers and prisms with their working, for a learner to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.prism import powers_for, prism_at
from lablib.working import Term, Working, plain

_PRENTICE = "Prentice's rule in matrix form, W. F. Long, Am. J. Optom. 53 (1976) 27"
_VERTEX = "C. W. Brooks, Understanding Lens Surfacing"


def spherical_equivalent_working(rx: Prescription) -> Working:
    """Return the spherical equivalent, worked.

    rx: the prescription.
    """
    return Working(
        what="spherical equivalent",
        symbol="M",
        formula="S + C / 2",
        terms=_sphere_and_cylinder(rx),
        value=rx.spherical_equivalent_d,
        unit="D",
        digits=3,
    )


def transposition_workings(rx: Prescription) -> tuple[Working, ...]:
    """Return sphere, cylinder and axis in the other cylinder form, worked; none for a sphere.

    rx: the prescription.
    """
    if not rx.cylinder_d:
        return ()
    other = rx.transposed()
    sphere, cylinder = _sphere_and_cylinder(rx)
    quarter_turn = "A - 90" if rx.axis_deg > 90 else "A + 90"
    return (
        _power("sphere in the other form", "S'", "S + C", (sphere, cylinder), other.sphere_d),
        _power("cylinder in the other form", "C'", "-C", (cylinder,), other.cylinder_d),
        Working(
            what="axis in the other form",
            symbol="A'",
            formula=quarter_turn,
            terms=(_axis(rx),),
            value=other.axis_deg,
            unit="degrees",
            digits=_digits(rx.axis_deg, 0),
        ),
    )


def power_in_meridian_working(rx: Prescription, meridian_deg: float) -> Working:
    """Return the power along a meridian, worked.

    rx: the prescription.
    meridian_deg: the meridian [degrees].
    """
    what, value = f"power along {meridian_deg:g}", rx.power_in_meridian_d(meridian_deg)
    sphere, cylinder = _sphere_and_cylinder(rx)
    if not rx.cylinder_d:
        return _power(what, "F", "S", (sphere,), value)
    meridian = Term(
        symbol="m", value=meridian_deg, unit="degrees", digits=_digits(meridian_deg, 0), meaning="meridian"
    )
    return _power(what, "F", "S + C * sin(m - A)^2", (sphere, cylinder, meridian, _axis(rx)), value)


def vertex_distance_workings(rx: Prescription, *, from_mm: float, to_mm: float) -> tuple[Working, ...]:
    """Return the powers at another vertex distance, worked, each principal meridian by itself.

    rx: the lens as tested.
    from_mm, to_mm: vertex distance of the tested and of the worn lens [mm].

    Raises LabError as `at_vertex_distance` does.
    """
    moved = at_vertex_distance(rx, from_mm=from_mm, to_mm=to_mm)
    distances = (
        Term(
            symbol="d1",
            value=from_mm,
            unit="mm",
            digits=_digits(from_mm, 1),
            meaning="tested vertex distance",
        ),
        Term(symbol="d2", value=to_mm, unit="mm", digits=_digits(to_mm, 1), meaning="worn vertex distance"),
    )
    sphere, cylinder = _sphere_and_cylinder(rx)
    first = _moved("sphere at the worn distance", sphere, distances, moved.sphere_d)
    if not rx.cylinder_d:
        return (first,)
    sum_d, moved_sum_d = rx.sphere_d + rx.cylinder_d, moved.sphere_d + moved.cylinder_d
    across = _power("power across the axis", "F", "S + C", (sphere, cylinder), sum_d, digits=3)
    second = _moved("power across the axis at the worn distance", across.as_term(), distances, moved_sum_d)
    both = (second.as_term(), first.as_term())
    third = _power("cylinder at the worn distance", "C'", "F' - S'", both, moved.cylinder_d)
    return first, across, second, third


def prism_at_workings(rx: Prescription, *, eye: Eye | str, in_mm: float, up_mm: float) -> tuple[Working, ...]:
    """Return the prism at a point, worked; the last two steps are base in and base up.

    rx: the power for distance.
    eye: the eye it is for.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].

    Raises LabError as `prism_at` does.
    """
    in_prism_d, up_prism_d = prism_at(rx, eye=eye, in_mm=in_mm, up_mm=up_mm)
    inwards = Term(
        symbol="in", value=in_mm, unit="mm", digits=_digits(in_mm, 1), meaning="inwards from the centre"
    )
    upwards = Term(
        symbol="up", value=up_mm, unit="mm", digits=_digits(up_mm, 1), meaning="upwards from the centre"
    )
    if not rx.cylinder_d:
        sphere, _ = _sphere_and_cylinder(rx)
        return (
            _prism("P_in", "-S * in / 10", (sphere, inwards), in_prism_d),
            _prism("P_up", "-S * up / 10", (sphere, upwards), up_prism_d),
        )
    matrix = _matrix_workings(rx, eye)
    along_in, crossed, along_up = (step.as_term() for step in matrix)
    return (
        *matrix,
        _prism("P_in", "-(F180 * in + Fx * up) / 10", (along_in, inwards, crossed, upwards), in_prism_d),
        _prism("P_up", "-(Fx * in + F90 * up) / 10", (crossed, inwards, along_up, upwards), up_prism_d),
    )


def _moved(what: str, power: Term, distances: tuple[Term, Term], value: float) -> Working:
    formula = f"{power.symbol} / (1 - (d1 - d2) / 1000 * {power.symbol})"
    terms = (power, *distances)
    return _power(what, f"{power.symbol}'", formula, terms, value, digits=3, source=_VERTEX)


def _matrix_workings(rx: Prescription, eye: Eye | str) -> tuple[Working, Working, Working]:
    along_in, crossed, along_up = powers_for(rx, eye=eye)
    sphere, cylinder, axis = (*_sphere_and_cylinder(rx), _axis(rx))
    oblique = "-C * sin(A) * cos(A)" if Eye.of(eye) is Eye.RIGHT else "C * sin(A) * cos(A)"
    terms = (sphere, cylinder, axis)
    return (
        _power("power along 180", "F180", "S + C * sin(A)^2", terms, along_in, digits=3, source=_PRENTICE),
        _power("cross term of the oblique axis", "Fx", oblique, (cylinder, axis), crossed, digits=3),
        _power("power along 90", "F90", "S + C * cos(A)^2", terms, along_up, digits=3),
    )


def _power(
    what: str,
    symbol: str,
    formula: str,
    terms: tuple[Term, ...],
    value: float,
    *,
    digits: int = 2,
    source: str = "",
) -> Working:
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="D",
        digits=digits,
        source=source,
    )


def _prism(symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    plus, minus = ("in", "out") if symbol == "P_in" else ("up", "down")
    return Working(
        what=f"prism at the point, base {plus} (minus is base {minus})",
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="prism dioptres",
        source=_PRENTICE,
    )


def _sphere_and_cylinder(rx: Prescription) -> tuple[Term, Term]:
    return (
        Term(symbol="S", value=rx.sphere_d, unit="D", digits=_digits(rx.sphere_d, 2), meaning="sphere"),
        Term(symbol="C", value=rx.cylinder_d, unit="D", digits=_digits(rx.cylinder_d, 2), meaning="cylinder"),
    )


def _axis(rx: Prescription) -> Term:
    return Term(symbol="A", value=rx.axis_deg, unit="degrees", digits=_digits(rx.axis_deg, 0), meaning="axis")


def _digits(value: float, least: int) -> int:
    """Decimals that print a number in full, from `least` to 4."""
    return next((digits for digits in range(least, 4) if float(plain(value, digits)) == value), 4)
