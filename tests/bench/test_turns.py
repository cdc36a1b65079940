"""Every turn summed up, time and energy: against sums of their own, and closed forms on a round flat lens."""

import math

import numpy as np
import pytest
from evaluation import assert_comes_out
from hypothesis import given, settings
from hypothesis import strategies as st
from random_jobs import job
from reference_jobs import work
from test_feed import disc

from lablib.bench.cut_time import cut_time, least_seconds, step_seconds
from lablib.bench.cut_time_workings import edge_workings, time_workings
from lablib.bench.edge_heat import edge_rise_k, heated_depth_mm
from lablib.bench.machine import Bench
from lablib.bench.plan import turns_for
from lablib.bench.turns import turns_of
from lablib.errors import LabError


@settings(deadline=None, max_examples=20)
@given(seed=st.integers(0, 10**9))
def test_the_turns_make_up_the_cut(seed: int):
    result = job(seed).result()
    turns, whole = turns_of(result), cut_time(result)
    assert [turn.turn for turn in turns] == list(range(1, len(result.cutting.plan.finishing) + 1))
    assert [turn.finishing for turn in turns] == list(result.cutting.plan.finishing)
    assert min(turn.margin for turn in turns) == pytest.approx(result.margin)
    assert max(turn.torque_nmm for turn in turns) == result.peak_cutting_torque_nmm
    assert turns[result.peak.turn - 1].peak == result.peak
    assert turns[result.least.turn - 1].least == result.least
    assert sum(turn.volume_mm3 for turn in turns) == pytest.approx(result.removed_volume_mm3)
    assert sum(turn.energy_j for turn in turns) == pytest.approx(whole.energy_j)
    assert sum(turn.rubbing_j for turn in turns) == pytest.approx(whole.rubbing_j)
    assert sum(turn.seconds for turn in turns) == pytest.approx(whole.seconds)
    for turn in turns:
        assert turn.hold_nmm == pytest.approx(result.hold_nmm[turn.peak.index])
        assert turn.force_n == pytest.approx(result.cutting.force_n[turn.peak.index])
        assert turn.depth_mm <= result.material.depth_per_turn_mm + 1e-9
        assert turn.margin <= turn.hold_nmm / turn.torque_nmm + 1e-9


def test_time_and_energy_of_a_flat_disc():
    # 70 mm to 41 in eight bites of 2 mm at most, 41 to 40 in one: nine turns of 7.5 s. Chips cost u per
    # volume, whatever the turns; rubbing f w v_s, all the time.
    result, bench = disc(4.0), Bench()
    whole = cut_time(result)
    assert turns_for(14.5, 2.0) + turns_for(0.5, 1.0) == len(turns_of(result)) == 9
    assert whole.seconds == pytest.approx(9 * 7.5) == least_seconds(9, 8.0)
    volume = math.pi * (35.0**2 - 20.0**2) * 4.0
    rubbing = 0.15 * 4.0 * bench.surface_speed_m_per_s * 7.5 * (8 + 1.5)
    finishing = 1.5 * 0.35 * math.pi * (20.5**2 - 20.0**2) * 4.0
    chips = 0.35 * (volume - math.pi * (20.5**2 - 20.0**2) * 4.0) + finishing
    assert whole.rubbing_j == pytest.approx(rubbing)
    assert whole.energy_j == pytest.approx(rubbing + chips)
    assert whole.rubbing_share == pytest.approx(rubbing / (rubbing + chips))
    assert whole.mean_power_w == pytest.approx((rubbing + chips) / 67.5)


def test_a_turn_lasts_longer_where_the_controller_slows_the_lens():
    result = work()
    seconds = step_seconds(result.cutting, result.bench).sum(axis=1)
    assert seconds[0] == pytest.approx(7.5)
    assert seconds[-1] > 7.6
    assert np.all(seconds >= 7.5 - 1e-9)


@pytest.mark.parametrize(
    ("away", "depth", "turns"), [(16.0, 2.0, 8), (16.1, 2.0, 9), (0.5, 1.0, 1), (0.0, 1.0, 0)]
)
def test_how_many_turns(away: float, depth: float, turns: int):
    assert turns_for(away, depth) == turns


def test_how_warm_the_rim_of_a_flat_disc_gets():
    # Heat of one turn over the area of the rim, spread over the depth heat reaches in 7.5 s.
    result = disc(4.0)
    first = turns_of(result)[0]
    depth = 0.3 * math.sqrt(7.5)
    rise = 0.02 * first.energy_j / (2.0 * math.pi * 33.0 * 4.0) / (0.0018 * depth)
    assert heated_depth_mm(8.0) == pytest.approx(depth)
    assert edge_rise_k(result)[0] == pytest.approx(np.full(720, rise))


def test_dry_is_warmer_and_finishing_is_wet():
    wet, dry = edge_rise_k(disc(4.0)), edge_rise_k(disc(4.0, water="dry"))
    assert dry[0] == pytest.approx(1.4 * 0.1 / 0.02 * wet[0])
    assert dry[-1] == pytest.approx(wet[-1])


@pytest.mark.parametrize("setup", [{}, {"water": "dry"}, {"feed": "torque cap"}, {"lens_speed_rpm": 5.0}])
def test_the_workings_come_out(setup: dict):
    result = work(**setup)
    for turn in (1, 5, len(turns_of(result))):
        steps = time_workings(result, turn)
        for step in steps:
            assert_comes_out(step)
        one = turns_of(result)[turn - 1]
        assert (steps[1].value, steps[2].value) == (one.seconds, one.energy_j)
    for place in (result.peak, turns_of(result)[-1].peak):
        for step in edge_workings(result, place):
            assert_comes_out(step)
        assert edge_workings(result, place)[-1].value == edge_rise_k(result)[place.index]


@pytest.mark.parametrize("turn", [0, 11])
def test_a_turn_the_cut_does_not_have(turn: int):
    with pytest.raises(LabError) as caught:
        time_workings(work(), turn)
    assert str(caught.value) == f"turn {turn} is not one of this cut: give 1 to 10"
