"""Powers and prisms with their working, for a learner to follow by hand.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.prism import powers_for, prism_at
from lablib.optics.terms import (
    axis_term,
    direction_term,
    distance_term,
    power_step,
    prism_step,
    quarter_turn_step,
    sphere_and_cylinder,
)
from lablib.working import Term, Working

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
        terms=sphere_and_cylinder(rx),
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
    sphere, cylinder = sphere_and_cylinder(rx)
    return (
        power_step("sphere in the other form", "S'", "S + C", (sphere, cylinder), other.sphere_d),
        power_step("cylinder in the other form", "C'", "-C", (cylinder,), other.cylinder_d),
        quarter_turn_step("axis in the other form", "A'", axis_term(rx), other.axis_deg),
    )


def power_in_meridian_working(rx: Prescription, meridian_deg: float) -> Working:
    """Return the power along a meridian, worked.

    rx: the prescription.
    meridian_deg: the meridian [degrees].
    """
    what, value = f"power along {meridian_deg:g}", rx.power_in_meridian_d(meridian_deg)
    sphere, cylinder = sphere_and_cylinder(rx)
    if not rx.cylinder_d:
        return power_step(what, "F", "S", (sphere,), value)
    meridian = direction_term("m", meridian_deg, "meridian")
    return power_step(what, "F", "S + C * (sin(m - A))^2", (sphere, cylinder, meridian, axis_term(rx)), value)


def vertex_distance_workings(rx: Prescription, *, from_mm: float, to_mm: float) -> tuple[Working, ...]:
    """Return the powers at another vertex distance, worked, each principal meridian by itself.

    rx: the lens as tested.
    from_mm, to_mm: vertex distance of the tested and of the worn lens [mm].

    Raises LabError as `at_vertex_distance` does.
    """
    moved = at_vertex_distance(rx, from_mm=from_mm, to_mm=to_mm)
    distances = (
        distance_term("d1", from_mm, "tested vertex distance"),
        distance_term("d2", to_mm, "worn vertex distance"),
    )
    sphere, cylinder = sphere_and_cylinder(rx)
    first = _moved("sphere at the worn distance", sphere, distances, moved.sphere_d)
    if not rx.cylinder_d:
        return (first,)
    sum_d, moved_sum_d = rx.sphere_d + rx.cylinder_d, moved.sphere_d + moved.cylinder_d
    across = power_step("power across the axis", "F", "S + C", (sphere, cylinder), sum_d, digits=3)
    second = _moved("power across the axis at the worn distance", across.as_term(), distances, moved_sum_d)
    both = (second.as_term(), first.as_term())
    third = power_step("cylinder at the worn distance", "C'", "F' - S'", both, moved.cylinder_d)
    return first, across, second, third


def prism_at_workings(rx: Prescription, *, eye: Eye | str, in_mm: float, up_mm: float) -> tuple[Working, ...]:
    """Return the prism at a point, worked; the last two steps are base in and base up.

    rx: the power for distance.
    eye: the eye it is for.
    in_mm, up_mm: the point, inwards and upwards from the optical centre [mm].

    Raises LabError as `prism_at` does.
    """
    in_prism_d, up_prism_d = prism_at(rx, eye=eye, in_mm=in_mm, up_mm=up_mm)
    inwards = distance_term("in", in_mm, "inwards from the centre")
    upwards = distance_term("up", up_mm, "upwards from the centre")
    if not rx.cylinder_d:
        sphere, _ = sphere_and_cylinder(rx)
        return (
            _prism("P_in", "-S * in / 10", (sphere, inwards), in_prism_d),
            _prism("P_up", "-S * up / 10", (sphere, upwards), up_prism_d),
        )
    matrix = power_matrix_workings(rx, eye)
    along_in, crossed, along_up = (step.as_term() for step in matrix)
    return (
        *matrix,
        _prism("P_in", "-(F180 * in + Fx * up) / 10", (along_in, inwards, crossed, upwards), in_prism_d),
        _prism("P_up", "-(Fx * in + F90 * up) / 10", (crossed, inwards, along_up, upwards), up_prism_d),
    )


def power_matrix_workings(rx: Prescription, eye: Eye | str) -> tuple[Working, Working, Working]:
    """Return the power matrix as one eye has it, worked: along 180, cross term, along 90.

    rx: the power for distance, with a cylinder.
    eye: the eye it is for.

    Raises LabError for no eye.
    """
    along_in, crossed, along_up = powers_for(rx, eye=eye)
    sphere, cylinder, axis = (*sphere_and_cylinder(rx), axis_term(rx))
    oblique = "-C * sin(A) * cos(A)" if Eye.of(eye) is Eye.RIGHT else "C * sin(A) * cos(A)"
    terms = (sphere, cylinder, axis)
    return (
        power_step(
            "power along 180", "F180", "S + C * (sin(A))^2", terms, along_in, digits=3, source=_PRENTICE
        ),
        power_step("cross term of the oblique axis", "Fx", oblique, (cylinder, axis), crossed, digits=3),
        power_step("power along 90", "F90", "S + C * cos(A)^2", terms, along_up, digits=3),
    )


def _moved(what: str, power: Term, distances: tuple[Term, Term], value: float) -> Working:
    formula = f"{power.symbol} / (1 - (d1 - d2) / 1000 * {power.symbol})"
    terms = (power, *distances)
    return power_step(what, f"{power.symbol}'", formula, terms, value, digits=3, source=_VERTEX)


def _prism(symbol: str, formula: str, terms: tuple[Term, ...], value: float) -> Working:
    plus, minus = ("in", "out") if symbol == "P_in" else ("up", "down")
    what = f"prism at the point, base {plus} (minus is base {minus})"
    return prism_step(what, symbol, formula, terms, value, source=_PRENTICE)
