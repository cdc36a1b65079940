"""Questions on the optical cross and on equal writings: the curriculum's lens, each slip, and their cases."""

import pytest
from settled import settled, slips

from lablib.optics.optical_cross import OpticalCross, crossed_cylinders
from lablib.optics.prescription import Prescription
from lablib.questions.prescription import CrossedCylinders, CrossToPrescription, PowerOnTheCross, SameLens
from lablib.questions.prescription.cross import CrossCase, OnCrossCase
from lablib.questions.prescription.crossed import CrossedCase
from lablib.questions.prescription.same import SameCase
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question

# The example of the trade used all through: +2.00 on 20, +0.50 on 110.
LENS = Prescription(sphere_d=2, cylinder_d=-1.5, axis_deg=20)
CROSS = OpticalCross.of(LENS)
SEEDS = range(400)


def from_cross(form: str) -> Question:
    """Return the question for the lens of the cross, in a form."""
    return settled(CrossToPrescription(), CrossCase(cross=CROSS, form=form))


def on_cross(across: bool) -> Question:
    """Return the question for one power of the cross."""
    return settled(PowerOnTheCross(), OnCrossCase(rx=LENS, across=across))


def crossed(form: str = "minus") -> Question:
    """Return the question for the two cylinders of the cross."""
    return settled(CrossedCylinders(), CrossedCase(cross=CROSS, form=form))


@pytest.mark.parametrize(
    ("form", "right"), [("minus", "+2.00 -1.50 x 020"), ("plus", "+0.50 +1.50 x 110")], ids=["minus", "plus"]
)
def test_a_cross_is_written_in_either_form(form: str, right: str):
    asked = from_cross(form)
    assert asked.kind.written(asked.right) == right
    assert mark(asked, right).state is State.RIGHT
    assert "+2.00 on 020, +0.50 on 110" in asked.prompt[0]
    assert [step.value for step in asked.solution.workings] == [
        asked.right.sphere_d,
        asked.right.cylinder_d,
        asked.right.axis_deg,
    ]


@pytest.mark.parametrize(
    ("form", "given", "made"),
    [
        ("minus", "+2.00 -1.50 x 110", "sphere-at-right-angles"),
        ("minus", "+2.00 +0.50 x 020", "power-for-cylinder"),
        ("minus", "+2.00 +1.50 x 020", "cylinder-turned-round"),
        ("minus", "+0.50 +1.50 x 110", "other-form"),
        ("plus", "+0.50 +1.50 x 020", "sphere-at-right-angles"),
        ("plus", "+0.50 +2.00 x 110", "power-for-cylinder"),
        ("plus", "+0.50 -1.50 x 110", "cylinder-turned-round"),
        ("plus", "+2.00 -1.50 x 020", "other-form"),
    ],
)
def test_each_wrong_step_from_a_cross_is_named(form: str, given: str, made: str):
    answer = mark(from_cross(form), given)
    assert (answer.state, slips(answer), answer.is_guess) == (State.WRONG, (made,), False)


def test_a_wrong_axis_and_a_wrong_cylinder_at_once_are_a_guess():
    answer = mark(from_cross("minus"), "+2.00 +0.50 x 110")
    assert (slips(answer), answer.is_guess) == (("sphere-at-right-angles", "power-for-cylinder"), True)


def test_a_cross_without_a_sign_is_faulty():
    assert mark(from_cross("minus"), "2.00 -1.50 x 020").state is State.FAULTY


@pytest.mark.parametrize(
    ("across", "given", "state", "made"),
    [
        (False, "+2.00", State.RIGHT, ()),
        (False, "+0.50", State.WRONG, ("sphere-at-right-angles",)),
        (True, "+0.50", State.RIGHT, ()),
        (True, "0.50", State.FAULTY, ()),
        (True, "+2.00", State.WRONG, ("sphere-at-right-angles",)),
        (True, "-1.50", State.WRONG, ("cylinder-as-a-power",)),
        (True, "+3.50", State.WRONG, ("subtracts-cylinder",)),
        (True, "+1.25", State.WRONG, ()),
    ],
)
def test_the_power_on_a_meridian_of_the_cross(across: bool, given: str, state: State, made: tuple):
    asked = on_cross(across)
    assert ("110" if across else "020") in asked.prompt[1]
    answer = mark(asked, given)
    assert (answer.state, slips(answer)) == (state, made)


def test_on_the_axis_no_sum_can_be_wrong():
    assert [mistake.slips[0].name for mistake in on_cross(False).mistakes] == ["sphere-at-right-angles"]
    assert len(on_cross(True).mistakes) == 3


@pytest.mark.parametrize(
    ("given", "made"),
    [
        ("+2.00 -1.50 x 110", "power-on-its-own-axis"),
        ("+2.00 +0.50 x 020", "second-cylinder-as-it-stands"),
        ("+0.50 +1.50 x 110", "other-form"),
    ],
)
def test_each_wrong_step_with_crossed_cylinders_is_named(given: str, made: str):
    asked = crossed()
    # +2.00 works on 20 when its axis lies at 110.
    assert "plano +2.00 x 110 and plano +0.50 x 020" in asked.prompt[0]
    assert mark(asked, "+2.00 -1.50 x 020").state is State.RIGHT
    answer = mark(asked, given)
    assert (answer.state, slips(answer)) == (State.WRONG, (made,))


def test_the_way_over_the_cross_and_the_formula_for_any_angle_agree():
    for seed in SEEDS:
        draws = Draws(seed)
        case = CrossedCylinders().draw(draws)
        asked = settled(CrossedCylinders(), case)
        first, second = case.cross.cylinders()
        total = crossed_cylinders(
            first_d=first.cylinder_d,
            first_axis_deg=first.axis_deg,
            second_d=second.cylinder_d,
            second_axis_deg=second.axis_deg,
        )
        assert asked.right == total.in_form(case.form) == case.cross.prescription(case.form)
        assert asked.solution.workings[-1].value == asked.right.axis_deg


def same(on_cross: bool, *wrong: str) -> Question:
    """Return the question for the writing that is the same lens, among wrong ones."""
    return settled(SameLens(), SameCase(rx=LENS, on_cross=on_cross, shown=("same", *wrong)))


def test_equal_writings_in_the_other_form():
    names = ("keeps-sphere", "subtracts-cylinder", "keeps-sign", "keeps-axis", "axis-from-180")
    asked = same(False, *names)
    assert {option.key: option.words for option in asked.kind.options} == {
        "same": "+0.50 +1.50 x 110",
        "keeps-sphere": "+2.00 +1.50 x 110",
        "subtracts-cylinder": "+3.50 +1.50 x 110",
        "keeps-sign": "+0.50 -1.50 x 110",
        "keeps-axis": "+0.50 +1.50 x 020",
        "axis-from-180": "+0.50 +1.50 x 160",
    }
    assert asked.right == "same"
    assert slips(mark(asked, "keeps-axis")) == ("keeps-axis",)


def test_equal_writings_as_a_cross():
    names = ("sphere-at-right-angles", "cylinder-as-a-power", "cylinder-off-on-the-cross")
    asked = same(True, *names)
    assert [option.words for option in asked.kind.options] == [
        "+2.00 on 020, +0.50 on 110",
        "+0.50 on 020, +2.00 on 110",
        "+2.00 on 020, -1.50 on 110",
        "+2.00 on 020, +3.50 on 110",
    ]


def test_cases_come_in_both_forms_and_with_either_power_first():
    forms, first = set(), set()
    for seed in SEEDS:
        case = CrossToPrescription().draw(Draws(seed))
        forms.add(case.form)
        first.add(case.cross.first_d > case.cross.second_d)
        assert case.cross.first_d * case.cross.second_d != 0.0
    assert forms == {"minus", "plus"}
    assert first == {True, False}
