"""Makers of layout questions: the trade's own examples, what is drawn, and whether the picture agrees."""

import math
from functools import cache

import pytest
from made_questions import SEEDS, questions

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import minimum_blank_mm
from lablib.questions import layout
from lablib.questions.layout.blank import BlankCase
from lablib.questions.layout.case import LayoutCase
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question

MAKERS = {maker.name: maker for maker in layout.MAKERS}
DECENTRATION, BLANK = MAKERS["decentration"], MAKERS["least-blank-rule"]


@cache
def cases(name: str) -> tuple[object, ...]:
    """Return the first case drawn for every seed."""
    return tuple(MAKERS[name].draw(Draws(seed)) for seed in SEEDS)


def on_wearer(
    a_mm: float, dbl_mm: float, right_mm: float, left_mm: float, eye: Eye = Eye.RIGHT
) -> LayoutCase:
    """Return a case; the eyes stand alike where both distances are the same."""
    return LayoutCase(
        frame=Frame(a_mm=a_mm, b_mm=a_mm - 14.0, dbl_mm=dbl_mm),
        eye=eye,
        right_pd_mm=right_mm,
        left_pd_mm=left_mm,
        is_binocular=right_mm == left_mm,
    )


def given(question: Question) -> dict[str, float]:
    """Return the numbers given in a question by their symbols."""
    return {term.symbol: term.value for term in question.given}


# --- Decentration -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "answer_mm"),
    [
        (set(), 2.0),
        ({"total-for-one-eye"}, 4.0),
        ({"bridge-left-out"}, -7.0),
        ({"bridge-added-twice"}, 11.0),
        ({"frame-and-wearer-swapped"}, -2.0),
        ({"total-for-one-eye", "bridge-left-out"}, -14.0),
        ({"bridge-left-out", "frame-and-wearer-swapped"}, 7.0),
    ],
)
@pytest.mark.parametrize("eye", list(Eye))
def test_decentration_of_the_trades_example(slips: set[str], answer_mm: float, eye: Eye):
    """Common practice: A 50, DBL 18, 64 mm between the pupils."""
    assert DECENTRATION.answer(on_wearer(50.0, 18.0, 32.0, 32.0, eye), slips) == answer_mm


@pytest.mark.parametrize(
    ("eye", "slips", "answer_mm"),
    [
        (Eye.RIGHT, set(), 4.0),
        (Eye.LEFT, set(), 1.0),
        (Eye.RIGHT, {"other-eye"}, 1.0),
        (Eye.LEFT, {"other-eye"}, 4.0),
        (Eye.RIGHT, {"half-of-both"}, 2.5),
        (Eye.LEFT, {"total-for-one-eye"}, 5.0),
        (Eye.LEFT, {"other-eye", "frame-and-wearer-swapped"}, -4.0),
    ],
)
def test_decentration_of_eyes_that_do_not_stand_alike(eye: Eye, slips: set[str], answer_mm: float):
    """Common practice: A 50, DBL 18, right 30 and left 33 mm, 31.5 being half of both."""
    assert DECENTRATION.answer(on_wearer(50.0, 18.0, 30.0, 33.0, eye), slips) == answer_mm


def test_slips_about_two_distances_need_two_distances():
    for question in questions("decentration"):
        names = {mistake.slips[0].name for mistake in question.mistakes}
        assert ("other-eye" in names) == ("PD_R" in given(question))
        assert ("half-of-both" in names) == ("PD_R" in given(question))


def test_both_eyes_both_ways_of_telling_and_both_directions_occur():
    drawn = [question.drawing.values["eye"] for question in questions("decentration")]
    assert set(drawn) == {"right", "left"}
    assert {"PD_both" in given(question) for question in questions("decentration")} == {True, False}
    inward = sum(question.right > 0.0 for question in questions("decentration"))
    # More often in than out, as on a bench; but out often enough to be looked for.
    assert 0.6 * len(SEEDS) < inward < 0.95 * len(SEEDS)


def test_the_picture_of_a_pair_shows_the_numbers_given_and_no_more():
    for question in questions("decentration"):
        values, numbers = question.drawing.values, given(question)
        assert (values["a_mm"], values["dbl_mm"]) == (numbers["A"], numbers["DBL"])
        shown = (values["right_pd_mm"], values["left_pd_mm"])
        assert shown == (numbers.get("PD_R", 0.0), numbers.get("PD_L", 0.0))
        assert values["measured_from"] == "boxed centre"
        assert f"the {values['eye']} lens" in question.prompt[-1]


def test_out_is_answered_with_minus():
    question = next(one for one in questions("decentration") if one.right < 0.0)
    assert mark(question, f"{question.right} mm").state is State.RIGHT
    in_words = mark(question, f"{-question.right} mm")
    assert [slip.name for slip in in_words.slips] == ["frame-and-wearer-swapped"]
    assert "out" in question.solution.words[0].rsplit(". ", 1)[-1]


# --- Least blank --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "answer_mm"),
    [
        (set(), 68.0),
        ({"decentration-counted-once"}, 63.0),
        ({"total-counted-twice"}, 78.0),
        ({"allowance-twice"}, 70.0),
        ({"allowance-left-out"}, 66.0),
        ({"width-for-effective-diameter"}, 64.0),
        ({"decentration-counted-once", "allowance-left-out"}, 61.0),
        ({"total-counted-twice", "width-for-effective-diameter"}, 74.0),
    ],
)
@pytest.mark.parametrize("eye", list(Eye))
def test_least_blank_of_the_trades_example(slips: set[str], answer_mm: float, eye: Eye):
    """Common practice: ED 56, A 52, A + DBL 70, 60 mm between the pupils."""
    case = BlankCase(layout=on_wearer(52.0, 18.0, 30.0, 30.0, eye), effective_diameter_mm=56.0)
    assert BLANK.answer(case, slips) == answer_mm


def test_a_centre_that_lies_out_needs_as_much_as_one_that_lies_in():
    inward, outward = (
        BLANK.answer(BlankCase(layout=on_wearer(52.0, 18.0, pd, pd), effective_diameter_mm=56.0))
        for pd in (33.0, 37.0)
    )
    assert inward == outward == 62.0


def test_the_effective_diameter_is_that_of_the_outline_drawn():
    for question, case in zip(questions("least-blank-rule"), cases("least-blank-rule"), strict=True):
        outline = case.layout.frame.outline(case.layout.eye)
        assert case.effective_diameter_mm == pytest.approx(outline.effective_diameter_mm, abs=0.05 + 1e-9)
        values = question.drawing.values
        drawn = 2.0 * max(map(math.hypot, values["outline_x_mm"], values["outline_y_mm"]))
        assert drawn == pytest.approx(given(question)["ED"], abs=0.4)
        assert len(values["outline_x_mm"]) == len(values["outline_y_mm"]) == 72


def test_the_optical_centre_is_drawn_where_the_answer_puts_it():
    eyes = set()
    for question in questions("least-blank-rule"):
        numbers, values = given(question), question.drawing.values
        inward = (numbers["A"] + numbers["DBL"] - numbers["PD_both"]) / 2.0
        is_right = "The right lens" in question.prompt[0]
        assert values["centre_x_mm"] == pytest.approx(inward if is_right else -inward, abs=1e-9)
        assert values["centre_y_mm"] == 0.0
        eyes.add(is_right)
    assert eyes == {True, False}


def test_the_rule_is_never_too_small_where_the_centre_lies_on_the_midline():
    """The rule takes the longest radius to lie on the far side, so it can only be too large there."""
    for case in cases("least-blank-rule"):
        outline = case.layout.frame.outline(case.layout.eye)
        exact = minimum_blank_mm(outline, x_mm=case.centre_x_mm, y_mm=0.0)
        # The effective diameter is told to 0.1 mm.
        assert exact <= BLANK.answer(case) + 0.05


def test_a_round_lens_is_not_asked_because_its_effective_diameter_is_its_width():
    round_frame = Frame(a_mm=50.0, b_mm=40.0, dbl_mm=18.0, shape=OutlineShape.named("round"))
    assert round_frame.outline(Eye.RIGHT).effective_diameter_mm == pytest.approx(50.0)
    for question in questions("least-blank-rule"):
        assert given(question)["ED"] > given(question)["A"] + 0.4
