"""Outline and blank from the chuck axis, against roots found along each direction."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reference_jobs import superellipse
from scipy.optimize import brentq

from lablib.bench.geometry import angles_rad, circle_from, outline_from, parallel_outline
from lablib.errors import LabError


@pytest.mark.parametrize(("x", "y"), [(0.0, 0.0), (3.0, -2.0), (-6.0, 4.0)])
def test_outline_from_another_point(x: float, y: float):
    # |x/25|^2.6 + |y/18|^2.6 = 1 along each ray from the new point, by scipy.optimize.brentq.
    seen = outline_from(superellipse(), x_mm=x, y_mm=y)
    for at in range(0, 720, 45):
        angle = math.radians(at / 2.0)

        def inside(radius: float, angle: float = angle) -> float:
            across, up = x + radius * math.cos(angle), y + radius * math.sin(angle)
            return abs(across / 25.0) ** 2.6 + abs(up / 18.0) ** 2.6 - 1.0

        assert seen[at] == pytest.approx(brentq(inside, 0.1, 60.0), abs=2e-5)


def test_a_circle_from_another_point_is_a_decentred_blank():
    seen = outline_from(np.full(720, 35.0), x_mm=-2.0, y_mm=1.0)
    assert seen == pytest.approx(circle_from(70.0, x_mm=2.0, y_mm=-1.0, points=720), abs=1e-7)


def test_a_blanks_rim_is_a_circle_about_its_centre():
    angle = angles_rad(360)
    rim = circle_from(65.0, x_mm=3.0, y_mm=-1.5, points=360)
    away = np.hypot(rim * np.cos(angle) - 3.0, rim * np.sin(angle) + 1.5)
    assert away == pytest.approx(np.full(360, 32.5), abs=1e-12)


def test_a_blocking_point_outside_the_outline():
    with pytest.raises(LabError) as caught:
        outline_from(superellipse(), x_mm=30.0, y_mm=0.0)
    assert str(caught.value) == (
        "blocking point (30, 0) mm does not see the whole outline: give a point well inside it"
    )


def test_a_blocking_point_that_does_not_see_round_a_bay():
    angle = angles_rad(720)
    kidney = 20.0 - 14.0 * np.exp(-(((angle - math.pi / 2.0) / 0.5) ** 2))
    with pytest.raises(LabError, match=r"blocking point \(12, 2\) mm does not see the whole outline"):
        outline_from(kidney, x_mm=12.0, y_mm=2.0)


def test_a_blank_off_the_chuck_axis():
    with pytest.raises(LabError) as caught:
        circle_from(60.0, x_mm=24.0, y_mm=18.0, points=720)
    assert str(caught.value) == (
        "blank of 60 mm centred 30 mm from the chuck axis does not reach the axis: "
        "give a larger blank or a nearer centre"
    )


@pytest.mark.parametrize("offset", [-3.0, 0.5, 2.0, 12.0])
def test_the_parallel_of_a_circle_off_its_centre_is_a_circle(offset: float):
    rim = circle_from(40.0, x_mm=5.0, y_mm=-3.0, points=1440)
    parallel = parallel_outline(rim, offset)
    assert parallel == pytest.approx(
        circle_from(40.0 + 2.0 * offset, x_mm=5.0, y_mm=-3.0, points=1440), abs=1e-4
    )


def test_the_parallel_of_an_ellipse():
    # Its support function is the ellipse's and the offset: h(psi) = sqrt(a^2 cos^2 + b^2 sin^2) + c, so its
    # points are h (cos, sin) + h' (-sin, cos).
    a, b, c = 25.0, 18.0, 3.0
    psi = np.linspace(0.0, 2.0 * np.pi, 20_001)
    h = np.hypot(a * np.cos(psi), b * np.sin(psi))
    slope = (b**2 - a**2) * np.sin(psi) * np.cos(psi) / h
    x = (h + c) * np.cos(psi) - slope * np.sin(psi)
    y = (h + c) * np.sin(psi) + slope * np.cos(psi)
    angle, away = np.unwrap(np.arctan2(y, x)), np.hypot(x, y)
    expected = np.interp(angles_rad(720), angle, away)
    assert parallel_outline(superellipse(2.0), c) == pytest.approx(expected, abs=1e-3)


@settings(deadline=None, max_examples=30)
@given(
    exponent=st.floats(2.0, 3.5),
    width=st.floats(44.0, 56.0),
    height=st.floats(28.0, 42.0),
    offset=st.floats(0.5, 12.0),
)
def test_a_parallel_lies_its_offset_from_the_outline(
    exponent: float, width: float, height: float, offset: float
):
    outline = superellipse(exponent, width, height, 1440)
    parallel = parallel_outline(outline, offset)
    # Farther out than along the radius, but nowhere farther from the outline than its offset.
    assert np.all(parallel >= outline + offset - 1e-3)
    angle = angles_rad(1440)
    x, y = outline * np.cos(angle), outline * np.sin(angle)
    for at in range(0, 1440, 90):
        across, up = parallel[at] * np.cos(angle[at]), parallel[at] * np.sin(angle[at])
        assert np.hypot(x - across, y - up).min() == pytest.approx(offset, abs=5e-3)


def test_a_parallel_that_crosses_itself():
    angle = angles_rad(720)
    bay = 20.0 - 6.0 * np.exp(-(((angle - math.pi / 2.0) / 0.25) ** 2))
    with pytest.raises(LabError) as caught:
        parallel_outline(bay, 12.0)
    assert str(caught.value) == ("parallel of 12 mm crosses itself on this outline: give a smaller offset")
