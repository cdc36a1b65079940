"""What counting shows, as workings: each comes out as printed, and agrees with the chart and the bound."""

import pytest
from evaluation import assert_comes_out
from hypothesis import given
from hypothesis import strategies as st

from lablib.bench.trials import ShareChart, share_at_most
from lablib.bench.trials_workings import limit_workings, none_working

# A published quality-control example: batches of 500, upper limit 0.032226.
_COUNTS = (7, 6, 6, 9, 2, 11, 8, 8, 6, 19, 7, 5, 7, 5, 8, 13, 7, 14, 19, 5, 7, 5, 7, 5, 11, 4, 6, 3, 11, 3)


def test_the_limit_of_a_published_example():
    share, _, upper = limit_workings(ShareChart(counts=_COUNTS, sizes=[500] * 30), 10)
    assert share.value == pytest.approx(1.56, abs=1e-9)
    assert upper.value == pytest.approx(3.2226, abs=5e-5)


@given(st.lists(st.tuples(st.integers(0, 6), st.integers(60, 200)), min_size=2, max_size=9))
def test_limits_come_out(batches: list[tuple[int, int]]):
    counts, sizes = zip(*batches, strict=True)
    chart = ShareChart(counts=counts, sizes=sizes)
    for batch in range(1, len(batches) + 1):
        steps = limit_workings(chart, batch)
        for working in steps:
            assert_comes_out(working)
        assert steps[-1].value == pytest.approx(100.0 * chart.upper[batch - 1])


@given(st.integers(1, 2000))
def test_none_in_so_many_comes_out(of: int):
    assert_comes_out(none_working(of))
    assert none_working(of).value == pytest.approx(100.0 * share_at_most(0, of))


def test_none_in_sixty():
    assert none_working(60).result == "4.87 %"
