"""Focal length and vergence, and their workings.

Values are computed from the definitions: F = n / f and L = n / l, in metres; L' = L + F.
"""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import tried
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.vergence import (
    ahead_of_vergence_mm,
    focal_length_mm,
    focus_in_words,
    image_vergence_d,
    object_vergence_d,
    power_of_focal_length_d,
    vergence_d,
)
from lablib.optics.vergence_workings import (
    focal_length_working,
    image_workings,
    power_of_focal_length_working,
)


@pytest.mark.parametrize(
    ("power", "index", "length"),
    [(4.0, 1.0, 250.0), (-2.5, 1.0, -400.0), (60.0 / 2, 1.336, 44.533), (0.25, 1.0, 4000.0)],
)
def test_focal_length_and_back(power: float, index: float, length: float):
    assert focal_length_mm(power, index=index) == pytest.approx(length, abs=0.0005)
    assert power_of_focal_length_d(focal_length_mm(power, index=index), index=index) == pytest.approx(power)


def test_vergence_in_air_and_in_an_index():
    assert vergence_d(500.0) == 2.0
    assert vergence_d(-500.0) == -2.0
    assert vergence_d(500.0, index=1.5) == 3.0
    assert vergence_d(math.inf) == vergence_d(-math.inf) == 0.0
    assert ahead_of_vergence_mm(3.0, index=1.5) == 500.0
    assert ahead_of_vergence_mm(0.0) == ahead_of_vergence_mm(-0.0049) == math.inf


@pytest.mark.parametrize(
    ("power", "in_front", "leaving", "ahead"),
    [
        (4.0, math.inf, 4.0, 250.0),
        (4.0, 500.0, 2.0, 500.0),
        (4.0, 250.0, 0.0, math.inf),
        (4.0, 200.0, -1.0, -1000.0),
        (-2.0, 500.0, -4.0, -250.0),
        (0.0, 400.0, -2.5, -400.0),
    ],
)
def test_object_and_lens_make_an_image(power: float, in_front: float, leaving: float, ahead: float):
    vergence = image_vergence_d(power, in_front_mm=in_front)
    assert vergence == pytest.approx(leaving, abs=1e-12)
    assert ahead_of_vergence_mm(vergence) == pytest.approx(ahead)


@tried
@given(st.floats(-20, 20), st.floats(50, 5000))
def test_the_image_obeys_the_lens_formula(power: float, in_front: float):
    ahead = ahead_of_vergence_mm(image_vergence_d(power, in_front_mm=in_front))
    # 1/l' - 1/l = 1/f with distances in metres, l = -x: an independent form of the same law.
    inverse = 0.0 if ahead == math.inf else 1000.0 / ahead
    assert inverse + 1000.0 / in_front == pytest.approx(power, abs=0.0051)


@tried
@given(st.floats(0.01, 30) | st.floats(-30, -0.01), st.floats(1, 2))
def test_length_and_vergence_undo_each_other(power: float, index: float):
    length = focal_length_mm(power, index=index)
    assert vergence_d(length, index=index) == pytest.approx(power)
    assert ahead_of_vergence_mm(power, index=index) == pytest.approx(length)


@pytest.mark.parametrize(
    ("vergence", "words"),
    [
        (4.0, "The light meets 25.0 cm behind the lens."),
        (0.5, "The light meets 2.00 m behind the lens."),
        (-2.5, "The light spreads as if it came from a point 40.0 cm in front of the lens."),
        (-0.25, "The light spreads as if it came from a point 4.00 m in front of the lens."),
        (0.004, "The light leaves the lens parallel: it meets nowhere."),
        (0.0, "The light leaves the lens parallel: it meets nowhere."),
    ],
)
def test_the_focus_in_words(vergence: float, words: str):
    assert focus_in_words(vergence) == words


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (
            lambda: focal_length_mm(0.0),
            "power 0.00 D has no focal length: it leaves parallel light parallel; give a power of at least "
            "0.005 D, plus or minus",
        ),
        (lambda: focal_length_mm(-0.004), "power -0.00 D has no focal length: "),
        (lambda: focal_length_mm(math.nan), "power nan is not a finite number: give a number in D"),
        (lambda: focal_length_mm(4.0, index=0.9), "index 0.9 is out of range: give from 1 to 2"),
        (
            lambda: power_of_focal_length_d(0.0),
            "focal length 0 mm belongs to no lens: give the distance to the focus, not 0",
        ),
        (
            lambda: power_of_focal_length_d(10.0),
            "power of that focal length 100 is out of range: give from -40 to 40 D",
        ),
        (
            lambda: vergence_d(0.0),
            "distance 0 mm has no vergence: at the point itself the light meets; give another place",
        ),
        (lambda: vergence_d("far"), "distance 'far' is not a number: give a number in mm, or infinity"),
        (lambda: vergence_d(math.inf, index=3), "index 3 is out of range: give from 1 to 2"),
        (lambda: ahead_of_vergence_mm(math.inf), "vergence inf is not a finite number: give a number in D"),
        (
            lambda: object_vergence_d(-200.0),
            "object -200 mm in front of the lens is not in front of it: give a distance above 0 mm, or "
            "infinity for far off",
        ),
        (lambda: object_vergence_d(None), "object None is not a number: give a number in mm"),
        (lambda: image_vergence_d(50.0), "power 50 is out of range: give from -40 to 40 D"),
    ],
)
def test_words(call, words: str):
    with pytest.raises(LabError) as caught:
        call()
    assert str(caught.value).startswith(words)


def test_workings():
    for seed in range(200):
        draw = random.Random(seed)
        power, index = draw.choice([-1, 1]) * draw.randrange(1, 81) / 4, draw.choice([1.0, 1.336, 1.5])
        length = focal_length_working(power, index=index)
        assert_worked([length])
        assert length.value == focal_length_mm(power, index=index) / 10
        back = power_of_focal_length_working(10.0 * draw.randrange(5, 400), index=index)
        assert_worked([back])
        in_front = draw.choice([math.inf, 10.0 * draw.randrange(5, 400)])
        steps = image_workings(power, in_front_mm=in_front, index=index)
        assert_worked(steps)
        vergence = image_vergence_d(power, in_front_mm=in_front, index=index)
        assert steps[1].value == vergence
        if ahead_of_vergence_mm(vergence) == math.inf:
            assert len(steps) == 2
        else:
            assert steps[2].value == ahead_of_vergence_mm(vergence) / 10


def test_what_a_learner_reads():
    assert focal_length_working(4.0).lines()[:4] == [
        "focal length",
        "  f = 100 / F",
        "    = 100 / 4.00",
        "    = 25.00 cm",
    ]
    assert focal_length_working(4.0, index=1.336).substituted == "100 * 1.336 / 4.00"
    assert power_of_focal_length_working(-400.0).substituted == "100 / (-40.0)"
    steps = image_workings(4.0, in_front_mm=500.0)
    assert [step.substituted for step in steps] == ["-100 / 50.0", "-2.000 + 4.00", "100 / 2.000"]
    assert image_workings(4.0, in_front_mm=200.0)[-1].what == (
        "distance to where the light seems to come from (minus: in front)"
    )
    assert len(image_workings(4.0, in_front_mm=250.0)) == 2
    assert [step.substituted for step in image_workings(4.0)] == ["0", "0.000 + 4.00", "100 / 4.000"]
