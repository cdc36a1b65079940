"""The picture of the log: points and limits where they belong, bars as long as their figures."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.spoilage_panel import SpoilagePanel
from lablib.pictures.spoilage import TOPS, SpoilagePicture

PANEL = SpoilagePanel()
EXTREMES = {
    "start": {},
    "by money": {"ranked_by": "money", "cause": "scratched"},
    "all spoiled": {"cut": 20, "spoiled": 20},
    "none of many": {"cut": 160, "spoiled": 0},
    "four weeks": {"batch": "four weeks", "cause": "segment or cross height", "spoiled": 20},
    "two weeks": {"batch": "two weeks", "cut": 160, "spoiled": 20},
}


@pytest.fixture(scope="module")
def picture() -> SpoilagePicture:
    return SpoilagePicture()


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


def test_points_and_limits_stand_where_the_chart_says(drawn):
    picture, data = drawn
    chart, at = data.chart, np.arange(len(data.batches)) + 1.0
    assert picture.shares.get_xdata() == pytest.approx(at)
    assert picture.shares.get_ydata() == pytest.approx(100.0 * chart.shares)
    assert tuple(int(one) for one in picture.outside.get_xdata()) == chart.outside
    assert picture.now.get_ydata()[0] == pytest.approx(100.0 * chart.shares[-1])
    assert picture.pooled.get_ydata() == pytest.approx([100.0 * chart.share] * 2)
    levels = [segment[0, 1] for segment in picture.limits.get_segments()]
    assert levels == pytest.approx([*(100.0 * chart.upper), *(100.0 * chart.lower[chart.lower > 0.0])])


def test_the_scale_holds_everything_and_is_one_of_few(drawn):
    picture, data = drawn
    top = picture.axes.get_ylim()[1]
    assert top in dict(TOPS)
    assert 100.0 * max(data.chart.shares.max(), data.chart.upper.max()) <= top


def test_bars_are_as_long_as_their_figures(drawn):
    picture, data = drawn
    for bars, name in zip(picture.causes.bars, ("count", "cost"), strict=True):
        values = np.array([getattr(cause, name) for cause in data.causes])
        long_px = np.array([np.ptp(path.vertices[:, 0]) for path in bars.get_paths()])
        assert long_px / long_px.max() == pytest.approx(values / values.max())


def test_each_cause_has_a_row_with_where_it_belongs_and_who_found_it(drawn):
    picture, data = drawn
    for labels, cause in zip(picture.causes.words, data.causes, strict=True):
        assert [label.get_text() for label in labels] == [
            cause.name,
            str(cause.count),
            f"{cause.cost:.2f}",
            cause.station,
            cause.found_by,
        ]
    assert len(picture.causes.mark.get_xdata()) == sum(cause.chosen for cause in data.causes)


def test_every_batch_says_how_many_lenses_it_has(drawn):
    picture, data = drawn
    shown = [label.get_text() for label in picture.sizes if label.get_visible()]
    assert shown == [str(size) for size in data.chart.sizes]
    assert {"now", data.about, f"ranked by {data.ranked_by}"} <= texts_of(picture)


def test_a_picture_drawn_again_is_the_same_to_the_last_dot(picture):
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(batch="four weeks", ranked_by="money"))
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
