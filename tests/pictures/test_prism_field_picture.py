"""The picture of a lens's prism: arrows to the base, the point, the parts in the ring."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px

from lablib.panels.prism_field_panel import PrismFieldPanel
from lablib.pictures.prism_field import RADIUS_MM, SCALES_PRISM_D_PER_MM, PrismFieldPicture
from lablib.pictures.prism_field_arrows import arrows, scale_words
from lablib.pictures.prism_field_compass import TOPS_PRISM_D
from lablib.pictures.prism_field_data import PrismThere
from lablib.pictures.window import size_px

CASES = {
    "start": {},
    "toric": {"sphere_d": -4.0, "cylinder_d": -2.0, "axis_deg": 30, "up_mm": -10.0},
    "left": {"eye": "left", "sphere_d": 10.0, "in_mm": 12.0, "up_mm": 12.0},
    "strongest": {"sphere_d": -10.0, "cylinder_d": -4.0, "axis_deg": 120, "in_mm": -12.0, "up_mm": 12.0},
    "weak": {"sphere_d": 0.25, "in_mm": -3.0, "up_mm": 2.0},
    "sideways": {"sphere_d": 2.0, "in_mm": 6.0, "up_mm": 0.0},
    "oblique": {"sphere_d": 2.0, "in_mm": 6.0, "up_mm": -4.0},
    "centre": {"up_mm": 0.0},
    "plano": {"sphere_d": 0.0},
}


@pytest.fixture(scope="module")
def picture() -> PrismFieldPicture:
    return PrismFieldPicture()


def data(**start: object) -> PrismThere:
    """Return what the panel hands to the picture."""
    panel = PrismFieldPanel(**start)
    return panel.compute(panel.values)


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[PrismFieldPicture, PrismThere]:
    shown = data(**request.param)
    picture.update(shown)
    return picture, shown


def ends(line) -> tuple[np.ndarray, np.ndarray]:
    """Start and point of every arrow of a line, x + iy."""
    points = line.get_xydata() @ np.array([1.0, 1j])
    return points[::7], points[1::7]


def test_arrows_break_off_between_each_other_and_have_a_head():
    line = arrows(np.array([0j, 10 + 0j]), np.array([4 + 0j, 2j]), head=1.0) @ np.array([1.0, 1j])

    assert line.shape == (14,)
    np.testing.assert_allclose(line[[0, 1, 4, 7, 8]], [0, 4, 4, 10, 10 + 2j])
    assert np.isnan(line[[2, 6, 9, 13]]).all()
    np.testing.assert_allclose(line[[3, 5]], [3.13 + 0.5j, 3.13 - 0.5j])
    # The head of a short arrow stays short, and an arrow of nothing is a point.
    assert abs(line[10] - line[8]) == pytest.approx(0.9 * abs(complex(0.87, 0.5)))
    assert np.nanmax(np.abs(arrows(0j, 0j, head=1.0))) == 0.0


def test_every_arrow_shows_the_prism_of_its_point(drawn):
    picture, shown = drawn
    start, point = ends(picture.elsewhere)
    scale = float(picture.length.get_text().split()[4]) / 10.0

    assert scale in SCALES_PRISM_D_PER_MM
    # Points of a grid of 6 mm inside 19 mm, counted by hand.
    assert len(start) == 37
    field = shown.field
    for at, tip in zip(start, point, strict=True):
        (row,), (column,) = np.nonzero(np.abs(field.x_mm + 1j * field.y_mm - at) < 1e-9)
        base = complex(field.base_x_prism_d[row, column], field.base_y_prism_d[row, column])
        assert scale * (tip - at) == pytest.approx(base, abs=1e-9)
    assert np.abs(point).max() <= RADIUS_MM


def test_bases_point_to_the_centre_of_a_plus_lens_and_away_from_that_of_a_minus_lens(picture):
    for power in (3.0, -3.0):
        picture.update(data(sphere_d=power))
        start, point = ends(picture.elsewhere)
        off = np.abs(start) > 0.0
        assert np.all((np.abs(point[off]) < np.abs(start[off])) == (power > 0.0))


def test_the_point_stands_on_the_side_of_the_nose(picture):
    for eye, side in (("right", 1.0), ("left", -1.0)):
        picture.update(data(eye=eye, in_mm=5.0, up_mm=-2.0))
        assert picture.eye.get_xydata().tolist() == [[side * 5.0, -2.0]]
        assert [label.get_text() for label in picture.sides][0 if side < 0 else 1] == "nasal"
        assert [label.get_text() for label in picture.compass.sides][0 if side > 0 else 1] == "in"


def test_the_ring_shows_both_parts_and_the_whole(drawn):
    picture, shown = drawn
    compass = picture.compass
    inwards = shown.eye.nasal_sign * shown.in_prism_d
    for line, end in (
        (compass.across, complex(inwards, 0.0)),
        (compass.upright, complex(0.0, shown.up_prism_d)),
        (compass.whole, complex(inwards, shown.up_prism_d)),
    ):
        (start,), (point,) = ends(line)
        assert (start, point) == (0j, pytest.approx(end, abs=1e-9))
    assert compass.base_words.get_text() == shown.notations.full_circle


def test_words_stand_only_beside_parts_that_are_there(drawn):
    picture, shown = drawn
    compass = picture.compass
    across, upright = abs(shown.in_prism_d) >= 0.005, abs(shown.up_prism_d) >= 0.005

    assert compass.across_words.get_visible() == across
    assert compass.upright_words.get_visible() == upright
    assert compass.whole_words.get_visible() == (across and upright)


def test_no_arrow_leaves_the_ring(drawn):
    picture, shown = drawn
    top = float(picture.compass.top.get_text().split(": ")[1].split()[0])

    assert top in TOPS_PRISM_D
    assert abs(shown.base) <= shown.reach_prism_d + 1e-9 <= top + 2e-9


def test_the_scale_is_steady_while_the_eye_moves(picture):
    seen = set()
    for up_mm, in_mm in itertools.product((-12.0, -3.0, 0.0, 7.5, 12.0), (-12.0, 0.0, 12.0)):
        picture.update(data(sphere_d=-5.0, up_mm=up_mm, in_mm=in_mm))
        seen.add((picture.length.get_text(), picture.compass.top.get_text()))

    assert len(seen) == 1


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 25


@pytest.mark.parametrize("scale", SCALES_PRISM_D_PER_MM)
def test_the_bar_stands_clear_of_the_words_beside_it(picture, scale: float):
    picture.length.set_text(scale_words(scale))
    (start, at), (end, _) = picture.bar.line.get_xydata()
    words_end = picture.length.get_position()[0] + size_px(picture.length)[0]

    assert end - start == pytest.approx(10.0)
    assert words_end + 8.0 < picture.window.px(start, at)[0]


@pytest.mark.parametrize(
    ("scale", "words"),
    [(0.1, "arrows: 10 mm for 1 prism dioptre"), (0.75, "arrows: 10 mm for 7.5 prism dioptres")],
)
def test_a_scale_is_said_in_plain_words(scale: float, words: str):
    assert scale_words(scale) == words


def test_the_optical_centre_is_not_hidden_by_the_axis(picture):
    picture.update(data(cylinder_d=-2.0, axis_deg=180))
    drawn_later = [artist for artist in picture._moving if artist.get_zorder() > picture.axis.get_zorder()]

    assert picture.centre in drawn_later


@pytest.mark.parametrize("in_mm", [-12.0, 12.0])
@pytest.mark.parametrize("up_mm", [-8.0, 8.0])
def test_words_of_the_part_across_never_stand_on_the_side_of_the_whole(picture, in_mm, up_mm):
    shown = data(in_mm=in_mm, up_mm=up_mm)
    picture.update(shown)
    compass = picture.compass
    _, level = compass.window.px(0.0, 0.0)

    assert (compass.across_words.get_position()[1] - level) * shown.base.imag <= 0.0


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0


def test_the_axis_is_drawn_where_there_is_one(picture):
    picture.update(data(cylinder_d=-1.0, axis_deg=30))
    x, y = picture.axis.get_data()
    assert picture.axis.get_visible()
    assert np.degrees(np.arctan2(y[1], x[1])) == pytest.approx(30.0)
    picture.update(data())
    assert not picture.axis.get_visible()
