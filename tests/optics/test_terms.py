"""What workings share: numbers printed in full, steps at right angles, steps of two eyes in one chain."""

import pytest
from worked import assert_worked

from lablib.optics.power_workings import prism_at_workings
from lablib.optics.prescription import Prescription
from lablib.optics.terms import (
    direction_term,
    distance_term,
    in_full,
    marked,
    power_term,
    prism_term,
    quarter_turn_step,
)
from lablib.working import Term, Working


@pytest.mark.parametrize(
    ("term", "printed"),
    [
        (power_term("S", 2, "sphere"), "2.00"),
        (power_term("S", -2.125, "sphere"), "-2.125"),
        (power_term("S", 2.123456, "sphere"), "2.1235"),
        (distance_term("d", 12, "distance"), "12.0"),
        (distance_term("d", 14.25, "distance"), "14.25"),
        (direction_term("A", 20, "axis"), "20"),
        (direction_term("A", 54.763, "axis"), "54.763"),
        (prism_term("P", 1.5, "prism"), "1.50"),
        (in_full("n", 1.5, "", least_digits=3), "1.500"),
    ],
)
def test_numbers_are_printed_in_full_up_to_four_decimals(term: Term, printed: str):
    assert term.printed == printed


@pytest.mark.parametrize(
    ("angle", "formula", "value"), [(20, "A + 90", 110), (90, "A + 90", 180), (91, "A - 90", 1)]
)
def test_a_quarter_turn_stays_an_axis(angle: float, formula: str, value: float):
    step = quarter_turn_step("across", "A'", direction_term("A", angle, "axis"), value)
    assert step.formula == formula
    assert_worked([step])


def test_the_steps_of_two_eyes_keep_their_symbols_apart():
    right, left = Prescription(sphere_d=-4, cylinder_d=-2, axis_deg=30), Prescription(sphere_d=-3)
    steps = (
        *marked(prism_at_workings(right, eye="right", in_mm=0, up_mm=-10), "_R", whose="right eye"),
        *marked(prism_at_workings(left, eye="left", in_mm=2, up_mm=-8), "_L", whose="left eye"),
    )
    assert_worked(steps)
    assert steps[0].formula == "S_R + C_R * (sin(A_R))^2"
    assert [step.symbol for step in steps[-2:]] == ["P_in_L", "P_up_L"]


def test_functions_and_primes_are_left_as_they_are():
    step = Working(
        what="vergence",
        symbol="L'",
        formula="max(L', abs(F))",
        terms=(Term(symbol="L'", value=1.0), Term(symbol="F", value=-2.0)),
        value=2.0,
    )
    (found,) = marked([step], "_R", whose="right eye")
    assert (found.symbol, found.formula) == ("L'_R", "max(L'_R, abs(F_R))")
    assert found.substituted == "max(1.00, abs((-2.00)))"
    assert found.what == "right eye: vergence"
