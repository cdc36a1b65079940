"""What groove, hole and chamfer leave of an edge."""

import math

import numpy as np
import pytest

from lablib.bench.groove import Groove, Hole, chamfer_leg_mm, flat_left_mm
from lablib.errors import LabError

RING = np.full(720, 20.0)
ANGLE = np.arange(720) * math.tau / 720.0
# A rectangle 40 x 30.
BOX = np.minimum(
    20.0 / np.maximum(np.abs(np.cos(ANGLE)), 1e-9), 15.0 / np.maximum(np.abs(np.sin(ANGLE)), 1e-9)
)


def test_a_groove_in_2_mm_leaves_0_7_either_side():
    groove = Groove(edge_mm=2.0)
    assert (groove.front_wall_mm, groove.back_wall_mm) == (0.7, 0.7)
    assert groove.holds
    assert not Groove(edge_mm=1.98).holds


def test_no_groove_in_1_mm():
    # Curriculum, lesson 13: groove on a 1.0 mm edge, refuse.
    assert Groove(edge_mm=1.0).least_wall_mm == pytest.approx(0.2)
    assert not Groove(edge_mm=1.0).holds


def test_a_groove_beside_the_middle():
    groove = Groove(edge_mm=3.0, width_mm=0.6, middle_mm=1.0)
    assert groove.front_wall_mm == pytest.approx(0.7)
    assert groove.back_wall_mm == pytest.approx(1.7)
    assert Groove(edge_mm=3.0, middle_mm=0.2).front_wall_mm == pytest.approx(-0.1)


def test_wall_beside_a_hole_in_a_round_lens():
    # 20 - 17 - 0.7.
    assert Hole(x_mm=17.0, y_mm=0.0, thickness_mm=2.0).wall_mm(RING) == pytest.approx(2.3, abs=1e-3)
    away = 17.0 / math.sqrt(2.0)
    assert Hole(x_mm=-away, y_mm=-away, thickness_mm=2.0).wall_mm(RING) == pytest.approx(2.3, abs=1e-3)
    assert Hole(x_mm=22.0, y_mm=0.0, thickness_mm=2.0).wall_mm(RING) == pytest.approx(-2.7, abs=1e-3)


def test_the_nearest_place_of_the_outline_counts_not_the_one_straight_out():
    # In the box the hole lies 2 mm from the upper side, and farther from where its own direction leads.
    hole = Hole(x_mm=15.0, y_mm=13.0, thickness_mm=2.0, diameter_mm=1.4)
    assert hole.wall_mm(BOX) == pytest.approx(2.0 - 0.7, abs=1e-6)


def test_what_speaks_against_a_hole():
    good = Hole(x_mm=17.0, y_mm=0.0, thickness_mm=1.5)
    assert good.faults(RING, bears_holes=True) == ()
    assert good.faults(RING, bears_holes=False) == ("the material bears no holes: cracks run from them",)
    bad = Hole(x_mm=18.5, y_mm=0.0, thickness_mm=1.2)
    assert bad.faults(RING, bears_holes=True) == (
        "the lens is 1.20 mm thick there and a hole needs 1.5 mm",
        "0.80 mm are left to the outline and 1.5 mm are needed",
    )


def test_two_chamfers_of_an_edge():
    assert chamfer_leg_mm(0.4) == pytest.approx(0.4 / math.sqrt(2.0))
    assert flat_left_mm(2.0, face_mm=0.4) == pytest.approx(2.0 - 0.4 * math.sqrt(2.0))
    assert flat_left_mm(0.3) < 0.0


def test_numbers_no_edge_has_are_refused():
    with pytest.raises(LabError, match="edge 0 is out of range"):
        Groove(edge_mm=0.0)
    with pytest.raises(LabError, match="width of a groove for a cord 2 is out of range"):
        Groove(edge_mm=3.0, width_mm=2.0)
    with pytest.raises(LabError, match="middle of the groove 4 is out of range"):
        Groove(edge_mm=3.0, middle_mm=4.0)
    with pytest.raises(LabError, match="thickness at the hole 0 is out of range"):
        Hole(x_mm=1.0, y_mm=1.0, thickness_mm=0.0)
    with pytest.raises(LabError, match="hole: x_mm nan is not a finite number"):
        Hole(x_mm=math.nan, y_mm=1.0, thickness_mm=2.0)
    with pytest.raises(LabError, match="diameter of a hole 5 is out of range"):
        Hole(x_mm=1.0, y_mm=1.0, thickness_mm=2.0, diameter_mm=5.0)
    with pytest.raises(LabError, match="width of the safety chamfer, along its own face 2 is out of range"):
        chamfer_leg_mm(2.0)
    with pytest.raises(LabError, match="edge -1 is out of range"):
        flat_left_mm(-1.0)
