"""Questions on lenses from an addition: the curriculum's example, each slip by its value, and their cases."""

import re

import pytest
from settled import settled, slips

from lablib.optics.prescription import Prescription
from lablib.questions.prescription import IntermediateLens, NearLens
from lablib.study.marking import State, mark

# Common practice, with the example of the trade's own teaching: +1.00 -0.50 x 090 add 2.25.
ORDER = Prescription(sphere_d=1, cylinder_d=-0.5, axis_deg=90, addition_d=2.25)
MINUS = Prescription(sphere_d=-1.5, addition_d=2.0)
HALF = Prescription(sphere_d=1, cylinder_d=-0.5, axis_deg=90, addition_d=2.0)
SEEDS = range(400)


@pytest.mark.parametrize(
    ("order", "given", "state", "made"),
    [
        (ORDER, "+3.25 -0.50 x 090", State.RIGHT, ()),
        (ORDER, "+2.75 +0.50 x 180", State.RIGHT, ()),
        (ORDER, "3.25 -0.50 x 090", State.FAULTY, ()),
        (ORDER, "+1.00 -0.50 x 090", State.WRONG, ("addition-left-out",)),
        (ORDER, "+3.25 +1.75 x 090", State.WRONG, ("addition-to-the-cylinder",)),
        (ORDER, "+2.12 -0.50 x 090", State.WRONG, ("addition-halved",)),
        (ORDER, "+2.13 -0.50 x 090", State.WRONG, ("addition-halved",)),
        (ORDER, "+2.25 -0.50 x 090", State.WRONG, ("addition-as-the-sphere",)),
        (ORDER, "+3.00 -0.50 x 090", State.WRONG, ()),
        (MINUS, "+0.50 DS", State.RIGHT, ()),
        (MINUS, "-3.50 DS", State.WRONG, ("sizes-added",)),
        (MINUS, "-1.50", State.WRONG, ("addition-left-out",)),
        (MINUS, "+2.00 DS", State.WRONG, ("addition-as-the-sphere",)),
    ],
)
def test_a_lens_for_near(order: Prescription, given: str, state: State, made: tuple):
    answer = mark(settled(NearLens(), order), given)
    assert (answer.state, slips(answer), answer.is_guess) == (state, made, False)


def test_half_an_addition_on_sphere_and_cylinder_is_a_guess_of_two():
    answer = mark(settled(NearLens(), ORDER), "+2.12 +1.75 x 090")
    assert (slips(answer), answer.is_guess) == (("addition-to-the-cylinder", "addition-halved"), True)


@pytest.mark.parametrize(
    ("given", "state", "made"),
    [
        ("+2.00 -0.50 x 090", State.RIGHT, ()),
        ("+1.00 -0.50 x 090", State.WRONG, ("addition-left-out",)),
        ("+2.00 +0.50 x 090", State.WRONG, ("addition-to-the-cylinder",)),
        ("+3.00 -0.50 x 090", State.WRONG, ("whole-addition",)),
        ("+1.50 -0.50 x 090", State.WRONG, ("halves-the-near-lens",)),
    ],
)
def test_a_lens_for_the_middle_distance(given: str, state: State, made: tuple):
    answer = mark(settled(IntermediateLens(), HALF), given)
    assert (answer.state, slips(answer)) == (state, made)


@pytest.mark.parametrize("maker", [NearLens(), IntermediateLens()], ids=lambda maker: maker.name)
def test_cases_are_orders_of_the_trade(maker: NearLens | IntermediateLens):
    spheres = 0
    for seed in SEEDS:
        asked = maker.make(seed)
        order = Prescription.parse(re.search(r"reads (.*?)\. A", asked.prompt[0])[1])
        assert 1.0 <= order.addition_d <= 3.0
        assert asked.right.addition_d == 0.0
        assert asked.right.sphere_d % 0.25 == 0.0
        assert (asked.right.cylinder_d, asked.right.axis_deg) == (order.cylinder_d, order.axis_deg)
        assert asked.solution.workings[-1].value == asked.right.sphere_d
        names = {mistake.slips[0].name for mistake in asked.mistakes}
        assert ("addition-to-the-cylinder" in names) == bool(order.cylinder_d)
        if maker.name == "near-lens":
            assert ("sizes-added" in names) == (order.sphere_d < 0.0)
        spheres += not order.cylinder_d
    assert 0.15 < spheres / len(SEEDS) < 0.35
