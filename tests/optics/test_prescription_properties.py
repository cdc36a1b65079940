"""What holds for every prescription, tried on many by hypothesis."""

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.power import wrapped_axis_deg
from lablib.optics.prescription import Prescription, at_vertex_distance, combine, residual_when_turned
from lablib.optics.prism import Prism, decentration_for, in_words, prism_at, resultant

# The same examples on every run, so that a failure is a failure of the code.
tried = settings(derandomize=True, deadline=None, max_examples=200, database=None)

hundredths = st.integers(-2000, 2000).map(lambda number: number / 100)
cylinders = st.integers(-1000, 1000).map(lambda number: number / 100)
whole_axes = st.integers(1, 180)
eyes = st.sampled_from(Eye)
places = st.floats(-35, 35)


@st.composite
def written(draw: st.DrawFn) -> Prescription:
    """A prescription as it can be written: hundredths of a dioptre, whole degrees."""
    return Prescription(
        sphere_d=draw(hundredths),
        cylinder_d=draw(cylinders),
        axis_deg=draw(whole_axes),
        addition_d=draw(st.integers(0, 400)) / 100,
    )


@st.composite
def computed(draw: st.DrawFn) -> Prescription:
    """A prescription as a computation may give it."""
    return Prescription(
        sphere_d=draw(st.floats(-20, 20)),
        cylinder_d=draw(st.floats(-10, 10)),
        axis_deg=draw(st.floats(0.001, 180)),
    )


def assert_same_lens(one: Prescription, other: Prescription, tolerance: float = 1e-7) -> None:
    np.testing.assert_allclose(one.power_matrix(), other.power_matrix(), atol=tolerance)


@tried
@given(written())
def test_transposing_twice_gives_the_prescription_back(lens: Prescription):
    assert lens.transposed().transposed() == lens


@tried
@given(computed())
def test_transposing_leaves_every_meridian_as_it_was(lens: Prescription):
    meridians = np.arange(0, 180, 7.5)
    other = lens.transposed()
    np.testing.assert_allclose(
        other.power_in_meridian_d(meridians), lens.power_in_meridian_d(meridians), atol=1e-8
    )
    assert other.spherical_equivalent_d == pytest.approx(lens.spherical_equivalent_d, abs=1e-8)
    assert lens.cylinder_d == 0 or other.cylinder_d == -lens.cylinder_d


@tried
@given(written())
def test_matrix_and_vector_give_the_prescription_back(lens: Prescription):
    minus = lens.in_form("minus")
    for back in (
        Prescription.from_power_matrix(lens.power_matrix(), addition_d=lens.addition_d),
        Prescription.from_power_vector(*lens.power_vector(), addition_d=lens.addition_d),
    ):
        assert back.sphere_d == pytest.approx(minus.sphere_d, abs=1e-8)
        assert back.cylinder_d == pytest.approx(minus.cylinder_d, abs=1e-8)
        assert back.axis_deg == pytest.approx(minus.axis_deg, abs=1e-6)
        assert back.addition_d == lens.addition_d


@tried
@given(computed())
def test_the_matrix_holds_the_power_of_every_meridian(lens: Prescription):
    for meridian in (0, 17, 90, 133):
        way = np.array([math.cos(math.radians(meridian)), math.sin(math.radians(meridian))])
        assert way @ lens.power_matrix() @ way == pytest.approx(lens.power_in_meridian_d(meridian), abs=1e-9)


@tried
@given(written())
def test_reading_what_was_written(lens: Prescription):
    assert Prescription.parse(lens.written()) == lens
    assert Prescription.parse(lens.written("minus")) == lens.in_form("minus")
    assert Prescription.parse(lens.written("plus")) == lens.in_form("plus")


@tried
@given(computed())
def test_reading_what_was_computed_gives_it_back_rounded(lens: Prescription):
    back = Prescription.parse(str(lens))
    assert back.sphere_d == pytest.approx(lens.sphere_d, abs=0.0051)
    assert back.cylinder_d == pytest.approx(lens.cylinder_d, abs=0.0051)
    if back.cylinder_d:
        assert abs(math.remainder(back.axis_deg - lens.axis_deg, 180)) <= 0.5


@tried
@given(computed(), computed())
def test_a_sum_has_the_sum_of_the_powers_and_no_order(first: Prescription, second: Prescription):
    try:
        total = combine(first, second)
    except LabError:
        assume(False)
    np.testing.assert_allclose(total.power_matrix(), first.power_matrix() + second.power_matrix(), atol=1e-7)
    assert_same_lens(total, combine(second, first))
    assert total.cylinder_d <= 0


@tried
@given(computed(), st.floats(-400, 400))
def test_lens_and_residual_together_are_the_turned_lens(lens: Prescription, turn: float):
    residual = residual_when_turned(lens, turn)
    assert residual.spherical_equivalent_d == pytest.approx(0, abs=1e-8)
    strength = 2 * abs(lens.cylinder_d * math.sin(math.radians(turn)))
    assert residual.cylinder_d == pytest.approx(-strength, abs=1e-6)
    if lens.cylinder_d:
        turned = Prescription(
            sphere_d=lens.sphere_d,
            cylinder_d=lens.cylinder_d,
            axis_deg=wrapped_axis_deg(lens.axis_deg + turn),
        )
        together = lens.power_matrix() + residual.power_matrix()
        np.testing.assert_allclose(together, turned.power_matrix(), atol=1e-6)


@tried
@given(computed(), st.floats(0, 20), st.floats(0, 20))
def test_a_lens_moved_there_and_back_is_the_lens(lens: Prescription, from_mm: float, to_mm: float):
    try:
        there = at_vertex_distance(lens, from_mm=from_mm, to_mm=to_mm)
    except LabError:
        assume(False)
    back = at_vertex_distance(there, from_mm=to_mm, to_mm=from_mm)
    assert_same_lens(back, lens)
    # Nearer the eye a plus lens must be stronger and a minus lens weaker: both go up.
    if from_mm >= to_mm:
        assert there.sphere_d >= lens.sphere_d - 1e-9


@tried
@given(computed(), places, places)
def test_right_and_left_mirror(lens: Prescription, in_mm: float, up_mm: float):
    mirrored = Prescription(
        sphere_d=lens.sphere_d,
        cylinder_d=lens.cylinder_d,
        axis_deg=wrapped_axis_deg(-lens.axis_deg) if lens.cylinder_d else None,
    )
    right = prism_at(lens, eye="right", in_mm=in_mm, up_mm=up_mm)
    left = prism_at(mirrored, eye="left", in_mm=in_mm, up_mm=up_mm)
    assert right == pytest.approx(left, abs=1e-6)


@tried
@given(computed(), eyes, places, places)
def test_the_centre_that_gives_a_prism_is_found_again(
    lens: Prescription, eye: Eye, in_mm: float, up_mm: float
):
    principal = lens.sphere_d, lens.sphere_d + lens.cylinder_d
    assume(min(map(abs, principal)) > 0.01)
    in_prism, up_prism = prism_at(lens, eye=eye, in_mm=in_mm, up_mm=up_mm)
    centre = decentration_for(lens, eye=eye, in_prism_d=in_prism, up_prism_d=up_prism)
    assert centre == pytest.approx((-in_mm, -up_mm), abs=1e-5)


@tried
@given(computed(), eyes, places, places, st.floats(-3, 3))
def test_prism_grows_straight_with_the_distance(
    lens: Prescription, eye: Eye, in_mm: float, up_mm: float, times: float
):
    one = np.array(prism_at(lens, eye=eye, in_mm=in_mm, up_mm=up_mm))
    many = prism_at(lens, eye=eye, in_mm=times * in_mm, up_mm=times * up_mm)
    np.testing.assert_allclose(many, times * one, atol=1e-8)


@tried
@given(eyes, st.floats(-12, 12), st.floats(-12, 12))
def test_a_resultant_resolves_into_its_parts(eye: Eye, in_prism: float, up_prism: float):
    prism = resultant(eye=eye, in_prism_d=in_prism, up_prism_d=up_prism)
    assert prism.resolved(eye=eye) == pytest.approx((in_prism, up_prism), abs=1e-9)
    assert 0 <= prism.base < 360


@tried
@given(eyes, st.floats(0, 20), st.floats(0, 360))
def test_a_base_means_the_same_way_on_the_drawing_for_both_eyes(eye: Eye, amount: float, base: float):
    inwards, upwards = Prism(amount_prism_d=amount, base=base).resolved(eye=eye)
    assert eye.nasal_sign * inwards == pytest.approx(amount * math.cos(math.radians(base)), abs=1e-9)
    assert upwards == pytest.approx(amount * math.sin(math.radians(base)), abs=1e-9)


@tried
@given(st.floats(-12, 12), st.floats(-12, 12))
def test_words_say_both_parts_without_a_sign(in_prism: float, up_prism: float):
    words = in_words(in_prism, up_prism)
    assert "-" not in words
    assert (f"{abs(in_prism):.2f} base {'in' if in_prism > 0 else 'out'}" in words) == (abs(in_prism) > 0.005)
