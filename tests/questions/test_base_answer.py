"""Base directions as answers: the eye decides what degrees mean, and what was understood is said in words."""

import pytest
from bare_question import JSON, huge_answers, marked
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.prism import resultant
from lablib.questions.answers.base import BaseAnswer
from lablib.study.answer import NotUnderstood
from lablib.study.marking import State

RIGHT, LEFT = BaseAnswer(eye="right"), BaseAnswer(eye=Eye.LEFT)
LIKE = 'write one direction and no amount, like "base in", "BI" or, in degrees, "37"'


@pytest.mark.parametrize(
    ("text", "right", "left", "words"),
    [
        ("in", 0, 180, "base in"),
        ("Base In", 0, 180, "base in"),
        ("BI", 0, 180, "base in"),
        ("nasal", 0, 180, "base in"),
        ("out", 180, 0, "base out"),
        ("bo", 180, 0, "base out"),
        ("UP", 90, 90, "base up"),
        ("BD", 270, 270, "base down"),
    ],
)
def test_a_word_is_the_same_base_for_both_eyes(text: str, right: float, left: float, words: str):
    for kind, degrees in ((RIGHT, right), (LEFT, left)):
        found = kind.read(text)
        assert found.meanings == (pytest.approx(degrees, abs=1e-9),)
        assert (found.words, found.faults, found.notes) == (words, (), ())


@pytest.mark.parametrize(
    ("text", "value", "right", "left"),
    [
        ("0", 0, "base at 0 degrees, which is in for the right eye", "out for the left eye"),
        ("360", 0, "base at 360 degrees, which is in for the right eye", "out for the left eye"),
        ("180°", 180, "base at 180 degrees, which is out for the right eye", "in for the left eye"),
        ("90", 90, "base at 90 degrees, which is up for the right eye", "up for the left eye"),
        ("@ 270", 270, "base at 270 degrees, which is down for the right eye", "down for the left eye"),
        ("37", 37, "base at 37 degrees, which is in and up for the right eye", "out and up for the left eye"),
        (
            "base at 143,5 degrees",
            143.5,
            "base at 143.5 degrees, which is out and up for the right eye",
            "in and up for the left eye",
        ),
        (
            "217",
            217,
            "base at 217 degrees, which is out and down for the right eye",
            "in and down for the left eye",
        ),
    ],
)
def test_degrees_are_said_in_words_for_the_eye(text: str, value: float, right: str, left: str):
    found = RIGHT.read(text), LEFT.read(text)
    assert [one.meanings for one in found] == [(pytest.approx(value, abs=1e-9),)] * 2
    assert found[0].words == right
    assert found[1].words.endswith(f"which is {left}")


def test_degrees_and_words_are_one_answer_and_the_wrong_eye_is_wrong():
    inwards = {"right": "0", "left": "180"}
    for eye, kind in (("right", RIGHT), ("left", LEFT)):
        value = resultant(eye=eye, in_prism_d=1.0, up_prism_d=0.0).base
        for text in ("in", "BI", inwards[eye]):
            assert marked(text, kind, value).state is State.RIGHT, (eye, text)
        for text in ("out", "up", "down", inwards["left" if eye == "right" else "right"]):
            assert marked(text, kind, value).state is State.WRONG, (eye, text)


def test_what_is_written_is_read_back_and_right():
    for kind in (RIGHT, LEFT, BaseAnswer(eye="left", tolerance_deg=0.05, digits=1)):
        for tenths in range(3600):
            value = tenths / 10
            if kind.digits or not tenths % 10:
                assert marked(kind.written(value), kind, value).state is State.RIGHT, (kind, value)
    assert [RIGHT.written(value) for value in (0.0, 90.0, 180.0, 270.0, 36.87)] == [
        "base in",
        "base up",
        "base out",
        "base down",
        "base at 37 degrees",
    ]
    assert LEFT.written(0.0) == "base out"
    # Rounded up it stands at 360 degrees, which is 0.
    assert marked(RIGHT.written(359.7), RIGHT, 359.7).state is State.RIGHT


def test_tolerances_are_edges_the_short_way_round():
    for value, other, is_near, is_apart in (
        (359.5, 0.5, True, False),
        (359.5, 0.6, False, False),
        (359.0, 1.0, False, False),
        (359.0, 1.1, False, True),
        (37.0, 38.0, True, False),
        (0.0, 180.0, False, True),
        (360.0, 0.0, True, False),
    ):
        assert (RIGHT.matches(value, other), RIGHT.apart(value, other)) == (is_near, is_apart), (value, other)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("in and up", f"base direction 'in and up' is more than a direction: {LIKE}"),
        ("2.4 down", f"base direction '2.4 down' is more than a direction: {LIKE}"),
        ("base", f"base direction 'base' names no direction: {LIKE}"),
        (
            "left",
            f"base direction 'left' holds 'left', which belongs to no prism and no base direction: {LIKE}",
        ),
        (
            "400",
            "base direction 400 in '400' is not a direction: give degrees from 0 to 360 without a sign",
        ),
        (37.0, f"this is not text: {LIKE}"),
        (["in"], f"this is not text: {LIKE}"),
        (False, f"this is not text: {LIKE}"),
    ],
)
def test_what_is_not_understood_and_why(text: object, words: str):
    with pytest.raises(NotUnderstood) as caught:
        RIGHT.read(text)
    assert str(caught.value) == words
    mark = marked(text, RIGHT, 0.0)
    assert (mark.state, mark.words) == (State.NOT_UNDERSTOOD, (f"Not marked: {words}.",))


def test_blank():
    assert all(marked(text, RIGHT, 0.0).state is State.NOT_ANSWERED for text in (None, "", " \n"))
    assert not any(RIGHT.is_blank(text) for text in ("in", "0", 0, [], False))


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"eye": "both"}, 'eye \'both\' is not an eye: give "right" or "left"'),
        (
            {"eye": "right", "tolerance_deg": 0.4},
            "tolerance 0.4 is out of range: give from 0.5 to 45 degrees",
        ),
        (
            {"eye": "right", "tolerance_deg": 0.04, "digits": 1},
            "tolerance 0.04 is out of range: give from 0.05 to 45 degrees",
        ),
        (
            {"eye": "right", "tolerance_deg": 60},
            "tolerance 60 is out of range: give from 0.5 to 45 degrees",
        ),
    ],
)
def test_words_for_a_kind_that_cannot_be(values: dict, words: str):
    with pytest.raises(LabError) as caught:
        BaseAnswer(**values)
    assert str(caught.value) == words


PIECES = ("in", "out", "up", "base", "BI", "37", "400", "@", "°", "-", " ", "and", "²", "\ud800", "nan")


@settings(derandomize=True, deadline=None, max_examples=400, database=None)
@given(JSON | st.lists(st.sampled_from(PIECES), max_size=5).map(" ".join))
def test_nothing_that_can_be_given_raises_anything_else(answer: object):
    for kind in (RIGHT, LEFT):
        mark = marked(answer, kind, 37.0)
        assert all(mark.words)
        if mark.state.is_answer:
            (value,) = kind.read(answer).meanings
            assert 0.0 <= value < 360.0
            assert mark.value == value
            assert kind.matches(*kind.read(kind.written(value)).meanings, value)


def test_huge_answers_are_not_understood():
    for answer in huge_answers():
        mark = marked(answer, RIGHT, 0.0)
        assert mark.state is State.NOT_UNDERSTOOD
        assert len(mark.words[0]) < 300
