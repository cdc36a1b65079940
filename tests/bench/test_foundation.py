"""Pressure under a face that does not fit: closed forms, equilibrium, and what cannot be worked."""

import numpy as np
import pytest

from lablib.bench.bearing import EVEN, Bearing
from lablib.bench.contact import Annulus, Ellipse
from lablib.bench.foundation import face_of, pressed
from lablib.errors import LabError

DISC = Ellipse(half_width_mm=12.0, half_height_mm=12.0)
FACE = face_of(DISC)
SHARE = (FACE.away_mm / 12.0) ** 2


def test_a_gap_of_nothing_is_an_even_contact():
    on = pressed(FACE, np.full_like(FACE.x_mm, 3.0), stiffness_n_per_mm3=2.0, force_n=300.0)
    assert on.pressure_mpa == pytest.approx(np.full(FACE.x_mm.size, 300.0 / DISC.area_mm2), rel=1e-9)
    assert (on.contact_share, on.turning_share, on.friction_radius_share) == pytest.approx((1.0, 1.0, 1.0))
    assert on.farther_out == pytest.approx(0.0, abs=1e-12)
    assert on.peak_mpa == pytest.approx(on.mean_mpa)


def test_rings_of_equal_area_carry_w_as_the_closed_form():
    carried = float((FACE.away_mm * FACE.area_mm2).sum())
    assert carried == pytest.approx(Annulus(radius_mm=12.0).w_mm3, rel=1e-3)


@pytest.mark.parametrize("gap", [0.3, 0.547, 1.2])
def test_a_gap_that_grows_with_the_square_against_the_closed_form(gap: float):
    # Springs under g s, s = (r / a)^2, part contact: s_c = sqrt(2 m / g), m = N / (A k); at the peak the
    # indentation is g s_c. Friction radius of p ~ s_c - s: (4/15) s_c^2.5 against s_c^2 / 2 times 2/3.
    on = pressed(FACE, gap * SHARE, stiffness_n_per_mm3=2.0, force_n=100.0)
    touching = np.sqrt(2.0 * 100.0 / (DISC.area_mm2 * 2.0) / gap)
    assert on.contact_share == pytest.approx(touching, abs=0.01)
    assert on.turning_share == pytest.approx(touching**1.5, abs=0.01)
    assert on.peak_mpa == pytest.approx(2.0 * gap * touching, rel=0.015)
    assert on.friction_radius_share == pytest.approx(0.8 * np.sqrt(touching), rel=0.005)


def test_full_contact_from_twice_the_mean_squeeze_on():
    # On the verge p ~ 1 - s: mean logarithm of the distance lies 1/4 below that of an even disc.
    verge = 2.0 * 100.0 / (DISC.area_mm2 * 2.0)
    on = pressed(FACE, 0.999 * verge * SHARE, stiffness_n_per_mm3=2.0, force_n=100.0)
    assert on.contact_share == 1.0
    assert on.farther_out == pytest.approx(-0.25, abs=0.005)


@pytest.mark.parametrize("swivels", [False, True])
def test_equilibrium(swivels: bool):
    gap = 0.05 * FACE.x_mm + 0.004 * FACE.y_mm**2 - 0.02 * FACE.y_mm
    on = pressed(FACE, gap, stiffness_n_per_mm3=5.0, force_n=250.0, swivels=swivels)
    carried = on.pressure_mpa * FACE.area_mm2
    assert carried.sum() == pytest.approx(250.0, rel=1e-7)
    moments = [abs(float((carried * arm).sum())) for arm in (FACE.x_mm, FACE.y_mm)]
    assert (max(moments) < 1e-3) == swivels


def test_a_swivel_takes_a_tilt_away():
    on = pressed(FACE, 0.06 * FACE.x_mm, stiffness_n_per_mm3=40.0, force_n=300.0, swivels=True)
    assert on.pressure_mpa == pytest.approx(np.full(FACE.x_mm.size, 300.0 / DISC.area_mm2), rel=1e-6)


def test_more_force_never_lifts_anything_off():
    shares = [
        pressed(FACE, 0.8 * SHARE, stiffness_n_per_mm3=2.0, force_n=force).contact_share
        for force in (50.0, 100.0, 200.0, 400.0)
    ]
    assert shares == sorted(shares)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: pressed(FACE, np.sqrt(100.0 - FACE.away_mm**2), stiffness_n_per_mm3=2.0, force_n=1.0),
            "a surface curls up before the rim of the face: give a flatter curve or a smaller face",
        ),
        (
            lambda: Bearing(area=1.2),
            "share of the area that touches 1.2 is out of range: give from 0 to 1",
        ),
        (
            lambda: Bearing(turning=-0.1),
            "share of W that touches -0.1 is out of range: give from 0 to 1",
        ),
        (
            lambda: Bearing(friction_radius=3.0),
            "share of the friction radius 3 is out of range: give from 0 to 2",
        ),
    ],
)
@pytest.mark.filterwarnings("ignore:invalid value encountered in sqrt")
def test_what_cannot_be_pressed(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words


def test_a_bearing_without_some_of_it():
    left = Bearing(area=0.8, turning=0.9, friction_radius=1.1).without(0.25)
    assert (left.area, left.turning, left.friction_radius) == pytest.approx((0.6, 0.675, 1.1))
    assert EVEN.is_even
    assert not left.is_even
