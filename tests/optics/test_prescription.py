"""Prescription algebra against published values.

Where a row says "computed", it is arithmetic from the stated formula, done apart from this package.
"""

import math
from dataclasses import FrozenInstanceError

import numpy as np
import pytest

from lablib.errors import LabError
from lablib.optics.eye import EYES, Eye
from lablib.optics.power import wrapped_axis_deg, written_power
from lablib.optics.prescription import Prescription, at_vertex_distance, combine, residual_when_turned


def rx(
    sphere: float, cylinder: float = 0.0, axis: float | None = None, addition: float = 0.0
) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis, addition_d=addition)


def assert_is(lens: Prescription, sphere: float, cylinder: float, axis: float, tolerance: float) -> None:
    assert lens.sphere_d == pytest.approx(sphere, abs=tolerance)
    assert lens.cylinder_d == pytest.approx(cylinder, abs=tolerance)
    assert lens.axis_deg == pytest.approx(axis, abs=0.0005)


# Published transpositions, read in a text of the trade; the last is its rule that 180 is written, never 0.
@pytest.mark.parametrize(
    ("lens", "other"),
    [
        (rx(0.75, -0.50, 180), rx(0.25, 0.50, 90)),
        (rx(-2.00, -0.50, 15), rx(-2.50, 0.50, 105)),
        (rx(4.00, -2.50, 30), rx(1.50, 2.50, 120)),
        (rx(0.00, 1.25, 120), rx(1.25, -1.25, 30)),
        (rx(3.00, -3.00, 10), rx(0.00, 3.00, 100)),
        (rx(2.00, -3.50, 90), rx(-1.50, 3.50, 180)),
    ],
)
def test_transposition(lens: Prescription, other: Prescription):
    assert lens.transposed() == other
    assert other.transposed() == lens


def test_forms():
    minus, plus = rx(4.00, -2.50, 30, 2.0), rx(1.50, 2.50, 120, 2.0)
    assert minus.in_form("plus") == plus.in_form("plus") == plus
    assert minus.in_form("minus") == plus.in_form("minus") == minus
    assert rx(-2.0).transposed() == rx(-2.0).in_form("plus") == rx(-2.0).in_form("minus") == rx(-2.0)
    with pytest.raises(LabError) as caught:
        minus.in_form("cross")
    assert str(caught.value) == 'form \'cross\' is not a cylinder form: give "minus" or "plus"'


# Bhootra, Ophthalmic Lenses, p. 25 (read).
@pytest.mark.parametrize(("lens", "expected"), [(rx(4, 1, 90), 4.50), (rx(-4, -1, 90), -4.50)])
def test_spherical_equivalent(lens: Prescription, expected: float):
    assert lens.spherical_equivalent_d == expected


# S + C sin2(meridian - axis), computed.
@pytest.mark.parametrize(
    ("lens", "meridian_deg", "expected", "tolerance"),
    [
        (rx(-2, -3, 30), 180, -2.75, 0.005),
        (rx(-2, -3, 30), 90, -4.25, 0.005),
        (rx(3, -1.5, 102), 90, 2.9352, 0.00005),
        (rx(-6.25), 37, -6.25, 1e-12),
    ],
)
def test_power_in_a_meridian(lens: Prescription, meridian_deg: float, expected: float, tolerance: float):
    assert lens.power_in_meridian_d(meridian_deg) == pytest.approx(expected, abs=tolerance)


def test_power_in_many_meridians_is_an_array_and_in_one_a_float():
    meridians = np.array([[0.0, 30.0], [90.0, 120.0]])
    powers = rx(-2, -3, 30).power_in_meridian_d(meridians)
    np.testing.assert_allclose(powers, [[-2.75, -2.00], [-4.25, -5.00]], atol=1e-12)
    assert type(rx(-2, -3, 30).power_in_meridian_d(90)) is float
    np.testing.assert_array_equal(rx(-2).power_in_meridian_d(meridians), np.full((2, 2), -2.0))


# Jalie, Lens Talk 2022 (read).
def test_sum_of_two_lenses():
    total = combine(rx(1.75, 0.50, 45), rx(-2.25, -1.00, 135))
    assert total == rx(0.00, -1.50, 135)


# Crossed cylinders by Jalie's formulae (read), computed; the published form is plus cylinder.
@pytest.mark.parametrize(
    ("first", "second", "sphere", "cylinder", "axis"),
    [
        (rx(0, 2, 20), rx(0, 2, 60), 0.4679, 3.0642, 40.0),
        (rx(0, 2, 30), rx(0, 3, 70), 0.5581, 3.8838, 54.763),
    ],
)
def test_crossed_cylinders(
    first: Prescription, second: Prescription, sphere: float, cylinder: float, axis: float
):
    assert_is(combine(first, second).in_form("plus"), sphere, cylinder, axis, 0.00005)


def test_additions_add_up():
    assert combine(rx(1.0, addition=2.0), rx(-0.5)).addition_d == 2.0


# Thibos 1997, computed.
def test_power_vector():
    assert rx(-1, -2, 30).power_vector() == pytest.approx((-2.0000, 0.5000, 0.8660), abs=0.00005)
    assert Prescription.from_power_vector(-2.0, 0.5, math.sqrt(0.75)) == rx(-1, -2, 30)


# Long 1976, computed: the matrix of the oblique lens in the published prism table.
def test_power_matrix():
    np.testing.assert_allclose(rx(-4, -2, 30).power_matrix(), [[-4.5, 0.8660], [0.8660, -5.5]], atol=0.00005)
    np.testing.assert_allclose(rx(3).power_matrix(), [[3, 0], [0, 3]], atol=0)


# Formula read (it cites Brooks, Understanding Lens Surfacing), computed.
@pytest.mark.parametrize(
    ("tested", "from_mm", "to_mm", "sphere", "cylinder"),
    [
        (rx(-10), 12, 0, -8.9286, 0),
        (rx(10), 12, 0, 11.3636, 0),
        (rx(-6, -3, 180), 12, 0, -5.5970, -2.5257),
        (rx(12, -2, 90), 14, 12, 12.2951, -2.0910),
    ],
)
def test_vertex_distance(tested: Prescription, from_mm: float, to_mm: float, sphere: float, cylinder: float):
    worn = at_vertex_distance(tested, from_mm=from_mm, to_mm=to_mm)
    assert worn.sphere_d == pytest.approx(sphere, abs=0.00005)
    assert worn.cylinder_d == pytest.approx(cylinder, abs=0.00005)
    assert worn.axis_deg == tested.axis_deg


def test_vertex_distance_keeps_the_addition():
    assert at_vertex_distance(rx(4, -1, 20, 2.25), from_mm=14, to_mm=12).addition_d == 2.25


# IACLE Contact Lens Course Module 3, Appendix B, p. 127 (read): crossed cylinder of 2 C sin(turn). Its table
# gives +0.17 -0.35 for 1.00 D off by 10 degrees, +0.17 -0.35 for 2.00 off by 5, and so on.
@pytest.mark.parametrize(
    ("cylinder", "turn_deg", "sphere", "left_over"),
    [(1.0, 10, 0.17, -0.35), (2.0, 5, 0.17, -0.35), (3.0, 30, 1.50, -3.00), (2.5, 45, 1.77, -3.54)],
)
@pytest.mark.parametrize("sign", [1, -1])
@pytest.mark.parametrize("way", [1, -1])
def test_cylinder_off_axis(
    cylinder: float, turn_deg: float, sphere: float, left_over: float, sign: int, way: int
):
    residual = residual_when_turned(rx(1.25, sign * cylinder, 70), way * turn_deg)
    assert residual.sphere_d == pytest.approx(sphere, abs=0.005)
    assert residual.cylinder_d == pytest.approx(left_over, abs=0.005)


def test_the_residual_tells_which_way_the_lens_turned():
    # -3.00 x 180 turned to 30: what is left is -3.00 at 60, halfway and 45 degrees on (computed).
    assert residual_when_turned(rx(0, -3, 180), 30) == rx(1.5, -3.0, 60)
    assert residual_when_turned(rx(0, -3, 180), -30) == rx(1.5, -3.0, 120)


def test_a_sphere_and_a_half_turn_leave_nothing():
    assert residual_when_turned(rx(-6.25, addition=2), 17) == rx(0)
    assert residual_when_turned(rx(-6.25, -2.0, 20), 180) == rx(0)
    with pytest.raises(LabError, match="turn 'far' is not a number: give a number in degrees"):
        residual_when_turned(rx(1), "far")
    with pytest.raises(LabError, match="cylinder -24 is out of range"):
        residual_when_turned(rx(0, -12, 90), 90)


@pytest.mark.parametrize(
    ("lens", "text"),
    [
        (rx(2, -1.5, 90), "+2.00 -1.50 x 090"),
        (rx(-2.25, 0.5, 5, 2.25), "-2.25 +0.50 x 005 add +2.25"),
        (rx(0), "plano"),
        (rx(0, addition=2), "plano add +2.00"),
        (rx(0, -1, 180), "plano -1.00 x 180"),
        (rx(-3.25), "-3.25 DS"),
        (rx(-0.0), "plano"),
        (rx(-0.001, -0.002, 90), "plano"),
        (rx(1, -1, 0.3), "+1.00 -1.00 x 180"),
        (rx(1, -1, 179.7), "+1.00 -1.00 x 180"),
        (rx(1, addition=0.001), "+1.00 DS"),
        (rx(12.2951, -2.0910, 89.6), "+12.30 -2.09 x 090"),
    ],
)
def test_writing(lens: Prescription, text: str):
    assert lens.written() == str(lens) == text


def test_writing_in_the_other_form():
    assert rx(2, -1.5, 90).written("plus") == "+0.50 +1.50 x 180"
    assert rx(0.5, 1.5, 180).written("minus") == "+2.00 -1.50 x 090"


def test_spheres_are_alike_whatever_axis_stands_beside_them():
    assert rx(-2, 0.0, 90) == rx(-2, -0.0, 17) == rx(-2)
    assert hash(rx(-2, 0.0, 90)) == hash(rx(-2))
    assert rx(-2, 0.0, 90).axis_deg is None


def test_a_prescription_cannot_be_changed():
    with pytest.raises(FrozenInstanceError):
        rx(1).sphere_d = 2


@pytest.mark.parametrize(
    ("angle", "axis"), [(0, 180), (180, 180), (181, 1), (-10, 170), (360, 180), (1e-12, 180), (-1e-12, 180)]
)
def test_any_angle_becomes_an_axis(angle: float, axis: float):
    assert wrapped_axis_deg(angle) == axis


@pytest.mark.parametrize(
    ("power", "text"), [(-0.001, "0.00"), (0, "0.00"), (2, "+2.00"), (-10.126, "-10.13")]
)
def test_a_power_is_written_with_its_sign(power: float, text: str):
    assert written_power(power) == text


def test_eyes():
    assert Eye.of("right") is Eye.of(Eye.RIGHT) is Eye.RIGHT
    assert Eye.of("left") is Eye.LEFT
    assert (Eye.RIGHT.nasal_sign, Eye.LEFT.nasal_sign) == (1, -1)
    assert (Eye.RIGHT.other, Eye.LEFT.other) == (Eye.LEFT, Eye.RIGHT)
    assert EYES == (Eye.RIGHT, Eye.LEFT)
    assert f"{Eye.LEFT}" == "left"
    for wrong in ("OD", "", None, 1):
        with pytest.raises(LabError) as caught:
            Eye.of(wrong)
        assert str(caught.value) == f'eye {wrong!r} is not an eye: give "right" or "left"'
