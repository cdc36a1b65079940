"""The picture of a multifocal pair: segments and marks in their places, distances as long as they say."""

import itertools
import re

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.optics.eye import Eye
from lablib.panels.multifocal_panel import MultifocalPanel
from lablib.pictures.multifocal import MultifocalPicture, verdict
from lablib.pictures.multifocal_data import PairLaidOut
from lablib.pictures.multifocal_distances import distances
from lablib.pictures.palette import BLANK, TOO_SMALL

SEGMENTS = {
    "start": {},
    "uneven": {"design": "round 24", "right_height_mm": 16.0, "left_height_mm": 19.0, "left_near_mm": 29.0},
    "curved": {"design": "curved top 28", "blank": "blank 75"},
    "blank": {
        "a_mm": 58.0,
        "b_mm": 44.0,
        "right_height_mm": 20.0,
        "left_height_mm": 20.0,
        "blank": "blank 70",
    },
    "outwards": {
        "design": "flat top 35",
        "a_mm": 40.0,
        "dbl_mm": 14.0,
        "b_mm": 30.0,
        "right_height_mm": 15.0,
    },
}
PROGRESSIVES = {
    "general": {"design": "progressive, general", "right_height_mm": 22.0, "left_height_mm": 21.0},
    "short": {
        "design": "progressive, short",
        "b_mm": 28.0,
        "right_height_mm": 15.0,
        "left_height_mm": 15.0,
        "right_far_mm": 30.5,
        "right_near_mm": 28.0,
    },
    "low": {"design": "progressive, general", "b_mm": 28.0, "right_height_mm": 14.0, "left_height_mm": 15.0},
}
FINISHED = {"design": "progressive, general", "marks": "engravings alone", "left_height_mm": 20.0}
CASES = SEGMENTS | PROGRESSIVES | {"finished": FINISHED}
PANEL = MultifocalPanel()


@pytest.fixture(scope="module")
def picture() -> MultifocalPicture:
    return MultifocalPicture()


def draw(picture: MultifocalPicture, case: dict) -> PairLaidOut:
    """Draw a case and return what was drawn."""
    shown = PANEL.at(**case)
    picture.update(shown)
    return shown


def points(line) -> np.ndarray:
    """The points of a line, x + iy [mm]."""
    return line.get_xydata() @ np.array([1.0, 1j])


@pytest.mark.parametrize("case", SEGMENTS.values(), ids=SEGMENTS.keys())
def test_segments_lie_where_they_were_laid_out(picture, case: dict):
    shown = draw(picture, case)
    for eye, lens in picture.lenses.items():
        layout, (boxed,) = shown.layout(eye), points(lens.boxed_centre)
        assert np.sign(boxed.real) == -eye.nasal_sign, "the right lens is at the left"
        assert points(lens.centre)[0].real == pytest.approx(-eye.nasal_sign * layout.far_pd_mm)
        assert points(lens.segment_centre)[0].real == pytest.approx(-eye.nasal_sign * layout.near_pd_mm)
        whole, left = points(lens.lost), lens.segment.get_xy()
        assert whole.imag.max() == pytest.approx(layout.segment_height_mm - shown.frame.b_mm / 2.0)
        assert left[:, 1].max() <= whole.imag.max() + 1e-9
        assert left[:, 1].min() >= lens.glass.get_xy()[:, 1].min() - 1e-9
        for gone in (lens.engravings, lens.cross, lens.prism_point, lens.circles):
            assert not points(gone).size


@pytest.mark.parametrize("case", PROGRESSIVES.values(), ids=PROGRESSIVES.keys())
def test_marks_of_a_progressive_lie_as_the_chart_says(picture, case: dict):
    shown = draw(picture, case)
    for eye, lens in picture.lenses.items():
        layout, (cross,) = shown.layout(eye), points(lens.cross)
        assert cross.real == pytest.approx(-eye.nasal_sign * layout.monocular_pd_mm)
        assert cross.imag == pytest.approx(layout.height_mm - shown.frame.b_mm / 2.0)
        first, second = points(lens.engravings)
        assert abs(first - second) == pytest.approx(34.0)
        middle = (first + second) / 2.0
        assert middle - cross == pytest.approx(-1j * layout.design.engraving_below_cross_mm)
        assert points(lens.prism_point)[0] == pytest.approx(middle)
        circles = points(lens.circles)
        assert np.nanmax(circles.imag) > cross.imag > np.nanmin(circles.imag)
        assert not lens.segment.get_visible()


def test_of_a_finished_progressive_only_the_engravings_are_seen(picture):
    draw(picture, FINISHED)
    for lens in picture.lenses.values():
        assert points(lens.engravings).size == 2
        for wiped in (lens.cross, lens.prism_point, lens.circles):
            assert not points(wiped).size
    assert "height" not in " ".join(texts_of(picture))


@pytest.mark.parametrize("case", CASES.values(), ids=CASES.keys())
def test_distances_are_as_long_as_they_say(picture, case: dict):
    shown = draw(picture, case)
    found = distances(shown)
    assert len(found) <= len(picture.words)
    for one in found:
        number = re.findall(r"\d+\.\d", one.words)[-1]
        assert float(number) == pytest.approx(abs(one.end - one.start), abs=0.051), one.words
        assert one.start.real == one.end.real or one.start.imag == one.end.imag
    assert {one.words for one in found} <= texts_of(picture)


def test_every_distance_of_a_segment_is_there(picture):
    draw(picture, {"left_height_mm": 20.0})
    wanted = {"A 54.0", "B 38.0", "DBL 18.0", "(A + DBL) / 2 = 36.0", "far 32.0", "near 30.0", "inset 2.0"}
    assert wanted | {
        "total inset 6.0 in",
        "height 18.0",
        "height 20.0",
        "1.0 below",
        "1.0 above",
    } <= texts_of(picture)


def test_a_blank_is_drawn_about_its_own_centre_and_looks_otherwise_when_it_fails(picture):
    for case, look in (("blank", TOO_SMALL), ("curved", BLANK)):
        shown = draw(picture, SEGMENTS[case])
        for eye, lens in picture.lenses.items():
            away = np.abs(points(lens.blank) - points(lens.blank_centre)[0])
            np.testing.assert_allclose(2.0 * away, shown.cut_out(eye).blank.diameter_mm)
            assert lens.blank.get_color() == look.colour
    draw(picture, {})
    assert not points(picture.lenses[Eye.RIGHT].blank).size


def test_what_is_left_is_said_below():
    assert verdict(PANEL.at(), Eye.RIGHT) == "18.0 of 19 mm depth inside"
    assert verdict(PANEL.at(**SEGMENTS["blank"]), Eye.LEFT) == "blank 70 lacks 1.0 mm"
    assert verdict(PANEL.at(**SEGMENTS["curved"]), Eye.LEFT) == "blank 75 covers"
    assert verdict(PANEL.at(**PROGRESSIVES["low"]), Eye.RIGHT) == "cross 4.0 mm under the least height"
    assert verdict(PANEL.at(**PROGRESSIVES["general"]), Eye.LEFT) == "100 % of the near circle inside"
    assert verdict(PANEL.at(**FINISHED), Eye.LEFT) == "where does the cross go?"


@pytest.mark.parametrize("design", MultifocalPanel.ranges["design"].options)
def test_no_words_overlap_in_frames_of_any_size(picture, design: str):
    ends = itertools.product(
        (46.0, 54.0, 62.0), (30.0, 50.0), (14.0, 24.0), ((29.0, 34.0), (36.0, 31.0)), (-4.0, 0.0, 4.0)
    )
    for a, b, dbl, (right, left), up in ends:
        case = {"design": design, "a_mm": a, "b_mm": b, "dbl_mm": dbl}
        eyes = {"right_far_mm": right, "left_far_mm": left, "right_near_mm": right - 2.5}
        heights = {"right_height_mm": b / 2.0 + up, "left_height_mm": b / 2.0 - 1.0}
        draw(picture, case | eyes | {"left_near_mm": left - 1.5} | heights)
        assert require_apart_and_inside(picture, case | eyes | heights) > 25


def test_the_scale_is_the_same_for_every_frame_and_words_can_be_read(picture):
    seen = set()
    for case in CASES.values():
        draw(picture, case)
        seen.add(picture.window.px_per_mm)
    assert len(seen) == 1
    assert smallest_px(picture) >= 12.0
