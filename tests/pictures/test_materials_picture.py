"""The picture of one prescription in several materials: sections at one scale, figures, marks."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.materials_panel import MaterialsPanel
from lablib.pictures.materials import ROWS, SCALES_PX_PER_MM, MaterialsPicture
from lablib.pictures.materials_data import MaterialsShown

CASES = {
    "start": {},
    "strong minus": {"sphere_d": -10.0, "front_curve_d": 0.0, "a_mm": 60.0, "b_mm": 46.0},
    "strong plus": {"sphere_d": 8.0, "front_curve_d": 10.0, "a_mm": 60.0, "monocular_pd_mm": 26.0},
    "corner": {"sphere_d": -8.75, "cylinder_d": -3.75, "axis_deg": 137, "in_mm": -12.0, "up_mm": -12.0},
    "weak": {"sphere_d": 0.0, "a_mm": 40.0, "b_mm": 26.0, "material": "episulfide-1.74"},
}
PANEL = MaterialsPanel()


@pytest.fixture(scope="module")
def picture() -> MaterialsPicture:
    return MaterialsPicture()


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[MaterialsPicture, MaterialsShown]:
    shown = PANEL.at(**request.param)
    picture.update(shown)
    return picture, shown


def test_there_is_a_row_for_every_material(drawn):
    picture, shown = drawn
    assert len(shown.lenses) == ROWS
    assert [name.get_text() for name in picture.names] == [lens.material.words for lens in shown.lenses]


def test_sections_are_drawn_true(drawn):
    picture, shown = drawn
    for row, section in enumerate(shown.sections):
        front, back = (line[row].get_ydata() for line in (picture.cuts.front, picture.cuts.back))
        assert front - back == pytest.approx(section.back_mm - section.front_mm)
        assert np.ptp(picture.cuts.front[row].get_xdata()) == pytest.approx(np.ptp(section.along_mm))


def test_every_section_stays_in_its_row(drawn):
    picture, _ = drawn
    window = picture.cuts.window
    assert window.px_per_mm in SCALES_PX_PER_MM
    for row in range(ROWS):
        xy = picture.cuts.glass[row].get_xy()
        px = np.array([window.px(x, y) for x, y in xy])
        assert 532 - 70 * (row + 1) < px[:, 1].min()
        assert px[:, 1].max() < 532 - 70 * row
        assert px[:, 0].min() >= 144
        assert px[:, 0].max() <= 450


def test_the_back_of_the_chosen_lens_lies_in_every_other_row(drawn):
    picture, shown = drawn
    seen = [line.get_visible() for line in picture.cuts.chosen_back]
    assert seen == [row != shown.chosen for row in range(ROWS)]
    deep = shown.sections[shown.chosen].back_mm
    for line, front, section in zip(
        picture.cuts.chosen_back, picture.cuts.front, shown.sections, strict=True
    ):
        assert front.get_ydata() + section.front_mm - line.get_ydata() == pytest.approx(deep)


def test_figures_are_those_of_the_lenses(drawn):
    picture, shown = drawn
    for labels, lens, back in zip(picture.figures, shown.lenses, shown.thrown_back, strict=True):
        assert [label.get_text() for label in labels] == [
            f"{lens.centre_mm:.2f}",
            f"{lens.greatest_edge_mm:.2f}",
            f"{lens.weight_g:.1f}",
            f"{lens.fringe.amount_prism_d:.3f}",
            f"{100 * back:.1f}",
        ]


def test_the_longest_bar_of_a_column_is_the_largest_figure(drawn):
    picture, shown = drawn
    long = [np.ptp(path.vertices[:, 0]) for path in picture.bars.get_paths()]
    weights = [lens.weight_g for lens in shown.lenses]
    bars = np.array(long).reshape(ROWS, -1)[:, 2]
    assert bars == pytest.approx(40.0 * np.array(weights) / max(weights))


def test_noticed_colour_has_a_mark_in_its_row(drawn):
    picture, shown = drawn
    rows = {round((532 - y - 59) / 70) for y in picture.noticed.get_ydata()}
    assert rows == {row for row, lens in enumerate(shown.lenses) if lens.fringe.is_noticed}


def test_the_point_looked_through_lies_where_it_is_said(drawn):
    picture, shown = drawn
    finished = shown.lens.finished
    (x,), (y,) = picture.front.point.get_data()
    assert (x - finished.centre_x_mm, y - finished.centre_y_mm) == (shown.in_mm, shown.up_mm)
    assert f"Looked through {shown.where}" in texts_of(picture)


def test_the_optical_centre_is_named_when_it_is_looked_through(picture):
    picture.update(PANEL.at(up_mm=0.0))
    assert {"Looked through the optical centre", "Prism there: no prism"} <= texts_of(picture)


def test_the_outline_stays_in_its_window(drawn):
    picture, _ = drawn
    axes = picture.front.window.axes
    for limits, data in ((axes.get_xlim(), 0), (axes.get_ylim(), 1)):
        drawn_to = picture.front.outline.get_xydata()[:, data]
        assert limits[0] < drawn_to.min() < drawn_to.max() < limits[1]


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 50


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0
