"""The picture of a lens at two distances: its rays, its focus, its measures, by what it holds."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside

from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.ray_bundle import ray_bundle
from lablib.pictures.vergence import HALF_WIDTH_MM, SCALES_PX_PER_MM, LensAway, VergencePicture, VertexMove

# From the strongest to the weakest of either sign, from a lens on the cornea to one far off, and none.
POWERS = (-20.0, -10.0, -4.0, -3.0, -0.5, 0.0, 0.25, 4.0, 10.0, 20.0)
PLACES = ((12.0, 12.0), (12.0, 0.0), (20.0, 0.0), (8.0, 20.0))
CASES = tuple(itertools.product(POWERS, PLACES))


def away(power: float, at: float) -> LensAway:
    rays = ray_bundle(power, half_width_mm=HALF_WIDTH_MM, before_mm=1200.0, behind_mm=1200.0)
    return LensAway(power_d=power, away_mm=at, rays=rays)


def move(power: float, tested: float, worn: float) -> VertexMove:
    there = at_vertex_distance(Prescription(sphere_d=power), from_mm=tested, to_mm=worn).sphere_d
    return VertexMove(tested=away(power, tested), worn=away(there, worn))


@pytest.fixture(scope="module")
def picture() -> VergencePicture:
    return VergencePicture()


def segments(collection) -> list[np.ndarray]:
    return [np.asarray(one) for one in collection.get_segments()]


def test_both_halves_lead_to_one_focus(picture):
    picture.update(move(-10.0, 12.0, 0.0))

    assert picture.focus.get_xdata() == pytest.approx([-112.0])
    for half in picture.halves:
        for line in segments(half.back):
            np.testing.assert_allclose(line[1], (-112.0, 0.0), atol=1e-9)


def test_a_plus_lens_brings_the_light_itself_to_the_focus(picture):
    picture.update(move(10.0, 12.0, 0.0))

    assert picture.focus.get_xdata() == pytest.approx([88.0])
    for half, start in zip(picture.halves, (-12.0, 0.0), strict=True):
        assert segments(half.back) == []
        leaving = segments(half.rays)[3:]
        assert len(leaving) == 3
        for line in leaving:
            assert line[0][0] == start
            np.testing.assert_allclose(line[1], (88.0, 0.0), atol=1e-9)


@pytest.mark.parametrize("power", POWERS)
def test_each_half_keeps_to_its_side_of_the_axis(picture, power: float):
    picture.update(move(power, 12.0, 0.0))

    for half in picture.halves:
        for line in segments(half.rays) + segments(half.back):
            assert (half.side * line[:, 1] >= -1e-9).all()


@pytest.mark.parametrize(("power", "outwards"), [(4.0, True), (-4.0, False)])
def test_the_arrows_of_a_lens_point_outwards_on_plus_and_inwards_on_minus(picture, power, outwards):
    picture.update(move(power, 12.0, 5.0))

    for half, at in zip(picture.halves, (-12.0, -5.0), strict=True):
        x, y = half.lens.get_data()
        assert x[0] == at
        assert (abs(y[-2]) > abs(y[-1])) == outwards


def test_a_plano_lens_has_a_bar_for_a_head(picture):
    picture.update(move(0.0, 12.0, 5.0))

    for half in picture.halves:
        _, y = half.lens.get_data()
        assert len(set(y[-3:])) == 1


@pytest.mark.parametrize(("power", "places"), CASES)
def test_the_line_of_the_cornea_leaves_the_lower_focal_length_free(picture, power, places):
    picture.update(move(power, *places))
    picture.png()
    box = picture.halves[1].words.get_window_extent()
    to_pixels = picture.axes.transData.transform
    line = next(one for one in picture.axes.lines if len(one.get_xdata()) == 5 and not any(one.get_xdata()))
    below, above = (to_pixels((0.0, line.get_ydata()[at]))[1] for at in (1, 3))
    assert below <= box.y0 < box.y1 <= above


@pytest.mark.parametrize("power", [-10.0, 10.0])
def test_the_measure_runs_from_lens_to_focus_and_says_the_length(picture, power: float):
    data = move(power, 12.0, 0.0)
    picture.update(data)

    for half, one in zip(picture.halves, (data.tested, data.worn), strict=True):
        assert half.measure.get_visible()
        assert half.measure.get_xdata()[:2] == pytest.approx([-one.away_mm, one.focus_mm])
        assert half.words.get_text() == f"f = {one.rays.focus_z_mm / 10:+.1f} cm"


def test_a_focus_beyond_the_picture_has_no_stop_at_its_end(picture):
    picture.update(move(0.25, 12.0, 12.0))

    for half in picture.halves:
        assert len(half.measure.get_xdata()) == 5
        assert half.measure.get_xdata()[1] == pytest.approx(picture.axes.get_xlim()[1])
        assert half.words.get_text() == "f = +400.0 cm"


def test_a_plano_lens_has_parallel_light_and_no_focus(picture):
    picture.update(move(0.0, 12.0, 5.0))

    assert np.isnan(picture.focus.get_xdata()).all()
    for half in picture.halves:
        assert not half.measure.get_visible()
        assert half.words.get_text() == "parallel: no focus"


def test_moving_the_worn_lens_leaves_the_scale_alone(picture):
    for power in POWERS:
        scales = set()
        for worn in (0.0, 5.0, 12.0, 20.0):
            picture.update(move(power, 12.0, worn))
            scales.add(picture.scale)
        assert len(scales) == 1, power
        assert scales <= set(SCALES_PX_PER_MM)


@pytest.mark.parametrize(("power", "places"), CASES)
def test_no_words_overlap_and_all_stay_inside(picture, power: float, places: tuple[float, float]):
    picture.update(move(power, *places))
    assert require_apart_and_inside(picture) == 9


@pytest.mark.parametrize(("worn", "said"), [(12.0, "12 mm from the cornea"), (0.0, "on the cornea")])
def test_headings_say_power_and_place(picture, worn: float, said: str):
    picture.update(move(-10.0, 12.0, worn))

    assert picture.halves[0].heading.get_text() == "As tested: -10.00 D, 12 mm from the cornea"
    assert picture.halves[1].heading.get_text().endswith(f" D, {said}")
