"""A blank laid on an outline: covered or not, the move that would fit it, and the prism that would cost."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.blank_fit import NO_SHIFT, BlankFit, prism_of_shifts
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import decentration_mm
from lablib.optics.prescription import Prescription

BIG = Frame(a_mm=58.0, b_mm=44.0, dbl_mm=16.0, shape=OutlineShape.superellipse(3.0))


def fit(*, eye=Eye.RIGHT, frame=BIG, pd_mm=29.0, height_mm=None, blank_mm=70.0) -> BlankFit:
    inward, up = decentration_mm(frame, monocular_pd_mm=pd_mm, height_mm=height_mm)
    return BlankFit(eye=eye, outline=frame.outline(eye), in_mm=inward, up_mm=up, blank_mm=blank_mm)


def least_about(one: BlankFit, move: tuple[float, float]) -> float:
    """Least blank after a move, by brute force on the outline."""
    x, y = one.centre_mm.real + one.eye.nasal_sign * move[0], one.centre_mm.imag + move[1]
    return 2.0 * float(np.hypot(one.outline.x_mm - x, one.outline.y_mm - y).max()) + 2.0


# An invented job: both -3.00, A 58, B 44, DBL 16, exponent 3.0, 29 mm, 70 mm blanks. The least blank is 76.9;
# shifting each centre 3.6 mm puts in 1.07 base in each, 2.1 together.
@pytest.mark.parametrize("eye", list(Eye))
def test_a_blank_that_does_not_cover_and_the_move_that_would_fit_it(eye):
    got = fit(eye=eye)

    assert got.least.exact_mm == pytest.approx(76.9, abs=0.05)
    assert got.spare_mm == pytest.approx(-6.9, abs=0.05)
    assert not got.blank_covers
    assert got.shift_mm == pytest.approx((-3.6, 0.0), abs=0.05)
    rx = Prescription(sphere_d=-3.0)
    pair = prism_of_shifts(rx, rx, right_mm=got.shift_mm, left_mm=got.shift_mm)
    assert pair.right == pytest.approx((1.07, 0.0), abs=0.005)
    assert pair.between == pytest.approx((2.1, 0.0), abs=0.05)


# The easy job beside it: A 50, B 34, DBL 18, 30 and 33 mm: least blank 60.1 right.
def test_a_blank_that_covers_needs_no_move():
    frame = Frame(a_mm=50.0, b_mm=34.0, dbl_mm=18.0)
    got = fit(frame=frame, pd_mm=30.0, blank_mm=65.0)

    assert got.least.exact_mm == pytest.approx(60.1, abs=0.05)
    assert got.blank_covers
    assert got.spare_mm == pytest.approx(4.9, abs=0.05)
    assert got.shift_mm == NO_SHIFT
    assert got.beyond_mm.max() == pytest.approx(-got.spare_mm / 2.0)


def test_the_farthest_point_lies_half_of_what_lacks_beyond_the_usable_blank():
    got = fit()

    assert got.usable_mm == 34.0
    assert got.beyond_mm.max() == pytest.approx(-got.spare_mm / 2.0)


def test_no_move_helps_where_the_blank_is_smaller_than_the_outline():
    assert fit(blank_mm=60.0).shift_mm is None


@given(
    pd_mm=st.floats(26.0, 34.0),
    height_mm=st.floats(10.0, 34.0),
    blank_mm=st.floats(63.0, 85.0),
    eye=st.sampled_from(list(Eye)),
)
def test_after_the_move_the_blank_just_covers_and_no_shorter_move_does(pd_mm, height_mm, blank_mm, eye):
    got = fit(eye=eye, pd_mm=pd_mm, height_mm=height_mm, blank_mm=blank_mm)
    move = got.shift_mm

    if got.blank_covers:
        assert move == NO_SHIFT
        return
    assert least_about(got, move) == pytest.approx(blank_mm, abs=1e-6)
    length = np.hypot(*move)
    for turn in np.linspace(0.0, 2.0 * np.pi, 24, endpoint=False):
        shorter = (0.98 * length * np.cos(turn), 0.98 * length * np.sin(turn))
        assert least_about(got, shorter) > blank_mm - 1e-6


def test_both_eyes_are_mirror_images():
    right, left = (fit(eye=eye, height_mm=28.0) for eye in Eye)

    assert right.shift_mm == pytest.approx(left.shift_mm, abs=1e-9)


def test_a_centre_moved_up_on_a_minus_lens_leaves_the_eye_below_it():
    rx = Prescription(sphere_d=-3.0)
    pair = prism_of_shifts(rx, rx, right_mm=(0.0, 2.0), left_mm=NO_SHIFT)

    assert pair.right == pytest.approx((0.0, -0.6))
    assert pair.left == (0.0, 0.0)


def test_a_blank_that_cannot_be_is_named():
    with pytest.raises(LabError, match=r"blank_diameter_mm 20 is out of range: give from 30 to 100 mm"):
        fit(blank_mm=20.0)
