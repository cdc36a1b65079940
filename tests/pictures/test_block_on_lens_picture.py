"""The picture of a block on a lens: where it stands, how it lies, where block and tip bear."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.block_on_lens_panel import RIGID, BlockOnLensPanel
from lablib.pictures.block_on_lens import BlockOnLensPicture, gap_words
from lablib.pictures.block_on_lens_data import BlockOnLens
from lablib.pictures.block_on_lens_maps import picked_places
from lablib.pictures.window import size_px

PANEL = BlockOnLensPanel()
CASES = {
    "start": {},
    "matched": {"block_curve_d": 2.0},
    "steepest": {"block_curve_d": 12.0, "front_curve_d": 0.0},
    "flat": {"block_curve_d": 0.0, "front_curve_d": 8.0},
    "shallow": {"b_mm": 20.0},
    "half-eye": {"b_mm": 22.0, "block": "half-eye"},
    "decentred": {"in_mm": 8.0, "up_mm": 3.0, "blocking_point": "optical centre"},
    "large": {"a_mm": 62.0, "b_mm": 50.0, "outline": "rectangle"},
    "spot": {"tip_face_mm": 45.0, "tip_stiffness": "stiff", "block_curve_d": 2.0},
    "aslant": {"tip_mount": RIGID, "tip_stiffness": "stiff", "in_mm": 8.0},
    "thick": {"thickness_mm": 5.0, "sphere_d": 0.0},
}


@pytest.fixture(scope="module")
def picture() -> BlockOnLensPicture:
    return BlockOnLensPicture()


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[BlockOnLensPicture, BlockOnLens]:
    data = PANEL.at(**request.param)
    picture.update(data)
    return picture, data


def xy(patch) -> np.ndarray:
    """The corners of an area, x + iy [mm]."""
    return patch.get_xy() @ np.array([1.0, 1j])


def band(patch, places: int) -> tuple[np.ndarray, np.ndarray]:
    """Upper and lower border of a band, from left to right [mm]."""
    heights = patch.get_xy()[: 2 * places, 1]
    return heights[:places], heights[places:][::-1]


def test_the_block_is_centred_on_the_chuck_axis(drawn):
    picture, data = drawn
    front, contact = picture.front, data.sheet.cut.holding.contact
    (chuck,) = front.chuck.get_xydata() @ np.array([1.0, 1j])
    away = xy(front.block) - chuck
    assert np.abs(away.real).max() == pytest.approx(contact.half_width_mm, abs=0.02)
    assert np.abs(away.imag).max() == pytest.approx(contact.half_height_mm, abs=0.02)
    boxed = data.sheet.ticket.blocking.blocking_point == "boxed centre"
    at = 0j if boxed else complex(data.sheet.centre_x_mm, data.sheet.up_mm)
    assert chuck == pytest.approx(at)


def test_the_box_just_holds_the_outline_whatever_the_blocking_point(drawn):
    picture, data = drawn
    rim, frame = xy(picture.front.glass), data.sheet.frame
    assert np.ptp(rim.real) == pytest.approx(frame.a_mm, abs=0.1)
    assert np.ptp(rim.imag) == pytest.approx(frame.b_mm, abs=0.1)
    assert (rim.real.max() + rim.real.min()) / 2.0 == pytest.approx(0.0, abs=0.1)


def test_the_room_is_as_long_as_it_says(drawn):
    picture, data = drawn
    start, end = picture.front.room.get_xydata() @ np.array([1.0, 1j])
    room = data.sheet.cut.block_clearance_mm
    assert abs(end - start) == pytest.approx(abs(room))
    words = f"{room:.1f} mm of room" if room > 0.0 else f"stands out {-room:.1f} mm"
    assert words in texts_of(picture)
    out = picture.front.out.get_xydata()
    assert bool(np.isfinite(out).any()) is (room < 0.0)


def test_the_words_of_the_room_stand_clear_of_the_drawing(drawn):
    picture, _ = drawn
    window, words = picture.front.window, picture.front.room_words
    top = max(
        window.px(0.0, part.get_xy()[:, 1].max())[1] for part in (picture.front.glass, picture.front.block)
    )
    assert words.get_position()[1] - size_px(words)[1] / 2.0 > top


def test_air_is_drawn_where_a_face_has_lifted_off(drawn):
    picture, data = drawn
    side, view = picture.side, data.view
    for air, off, half in (
        (side.block_air, view.block_off_mm, view.block_half_mm),
        (side.tip_air, view.tip_off_mm, view.tip_half_mm),
    ):
        open_mm = np.maximum(off[np.abs(view.along_mm) <= half], 0.0)
        assert air.get_visible() is bool(open_mm.max() > 0.0)
        upper, lower = band(air, open_mm.size)
        np.testing.assert_allclose(upper - lower, open_mm, atol=1e-12)


def test_the_pad_fills_what_is_between_block_and_air(drawn):
    picture, data = drawn
    view = data.view
    places = int(np.sum(np.abs(view.along_mm) <= view.block_half_mm))
    upper, lower = band(picture.side.pad, places)
    assert (upper - lower).max() <= view.pad_mm + 1e-9
    assert (upper - lower).min() > 0.0
    np.testing.assert_allclose(band(picture.side.block, places)[1], upper)


def test_maps_show_every_place_once_and_say_what_bears(drawn):
    picture, data = drawn
    for bearing, face, name in ((picture.pad_map, data.block, "pad"), (picture.tip_map, data.tip, "tip")):
        lifted, bears, hard = (mark.get_xydata() for mark in bearing.marks)
        shown = face.pressure_mpa[picked_places(face.pressure_mpa.size)]
        assert len(lifted) == np.sum(shown <= 0.0)
        assert len(hard) == np.sum(shown >= 2.0 * face.mean_mpa)
        assert len(lifted) + len(bears) + len(hard) == shown.size
        assert f"{name}: bears on {100.0 * face.contact_share:.0f} %" in texts_of(picture)


def test_the_places_that_are_drawn_lie_evenly(picture):
    data = PANEL.at().block
    x, y = (part[picked_places(data.pressure_mpa.size)] for part in (data.face.x_mm, data.face.y_mm))
    quarters = [np.sum((x > 0) == right) for right in (True, False)] + [np.sum(y > 0), np.sum(y < 0)]
    assert max(quarters) - min(quarters) < 0.05 * x.size
    apart = np.hypot(x[:, None] - x, y[:, None] - y) + 99.0 * np.eye(x.size)
    assert apart.min(axis=1).max() < 2.0, "no place stands alone"
    # At the corners of equal triangles, as far apart as can be, each has 1.07 times the root of its area.
    most = 1.07 * (data.face.shape.area_mm2 / x.size) ** 0.5
    assert apart.min() > 0.6 * most, "none crowds another"


def test_a_steep_block_bears_on_its_rim_and_a_flat_one_in_the_middle(picture):
    away = {}
    for name in ("steepest", "flat"):
        picture.update(PANEL.at(**CASES[name]))
        lifted, _, hard = (np.hypot(*mark.get_data()) for mark in picture.pad_map.marks)
        away[name] = lifted.mean() - hard.mean()
    assert away["steepest"] < -3.0
    assert away["flat"] > 3.0


def test_the_gap_is_put_in_words():
    assert gap_words(PANEL.at()) == "block 6.00, front 2.00 D: 0.55 mm open in the middle"
    assert gap_words(PANEL.at(block_curve_d=0.0)) == "block 0.00, front 2.00 D: 0.27 mm open at the rim"
    assert gap_words(PANEL.at(block_curve_d=2.0)) == "block 2.00, front 2.00 D: no gap"


def test_block_lens_and_tip_stay_inside_their_drawing(drawn):
    picture, _ = drawn
    low, high = picture.side.window.axes.get_ylim()
    for part in (picture.side.block, picture.side.pad, picture.side.tip):
        assert low <= part.get_xy()[:, 1].min()
        assert part.get_xy()[:, 1].max() <= high


def test_the_scales_are_the_same_for_every_lens(picture):
    seen = set()
    for case in CASES.values():
        picture.update(PANEL.at(**case))
        seen.add((picture.front.window.px_per_mm, picture.side.window.px_per_mm))
    assert len(seen) == 1


def test_the_outline_stays_inside_its_window(drawn):
    picture, _ = drawn
    (left, right), (low, high) = (
        getattr(picture.front.window.axes, name)() for name in ("get_xlim", "get_ylim")
    )
    rim = xy(picture.front.glass)
    assert left < rim.real.min() <= rim.real.max() < right
    assert low < rim.imag.min() <= rim.imag.max() < high


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 18


def test_no_words_overlap_in_frames_of_any_size(picture):
    ends = itertools.product(
        (40.0, 62.0), (20.0, 50.0), ("round", "half-eye"), ("boxed centre", "optical centre")
    )
    for a, b, block, point in ends:
        case = {"a_mm": a, "b_mm": b, "block": block, "blocking_point": point, "in_mm": 4.0}
        picture.update(PANEL.at(**case))
        require_apart_and_inside(picture, case)


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0
