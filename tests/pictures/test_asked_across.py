"""Two rims above a ruler: ticks stand where they say, rims and pupils where they are told."""

import numpy as np
import pytest
from asked_cases import MAKE

from lablib.errors import LabError
from lablib.optics.eye import EYES, Eye
from lablib.pictures.asked import Asked, picture_for
from lablib.pictures.asked_across import Across
from lablib.study.question import Drawing


def shown(seed: int, **answers: float):
    """A picture of a case, with the case's values."""
    case = MAKE["across"](seed)
    picture = picture_for(Drawing(name="across", values=case.values))
    picture.update(Asked(values=case.values, **answers))
    return picture, case


@pytest.mark.parametrize("seed", range(12))
def test_the_ruler_begins_at_its_zero_and_numbers_every_tenth(seed: int):
    picture, case = shown(seed)
    x = picture.ruler.get_xdata()[3::3]
    assert np.diff(x) == pytest.approx(np.ones(x.size - 1))
    assert x[0] == pytest.approx(case.values["zero_mm"])
    for label in picture.numbers:
        if label.get_visible():
            at = picture.window.px(float(label.get_text()) + case.values["zero_mm"], 0.0)[0]
            assert label.get_position()[0] == pytest.approx(at, abs=0.6)
    # It reaches across the pair.
    assert x[-1] >= max(rim.get_xy()[:, 0].max() for rim in picture.rims.values()) - 1e-9


@pytest.mark.parametrize("seed", range(12))
def test_rims_lie_as_the_pair_is_worn(seed: int):
    picture, case = shown(seed)
    right, left = (picture.rims[eye].get_xy()[:, 0] for eye in EYES)
    assert left.min() - right.max() == pytest.approx(case.values["dbl_mm"], abs=0.1)
    assert right.min() == pytest.approx(-left.max())
    # The right eye lies at the observer's left, as given; the left one is its mirror.
    told = [*case.values["outline_x_mm"], case.values["outline_x_mm"][0]]
    np.testing.assert_allclose(right - picture.centres.get_xdata()[0], told, atol=1e-9)


def test_pupils_stand_at_their_distances_from_the_bridge():
    seen = 0
    for seed in range(12):
        picture, case = shown(seed)
        told = [case.values.get(f"{eye}_pupil_mm", 0.0) for eye in EYES]
        expected = [-eye.nasal_sign * one for eye, one in zip(EYES, told, strict=True) if one]
        assert picture.pupils.get_xdata() == pytest.approx(expected)
        assert picture.pupil_key.mark.get_visible() is picture.pupil_key.words.get_visible() is bool(expected)
        seen += bool(expected)
    assert 0 < seen < 12


@pytest.mark.parametrize("seed", range(8))
def test_an_answer_runs_from_its_place_and_down_to_the_ruler(seed: int):
    picture, case = shown(seed, given=20.0)
    sign = 1.0 if case.values["way"] == "right" else -1.0
    line = picture.yours.line.get_xydata()
    assert line[0, 0] == pytest.approx(case.values["from_mm"])
    assert line[1, 0] == pytest.approx(case.values["from_mm"] + sign * 20.0)
    assert line[-1, 1] == pytest.approx(picture.ruler.get_ydata()[0])


def values(**replaced: object) -> dict:
    return MAKE["across"](1).values | replaced


@pytest.mark.parametrize(
    ("replaced", "words"),
    [
        ({"outline_x_mm": (1.0, 2.0)}, r"rim of a drawing has rows of shape \(2,\) and"),
        ({"outline_y_mm": (np.nan,) * 72}, "rim of a drawing has rows"),
        ({"dbl_mm": 90.0}, "dbl_mm 90 is out of range: give from 0 to 40 mm"),
        ({"zero_mm": np.inf}, "zero_mm inf is not a finite number: give a number in mm"),
        ({"way": "up"}, "way 'up' is not known: give one of right, left"),
    ],
)
def test_values_that_cannot_be_are_said_for_rims_above_a_ruler(replaced: dict, words: str):
    with pytest.raises(LabError, match=words):
        Across(**values(**replaced))


def test_the_middle_of_a_rim_lies_on_its_own_side():
    case = Across(**values())
    assert case.middle_mm(Eye.RIGHT) < 0.0 < case.middle_mm(Eye.LEFT)
