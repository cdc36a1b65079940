"""Feeds that yield: closed forms on a round flat lens, limits kept on random jobs, and what each costs."""

import math
from dataclasses import replace

import numpy as np
import pytest
from random_jobs import job
from reference_jobs import EASY, REFERENCE, superellipse, work

from lablib.bench.cut_time import cut_time
from lablib.bench.geometry import parallel_outline
from lablib.bench.machine import Bench
from lablib.bench.margin import CutResult, work_cut
from lablib.bench.plan import UncutLens
from lablib.bench.setup import Setup
from lablib.errors import LabError

HEAD, CAP = "head force", "torque cap"


def disc(thickness_mm: float, **setup: object) -> CutResult:
    """A flat round lens, 70 mm to 40 mm on centre."""
    flat = UncutLens(
        outline_mm=np.full(720, 20.0),
        blank_diameter_mm=70.0,
        blank_x_mm=0.0,
        blank_y_mm=0.0,
        thickness_mm=lambda x, y: np.full_like(x, thickness_mm),
        centre_thickness_mm=thickness_mm,
    )
    return work_cut(flat, material=REFERENCE, setup=Setup(**setup))


def test_bites_of_a_head_force_on_a_flat_disc():
    # F_t = u omega t (L^2 - R^2) / 2 / v_s + f t, whose normal force is the head's: so R after each turn.
    result = disc(4.0, feed=HEAD, head_force_n=6.0)
    bench, rim = Bench(), 35.0
    chips = 6.0 * 0.5 - 0.15 * 4.0
    taken = chips * bench.surface_speed_m_per_s / (0.35 * bench.lens_speed_rad_per_s)
    rough = ~result.cutting.plan.finishing
    for after in result.cutting.plan.radius_mm[1:][rough][:-1]:
        rim = math.sqrt(rim**2 - 2.0 * taken / 4.0)
        assert after == pytest.approx(np.full(720, rim), abs=2e-3)
    normal = result.cutting.force_n / REFERENCE.kappa
    assert normal[:-2] == pytest.approx(np.full_like(normal[:-2], 6.0), rel=1e-3)


@pytest.mark.parametrize("thickness", [3.0, 5.0, 8.0])
def test_a_torque_cap_is_reached_on_a_flat_disc(thickness: float):
    torque = disc(thickness, feed=CAP, torque_cap_nmm=250.0).cutting.torque_nmm
    assert torque[0] == pytest.approx(np.full(720, 250.0), rel=4e-3)
    assert torque.max() <= 250.0


def test_under_a_head_force_a_thicker_edge_costs_time_and_not_torque():
    # Slip model of the workbook, feed modes: torque does not grow with thickness, only time does.
    thin, thick = (disc(t, feed=HEAD, head_force_n=8.0) for t in (4.0, 8.0))
    assert thick.peak_cutting_torque_nmm <= thin.peak_cutting_torque_nmm
    assert cut_time(thick).seconds > 2.0 * cut_time(thin).seconds
    deep = [disc(t).peak_cutting_torque_nmm for t in (4.0, 8.0)]
    assert deep[1] == pytest.approx(2.0 * deep[0])


@pytest.mark.parametrize("parts", [{}, EASY, {"power_d": 5.0, "centre_mm": 6.0, "index": 1.6}])
@pytest.mark.parametrize(
    ("feed", "limit"), [(HEAD, {"head_force_n": 80.0}), (CAP, {"torque_cap_nmm": 3000.0})]
)
def test_a_limit_that_is_never_met_is_depth_control(parts: dict, feed: str, limit: dict):
    free, plain = work(parts, feed=feed, **limit), work(parts)
    assert free.cutting.plan.radius_mm == pytest.approx(plain.cutting.plan.radius_mm, abs=1e-9)
    assert free.margin == pytest.approx(plain.margin)


@pytest.mark.parametrize("seed", range(12))
def test_a_torque_cap_is_kept_and_used_on_random_jobs(seed: int):
    drawn = job(seed)
    peak = drawn.result().peak_cutting_torque_nmm
    cap = min(0.75 * peak, 3000.0)
    capped = drawn.result(feed=CAP, torque_cap_nmm=cap)
    assert 0.97 * cap <= capped.peak_cutting_torque_nmm <= cap
    assert capped.cutting.plan.depth_mm.max() <= drawn.material.depth_per_turn_mm + 1e-9
    assert len(capped.cutting.plan.finishing) >= len(drawn.result().cutting.plan.finishing)


@pytest.mark.parametrize("feed", [HEAD, CAP])
@pytest.mark.parametrize("parts", [{}, {"power_d": 5.0, "centre_mm": 6.0, "index": 1.6}])
def test_every_feed_takes_off_the_same(feed: str, parts: dict):
    fed = work(parts, feed=feed, torque_cap_nmm=300.0, head_force_n=8.0)
    plain = work(parts)
    assert fed.removed_volume_mm3 == pytest.approx(plain.removed_volume_mm3, rel=2e-4)
    assert fed.cutting.plan.radius_mm[-1] == pytest.approx(plain.lens.outline_mm, abs=2e-6)
    assert fed.cutting.plan.depth_mm.min() >= 0.0


def test_the_head_force_is_met_round_the_hard_job():
    # Where the bite is neither the deepest nor the last; the head follows over 16 degrees, so it strays
    # where the round meets the ends of the outline.
    result = work(feed=HEAD, head_force_n=15.0)
    depth, plan = result.cutting.plan.depth_mm, result.cutting.plan
    between = (depth > 1e-3) & (depth < 1.99) & ~plan.finishing[:, None]
    between &= plan.radius_mm[1:] > result.lens.outline_mm + 0.501
    normal = result.cutting.force_n[between] / REFERENCE.kappa
    assert np.percentile(normal, [5, 50, 95]) == pytest.approx([15.0, 15.0, 15.0], rel=0.01)
    assert normal.max() < 1.2 * 15.0


@pytest.mark.parametrize("force", [5.0, 8.0, 12.0])
def test_the_head_force_strays_no_further_than_by_two_fifths(force: float):
    for parts in ({}, {"outline": superellipse(3.5, 54.0, 30.0)}, {"power_d": 5.0, "centre_mm": 6.0}):
        result = work(parts, feed=HEAD, head_force_n=force)
        assert result.peak_tangential_force_n / REFERENCE.kappa < 1.4 * force


def test_less_force_or_torque_takes_more_turns():
    for feed, name, values in (
        (HEAD, "head_force_n", (6.0, 9.0, 15.0, 25.0)),
        (CAP, "torque_cap_nmm", (250.0, 400.0, 600.0, 900.0)),
    ):
        turns = [work(feed=feed, **{name: value}).cutting.plan.finishing.size for value in values]
        margins = [work(feed=feed, **{name: value}).margin for value in values]
        assert turns == sorted(turns, reverse=True)
        assert turns[0] > turns[-1]
        assert margins == sorted(margins, reverse=True)


def test_a_crib_is_fed_likewise():
    cribbed = work(feed=CAP, torque_cap_nmm=400.0, crib_allowance_mm=3.0)
    assert cribbed.crib.peak_cutting_torque_nmm <= 400.0
    assert cribbed.crib.cutting.plan.radius_mm[-1] == pytest.approx(
        cribbed.cutting.plan.radius_mm[0], abs=2e-6
    )


@pytest.mark.parametrize(
    ("setup", "message"),
    [
        (
            {"feed": HEAD, "head_force_n": 2.0},
            "head force 2 N never gets this lens done: turn 1 takes 0.000 mm at most, and rubbing alone asks "
            "up to 3 N: give more, or dress the wheel",
        ),
        (
            {"feed": CAP, "torque_cap_nmm": 50.0},
            "torque cap 50 N mm never gets this lens done: turn 1 takes 0.000 mm at most, and rubbing alone "
            "asks up to 74 N mm: give more, or dress the wheel",
        ),
    ],
)
def test_a_feed_that_never_gets_done(setup: dict, message: str):
    with pytest.raises(LabError) as caught:
        work(**setup)
    assert str(caught.value) == message


def test_a_feed_that_takes_too_many_turns():
    with pytest.raises(LabError, match=r"head force 3\.1 N never gets this lens done: turn 120 takes"):
        work(feed=HEAD, head_force_n=3.1)


def test_a_crib_to_a_true_parallel():
    # Measured: on this outline the parallel lies up to 0.15 mm farther out than 2 mm along the radius, and
    # the margin moves by less than a thousandth; so a job's crib is counted along the radius.
    uncut = work().lens
    rim = parallel_outline(uncut.outline_mm, 2.0)
    setup = Setup(coat="slick")
    true = work_cut(uncut, material=REFERENCE, setup=setup, rim_mm=rim)
    radial = work(crib_allowance_mm=2.0)
    assert true.crib.cutting.plan.radius_mm[-1] == pytest.approx(rim, abs=2e-6)
    assert (rim - uncut.outline_mm).max() == pytest.approx(2.146, abs=1e-3)
    assert true.margin == pytest.approx(radial.margin, rel=1e-3)


def test_the_lens_speed_of_a_job():
    slow = work(lens_speed_rpm=5.0)
    assert slow.bench.lens_speed_rpm == 5.0
    assert slow.margin == pytest.approx(work(bench=Bench(lens_speed_rpm=5.0)).margin)
    assert slow.margin > work().margin


def test_wet_and_dry():
    # Roughing alone carries the factor; the finishing turn is wet whatever is chosen.
    plain, dry, wet = work(), work(water="dry"), work(water="wet")
    assert wet.margin == plain.margin
    factor = np.where(plain.cutting.plan.finishing[:, None], 1.0, 1.4)
    assert dry.cutting.force_n == pytest.approx(factor * plain.cutting.force_n)
    tough = replace(REFERENCE, name="polycarbonate-1.59")
    assert work(material=tough).margin == plain.margin
    assert work(material=tough, water="dry").margin == plain.margin
    assert work(material=tough, water="wet").margin == pytest.approx(plain.margin / 1.3)


def test_a_last_turn_may_be_thinner_than_where_a_feed_is_stuck():
    # 35 mm down to 20.5: bites of 2 mm and half a thousandth of one are left for the last roughing turn.
    flat = disc(4.0).lens
    start = np.full(720, 20.5 + 2.0 * 7 + 0.0005)
    setup = Setup(feed=HEAD, head_force_n=80.0)
    result = work_cut(flat, material=REFERENCE, setup=setup, rim_mm=start)
    assert result.cutting.plan.depth_mm.max(axis=1)[7] == pytest.approx(0.0005, abs=1e-6)
    assert result.cutting.plan.radius_mm[-1] == pytest.approx(flat.outline_mm, abs=2e-6)
