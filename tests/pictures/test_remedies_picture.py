"""The picture of remedies, by what it holds."""

from dataclasses import replace

import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.remedy_panel import LENSES, RemedyPanel
from lablib.pictures.remedies import HIGH, LOW, RemediesPicture

PANEL = RemedyPanel()


@pytest.fixture(scope="module")
def picture() -> RemediesPicture:
    return RemediesPicture()


@pytest.fixture(params=[(lens, bound) for lens in LENSES for bound in (1, 50)], ids=str)
def drawn(request, picture):
    lens, bound = request.param
    data = PANEL.at(lens=lens, bound=bound)
    picture.update(data)
    return picture, data


def test_no_words_overlap_and_all_stay_inside(drawn):
    picture, _ = drawn
    picture.png()
    require_apart_and_inside(picture)
    assert smallest_px(picture) >= 12.0


def test_every_change_has_a_mark_at_its_margin_and_its_words(drawn):
    picture, data = drawn
    marks = {name: list(mark.get_xdata()) for name, mark in picture.marks.items()}
    assert marks["now"] == pytest.approx([data.now.margin])
    assert marks["alone"] == pytest.approx([row.margin for row in data.singles if not row.is_chosen])
    assert marks["in the set"] == pytest.approx([row.margin for row in data.singles if row.is_chosen])
    assert marks["set"] == pytest.approx([data.chosen.margin] if data.chosen else [])
    for row in data.singles:
        assert (f"{row.words} *" if row.is_asked else row.words) in texts_of(picture)


def test_the_bound_is_a_line_at_the_margin_it_needs(drawn):
    picture, data = drawn
    assert list(picture.bound.get_xdata()) == pytest.approx([data.needed] * 2)


def test_margins_beyond_the_scale_stand_at_its_end_and_say_so(picture):
    data = PANEL.at()
    far = replace(data.now, margin=2.0 * HIGH), replace(data.now, margin=LOW / 2.0)
    picture.update(replace(data, now=far[0], singles=(far[1],)))
    assert list(picture.marks["now"].get_xdata()) == [HIGH]
    assert list(picture.marks["alone"].get_xdata()) == [LOW]
    assert {"as it is ▶", "as it is ◀"} <= texts_of(picture)


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(picture):
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(bound=1))
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
