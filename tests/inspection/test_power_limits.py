"""Limits of sphere and cylinder: ANSI Z80.1-2015, restated in the Virginia code 18VAC80-30-120."""

import pytest

from lablib.errors import LabError
from lablib.inspection.power import cylinder_limit_d, sphere_limit_d


@pytest.mark.parametrize(
    ("sphere", "single_vision", "progressive"),
    [(0.0, 0.13, 0.16), (-6.50, 0.13, 0.16), (6.75, 0.135, 0.16), (-8.00, 0.16, 0.16), (10.0, 0.20, 0.20)],
)
def test_sphere(sphere: float, single_vision: float, progressive: float):
    assert sphere_limit_d(sphere) == pytest.approx(single_vision, abs=1e-12)
    assert sphere_limit_d(sphere, progressive=True) == pytest.approx(progressive, abs=1e-12)


@pytest.mark.parametrize(
    ("cylinder", "single_vision", "progressive"),
    [(-2.00, 0.13, 0.16), (2.25, 0.15, 0.18), (-3.50, 0.15, 0.18), (-4.00, 0.15, 0.20), (4.75, 0.19, 0.2375)],
)
def test_cylinder(cylinder: float, single_vision: float, progressive: float):
    assert cylinder_limit_d(cylinder) == pytest.approx(single_vision, abs=1e-12)
    assert cylinder_limit_d(cylinder, progressive=True) == pytest.approx(progressive, abs=1e-12)


def test_a_power_is_rounded_before_it_is_put_in_a_band():
    assert sphere_limit_d(6.5000001) == 0.13


def test_what_is_no_power_is_refused():
    with pytest.raises(LabError, match=r"sphere nan is not a finite number: give a number in D"):
        sphere_limit_d(float("nan"))
    with pytest.raises(LabError, match=r"cylinder 'two' is not a number: give a number in D"):
        cylinder_limit_d("two")
    with pytest.raises(LabError, match=r"lablib.inspection/none.toml cannot be read"):
        sphere_limit_d(1.0, standard="none")
