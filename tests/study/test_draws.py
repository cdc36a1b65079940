"""Draws: settled by the seed, on the grid, and fair enough."""

import math
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.study.draws import Draws

SEEDS = st.integers(0, 2**48 - 1)


def test_the_same_seed_gives_the_same_draws_for_ever():
    # The first numbers that random.Random(7).random() gives are promised not to change between versions of
    # Python (documentation of random, Notes on Reproducibility).
    draws = Draws(7)
    assert [draws.whole(1000) for _ in range(3)] == [323, 150, 650]


@given(SEEDS, st.integers(1, 10_000))
def test_a_whole_number_is_below_its_limit(seed: int, below: int):
    assert 0 <= Draws(seed).whole(below) < below


@given(SEEDS, st.integers(-80, 80), st.integers(0, 160), st.sampled_from([0.01, 0.25, 0.5, 1.0, 5.0]))
def test_a_step_lies_on_its_grid(seed: int, low: int, count: int, step: float):
    value = Draws(seed).step(low * step, (low + count) * step, step)
    assert low * step - 1e-9 <= value <= (low + count) * step + 1e-9
    assert value / step == pytest.approx(round(value / step), abs=1e-6)
    assert len(f"{value!r}".partition(".")[2]) <= 6


def test_zero_on_a_grid_has_no_sign():
    # 3 steps of 0.3 are a little less than 0.9 in binary: what is left rounds to minus zero.
    found = [Draws(seed).step(-0.9, 0.0, 0.3) for seed in range(50)]
    assert set(found) == {-0.9, -0.6, -0.3, 0.0}
    assert all(math.copysign(1.0, value) > 0.0 for value in found if not value)


def test_both_ends_are_drawn_and_every_place_about_as_often():
    draws = Draws(1)
    counts = Counter(draws.step(1.0, 3.0, 0.5) for _ in range(5000))
    assert set(counts) == {1.0, 1.5, 2.0, 2.5, 3.0}
    # Binomial with p 0.2: standard deviation 28; five of them.
    assert all(abs(count - 1000) < 142 for count in counts.values())


def test_one_number_alone_can_be_drawn():
    assert Draws(3).step(2.5, 2.5, 0.5) == 2.5


def test_every_order_comes_up():
    orders = Counter(Draws(seed).shuffled("abc") for seed in range(600))
    assert len(orders) == 6
    assert min(orders.values()) > 60


def test_some_are_different_things():
    for seed in range(100):
        found = Draws(seed).some("abcdef", 4)
        assert len(set(found)) == 4
        assert set(found) <= set("abcdef")


def test_one_of_is_one_of_them():
    assert {Draws(seed).one_of(["a", "b", "c"]) for seed in range(60)} == {"a", "b", "c"}


@pytest.mark.parametrize("seed", [-1, 1.0, True, "7", None])
def test_another_seed_is_refused(seed: object):
    with pytest.raises(LabError, match=r"is not a whole number of 0 or more: give one"):
        Draws(seed)


@pytest.mark.parametrize(
    ("low", "high", "step", "words"),
    [
        (0.0, 1.0, 0.3, "0 to 1 is not a whole number of steps of 0.3: change an end"),
        (1.0, 0.0, 0.5, "1 to 0 is not a whole number of steps of 0.5: change an end"),
        (1.0, 0.0, -0.5, "step -0.5 is not above 0: give one that is"),
        (0.0, 1.0, 0.0, "step 0 is not above 0: give one that is"),
        (0.0, 1.0, math.nan, "step nan is not a finite number: give a number"),
        (math.nan, 1.0, 0.5, "low end nan is not a finite number: give a number"),
        (0.0, math.inf, 0.5, "high end inf is not a finite number: give a number"),
    ],
)
def test_a_grid_that_is_none_is_refused(low: float, high: float, step: float, words: str):
    with pytest.raises(LabError) as caught:
        Draws(1).step(low, high, step)
    assert str(caught.value) == words


@pytest.mark.parametrize(
    "draw",
    [
        lambda draws: draws.one_of([]),
        lambda draws: draws.some("ab", 3),
        lambda draws: draws.whole(0),
    ],
)
def test_nothing_cannot_be_drawn(draw: object):
    with pytest.raises(LabError, match="a draw of one out of 0: give at least one thing to draw from"):
        draw(Draws(1))


def test_drawing_goes_on_until_something_fits():
    draws, alone = Draws(4), Draws(4)
    found = draws.until("a six", lambda more: 1 + more.whole(6), lambda thrown: thrown == 6)
    throws = [1 + alone.whole(6)]
    while throws[-1] != 6:
        throws.append(1 + alone.whole(6))
    assert found == 6
    assert len(throws) > 1
    # No draw more than was needed.
    assert draws.whole(1000) == alone.whole(1000)


def test_drawing_ends_where_nothing_ever_fits():
    drawn = []

    def throw(draws: Draws) -> int:
        drawn.append(1 + draws.whole(6))
        return drawn[-1]

    with pytest.raises(LabError) as caught:
        Draws(1).until("a seven", throw, lambda thrown: thrown == 7)
    assert str(caught.value) == "a seven: none of 400 draws fits what is asked of it: widen the draws"
    assert len(drawn) == 400
