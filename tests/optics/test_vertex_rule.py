"""The rule of thumb for vertex distance against the exact change, and its workings."""

import random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import tried
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.vertex_rule import (
    at_vertex_distance_by_rule,
    rule_less_exact_d,
    vertex_change_by_rule_d,
)
from lablib.optics.vertex_rule_workings import rule_against_exact_workings, vertex_rule_workings


def rx(
    sphere: float, cylinder: float = 0.0, axis: float | None = None, addition: float = 0.0
) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis, addition_d=addition)


# Computed, d F^2: -10.00 by 12 mm is 0.012 * 100 = 1.20 up; exactly it is 1.07 (published values, -8.9286).
def test_the_change_by_the_rule():
    assert vertex_change_by_rule_d(-10.0, closer_mm=12.0) == pytest.approx(1.2)
    assert vertex_change_by_rule_d(10.0, closer_mm=12.0) == pytest.approx(1.2)
    assert vertex_change_by_rule_d(-10.0, closer_mm=-4.0) == pytest.approx(-0.4)
    np.testing.assert_allclose(vertex_change_by_rule_d(np.array([-10.0, 5.0]), closer_mm=4.0), [0.4, 0.1])


# Computed by hand: +12.00 + 0.002 * 144 = 12.288; +10.00 + 0.002 * 100 = 10.200. Exactly +12.2951 -2.0910
# (published values).
def test_both_meridians_move():
    worn = at_vertex_distance_by_rule(rx(12, -2, 90, 2.0), from_mm=14, to_mm=12)
    assert (worn.sphere_d, worn.cylinder_d) == pytest.approx((12.288, -2.088))
    assert (worn.axis_deg, worn.addition_d) == (90, 2.0)
    assert at_vertex_distance_by_rule(rx(-11), from_mm=14, to_mm=10) == rx(-10.516)


def test_where_rule_and_exact_part():
    # The exact values are published: -8.9286 and +11.3636.
    assert rule_less_exact_d(-10.0, from_mm=12, to_mm=0) == pytest.approx(-8.8 + 8.9286, abs=0.00005)
    assert rule_less_exact_d(10.0, from_mm=12, to_mm=0) == pytest.approx(11.2 - 11.3636, abs=0.00005)
    apart = rule_less_exact_d(np.array([[-4.0, 0.0], [4.0, 10.0]]), from_mm=12, to_mm=0)
    assert apart.shape == (2, 2)
    assert apart[0, 1] == 0.0
    assert apart[1, 1] == rule_less_exact_d(10.0, from_mm=12, to_mm=0)
    # At everyday powers and 2 mm the two agree to a hundredth.
    assert np.abs(rule_less_exact_d(np.arange(-10.0, 10.25, 0.25), from_mm=14, to_mm=12)).max() < 0.01


@tried
@given(st.floats(-20, 20), st.floats(0, 16), st.floats(0, 16))
def test_the_next_part_is_the_square_of_the_distance_times_the_cube(
    power: float, from_mm: float, to_mm: float
):
    moved = (from_mm - to_mm) / 1000.0
    # Sum of a geometric series: F + d F^2 + d^2 F^3 / (1 - d F).
    left_out = moved**2 * power**3 / (1.0 - moved * power)
    assert rule_less_exact_d(power, from_mm=from_mm, to_mm=to_mm) == pytest.approx(-left_out, abs=1e-9)
    lens = rx(power)
    by_rule = at_vertex_distance_by_rule(lens, from_mm=from_mm, to_mm=to_mm).sphere_d
    exact = at_vertex_distance(lens, from_mm=from_mm, to_mm=to_mm).sphere_d
    assert by_rule - exact == pytest.approx(-left_out, abs=1e-8)


def test_words():
    for call in (at_vertex_distance_by_rule, vertex_rule_workings):
        with pytest.raises(LabError, match="tested vertex distance 50 is out of range"):
            call(rx(1), from_mm=50, to_mm=0)
    with pytest.raises(LabError, match=r"power \+30\.00 D cannot be moved 40 mm towards the eye"):
        rule_less_exact_d(30.0, from_mm=40, to_mm=0)
    # At powers and distances like these the rule is absurd: -40 + 64 = +24, and -20 + 16 = -4.
    with pytest.raises(LabError, match="cylinder -28 is out of range"):
        at_vertex_distance_by_rule(rx(-40, 20, 90), from_mm=40, to_mm=0)
    with pytest.raises(LabError, match="sphere nan is not a finite number"):
        rule_less_exact_d(np.array([1.0, np.nan]), from_mm=14, to_mm=12)


def test_workings():
    for seed in range(300):
        draw = random.Random(seed)
        cylinder = 0.0 if seed % 5 == 0 else draw.randrange(-24, 25) / 4
        lens = rx(draw.randrange(-48, 49) / 4, cylinder, draw.randrange(1, 181))
        from_mm, to_mm = draw.randrange(8, 17), draw.choice([0, 10, 12.5, 13, 14.25])
        steps = vertex_rule_workings(lens, from_mm=from_mm, to_mm=to_mm)
        worn = at_vertex_distance_by_rule(lens, from_mm=from_mm, to_mm=to_mm)
        assert_worked(steps)
        assert steps[2].value == worn.sphere_d
        assert steps[-1].value == (worn.cylinder_d if lens.cylinder_d else worn.sphere_d)
        both = rule_against_exact_workings(lens.sphere_d, from_mm=from_mm, to_mm=to_mm)
        assert_worked(both)
        assert both[-1].value == rule_less_exact_d(lens.sphere_d, from_mm=from_mm, to_mm=to_mm)


def test_what_a_learner_reads():
    closer, change, moved = vertex_rule_workings(rx(-10), from_mm=12, to_mm=0)
    assert (closer.substituted, closer.result) == ("12.0 - 0.0", "12.0 mm")
    assert (change.substituted, change.result) == ("12.0 / 1000 * (-10.00)^2", "1.2000 D")
    assert (moved.substituted, moved.result) == ("-10.00 + 1.2000", "-8.800 D")
    assert rule_against_exact_workings(-10.0, from_mm=12, to_mm=0)[-1].result == "0.129 D"
