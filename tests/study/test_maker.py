"""Makers: one question for a seed, wrong values apart from the right one, pairs of slips as guesses."""

from itertools import combinations

import pytest
from stand_in_makers import EVERY_KIND, LETTERS, Blurred, Drift, Needle, OuterLetters, Shares

from lablib.errors import LabError
from lablib.study.draws import Draws
from lablib.study.maker import Maker
from lablib.study.question import Drawing

every_kind = pytest.mark.parametrize("maker", EVERY_KIND, ids=lambda maker: maker.name)


@every_kind
def test_a_seed_gives_one_question(maker: Maker):
    assert maker.make(12) == maker.make(12)
    assert maker.make(12) == type(maker)().make(12)


@every_kind
def test_right_and_wrong_values_are_apart(maker: Maker):
    for seed in range(200):
        question = maker.make(seed)
        values = [question.right, *(mistake.value for mistake in question.mistakes)]
        assert all(question.kind.apart(one, other) for one, other in combinations(values, 2))


def test_a_question_holds_what_the_maker_says_of_its_case():
    question = Shares().make(3)
    length, loss = (term.value for term in question.given)
    assert (question.maker, question.seed) == ("shares", 3)
    assert question.right == (length - loss) / 2.0
    assert {mistake.slips[0].name: mistake.value for mistake in question.mistakes} == {
        "not-halved": length - loss,
        "in-three": (length - loss) / 3.0,
        "loss-added": (length + loss) / 2.0,
    }
    assert question.solution.workings[-1].value == question.right
    assert len(question.hints) == 3
    assert question.drawing is None


def test_pairs_of_slips_are_guesses_unless_they_exclude_each_other():
    question = Shares().make(3)
    length, loss = (term.value for term in question.given)
    # The two slips of the halving are one step done wrong in two ways: nobody makes both.
    assert {tuple(slip.name for slip in guess.slips): guess.value for guess in question.guesses} == {
        ("not-halved", "loss-added"): length + loss,
        ("in-three", "loss-added"): (length + loss) / 3.0,
    }


def test_a_pair_that_gives_a_known_value_is_no_guess():
    # Doubled and turned twice is doubled: that value has a name already.
    names = [tuple(slip.name for slip in guess.slips) for guess in Drift().make(9).guesses]
    assert names == []


def test_a_case_that_cannot_be_told_from_its_mistakes_is_drawn_again():
    # Drift of 0 has all its wrong values at 0, and the first draw of some seeds gives it.
    maker = Drift()
    first = {seed: maker.draw(Draws(seed)) for seed in range(500)}
    seeds = [seed for seed, case in first.items() if not case]
    assert seeds
    assert all(abs(maker.make(seed).right) > 0.12 for seed in seeds)


def test_a_maker_whose_cases_never_tell_is_refused():
    with pytest.raises(LabError) as caught:
        Blurred().make(0)
    assert str(caught.value) == (
        "blurred: none of 400 cases could be told from its own mistakes: widen the draws"
    )


def test_a_seed_that_is_none_is_refused():
    with pytest.raises(LabError, match="seed -1 is not a whole number of 0 or more: give one"):
        Shares().make(-1)


class FewerSlips(OuterLetters):
    """Leaves a slip out where it cannot be made."""

    name = "fewer-slips"

    def slips_in(self, case: tuple[str, ...]) -> tuple:
        return self.slips[:1]


def test_a_slip_that_cannot_be_made_in_a_case_is_left_out():
    assert [mistake.slips[0].name for mistake in FewerSlips().make(1).mistakes] == ["inner-picked"]


def test_a_drawing_is_data_that_cannot_be_changed():
    drawing = Needle().make(1).drawing
    assert drawing == Drawing(name="needle", values=dict(drawing.values))
    with pytest.raises(TypeError):
        drawing.values["at_deg"] = 0.0


def test_a_drawing_does_not_follow_what_it_was_made_from():
    values = {"at_deg": 5.0}
    drawing = Drawing(name="needle", values=values)
    values["at_deg"] = 6.0
    assert drawing.values["at_deg"] == 5.0


def test_what_is_left_unsaid_is_empty():
    question = Drift().make(1)
    assert (question.given, question.drawing) == ((), None)
    assert LETTERS[0].words == "letter A"
