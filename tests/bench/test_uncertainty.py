"""Many benches at once: each gives what it would by itself, and the doubt is about threefold."""

from dataclasses import fields, replace

import numpy as np
import pytest
from reference_jobs import EASY, REFERENCE, work

from lablib.bench.drawn_benches import SETTINGS
from lablib.bench.machine import Bench
from lablib.bench.parameter import parameters
from lablib.bench.uncertainty import Spread, spread, swings
from lablib.errors import LabError

JOBS = [
    (EASY, {}),
    ({}, {}),
    ({}, {"film": True, "skin": "fingerprint", "wheel": "used", "pad_age_months": 9.0}),
    ({}, {"crib_allowance_mm": 2.0, "back_tape": True, "block": "half-eye", "temperature_c": 28.0}),
    ({}, {"back_tip_idles": True, "clamp_force_n": 250.0, "tip_fit": "toric"}),
    ({}, {"grip_layer": "present", "wheel_sense": "with"}),
]


def bench_of(found: Spread, draw: int, setup: dict) -> tuple[Bench, dict]:
    """One of the drawn benches by itself, and what it changes about the material."""
    drawn = dict(zip(found.names, found.drawn[draw], strict=True))
    bench = Bench()
    plain = {one.name: drawn[one.name] for one in fields(Bench) if one.name in drawn}
    coat, skin, wheels, material = {}, {}, dict(bench.wheels), {}
    for name, value in drawn.items():
        kind, own = name.partition(".")[0], name.rpartition(".")[2]
        if kind == "coat":
            coat[own] = value
        elif kind == "skin":
            skin[own] = value
        elif kind == "wheel":
            wheels[setup.get("wheel", "sharp")] = value
        elif kind == "material":
            material[own] = value
    gripped = "coated" if setup.get("grip_layer") == "present" else "slick"
    on = setup.get("skin", "clean")
    coats = dict(bench.coats) | {gripped: replace(bench.coats[gripped], **coat)}
    skins = dict(bench.skins) | {on: replace(bench.skins[on], **skin)}
    return replace(bench, **plain, coats=coats, skins=skins, wheels=wheels), material


@pytest.mark.parametrize(("parts", "setup"), JOBS)
def test_each_drawn_bench_gives_what_it_would_by_itself(parts, setup):
    found = spread(work(parts, **setup), draws=400)
    for draw in range(0, 400, 10):
        bench, material = bench_of(found, draw, setup)
        alone = work(parts, material=replace(REFERENCE, **material), bench=bench, **setup)
        # The deciding places are those of the first benches: another bench may have its least beside them.
        assert found.margin[draw] == pytest.approx(alone.margin, rel=2e-3)
        assert found.margin[draw] >= alone.margin * (1.0 - 1e-9)


@pytest.mark.parametrize(("parts", "setup"), JOBS)
def test_what_is_drawn_stays_in_its_range_as_often_above_as_below(parts, setup):
    found = spread(work(parts, **setup), draws=4000)
    known = parameters()
    for name, values in zip(found.names, found.drawn.T, strict=True):
        one = known[name]
        assert values.min() >= one.low - 1e-12
        assert values.max() <= one.high + 1e-12
        if one.low < one.default < one.high:
            assert np.mean(values > one.default) == pytest.approx(0.5, abs=0.04), name


def test_the_doubt_is_about_threefold():
    # Slip model of the workbook: uncertain about threefold either way until a bench has been calibrated.
    for parts, setup in JOBS[:4]:
        low, high = spread(work(parts, **setup)).band()
        assert 2.2 < (high / low) ** 0.5 < 3.8


def test_a_band_and_its_middle():
    found = spread(work(), draws=1000)
    low, high = found.band(0.5)
    lower, higher = found.band(0.95)
    assert lower < low < found.middle < high < higher
    assert np.mean((found.margin >= low) & (found.margin <= high)) == pytest.approx(0.5, abs=0.01)
    assert found.share_below_1 == np.mean(found.margin < 1.0)


def test_the_same_seed_gives_the_same_benches():
    result = work()
    first, again, other = (spread(result, draws=200, seed=seed).margin for seed in (1, 1, 2))
    assert np.array_equal(first, again)
    assert not np.array_equal(first, other)


@pytest.mark.parametrize(("parts", "setup"), JOBS)
def test_swings_are_the_margins_at_the_ends_of_a_range(parts, setup):
    result = work(parts, **setup)
    found = swings(result)
    assert [one.factor for one in found] == sorted((one.factor for one in found), reverse=True)
    assert all(one.factor > 1.0 for one in found)
    by_name = {one.parameter.name: one for one in found}
    for name in ("dynamic_factor", "rubbing_n_per_mm"):
        one = by_name[name]
        for value, margin in (
            (one.parameter.low, one.margin_at_low),
            (one.parameter.high, one.margin_at_high),
        ):
            alone = work(parts, bench=Bench(**{name: value}), **setup)
            assert margin == pytest.approx(alone.margin, rel=2e-3)
    assert not SETTINGS & set(by_name)


def test_the_margin_hangs_most_on_the_cutting_energy():
    assert swings(work())[0].parameter.name.endswith("specific_energy_j_per_mm3")


def test_a_core_that_governs_hides_the_coat():
    assert not [one for one in swings(work(coat="coated", film=True)) if "pad_friction" in one.parameter.name]


@pytest.mark.parametrize("ask", [spread, swings])
def test_a_feed_whose_bites_hang_on_the_forces_is_refused(ask):
    with pytest.raises(LabError, match="feed 'torque cap': its bites hang on the very forces"):
        ask(work(feed="torque cap"))


def test_numbers_of_draws_and_shares_that_cannot_be_are_refused():
    with pytest.raises(LabError, match="draws"):
        spread(work(), draws=5)
    with pytest.raises(LabError, match="confidence"):
        spread(work(), draws=100).band(1.0)
