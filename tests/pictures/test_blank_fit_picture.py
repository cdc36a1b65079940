"""The picture of blanks on a frame as worn: rims, blanks, distances, and what is left uncovered."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.optics.eye import Eye
from lablib.panels.blank_fit_panel import BlankFitPanel
from lablib.pictures.blank_fit import BlankFitPicture, verdict
from lablib.pictures.blank_fit_data import PairOfBlanks
from lablib.pictures.blank_fit_distances import distances
from lablib.pictures.palette import BLANK, TOO_SMALL
from lablib.pictures.window import size_px

CASES = {
    "start": {},
    "fits": {
        "a_mm": 50.0,
        "b_mm": 34.0,
        "dbl_mm": 18.0,
        "right_pd_mm": 30.0,
        "left_pd_mm": 33.0,
        "right_height_mm": 17.0,
        "left_height_mm": 17.0,
        "blank_mm": 65.0,
        "outline": "superellipse 2.6",
    },
    "largest": {
        "a_mm": 62.0,
        "b_mm": 50.0,
        "dbl_mm": 24.0,
        "right_pd_mm": 26.0,
        "left_pd_mm": 38.0,
        "right_height_mm": 8.0,
        "left_height_mm": 40.0,
        "blank_mm": 85.0,
        "outline": "rectangle",
    },
    "smallest": {
        "a_mm": 40.0,
        "b_mm": 24.0,
        "dbl_mm": 14.0,
        "right_pd_mm": 38.0,
        "left_pd_mm": 26.0,
        "right_height_mm": 24.0,
        "left_height_mm": 8.0,
        "blank_mm": 55.0,
        "outline": "round",
    },
    "raised": {
        "outline": "pilot",
        "right_height_mm": 27.0,
        "left_height_mm": 25.0,
        "right_pd_mm": 31.0,
        "left_pd_mm": 33.0,
        "blank_mm": 72.0,
    },
    "centred": {
        "a_mm": 46.0,
        "b_mm": 40.0,
        "dbl_mm": 20.0,
        "right_pd_mm": 33.0,
        "left_pd_mm": 33.0,
        "right_height_mm": 20.0,
        "left_height_mm": 20.0,
        "outline": "panto",
        "blank_mm": 55.0,
    },
}


PANEL = BlankFitPanel()


@pytest.fixture(scope="module")
def picture() -> BlankFitPicture:
    return BlankFitPicture()


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[BlankFitPicture, PairOfBlanks]:
    shown = data(**request.param)
    picture.update(shown)
    return picture, shown


def data(**start: object) -> PairOfBlanks:
    """Return what the panel hands to the picture."""
    return PANEL.at(**start)


def points(line) -> np.ndarray:
    """The points of a line, x + iy [mm]."""
    return line.get_xydata() @ np.array([1.0, 1j])


def test_the_right_lens_is_on_the_left_and_pupils_stand_where_they_were_measured(drawn):
    picture, shown = drawn
    for eye in Eye:
        lens, low = picture.lenses[eye], -shown.frame.b_mm / 2.0
        (pupil,), (centre,), (boxed,) = (
            points(line) for line in (lens.pupil, lens.centre, lens.boxed_centre)
        )
        assert pupil.real == pytest.approx(-eye.nasal_sign * shown.pd_mm(eye))
        assert pupil.imag == pytest.approx(low + shown.height_mm(eye))
        assert centre == pupil, "the optical centre stands before the pupil"
        assert boxed == -eye.nasal_sign * shown.frame.bridge_to_boxed_centre_mm


def test_each_box_just_holds_its_outline(drawn):
    picture, _ = drawn
    for lens in picture.lenses.values():
        rim, box = lens.glass.get_xy(), lens.box.get_xydata()
        np.testing.assert_allclose(rim.min(axis=0), box.min(axis=0), atol=0.02)
        np.testing.assert_allclose(rim.max(axis=0), box.max(axis=0), atol=0.02)


def test_the_blank_is_a_circle_about_the_optical_centre(drawn):
    picture, shown = drawn
    for eye, lens in picture.lenses.items():
        away = np.abs(points(lens.blank) - points(lens.centre))
        np.testing.assert_allclose(away, shown.fit(eye).blank_mm / 2.0)


def test_what_is_not_covered_is_hatched_drawn_thick_and_put_in_words(drawn):
    picture, shown = drawn
    for eye, lens in picture.lenses.items():
        fit = shown.fit(eye)
        assert lens.missing.get_visible() is not fit.blank_covers
        assert lens.blank.get_color() == (BLANK if fit.blank_covers else TOO_SMALL).colour
        out = points(lens.outside)
        out = out[np.isfinite(out)]
        assert (out.size > 0) is not fit.blank_covers
        if fit.blank_covers:
            assert lens.short_words.get_text() == ""
            continue
        assert np.abs(out - points(lens.centre)).min() >= fit.usable_mm
        assert lens.short_words.get_text() == f"{fit.beyond_mm.max():.1f} not covered"
        assert lens.missing.get_hatch() == "////"


def test_the_farthest_point_gives_the_least_blank(drawn):
    picture, shown = drawn
    for eye, lens in picture.lenses.items():
        start, end = points(lens.far)
        assert 2.0 * abs(end - start) + 2.0 == pytest.approx(shown.fit(eye).least.exact_mm)
        assert lens.far_words.get_text() == f"{abs(end - start):.1f}"


def test_the_effective_diameter_runs_through_the_boxed_centre(drawn):
    picture, _ = drawn
    for lens in picture.lenses.values():
        start, end = points(lens.diameter)
        assert (start + end) / 2.0 == pytest.approx(points(lens.boxed_centre)[0])
        assert lens.diameter_words.get_text() == f"ED {abs(end - start):.1f}"


def test_lines_of_a_symmetrical_pair_mirror_each_other(picture):
    picture.update(data(outline="superellipse 3"))
    right, left = (picture.lenses[eye] for eye in (Eye.RIGHT, Eye.LEFT))
    for name in ("far", "diameter"):
        mirrored = -points(getattr(left, name)).conj()
        np.testing.assert_allclose(np.sort(points(getattr(right, name))), np.sort(mirrored), atol=1e-6)
    # The line to the farthest point goes up, and the other crosses it.
    assert points(right.far)[1].imag > 1.0
    assert points(right.diameter)[1].real > points(right.boxed_centre)[0].real


def test_no_words_cover_a_centre_in_a_low_box(picture):
    picture.update(data(b_mm=24.0))
    for lens in picture.lenses.values():
        for centre in (points(lens.boxed_centre)[0], points(lens.centre)[0]):
            x, y = picture.window.px(centre.real, centre.imag)
            for label in (lens.far_words, lens.centre_words, lens.diameter_words, *picture.distances.words):
                (at, up), (width, height) = label.get_position(), size_px(label)
                assert abs(x - at) > width / 2.0 or abs(y - up) > height / 2.0, label.get_text()


def test_distances_are_as_long_as_they_say(drawn):
    picture, shown = drawn
    for line, label, (start, end, _, words) in zip(
        picture.distances.lines, picture.distances.words, distances(shown), strict=True
    ):
        assert label.get_text() == words
        assert float(words.split()[-1]) == pytest.approx(abs(end - start), abs=0.051)
        assert points(line).tolist() == [start, end]


def test_what_is_found_is_said_below():
    refused, fits = data().right, data(**CASES["fits"]).left

    assert verdict(refused) == "needs 76.9 mm, has 70: 6.9 too small"
    assert verdict(fits) == "needs 54.2 mm, has 65: covers, 10.8 to spare"


def test_verdicts_stand_on_their_own_sides(drawn):
    picture, shown = drawn
    assert f"Right: {verdict(shown.right)}" in texts_of(picture)
    assert picture.verdicts[Eye.RIGHT].get_position()[0] < picture.verdicts[Eye.LEFT].get_position()[0]


def test_nothing_leaves_the_window(drawn):
    picture, _ = drawn
    (left, right), (low, high) = picture.window.axes.get_xlim(), picture.window.axes.get_ylim()
    for lens in picture.lenses.values():
        for line in (points(lens.blank), points(lens.box)):
            assert left < line.real.min() <= line.real.max() < right
            assert low < line.imag.min() <= line.imag.max() < high


def test_the_scale_is_the_same_for_every_frame(picture):
    seen = set()
    for case in CASES.values():
        picture.update(data(**case))
        seen.add(picture.window.px_per_mm)
    assert len(seen) == 1


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 20


@pytest.mark.parametrize("outline", BlankFitPanel.ranges["outline"].options)
def test_no_words_overlap_in_frames_of_any_size_and_outline(picture, outline):
    ends = itertools.product(
        (46.0, 62.0), (32.0, 50.0), (14.0, 24.0), ((28.0, 34.0), (36.0, 31.0)), (60.0, 76.0)
    )
    for a, b, dbl, (right, left), blank in ends:
        case = {"a_mm": a, "b_mm": b, "dbl_mm": dbl, "right_pd_mm": right, "left_pd_mm": left}
        heights = {"right_height_mm": round(b) / 2.0 + 4.0, "left_height_mm": round(b) / 2.0}
        picture.update(data(**case, **heights, blank_mm=blank, outline=outline))
        require_apart_and_inside(picture, case)


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0
