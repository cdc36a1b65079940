"""The picture of four lenses side by side, by what it holds."""

import pytest
from picture_words import require_apart_and_inside, texts_of

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


def test_all_four_are_drawn_at_one_scale(picture):
    assert len({place.window.px_per_mm for place in picture.lenses}) == 1


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
