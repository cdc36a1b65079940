"""The picture of a calibration, by what it holds."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.calibration_panel import CalibrationPanel
from lablib.pictures.calibration import MOST_N, TOPS_NM, CalibrationPicture

PANEL = CalibrationPanel()
EXTREMES = {
    "start": {},
    "core": {"coat": "coated", "origin": "yes", "behind": "yes"},
    "low": {"coat": "uncoated", "greatest_n": 80},
    "scattered": {"scatter": 30, "times": 12, "coat": "uncoated", "day": 2},
    "none": {"scatter": 0, "behind": "yes"},
}


@pytest.fixture(scope="module")
def picture() -> CalibrationPicture:
    return CalibrationPicture()


@pytest.fixture(params=EXTREMES.values(), ids=EXTREMES.keys())
def drawn(request, picture):
    data = PANEL.at(**request.param)
    picture.update(data)
    return picture, data


def test_no_words_overlap_and_all_stay_inside(drawn):
    picture, _ = drawn
    picture.png()
    require_apart_and_inside(picture)
    assert smallest_px(picture) >= 12.0


def test_every_reading_is_drawn_and_lies_on_the_scale(drawn):
    picture, data = drawn
    for artist, points in ((picture.used, data.used), (picture.left_out, data.left_out)):
        assert np.column_stack(artist.get_data()) == pytest.approx(points)
        assert (points[:, 1] <= picture.top_nm).all()
    assert len(data.used) == len(data.fit.used)
    assert picture.top_nm in TOPS_NM


def test_the_line_is_solid_where_it_was_tried_and_dashed_below(drawn):
    picture, data = drawn
    low, high = data.tried_n
    assert tuple(picture.line.get_xdata()) == (low, high)
    assert tuple(picture.to_no_force.get_xdata()) == (0.0, low)
    assert picture.line.get_ydata()[-1] == pytest.approx(data.fit.torque_nmm(high) / 1000.0)
    band = picture.band.get_xy()
    assert (band[:, 0].min(), band[:, 0].max()) == (low, high)


def test_what_nobody_tried_is_hatched(drawn):
    picture, data = drawn
    below, above = picture.not_tried
    assert (below.get_x(), below.get_width()) == (0.0, data.tried_n[0])
    assert (above.get_x(), above.get_x() + above.get_width()) == (data.tried_n[1], MOST_N)
    assert "hatched: nobody tried, nothing is said" in texts_of(picture)


def test_what_is_hidden_is_not_drawn(picture):
    picture.update(PANEL.at())
    assert not len(picture.zero_line.get_xdata())
    assert not len(picture.behind.get_xdata())
    picture.update(PANEL.at(origin="yes", behind="yes"))
    assert picture.zero_line.get_ydata()[0] == 0.0
    assert len(picture.behind.get_xdata()) > 2


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(picture):
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(day=2))
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
