"""The picture of order, check value and reading, by what it holds."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, texts_of

from lablib.panels.check_values_panel import CheckValuesPanel
from lablib.pictures.check_values import REACHES, CheckValuesPicture

PANEL = CheckValuesPanel()


@pytest.fixture(scope="module")
def picture() -> CheckValuesPicture:
    return CheckValuesPicture()


def test_marks_lie_as_far_from_the_check_value_as_they_are_off(picture):
    data = PANEL.at(wrap_deg=5.0, sphere_off_d=0.2, axis_off_deg=-7.0)
    picture.update(data)

    for drawn, row in zip(picture.rows, data.rows, strict=True):
        reach = REACHES[row.unit]
        assert drawn.reading.get_xdata()[0] * reach == pytest.approx(row.read_off)
        assert drawn.order.get_xdata()[0] * reach == pytest.approx(row.order_off)
        assert drawn.band.get_width() * reach == pytest.approx(2.0 * row.limit)


def test_what_lies_farther_off_stays_at_the_end_of_its_line(picture):
    picture.update(PANEL.at(sphere_d=-8.0, tilt_deg=20.0, wrap_deg=25.0))

    assert picture.rows[0].order.get_xdata()[0] == -1.0


def test_columns_and_verdicts_are_written(picture):
    picture.update(PANEL.at(made="as ordered"))

    assert {"-6.00", "-5.26", "-1.00", "-1.52", "030", "032", "fails", "passes"} <= texts_of(picture)


def test_a_row_that_the_lens_does_not_have_is_empty(picture):
    picture.update(PANEL.at(cylinder_d=0.0, tilt_deg=0.0, wrap_deg=0.0))
    axis = picture.rows[2]

    assert not axis.band.get_visible()
    assert axis.verdict.get_text() == ""
    assert [label.get_text() for label in axis.figures] == ["–"] * 3


def test_an_order_without_axis_has_no_mark(picture):
    picture.update(PANEL.at(cylinder_d=0.0, wrap_deg=0.0))

    assert np.isnan(picture.rows[2].order.get_xdata()[0])
    assert picture.rows[2].reading.get_visible()


@pytest.mark.parametrize(
    ("sphere", "cylinder", "off", "wrap"),
    tuple(itertools.product((-8.0, 0.0, 8.0), (-4.0, 0.0), (-0.3, 0.3), (0.0, 25.0))),
)
def test_no_words_overlap_and_all_stay_inside(picture, sphere, cylinder, off, wrap):
    picture.update(PANEL.at(sphere_d=sphere, cylinder_d=cylinder, sphere_off_d=off, wrap_deg=wrap))
    picture.png()
    require_apart_and_inside(picture)
