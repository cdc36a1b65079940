"""Optical crosses and crossed cylinders, and their workings.

The published crossed cylinders are those of M. Jalie, Lens Talk 2022: formulae read, figures computed.
"""

import math
import random

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from test_prescription_properties import computed, tried, written
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.cross_workings import (
    cross_prescription_workings,
    cross_workings,
    crossed_cylinders_workings,
)
from lablib.optics.optical_cross import OpticalCross, at_right_angles_deg, crossed_cylinders
from lablib.optics.prescription import Prescription, combine


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


def cross(first: float, meridian: float, second: float, other: float) -> OpticalCross:
    return OpticalCross(
        first_d=first, first_meridian_deg=meridian, second_d=second, second_meridian_deg=other
    )


# Common practice, S on the axis and S + C across it: +2.00 -1.50 x 020 has +0.50 on 110.
def test_the_sphere_stands_on_the_axis():
    assert OpticalCross.of(rx(2, -1.5, 20)) == cross(2.0, 20.0, 0.5, 110.0)
    assert OpticalCross.of(rx(0.5, 1.5, 110)) == cross(0.5, 110.0, 2.0, 20.0)
    assert OpticalCross.of(rx(-3)) == cross(-3.0, 180.0, -3.0, 90.0)
    assert OpticalCross.of(rx(2, -1.5, 20)).written() == "+2.00 on 020, +0.50 on 110"


def test_a_cross_gives_both_forms():
    lens = cross(2.0, 20.0, 0.5, 110.0)
    assert lens.prescription() == lens.prescription("minus") == rx(2, -1.5, 20)
    assert lens.prescription("plus") == rx(0.5, 1.5, 110)
    assert cross(-1.0, 45.0, -1.0, 135.0).prescription("plus") == rx(-1)


def test_the_cylinders_of_a_cross_have_their_axes_on_the_other_meridian():
    assert cross(2.0, 20.0, 0.5, 110.0).cylinders() == (rx(0, 2, 110), rx(0, 0.5, 20))


@tried
@given(computed())
def test_a_prescription_comes_back_from_its_cross(lens: Prescription):
    drawn = OpticalCross.of(lens)
    np.testing.assert_allclose(drawn.prescription().power_matrix(), lens.power_matrix(), atol=1e-7)
    for power, meridian in (
        (drawn.first_d, drawn.first_meridian_deg),
        (drawn.second_d, drawn.second_meridian_deg),
    ):
        assert lens.power_in_meridian_d(meridian) == pytest.approx(power, abs=1e-7)


@tried
@given(written())
def test_the_cylinders_of_a_cross_together_are_the_lens(lens: Prescription):
    drawn = OpticalCross.of(lens)
    assume(max(abs(drawn.first_d), abs(drawn.second_d)) <= 20)
    cylinders = drawn.cylinders()
    np.testing.assert_allclose(combine(*cylinders).power_matrix(), lens.power_matrix(), atol=1e-7)


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        ((2.0, 20.0), (2.0, 60.0), (0.4679, 3.0642, 40.0)),
        ((2.0, 30.0), (3.0, 70.0), (0.5581, 3.8838, 54.763)),
    ],
)
def test_crossed_cylinders(first: tuple, second: tuple, expected: tuple):
    total = crossed_cylinders(
        first_d=first[0], first_axis_deg=first[1], second_d=second[0], second_axis_deg=second[1]
    )
    lens = total.in_form("plus")
    assert (lens.sphere_d, lens.cylinder_d) == pytest.approx(expected[:2], abs=0.00005)
    assert lens.axis_deg == pytest.approx(expected[2], abs=0.0005)
    assert total.cylinder_d < 0


@pytest.mark.parametrize(
    ("values", "words"),
    [
        (
            (1.0, 20.0, 2.0, 100.0),
            "meridians 20 and 100 are 80 degrees apart: the meridians of a cross stand 90 apart; give 20 "
            "with 110",
        ),
        (
            (1.0, 120.0, 2.0, 120.0),
            "meridians 120 and 120 are 0 degrees apart: the meridians of a cross stand 90 apart; give 120 "
            "with 30",
        ),
        (
            (1.0, 0.0, 2.0, 90.0),
            "first meridian 0 is out of range: give above 0 and up to 180 degrees; 0 is written 180",
        ),
        (
            (1.0, 90.0, 2.0, 190.0),
            "second meridian 190 is out of range: give above 0 and up to 180 degrees; 0 is written 180",
        ),
        ((41.0, 90.0, 2.0, 180.0), "power on 90 41 is out of range: give from -40 to 40 D"),
    ],
)
def test_words_for_a_cross_that_cannot_be(values: tuple, words: str):
    with pytest.raises(LabError) as caught:
        cross(*values)
    assert str(caught.value) == words


def test_words_for_a_form_and_a_cylinder_that_are_none():
    with pytest.raises(LabError, match="form 'both' is not a cylinder form"):
        cross(2.0, 20.0, 0.5, 110.0).prescription("both")
    with pytest.raises(LabError, match="cylinder -30 is out of range"):
        cross(15.0, 20.0, -15.0, 110.0).prescription()
    with pytest.raises(LabError, match="cylinder 25 is out of range"):
        cross(25.0, 20.0, 24.0, 110.0).cylinders()
    with pytest.raises(LabError, match="axis 0 is written 180"):
        crossed_cylinders(first_d=1, first_axis_deg=0, second_d=1, second_axis_deg=90)


@pytest.mark.parametrize(("angle", "other"), [(20, 110), (90, 180), (180, 90), (91, 1)])
def test_at_right_angles(angle: float, other: float):
    assert at_right_angles_deg(angle) == other


def test_workings_of_a_cross():
    for seed in range(200):
        draw = random.Random(seed)
        cylinder = 0.0 if seed % 7 == 0 else draw.randrange(-24, 25) / 4
        lens = rx(draw.randrange(-48, 49) / 4, cylinder, draw.randrange(1, 181))
        steps = cross_workings(lens)
        drawn = OpticalCross.of(lens)
        assert_worked(steps)
        assert len(steps) == (3 if lens.cylinder_d else 1)
        assert steps[0].value == drawn.first_d
        assert steps[-1].value == drawn.second_d
        for form in ("minus", "plus"):
            back = cross_prescription_workings(drawn, form=form)
            assert_worked(back)
            wanted = lens.in_form(form)
            found = [step.value for step in back]
            assert found == pytest.approx([wanted.sphere_d, wanted.cylinder_d, wanted.axis_deg][: len(back)])
            assert len(back) == (3 if lens.cylinder_d else 1)


def test_what_a_learner_reads_of_a_cross():
    power, meridian, across = cross_workings(rx(2, -1.5, 20))
    assert (power.what, power.result) == ("power on the axis, 20", "2.00 D")
    assert (meridian.substituted, meridian.result) == ("20 + 90", "110 degrees")
    assert (across.substituted, across.result) == ("2.00 + (-1.50)", "0.50 D")


def assert_sum(steps: tuple, total: Prescription) -> None:
    assert_worked(steps)
    _, _, sphere, cylinder, *axis = steps
    forms = (total, total.transposed())
    lens = Prescription(
        sphere_d=sphere.value, cylinder_d=cylinder.value, axis_deg=axis[0].value if axis else None
    )
    assert any(lens == form for form in forms)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ((2.0, 20), (2.0, 60)),
        ((2.0, 30), (3.0, 70)),
        ((2.0, 20), (2.0, 110)),  # a sphere
        ((2.0, 20), (-2.0, 20)),  # nothing left
        ((2.0, 20), (-2.0, 65)),  # no tangent: halfway
        ((1.0, 20), (0.0, 65)),
        ((0.0, 20), (1.5, 65)),
        ((1.0, 180), (-2.5, 5)),
        ((-1.0, 5), (-2.5, 180)),
    ],
)
def test_workings_of_crossed_cylinders(first: tuple, second: tuple):
    values = {
        "first_d": first[0],
        "first_axis_deg": first[1],
        "second_d": second[0],
        "second_axis_deg": second[1],
    }
    assert_sum(crossed_cylinders_workings(**values), crossed_cylinders(**values))


quarters = st.integers(-24, 24).map(lambda number: number / 4)


@tried
@given(quarters, st.integers(1, 180), quarters, st.integers(1, 180))
def test_workings_of_any_crossed_cylinders(first: float, start: int, second: float, end: int):
    values = {"first_d": first, "first_axis_deg": start, "second_d": second, "second_axis_deg": end}
    assert_sum(crossed_cylinders_workings(**values), crossed_cylinders(**values))


def test_what_a_learner_reads_of_crossed_cylinders():
    steps = crossed_cylinders_workings(first_d=2.0, first_axis_deg=20, second_d=2.0, second_axis_deg=60)
    assert [step.result for step in steps] == [
        "40 degrees",
        "20.000 degrees",
        "0.468 D",
        "3.064 D",
        "40.000 degrees",
    ]
    assert steps[1].substituted == "atan(2.00 * sin(2 * 40) / (2.00 + 2.00 * cos(2 * 40))) / 2"
    assert math.isclose(steps[2].value, 0.4679, abs_tol=0.00005)
