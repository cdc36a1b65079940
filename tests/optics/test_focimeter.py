"""The focimeter: what is sharp, what is smeared, where the target stands, and the prescription it gives.

The smear is worked out here apart from the package's formula: by the prism every point of the pupil meets,
and by the power along and across a line (S + C sin2, and C sin cos for the part that leans).
"""

import math
import random

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from test_prescription_properties import computed, eyes, tried, written
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.focimeter import Focimeter, line_skew_d, line_smear_d, view
from lablib.optics.focimeter_reading import SharpLine, prescription_of_readings, sharp_lines
from lablib.optics.focimeter_workings import readings_workings
from lablib.optics.power import wrapped_axis_deg
from lablib.optics.prescription import Prescription, combine
from lablib.optics.prism import prism_at


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


LENS = rx(2, -1.5, 20)


# Derived: the sphere's power works along the axis, so the lines sharp at it stand across the axis; sphere and
# cylinder work across the axis, so the lines sharp at their sum lie along it.
def test_a_sharp_line_stands_across_the_meridian_whose_power_is_read():
    assert line_smear_d(LENS, drum_d=2.0, line_deg=110.0) == pytest.approx(0.0, abs=1e-12)
    assert line_smear_d(LENS, drum_d=0.5, line_deg=20.0) == pytest.approx(0.0, abs=1e-12)
    assert line_smear_d(LENS, drum_d=2.0, line_deg=20.0) == pytest.approx(1.5)
    assert line_smear_d(LENS, drum_d=0.5, line_deg=110.0) == pytest.approx(1.5)


@tried
@given(written(), st.floats(-20, 20), st.floats(0, 180))
def test_smear_and_skew_against_the_powers_along_a_meridian(lens: Prescription, drum: float, line: float):
    turn = math.radians(line + 90.0 - (lens.axis_deg or 0.0))
    across = lens.sphere_d + lens.cylinder_d * math.sin(turn) ** 2 - drum
    leans = lens.cylinder_d * math.sin(turn) * math.cos(turn)
    assert line_smear_d(lens, drum_d=drum, line_deg=line) == pytest.approx(
        math.hypot(across, leans), abs=1e-9
    )
    assert abs(line_skew_d(lens, line_deg=line)) == pytest.approx(abs(leans), abs=1e-9)


@tried
@given(computed(), st.floats(-15, 15), st.floats(0, 180))
def test_smear_against_the_prism_every_point_of_the_pupil_meets(lens: Prescription, drum: float, line: float):
    try:
        left = combine(lens, rx(-drum))
    except LabError:
        assume(False)
    pupil = np.linspace(0.0, 2.0 * np.pi, 3601)
    x, y = prism_at(left, eye="right", in_mm=np.cos(pupil), up_mm=np.sin(pupil))
    turn = math.radians(line)
    across = 10.0 * np.abs(y * math.cos(turn) - x * math.sin(turn)).max()
    assert across == pytest.approx(line_smear_d(lens, drum_d=drum, line_deg=line), rel=1e-5, abs=1e-6)
    seen = view(lens, drum_d=drum, target_deg=line)
    point = 10.0 * np.hypot(x, y)
    assert point.max() == pytest.approx(seen.point_long_d, rel=1e-5, abs=1e-6)
    assert point.min() == pytest.approx(seen.point_short_d, rel=1e-5, abs=1e-3 * seen.point_long_d + 1e-6)


@tried
@given(written(), st.floats(0.01, 20), st.floats(0.5, 179.5), st.sampled_from([1, -1]))
def test_lines_are_sharp_at_two_places_and_nowhere_else(
    lens: Prescription, off_d: float, off_deg: float, sign: int
):
    assume(abs(lens.cylinder_d) >= 0.25)
    powers = sorted((lens.sphere_d, lens.sphere_d + lens.cylinder_d))
    for reading in sharp_lines(lens):
        drum, line = reading.drum_d, reading.line_deg
        assert line_smear_d(lens, drum_d=drum, line_deg=line) == pytest.approx(0.0, abs=1e-7)
        # Another direction at the same reading: the cylinder's share of the turn is left.
        turned = line_smear_d(lens, drum_d=drum, line_deg=line + off_deg)
        left = abs(lens.cylinder_d) * math.sin(math.radians(off_deg))
        assert turned == pytest.approx(left, abs=1e-7)
        assert turned > 0.002
        # Another reading in any direction: at least the distance to the nearer power.
        other = drum + sign * off_d
        nearest = min(abs(other - power) for power in powers)
        smears = line_smear_d(lens, drum_d=other, line_deg=np.arange(0.0, 180.0, 7.5))
        assert smears.min() >= nearest - 1e-7


def test_smear_takes_arrays():
    drums, lines = np.meshgrid([0.5, 2.0], [20.0, 110.0])
    np.testing.assert_allclose(
        line_smear_d(LENS, drum_d=drums, line_deg=lines), [[0.0, 1.5], [1.5, 0.0]], atol=1e-12
    )
    np.testing.assert_allclose(
        np.abs(line_skew_d(LENS, line_deg=np.array([20.0, 65.0]))), [0.0, 0.75], atol=1e-12
    )


def test_what_is_seen_on_the_axis_and_off_it():
    seen = view(LENS, drum_d=2.0, target_deg=20.0)
    np.testing.assert_allclose(seen.line_deg, [20.0, 110.0])
    assert seen.is_sharp.tolist() == [False, True]
    assert seen.is_unbroken.tolist() == [True, True]
    assert (seen.point_long_d, seen.point_short_d, seen.point_deg) == (1.5, 0.0, 110.0)
    np.testing.assert_allclose(seen.tilt_deg, [-90.0, 0.0])
    # Ten degrees off: every point is drawn out across the axis, so the sphere line breaks into slanting
    # strokes.
    off = view(LENS, drum_d=2.0, target_deg=30.0)
    assert off.is_sharp.tolist() == [False, False]
    assert off.is_unbroken.tolist() == [False, False]
    np.testing.assert_allclose(off.line_deg, [30.0, 120.0])
    np.testing.assert_allclose(off.tilt_deg, [80.0, -10.0])
    np.testing.assert_allclose(
        off.smear_d, 1.5 * np.array([math.cos(math.radians(10)), math.sin(math.radians(10))])
    )
    second = view(LENS, drum_d=0.5, target_deg=200.0)
    assert second.is_sharp.tolist() == [True, False]
    assert second.point_deg == 20.0


def test_a_sphere_is_sharp_all_round_or_smeared_alike():
    sharp = view(rx(-3), drum_d=-3.0, target_deg=37.0)
    assert sharp.is_sharp.all()
    assert (sharp.point_long_d, sharp.point_short_d) == (0.0, 0.0)
    blurred = view(rx(-3), drum_d=-2.0, target_deg=37.0)
    np.testing.assert_allclose(blurred.smear_d, [1.0, 1.0])
    np.testing.assert_allclose(blurred.tilt_deg, [0.0, 0.0])
    assert blurred.is_unbroken.all()


@tried
@given(computed(), eyes, st.floats(-10, 10), st.floats(-10, 10), st.floats(-3, 3), st.floats(-3, 3))
def test_the_target_moves_towards_the_base(
    lens: Prescription, eye: Eye, in_mm: float, up_mm: float, in_prism: float, up_prism: float
):
    seen = view(
        lens,
        drum_d=0.0,
        target_deg=90.0,
        eye=eye,
        in_mm=in_mm,
        up_mm=up_mm,
        in_prism_d=in_prism,
        up_prism_d=up_prism,
    )
    inwards, upwards = prism_at(lens, eye=eye, in_mm=in_mm, up_mm=up_mm)
    assert seen.centre_x_prism_d == pytest.approx(eye.nasal_sign * (inwards + in_prism), abs=1e-9)
    assert seen.centre_y_prism_d == pytest.approx(upwards + up_prism, abs=1e-9)


def test_zero_and_steps():
    plain = Focimeter()
    assert (plain.zero_d, plain.fine_step_d, plain.coarse_step_d, plain.fine_reach_d) == (0, 0.125, 0.25, 5.0)
    assert plain.reading_d(-2.3) == -2.25
    assert plain.reading_d(-2.32) == -2.375
    assert (plain.step_d(5.0), plain.step_d(-5.1)) == (0.125, 0.25)
    assert plain.reading_d(-6.3) == -6.25
    off = Focimeter(zero_d=0.25, fine_step_d=0.01)
    assert off.reading_d(-2.32) == -2.07
    assert off.power_d(-2.07) == -2.32
    assert view(rx(1), drum_d=1.25, target_deg=90, focimeter=off).is_sharp.all()
    assert not view(rx(1), drum_d=1.0, target_deg=90, focimeter=off).is_sharp.any()


@tried
@given(st.floats(-20, 20), st.floats(-1, 1))
def test_a_reading_is_within_half_a_step(power: float, zero: float):
    instrument = Focimeter(zero_d=zero)
    reading = instrument.reading_d(power)
    assert abs(instrument.power_d(reading) - power) <= instrument.step_d(power + zero) / 2 + 1e-9


# Common practice: +2.00 first, +0.50 second, the second lines at 20: +2.00 -1.50 x 020.
def test_two_readings_make_the_prescription():
    first, second = SharpLine(drum_d=2.0, line_deg=110), SharpLine(drum_d=0.5, line_deg=20)
    assert sharp_lines(LENS) == (first, second)
    assert prescription_of_readings(first, second) == LENS
    assert prescription_of_readings(second, first) == LENS.transposed()
    assert sharp_lines(LENS, form="plus") == (second, first)


def test_a_wrong_zero_spoils_the_sphere_and_leaves_the_cylinder():
    readings = sharp_lines(LENS, focimeter=Focimeter(zero_d=0.25))
    assert prescription_of_readings(*readings) == rx(2.25, -1.5, 20)
    assert prescription_of_readings(*readings, zero_d=0.25) == LENS


@tried
@given(computed(), st.sampled_from(["minus", "plus"]))
def test_readings_give_the_lens_back(lens: Prescription, form: str):
    first, second = sharp_lines(lens, form=form)
    assert (first.drum_d >= second.drum_d) == (form == "minus") or abs(lens.cylinder_d) < 1e-8
    back = prescription_of_readings(first, second)
    np.testing.assert_allclose(back.power_matrix(), lens.power_matrix(), atol=1e-7)
    assert back.cylinder_d * (1 if form == "minus" else -1) <= 0
    for reading in (first, second):
        seen = view(lens, drum_d=reading.drum_d, target_deg=second.line_deg)
        assert seen.is_unbroken.all()
        assert seen.is_sharp[0 if reading is second else 1]


@tried
@given(written())
def test_readings_in_steps_give_the_lens_within_a_step(lens: Prescription):
    assume(max(abs(lens.sphere_d), abs(lens.sphere_d + lens.cylinder_d)) <= 4.9)
    back = prescription_of_readings(*sharp_lines(lens, focimeter=Focimeter()))
    wanted = lens.in_form("minus")
    assert abs(back.sphere_d - wanted.sphere_d) <= 0.0625 + 1e-9
    assert abs(back.cylinder_d - wanted.cylinder_d) <= 0.125 + 1e-9
    if back.cylinder_d:
        assert back.axis_deg == wanted.axis_deg


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: Focimeter(zero_d=3), "zero of the drum 3 is out of range: give from -2 to 2 D"),
        (
            lambda: Focimeter(fine_step_d=0.5),
            "fine step of the drum 0.5 is out of range: give from 0.01 to 0.25 D",
        ),
        (
            lambda: Focimeter(coarse_step_d=1),
            "coarse step of the drum 1 is out of range: give from 0.01 to 0.5 D",
        ),
        (
            lambda: Focimeter(fine_reach_d=-1),
            "reach of the fine steps -1 is out of range: give from 0 to 30 D",
        ),
        (lambda: Focimeter().reading_d(41), "power 41 is out of range: give from -40 to 40 D"),
        (lambda: Focimeter().power_d("2"), "drum reading '2' is not a number: give a number in D"),
        (
            lambda: view(LENS, drum_d=99, target_deg=20),
            "drum reading 99 is out of range: give from -40 to 40 D",
        ),
        (
            lambda: view(LENS, drum_d=2, target_deg=math.nan),
            "direction of the target nan is not a finite number: give a number in degrees",
        ),
        (
            lambda: view(LENS, drum_d=2, target_deg=20, in_prism_d="1"),
            "prism base in '1' is not a number: give a number in prism dioptres",
        ),
        (
            lambda: view(LENS, drum_d=2, target_deg=20, up_prism_d=None),
            "prism base up None is not a number: give a number in prism dioptres",
        ),
        (
            lambda: view(LENS, drum_d=2, target_deg=20, eye="both"),
            'eye \'both\' is not an eye: give "right" or "left"',
        ),
        (
            lambda: SharpLine(drum_d=2, line_deg=0),
            "direction of the sharp lines 0 is out of range: give above 0 and up to 180 degrees; 0 is "
            "written 180",
        ),
        (
            lambda: SharpLine(drum_d=None, line_deg=20),
            "drum reading None is not a number: give a number in D",
        ),
        (
            lambda: prescription_of_readings(
                SharpLine(drum_d=2, line_deg=20), SharpLine(drum_d=0.5, line_deg=100)
            ),
            "sharp lines at 20 and 100 are 80 degrees apart: the second lines stand at right angles to the "
            "first; turn the target until neither is broken and read again",
        ),
        (
            lambda: sharp_lines(LENS, form="toric"),
            'form \'toric\' is not a cylinder form: give "minus" or "plus"',
        ),
        (
            lambda: prescription_of_readings(*sharp_lines(LENS), zero_d=3),
            "zero of the drum 3 is out of range: give from -2 to 2 D",
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
        cylinder = 0.0 if seed % 7 == 0 else draw.randrange(-32, 33) / 8
        lens = rx(draw.randrange(-64, 65) / 8, cylinder, draw.randrange(1, 181))
        zero = draw.choice([0.0, 0.125, -0.25])
        form = draw.choice(["minus", "plus"])
        readings = sharp_lines(lens, form=form, focimeter=Focimeter(zero_d=zero, coarse_step_d=0.125))
        steps = readings_workings(*readings, zero_d=zero)
        assert_worked(steps)
        one = lens.in_form(form)
        if not lens.cylinder_d:
            assert [step.value for step in steps] == [lens.sphere_d]
            continue
        other = one.transposed()
        assert [step.value for step in steps] == [
            one.sphere_d,
            one.cylinder_d,
            one.axis_deg,
            other.sphere_d,
            other.cylinder_d,
            other.axis_deg,
        ]


def test_what_a_learner_reads():
    steps = readings_workings(*sharp_lines(LENS))
    assert [step.substituted for step in steps] == [
        "2.00",
        "0.50 - 2.00",
        "20",
        "2.00 + (-1.50)",
        "-(-1.50)",
        "20 + 90",
    ]
    assert steps[2].what == "axis: along the lines that are sharp second"
    assert readings_workings(*sharp_lines(LENS), zero_d=0.25)[0].substituted == "2.00 - 0.25"
    assert wrapped_axis_deg(steps[2].value + 90.0) == steps[5].value
