"""The picture of the lens measure: its pins on the surface and its scale, by what it holds."""

import numpy as np
import pytest
from picture_words import require_apart_and_inside

from lablib.panels.measure_panel import MeasurePanel
from lablib.pictures.measure import SCALE_D, MeasurePicture

CASES = {
    "start": {},
    "leaning": {"lean_deg": 20},
    "steep": {"first_d": 10.0, "second_d": 10.0, "material": "hard-resin-1.50"},
    "hollow and leaning": {
        "first_d": -10.0,
        "second_d": -10.0,
        "material": "hard-resin-1.50",
        "lean_deg": -30,
    },
    "warped": {"second_d": 6.75},
    "across": {"second_d": 6.75, "along_deg": 90},
    "oblique": {"second_d": 8.0, "along_deg": 45},
    "flat": {"first_d": 0.0, "second_d": 0.0},
    "one of each": {"first_d": 10.0, "second_d": -10.0, "along_deg": 1, "lean_deg": 30},
}


@pytest.fixture(scope="module")
def picture() -> MeasurePicture:
    return MeasurePicture()


@pytest.fixture(scope="module")
def panel() -> MeasurePanel:
    return MeasurePanel()


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture, panel):
    """A picture, and what it shows."""
    data = panel.at(**request.param)
    picture.update(data)
    return picture, data


def test_the_pins_stand_on_the_surface(drawn):
    picture, data = drawn
    x, y = picture.cut.surface.get_data()
    outer_x, outer_y = picture.cut.outer.get_data()
    plunger_x, plunger_y = picture.cut.plunger.get_data()

    assert (outer_x[0], outer_x[-1], plunger_x[0]) == (-10.0, 10.0, 0.0)
    for at, height in ((outer_x[0], outer_y[0]), (outer_x[-1], outer_y[-1]), (0.0, plunger_y[0])):
        assert np.interp(at, x, y) == pytest.approx(height, abs=1e-9)
    assert plunger_y[0] - outer_y[0] == pytest.approx(data.pins.sagitta_mm)


def test_the_pins_lie_along_their_meridian(drawn):
    picture, data = drawn
    x, y = picture.above.pins.get_data()

    assert np.hypot(x, y).tolist() == pytest.approx([10.0, 0.0, 10.0])
    turn = np.degrees(np.arctan2(y[2], x[2])) % 180.0
    assert turn == pytest.approx(data.along_deg % 180.0, abs=1e-9) or turn == pytest.approx(180.0)
    assert picture.above.direction.get_text() == f"pins on {data.along_deg:g}"


def test_only_a_toric_surface_has_a_flatter_meridian(drawn):
    picture, data = drawn
    above = picture.above

    assert above.flat.get_visible() == above.flat_words.get_visible() == (data.flat_deg is not None)
    if data.flat_deg is not None:
        assert above.flat_words.get_text() == f"flatter meridian on {data.flat_deg:g}"


def test_seen_along_the_pins_the_tip_touches_the_surface_under_the_plunger(drawn):
    picture, data = drawn
    x, y = picture.end.tip.get_data()
    along, height = picture.end.middle.get_data()

    # The surface between two drawn points is a little off its chord.
    assert np.interp(x[1], along, height) == pytest.approx(y[1], abs=1e-3)
    assert np.hypot(x[1], y[1] - y[0]) == pytest.approx(abs(data.sagitta_mm))
    assert (x[0], y[0]) == (0.0, data.pins.pin_height_mm[0])


def test_the_measure_leans_as_much_as_is_said(drawn):
    picture, data = drawn
    x, y = picture.end.body.get_data()

    assert np.degrees(np.arctan2(x[1] - x[0], y[1] - y[0])) == pytest.approx(data.lean_deg)
    said = f"leans {abs(data.lean_deg):g}°" if data.lean_deg else "square"
    assert picture.end.words.get_text() == said


def test_the_marks_stand_at_reading_and_power_on_opposite_sides_of_the_scale(drawn):
    picture, data = drawn

    assert picture.reading.get_xdata() == pytest.approx([data.reading_d])
    assert picture.power.get_xdata() == pytest.approx([data.power_d])
    assert picture.reading.get_ydata()[0] > 0.0 > picture.power.get_ydata()[0]
    assert abs(data.reading_d) < SCALE_D
    assert picture.dial.get_xlim() == (-SCALE_D, SCALE_D)


def test_each_drawing_is_true_to_scale_and_keeps_its_scale(drawn):
    picture, _ = drawn

    scales = []
    for drawing in (picture.cut, picture.above, picture.end):
        place = drawing.window.axes.transData.transform
        across, up = place((1.0, 1.0)) - place((0.0, 0.0))
        assert across == pytest.approx(up)
        scales.append(drawing.window.px_per_mm)
    assert scales == [8.6, 2.4, 17.0]


def test_everything_of_the_cut_lies_inside_its_window(drawn):
    picture, _ = drawn
    (left, right), (low, high) = picture.cut.window.axes.get_xlim(), picture.cut.window.axes.get_ylim()

    for artist in (picture.cut.surface, picture.cut.outer, picture.cut.plunger):
        x, y = artist.get_data()
        assert left < min(x) <= max(x) < right
        assert low < min(y) <= max(y) < high


def test_no_words_overlap_and_all_stay_inside(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 12


def test_no_sagitta_is_written_without_a_minus(picture, panel):
    picture.update(panel.at(first_d=3.0, second_d=-3.0, along_deg=45))
    assert picture.cut.words.get_text().startswith("sagitta 0.00 mm")
    picture.update(panel.at(first_d=-6.0, second_d=-6.0))
    assert picture.cut.words.get_text().startswith("sagitta -0.51 mm")
