"""The picture of a spoiled lens in a question shows its signs and tells them only once it is over."""

import numpy as np
import pytest
from asked_cases import MAKE
from picture_words import require_apart_and_inside, texts_of
from turned_lenses import line_of, points_of

from lablib.errors import LabError
from lablib.job.spoiled import spoiled, spoiled_names
from lablib.pictures.asked import Asked, picture_for
from lablib.questions.slip.pictured import drawing_of
from lablib.study.question import Drawing

CASE = MAKE["spoiled-lens"](1).values


@pytest.fixture(scope="module")
def picture():
    return picture_for(Drawing(name="spoiled-lens"))


@pytest.mark.parametrize("name", spoiled_names())
def test_every_practice_lens_is_drawn_with_its_words_apart(name, picture):
    values = drawing_of(name).values
    for is_over in (False, True):
        picture.update(Asked(values=values, is_over=is_over))
        require_apart_and_inside(picture, (name, is_over))
        for points in (points_of(picture.lens.rim), points_of(picture.lens.ordered)):
            places = [picture.window.px(point.real, point.imag) for point in points]
            left, low, right, high = picture.window.box_px
            assert all(left < x < right and low < y < high for x, y in places)


@pytest.mark.parametrize("name", ["line-off", "bumped", "burnt"])
def test_the_signs_are_told_once_it_is_over_and_not_before(name, picture):
    values, ran = drawing_of(name).values, spoiled(name).simulation
    picture.update(Asked(values=values))
    before = texts_of(picture)
    assert not any("short" in text or "°" in text for text in before)
    assert not picture.lens.arc.get_visible()
    picture.update(Asked(values=values, is_over=True))

    told = texts_of(picture) - before
    assert f"{abs(values['line_deg']):.0f}°" in told
    assert any("mm short" in text for text in told) == ("bumped outline" in ran.signs)


def test_what_a_lens_shows_is_drawn_before_it_is_told(picture):
    values = drawing_of("burnt").values
    picture.update(Asked(values=values))
    line = line_of(picture.lens.line)

    assert np.exp(1j * np.angle(line[-1] - line[0])) == pytest.approx(
        np.exp(1j * np.radians(values["line_deg"]))
    )
    assert picture.lens.patch.get_visible()
    assert np.abs(points_of(picture.lens.missing)).max() > np.abs(points_of(picture.lens.rim)).max() - 1e-9


def test_a_sound_lens_shows_nothing_even_once_it_is_over(picture):
    picture.update(Asked(values=drawing_of("holds").values, is_over=True))
    assert not picture.lens.patch.get_visible()
    assert not any("short" in text or "°" in text for text in texts_of(picture))


@pytest.mark.parametrize("seed", range(8))
def test_an_angle_is_a_hand_turned_from_the_blocks_line(seed, picture):
    case = MAKE["spoiled-lens"](seed)
    picture.update(Asked(values=case.values, given=case.wrong, right=case.right))
    for sign, value in ((picture.yours, case.wrong), (picture.right, case.right)):
        start, end = line_of(sign.line)
        assert start == 0.0
        assert end / abs(end) == pytest.approx(np.exp(1j * np.radians(value)))


def test_two_turns_that_leave_a_lens_in_one_place_are_drawn_as_one(picture):
    case = MAKE["spoiled-lens"](2)
    picture.update(Asked(values=case.values, given=case.right + 360.0, right=case.right))
    assert not picture.yours.line.get_visible()
    assert picture.right.label.get_text().startswith("right, and yours")


FAULTS = {
    "uneven rows": ({"finished_x_mm": (1.0,) * 9}, r"finished outline .* \(9,\) and \(72,\): give two rows"),
    "too few": (
        {"ordered_x_mm": (1.0,) * 4, "ordered_y_mm": (1.0,) * 4},
        r"ordered outline of a drawing has rows of shape \(4,\) and \(4,\)",
    ),
    "other directions": (
        {"ordered_x_mm": (1.0,) * 36, "ordered_y_mm": (1.0,) * 36},
        "rim of a drawing has 72 points, its ordered outline 36: give as many of both",
    ),
    "no number": ({"finished_y_mm": (float("inf"),) * 72}, "8 finite numbers or more"),
    "no turn": ({"line_deg": 190.0}, "line_deg 190 is out of range: give from -180 to 180 degrees"),
    "no design": ({"design": "trifocal"}, "design 'trifocal' is not known: give one of single vision"),
    "half burnt": ({"burnt": 2}, "burnt 2 is neither 0 nor 1: give 1 for a lens with a burnt patch"),
    "no block": ({"block": "square"}, "block 'square' is not known: give one of round, half-eye"),
}


@pytest.mark.parametrize(("replaced", "said"), FAULTS.values(), ids=FAULTS.keys())
def test_values_that_cannot_be_are_said(replaced, said, picture):
    with pytest.raises(LabError, match=said):
        picture.update(Asked(values=CASE | replaced))
