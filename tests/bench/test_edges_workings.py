"""Workings of edges: what is printed comes out, and the last value is the function's."""

import pytest
from evaluation import assert_comes_out

from lablib.bench.bevel import bevel_wander_mm
from lablib.bench.edges_workings import (
    chamfer_workings,
    circumference_working,
    wall_workings,
    wander_workings,
    width_working,
)
from lablib.bench.groove import Groove, flat_left_mm
from lablib.errors import LabError

WANDER = {"away_mm": 26.0, "from_mm": 18.0}


@pytest.mark.parametrize(("lens", "rim"), [(4.0, 8.0), (8.0, 4.0), (1.25, 6.75), (5.5, 0.5)])
def test_the_wander_comes_out(lens: float, rim: float):
    steps = wander_workings(lens_curve_d=lens, rim_curve_d=rim, **WANDER)
    for step in steps:
        assert_comes_out(step)
    assert steps[-1].value == bevel_wander_mm(lens_curve_d=lens, rim_curve_d=rim, **WANDER)


def test_sizes_walls_and_chamfers_come_out():
    walls = wall_workings(Groove(edge_mm=2.35, width_mm=0.65, middle_mm=1.05))
    for step in (
        width_working(0.5),
        circumference_working(-0.35),
        *walls,
        *wall_workings(Groove(edge_mm=2.1)),
        *chamfer_workings(1.8, 0.4),
    ):
        assert_comes_out(step)
    assert chamfer_workings(1.8, 0.4)[-1].value == flat_left_mm(1.8, face_mm=0.4)
    assert walls[-1].value == Groove(edge_mm=2.35, width_mm=0.65, middle_mm=1.05).back_wall_mm


@pytest.mark.parametrize(
    ("lens", "rim", "named"), [(0.0, 4.0, "lens curve 0 D"), (4.0, -1.0, "rim curve -1 D")]
)
def test_a_curve_without_a_radius_is_refused(lens: float, rim: float, named: str):
    with pytest.raises(LabError, match=f"{named} is not above 0"):
        wander_workings(lens_curve_d=lens, rim_curve_d=rim, **WANDER)
