"""A worn lens seen from the side: where its surfaces, its axis and a line of sight lie."""

import math

import numpy as np
import pytest

from lablib.errors import LabError
from lablib.optics.chief_rays import WornLens, chief_rays
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.optics.tilt import Tilt
from lablib.optics.worn_section import line_of_sight, worn_section


def minus(**worn) -> WornLens:
    lens = lens_for(Prescription(sphere_d=-6.0), index=1.5, front_curve_d=3.0, centre_thickness_mm=2.0)
    return WornLens(lens=lens, **worn)


def test_a_lens_worn_square_stands_upright_with_its_centre_on_the_line_ahead():
    worn = minus()
    got = worn_section(worn, half_height_mm=20.0)

    np.testing.assert_allclose(got.centre_mm, (0.0, 0.0), atol=1e-12)
    np.testing.assert_allclose(got.towards_eye, (1.0, 0.0))
    np.testing.assert_allclose(got.front_mm[[0, -1], 1], (-20.0, 20.0))
    middle = len(got.front_mm) // 2
    np.testing.assert_allclose(got.front_mm[middle], (-2.0, 0.0), atol=1e-12)
    thickness = got.back_mm[:, 0] - got.front_mm[:, 0]
    np.testing.assert_allclose(
        thickness, worn.lens.thickness_mm(np.zeros(len(thickness)), got.front_mm[:, 1]), rtol=1e-12
    )


def test_pantoscopic_tilt_brings_the_lower_rim_nearer_to_the_face():
    got = worn_section(minus(tilt=Tilt(pantoscopic_deg=10.0)), half_height_mm=20.0)

    assert got.back_mm[0, 0] > got.back_mm[-1, 0]
    assert got.towards_eye[1] == pytest.approx(math.sin(math.radians(10.0)))


def test_with_the_right_drop_the_axis_runs_through_the_centre_of_rotation():
    tilt = math.radians(8.0)
    worn = minus(tilt=Tilt(pantoscopic_deg=8.0), drop_mm=27.0 * math.sin(tilt))
    got = worn_section(worn, half_height_mm=20.0)

    np.testing.assert_allclose(
        got.centre_mm + 27.0 * math.cos(tilt) * got.towards_eye, (27.0, 0.0), atol=1e-9
    )


def test_where_the_surfaces_have_crossed_there_is_no_glass():
    lens = lens_for(Prescription(sphere_d=10.0), index=1.5, front_curve_d=12.0, centre_thickness_mm=3.0)
    got = worn_section(WornLens(lens=lens), half_height_mm=24.0)

    assert 0 < len(got.front_mm) < 97
    assert np.abs(got.front_mm[:, 1]).max() < 24.0


def test_the_line_of_sight_runs_from_in_front_to_the_centre_of_rotation():
    worn = minus()
    rays = chief_rays(worn, -20.0)
    far, front, back, eye = line_of_sight(rays, before_mm=50.0, centre_of_rotation_mm=27.0)

    assert tuple(eye) == (27.0, 0.0)
    assert math.hypot(*(far - front)) == pytest.approx(50.0)
    assert math.degrees(math.atan2(back[1], 27.0 - back[0])) == pytest.approx(-20.0)
    # A minus lens shows things nearer to its centre than they are: outside, the ray is the steeper one.
    assert abs((far[1] - front[1]) / (far[0] - front[0])) > math.tan(math.radians(20.0))


def test_no_ray_no_line():
    lens = lens_for(Prescription(sphere_d=-10.0), index=1.5, front_curve_d=16.0, centre_thickness_mm=2.0)
    rays = chief_rays(WornLens(lens=lens, centre_of_rotation_mm=40.0), 55.0)

    assert np.isnan(line_of_sight(rays, before_mm=50.0, centre_of_rotation_mm=40.0)[:3]).any()


@pytest.mark.parametrize("wrong", [math.nan, "20"])
def test_lengths_are_numbers(wrong):
    with pytest.raises(LabError, match="half height"):
        worn_section(minus(), half_height_mm=wrong)
    with pytest.raises(LabError, match="before_mm"):
        line_of_sight(chief_rays(minus(), 0.0), before_mm=wrong, centre_of_rotation_mm=27.0)
