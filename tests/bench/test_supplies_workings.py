"""Supplies as workings: each comes out as printed, and agrees with when and how much is ordered."""

import math

import pytest
from evaluation import assert_comes_out
from hypothesis import given
from hypothesis import strategies as st

from lablib.bench.supplies import Ordering, Pace
from lablib.bench.supplies_workings import order_at_most_workings, order_at_workings, weeks_workings

paces = st.builds(
    Pace,
    jobs_per_day=st.integers(1, 60).map(float),
    days_per_week=st.integers(1, 7).map(float),
    per_lens=st.sampled_from([1.0, 0.5, 2.0]),
    spoiled_share=st.integers(0, 200).map(lambda one: one / 1000.0),
)


def test_a_thousand_pads_at_eight_jobs_a_day():
    used, weeks = weeks_workings(Pace(jobs_per_day=8.0), 1000)
    assert used.value == pytest.approx(80.0)
    assert weeks.result == "12.5 weeks"


@given(paces, st.integers(0, 5000))
def test_the_weeks_come_out(pace: Pace, pieces: int):
    for working in weeks_workings(pace, pieces):
        assert_comes_out(working)
    assert weeks_workings(pace, pieces)[-1].value == pace.weeks(pieces)


@given(paces, st.integers(0, 8), st.integers(0, 4), st.integers(5, 60))
def test_ordering_comes_out_and_rounds_to_what_is_ordered(pace: Pace, lead: int, spare: int, shelf: int):
    ordering = Ordering(pace=pace, lead_weeks=lead, spare_weeks=spare, shelf_weeks=shelf)
    at, most = order_at_workings(ordering), order_at_most_workings(ordering)
    for working in (*at, *most):
        assert_comes_out(working)
    assert math.ceil(at[-1].value - 1e-6) == ordering.order_at
    assert math.floor(most[-1].value + 1e-6) == ordering.order_at_most
