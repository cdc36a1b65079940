"""Questions on writing a lens: their cases, each slip by its value, and what is said of it."""

import re

import pytest
from evaluation import assert_comes_out

from lablib.optics.prescription import Prescription
from lablib.questions import makers
from lablib.questions.answers.prescription import OTHER_FORM, PrescriptionAnswer
from lablib.questions.prescription import SphericalEquivalent, Transpose, TransposeUpright
from lablib.study.marking import Mark, State, mark
from lablib.study.question import Question

SEEDS = range(600)
TRANSPOSE, EQUIVALENT = MAKERS = (Transpose(), SphericalEquivalent())
# One lens whose axis stays below 180 when 90 is added, and one whose axis goes past it.
LENS = Prescription(sphere_d=2, cylinder_d=-1.5, axis_deg=20)
PAST = Prescription(sphere_d=-1, cylinder_d=2.25, axis_deg=120)


class Fixed:
    """A maker whose case is settled."""

    def __init__(self, case: Prescription) -> None:
        self.case = case

    def draw(self, _: object) -> Prescription:
        """Return the case."""
        return self.case


class FixedTranspose(Fixed, Transpose):
    """Transposition of a lens that is settled."""


class FixedEquivalent(Fixed, SphericalEquivalent):
    """The equivalent of a lens that is settled."""


def transposing(lens: Prescription) -> Question:
    """Return the question to transpose a lens."""
    return FixedTranspose(lens).make(0)


def lens_of(asked: Question) -> Prescription:
    """Return the lens a prompt gives."""
    return Prescription.parse(re.search(r"[+-][0-9].*(?=\.$)", asked.prompt[0]).group())


def slips(answer: Mark) -> tuple[str, ...]:
    """Return the names of the slips in a mark."""
    return tuple(slip.name for slip in answer.slips)


@pytest.mark.parametrize(
    ("lens", "given", "made"),
    [
        (LENS, "+0.50 +1.50 x 020", "keeps-axis"),
        (LENS, "+2.00 +1.50 x 110", "keeps-sphere"),
        (LENS, "+3.50 +1.50 x 110", "subtracts-cylinder"),
        (LENS, "+0.50 -1.50 x 110", "keeps-sign"),
        (LENS, "+0.50 +1.50 x 160", "axis-from-180"),
        (LENS, "+2.00 -1.50 x 020", "other-form"),
        (PAST, "+1.25 -2.25 x 210", "past-180"),
        (PAST, "+1.25 -2.25 x 060", "axis-from-180"),
        (PAST, ["+1.25", "-2.25", "210"], "past-180"),
        (PAST, ["-3.25", "-2.25", "030"], "subtracts-cylinder"),
    ],
)
def test_each_wrong_step_of_transposition_is_named(lens: Prescription, given: object, made: str):
    answer = mark(transposing(lens), given)
    assert (answer.state, slips(answer), answer.is_guess) == (State.WRONG, (made,), False)


@pytest.mark.parametrize(
    ("lens", "given"),
    [
        (LENS, "+0.50 +1.50 x 110"),
        (LENS, ["+0.50", "+1.50", "110"]),
        (LENS, "+0,50/+1,50x110°"),
        (PAST, "+1.25 -2.25 x 030"),
        (PAST, "+1.25DS -2.25DC axis 30"),
    ],
)
def test_the_other_form_is_right_however_it_is_written(lens: Prescription, given: object):
    assert mark(transposing(lens), given).state is State.RIGHT


@pytest.mark.parametrize("given", ["0.50 1.50 x 110", "0.50 +1.50 x 110", ["+0.50", "1.50", "110"]])
def test_the_other_form_without_a_sign_is_faulty(given: object):
    assert mark(transposing(LENS), given).state is State.FAULTY


def test_the_given_line_is_not_right_and_said_to_be_the_same_lens():
    answer = mark(transposing(LENS), "+2.00 -1.50 x 020")
    assert answer.state is State.WRONG
    assert any(words.startswith("This is the same lens, in the other form.") for words in answer.words)


def test_two_slips_at_once_are_a_guess():
    answer = mark(transposing(LENS), "+2.00 +1.50 x 020")
    assert (slips(answer), answer.is_guess) == (("keeps-sphere", "keeps-axis"), True)
    assert answer.words[2] == "Look at two steps: the sphere, and the axis."
    past = mark(transposing(PAST), "+1.25 +2.25 x 210")
    assert (slips(past), past.is_guess) == (("keeps-sign", "past-180"), True)


def test_only_an_axis_above_90_can_go_past_180():
    names = {lens: [one.slips[0].name for one in transposing(lens).mistakes] for lens in (LENS, PAST)}
    assert "past-180" not in names[LENS]
    assert "past-180" in names[PAST]
    assert len(names[PAST]) == len(TRANSPOSE.slips) == 7


@pytest.mark.parametrize(
    ("given", "state", "made"),
    [
        ("+1.25", State.RIGHT, ()),
        ("+1.25 D", State.RIGHT, ()),
        ("1.25", State.FAULTY, ()),
        ("+0.50", State.WRONG, ("whole-cylinder",)),
        ("+2.00", State.WRONG, ("sphere-alone",)),
        ("-1.25", State.WRONG, ()),
    ],
)
def test_the_spherical_equivalent(given: str, state: State, made: tuple[str, ...]):
    answer = mark(FixedEquivalent(LENS).make(0), given)
    assert (answer.state, slips(answer)) == (state, made)


def test_an_eighth_may_be_cut_off_or_rounded():
    asked = FixedEquivalent(Prescription(sphere_d=-2, cylinder_d=-0.75, axis_deg=20)).make(0)
    assert asked.right == -2.375
    for text in ("-2.375", "-2.37", "-2.38", "-2,375", "-2,37 D"):
        assert mark(asked, text).state is State.RIGHT, text
    for text in ("-2.36", "-2.39", "-2.35"):
        assert mark(asked, text).state is State.WRONG, text
    # One decimal fits as far as it goes.
    assert mark(asked, "-2.4").state is State.NOT_UNDERSTOOD


@pytest.mark.parametrize("maker", MAKERS, ids=lambda maker: maker.name)
def test_cases_are_lenses_of_the_trade_with_nothing_that_coincides(maker: Transpose | SphericalEquivalent):
    seen = set()
    for seed in SEEDS:
        asked = maker.make(seed)
        lens = lens_of(asked)
        sphere, cylinder, axis = lens.sphere_d, lens.cylinder_d, lens.axis_deg
        assert [term.value for term in asked.given] == [sphere, cylinder, axis][: len(asked.given)]
        assert sphere % 0.25 == cylinder % 0.25 == axis % 1 == 0
        assert 0.25 <= abs(sphere) <= 6.0
        assert 0.5 <= abs(cylinder) <= 3.0
        assert axis % 45
        assert sphere + cylinder
        # Without signs the right answer has one reading among them all.
        assert len({abs(sphere), abs(sphere + cylinder), abs(sphere + cylinder / 2), 0.0}) == 4
        for working in asked.solution.workings:
            assert_comes_out(working)
        seen.add(lens)
    assert len(seen) > 590
    assert {lens.cylinder_d > 0 for lens in seen} == {True, False}
    assert {lens.axis_deg > 90 for lens in seen} == {True, False}


def test_every_wrong_value_is_named_and_every_right_one_right_in_boxes_too():
    for seed in SEEDS:
        asked = TRANSPOSE.make(seed)
        assert asked.right == lens_of(asked).transposed()
        boxes = str(asked.right).replace("x ", "").split(" ")
        assert mark(asked, boxes).state is State.RIGHT, boxes
        for mistake in asked.mistakes:
            boxes = str(mistake.value).replace("x ", "").split(" ")
            answer = mark(asked, boxes)
            assert (answer.state, answer.slips) == (State.WRONG, mistake.slips), boxes


def test_the_form_asked_for_is_the_one_the_lens_is_not_given_in():
    for seed in SEEDS:
        asked = TRANSPOSE.make(seed)
        form = asked.kind.form
        assert f"with a {form} cylinder" in asked.prompt[1]
        assert f"with a {'minus' if form == 'plus' else 'plus'} cylinder" in asked.prompt[0]
        assert asked.right == asked.right.in_form(form)
        assert [working.value for working in asked.solution.workings] == [
            asked.right.sphere_d,
            asked.right.cylinder_d,
            asked.right.axis_deg,
        ]
        assert asked.solution.words[-1] == f"Written out: {asked.right}."


def test_a_maker_that_asks_for_a_form_names_the_other_one():
    for maker in makers.MAKERS.values():
        kind = maker.make(0).kind
        if isinstance(kind, PrescriptionAnswer) and kind.form != "either":
            assert OTHER_FORM in maker.slips, maker.name


class FixedUpright(Fixed, TransposeUpright):
    """Transposition of a lens at 90 or 180 that is settled."""


@pytest.mark.parametrize(
    ("given", "state", "words"),
    [
        ("plano +2.00 x 180", State.RIGHT, "plano +2.00 x 180"),
        ("0.00 +2.00 x 180", State.RIGHT, "plano +2.00 x 180"),
        ("plano +2.00 x 000", State.RIGHT, "axis 000 is read as 180, which is how this axis is written"),
        ("plano +2.00 x 090", State.WRONG, "You left the axis as it was"),
        ("+2.00 +2.00 x 180", State.WRONG, "You left the sphere as it was"),
        ("+4.00 +2.00 x 180", State.WRONG, "You took the cylinder off the sphere"),
    ],
)
def test_powers_that_cancel_at_90_are_plano_at_180(given: str, state: State, words: str):
    lens = Prescription(sphere_d=2.0, cylinder_d=-2.0, axis_deg=90)
    answer = mark(FixedUpright(lens).make(0), given)
    assert answer.state is state
    assert words in " ".join(answer.words)


def test_an_axis_of_180_can_go_past_it_and_one_of_90_cannot():
    for axis, named in ((180, ("past-180",)), (90, ())):
        question = FixedUpright(Prescription(sphere_d=2.0, cylinder_d=-1.5, axis_deg=axis)).make(0)
        assert slips(mark(question, f"+0.50 +1.50 x {axis + 90}")) == named


def test_upright_lenses_have_either_axis_and_some_are_plano_across():
    lenses = [lens_of(TransposeUpright().make(seed)) for seed in range(200)]
    assert {lens.axis_deg for lens in lenses} == {90.0, 180.0}
    assert all(lens.sphere_d and lens.cylinder_d for lens in lenses)
    assert 40 < sum(lens.transposed().sphere_d == 0.0 for lens in lenses) < 100
