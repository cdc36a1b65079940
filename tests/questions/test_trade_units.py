"""Dioptres and prism dioptres behind a number: every way of writing them, at every question that asks."""

import pytest
from made_questions import questions
from simulated_learners import as_given

from lablib.questions.makers import MAKERS
from lablib.study.answer import NotUnderstood
from lablib.study.marking import State, mark

WRITTEN = {
    "D": ("D", "d", "Dpt", "dpt.", "dioptre", "dioptres", "diopters"),
    "prism dioptres": ("prism dioptres", "prism  diopter", "prism D", "prism", "\u0394", "\u2206", "cm/m"),
}
UNIT = {name: getattr(MAKERS[name].make(0).kind, "unit", None) for name in MAKERS}
ASKED = [
    name for name, unit in UNIT.items() if unit in WRITTEN and MAKERS[name].make(0).kind.name == "number"
]


def test_both_units_are_asked_for():
    assert {UNIT[name] for name in ASKED} == set(WRITTEN)


@pytest.mark.parametrize("name", ASKED)
def test_the_unit_is_understood_however_it_is_written(name: str):
    question = questions(name)[0]
    number = as_given(question.kind, question.right).removesuffix(UNIT[name]).strip()
    for unit in WRITTEN[UNIT[name]]:
        marked = mark(question, f"{number} {unit}")
        assert marked.state is State.RIGHT, (unit, marked.words)
        assert not any(words.startswith("Note:") for words in marked.words)


@pytest.mark.parametrize("name", ASKED)
def test_another_unit_of_the_trade_does_not_fit(name: str):
    (other,) = set(WRITTEN) - {UNIT[name]}
    for unit in (other, "mm", "degrees"):
        with pytest.raises(NotUnderstood, match=f"{unit} does not fit, the answer is in {UNIT[name]}"):
            questions(name)[0].kind.read(f"+2.25 {unit}")
