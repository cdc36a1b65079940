"""The picture of the optical cross: its lines, its words, its curve, by what they hold."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px

from lablib.panels.cross_panel import CrossPanel
from lablib.pictures.cross import CrossPicture
from lablib.pictures.cross_curve import TOPS_D
from lablib.pictures.cross_data import CrossThere, on
from lablib.pictures.cross_front import RADIUS_PX
from lablib.pictures.window import size_px

# Either form, a sphere, none at all; both stops of each control; meridians close to the cross and on it.
LENSES = {
    "start": {},
    "plus form": {"sphere_d": 0.5, "cylinder_d": 1.5, "axis_deg": 110},
    "strongest minus": {"sphere_d": -10.0, "cylinder_d": -6.0, "axis_deg": 180},
    "strongest plus": {"sphere_d": 10.0, "cylinder_d": 6.0, "axis_deg": 1},
    "mixed": {"sphere_d": 1.0, "cylinder_d": -2.0, "axis_deg": 90},
    "oblique": {"sphere_d": -3.25, "cylinder_d": -0.25, "axis_deg": 45},
    "sphere": {"cylinder_d": 0.0},
    "plano": {"sphere_d": 0.0, "cylinder_d": 0.0},
    "hidden": {"cross": "no"},
}
MERIDIANS = (1, 5, 20, 44, 65, 88, 90, 92, 110, 135, 177, 180)


@pytest.fixture(scope="module")
def panel() -> CrossPanel:
    return CrossPanel()


@pytest.fixture(scope="module")
def picture() -> CrossPicture:
    return CrossPicture()


@pytest.fixture(params=LENSES.values(), ids=LENSES.keys())
def drawn(request, panel, picture) -> tuple[CrossPicture, CrossThere]:
    data = panel.at(**request.param)
    picture.update(data)
    return picture, data


def direction(line) -> float:
    """The direction of a line through the middle, above 0 and up to 180 [degrees]."""
    (x0, y0), (x1, y1) = line.get_xydata()
    assert np.hypot(x0, y0) == pytest.approx(RADIUS_PX)
    assert (x0, y0) == pytest.approx((-x1, -y1))
    return round(float(np.degrees(np.arctan2(y1, x1))), 9) % 180.0 or 180.0


def test_the_lines_lie_on_the_axes_of_both_forms(drawn):
    picture, data = drawn
    front = picture.front

    assert front.minus.get_visible() == front.plus.get_visible() == data.shows_cross
    if data.shows_cross:
        assert direction(front.minus) == data.minus.axis_deg
        assert direction(front.plus) == data.plus.axis_deg
    assert direction(front.turning) == data.meridian_deg


def test_words_say_the_cross_and_both_forms(drawn):
    picture, data = drawn
    front = picture.front

    forms = [picture.minus_form.get_text(), picture.plus_form.get_text()]
    assert forms == (["hidden"] * 2 if data.is_hidden else [str(data.minus), str(data.plus)])
    assert picture.read_off.get_text() == on(data.power_d, data.meridian_deg)
    if data.shows_cross:
        assert front.minus_words.get_text() == on(data.minus.sphere_d, data.minus.axis_deg)
        assert front.plus_words.get_text() == on(data.plus.sphere_d, data.plus.axis_deg)


def test_the_curve_holds_the_power_of_every_meridian_and_the_point_the_one_read(drawn):
    picture, data = drawn
    curve, top = picture.curve, float(picture.curve.powers[-1].get_text())
    meridians, shares = curve.curve.get_data()

    assert top in TOPS_D
    assert np.abs(shares).max() <= 1.0 + 1e-12
    assert [label.get_text() for label in curve.powers][::2] == [f"{-top:+g}", "0", f"{top:+g}"]
    np.testing.assert_array_equal(meridians, np.arange(181.0))
    np.testing.assert_allclose(top * shares, data.minus.power_in_meridian_d(meridians), atol=1e-12)
    (at,), (share,) = curve.point.get_data()
    assert (at, top * share) == (data.meridian_deg, pytest.approx(data.power_d))
    for line, power in (
        (curve.minus, data.minus.sphere_d),
        (curve.plus, data.plus.sphere_d),
        (curve.middle, data.minus.spherical_equivalent_d),
    ):
        assert line.get_visible() == data.shows_cross
        assert top * line.get_ydata()[0] == pytest.approx(power)


def test_on_a_line_of_the_cross_its_words_are_said_once(panel, picture):
    for meridian, said_once in ((20, True), (110, True), (21, False)):
        picture.update(panel.at(meridian_deg=meridian))
        assert picture.front.turning_words.get_visible() != said_once


@pytest.mark.parametrize("meridian", MERIDIANS)
@pytest.mark.parametrize("lens", LENSES.values(), ids=LENSES.keys())
def test_no_words_overlap_and_all_stay_inside(panel, picture, lens: dict, meridian: int):
    picture.update(panel.at(**lens, meridian_deg=meridian))
    assert require_apart_and_inside(picture) > 25


def test_words_slide_round_the_lens_and_just_clear_it(panel, picture):
    places, label = [], picture.front.turning_words
    for meridian in range(1, 181):
        picture.update(panel.at(cross="no", meridian_deg=meridian))
        places.append(complex(*label.get_position()) - complex(*picture.front.window.px(0.0, 0.0)))
        half = np.array(size_px(label)) / 2.0
        nearest = np.maximum(np.abs([places[-1].real, places[-1].imag]) - half, 0.0)
        assert RADIUS_PX + 6.0 < np.hypot(*nearest) < RADIUS_PX + 10.0, meridian

    assert np.abs(np.diff(places)).max() < 10.0


def test_words_of_the_turned_meridian_change_sides_once_at_each_line_of_the_cross(panel, picture):
    far = 0
    last = None
    for meridian in range(1, 181):
        picture.update(panel.at(meridian_deg=meridian))
        here = complex(*picture.front.turning_words.get_position())
        far += last is not None and abs(here - last) > 20.0
        last = here
    assert far <= 2


def test_a_hidden_cross_leaves_the_meridian_and_its_power(panel, picture):
    for meridian in (20, 65):
        picture.update(panel.at(cross="no", meridian_deg=meridian))
        front, curve = picture.front, picture.curve
        kept_back = (front.minus, front.plus, front.minus_words, curve.minus, curve.plus, curve.middle)
        assert not any(artist.get_visible() for artist in (*kept_back, curve.curve))
        assert front.turning_words.get_visible()
        assert curve.point.get_visible()


def test_turning_the_meridian_or_the_axis_leaves_the_scale_alone(panel, picture):
    seen = set()
    for meridian, axis in itertools.product((1, 60, 90, 180), (1, 45, 180)):
        picture.update(panel.at(meridian_deg=meridian, axis_deg=axis))
        seen.add(tuple(label.get_text() for label in picture.curve.powers))

    assert seen == {("-2", "-1", "0", "+1", "+2")}


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_an_axis_of_nothing_is_written_180():
    assert on(2.0, 180.0) == "+2.00 on 180"
    assert on(0.0, 0.4) == "0.00 on 180"
