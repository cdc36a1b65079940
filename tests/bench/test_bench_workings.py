"""Workings of the margin: every printed substitution comes out, and the last is the result's own figure."""

from dataclasses import replace

import pytest
from evaluation import assert_comes_out
from hypothesis import given, settings
from hypothesis import strategies as st
from random_jobs import job
from reference_jobs import work

from lablib.bench.machine import Bench
from lablib.bench.margin import CutResult
from lablib.bench.setup import SENSES, STIFFNESSES, tip_fits
from lablib.bench.workings import margin_workings, peak_workings

SETUPS = st.fixed_dictionaries(
    {
        "coat": st.sampled_from(["uncoated", "coated", "slick"]),
        "skin": st.sampled_from(["clean", "fingerprint", "oily"]),
        "block": st.sampled_from(["round", "half-eye"]),
        "wheel": st.sampled_from(["sharp", "used", "loaded", "glazed"]),
        "wheel_sense": st.sampled_from(SENSES),
        "tip_fit": st.sampled_from(list(tip_fits())),
        "tip_stiffness": st.sampled_from(STIFFNESSES),
        "film": st.booleans(),
        "back_tape": st.booleans(),
        "back_tip_idles": st.booleans(),
        "pad_age_months": st.integers(0, 24).map(float),
        "temperature_c": st.integers(10, 35).map(float),
        "clamp_force_n": st.none() | st.floats(100.0, 500.0),
        "water": st.sampled_from(["manual", "wet", "dry"]),
        "lens_speed_rpm": st.none() | st.floats(5.0, 15.0),
        "crib_allowance_mm": st.none() | st.floats(0.5, 6.0),
    }
)


def steps(result: CutResult) -> dict:
    return {step.symbol: step for step in margin_workings(result)}


@settings(max_examples=30, deadline=None)
@given(seed=st.integers(0, 10**9), setup=SETUPS)
def test_every_printed_working_comes_out(seed: int, setup: dict):
    result = job(seed).result(**setup)
    for working in (*margin_workings(result), *peak_workings(result)):
        assert_comes_out(working)


def test_the_figures_are_the_results_own():
    result = work()
    by_symbol = steps(result)
    assert by_symbol["S"].value == result.margin
    assert by_symbol["T_front"].value == result.front_hold_nmm
    assert by_symbol["T_back"].value == result.back_hold_nmm
    assert by_symbol["T_0"].value == result.holding.torque_nmm
    assert by_symbol["T_hold"].value == result.worst_hold_nmm[result.least.point]
    assert by_symbol["M_cut"].value == result.worst_torque_nmm[result.least.point]
    chances = [step.value for step in margin_workings(result) if step.symbol == "p"]
    assert chances == [100.0 * result.slip_probability, 100.0 * result.slip_probability_calibrated]
    assert peak_workings(result)[-1].value == result.peak_cutting_torque_nmm


def test_every_joint_has_its_torque():
    torques = [steps(work(film=True))[f"T_{number}"] for number in (1, 2, 3, 4)]
    assert [torque.what for torque in torques] == [
        "torque of block to pad",
        "torque of pad core",
        "torque of pad to film",
        "torque of film to coat",
    ]
    assert [torque.value for torque in torques] == [
        joint.torque_nmm for joint in work(film=True).holding.joints
    ]


def test_only_what_takes_something_away_is_written():
    assert "mu_3" not in steps(work())
    assert steps(work())["tau_3"].substituted == "0.1500 * 0.200"
    assert steps(work())["T_2"].substituted == "0.35000 * 3619.1"
    aged = steps(work(pad_age_months=12.0, skin="oily"))
    assert aged["mu_3"].substituted == "0.220 * 0.880 * 0.500"


@pytest.mark.parametrize(
    ("setup", "symbol", "formula"),
    [
        ({"wheel_sense": "with"}, "arm", "a_T - a_N / kappa"),
        ({}, "arm", "a_T + a_N / kappa"),
        ({"back_tip_idles": True}, "T_back", "0"),
        ({"clamp_force_n": 200.0}, "N", "N_set"),
        ({}, "N", "min(N_0, N_max)"),
        ({"block": "half-eye"}, "W", "a * b * U / 3"),
        ({"bench": Bench(bending_share=0.0)}, "N_max", "N_top"),
    ],
)
def test_formulas_follow_the_setup(setup: dict, symbol: str, formula: str):
    step = steps(work(**setup))[symbol]
    assert step.formula == formula
    assert_comes_out(step)


def test_a_lens_at_the_motors_limit_comes_out():
    bench = replace(Bench(), motor_power_w=300.0)
    result = work(wheel="glazed", bench=bench)
    assert steps(result)["F_t"].value == pytest.approx(300.0 / 15.708, abs=1e-3)
    for working in margin_workings(result):
        assert_comes_out(working)
