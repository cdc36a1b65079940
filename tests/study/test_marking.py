"""Marking: every state in its own words, the slip named on a match and on nothing else."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stand_in_makers import EVERY_KIND, Drift, FirstLetter, LettersInOrder, Needle, OuterLetters, Shares

from lablib.study.answer import Understood
from lablib.study.maker import Maker
from lablib.study.marking import State, is_repeated, mark, open_hints
from lablib.study.number import NumberAnswer
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Question, Slip, Solution

ONE = Slip(name="one", step="the first step", words="You left the first step out.")
TWO = Slip(name="two", step="the second step", words="You turned the second step over.")
LEFT = Slip(name="left", step="the side", words="You took the left one.")
QUESTION = Question(
    maker="by-hand",
    seed=1,
    prompt=("How long is it?",),
    given=(),
    kind=NumberAnswer(unit="mm", tolerance=0.1, digits=1),
    right=4.0,
    mistakes=(Mistake(slips=(ONE,), value=8.0), Mistake(slips=(TWO,), value=2.0)),
    guesses=(Mistake(slips=(ONE, TWO), value=16.0),),
    solution=Solution(words=("Measure it.",)),
)
SIGNED = replace(
    QUESTION,
    kind=NumberAnswer(unit="D", tolerance=0.1, digits=2, signed=True),
    mistakes=(Mistake(slips=(ONE,), value=8.0), Mistake(slips=(TWO,), value=-8.0)),
)
UNUSUAL = (
    "It is not one of the usual slips. Go through your steps again, or take a hint. The worked "
    "solution ends the question."
)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=30),
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=10,
)
LIKELY = st.text(alphabet="0123456789.,+-− mDdegrs", max_size=10) | st.lists(st.sampled_from("abcde"))


def test_nothing_given_is_not_answered():
    marked = mark(QUESTION, None)
    assert marked.state is State.NOT_ANSWERED
    assert marked.words == ("There is nothing to mark yet: write, pick or move something first.",)
    assert mark(QUESTION, "  ").state is State.NOT_ANSWERED


def test_what_cannot_be_read_is_not_marked_and_says_how_to_write_it():
    marked = mark(QUESTION, "four")
    assert marked.state is State.NOT_UNDERSTOOD
    assert marked.words == ("Not marked: 'four' is not one number: write one number, as in 2.2 mm.",)
    assert (marked.value, marked.slips, marked.given) == (None, (), "four")


def test_right():
    marked = mark(QUESTION, "0,4 cm")
    assert marked.state is State.RIGHT
    assert marked.words == ("Right: 4.0 mm.", "Note: cm was converted to mm.")
    assert marked.value == pytest.approx(4.0)
    assert marked.given == "0,4 cm"


def test_a_slip_is_named_with_the_step_to_look_at():
    marked = mark(QUESTION, "7.96")
    assert marked.state is State.WRONG
    assert marked.slips == (ONE,)
    assert not marked.is_guess
    assert marked.words == (
        "Your answer: 7.96 mm. It is not right.",
        "You left the first step out. The step to look at: the first step.",
    )


def test_two_slips_at_once_are_a_guess():
    marked = mark(QUESTION, "16")
    assert marked.slips == (ONE, TWO)
    assert marked.is_guess
    assert marked.words == (
        "Your answer: 16.0 mm. It is not right.",
        "A guess: this comes out when two things go wrong at once. You left the first step out. You turned "
        "the second step over.",
        "Look at two steps: the first step, and the second step.",
    )


def test_a_guess_is_made_only_when_no_single_slip_matches():
    question = replace(QUESTION, guesses=(Mistake(slips=(ONE, TWO), value=8.0),))
    assert mark(question, "8").slips == (ONE,)
    assert not mark(question, "8").is_guess


def test_one_guess_is_enough():
    doubled = (*QUESTION.guesses, Mistake(slips=(TWO, LEFT), value=16.0))
    assert mark(replace(QUESTION, guesses=doubled), "16").slips == (ONE, TWO)


def test_a_value_that_fits_nothing_is_said_to_fit_nothing():
    marked = mark(QUESTION, "5.0")
    assert marked.state is State.WRONG
    assert (marked.slips, marked.is_guess) == ((), False)
    assert marked.words == (
        "Your answer: 5.0 mm. It is not right.",
        UNUSUAL,
    )


def test_a_right_value_without_its_sign_is_not_right():
    marked = mark(SIGNED, "4")
    assert marked.state is State.FAULTY
    assert marked.value == 4.0
    assert marked.words == (
        "Your answer: 4.00 D, with no sign. The value can be right, the writing is not: a sign is missing, "
        "+ or -.",
    )
    assert mark(SIGNED, "+4").state is State.RIGHT
    assert mark(SIGNED, "-4").state is State.WRONG


def test_a_wrong_value_without_its_sign_has_both_said():
    marked = mark(SIGNED, "5")
    assert marked.value is None
    assert marked.words == (
        "Your answer: 5.00 D, with no sign. It is not right.",
        UNUSUAL,
        "Besides, a sign is missing, + or -.",
    )


def test_a_slip_is_named_with_its_sign_missing_where_only_one_can_be_meant():
    question = replace(SIGNED, mistakes=SIGNED.mistakes[:1])
    marked = mark(question, "8")
    assert (marked.slips, marked.is_guess) == ((ONE,), False)


def test_slips_between_which_the_missing_sign_decides_are_only_a_guess():
    marked = mark(SIGNED, "8")
    assert marked.slips == (ONE, TWO)
    assert marked.is_guess
    assert marked.words == (
        "Your answer: 8.00 D, with no sign. It is not right.",
        "A guess: as it is written, it can come from any one of these.",
        "You left the first step out. The step to look at: the first step.",
        "You turned the second step over. The step to look at: the second step.",
        "Besides, a sign is missing, + or -.",
    )


def test_an_option_that_is_a_sentence_gets_no_second_full_stop():
    options = (
        Option(key="a", words="It turns."),
        Option(key="b", words="Does it?"),
        Option(key="c", words="no"),
    )
    question = replace(QUESTION, kind=ChoiceAnswer(options=options), right="a", mistakes=(), guesses=())
    assert mark(question, "a").words == ("Right: It turns.",)
    assert mark(question, "b").words[0] == "Your answer: Does it? It is not right."
    assert mark(question, "c").words[0] == "Your answer: no. It is not right."


def test_every_mistake_in_an_order_is_named():
    question = LettersInOrder().make(3)
    backwards = list(reversed(question.right))
    marked = mark(question, backwards)
    assert [slip.name for slip in marked.slips] == ["start-late", "end-early"]
    assert not marked.is_guess
    assert len(marked.words) == 3


def test_every_mistake_among_several_picks_is_named():
    maker = OuterLetters()
    question = maker.make(5)
    first, second, _, _ = question.prompt[0].removeprefix("The card says ").rstrip(".").split()
    assert mark(question, sorted(question.right)).state is State.RIGHT
    assert [slip.name for slip in mark(question, [first, second]).slips] == ["inner-picked", "last-left-out"]


def test_the_other_kinds_are_marked_by_what_they_give():
    choice, needle = FirstLetter().make(2), Needle().make(2)
    assert mark(choice, choice.right).state is State.RIGHT
    assert {slip.name for wrong in set("abcd") - {choice.right} for slip in mark(choice, wrong).slips} == {
        "second",
        "third",
        "last",
    }
    assert mark(needle, needle.right + 3.0 - 360.0 * (needle.right > 350.0)).state is State.RIGHT
    assert mark(needle, (needle.right + 180.0) % 360.0).slips[0].name == "not-turned"


class _OpenKind:
    """A kind whose every answer can mean two things, one of them right."""

    name = "open"

    def is_blank(self, given: object) -> bool:
        return False

    def read(self, given: object) -> Understood:
        return Understood(meanings=("wrong", "right"), words="either", notes=("it was open",))

    def matches(self, value: object, other: object) -> bool:
        return value == other

    def written(self, value: object) -> str:
        return str(value)


def test_an_answer_is_right_when_one_of_its_meanings_is():
    question = replace(QUESTION, kind=_OpenKind(), right="right")
    marked = mark(question, "?")
    assert (marked.state, marked.value) == (State.RIGHT, "right")
    assert marked.words == ("Right: either.", "Note: it was open.")


@pytest.mark.parametrize("maker", EVERY_KIND, ids=lambda maker: maker.name)
@given(answer=JSON | LIKELY, seed=st.integers(0, 20))
def test_nothing_that_can_be_given_makes_marking_fail(maker: Maker, answer: object, seed: int):
    question = maker.make(seed)
    marked = mark(question, answer)
    assert isinstance(marked.state, State)
    assert marked.words
    assert all(text.endswith((".", "?")) for text in marked.words)
    if marked.state in (State.RIGHT, State.FAULTY):
        assert question.kind.matches(marked.value, question.right)
        assert not marked.slips
    if not marked.state.is_answer:
        assert not marked.slips
        assert marked.value is None


def test_marking_twice_says_the_same():
    question = Shares().make(4)
    assert mark(question, "12") == mark(question, "12")


def test_which_states_are_answers():
    assert {state.value for state in State if state.is_answer} == {"right", "faulty", "wrong"}
    # Kept in records: these names must never change.
    assert [state.value for state in State] == [
        "not-answered",
        "not-understood",
        "right",
        "faulty",
        "wrong",
        "hint-opened",
        "solution-shown",
    ]


@pytest.mark.parametrize(
    ("tries", "repeated"),
    [
        ([], False),
        ([("a",)], False),
        ([("a",), ("a",)], True),
        ([("a",), (), ("a",)], True),
        ([("a",), (), (), ("a",)], False),
        ([("a",), ("a",), (), ()], False),
        ([("a",), ("a",), ("b",)], True),
        ([("b",), ("b",), ("a",)], False),
        ([("a", "b"), ("b", "a")], True),
    ],
)
def test_a_slip_is_repeated_in_two_of_the_last_three_tries(tries: list, repeated: bool):
    assert is_repeated("a", tries) is repeated


@pytest.mark.parametrize(
    ("count", "tries", "open_now"),
    [
        (3, [], 1),
        (3, [True], 0),
        (3, [False], 2),
        (3, [False] * 5, 2),
        (3, [False, True], 0),
        (3, [True, True, False], 1),
        (2, [False, False], 1),
        (1, [False], 0),
        (0, [], 0),
    ],
)
def test_hints_fade_after_success_and_the_last_is_never_open_by_itself(
    count: int, tries: list, open_now: int
):
    assert open_hints(count, tries=tries) == open_now


def test_a_sign_turned_is_named_when_it_is_written():
    question = Drift().make(6)
    marked = mark(question, question.kind.written(-question.right))
    assert [slip.name for slip in marked.slips] == ["sign-turned"]


def test_an_answer_that_is_too_coarse_is_asked_for_again():
    question = replace(QUESTION, right=4.4, mistakes=(), guesses=())
    marked = mark(question, "4")
    assert marked.state is State.NOT_UNDERSTOOD
    assert marked.words == (
        "Your answer: 4.0 mm. It fits as far as it goes: give it as exactly as is asked.",
    )
    assert mark(question, "6").state is State.WRONG


def test_a_right_answer_that_is_not_exact_is_told_what_comes_out():
    question = replace(QUESTION, right=4.04, mistakes=(), guesses=())
    assert mark(question, "4.1").words == ("Right: 4.1 mm.", "Worked out: 4.0 mm.")
    assert mark(question, "4.0").words == ("Right: 4.0 mm.",)
