"""The picture of eyes that read: lines from page to eye, points on the ruler, distances in words."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.optics.eye import Eye
from lablib.panels.near_sight_panel import NearSightPanel
from lablib.pictures.near_sight import NearSightPicture
from lablib.pictures.near_sight_data import NearSight

CASES = {
    "start": {},
    "near": {
        "right_pd_mm": 26.0,
        "left_pd_mm": 38.0,
        "working_distance_mm": 250.0,
        "centre_of_rotation_mm": 34.0,
        "power_d": 10.0,
    },
    "away": {
        "right_pd_mm": 38.0,
        "left_pd_mm": 26.0,
        "working_distance_mm": 700.0,
        "centre_of_rotation_mm": 22.0,
        "power_d": -10.0,
    },
}
PANEL = NearSightPanel()


@pytest.fixture(scope="module")
def picture() -> NearSightPicture:
    return NearSightPicture()


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[NearSightPicture, NearSight]:
    shown = PANEL.at(**request.param)
    picture.update(shown)
    return picture, shown


def test_a_line_runs_from_the_page_through_the_near_point_to_the_eye(drawn):
    picture, shown = drawn
    for eye, drawing in picture.eyes.items():
        (back, level), (lens, near), (page, middle) = drawing.near.get_xydata()
        assert (back, level) == drawing.ball.get_center()
        assert (lens, page, middle) == (0.0, shown.working_distance_mm, 0.0)
        assert near == -eye.nasal_sign * shown.near_mm(eye)
        assert back == -shown.centre_of_rotation_mm


def test_without_power_the_line_is_straight(picture):
    picture.update(PANEL.at())
    for drawing in picture.eyes.values():
        start, lens, page = drawing.near.get_xydata() @ np.array([1.0, 1j])
        assert abs(((lens - start) * np.conj(page - lens)).imag) < 1e-9


def test_far_lines_are_level_and_the_right_eye_is_below_from_above(drawn):
    picture, shown = drawn
    for eye, drawing in picture.eyes.items():
        levels = set(drawing.far.get_ydata())
        assert levels == {-eye.nasal_sign * shown.far_mm(eye)}


def test_points_stand_on_the_ruler_where_the_words_say(drawn):
    picture, shown = drawn
    for eye, drawing in picture.eyes.items():
        far, near = (point.get_xydata()[0] for point in (drawing.far_point, drawing.near_point))
        assert far.tolist() == [-eye.nasal_sign * shown.far_mm(eye), 0.0]
        assert abs(near[0]) < abs(far[0]), "nearer to the nose"
        assert drawing.far_words.get_text() == f"{eye}, far {abs(far[0]):.1f}"
        assert drawing.near_words.get_text().startswith(f"{eye}, near {abs(near[0]):.1f}: inset ")
        assert abs(drawing.near_line.get_xdata()[1]) == abs(near[0])


def test_the_page_stands_where_it_is_said(drawn):
    picture, shown = drawn
    assert set(picture.page.get_xdata()) == {shown.working_distance_mm}
    assert f"page at {shown.working_distance_mm:g} mm" in texts_of(picture)
    assert picture.above.axes.get_xlim()[1] > shown.working_distance_mm


def test_the_eyes_stay_in_the_window(drawn):
    picture, _ = drawn
    (left, right), (low, high) = picture.above.axes.get_xlim(), picture.above.axes.get_ylim()
    for drawing in picture.eyes.values():
        (x, y), radius = drawing.ball.get_center(), drawing.ball.get_radius()
        assert left < x - radius
        assert x + radius < right
        assert low < y - radius
        assert y + radius < high


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 15


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_both_eyes_are_drawn(picture):
    assert set(picture.eyes) == set(Eye)
