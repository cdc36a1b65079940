"""Answers that are picked: one, several, all in order; what counts as the same and what as a mistake."""

from itertools import permutations

import pytest

from lablib.errors import LabError
from lablib.study.answer import NotUnderstood
from lablib.study.picked import ChoiceAnswer, Earlier, Option, OrderAnswer, SeveralAnswer, WrongPick

OPTIONS = tuple(Option(key=key, words=f"letter {key.upper()}") for key in "abc")
CHOICE = ChoiceAnswer(options=OPTIONS)
SEVERAL = SeveralAnswer(options=OPTIONS)
ORDER = OrderAnswer(options=OPTIONS)
ODD = [None, 1, 1.5, True, {"a": 1}, ["a", 1], [["a"]], [None], "z", ["z"], ["a", "a"], "x" * 500]


@pytest.mark.parametrize("kind", [CHOICE, SEVERAL, ORDER])
def test_nothing_picked_is_blank(kind: object):
    assert all(kind.is_blank(blank) for blank in (None, "", []))
    assert not any(kind.is_blank(given) for given in ("a", ["a"], 0, False, {}))


def test_a_choice_is_read_by_its_key():
    understood = CHOICE.read("b")
    assert (understood.meanings, understood.words, understood.faults) == (("b",), "letter B", ())
    assert CHOICE.written("c") == "letter C"
    assert CHOICE.matches("a", "a")
    assert not CHOICE.matches("a", "b")
    assert CHOICE.apart("a", "b")
    assert not CHOICE.apart("a", "a")


def test_several_are_read_in_any_order():
    assert SEVERAL.read(["c", "a"]).meanings == (frozenset("ac"),)
    assert SEVERAL.read(["c", "a"]).words == "letter A; letter C"


def test_a_mistake_among_several_is_one_pick_too_many_or_too_few():
    right = frozenset("ab")
    missing, surplus = WrongPick(key="b", picked=False), WrongPick(key="c", picked=True)
    assert SEVERAL.matches(frozenset("ab"), right)
    assert SEVERAL.matches(frozenset("a"), missing)
    assert SEVERAL.matches(frozenset("ac"), missing)
    assert SEVERAL.matches(frozenset("ac"), surplus)
    assert not SEVERAL.matches(right, missing)
    assert not SEVERAL.matches(right, surplus)
    assert SEVERAL.apart(right, missing)
    assert SEVERAL.apart(surplus, right)
    assert SEVERAL.apart(missing, surplus)
    assert not SEVERAL.apart(right, WrongPick(key="b", picked=True))
    assert not SEVERAL.apart(surplus, WrongPick(key="c", picked=True))
    assert SEVERAL.apart(right, frozenset("a"))


def test_an_order_holds_every_option_once():
    understood = ORDER.read(["b", "a", "c"])
    assert understood.meanings == (("b", "a", "c"),)
    assert understood.words == "1 letter B; 2 letter A; 3 letter C"


def test_a_mistake_in_an_order_is_one_thing_before_another():
    right, mistake = ("a", "b", "c"), Earlier(first="c", second="a")
    for order in permutations("abc"):
        assert ORDER.matches(order, mistake) == (order.index("c") < order.index("a"))
        assert ORDER.matches(order, right) == (order == right)
    assert ORDER.apart(right, mistake)
    assert not ORDER.apart(right, Earlier(first="a", second="c"))
    assert ORDER.apart(mistake, Earlier(first="b", second="a"))
    assert not ORDER.apart(mistake, Earlier(first="c", second="a"))
    assert ORDER.apart(right, ("b", "a", "c"))


@pytest.mark.parametrize("given", ODD)
def test_what_is_no_choice_is_refused(given: object):
    with pytest.raises(NotUnderstood, match="is not one of the options: pick one of them") as caught:
        CHOICE.read(given)
    assert len(str(caught.value)) < 120


@pytest.mark.parametrize("given", [*ODD, "a"])
def test_what_is_no_row_of_options_is_refused(given: object):
    with pytest.raises(NotUnderstood, match="is not some of the options, each once: pick among them"):
        SEVERAL.read(given)


@pytest.mark.parametrize("given", [*ODD, "abc", ["a", "b"], ["a", "b", "c", "a"], ["a", "b", "z"]])
def test_what_is_not_all_options_is_refused(given: object):
    with pytest.raises(NotUnderstood, match="is not every option once: put all of them in order"):
        ORDER.read(given)


@pytest.mark.parametrize("kind", [ChoiceAnswer, SeveralAnswer, OrderAnswer])
@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ("", "options : give two or more, each with a key of its own"),
        ("a", "options a: give two or more, each with a key of its own"),
        ("aba", "options a, b, a: give two or more, each with a key of its own"),
    ],
)
def test_options_that_are_none_are_refused(kind: type, keys: str, words: str):
    with pytest.raises(LabError) as caught:
        kind(options=tuple(Option(key=key, words=key) for key in keys))
    assert str(caught.value) == words
