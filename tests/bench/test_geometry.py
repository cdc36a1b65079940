"""Outline and blank from the chuck axis, against roots found along each direction."""

import math

import numpy as np
import pytest
from reference_jobs import superellipse
from scipy.optimize import brentq

from lablib.bench.geometry import angles_rad, circle_from, outline_from
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
