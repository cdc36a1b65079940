"""How long questions take: a thousand made and marked, spread over all makers; and one of each maker.

Run by `pytest tests/benchmarks/test_question_speed.py --benchmark-only`; the goals are medians on two cores:
2 s for the thousand, 3 ms for one question of the slowest maker.
"""

import itertools
from collections.abc import Iterator

import pytest
from questions.simulated_learners import as_given, with_mistake

from lablib.questions.makers import MAKERS
from lablib.study.maker import Maker
from lablib.study.marking import State, mark
from lablib.study.question import Question

THOUSAND = 1000


def made_and_marked(maker: Maker, seed: int) -> Question:
    """Make a question and mark two answers to it: one with a slip, then the right one."""
    question = maker.make(seed)
    assert mark(question, with_mistake(question, question.mistakes[0])).slips
    assert mark(question, as_given(question.kind, question.right)).state is State.RIGHT
    return question


@pytest.fixture
def seeds() -> Iterator[int]:
    """Return seeds without end: nothing that was kept from an earlier round may help."""
    return itertools.count()


def test_a_thousand_questions_goal_2_s(benchmark, seeds: Iterator[int]) -> None:
    makers = tuple(MAKERS.values())

    def thousand() -> int:
        rounds = itertools.islice(zip(itertools.cycle(makers), seeds, strict=False), THOUSAND)
        return len([made_and_marked(maker, seed) for maker, seed in rounds])

    assert benchmark.pedantic(thousand, rounds=5, warmup_rounds=1) == THOUSAND


@pytest.mark.parametrize("name", MAKERS)
def test_one_question_goal_3_ms(benchmark, name: str, seeds: Iterator[int]) -> None:
    maker = MAKERS[name]
    question = benchmark.pedantic(lambda: made_and_marked(maker, next(seeds)), rounds=200, warmup_rounds=5)
    benchmark.extra_info["kind"] = question.kind.name
    assert question.maker == name
