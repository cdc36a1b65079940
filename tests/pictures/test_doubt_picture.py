"""The picture of doubt, by what it holds."""

from dataclasses import replace

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.doubt_panel import DoubtPanel
from lablib.panels.remedy_panel import LENSES
from lablib.pictures.doubt import HIGH, LOW, MOST_ROWS, DoubtPicture

PANEL = DoubtPanel()


@pytest.fixture(scope="module")
def picture() -> DoubtPicture:
    return DoubtPicture()


@pytest.fixture(params=[(lens, change) for lens in LENSES for change in ("nothing", "film")], ids=str)
def drawn(request, picture):
    lens, change = request.param
    data = PANEL.at(lens=lens, change=change)
    picture.update(data)
    return picture, data


def test_no_words_overlap_and_all_stay_inside(drawn):
    picture, _ = drawn
    picture.png()
    require_apart_and_inside(picture)
    assert smallest_px(picture) >= 12.0


def test_each_parameter_has_its_words_and_both_ends(drawn):
    picture, data = drawn
    low, high = picture.ends
    assert list(low.get_xdata()) == pytest.approx([one.at_low for one in data.swings])
    assert list(high.get_xdata()) == pytest.approx([one.at_high for one in data.swings])
    assert {one.words for one in data.swings} <= texts_of(picture)
    for bar, one in zip(picture.bars, data.swings, strict=True):
        assert sorted(bar.get_xdata()) == pytest.approx(sorted([one.at_low, one.at_high]))


def test_the_benches_are_drawn_with_their_band_and_middle(drawn):
    picture, data = drawn
    assert tuple(picture.band.get_xdata()) == pytest.approx(data.band)
    assert list(picture.middle.get_xdata()) == [data.middle]
    assert list(picture.table.get_xdata()) == [data.margin]
    shape, turning = (patch.get_xy() for patch in (picture.shape, picture.turning))
    assert 0.0 < shape[:, 1].max() <= 0.8
    assert turning[turning[:, 1] > 0.0, 0].max(initial=LOW) <= 1.0 + 1e-9


def test_margins_beyond_the_scale_stand_at_its_end(picture):
    data = PANEL.at()
    picture.update(replace(data, band=(LOW / 2.0, 2.0 * HIGH), swings=data.swings[:2]))
    assert tuple(picture.band.get_xdata()) == (LOW, HIGH)
    assert [bool(len(np.atleast_1d(bar.get_xdata()))) for bar in picture.bars] == [True] * 2 + [False] * (
        MOST_ROWS - 2
    )


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(picture):
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(change="film"))
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
