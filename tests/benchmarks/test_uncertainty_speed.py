"""How long it takes to draw benches for one cut: 10,000 of them are to take under a second."""

import numpy as np
from test_bench_speed import toric_on_its_block

from lablib.bench.machine import Bench, lens_material
from lablib.bench.margin import work_cut
from lablib.bench.setup import Setup
from lablib.bench.uncertainty import spread, swings

CUT = work_cut(
    toric_on_its_block(),
    material=lens_material("thiourethane-1.67"),
    setup=Setup(coat="slick"),
    bench=Bench(),
)


def test_ten_thousand_benches(benchmark):
    found = benchmark(lambda: spread(CUT, draws=10_000))
    assert np.all(found.margin > 0.0)


def test_which_parameter_it_hangs_on(benchmark):
    assert benchmark(lambda: swings(CUT))
