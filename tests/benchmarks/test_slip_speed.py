"""How long one simulated cut takes: under 50 ms where the lens hardly turns, under 250 ms where it spins."""

import pytest
from test_bench_speed import toric_on_its_block

from lablib.bench.machine import Bench, lens_material
from lablib.bench.margin import work_cut
from lablib.bench.setup import Setup
from lablib.bench.slipping import simulate

# What each lens is cut with, by how it comes out.
SETUPS = {
    "holds": {"film": True},
    "turns a little": {},
    "turns heavily": {"wheel": "glazed"},
    "spins": {"wheel": "glazed", "skin": "oily"},
}


@pytest.mark.parametrize("setup", SETUPS.values(), ids=SETUPS)
def test_one_cut_simulated(benchmark, setup):
    result = work_cut(
        toric_on_its_block(),
        material=lens_material("thiourethane-1.67"),
        setup=Setup(**({"coat": "slick"} | setup)),
        bench=Bench(),
    )
    ran = benchmark(lambda: simulate(result))
    assert (ran.slip_deg > 0.0) == (result.margin < 1.0)
    print(f"\nmargin {result.margin:.2f}, {ran.slip_deg:.0f} degrees in {ran.turns_run} turns")
