"""The drawing of a level in a lens: the ruler, the engravings, and where an answer stands."""

import numpy as np
import pytest
from asked_cases import level

from lablib.errors import LabError
from lablib.pictures.asked import Asked, picture_for
from lablib.study.question import Drawing


def drawn(values: dict, **shown: float):
    picture = picture_for(Drawing(name="level", values=values))
    picture.update(Asked(values=values, **shown))
    return picture


def values_from(measured_from: str) -> dict:
    case = next(case for case in map(level, range(60)) if case.values["measured_from"] == measured_from)
    return case.values


@pytest.mark.parametrize(("measured_from", "share"), [("midline", 0.0), ("lowest tangent", -1.0)])
def test_an_answer_counts_from_where_the_case_says(measured_from: str, share: float):
    values = values_from(measured_from)
    picture = drawn(values, right=3.0)
    heights = picture.right.line.get_xydata()[:, 1]
    assert heights == pytest.approx(3.0 + share * values["half_b_mm"])
    assert picture.counted.get_text() == f"ruler counts from the {measured_from}"


@pytest.mark.parametrize("seed", range(12))
def test_the_ruler_has_a_tick_a_millimetre_and_a_number_at_every_tenth(seed: int):
    values = level(seed).values
    picture = drawn(values)
    half_b = values["half_b_mm"]
    zero = -half_b if values["measured_from"] == "lowest tangent" else 0.0
    heights = picture.ruler.get_ydata()
    ticks = np.unique(heights[3:][np.isfinite(heights[3:])])
    assert np.diff(ticks) == pytest.approx(1.0)
    assert (ticks - zero) % 1.0 == pytest.approx(0.0)
    assert ticks.min() >= -half_b - 1e-9
    assert ticks.max() <= half_b + 1e-9
    numbers = [label for label in picture.numbers if label.get_visible()]
    for label in numbers:
        _, up = picture.window.mm(*label.get_position())
        assert float(label.get_text()) == pytest.approx(up - zero, abs=0.01)
        assert float(label.get_text()) % 10.0 == 0.0
    assert len(numbers) >= 2


def test_engravings_are_dotted_where_they_are():
    with_them = next(case.values for case in map(level, range(60)) if "engraving_x_mm" in case.values)
    picture = drawn(with_them)
    assert picture.engravings.get_xdata() == pytest.approx(with_them["engraving_x_mm"])
    assert picture.engravings.get_ydata() == pytest.approx([with_them["engraving_y_mm"]] * 2)
    without = next(case.values for case in map(level, range(60)) if "engraving_x_mm" not in case.values)
    picture.update(Asked(values=without))
    assert len(picture.engravings.get_xdata()) == 0


def test_the_key_names_engravings_only_where_they_are_drawn():
    for case in map(level, range(20)):
        key = drawn(case.values).engraving_key
        told = "engraving_x_mm" in case.values
        assert (key.mark.get_visible(), key.words.get_visible()) == (told, told)
        assert key.words.get_text() == "engraving"


@pytest.mark.parametrize(
    ("eye", "words"), [("right", ["temporal", "nasal"]), ("left", ["nasal", "temporal"])]
)
def test_the_nose_lies_where_an_observer_sees_it(eye: str, words: list[str]):
    picture = drawn(level(1).values | {"eye": eye})
    assert [label.get_text() for label in picture.sides] == words
    assert picture.head.get_text() == f"Lens of the {eye} eye, facing the wearer [mm]"


@pytest.mark.parametrize(
    ("replaced", "said"),
    [
        ({"half_b_mm": 2.0}, "half_b_mm 2 is out of range: give from 6 to 35 mm"),
        ({"eye": "both"}, "eye 'both' is not an eye"),
        ({"measured_from": "top"}, "measured_from 'top' is not known: give one of midline, lowest tangent"),
        ({"engraving_x_mm": (1.0,)}, "1 engraving(s) of a drawing: give two, or none"),
        ({"engraving_y_mm": float("nan")}, "engraving of a drawing nan is not a finite number"),
    ],
)
def test_levels_that_cannot_be_are_said(replaced: dict, said: str):
    with pytest.raises(LabError) as caught:
        drawn(level(1).values | replaced)
    assert said in str(caught.value)
