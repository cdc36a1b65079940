"""Intervals, tests, sizes of trials and charts against published figures."""

from math import comb

import numpy as np
import pytest
from scipy import stats

from lablib.bench.trials import (
    ShareChart,
    lenses_each_way,
    readings_each_way,
    share_at_most,
    share_interval,
    two_ways_p,
)
from lablib.errors import LabError


@pytest.mark.parametrize(
    ("count", "of", "exact", "wilson"),
    # R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I.
    [
        (81, 263, (0.25274, 0.36762), (0.25529, 0.36621)),
        (15, 148, (0.05784, 0.16165), (0.06239, 0.16049)),
        (0, 20, (0.0, 0.16843), (0.0, 0.16113)),
        (1, 29, (0.00087, 0.17764), (0.00611, 0.17176)),
    ],
)
def test_intervals(count, of, exact, wilson):
    assert share_interval(count, of) == pytest.approx(exact, abs=5.1e-5)
    assert share_interval(count, of, method="wilson") == pytest.approx(wilson, abs=5.1e-5)


def test_none_in_sixty_is_not_never():
    # Exact: 1 - 0.05^(1/60).
    assert share_at_most(0, 60) == pytest.approx(1.0 - 0.05 ** (1.0 / 60.0))
    assert share_at_most(0, 60) == pytest.approx(0.049, abs=5e-4)


@pytest.mark.parametrize(("count", "of"), [(1, 60), (4, 80), (9, 110)])
def test_at_the_bound_so_few_are_seen_once_in_twenty_trials(count: int, of: int):
    bound = share_at_most(count, of)
    seen = sum(comb(of, few) * bound**few * (1.0 - bound) ** (of - few) for few in range(count + 1))
    assert seen == pytest.approx(0.05)


def test_more_confidence_is_a_wider_interval():
    low, high = share_interval(3, 40)
    wider_low, wider_high = share_interval(3, 40, confidence=0.99)
    assert wider_low < low < 3 / 40 < high < wider_high


def test_two_ways_by_chance():
    # R manual, fisher.test: the tea drinker, alternative "greater", p 0.2429.
    assert two_ways_p(3, 4, 1, 4, sides="greater") == pytest.approx(0.2429, abs=5e-5)
    # 12 of 200 against 8 of 200 proves nothing: 20 spoiled of 400, and how they may fall to the two ways.
    ways = [comb(200, first) * comb(200, 20 - first) for first in range(21)]
    as_rare = sum(way for way in ways if way <= ways[12])
    assert two_ways_p(12, 200, 8, 200) == pytest.approx(as_rare / comb(400, 20))
    assert two_ways_p(12, 200, 8, 200) == pytest.approx(0.49, abs=5e-3)


@pytest.mark.parametrize(
    ("before", "after", "lenses"),
    # Normal formula (Fleiss), two-sided 5 %, power 80 %.
    [(0.05, 0.01, 285), (0.5, 0.3, 93)],
)
def test_lenses_a_trial_needs(before, after, lenses):
    assert lenses_each_way(before, after) == lenses
    assert lenses_each_way(after, before) == lenses


def test_torque_tells_with_far_fewer():
    # A 25 % change at 20 % scatter takes 12 readings each way.
    assert readings_each_way(0.25, 0.20) == 12
    rng = np.random.default_rng(3)
    first, second = (rng.normal(mean, 0.2, (4000, 12)) for mean in (1.0, 1.25))
    shown = stats.ttest_ind(first, second, axis=1).pvalue < 0.05
    assert 0.79 < shown.mean() < 0.86


def test_share_chart():
    # Published quality-control example: 30 batches of 500.
    counts = "7 6 6 9 2 11 8 8 6 19 7 5 7 5 8 13 7 14 19 5 7 5 7 5 11 4 6 3 11 3"
    chart = ShareChart(counts=[int(one) for one in counts.split()], sizes=[500] * 30)
    assert chart.share == pytest.approx(0.0156, abs=5e-5)
    assert chart.upper == pytest.approx(0.032226, abs=5e-6)
    assert chart.lower == pytest.approx(0.0)
    assert chart.outside == (10, 19)


def test_limits_of_a_count_chart():
    # Published example: 50 lots of 200 with 7.14 on the mean, upper limit 15.01184 pieces.
    counts = [7] * 43 + [8] * 7
    chart = ShareChart(counts=counts, sizes=[200] * 50)
    assert sum(counts) / 50 == pytest.approx(7.14)
    assert 200 * chart.upper[0] == pytest.approx(15.01184, abs=5e-6)


def test_a_batch_far_below_is_outside_as_well():
    # By hand: 60 of 600 pooled, 0.1; three standard deviations of 300 lenses are 3 * sqrt(0.09 / 300).
    chart = ShareChart(counts=[10, 50], sizes=[300, 300])
    assert chart.lower == pytest.approx(0.1 - 3.0 * (0.09 / 300.0) ** 0.5)
    assert chart.outside == (1, 2)
    assert ShareChart(counts=[20, 40], sizes=[300, 300]).outside == ()


def test_the_pooled_share_is_not_the_mean_of_the_shares():
    chart = ShareChart(counts=[5, 1], sizes=[10, 90])
    assert chart.share == pytest.approx(0.06)
    assert chart.shares.mean() == pytest.approx(0.2556, abs=5e-5)
    assert chart.upper[0] > chart.upper[1]


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: share_interval(5, 4), "5 in 4 is more than all"),
        (lambda: share_interval(-1, 4), "lenses -1 cannot be: give a whole number from 0"),
        (lambda: share_interval(1, 0), "number seen 0 cannot be: give a whole number from 1"),
        (lambda: share_interval(1.5, 4), "lenses 1.5 cannot be"),
        (lambda: share_interval(1, 4, method="guess"), "method 'guess'"),
        (lambda: share_interval(1, 4, confidence=2.0), "confidence"),
        (lambda: two_ways_p(1, 4, 5, 4), "second way: 5 in 4 is more than all"),
        (lambda: two_ways_p(1, 4, 1, 4, sides="left"), "sides 'left'"),
        (lambda: lenses_each_way(0.1, 0.1), "are equal: no trial tells them apart"),
        (lambda: lenses_each_way(1.1, 0.1), "share before"),
        (lambda: lenses_each_way(0.2, 0.1, power=1.0), "power"),
        (lambda: lenses_each_way(0.2, 0.1, level=0.0), "level"),
        (lambda: readings_each_way(0.0, 0.2), "change"),
        (lambda: readings_each_way(0.01, 0.6), "scatter"),
        (lambda: ShareChart(counts=[1], sizes=[10]), "give as many of both, 2 or more"),
        (lambda: ShareChart(counts=[1, 11], sizes=[10, 10]), "batch 2: 11 in 10 is more than all"),
    ],
)
def test_what_cannot_be_is_refused(call, said):
    with pytest.raises(LabError) as found:
        call()
    assert said in str(found.value)
