"""How long one eye's cut takes, every turn of it: a two-eye job is to take under 30 ms in all."""

from dataclasses import replace

import pytest

from lablib.bench.machine import Bench, lens_material
from lablib.bench.margin import work_cut
from lablib.bench.plan import UncutLens
from lablib.bench.setup import Setup
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription

BENCH = Bench()


def toric_on_its_block() -> UncutLens:
    """A strong toric minus lens, built anew as at every redraw."""
    frame = Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0)
    rx = Prescription(sphere_d=-8.0, cylinder_d=-2.0, axis_deg=30)
    lens = lens_for(rx, index=1.66, front_curve_d=2.0, centre_thickness_mm=1.2)
    return UncutLens(
        outline_mm=frame.outline(Eye.RIGHT).radius_mm,
        blank_diameter_mm=72.0,
        blank_x_mm=2.0,
        blank_y_mm=0.0,
        thickness_mm=lambda x, y: lens.thickness_mm(x - 2.0, y),
        centre_thickness_mm=1.2,
    )


@pytest.mark.parametrize("depth", [2.0, 0.75])
@pytest.mark.parametrize("crib", [None, 3.0])
def test_one_eye(benchmark, depth: float, crib: float | None):
    material = replace(lens_material("thiourethane-1.67"), depth_per_turn_mm=depth)
    setup = Setup(coat="slick", crib_allowance_mm=crib)
    result = benchmark(lambda: work_cut(toric_on_its_block(), material=material, setup=setup, bench=BENCH))
    assert result.margin > 0.0


@pytest.mark.parametrize(
    ("feed", "limit"),
    [
        ("head force", {"head_force_n": 25.0}),
        ("head force", {"head_force_n": 10.0}),
        ("torque cap", {"torque_cap_nmm": 900.0}),
        ("torque cap", {"torque_cap_nmm": 400.0}),
    ],
)
def test_one_eye_under_a_feed_that_yields(benchmark, feed: str, limit: dict):
    material = lens_material("thiourethane-1.67")
    setup = Setup(coat="slick", feed=feed, **limit)
    result = benchmark(lambda: work_cut(toric_on_its_block(), material=material, setup=setup, bench=BENCH))
    assert result.margin > 0.0
