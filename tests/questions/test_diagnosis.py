"""Does the diagnosis name what went wrong? Learners made up for the test, with the habits of real ones.

The shares are printed at the end of a run. A made-up learner shows whether marking recognises a slip through
the ways of writing and rounding; how often people make which slip it cannot show.
"""

from collections import Counter
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
from simulated_learners import HABITS, Learner, guess, habits_of

from lablib.questions.makers import MAKERS
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question
from lablib.study.quiz import Quiz
from lablib.study.record import Record

# Other seeds than those of the tests of makers.
FIRST_SEED = 10_000
QUESTIONS = 40
TRIES = 24
TITLE = "diagnosis of learners with one slip each, in all habits of writing"
ROUNDING = "learners without a slip who round every step to the decimals asked for"
GUESSING = "learners who guess"
PICKED = ("choice", "several", "order")
by_maker = pytest.mark.parametrize("name", MAKERS)


@cache
def questions(name: str) -> tuple[Question, ...]:
    """Return what every learner is asked."""
    return tuple(MAKERS[name].make(FIRST_SEED + number) for number in range(QUESTIONS))


def diagnosed(learner: Learner, name: str) -> Counter:
    """Return how many of the answers with the slip were diagnosed in which way."""
    found: Counter = Counter()
    for question in questions(name):
        mistake = learner.slips_on(question)
        if mistake is None:
            continue
        marked = mark(question, learner.answer(question))
        named = {slip.name for slip in marked.slips}
        if learner.slip in named and not marked.is_guess:
            found["named"] += 1
        else:
            found["another" if named else "right" if marked.state is State.RIGHT else "unnamed"] += 1
    return found


@by_maker
def test_the_slip_a_learner_made_is_named(name: str, report_table: Callable[[str, str], None]):
    total: Counter = Counter()
    for slip in MAKERS[name].slips:
        for habit in habits_of(questions(name)[0]):
            total += diagnosed(Learner(slip=slip.name, habit=habit), name)
    share = total["named"] / total.total()
    report_table(
        TITLE,
        f"{name:26} {total.total():5} answers  {share:6.1%} named  {total['another']:3} named another  "
        f"{total['unnamed']:3} unnamed  {total['right']:3} taken for right",
    )
    assert total["right"] == 0
    assert share >= 0.95


@by_maker
def test_a_learner_without_a_slip_is_never_accused(name: str):
    for question in questions(name):
        for habit in habits_of(question):
            marked = mark(question, Learner(slip=None, habit=habit).answer(question))
            assert marked.slips == (), (question.seed, habit.words, marked.words)
            if not habit.rounds_on_the_way:
                assert marked.state is State.RIGHT, (question.seed, habit.words, marked.words)


@pytest.mark.parametrize("name", [name for name in MAKERS if questions(name)[0].kind.name == "number"])
def test_a_learner_who_rounds_on_the_way_is_mostly_right(name: str, report_table: Callable[[str, str], None]):
    learner = Learner(slip=None, habit=next(habit for habit in HABITS if habit.rounds_on_the_way))
    right = sum(mark(one, learner.answer(one)).state is State.RIGHT for one in questions(name))
    report_table(ROUNDING, f"{name:26} {right:3} of {QUESTIONS} right")
    # Somebody who rounds as coarsely as this may lose an answer now and then, not as a rule.
    assert right >= 0.75 * QUESTIONS


@by_maker
def test_a_guessing_learner_is_seldom_said_to_have_made_a_slip(
    name: str, report_table: Callable[[str, str], None]
):
    draws, found = Draws(1), Counter()
    for question in questions(name):
        for _ in range(10):
            marked = mark(question, guess(question, draws))
            named = "pair" if marked.is_guess else "named" if marked.slips else marked.state.value
            found[named] += 1
    kind = questions(name)[0].kind.name
    report_table(
        GUESSING,
        f"{name:26} {kind:12} {found['named'] / found.total():6.1%} named one slip  "
        f"{found['pair'] / found.total():6.1%} two as a guess  {found['right'] / found.total():6.1%} right",
    )
    if kind in PICKED:
        # What is wrong in a pick is seen by itself, and every wrong option of a choice belongs to a slip: how
        # often one is named says nothing. But nothing is put down to two slips at once.
        assert found["pair"] == 0
    else:
        # Slips that lie on one scale of a picture leave less room between them than numbers do. The parts of
        # a lens or a prism, or a direction to a degree, seldom come together by chance.
        assert found["named"] <= {"number": 0.25, "marker": 0.4}.get(kind, 0.05) * found.total()


@by_maker
def test_a_slip_made_half_the_time_is_called_repeated_in_two_of_three_tries(name: str, tmp_path: Path):
    maker = MAKERS[name]
    record = Record(tmp_path / "record.sqlite")
    # Seeds hang on the learner, who is somebody else in every new record.
    record.learner_id = "half-the-time"
    place = Quiz(record, lesson=maker.lesson, makers=[maker]).places[0]
    # The slip that can be made most often, half the time.
    likely = Counter(one.slips[0].name for question in questions(name) for one in question.mistakes)
    learner = Learner(slip=likely.most_common(1)[0][0], often=0.5)
    made: list[bool] = []
    called: list[bool] = []
    for _ in range(TRIES):
        made.append(learner.slips_on(place.question) is not None)
        place.answer(learner.answer(place.question))
        called.append(learner.slip in {slip.name for slip in place.repeated})
        place.new_numbers()
    expected = [made[at] and sum(made[max(0, at - 2) : at + 1]) >= 2 for at in range(TRIES)]
    assert called == expected
    assert any(called)
    # Once alone is no misconception.
    assert any(one and not said for one, said in zip(made, called, strict=True))
