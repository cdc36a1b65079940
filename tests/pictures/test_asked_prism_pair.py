"""The drawing of questions on prism: no base before the answer, then the learner's and the right one."""

import numpy as np
import pytest
from asked_cases import prism_pair
from picture_words import texts_of

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.pictures.asked import Asked, picture_for
from lablib.pictures.asked_prism_pair_data import PrismCase
from lablib.questions.makers import maker
from lablib.study.question import Drawing, Question

DRAWN = (
    "prism-at-a-point",
    "prism-at-a-point-toric",
    "decentration-for-a-prism",
    "resultant",
    "centres-too-wide",
    "near-imbalance",
)
LENS = {"asked": "base", "eye": "right", "reach_prism_d": 4.0}


def questions(name: str) -> list[Question]:
    """The first questions of a maker."""
    return [maker(name).make(seed) for seed in range(12)]


def drawn(values: dict, **shown: object):
    picture = picture_for(Drawing(name="prism-pair", values=values))
    picture.update(Asked(values=values, **shown))
    return picture


def reach_of(sign) -> complex:
    """From the first point of a line to its second."""
    (x0, y0), (x1, y1) = sign.line.get_xydata()[:2]
    return complex(x1 - x0, y1 - y0)


@pytest.mark.parametrize("name", DRAWN)
def test_before_the_answer_the_picture_tells_no_prism_that_was_not_ordered(name: str):
    for question in questions(name):
        picture = picture_for(question.drawing)
        picture.update(Asked(values=question.drawing.values))
        for sign in (picture.yours, picture.right):
            assert not sign.line.get_visible()
        assert not any(
            lens.base.get_visible() or lens.prism.get_visible() for lens in picture.lenses.values()
        )
        assert picture.order.get_visible() == (name == "decentration-for-a-prism")
        told = {text for text in texts_of(picture) if " base " in text and not text.startswith("ordered")}
        assert not told


@pytest.mark.parametrize("name", DRAWN)
def test_both_eyes_come_in_their_turn(name: str):
    eyes = {question.drawing.values["eye"] for question in questions(name)}
    assert eyes == ({"both"} if name in ("centres-too-wide", "near-imbalance") else {"right", "left"})


@pytest.mark.parametrize(("eye", "nose"), [("right", 1.0), ("left", -1.0)])
def test_base_in_points_to_the_nose_and_base_up_to_the_top(eye: str, nose: float):
    values = LENS | {"eye": eye, "in_mm": 3.0, "up_mm": -9.0}
    picture = drawn(values, given=(2.0, 0.0), right=(0.0, 1.0))
    lens = picture.lenses[Eye.of(eye)]
    middle, bridge = lens.lens.get_center()[0], picture.sides[1.0].get_xdata().mean()

    assert (bridge - middle) * nose > 0.0
    assert reach_of(picture.yours).real * nose > 0.0
    assert reach_of(picture.yours).imag == pytest.approx(0.0)
    assert reach_of(picture.right).imag > 0.0
    point = lens.point.get_xydata()[0] - (middle, 0.0)
    assert point == pytest.approx((3.0 * nose, -9.0))
    assert lens.name.get_text() == f"{eye} eye"
    assert not picture.lenses[Eye.of(eye).other].lens.get_visible()
    assert {"3", "9", "nose"} <= texts_of(picture)


def test_the_learners_base_and_the_right_one_are_drawn_to_one_scale_that_the_bar_tells():
    picture = drawn(LENS | {"up_mm": 6.0}, given=(0.0, -1.5), right=(0.6, 0.8))
    bar = np.ptp(picture.bar.get_xdata())

    assert abs(reach_of(picture.yours)) == pytest.approx(1.5 * bar)
    assert abs(reach_of(picture.right)) == pytest.approx(bar)


def test_a_base_on_the_same_line_is_drawn_beside_the_right_one():
    picture = drawn(LENS, given=(0.0, 2.0), right=(0.0, 1.0))
    beside = picture.right.line.get_xdata()[0] - picture.yours.line.get_xdata()[0]
    assert abs(beside) * picture.window.px_per_mm > 4.0


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({}, "◆ right answer 2.00 base in with 1.50 base up"),
        ({"in_degrees": True}, "◆ right answer 2.50 base at 37 degrees"),
        ({"in_degrees": True, "eye": "left"}, "◆ right answer 2.50 base at 143 degrees"),
    ],
)
def test_a_prism_is_written_as_it_was_asked_for(values: dict, said: str):
    assert drawn(LENS | values, right=(2.0, 1.5)).right.label.get_text() == said


def test_an_optical_centre_is_placed_and_its_order_is_seen_from_the_first():
    values = {"asked": "centre inwards", "eye": "left", "reach_prism_d": 4.0, "has_centre": False}
    picture = drawn(values | {"order_in_prism_d": 2.0}, given=4.0, right=-4.0)
    (start, _), (end, _) = picture.order.get_xydata()[:2]

    assert end < start, "in is to the observer's left on a left eye"
    assert "ordered: 2.00 base in" in texts_of(picture)
    assert reach_of(picture.yours) == pytest.approx(-4.0)
    assert reach_of(picture.right) == pytest.approx(4.0)
    assert picture.right.mark.get_xydata()[0] == pytest.approx(picture.right.line.get_xydata()[1])
    assert picture.right.label.get_text() == "◆ right answer -4.0 mm"


def test_what_both_eyes_get_together_is_half_before_each_and_mirrored():
    values = {"asked": "base of both together", "eye": "both", "reach_prism_d": 2.0, "in_mm": 2.0}
    picture = drawn(values | {"right_centre_mm": 32.0, "left_centre_mm": 32.0}, right=(3.0, 0.0))
    line, bar = picture.right.line.get_xydata(), np.ptp(picture.bar.get_xdata())
    reaches = [line[start + 1, 0] - line[start, 0] for start in (0, 7)]

    assert reaches == pytest.approx([1.5 * bar, -1.5 * bar]), "in and in face each other"
    assert {"C 64", "PD_both 60"} <= texts_of(picture)


def test_each_base_is_shown_beside_the_imbalance_once_it_is_told():
    values = {"asked": "between the eyes", "eye": "both", "reach_prism_d": 6.0, "up_mm": -8.0}
    values |= {"right_up_prism_d": -2.4, "left_up_prism_d": -4.8}
    picture = drawn(values, given=7.2, right=2.4)
    bar = np.ptp(picture.bar.get_xdata())

    assert {"2.40 base down", "4.80 base down"} <= texts_of(picture)
    for eye, prism in ((Eye.RIGHT, -2.4), (Eye.LEFT, -4.8)):
        assert reach_of_line(picture.lenses[eye].base) == pytest.approx(prism * bar)
    assert reach_of(picture.right).imag == pytest.approx(2.4 * bar)
    assert reach_of(picture.yours).imag == pytest.approx(7.2 * bar)


def reach_of_line(line) -> float:
    (_, start), (_, end) = line.get_xydata()[:2]
    return end - start


@pytest.mark.parametrize(
    "given", [(4000.0, 0.0), (-4000.0, 1.0), (0.0, 4000.0), (0.0, -1e300), (1e300, 1e300)]
)
def test_a_hopeless_prism_ends_at_the_rim(given: tuple[float, float]):
    picture = drawn(LENS, given=given, right=(1.0, 0.0))
    assert "yours, off the picture" in picture.yours.label.get_text()
    left, low, right, high = picture.window.box_px
    x, y = picture.window.px(*picture.yours.mark.get_xydata()[0])
    assert left < x < right
    assert low < y < high


def test_no_prism_at_all_stands_where_the_eye_looks_through():
    picture = drawn(LENS | {"up_mm": 5.0}, given=(0.0, 0.0), right=(1.0, 0.0))
    assert picture.yours.mark.get_xydata()[0] == pytest.approx(
        picture.lenses[Eye.RIGHT].point.get_xydata()[0]
    )
    assert picture.yours.label.get_text() == "○ yours no prism"


@pytest.mark.parametrize("seed", range(12))
def test_the_arrows_stay_as_long_when_an_answer_comes(seed: int):
    case = prism_pair(seed)
    picture = drawn(case.values)
    before = np.ptp(picture.bar.get_xdata())
    picture.update(Asked(values=case.values, given=case.wrong, right=case.right))
    assert np.ptp(picture.bar.get_xdata()) == before


@pytest.mark.parametrize("value", [(1.0,), (1.0, 2.0, 3.0), [1.0, 2.0], (1.0, float("nan")), (True, 1.0)])
def test_two_parts_that_are_no_prism_are_said(value: object):
    with pytest.raises(LabError, match=r"given value of a picture .* number: give a number"):
        Asked(values={}, given=value)


@pytest.mark.parametrize(
    ("replaced", "said"),
    [
        ({"asked": "apex"}, "asked 'apex' is not known: give one of base, base of both together"),
        ({"eye": "middle"}, "eye 'middle' is not known: give one of right, left, both"),
        ({"eye": "both"}, "base is not asked about eye 'both': give right or left for one lens, both for a"),
        ({"reach_prism_d": 0.0}, "reach_prism_d 0 is out of range: give above 0 and up to 40 prism dioptres"),
        ({"up_mm": 15.0}, "up_mm 15 is out of range: give from -14 to 14 mm"),
        ({"left_centre_mm": 50.0}, "left_centre_mm 50 is out of range: give from 24 to 40 mm"),
        ({"axis_deg": 181.0}, "axis_deg 181 is out of range: give from 0 to 180 degrees"),
        ({"order_up_prism_d": "2"}, "order_up_prism_d '2' is not a number: give a number in prism dioptres"),
        ({"right_up_prism_d": None}, "right_up_prism_d None is not a number: give a number in prism dioptr"),
    ],
)
def test_a_case_that_cannot_be_is_said(replaced: dict, said: str):
    with pytest.raises(LabError, match=said):
        PrismCase(**LENS | replaced)
