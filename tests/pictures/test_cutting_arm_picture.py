"""The picture of the lever arms: lens, wheel, forces and curves, by what they hold."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.cutting_arm_panel import ArmPanel
from lablib.pictures.cutting_arm import ArmPicture

PANEL = ArmPanel()
STATES = tuple(itertools.product((20.0, 30.0), (12.0, 30.0), range(0, 361, 30), (0.0, 3.0), (60.0, 150.0)))


@pytest.fixture(scope="module")
def picture() -> ArmPicture:
    return ArmPicture()


@pytest.mark.parametrize(("width", "height", "direction", "bite", "wheel"), STATES)
def test_no_words_overlap_and_all_stay_inside(picture, width, height, direction, bite, wheel):
    lens = {"half_width_mm": width, "half_height_mm": height, "direction_deg": direction}
    picture.update(PANEL.at(**lens, bite_mm=bite, wheel_mm=wheel))
    require_apart_and_inside(picture)


def test_the_wheel_touches_the_rim_and_nothing_more_where_there_is_no_bite(picture):
    for direction in range(0, 360, 15):
        picture.update(PANEL.at(direction_deg=direction))
        centre, radius = np.array(picture.wheel.get_center()), picture.wheel.get_radius()
        away = np.hypot(*(picture.lens.get_xy() - centre).T)
        assert away.min() == pytest.approx(radius, abs=0.02)


def test_each_arm_stands_square_on_its_force_and_is_as_long_as_it_is_said_to_be(picture):
    for direction, bite in itertools.product(range(0, 360, 35), (0.0, 1.5, 3.0)):
        data = PANEL.at(direction_deg=direction - direction % 5, bite_mm=bite)
        picture.update(data)
        lengths = (data.arm_tangential_mm, abs(data.arm_normal_mm))
        for arm, arrow, length in zip(picture.arms, picture.arrows, lengths, strict=True):
            (start, end), (tail, tip) = arm.get_xydata(), arrow.get_xydata()[:2]
            assert start == pytest.approx([0.0, 0.0])
            assert np.hypot(*end) == pytest.approx(length, abs=1e-9)
            assert np.dot(end, tip - tail) == pytest.approx(0.0, abs=1e-6)
            # The foot lies on the force's own line.
            off, way = (complex(*part) for part in (end - tail, tip - tail))
            assert (off * way.conjugate()).imag == pytest.approx(0.0, abs=1e-3)


def test_the_curves_pass_through_what_is_drawn_large(picture):
    data = PANEL.at(direction_deg=135, bite_mm=2.0)
    picture.update(data)
    here = (data.distance_mm, data.arm_tangential_mm, data.arm_normal_mm)
    for curve, value in zip(picture.curves, here, strict=True):
        assert np.interp(135.0, *curve.get_data()) == pytest.approx(value, abs=0.01)
    assert picture.here.get_xdata() == [135.0, 135.0]
    assert picture.curves[0].get_xdata()[0] <= 0.0 < 360.0 <= picture.curves[0].get_xdata()[-1]


def test_curves_stay_inside_the_plot_at_every_stop(picture):
    low, high = picture.plot.get_ylim()
    for width, height, bite, wheel in itertools.product(
        (20.0, 30.0), (12.0, 30.0), (0.0, 3.0), (60.0, 150.0)
    ):
        picture.update(PANEL.at(half_width_mm=width, half_height_mm=height, bite_mm=bite, wheel_mm=wheel))
        for curve in picture.curves:
            assert low < curve.get_ydata().min() <= curve.get_ydata().max() < high


def test_lengths_are_written_and_an_arm_of_nothing_is_not(picture):
    picture.update(PANEL.at())
    assert {"22.9", "21.8", "6.9"} <= texts_of(picture)
    picture.update(PANEL.at(direction_deg=90))
    assert [label.get_text() for label in picture.words] == ["18.0", "18.0", ""]


def test_words_are_large_enough_and_moves_leave_the_still_parts_alone(picture):
    assert smallest_px(picture) >= 12.0
    picture.update(PANEL.at())
    first = picture.png()
    picture.update(PANEL.at(direction_deg=200, bite_mm=1.0, wheel_mm=60.0))
    assert not picture.figure.stale
    assert picture.png() != first
    picture.update(PANEL.at())
    assert picture.png() == first
