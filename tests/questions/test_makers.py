"""What every question maker must hold to, over 500 seeds each: marking, slips, workings, sameness."""

import json
import math
import os
import re
import subprocess
import sys
from collections import Counter
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest
from evaluation import assert_comes_out
from hypothesis import given, settings
from hypothesis import strategies as st
from made_questions import SEEDS, by_maker, kind_name, only, questions, said, slips_made
from question_as_data import digest, numbers_of, plain_data
from simulated_learners import (
    HABITS,
    as_given,
    guess,
    rounded_as_asked,
    step_asked,
    with_mistake,
    worked_by_hand,
    written_by_habit,
)

from lablib.errors import LabError
from lablib.questions.makers import MAKERS, maker
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question

PINNED = Path(__file__).with_name("pinned_digests.json")
PIN = "LABLIB_PIN_QUESTIONS"
SYMBOL = re.compile(r"[A-Za-z_][A-Za-z_0-9']*")
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=30),
    lambda inner: st.lists(inner, max_size=6) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=12,
)
WRITTEN = st.text(alphabet="0123456789.,+-−–/ xX@°mDNcdeps", max_size=20)


@by_maker
def test_the_right_answer_is_right(name: str):
    for question in questions(name):
        marked = mark(question, as_given(question.kind, question.right))
        assert marked.state is State.RIGHT, (said(question), marked.words)
        assert marked.slips == ()


@only("number")
def test_the_right_number_is_right_however_it_is_written(name: str):
    for question in questions(name):
        for habit in HABITS:
            if not habit.rounds_on_the_way:
                text = written_by_habit(question, question.right, habit)
                assert mark(question, text).state is State.RIGHT, (said(question), text, habit.words)
        text = f" {question.kind.written(question.right)} "
        assert mark(question, text).state is State.RIGHT, said(question)


@only("number")
def test_a_prompt_says_how_exact_and_an_answer_so_exact_is_right(name: str):
    for question in questions(name):
        step = float(step_asked(question))
        assert question.kind.tolerance >= step / 2.0 - 1e-9, (said(question), step)
        rounded = rounded_as_asked(question, question.right)
        assert question.kind.matches(rounded, question.right), (said(question), rounded, question.right)
        # By hand the last figure may come out one lower or higher.
        by_hand = rounded_as_asked(question, worked_by_hand(question.solution))
        assert question.kind.matches(by_hand, question.right), (said(question), by_hand, question.right)


@only("number")
def test_the_tolerance_is_the_edge_between_right_and_not_right(name: str):
    for question in questions(name):
        rounded = round(question.right, question.kind.digits)
        for side, last in ((-1.0, min), (1.0, max)):
            edge = last(question.right, rounded)
            inside = _signed(question, edge + side * question.kind.tolerance * 0.999)
            outside = _signed(question, edge + side * (question.kind.tolerance * 1.001 + 1e-7))
            assert mark(question, inside).state is State.RIGHT, (said(question), inside)
            assert mark(question, outside).state is State.WRONG, (said(question), outside)


@only("number")
def test_a_right_number_without_the_sign_it_needs_is_never_right(name: str):
    for question in questions(name):
        if question.kind.signed and question.right:
            text = question.kind.written(abs(question.right)).removeprefix("+")
            assert mark(question, text).state is State.FAULTY, (said(question), text)


def _signed(question: Question, value: float) -> str:
    return f"{value:+.9f}" if question.kind.signed else f"{value:.9f}"


@by_maker
def test_each_mistake_is_marked_wrong_and_named(name: str):
    for question in questions(name):
        for mistake in question.mistakes:
            answer = with_mistake(question, mistake)
            marked = mark(question, answer)
            assert marked.state is State.WRONG, (said(question), answer, marked.words)
            assert mistake.slips[0] in marked.slips, (said(question), answer, marked.words)
            assert not marked.is_guess
            if kind_name(name) not in ("order", "several"):
                assert marked.slips == mistake.slips, (said(question), answer)


@by_maker
def test_no_wrong_value_can_be_taken_for_the_right_one_or_another(name: str):
    for question in questions(name):
        values = [question.right, *(mistake.value for mistake in question.mistakes)]
        for one, other in combinations(values, 2):
            assert question.kind.apart(one, other), (said(question), one, other)


@by_maker
def test_two_slips_at_once_are_reported_as_a_guess(name: str):
    for question in questions(name):
        for pair in question.guesses:
            marked = mark(question, as_given(question.kind, pair.value))
            assert (marked.state, marked.is_guess) == (State.WRONG, True), (said(question), pair)
            assert len(marked.slips) == 2
            assert len({slip.step for slip in marked.slips}) == 2
            # Where two pairs give one value, the first of them is offered.
            same = [one for one in question.guesses if question.kind.matches(marked.value, one.value)]
            assert marked.slips in [one.slips for one in same]


@by_maker
def test_every_slip_occurs(name: str):
    found = Counter(
        slip.name for one in questions(name) for mistake in one.mistakes for slip in mistake.slips
    )
    declared = {slip.name for slip in MAKERS[name].slips}
    assert set(found) == declared, declared ^ set(found)


@by_maker
def test_a_value_that_fits_no_slip_is_said_to_fit_none(name: str):
    for question in questions(name)[:100]:
        stray = _stray(question)
        if stray is not None:
            marked = mark(question, stray)
            assert (marked.state, marked.slips) == (State.WRONG, ()), (said(question), stray)
            assert marked.words[1].startswith("It is not one of the usual slips."), marked.words


def _stray(question: Question) -> object:
    """Return an answer that is neither right nor any slip's, or None where every wrong answer has a slip."""
    meant = [
        question.right,
        *(one.value for one in (*question.mistakes, *question.guesses)),
    ]
    for number in range(200):
        answer = guess(question, Draws(number))
        if question.kind.is_blank(answer):
            continue
        values = question.kind.read(answer).meanings
        if not any(question.kind.matches(value, known) for value in values for known in meant):
            return answer
    return None


@only("number")
def test_a_number_leaves_room_for_values_that_fit_no_slip(name: str):
    assert all(_stray(question) is not None for question in questions(name)[:100])


@only("choice")
def test_every_wrong_option_belongs_to_a_slip(name: str):
    for question in questions(name):
        wrong = [mistake.value for mistake in question.mistakes]
        keys = [option.key for option in question.kind.options]
        assert sorted([question.right, *wrong]) == sorted(keys), said(question)


@only("several")
def test_among_several_something_is_right_and_something_wrong(name: str):
    for question in questions(name):
        keys = {option.key for option in question.kind.options}
        # With one alone, leaving it out would be no answer at all.
        assert 2 <= len(question.right) < len(keys), said(question)
        assert question.right < keys


@by_maker
def test_every_working_comes_out_as_printed(name: str):
    for question in questions(name):
        for working in question.solution.workings:
            _comes_out(working)


@cache
def _comes_out(working: object) -> None:
    assert_comes_out(working)


@by_maker
def test_what_is_given_is_printed_in_full_and_explained(name: str):
    for question in questions(name):
        for term in question.given:
            assert math.isclose(float(term.printed), term.value, abs_tol=1e-12), (said(question), term)
            assert term.meaning, (said(question), term)
            assert SYMBOL.fullmatch(term.symbol), (said(question), term)
        symbols = [term.symbol for term in question.given]
        assert len(set(symbols)) == len(symbols), (said(question), symbols)


@by_maker
def test_numbers_in_a_solution_are_given_worked_out_before_or_explained(name: str):
    for question in questions(name):
        known = {term.symbol: term.printed for term in question.given}
        for working in question.solution.workings:
            for term in working.terms:
                if term.symbol in known:
                    assert float(term.printed) == float(known[term.symbol]), (
                        said(question),
                        working.what,
                        term,
                    )
                else:
                    assert term.meaning, (said(question), working.what, term)
            known[working.symbol] = working.as_term().printed


@only("number")
def test_the_last_working_is_the_answer(name: str):
    for question in questions(name):
        last = question.solution.workings[-1]
        assert last.value == pytest.approx(question.right, abs=1e-12), said(question)
        assert last.unit == question.kind.unit, said(question)
        assert last.digits >= question.kind.digits, said(question)


@only("number")
def test_the_answer_worked_by_hand_from_printed_numbers_is_right(name: str):
    for question in questions(name):
        by_hand = worked_by_hand(question.solution)
        assert question.kind.matches(by_hand, question.right), (said(question), by_hand, question.right)
        rounded = round(by_hand, question.kind.digits)
        assert question.kind.matches(rounded, question.right), (said(question), rounded, question.right)


@by_maker
def test_a_seed_gives_the_same_question_again(name: str):
    for question in questions(name):
        again = MAKERS[name].make(question.seed)
        assert again == question, said(question)


@cache
def in_another_interpreter() -> dict[str, str]:
    """Return the digests of all questions as another interpreter makes them, with texts hashed otherwise."""
    here = Path(__file__).parent
    environment = os.environ | {
        "PYTHONHASHSEED": "4711",
        "PYTHONPATH": os.pathsep.join([str(here), str(here.parent)]),
    }
    done = subprocess.run(
        [sys.executable, str(here / "question_as_data.py"), *MAKERS],
        capture_output=True,
        text=True,
        check=False,
        env=environment,
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


@by_maker
def test_another_interpreter_makes_the_same_questions(name: str):
    assert in_another_interpreter()[name] == digest(questions(name))


@by_maker
def test_other_seeds_give_other_questions(name: str):
    seen = {json.dumps(plain_data([one.prompt, one.given, one.kind, one.right])) for one in questions(name)}
    assert len(seen) >= (50 if kind_name(name) == "number" else 20), len(seen)


@by_maker
def test_cases_are_seldom_drawn_again(name: str, monkeypatch: pytest.MonkeyPatch):
    one, count = MAKERS[name], Counter()
    draw = one.draw

    def counted(draws: Draws) -> object:
        count["draws"] += 1
        return draw(draws)

    monkeypatch.setattr(one, "draw", counted)
    for seed in SEEDS:
        one.make(seed)
    assert count["draws"] / len(SEEDS) <= 4.0


@by_maker
def test_the_numbers_of_a_seed_stay_what_they_are(name: str):
    """A kept answer is marked again whenever its lesson is opened, against the question of its seed.

    If the numbers of a seed change, old answers are marked against numbers nobody saw. So a maker whose
    numbers must change gets a new name, and old answers keep to the old one. Only while a maker is not in
    anybody's hands yet may its digest be renewed: LABLIB_PIN_QUESTIONS=1 pytest tests/questions -k stay_what
    """
    pinned = json.loads(PINNED.read_text(encoding="utf-8")) if PINNED.exists() else {}
    found = digest(numbers_of(question) for question in questions(name))
    if os.environ.get(PIN):
        PINNED.write_text(
            json.dumps(pinned | {name: found}, indent=2, sort_keys=True) + "\n", encoding="utf-8"
        )
        return
    assert name in pinned, f"{name} is not pinned yet: run {PIN}=1 pytest tests/questions -k stay_what"
    assert found == pinned[name], (
        f"{name}: the numbers of its seeds are no longer those that answers were kept for: give the maker a "
        f"new name; or, if nobody has its questions yet, run {PIN}=1 pytest tests/questions -k stay_what"
    )


def test_every_maker_whose_numbers_are_pinned_is_still_there():
    pinned = json.loads(PINNED.read_text(encoding="utf-8"))
    assert set(pinned) <= set(MAKERS), "answers to these questions are kept in records: keep the maker"


@by_maker
@settings(max_examples=60)
@given(answer=JSON | WRITTEN, seed=st.integers(0, 30), data=st.data())
def test_nothing_that_can_be_given_makes_marking_fail(
    name: str, answer: object, seed: int, data: st.DataObject
):
    question = questions(name)[seed]
    keys = [option.key for option in getattr(question.kind, "options", ())]
    if keys and data.draw(st.booleans()):
        answer = data.draw(st.lists(st.sampled_from([*keys, "other"]), max_size=9) | st.sampled_from(keys))
    marked = mark(question, answer)
    assert isinstance(marked.state, State)
    assert all(marked.words)
    if marked.state in (State.RIGHT, State.FAULTY):
        assert question.kind.matches(marked.value, question.right)


@by_maker
def test_a_question_names_only_slips_its_maker_declares(name: str):
    declared = {slip.name for slip in MAKERS[name].slips}
    for slip in slips_made(name):
        assert slip.name in declared


@by_maker
def test_a_drawing_is_plain_data(name: str):
    for question in questions(name):
        if question.drawing:
            json.dumps(plain_data(question.drawing), allow_nan=False)


def test_a_name_that_is_no_maker_is_refused():
    with pytest.raises(LabError, match=r"question maker 'nobody' is not known: give one of "):
        maker("nobody")
