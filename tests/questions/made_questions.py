"""The questions of 500 seeds of every maker, made once for all tests that look at them."""

from functools import cache

import pytest

from lablib.questions.makers import MAKERS
from lablib.study.question import Question, Slip

SEEDS = range(500)
by_maker = pytest.mark.parametrize("name", MAKERS)


@cache
def questions(name: str) -> tuple[Question, ...]:
    """Return the questions of 500 seeds."""
    return tuple(MAKERS[name].make(seed) for seed in SEEDS)


def answered(name: str, case: object, *slips: str) -> object:
    """Return what a maker gives for a case, with the slips made."""
    return MAKERS[name].answer(case, frozenset(slips))


@cache
def kind_name(name: str) -> str:
    """Return the kind of answer a maker asks for."""
    (found,) = {question.kind.name for question in questions(name)}
    return found


def only(kind: str) -> pytest.MarkDecorator:
    """Return a parametrisation over the makers of one kind of answer."""
    names = [name for name in MAKERS if MAKERS[name].make(0).kind.name == kind]
    return pytest.mark.parametrize("name", names)


def said(question: Question) -> str:
    """Return which question it is, for a failure."""
    return f"{question.maker}, seed {question.seed}"


def slips_made(name: str) -> set[Slip]:
    """Return every slip that some of the questions name."""
    return {slip for question in questions(name) for mistake in question.mistakes for slip in mistake.slips}
