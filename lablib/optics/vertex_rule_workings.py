"""The rule of thumb for vertex distance as workings, and how far it lies from the exact power.

Every value is the numeric function's; only the steps are written here.
"""

from lablib.optics.power_workings import vertex_distance_workings
from lablib.optics.prescription import Prescription
from lablib.optics.terms import distance_term, power_step, sphere_and_cylinder
from lablib.optics.vertex_rule import (
    at_vertex_distance_by_rule,
    rule_less_exact_d,
    vertex_change_by_rule_d,
)
from lablib.working import Term, Working

_RULE = "common practice: change = d F^2, distance in metres"


def vertex_rule_workings(rx: Prescription, *, from_mm: float, to_mm: float) -> tuple[Working, ...]:
    """Return the powers at another vertex distance by the rule, worked, each meridian by itself.

    rx, from_mm, to_mm: as in `at_vertex_distance_by_rule`, which also says what it raises.
    """
    moved = at_vertex_distance_by_rule(rx, from_mm=from_mm, to_mm=to_mm)
    closer = _closer(from_mm, to_mm)
    sphere, cylinder = sphere_and_cylinder(rx)
    first = _by_rule("sphere", sphere, closer, moved.sphere_d)
    if not rx.cylinder_d:
        return (closer, *first)
    across = power_step(
        "power across the axis", "F", "S + C", (sphere, cylinder), rx.sphere_d + rx.cylinder_d, digits=3
    )
    second = _by_rule("power across the axis", across.as_term(), closer, moved.sphere_d + moved.cylinder_d)
    both = (second[-1].as_term(), first[-1].as_term())
    last = power_step("cylinder at the worn distance", "C_r", "F_r - S_r", both, moved.cylinder_d)
    return (closer, *first, across, *second, last)


def rule_against_exact_workings(power_d: float, *, from_mm: float, to_mm: float) -> tuple[Working, ...]:
    """Return one power by the rule and exactly, worked, and as the last step how far they lie apart.

    power_d: [D]; from_mm, to_mm: as in `rule_less_exact_d`, which also says what it raises.
    """
    lens = Prescription(sphere_d=power_d)
    by_rule = vertex_rule_workings(lens, from_mm=from_mm, to_mm=to_mm)
    exact = vertex_distance_workings(lens, from_mm=from_mm, to_mm=to_mm)
    apart = power_step(
        "how far the rule lies above the exact power",
        "e",
        "S_r - S'",
        (by_rule[-1].as_term(), exact[-1].as_term()),
        rule_less_exact_d(power_d, from_mm=from_mm, to_mm=to_mm),
        digits=3,
    )
    return (*by_rule, *exact, apart)


def _closer(from_mm: float, to_mm: float) -> Working:
    terms = (
        distance_term("d1", from_mm, "tested vertex distance"),
        distance_term("d2", to_mm, "worn vertex distance"),
    )
    return Working(
        what="how much closer the lens is worn (minus: farther)",
        symbol="d",
        formula="d1 - d2",
        terms=terms,
        value=from_mm - to_mm,
        unit="mm",
        digits=max(term.digits for term in terms),
    )


def _by_rule(what: str, power: Term, closer: Working, value: float) -> tuple[Working, Working]:
    change = power_step(
        f"change of the {what} by the rule",
        f"change_{power.symbol}",
        f"d / 1000 * {power.symbol}^2",
        (closer.as_term(), power),
        vertex_change_by_rule_d(power.value, closer_mm=closer.value),
        digits=4,
        source=_RULE,
    )
    terms = (power, change.as_term())
    moved = power_step(
        f"{what} at the worn distance by the rule",
        f"{power.symbol}_r",
        f"{power.symbol} + {change.symbol}",
        terms,
        value,
        digits=3,
    )
    return change, moved
