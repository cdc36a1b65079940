"""The picture of a worn lens: where lens, eye, light and errors are drawn, by what it holds."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, texts_of

from lablib.panels.wearing_panel import WearingPanel
from lablib.pictures.error_curve import TOPS_D
from lablib.pictures.wearing import WearingPicture

PANEL = WearingPanel()


@pytest.fixture(scope="module")
def picture() -> WearingPicture:
    return WearingPicture()


def test_the_light_is_drawn_to_the_point_about_which_the_eye_turns(picture):
    picture.update(PANEL.at(gaze_deg=-25.0))
    x, y = picture.sight.get_data()

    assert (x[-1], y[-1]) == (27.0, 0.0)
    assert (picture.eye.rotation.get_xdata()[0], picture.eye.rotation.get_ydata()[0]) == (27.0, 0.0)
    assert y[0] < y[1] < y[2] < 0.0


def test_the_eye_turns_with_the_gaze_and_its_cornea_keeps_its_distance(picture):
    for gaze in (-30.0, 0.0, 30.0):
        picture.update(PANEL.at(gaze_deg=gaze))
        middle = np.array(picture.eye.cornea.get_center())
        ahead = np.array([-np.cos(np.radians(gaze)), np.sin(np.radians(gaze))])
        apex = middle + picture.eye.cornea.width / 2.0 * ahead
        np.testing.assert_allclose(apex, np.array([27.0, 0.0]) + 15.0 * ahead, atol=1e-9)


def test_the_axis_of_the_lens_meets_the_eye_where_it_turns_only_with_the_drop(picture):
    def missed(drop: float) -> float:
        picture.update(PANEL.at(drop_mm=drop))
        x, y = picture.lens_axis.get_data()
        return float(np.interp(27.0, x, y))

    assert missed(0.0) == pytest.approx(27.0 * np.tan(np.radians(10.0)))
    assert abs(missed(4.5)) < 0.3


def test_the_measures_say_vertex_distance_and_the_way_into_the_eye(picture):
    picture.update(PANEL.at(vertex_mm=9.5))

    assert {"9.5 mm", "15 mm"} <= texts_of(picture)
    assert picture.measures.line.get_xdata()[:2] == pytest.approx([0.0, 24.5])


def test_the_curves_are_the_errors_as_shares_of_the_scale(picture):
    data = PANEL.at(gaze_deg=20.0)
    picture.update(data)
    errors = picture.errors

    assert errors.top_d in TOPS_D
    np.testing.assert_allclose(errors.tangential.get_ydata() * errors.top_d, data.tangential_d)
    np.testing.assert_allclose(errors.sagittal.get_ydata() * errors.top_d, data.sagittal_d)
    tangential, sagittal = (point.get_ydata()[0] * errors.top_d for point in errors.points)
    assert (tangential, sagittal) == pytest.approx((data.tangential_now_d, data.sagittal_now_d))


def test_the_gaze_leaves_the_scale_alone(picture):
    tops = set()
    for gaze in range(-30, 31, 10):
        picture.update(PANEL.at(gaze_deg=gaze))
        tops.add(picture.errors.top_d)
    assert len(tops) == 1


def test_an_error_beyond_the_scale_has_no_mark(picture):
    wild = PANEL.at(power_d=-10.0, front_d=16.0, tilt_deg=20.0, vertex_mm=20.0, gaze_deg=30.0)
    picture.update(wild)
    top = picture.errors.top_d
    for point, error in zip(picture.errors.points, (wild.tangential_now_d, wild.sagittal_now_d), strict=True):
        assert np.isfinite(point.get_ydata()[0]) == (abs(error) <= 1.06 * top)


STATES = tuple(
    itertools.product((-10.0, 0.0, 10.0), (-5.0, 20.0), (8.0, 20.0), (0.0, 8.0), (-30.0, 0.0, 30.0))
)


@pytest.mark.parametrize(("power", "tilt", "vertex", "drop", "gaze"), STATES)
def test_no_words_overlap_and_all_stay_inside(picture, power, tilt, vertex, drop, gaze):
    front = 12.0 if power > 0.0 else 4.0
    where = {"tilt_deg": tilt, "vertex_mm": vertex, "drop_mm": drop, "gaze_deg": gaze}
    picture.update(PANEL.at(power_d=power, front_d=front, made="compensated", **where))
    picture.png()
    require_apart_and_inside(picture)
