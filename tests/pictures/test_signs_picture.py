"""The picture of four lenses side by side, by what it holds."""

import numpy as np
import pytest
from matplotlib.path import Path
from matplotlib.transforms import Bbox
from picture_words import require_apart_and_inside, texts_of
from turned_lenses import points_of

from lablib.panels.signs_panel import SignsPanel
from lablib.pictures.signs import SignsPicture

PANEL = SignsPanel()
CHANGES = PANEL.ranges["change"].options


@pytest.fixture(scope="module")
def picture() -> SignsPicture:
    return SignsPicture()


def test_each_lens_stands_under_its_sign_and_margin(picture):
    picture.update(PANEL.at(change="nothing"))

    assert [place.sign.get_text() for place in picture.lenses] == [
        "1  no sign",
        "2  line off level",
        "3  bumped outline",
        "4  burnt patch",
    ]
    assert [place.margin.get_text() for place in picture.lenses] == [
        "margin 2.74, holds",
        "margin 0.93, turns",
        "margin 0.64, turns",
        "margin 0.37, turns",
    ]


def test_each_lens_is_drawn_as_it_came_out(picture):
    data = PANEL.at(change="nothing")
    picture.update(data)

    for place, lens in zip(picture.lenses, data.lenses, strict=True):
        drawn = place.lens.rim.get_xy()[: lens.seen.rim.size]
        assert drawn[:, 0] == pytest.approx(lens.seen.rim.real)
        assert drawn[:, 1] == pytest.approx(lens.seen.rim.imag)
    assert [place.lens.patch.get_visible() for place in picture.lenses] == [False, False, False, True]


def test_before_the_cut_no_sign_no_margin_and_no_figure_is_written(picture):
    picture.update(PANEL.at(change="not cut yet"))

    for number, place in enumerate(picture.lenses, 1):
        assert place.sign.get_text() == f"{number}  not cut yet"
        assert place.margin.get_text() == place.figures.get_text() == ""


def test_all_four_are_drawn_at_one_scale_before_the_cut_at_a_smaller_one(picture):
    scales = []
    for change in CHANGES:
        picture.update(PANEL.at(change=change))
        scales.append({place.window.px_per_mm for place in picture.lenses})

    assert all(len(scale) == 1 for scale in scales)
    assert min(scales[0]) < min(scales[1])
    assert all(scale == scales[1] for scale in scales[1:])


@pytest.mark.parametrize("change", CHANGES)
def test_each_lens_lies_whole_in_its_place(picture, change: str):
    picture.update(PANEL.at(change=change))

    for place in picture.lenses:
        left, low, right, high = place.window.box_px
        rim = [place.window.px(point.real, point.imag) for point in points_of(place.lens.rim)]
        assert all(left < x < right and low < y < high for x, y in rim)


@pytest.mark.parametrize("change", CHANGES)
def test_what_is_short_is_written_off_the_lens_on_its_side(picture, change: str):
    data = PANEL.at(change=change)
    picture.update(data)
    picture.png()
    for place, lens in zip(picture.lenses, data.lenses, strict=True):
        label = place.lens.short
        if not label.get_visible():
            continue
        box = label.get_window_extent(picture.figure.canvas.get_renderer())
        ordered = place.lens.ordered
        assert not Path(ordered.get_transform().transform(ordered.get_xy())).intersects_bbox(
            Bbox(box.extents.reshape(2, 2)), filled=True
        )
        middle = place.window.px(0.0, 0.0)[0]
        assert np.sign(label.get_position()[0] - middle) == np.sign(lens.seen.short_at.real)


def test_a_long_job_is_written_in_two_lines(picture):
    picture.update(PANEL.at(change="nothing"))
    first, second = (label.get_text() for label in picture.lenses[2].words)

    assert f"{first} {second}" == PANEL.at(change="nothing").lenses[2].words
    assert picture.lenses[0].words[1].get_text() == ""


def test_the_key_names_what_is_drawn(picture):
    assert {"outline as ordered", "missing of it", "line marked on the lens", "burnt patch"} <= texts_of(
        picture
    )


def test_what_a_great_turn_left_is_written_below_its_lens(picture):
    picture.update(PANEL.at(change="nothing"))

    assert picture.lenses[1].figures.get_text() == "turned 14°,  short 0.00 mm,  warmed 1 K"
    assert picture.lenses[3].figures.get_text() == "turned 1404°,  short 2.55 mm,  warmed 30 K"


@pytest.mark.parametrize("change", CHANGES)
def test_no_words_overlap_and_all_stay_inside(picture, change: str):
    picture.update(PANEL.at(change=change))
    picture.png()
    require_apart_and_inside(picture, change)
