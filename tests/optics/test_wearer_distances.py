"""Near from far, what a ruler shows, and the height in an adjusted frame."""

import math

import pytest
from evaluation import assert_comes_out
from hypothesis import given
from hypothesis import strategies as st
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.wearer_distances import (
    both_by_one_eye_mm,
    height_after_adjusting_mm,
    near_inset_mm,
    near_pd_mm,
    ruler_reading_mm,
)
from lablib.optics.wearer_workings import (
    height_after_adjusting_working,
    near_inset_working,
    near_pd_workings,
    ruler_reading_working,
)


@pytest.mark.parametrize(("power_d", "inset_mm"), [(0.0, 2.02), (-6.0, 1.76), (6.0, 2.39)])
def test_near_inset(power_d: float, inset_mm: float):
    """P / (1 + w (1/s - F/1000)): 32 mm, w 400, s 27 (Ellerbrock, from memory; answers computed)."""
    how = {"power_d": power_d, "working_distance_mm": 400.0, "centre_of_rotation_mm": 27.0}
    assert near_inset_mm(32.0, **how) == pytest.approx(inset_mm, abs=0.005)
    assert near_pd_mm(32.0, **how) == pytest.approx(32.0 - inset_mm, abs=0.005)


def test_the_usual_distances_are_those_of_the_table():
    assert near_inset_mm(32.0) == near_inset_mm(32.0, working_distance_mm=400.0, centre_of_rotation_mm=27.0)


@given(pd=st.floats(25.0, 38.0), w=st.floats(250.0, 800.0), s=st.floats(20.0, 35.0))
def test_without_power_the_inset_is_that_of_a_straight_line(pd: float, w: float, s: float):
    """From the centre of rotation to a point on the midline: similar triangles, P s / (w + s)."""
    inset = near_inset_mm(pd, working_distance_mm=w, centre_of_rotation_mm=s)
    assert inset == pytest.approx(pd * s / (w + s))


@given(power=st.floats(-15.0, 15.0))
def test_the_prism_of_the_lens_is_what_changes_the_inset(power: float):
    """By Prentice's rule a thin lens bends the line by F i / 1000 at i from its optical centre.

    The optical centre stands at the far distance. From the centre of rotation the line goes to the lens at
    slope i / s inwards; behind it the slope is i / s - F i / 1000, and it must reach the midline after w.
    """
    inset = near_inset_mm(32.0, power_d=power, working_distance_mm=400.0, centre_of_rotation_mm=27.0)
    slope = inset / 27.0 - power * inset / 1000.0
    assert inset + 400.0 * slope == pytest.approx(32.0)


@given(pupil=st.floats(25.0, 38.0), d=st.floats(250.0, 800.0), v=st.floats(8.0, 30.0))
def test_straight_opposite_a_ruler_shows_the_pupil_as_it_is(pupil: float, d: float, v: float):
    held = {"working_distance_mm": d, "pupil_behind_mm": v}
    assert ruler_reading_mm(pupil, observer_mm=pupil, **held) == pytest.approx(pupil)


def test_what_a_ruler_shows_to_one_eye_for_both():
    """64 mm, 400 mm away, pupil 15 mm behind the ruler: short by 15 / 415, so 61.69 mm (computed)."""
    held = {"working_distance_mm": 400.0, "pupil_behind_mm": 15.0}
    assert both_by_one_eye_mm(32.0, 32.0, **held) == pytest.approx(61.69, abs=0.005)
    # Where the eye stands does not count for both together, only for each.
    assert both_by_one_eye_mm(32.0, 32.0, observer_mm=32.0, **held) == pytest.approx(61.69, abs=0.005)
    assert ruler_reading_mm(32.0, observer_mm=-32.0, **held) == pytest.approx(32.0 - 64.0 * 15.0 / 415.0)


def test_an_observer_with_wider_eyes_reads_a_little_too_much():
    """Right eye to right pupil and left to left, observer 68 mm: 4 x 15 / 415 = 0.14 mm too much."""
    held = {"working_distance_mm": 400.0, "pupil_behind_mm": 15.0}
    both = 2.0 * ruler_reading_mm(32.0, observer_mm=34.0, **held)
    assert both - 64.0 == pytest.approx(0.145, abs=0.005)


@given(
    pupil=st.floats(25.0, 38.0),
    eye=st.floats(-100.0, 100.0),
    d=st.floats(250.0, 800.0),
    v=st.floats(8.0, 30.0),
)
def test_the_ruler_lies_on_the_line_from_the_eye_to_the_pupil(pupil: float, eye: float, d: float, v: float):
    reading = ruler_reading_mm(pupil, observer_mm=eye, working_distance_mm=d, pupil_behind_mm=v)
    to_ruler, to_pupil = math.atan2(reading - eye, d), math.atan2(pupil - eye, d + v)
    assert to_ruler == pytest.approx(to_pupil, abs=1e-12)


def test_a_frame_that_goes_up_leaves_the_pupil_lower_in_it():
    assert height_after_adjusting_mm(21.0, raised_mm=2.0) == 19.0
    assert height_after_adjusting_mm(21.0, raised_mm=-1.5) == 22.5


@pytest.mark.parametrize("power_d", [0.0, -6.0, 6.25])
def test_workings_of_near_come_out(power_d: float):
    steps = near_pd_workings(32.0, power_d=power_d)
    assert_worked(steps)
    assert steps[0].value == near_inset_mm(32.0, power_d=power_d)
    assert steps[1].value == near_pd_mm(32.0, power_d=power_d)
    assert near_inset_working(32.0, power_d=power_d) == steps[0]


def test_workings_of_ruler_and_height_come_out():
    ruler = ruler_reading_working(31.5, observer_mm=-32.0)
    height = height_after_adjusting_working(21.0, raised_mm=-1.5)
    for working, value in ((ruler, ruler_reading_mm(31.5, observer_mm=-32.0)), (height, 22.5)):
        assert_comes_out(working)
        assert working.value == value


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: near_inset_mm(64.0), "monocular_pd_mm 64 is out of range: give from 18 to 45 mm"),
        (
            lambda: near_inset_mm(32.0, working_distance_mm=40.0),
            "working distance 40 is out of range: give from 150 to 2000 mm",
        ),
        (
            lambda: near_inset_mm(32.0, centre_of_rotation_mm=12.0),
            "centre of rotation 12 is out of range: give from 18 to 45 mm",
        ),
        (
            lambda: near_inset_mm(32.0, power_d=40.0),
            r"power \+40 D in the horizontal meridian images the eye's centre of rotation behind the eye: "
            r"give less than 37\.0 D",
        ),
        (
            lambda: near_inset_mm(32.0, power_d=math.nan),
            "power in the horizontal meridian nan is not a finite number",
        ),
        (lambda: ruler_reading_mm(5.0, observer_mm=0.0), "pupil_mm 5 is out of range: give from 18 to 45 mm"),
        (
            lambda: ruler_reading_mm(32.0, observer_mm=900.0),
            "observer_mm 900 is out of range: give from -200 to 200 mm",
        ),
        (
            lambda: ruler_reading_mm(32.0, observer_mm=0.0, pupil_behind_mm=1.0),
            "pupil behind the ruler 1 is out of range: give from 5 to 35 mm",
        ),
        (
            lambda: height_after_adjusting_mm(20.0, raised_mm=30.0),
            "frame moved on the face by 30 is out of range: give from -10 to 10 mm up the face",
        ),
        (
            lambda: height_after_adjusting_mm(2.0, raised_mm=3.0),
            "height 2 mm in a frame raised 3 mm leaves -1 mm: measure it again on the adjusted frame",
        ),
    ],
)
def test_what_no_wearer_has_is_said_in_words(make, words: str):
    with pytest.raises(LabError, match=words):
        make()
