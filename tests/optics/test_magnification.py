"""Spectacle magnification, and its workings."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import tried
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.magnification import (
    Magnification,
    power_factor,
    pupil_distance_mm,
    shape_factor,
    spectacle_magnification,
)
from lablib.optics.magnification_workings import spectacle_magnification_workings
from lablib.optics.prescription import Prescription
from lablib.optics.thick_lens import shape_power_d

LENS = {"front_curve_d": 8.0, "centre_thickness_mm": 4.0, "index": 1.498, "vertex_distance_mm": 12.0}


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# Published values, wearing position (computed): F1 +8.00, t 4, n 1.498, back vertex +4.00, 15 mm to the
# entrance pupil: 1.02183 x 1.06383 = 1.08705.
def test_spectacle_magnification():
    along, across = spectacle_magnification(rx(4), **LENS)
    assert along == across
    assert along.shape_factor == pytest.approx(1.02183, abs=5e-6)
    assert along.power_factor == pytest.approx(1.06383, abs=5e-6)
    assert along.factor == pytest.approx(1.08705, abs=1e-5)
    assert along.percent == pytest.approx(8.705, abs=0.001)


# The way on to the pupil, 3 mm, forgotten: 1.050 in place of 1.064 (computed).
def test_the_way_to_the_pupil_counts():
    assert pupil_distance_mm(12.0) == 15.0
    assert pupil_distance_mm(12.0, pupil_depth_mm=3.6) == pytest.approx(15.6)
    assert power_factor(4.0, vertex_distance_mm=12.0) == pytest.approx(1.064, abs=0.0005)
    assert power_factor(4.0, vertex_distance_mm=12.0 - 3.0) == pytest.approx(1.050, abs=0.0005)


def test_both_meridians_of_a_cylinder():
    along, across = spectacle_magnification(rx(4, -2, 90), **LENS)
    assert along == spectacle_magnification(rx(4), **LENS)[0]
    assert across == spectacle_magnification(rx(2), **LENS)[0]
    assert along.shape_factor == across.shape_factor


def test_a_minus_lens_makes_things_smaller_and_a_flat_plano_leaves_them():
    minus, _ = spectacle_magnification(rx(-6), **{**LENS, "front_curve_d": 2.0})
    assert minus.percent < -7.0
    flat, _ = spectacle_magnification(rx(0), **{**LENS, "front_curve_d": 0.0})
    assert flat == Magnification(shape_factor=1.0, power_factor=1.0)
    assert flat.percent == 0.0


@tried
@given(st.floats(0.5, 12), st.floats(0.5, 10), st.floats(1.45, 1.8))
def test_the_shape_factor_is_the_share_of_the_shape_power(front: float, thickness: float, index: float):
    factor = shape_factor(front_curve_d=front, centre_thickness_mm=thickness, index=index)
    assert factor == pytest.approx(shape_power_d(front, thickness, index) / front)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (
            lambda: shape_factor(front_curve_d=25.0, centre_thickness_mm=60.0, index=1.5),
            "centre thickness 60 mm reaches the focus of the front curve 25 D: give a thinner lens or a "
            "flatter front curve",
        ),
        (
            lambda: shape_factor(front_curve_d=8.0, centre_thickness_mm=0.0, index=1.5),
            "centre thickness 0 is out of range: give above 0 and up to 60 mm",
        ),
        (
            lambda: shape_factor(front_curve_d=30.0, centre_thickness_mm=2.0, index=1.5),
            "front curve 30 is out of range: give from -25 to 25 D",
        ),
        (
            lambda: shape_factor(front_curve_d=8.0, centre_thickness_mm=2.0, index=1.0),
            "index 1 is out of range: give from 1.4 to 1.95",
        ),
        (
            lambda: power_factor(35.0, vertex_distance_mm=30.0),
            "back vertex power +35.00 D brings light to a focus before the pupil, 33 mm behind the lens: "
            "give less power or a shorter vertex distance",
        ),
        (
            lambda: power_factor(41.0, vertex_distance_mm=12.0),
            "back vertex power 41 is out of range: give from -40 to 40 D",
        ),
        (
            lambda: pupil_distance_mm(3.0),
            "vertex distance 3 is out of range: give from 5 to 30 mm",
        ),
        (
            lambda: pupil_distance_mm(12.0, pupil_depth_mm=9.0),
            "entrance pupil behind the cornea 9 is out of range: give from 2 to 4.5 mm",
        ),
    ],
)
def test_words(call, words: str):
    with pytest.raises(LabError) as caught:
        call()
    assert str(caught.value) == words


def test_workings():
    for seed in range(200):
        draw = random.Random(seed)
        cylinder = 0.0 if seed % 5 == 0 else draw.randrange(-16, 17) / 4
        lens = rx(draw.randrange(-40, 41) / 4, cylinder, draw.randrange(1, 181))
        values = {
            "front_curve_d": draw.randrange(0, 41) / 4,
            "centre_thickness_mm": draw.randrange(10, 80) / 10,
            "index": draw.choice([1.498, 1.586, 1.66]),
            "vertex_distance_mm": draw.randrange(10, 17),
            "pupil_depth_mm": draw.choice([None, 3.5]),
        }
        along, across = spectacle_magnification(lens, **values)
        steps = spectacle_magnification_workings(lens, **values)
        assert_worked(steps)
        assert len(steps) == (9 if lens.cylinder_d else 5)
        assert steps[4].value == along.percent
        assert steps[-1].value == across.percent


def test_what_a_learner_reads():
    shape, away, power, factor, percent = spectacle_magnification_workings(rx(4), **LENS)
    assert (shape.substituted, shape.result) == ("1 / (1 - 4.0 / 1000 * 8.00 / 1.498)", "1.02183")
    assert (away.substituted, away.result) == ("12.0 + 3.0", "15.00 mm")
    assert "from memory" in away.terms[1].meaning
    assert (power.substituted, power.result) == ("1 / (1 - 15.00 / 1000 * 4.00)", "1.06383")
    assert (factor.substituted, factor.result) == ("1.02183 * 1.06383", "1.08705")
    assert percent.result == "8.71 %"
