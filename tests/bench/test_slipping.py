"""The simulation: the slip model's vectors, its signs, convergence, and facts that hold on random jobs."""

import math
from dataclasses import replace

import numpy as np
import pytest
from random_jobs import job
from reference_jobs import EASY, superellipse, work
from slip_by_the_book import HARD, run

from lablib.bench.machine import Bench
from lablib.bench.signs import BUMPED_OUTLINE, BURNT_PATCH, LINE_OFF_LEVEL, NONE, signs_of, sliding_heat
from lablib.bench.slipping import MOST_TURNS, simulate
from lablib.errors import LabError

BUMPED = {"crib_allowance_mm": 3.0, "skin": "oily", "wheel": "used"}
BURNT = {"wheel": "glazed"}
RANDOM = range(40)


@pytest.mark.parametrize("points", [720, 1440])
@pytest.mark.parametrize(
    ("parts", "setup", "slip", "short", "heat", "rise", "sign"),
    # Slip model of the workbook, simulation vectors, each with its tolerance.
    [
        (EASY, {}, (0, 0), (0, 0), (0, 0), (0, 0), NONE),
        ({}, {}, (14.2, 0.4), (0, 0.005), (0.182, 0.006), (0.6, 0.1), LINE_OFF_LEVEL),
        ({}, BUMPED, (11.5, 0.2), (0.605, 0.01), (0.069, 0.001), (0.5, 0.1), BUMPED_OUTLINE),
        ({}, BURNT, (1406, 5), (2.5, 0.1), (17.9, 0.1), (30, 1), BURNT_PATCH),
    ],
)
def test_vectors(points, parts, setup, slip, short, heat, rise, sign):
    ran = simulate(work(parts | {"outline": superellipse(points=points)}, **setup))
    for value, (expected, tolerance) in (
        (ran.slip_deg, slip),
        (ran.shortfall_mm, short),
        (ran.heat_j, heat),
        (ran.rise_k, rise),
    ):
        assert value == pytest.approx(expected, abs=tolerance)
    assert ran.sign == sign
    assert not ran.never_finishes


def test_a_lens_that_holds_comes_out_as_ordered():
    ran = simulate(work(EASY))
    assert ran.begins is None
    assert np.all(ran.lag_deg == 0.0)
    assert ran.turns_run == ran.planned_turns + 1
    assert ran.finished_mm == pytest.approx(ran.result.lens.outline_mm, abs=1e-12)
    assert ran.rim_mm[:-1] == pytest.approx(ran.result.cutting.plan.radius_mm, abs=1e-12)
    assert (ran.sliding_s, ran.heat_j, ran.rise_k, ran.signs) == (0.0, 0.0, 0.0, ())


@pytest.mark.parametrize(
    ("share", "slip", "within"),
    # Slip model of the workbook: with the sliding hold below 1 / k_dyn a slide runs on.
    [(0.85, 1, 0.5), (0.8, 14, 0.5), (0.75, 361, 2), (0.7, 562, 2)],
)
def test_a_slide_runs_on_where_sliding_holds_less(share, slip, within):
    assert simulate(work(bench=Bench(sliding_share=share))).slip_deg == pytest.approx(slip, abs=within)


@pytest.mark.parametrize(
    ("factor", "margin", "slip", "within"),
    # Slip model of the workbook: an uncut round falls off a cliff. It prints whole degrees at margins of two
    # or three digits, between which the slip grows by up to 20 degrees a thousandth.
    [(1.021, 0.91, 21, 1), (1.05, 0.885, 239, 20), (1.093, 0.85, 477, 40)],
)
def test_an_uncut_round_falls_off_a_cliff(factor, margin, slip, within):
    wheels = dict(Bench().wheels) | {"sharp": factor}
    result = work(bench=Bench(wheels=wheels))
    assert result.margin == pytest.approx(margin, abs=0.001)
    assert simulate(result).slip_deg == pytest.approx(slip, abs=within)


def test_degrees_are_not_predicted():
    # Slip model of the workbook: mirrored, the hard job gives 41 degrees at the same margin.
    plain, mirrored = (simulate(work({"away_mm": away})) for away in (2.0, -2.0))
    assert mirrored.result.margin == pytest.approx(plain.result.margin, abs=1e-9)
    assert mirrored.slip_deg == pytest.approx(41, abs=3)
    assert plain.slip_deg < 15


@pytest.mark.parametrize(
    ("setup", "book"),
    [
        ({}, {}),
        (BUMPED, {"crib_mm": 3.0, "skin": "oily", "k_wheel": 1.4}),
        (BURNT, {"k_wheel": 2.5}),
        ({"skin": "fingerprint"}, {"skin": "fingerprint"}),
        ({"wheel": "used", "skin": "oily"}, {"k_wheel": 1.4, "skin": "oily"}),
        ({"coat": "coated", "wheel": "glazed"}, {"coat": "coated", "k_wheel": 2.5}),
    ],
)
def test_a_second_program_comes_to_the_same(setup, book):
    # The second program follows the equations of the model with nothing of the package.
    second, ran = run(**HARD, **book), simulate(work(**setup))
    assert ran.result.margin == pytest.approx(second.margin, abs=0.002)
    assert ran.slip_deg == pytest.approx(second.slip, rel=0.005, abs=0.1)
    assert ran.shortfall_mm == pytest.approx(second.shortfall, abs=0.05)
    assert ran.heat_j == pytest.approx(second.heat, rel=0.005, abs=0.001)
    assert ran.rise_k == pytest.approx(second.rise, rel=0.01, abs=0.02)


@pytest.mark.parametrize("setup", [{}, BUMPED, BURNT])
def test_finer_steps_come_to_the_same(setup):
    coarse, finer, finest = (
        simulate(work({"outline": superellipse(points=points)}, **setup)) for points in (720, 1440, 2880)
    )
    allowed = max(0.4, 0.002 * finest.slip_deg)
    assert coarse.slip_deg == pytest.approx(finest.slip_deg, abs=allowed)
    assert finer.slip_deg == pytest.approx(finest.slip_deg, abs=allowed)
    assert finer.shortfall_mm == pytest.approx(finest.shortfall_mm, abs=0.01, rel=0.01)
    assert coarse.sign == finer.sign == finest.sign


@pytest.mark.parametrize("seed", RANDOM)
def test_facts_on_random_jobs(seed):
    result = job(seed).result()
    ran, plan = simulate(result), result.cutting.plan
    # Thickness is read off a grid here, so that at a margin of 1 either may happen.
    if result.margin > 1.002:
        assert ran.slip_deg == 0.0
        assert ran.sign == NONE
    if result.margin < 0.998 and ran.leads == 0:
        assert ran.slip_deg > 0.0
        assert ran.begins is not None
    assert np.all(np.diff(ran.lag_deg.ravel()) >= 0.0)
    assert np.all(np.diff(ran.rim_mm, axis=0) <= 0.0)
    # Cut stays cut, and never deeper than the plan's deepest anywhere.
    assert ran.rim_mm.min() >= plan.radius_mm.min() - 1e-9
    assert ran.slip_by_turn_deg.sum() == pytest.approx(ran.slip_deg)
    assert (ran.heat_j > 0.0) == (ran.slip_deg > 0.0)
    # The work of sliding is a sliding hold times an angle: no more than the whole hold all the way.
    most = bench_hold(ran) * math.radians(ran.slip_deg)
    assert ran.heat_j <= most / 1000.0 * (1.0 + 1e-9)
    assert ran.never_finishes == (ran.turns_run == MOST_TURNS and np.any(ran.rim_mm[-1] < ran.rim_mm[-2]))


def bench_hold(ran) -> float:
    """The torque held with no sideways load, as far as a sliding joint holds it [N mm]."""
    return ran.result.bench.sliding_share * ran.result.holding.torque_nmm


@pytest.mark.parametrize("seed", RANDOM)
def test_film_and_clean_surfaces_never_start_a_slide(seed):
    random = job(seed)
    for better, worse in (
        ({"film": True}, {}),
        ({}, {"skin": "oily"}),
        ({}, {"wheel": "glazed"}),
        ({}, {"pad_age_months": 12.0}),
    ):
        if simulate(random.result(**worse)).slip_deg == 0.0:
            assert simulate(random.result(**better)).slip_deg == 0.0


def test_where_a_slide_begins_the_wheel_asks_more_than_holds():
    ran = simulate(work())
    at, cut = ran.begins.index, ran.result
    assert cut.cutting.torque_nmm[at] > cut.hold_nmm[at]
    assert ran.lag_deg[ran.begins.turn - 1, ran.begins.point] > 0.0


def test_roughing_slip_is_trued_by_later_turns():
    ran = simulate(work())
    rough = ~ran.result.cutting.plan.finishing
    assert ran.slip_by_turn_deg[: rough.size][rough].sum() == pytest.approx(ran.slip_deg)
    # The outline is right about the block; the lens inside it is not.
    assert ran.finished_mm == pytest.approx(ran.result.lens.outline_mm, abs=0.05)


def test_the_rim_seen_from_the_block_is_turned_with_the_lens():
    ran = simulate(work({}, **BUMPED))
    by = round(ran.slip_deg * 2.0)
    assert ran.seen_rim_mm(0) == pytest.approx(ran.rim_mm[0])
    turned = np.roll(ran.rim_mm[-1], by)
    assert ran.finished_mm == pytest.approx(turned, abs=0.1)


@pytest.mark.parametrize("turn", [-1, 12])
def test_a_turn_that_was_not_run_is_refused(turn):
    with pytest.raises(LabError, match=r"turn -?\d+ was not run: give 0 to 11"):
        simulate(work(EASY)).seen_rim_mm(turn)


@pytest.mark.parametrize(
    ("slip", "off"), [(0.0, 0.0), (89.0, 89.0), (90.0, 90.0), (100.0, -80.0), (355.0, -5.0)]
)
def test_a_line_shows_no_more_than_a_quarter_turn(slip, off):
    ran = replace(simulate(work(EASY)), lag_deg=np.full((1, 8), slip))
    assert ran.off_level_deg == pytest.approx(off)


def test_a_lens_driven_ahead_has_no_degrees():
    with pytest.raises(LabError, match=r"wheel_sense 'with' cannot be simulated: .* take 'against'"):
        simulate(work(wheel_sense="with"))


def test_under_constant_head_force_there_are_no_degrees():
    with pytest.raises(LabError, match=r"feed 'head force' cannot be simulated: .* take 'depth'"):
        simulate(work(feed="head force"))


@pytest.mark.parametrize(
    ("off", "short", "rise", "expected"),
    [
        (0.4, 0.05, 5.0, ()),
        (-0.6, 0.05, 5.0, (LINE_OFF_LEVEL,)),
        (0.0, 0.2, 5.0, (BUMPED_OUTLINE,)),
        (30.0, 0.2, 25.0, (BURNT_PATCH, BUMPED_OUTLINE, LINE_OFF_LEVEL)),
    ],
)
def test_signs_by_what_shows(off, short, rise, expected):
    assert signs_of(off_deg=off, shortfall_mm=short, rise_k=rise) == expected


def test_heat_by_hand():
    # 17.9 J in 28 s or more (so that the heat goes through 1.2 mm), at 9 mm: by the model's own formula, with
    # T_front 619.5, T_back 331, W 3619 and 1527 mm3 and 0.0018 J/mm3 K.
    areal = 17.9 * 9.0 * (619.5 / 3619.1 + 331.0 / 1526.8) / 950.5
    rise = sliding_heat(work(), heat_j=17.9, sliding_s=28.0).rise_k
    assert rise == pytest.approx(areal / (0.0018 * 1.2), rel=0.002)


def test_where_the_pad_has_lifted_off_nothing_rubs():
    # Air under a crease takes a third of the film's contact: what is left rubs half as hard again.
    even, creased = (work(film=True, film_wrinkle=share, skin="oily") for share in (0.0, 1.0 / 3.0))
    assert "film" in even.holding.weakest.name
    hot = [sliding_heat(one, heat_j=10.0, sliding_s=28.0) for one in (even, creased)]
    torques = [one.holding.front_nmm for one in (even, creased)]
    assert hot[1].front_n_per_mm2 / hot[0].front_n_per_mm2 == pytest.approx(1.5 * torques[1] / torques[0])


def test_where_the_tip_idles_only_the_front_face_rubs():
    result = work(back_tip_idles=True)
    rise = sliding_heat(result, heat_j=10.0, sliding_s=28.0).rise_k
    assert rise == pytest.approx(10.0 * 12.0 / 3619.1 / (0.0018 * 1.2), rel=0.002)


def test_a_lens_that_is_not_done_in_time_is_said_to_spin(monkeypatch):
    spins = work(wheel="glazed", skin="oily")
    patient = simulate(spins)
    assert not patient.never_finishes
    monkeypatch.setattr("lablib.bench.slipping.MOST_TURNS", patient.turns_run - 2)
    assert simulate(spins).never_finishes


def test_cribbing_can_be_run_on_its_own():
    result = work(crib_allowance_mm=3.0)
    crib, cut = simulate(result.crib), simulate(result)
    assert crib.slip_deg > 0.0
    assert cut.slip_deg == 0.0
