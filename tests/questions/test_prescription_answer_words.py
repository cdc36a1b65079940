"""What is said of prescriptions as answers: missing signs, what is not understood and why, and which box."""

from contextlib import suppress

import pytest
from bare_question import JSON, huge_answers, marked
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.prescription import Prescription
from lablib.questions.answers.prescription import PrescriptionAnswer
from lablib.questions.answers.prescription_line import Past180
from lablib.study.answer import NotUnderstood, Understood
from lablib.study.marking import State

PLUS = PrescriptionAnswer(form="plus")
EITHER = PrescriptionAnswer(form="either")
NEAR = PrescriptionAnswer(form="minus", addition=True)
RIGHT = Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=110)
LIKE = 'write one line like "+2.00 -1.50 x 090"'
EXAMPLES = 'write it like "+2.00 -1.50 x 090" or "-3.25 DS"'
NO_SIGN = "has no sign: a power is written with + or -"
NO_POINT = (
    "has no decimal point, so it may be dioptres or hundredths: write it with two decimals, as in -2.25"
)
NO_AXIS = "has no axis: it cannot be made without one; write its axis too, as in x 090"
NO_CYLINDER = (
    "stands without a cylinder: only a cylinder has an axis; write the cylinder too, or leave the axis out"
)
NO_AXIS_AT_ALL = "is not a cylinder axis: give an axis above 0 and up to 180 degrees"
NO_WHOLE_AXIS = "is not a cylinder axis: give whole degrees above 0 and up to 180, without a sign or a point"
POWER_BOX = "write a power with its sign, as in -2.25, or plano"
CYLINDER_BOX = "write a power with its sign, as in -1.50, or nothing where there is none"
AXIS_BOX = "write whole degrees, as in 090"


@pytest.mark.parametrize(
    ("text", "meanings", "words", "faults"),
    [
        (
            "2.00 -1.50 x 20",
            ("+2.00 -1.50 x 020", "-2.00 -1.50 x 020"),
            "2.00 -1.50 x 020",
            (f"sphere 2.00 {NO_SIGN}",),
        ),
        (
            "+2 1.5x20",
            ("+2.00 +1.50 x 020", "+2.00 -1.50 x 020"),
            "+2.00 1.50 x 020",
            (f"cylinder 1.5 {NO_SIGN}",),
        ),
        (
            "2,00 1,50 20°",
            ("+2.00 +1.50 x 020", "+2.00 -1.50 x 020", "-2.00 +1.50 x 020", "-2.00 -1.50 x 020"),
            "2.00 1.50 x 020",
            (f"sphere 2,00 {NO_SIGN}", f"cylinder 1,50 {NO_SIGN}"),
        ),
        (
            "plano 1.50 x 20",
            ("plano +1.50 x 020", "plano -1.50 x 020"),
            "plano 1.50 x 020",
            (f"cylinder 1.50 {NO_SIGN}",),
        ),
        ("2.00 DS", ("+2.00 DS", "-2.00 DS"), "2.00 DS", (f"sphere 2.00 {NO_SIGN}",)),
        (
            "2.00 DS add 1.50",
            ("+2.00 DS add +1.50", "-2.00 DS add +1.50"),
            "2.00 DS add +1.50",
            (f"sphere 2.00 {NO_SIGN}",),
        ),
        # Forty dioptres and more are no lens, so the other signs are all that is left.
        (
            "30.00 15.00 x 20",
            ("+30.00 -15.00 x 020", "-30.00 +15.00 x 020"),
            "30.00 15.00 x 020",
            (f"sphere 30.00 {NO_SIGN}", f"cylinder 15.00 {NO_SIGN}"),
        ),
    ],
)
def test_what_a_line_without_signs_can_mean(text: str, meanings: tuple, words: str, faults: tuple):
    found = EITHER.read(text)
    assert tuple(map(str, found.meanings)) == meanings
    assert (found.words, found.faults) == (words, faults)


def test_a_missing_sign_is_named_with_the_mark():
    right, wrong = (marked(f"{sphere} +1.50 x 110", PLUS, RIGHT) for sphere in ("0.50", "0.75"))
    assert (right.state, right.value) == (State.FAULTY, RIGHT)
    assert right.words == (
        f"Your answer: 0.50 +1.50 x 110. The value can be right, the writing is not: sphere 0.50 {NO_SIGN}.",
    )
    assert (wrong.state, wrong.value) == (State.WRONG, None)
    assert f"Besides, sphere 0.75 {NO_SIGN}." in wrong.words


def test_notes_of_the_reader_are_passed_on():
    assert PLUS.read("+0.50 +1.50 x 000").notes == (
        "axis 000 is read as 180, which is how this axis is written",
    )
    right = Prescription(sphere_d=0.5, cylinder_d=1.5, axis_deg=180)
    assert marked("+0.50 +1.50 x 0", PLUS, right).words == (
        "Right: +0.50 +1.50 x 180.",
        "Note: axis 0 is read as 180, which is how this axis is written.",
    )
    assert PLUS.read("+0.50 + 1.50 x 90").notes == (
        "cylinder: the sign before 1.50 stands apart and is read as its sign",
    )
    # A note must not show a sign that nobody wrote.
    assert PLUS.read("2.20 -1.30 x 20").notes[:2] == (
        "sphere 2.20 is not in quarters or eighths and is taken as written",
        "cylinder -1.30 is not in quarters or eighths and is taken as written",
    )


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ("+0.50 +1.50", f"cylinder +1.50 {NO_AXIS}"),
        (["+0.50", "+1.50", ""], f"cylinder +1.50 {NO_AXIS}"),
        (["+0.50", "+1.50", None], f"cylinder +1.50 {NO_AXIS}"),
        (
            "+0.50 x 110",
            f"axis 110 {NO_CYLINDER}",
        ),
        (
            ["+0.50", "", "110"],
            f"axis 110 {NO_CYLINDER}",
        ),
        (
            "+50 +1.50 x 110",
            f"sphere +50 {NO_POINT}",
        ),
        (
            "0.50 +150",
            f"sphere 0.50 {NO_SIGN}; cylinder +150 {NO_POINT}; cylinder +150 {NO_AXIS}",
        ),
        ("+0.50 x 290", f"axis 290 {NO_AXIS_AT_ALL}"),
        ("50 x 290", f"axis 290 {NO_AXIS_AT_ALL}"),
        (
            "+50 +1.50 x 290",
            f"sphere +50 {NO_POINT}",
        ),
        (
            "+0.50 +25.00 x 290",
            f"axis 290 {NO_AXIS_AT_ALL}",
        ),
        ("+0.50 +1.50 x 361", f"axis 361 {NO_AXIS_AT_ALL}"),
        (
            "+0.50 +1.50 x -20",
            f"axis -20 in '+0.50 +1.50 x -20' {NO_WHOLE_AXIS}",
        ),
        (
            "+0.50 @ 210 +1.50 @ 30",
            "prescription '+0.50 @ 210 +1.50 @ 30' gives a power in each of two meridians, or two cylinders, "
            f"and is not read: work out sphere, cylinder and axis and {EXAMPLES}",
        ),
        ("+50.00 DS", "sphere 50 is out of range: give from -40 to 40 D"),
        ("50.00 DS", "sphere -50 is out of range: give from -40 to 40 D"),
        (
            "about +2",
            f"prescription 'about +2' holds 'a', which belongs to no prescription: {EXAMPLES}",
        ),
    ],
)
def test_what_is_not_understood_and_why(given: object, words: str):
    with pytest.raises(NotUnderstood) as caught:
        PLUS.read(given)
    assert str(caught.value) == words
    answer = marked(given, PLUS, RIGHT)
    assert (answer.state, answer.value, answer.slips) == (State.NOT_UNDERSTOOD, None, ())
    assert answer.words[0].startswith(f"Not marked: {words}")


@pytest.mark.parametrize(
    ("boxes", "words"),
    [
        (["", "+1.50", "110"], f"the sphere box is empty: {POWER_BOX}"),
        ([None, "+1.50", "110"], f"the sphere box is empty: {POWER_BOX}"),
        ([0.5, "+1.50", "110"], f"sphere box: this is not text: {POWER_BOX}"),
        (["+0.50", ["+1.50"], "110"], f"cylinder box: this is not text: {CYLINDER_BOX}"),
        (["+0.50", "+1.50", 110], f"axis box: this is not text: {AXIS_BOX}"),
        (["abc", "+1.50", "110"], f"sphere box: 'abc' is not one sphere: {POWER_BOX}"),
        (["DS", "+1.50", "110"], f"sphere box: 'DS' is not one sphere: {POWER_BOX}"),
        (["x 110", "+1.50", "110"], f"sphere box: 'x 110' is not one sphere: {POWER_BOX}"),
        (["+0.50 +1.50 x 110", "", ""], f"sphere box: '+0.50 +1.50 x 110' is not one sphere: {POWER_BOX}"),
        (["+0.50", "DS", ""], f"cylinder box: 'DS' is not one cylinder: {CYLINDER_BOX}"),
        (["+0.50", "plano", ""], f"cylinder box: 'plano' is not one cylinder: {CYLINDER_BOX}"),
        (["+0.50", "+1.50 x 110", ""], f"cylinder box: '+1.50 x 110' is not one cylinder: {CYLINDER_BOX}"),
        (["+0.50", "+1.50", "°"], f"axis box: '°' is not one axis: {AXIS_BOX}"),
        (["+0.50", "+1.50", "11o"], f"axis box: '11o' is not one axis: {AXIS_BOX}"),
        (["+0.50", "+1.50", "110 add 2"], f"axis box: '110 add 2' is not one axis: {AXIS_BOX}"),
        (
            ["+0.50", "+1.50", "11.5"],
            f"axis box: axis 11.5 in '11.5' {NO_WHOLE_AXIS}",
        ),
        (
            ["+0.50", "+1.50", "400"],
            f"axis box: axis 400 {NO_AXIS_AT_ALL}",
        ),
        (
            ["+2.", "+1.50", "110"],
            "sphere box: sphere +2. in '+2.' is not a power: give dioptres with up to two figures before the "
            "point and up to four after it, as in -2.25",
        ),
        (["+0.50", "+25.00", "110"], "cylinder box: cylinder 25 is out of range: give from -20 to 20 D"),
        (
            ["+30.00", "+15.00", "110"],
            "sphere and cylinder together 45 is out of range: give from -40 to 40 D",
        ),
        (["+0.50"], f"a list of 1 is not a text for each box: give sphere, cylinder, axis, or {LIKE}"),
        (
            ["+0.50", "+1.50", "110", "2.00"],
            f"a list of 4 is not a text for each box: give sphere, cylinder, axis, or {LIKE}",
        ),
    ],
)
def test_the_box_that_is_wrong_is_named(boxes: list, words: str):
    with pytest.raises(NotUnderstood) as caught:
        PLUS.read(boxes)
    assert str(caught.value) == words


@pytest.mark.parametrize("given", [True, 0, 2.5, -3, {}, {"sphere": "+2.00"}, float("nan"), b"+2.00"])
def test_what_is_no_text_is_not_understood(given: object):
    with pytest.raises(NotUnderstood) as caught:
        PLUS.read(given)
    assert str(caught.value) == f"this is not text: {LIKE}"


@pytest.mark.parametrize("given", [None, "", "  ", "\n\t", [], ["", " ", None], [""]])
def test_blank(given: object):
    assert PLUS.is_blank(given)
    assert marked(given, PLUS, RIGHT).state is State.NOT_ANSWERED


@pytest.mark.parametrize("given", ["0", "plano", ["", "", "0"], [0], 0, False, {}])
def test_not_blank(given: object):
    assert not PLUS.is_blank(given)


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"form": "crossed"}, "form 'crossed' is not known: give one of minus, plus, either"),
        (
            {"form": "plus", "tolerance_d": 0.004},
            "tolerance 0.004 is out of range: give from 0.005 to 1 D",
        ),
        ({"form": "plus", "tolerance_d": "0.1"}, "tolerance '0.1' is not a number: give a number in D"),
        (
            {"form": "plus", "axis_tolerance_deg": 0.0},
            "axis tolerance 0 is out of range: give from 0.5 to 45 degrees",
        ),
        (
            {"form": "plus", "axis_tolerance_deg": 90.0},
            "axis tolerance 90 is out of range: give from 0.5 to 45 degrees",
        ),
    ],
)
def test_words_for_a_kind_that_cannot_be(values: dict, words: str):
    with pytest.raises(LabError) as caught:
        PrescriptionAnswer(**values)
    assert str(caught.value) == words


def test_words_for_a_sphere_past_180():
    with pytest.raises(LabError) as caught:
        Past180(lens=Prescription(sphere_d=2))
    assert str(caught.value) == "+2.00 DS has no axis that can go past 180: give a lens with a cylinder"


PIECES = (
    *("+", "-", "+2.00", "-1.50", "2.00", "225", "0", "x", "@", "axis", "20", "210", "400", "000", "°"),
    *("DS", "DC", "D", "sph", "cyl", "plano", "add", "/", ",", " ", "\u2212", "²", "\n", "\ud800"),
)
LINES = st.lists(st.sampled_from(PIECES), max_size=9).map(" ".join)
ANSWERS = JSON | LINES | st.lists(LINES | st.sampled_from(PIECES) | st.none(), min_size=2, max_size=5)


@settings(derandomize=True, deadline=None, max_examples=800, database=None)
@given(ANSWERS)
def test_nothing_that_can_be_given_raises_anything_else(given: object):
    for kind in (PLUS, EITHER, NEAR):
        answer = marked(given, kind, RIGHT)
        assert all(answer.words)
        found = None
        with suppress(NotUnderstood):
            found = kind.read(given)
        if found is not None:
            _hold_together(kind, found)


def _hold_together(kind: PrescriptionAnswer, found: Understood) -> None:
    assert found.words
    assert found.meanings
    # Several meanings are a fault of the writing, one meaning is none.
    assert len(found.meanings) == 1 or found.faults
    for value in found.meanings:
        assert kind.matches(value, value)
        assert not kind.apart(value, value)
        (again,) = kind.read(kind.written(value)).meanings
        assert kind.matches(again, value), (value, again)


def test_huge_answers_are_not_understood():
    for answer in huge_answers():
        for kind in (PLUS, NEAR):
            mark = marked(answer, kind, RIGHT)
            assert mark.state is State.NOT_UNDERSTOOD
            assert len(mark.words[0]) < 300
