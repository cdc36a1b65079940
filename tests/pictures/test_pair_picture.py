"""The picture of a pair slid apart: lenses and eyes in their places, bases, light from above, words."""

import itertools

import numpy as np
import pytest
from picture_words import require_apart_and_inside, smallest_px

from lablib.optics.eye import Eye
from lablib.panels.pair_panel import PairPanel
from lablib.pictures.pair import SCALES_PRISM_D_PER_MM, PairPicture, result_lines
from lablib.pictures.pair_above import ANGLE_TIMES
from lablib.pictures.pair_data import PairSeen
from lablib.pictures.pair_front import RADIUS_MM

CASES = {
    "start": {},
    "wide": {"wider_mm": 3.6, "right_pd_mm": 29.0, "left_pd_mm": 29.0},
    "together": {
        "wider_mm": -6.0,
        "right_sphere_d": 8.0,
        "left_sphere_d": 8.0,
        "right_pd_mm": 26.0,
        "left_pd_mm": 26.0,
        "drop_mm": 12.0,
    },
    "apart": {
        "wider_mm": 6.0,
        "right_sphere_d": -8.0,
        "left_sphere_d": 8.0,
        "right_pd_mm": 38.0,
        "left_pd_mm": 38.0,
        "drop_mm": 12.0,
    },
    "near": {"right_sphere_d": -1.0, "left_sphere_d": -4.5, "drop_mm": 10.0},
    "mixed": {"right_sphere_d": 2.0, "left_sphere_d": -1.0, "drop_mm": 8.0, "wider_mm": 2.0},
    "plano": {"right_sphere_d": 0.0, "left_sphere_d": 0.0, "wider_mm": 4.0},
    "uneven": {"right_pd_mm": 27.0, "left_pd_mm": 36.5, "wider_mm": -2.0, "left_sphere_d": -8.0},
}


@pytest.fixture(scope="module")
def picture() -> PairPicture:
    return PairPicture()


def data(**start: float) -> PairSeen:
    """Return what the panel hands to the picture."""
    panel = PairPanel(**start)
    return panel.compute(panel.values)


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[PairPicture, PairSeen]:
    shown = data(**request.param)
    picture.update(shown)
    return picture, shown


def test_the_right_eye_is_on_the_left_and_lenses_stand_where_their_centres_are(drawn):
    picture, shown = drawn
    right, left = (picture.lenses[eye] for eye in (Eye.RIGHT, Eye.LEFT))

    assert right.lens.get_center() == (-shown.right_centre_mm, 0.0)
    assert left.lens.get_center() == (shown.left_centre_mm, 0.0)
    assert right.pupil.get_xydata().tolist() == [[-shown.right_pd_mm, -shown.drop_mm]]
    assert left.pupil.get_xydata().tolist() == [[shown.left_pd_mm, -shown.drop_mm]]
    assert right.centre.get_xydata().tolist() == [[-shown.right_centre_mm, 0.0]]
    # Slid together as far as they go, the lenses do not meet.
    assert -shown.right_centre_mm + RADIUS_MM < shown.left_centre_mm - RADIUS_MM


def test_eyes_stay_when_lenses_are_slid(picture):
    seen = set()
    for wider in (-6.0, 0.0, 6.0):
        picture.update(data(wider_mm=wider))
        seen.add(tuple(picture.lenses[eye].pupil.get_xdata()[0] for eye in Eye))
    assert seen == {(-31.0, 31.0)}


def test_arrows_show_each_eyes_prism(drawn):
    picture, shown = drawn
    scale = float(picture.scale.get_text().split()[4]) / 10.0

    assert scale in SCALES_PRISM_D_PER_MM
    for eye in Eye:
        line = picture.lenses[eye].base.get_xydata() @ np.array([1.0, 1j])
        assert scale * (line[1] - line[0]) == pytest.approx(shown.base_prism_d(eye), abs=1e-9)


def test_no_arrow_leaves_the_window(drawn):
    picture, _ = drawn
    (left, right), (low, high) = picture.window.axes.get_xlim(), picture.window.axes.get_ylim()
    for lens in picture.lenses.values():
        x, y = lens.base.get_data()
        assert left < np.nanmin(x) <= np.nanmax(x) < right
        assert low < np.nanmin(y) <= np.nanmax(y) < high


def test_light_is_bent_towards_the_base_and_the_eye_looks_back_along_it(drawn):
    picture, shown = drawn
    for eye, above in picture.above.eyes.items():
        light = above.light.get_xydata() @ np.array([1.0, 1j])
        slope = ANGLE_TIMES * shown.base_prism_d(eye).real / 100.0
        assert light[0].real == light[1].real, "light from far away comes straight"
        assert light[2] == pytest.approx(shown.pupil_mm(eye))
        assert (light[2] - light[1]).real / (light[2] - light[1]).imag == pytest.approx(slope)
        # Where it seems to come from lies on the line through the eye.
        behind = above.seen.get_xydata() @ np.array([1.0, 1j]) - light[2]
        assert behind.real / behind.imag == pytest.approx([slope, slope])
        left, right = picture.above.window.axes.get_xlim()
        for line in (above.light, above.seen, above.lens):
            assert left < min(line.get_xdata()) <= max(line.get_xdata()) < right


def test_base_in_turns_the_eyes_outwards(picture):
    picture.update(data(wider_mm=4.0))
    for eye, above in picture.above.eyes.items():
        pupil, ball = np.mean(above.pupil.get_xdata()), above.ball.get_center()[0]
        assert np.sign(pupil - ball) == -eye.nasal_sign


def test_a_plus_lens_is_thick_in_its_middle_from_above(picture):
    for power, is_thicker in ((5.0, True), (-5.0, False)):
        picture.update(data(right_sphere_d=power))
        x, y = picture.above.eyes[Eye.RIGHT].lens.get_data()
        middle = np.ptp(y[np.abs(x - x.mean()) < 1.0])
        assert (middle > np.ptp(y[x > x.max() - 0.5])) == is_thicker


def test_what_the_wearer_gets_stands_in_four_lines(drawn):
    picture, shown = drawn
    assert tuple(label.get_text() for label in picture.lines) == result_lines(shown)
    assert result_lines(data(**CASES["near"])) == (
        "Sideways: nothing",
        "   the eyes stay parallel",
        "Up and down: 3.50 between them",
        "   the right eye must look lower",
    )
    assert result_lines(data(**CASES["wide"]))[:2] == (
        "Sideways: 2.16 base in together",
        "   the eyes must turn outwards",
    )


def test_distances_are_written_where_they_are_drawn(drawn):
    picture, shown = drawn
    for eye in Eye:
        lens = picture.lenses[eye]
        assert lens.centre_words.get_text() == f"centre {abs(lens.to_centre.get_xdata()[1]):.1f}"
        assert lens.pupil_words.get_text() == f"pupil {abs(lens.to_pupil.get_xdata()[1]):.1f}"
        assert lens.to_pupil.get_xdata()[1] == shown.pupil_mm(eye)


def test_the_scale_is_steady_while_lenses_and_eyes_move(picture):
    seen = set()
    for wider, drop, pd in itertools.product((-6.0, 0.0, 6.0), (0.0, 12.0), (26.0, 38.0)):
        picture.update(data(wider_mm=wider, drop_mm=drop, right_pd_mm=pd))
        seen.add(picture.scale.get_text())
    assert len(seen) == 1


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 20


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0
