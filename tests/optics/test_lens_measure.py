"""The lens measure: its pins on spheres and tori, its dial, warpage, and the workings.

Sagittae are worked out here apart from the package: for a sphere by Pythagoras, for a torus by finding
where a line meets its equation.
"""

import math
import random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from test_prescription_properties import tried
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.lens_measure import (
    dial_d,
    pins_on,
    reading_d,
    reading_of_power_d,
    sagitta_of_pins_mm,
    warpage_d,
)
from lablib.optics.lens_measure_workings import (
    dial_working,
    power_of_reading_workings,
    reading_workings,
    warpage_working,
)
from lablib.optics.practice import usual
from lablib.optics.surface import (
    Surface,
    SurfaceTooSteep,
    curvature_per_mm,
    power_from_lens_measure_d,
)


def sphere(power_d: float, index: float = 1.530) -> Surface:
    curvature = curvature_per_mm(power_d, index)
    return Surface(flat_per_mm=curvature, steep_per_mm=curvature)


def toric(flat_d: float, steep_d: float, meridian_deg: float = 180.0) -> Surface:
    return Surface(
        flat_per_mm=curvature_per_mm(flat_d, 1.530),
        steep_per_mm=curvature_per_mm(steep_d, 1.530),
        flat_meridian_deg=meridian_deg,
    )


def torus_depth_mm(flat_mm: float, steep_mm: float, u: float, v: float) -> float:
    """Depth of a tyre behind its vertex at u along the flat and v along the steep meridian.

    The steep arc (radius b) turns about an axis parallel to v, at a distance a behind the vertex: a point
    lies on the tyre where (sqrt(u^2 + (a - z)^2) - (a - b))^2 + v^2 = b^2. Solved for z by bisection.
    """

    def off(z: float) -> float:
        return (math.hypot(u, flat_mm - z) - (flat_mm - steep_mm)) ** 2 + v**2 - steep_mm**2

    return brentq(off, 0.0, steep_mm, xtol=1e-13)


# Definition of the dial: a sphere of index 1.530 reads its own power, whatever the pins.
@pytest.mark.parametrize("power", [-18.0, -6.0, -0.25, 0.0, 0.25, 6.0, 18.0])
@pytest.mark.parametrize("pin", [None, 6.0, 14.0])
def test_a_sphere_of_index_1530_reads_its_power(power: float, pin: float | None):
    assert reading_d(sphere(power), pin_mm=pin, along_deg=37.0) == pytest.approx(power, abs=1e-9)


# Published values, surfaces: reads +6.12, power +5.7505 at index 1.498 and +6.7666 at 1.586 (computed);
# reads -10.00, power -11.32 at index 1.60 (read).
@pytest.mark.parametrize(
    ("power", "index", "reading", "half_digit"),
    [(5.7505, 1.498, 6.12, 5e-5), (6.7666, 1.586, 6.12, 5e-5), (-11.32, 1.60, -10.0, 5e-3)],
)
def test_reading_of_a_published_power(power: float, index: float, reading: float, half_digit: float):
    assert reading_of_power_d(power, index) == pytest.approx(reading, abs=half_digit)
    assert reading_d(sphere(power, index)) == pytest.approx(reading, abs=half_digit)


@tried
@given(st.floats(-20, 20), st.floats(1.45, 1.8))
def test_reading_and_power_undo_each_other(reading: float, index: float):
    power = power_from_lens_measure_d(reading, index)
    assert reading_of_power_d(power, index) == pytest.approx(reading, abs=1e-9)
    assert reading_d(sphere(power, index)) == pytest.approx(reading, abs=1e-6)


def test_a_hollow_back_reads_minus_and_a_front_plus():
    # The back of a meniscus curves the same way as its front, and so is hollow from the eye's side.
    hollow = sphere(6.0)
    assert reading_d(hollow) == pytest.approx(6.0)
    assert reading_d(hollow, is_back=True) == pytest.approx(-6.0)


# Pythagoras: r = 530 / 6, s = r - sqrt(r^2 - 100) = 0.5679 mm.
def test_sagitta_of_a_sphere():
    radius = 530.0 / 6.0
    by_hand = radius - math.sqrt(radius**2 - 100.0)
    assert usual("pin_distance") == 10.0
    assert sagitta_of_pins_mm(sphere(6.0)) == pytest.approx(by_hand, abs=1e-12)
    assert dial_d(by_hand) == pytest.approx(6.0)
    assert dial_d(-by_hand) == pytest.approx(-6.0)


@tried
@given(st.floats(2, 9), st.floats(0, 8), st.floats(0, 180), st.floats(0, 180))
def test_a_toric_at_any_angle_against_the_torus_equation(
    flat: float, more: float, meridian: float, along: float
):
    radii = 530.0 / flat, 530.0 / (flat + more)
    turn = math.radians(along - meridian)
    depth = torus_depth_mm(*radii, 10.0 * math.cos(turn), 10.0 * math.sin(turn))
    surface = toric(flat, flat + more, meridian)
    sagitta = sagitta_of_pins_mm(surface, along_deg=along)
    assert sagitta == pytest.approx(depth, abs=1e-9)
    assert reading_d(surface, along_deg=along) == pytest.approx(1060.0 * depth / (100.0 + depth**2))


def test_along_its_meridians_a_toric_reads_their_powers_and_between_them_something_between():
    surface = toric(4.0, 7.0, 20.0)
    assert reading_d(surface, along_deg=20.0) == pytest.approx(4.0, abs=1e-9)
    assert reading_d(surface, along_deg=110.0) == pytest.approx(7.0, abs=1e-9)
    oblique = reading_d(surface, along_deg=65.0)
    # 4.00 + 3.00 sin2(45), within a hundredth: the sine formula holds at the vertex itself.
    assert oblique == pytest.approx(5.5, abs=0.01)
    assert reading_d(surface, along_deg=155.0) == pytest.approx(oblique)


@tried
@given(st.floats(-15, 15), st.floats(-30, 30))
def test_a_leaning_measure_on_a_sphere_against_plane_geometry(power: float, lean: float):
    if abs(power) < 0.01:
        power = 0.01
    radius = abs(530.0 / power)
    away = math.sqrt(radius**2 - 100.0)
    along = away * math.cos(math.radians(lean))
    by_hand = math.copysign(math.sqrt(along**2 + 100.0) - along, power)
    assert sagitta_of_pins_mm(sphere(power), lean_deg=lean) == pytest.approx(by_hand, abs=1e-8)
    assert abs(reading_d(sphere(power), lean_deg=lean)) >= abs(power) - 1e-7


def test_a_leaning_measure_reads_too_strong_on_either_side():
    assert reading_d(sphere(6.0), lean_deg=15.0) == pytest.approx(6.21, abs=0.005)
    assert reading_d(sphere(6.0), lean_deg=15.0, is_back=True) == pytest.approx(-6.21, abs=0.005)
    across = toric(4.0, 7.0, 20.0)
    assert reading_d(across, along_deg=20.0, lean_deg=15.0) > 4.05
    assert reading_d(sphere(0.0), lean_deg=15.0) == pytest.approx(0.0, abs=1e-9)


def test_a_tilt_of_the_surface_is_left_aside():
    level, tilted = (
        toric(4.0, 7.0),
        Surface(
            flat_per_mm=toric(4.0, 7.0).flat_per_mm,
            steep_per_mm=toric(4.0, 7.0).steep_per_mm,
            flat_meridian_deg=180.0,
            tilt_x=0.05,
        ),
    )
    assert reading_d(tilted, along_deg=30.0) == reading_d(level, along_deg=30.0)


# ANSI Z80.1-2015 allows 1.00 D of warpage (published values, tolerances).
def test_warpage_is_the_difference_of_two_readings():
    assert warpage_d(6.12, 5.25) == warpage_d(5.25, 6.12) == pytest.approx(0.87)
    warped = toric(6.0, 6.5, 90.0)
    readings = (reading_d(warped, along_deg=90.0), reading_d(warped, along_deg=180.0))
    assert warpage_d(*readings) == pytest.approx(0.5)


@pytest.mark.parametrize("is_back", [False, True])
def test_pins_to_draw(is_back: bool):
    drawn = pins_on(sphere(6.0), is_back=is_back, reach_mm=20.0, points=41)
    side = -1.0 if is_back else 1.0
    np.testing.assert_allclose(drawn.pin_along_mm, [-10.0, 0.0, 10.0])
    np.testing.assert_allclose(drawn.pin_height_mm, [-drawn.sagitta_mm, 0.0, -drawn.sagitta_mm])
    assert drawn.sagitta_mm == pytest.approx(side * 0.5679, abs=0.00005)
    assert drawn.reading_d == pytest.approx(side * 6.0)
    assert drawn.profile_along_mm.shape == drawn.profile_height_mm.shape == (41,)
    # The outer pins stand on the profile that is drawn.
    np.testing.assert_allclose(
        np.interp(drawn.pin_along_mm, drawn.profile_along_mm, drawn.profile_height_mm), drawn.pin_height_mm
    )


def test_a_profile_beyond_the_surface_is_not_a_number():
    drawn = pins_on(sphere(25.0), reach_mm=25.0, points=51)
    assert np.isnan(drawn.profile_height_mm[[0, -1]]).all()
    assert np.isfinite(drawn.profile_height_mm[25])


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: dial_d("1"), "sagitta '1' is not a number: give a number in mm"),
        (
            lambda: dial_d(1.0, pin_mm=2.0),
            "distance of the outer pins from the plunger 2 is out of range: give from 5 to 15 mm",
        ),
        (
            lambda: reading_d(sphere(6.0), lean_deg=40.0),
            "lean 40 is out of range: give from -30 to 30 degrees",
        ),
        (
            lambda: reading_d(sphere(6.0), along_deg=None),
            "meridian None is not a number: give a number in degrees",
        ),
        (lambda: pins_on(sphere(6.0), reach_mm=60.0), "profile 60 is out of range: give from 10 to 50 mm"),
        (
            lambda: warpage_d(math.nan, 1.0),
            "reading along the first meridian nan is not a finite number: give a number in D",
        ),
        (
            lambda: warpage_d(1.0, "1"),
            "reading along the second meridian '1' is not a number: give a number in D",
        ),
    ],
)
def test_words(call, words: str):
    with pytest.raises(LabError) as caught:
        call()
    assert str(caught.value) == words


def test_pins_that_do_not_reach_the_surface():
    steep = Surface(flat_per_mm=0.125, steep_per_mm=0.125)
    for lean in (0.0, 10.0):
        with pytest.raises(SurfaceTooSteep, match=r"surface radius 8\.0 mm does not reach 10\.0 mm"):
            reading_d(steep, lean_deg=lean)
    with pytest.raises(SurfaceTooSteep):
        reading_workings(66.25, 1.53)


def test_workings():
    for seed in range(200):
        draw = random.Random(seed)
        power, index = draw.randrange(-60, 61) / 4, draw.choice([1.498, 1.523, 1.53, 1.586, 1.66])
        to_power = power_of_reading_workings(power, index)
        assert_worked(to_power)
        assert to_power[-1].value == power_from_lens_measure_d(power, index)
        to_reading = reading_workings(power, index, pin_mm=draw.choice([None, 8.0]))
        assert_worked(to_reading, plain=("n",))
        assert len(to_reading) == (3 if power else 2)
        assert to_reading[-1].value == reading_of_power_d(power, index)
        sagitta = draw.randrange(-2000, 2001) / 1000
        assert_worked([dial_working(sagitta)])
        assert dial_working(sagitta).value == dial_d(sagitta)
        other = draw.randrange(-60, 61) / 8
        assert_worked([warpage_working(power, other)])
        assert warpage_working(power, other).value == warpage_d(power, other)


def test_what_a_learner_reads():
    ratio, power = power_of_reading_workings(6.12, 1.586)
    assert (ratio.substituted, ratio.result) == ("(1.586 - 1) / (1.530 - 1)", "1.1057")
    assert (power.substituted, power.result) == ("6.12 * 1.1057", "6.767 D")
    *_, sagitta, dial = reading_workings(6.0, 1.530)
    assert sagitta.result == "0.568 mm"
    assert dial.substituted == "1000 * (1.530 - 1) * 2 * 0.568 / (10.0^2 + 0.568^2)"
    assert warpage_working(5.25, 6.12).substituted == "abs(5.25 - 6.12)"
