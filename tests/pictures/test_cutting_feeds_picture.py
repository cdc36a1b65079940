"""The picture of the feeds: each turn as wide as it is long and as high as its torque, by what it holds."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.cutting_feed_panel import FeedPanel
from lablib.pictures.cutting_feeds import ENDS_S, FeedsPicture
from lablib.pictures.torque_round import TOPS_NM

PANEL = FeedPanel()
EXTREMES = {
    "start": {},
    "thick": {"thickness_mm": 6.0},
    "large and thin bites": {"bite_mm": 0.75, "blank_diameter_mm": 85.0},
    "light": {"sphere_d": -1.0, "thickness_mm": 2.0, "blank_diameter_mm": 58.0},
    "deep": {"bite_mm": 3.0, "head_force_n": FeedPanel.ranges["head_force_n"].high},
    "weak": {"head_force_n": FeedPanel.ranges["head_force_n"].low, "sphere_d": -12.0},
    "strict": {"torque_cap_nm": FeedPanel.ranges["torque_cap_nm"].low, "sphere_d": -12.0},
}


@pytest.fixture(scope="module")
def picture() -> FeedsPicture:
    return FeedsPicture()


@pytest.fixture(params=EXTREMES.values(), ids=EXTREMES.keys())
def drawn(request, picture):
    data = PANEL.at(**request.param)
    picture.update(data)
    return picture, data


def corners(collection) -> np.ndarray:
    """Left, right and high of every box of a collection, shape (boxes, 3)."""
    found = np.array([path.vertices[:4] for path in collection.get_paths()]).reshape(-1, 4, 2)
    return np.column_stack([found[..., 0].min(1), found[..., 0].max(1), found[..., 1].max(1)])


def test_no_words_overlap_and_all_stay_inside(drawn):
    picture, _ = drawn
    picture.png()
    require_apart_and_inside(picture)
    assert smallest_px(picture) >= 12.0


def test_each_turn_is_as_wide_as_it_is_long_and_as_high_as_its_torque(drawn):
    picture, data = drawn
    for plot, row in zip(picture.plots, data.rows, strict=True):
        found = np.concatenate([corners(part) for part in plot.kinds.values()])
        assert found[:, 0] == pytest.approx(row.ends_s[:-1])
        assert found[:, 1] == pytest.approx(row.ends_s[1:])
        assert found[:, 2] == pytest.approx(row.turns_nm)
        assert len(plot.too_much.get_paths()) == int((row.turns_nm > row.holds_nm).sum())
        assert {plot.name.get_text(), plot.said.get_text()} == {row.name, row.said}


def test_all_three_have_the_same_two_scales_and_hold_the_whole_cut(drawn):
    picture, data = drawn
    ((x, y),) = {(plot.axes.get_xlim(), plot.axes.get_ylim()) for plot in picture.plots}
    assert x[1] in dict(ENDS_S)
    assert y[1] in TOPS_NM
    assert max(row.ends_s[-1] for row in data.rows) <= x[1]


def test_the_key_names_what_is_drawn(picture):
    assert {"holds", "roughing", "finishing", "more than holds"} <= texts_of(picture)


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(picture):
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(thickness_mm=3.0))
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
