"""Prisms as answers: one part or two, in words or in degrees, and what a minus or a missing base is worth."""

import random

import pytest
from bare_question import JSON, huge_answers, marked
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at, resultant
from lablib.questions.answers.prism import PrismAnswer
from lablib.study.answer import NotUnderstood
from lablib.study.marking import State

RIGHT = PrismAnswer(eye="right", tolerance_prism_d=0.05)
LEFT = PrismAnswer(eye=Eye.LEFT, tolerance_prism_d=0.05)
LIKE = 'write it like "2.50 base up", "2.50 BU, 1.00 BI" or "2.50 @ 37"'
ROUNDS = 2000


@pytest.mark.parametrize(
    ("text", "value", "words"),
    [
        ("2.4 down", (0.0, -2.4), "2.40 base down"),
        ("2.50 BU", (0.0, 2.5), "2.50 base up"),
        ("2.5 prism dioptres base out", (-2.5, 0.0), "2.50 base out"),
        ("5.50 base down, 0.87 in", (0.87, -5.5), "5.50 base down with 0.87 base in"),
        ("0.876 in", (0.876, 0.0), "0.876 base in"),
        ("0.8765 in", (0.8765, 0.0), "0.8765 base in"),
        ("2 up, 0 in", (0.0, 2.0), "2.00 base up"),
        ("0 up", (0.0, 0.0), "no prism"),
        ("0", (0.0, 0.0), "no prism"),
        ("no prism", (0.0, 0.0), "no prism"),
    ],
)
def test_words_are_one_prism_for_both_eyes(text: str, value: tuple[float, float], words: str):
    for kind in (RIGHT, LEFT):
        found = kind.read(text)
        assert found.meanings == (pytest.approx(value, abs=1e-12),)
        assert (found.words, found.faults, found.notes) == (words, (), ())


@pytest.mark.parametrize(
    ("text", "kind", "in_prism_d", "up_prism_d", "words"),
    [
        ("2.5 @ 37", RIGHT, 1.9966, 1.5045, "for the right eye is 2.00 base in with 1.50 base up"),
        ("2.5 @ 37", LEFT, -1.9966, 1.5045, "for the left eye is 2.00 base out with 1.50 base up"),
        ("2.5 @ 217", RIGHT, -1.9966, -1.5045, "for the right eye is 2.00 base out with 1.50 base down"),
        ("2.5 base 180°", LEFT, 2.5, 0.0, "for the left eye is 2.50 base in"),
        ("2.5 @ 360", RIGHT, 2.5, 0.0, "for the right eye is 2.50 base in"),
    ],
)
def test_degrees_are_resolved_for_the_eye_and_said_in_words(
    text: str, kind: PrismAnswer, in_prism_d: float, up_prism_d: float, words: str
):
    found = kind.read(text)
    assert found.meanings == (pytest.approx((in_prism_d, up_prism_d), abs=5e-5),)
    degrees = text.replace("@", "").replace("base", "").replace("°", "").split()[1]
    assert found.words == f"2.50 with its base at {degrees} degrees, which {words}"


def test_two_components_and_their_resultant_are_one_answer():
    # 2 base in and 1.5 base up make 2.5 at 37 degrees for the right eye; read for the left eye it is 143.
    value = (2.0, 1.5)
    for text in ("2 in, 1.5 up", "1.5 BU / 2 BI", "2.50 @ 37"):
        assert marked(text, RIGHT, value).state is State.RIGHT, text
    assert marked("2.50 @ 143", LEFT, value).state is State.RIGHT
    for text in ("3.50 @ 37", "2.50 @ 53", "2.50 @ 143", "2 out, 1.5 up", "2 in", "1.5 up", "0"):
        assert marked(text, RIGHT, value).state is State.WRONG, text


def test_a_cylinder_at_the_bench_gives_what_its_question_expects():
    # Right -4.00 -2.00 x 030, 10 mm below the optical centre.
    value = prism_at(
        Prescription(sphere_d=-4, cylinder_d=-2, axis_deg=30), eye="right", in_mm=0.0, up_mm=-10.0
    )
    assert marked("5.50 base down, 0.87 in", RIGHT, value).state is State.RIGHT
    for text in ("5.50 down", "4.00 down", "5.00 down", "4.50 down, 0.87 in", "5.50 up, 0.87 in"):
        assert marked(text, RIGHT, value).state is State.WRONG, text


def test_a_minus_amount_is_read_as_the_opposite_base_and_is_never_simply_right():
    mark = marked("-2.4 up", RIGHT, (0.0, -2.4))
    assert (mark.state, mark.value) == (State.FAULTY, (0.0, -2.4))
    assert mark.words == (
        "Your answer: 2.40 base down. The value can be right, the writing is not: a minus amount is read as "
        "the opposite base, base up as base down.",
    )
    assert marked("-2.5 @ 217", RIGHT, (2.0, 1.5)).state is State.FAULTY
    assert marked("-2 out with 1.5 up", RIGHT, (2.0, 1.5)).state is State.FAULTY
    assert marked("-2.4 down", RIGHT, (0.0, -2.4)).state is State.WRONG
    assert marked("+2.4 down", RIGHT, (0.0, -2.4)).state is State.RIGHT


def test_what_is_written_is_read_back_and_right():
    draw = random.Random(7)
    narrow = {eye: PrismAnswer(eye=eye, tolerance_prism_d=0.005) for eye in Eye}
    for number in range(ROUNDS):
        eye = (Eye.RIGHT, Eye.LEFT)[number % 2]
        value = tuple(0.0 if draw.random() < 0.2 else draw.choice((-1, 1)) * draw.random() * 12 for _ in "iu")
        text = narrow[eye].written(value)
        assert marked(text, narrow[eye], value).state is State.RIGHT, (text, value)
        one = resultant(eye=eye, in_prism_d=value[0], up_prism_d=value[1])
        in_degrees = f"{one.amount_prism_d:.4f} @ {one.base:.3f}"
        assert marked(in_degrees, narrow[eye], value).state is State.RIGHT, (in_degrees, value)
        other = Eye.LEFT if eye is Eye.RIGHT else Eye.RIGHT
        if abs(value[0]) > 0.01:
            assert marked(in_degrees, narrow[other], value).state is State.WRONG, (in_degrees, value)


def test_tolerances_are_edges_of_each_component():
    for other, is_near, is_apart in (
        ((2.0, 1.5), True, False),
        ((2.05, 1.45), True, False),
        ((2.051, 1.5), False, False),
        ((2.0, 1.4), False, False),
        ((2.0, 1.399), False, True),
    ):
        assert (RIGHT.matches((2.0, 1.5), other), RIGHT.apart((2.0, 1.5), other)) == (is_near, is_apart), (
            other
        )


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2.4", f"prism 2.4 has no base direction: it cannot be made without one; {LIKE}"),
        ("5.50 down and 0.87", f"prism 0.87 has no base direction: it cannot be made without one; {LIKE}"),
        ("in", f"prism 'in' has no amount: {LIKE}"),
        ("2 D in", f"prism '2 D in' has a D that can be dioptres or down: {LIKE}"),
        (
            "2 in 3 out",
            "prism '2 in 3 out' is not one amount in or out with one up or down: put them together first; "
            f"{LIKE}",
        ),
        (2.4, f"this is not text: {LIKE}"),
        (["2.4", "down"], f"this is not text: {LIKE}"),
        (True, f"this is not text: {LIKE}"),
    ],
)
def test_what_is_not_understood_and_why(text: object, words: str):
    with pytest.raises(NotUnderstood) as caught:
        RIGHT.read(text)
    assert str(caught.value) == words
    mark = marked(text, RIGHT, (0.0, 0.0))
    assert (mark.state, mark.words) == (State.NOT_UNDERSTOOD, (f"Not marked: {words}.",))


def test_blank():
    assert all(marked(text, RIGHT, (0.0, 0.0)).state is State.NOT_ANSWERED for text in (None, "", " \n"))
    assert not any(RIGHT.is_blank(text) for text in ("0", 0, [], False))


@pytest.mark.parametrize(
    ("values", "words"),
    [
        (
            {"eye": "both", "tolerance_prism_d": 0.1},
            'eye \'both\' is not an eye: give "right" or "left"',
        ),
        (
            {"eye": "right", "tolerance_prism_d": 0.004},
            "tolerance 0.004 is out of range: give from 0.005 to 5 prism dioptres",
        ),
        (
            {"eye": "right", "tolerance_prism_d": 6.0},
            "tolerance 6 is out of range: give from 0.005 to 5 prism dioptres",
        ),
    ],
)
def test_words_for_a_kind_that_cannot_be(values: dict, words: str):
    with pytest.raises(LabError) as caught:
        PrismAnswer(**values)
    assert str(caught.value) == words


PIECES = (
    *("2", "2.5", "0", "37", "400", "-2", "-", "@", "°", "base", "in", "out", "up", "BD", "Δ", "D", ","),
    *("and", "no prism", " ", "²", "\n", "\ud800", "nan", "1e5"),
)


@settings(derandomize=True, deadline=None, max_examples=500, database=None)
@given(JSON | st.lists(st.sampled_from(PIECES), max_size=8).map(" ".join))
def test_nothing_that_can_be_given_raises_anything_else(answer: object):
    for kind in (RIGHT, LEFT):
        mark = marked(answer, kind, (2.0, 1.5))
        assert all(mark.words)
        if mark.state.is_answer:
            (value,) = kind.read(answer).meanings
            assert mark.value == value
            assert kind.matches(*kind.read(kind.written(value)).meanings, value)


def test_huge_answers_are_not_understood():
    for answer in huge_answers():
        mark = marked(answer, RIGHT, (0.0, 0.0))
        assert mark.state is State.NOT_UNDERSTOOD
        assert len(mark.words[0]) < 300
