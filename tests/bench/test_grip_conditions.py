"""Conditions of the grip: each weakens its own joints, none is there unless it is asked for."""

import math
from dataclasses import replace

import numpy as np
import pytest
from evaluation import assert_comes_out
from reference_jobs import lens, superellipse, work

from lablib.bench.clearance import box_room_mm, clearance_mm
from lablib.bench.contact import block_contact
from lablib.bench.creep import creep_mm, creep_of, creep_per_degree_mm
from lablib.bench.faces import LensFaces
from lablib.bench.geometry import outline_from
from lablib.bench.grip_workings import contact_workings, creep_working, gap_workings, key_working
from lablib.bench.holding import Holding, holding
from lablib.bench.holding_workings import clamp_cap_working
from lablib.bench.key_play import play_deg, play_mm
from lablib.bench.machine import Bench
from lablib.bench.margin import CutResult, Place, work_cut
from lablib.bench.parameter import parameters
from lablib.bench.setup import Setup, block_face_left, block_faces, grip_layers
from lablib.bench.workings import margin_workings
from lablib.errors import LabError

BENCH = Bench()


def held(**setup: object) -> Holding:
    return holding(Setup(**setup), centre_thickness_mm=2.0, bench=BENCH)


def torques(**setup: object) -> dict[str, float]:
    return {joint.name: joint.torque_nmm for joint in held(**setup).joints}


def test_a_grip_layer_lets_a_slick_coat_be_gripped_like_an_ordinary_one():
    layered, coated, slick = held(coat="slick", grip_layer="present"), held(coat="coated"), held(coat="slick")
    assert layered.torque_nmm == coated.torque_nmm > slick.torque_nmm
    assert layered.back_nmm == coated.back_nmm > slick.back_nmm
    assert held(coat="slick", grip_layer="stripped").torque_nmm == slick.torque_nmm


@pytest.mark.parametrize("coat", ["uncoated", "coated"])
@pytest.mark.parametrize("layer", ["present", "stripped"])
def test_only_a_slick_coat_has_a_grip_layer(coat: str, layer: str):
    assert held(coat=coat, grip_layer=layer).torque_nmm == held(coat=coat).torque_nmm


def test_a_crease_takes_its_share_of_the_films_joints_and_of_no_other():
    flat, creased = torques(film=True), torques(film=True, film_wrinkle=0.3)
    assert creased["block to pad"] == flat["block to pad"]
    assert creased["pad core"] == flat["pad core"]
    for name, shear in (("pad to film", 0.9 * 0.15), ("film to coat", 0.75 * 0.15)):
        # A joint loses 30 % of its adhesion; friction does not ask for area.
        assert flat[name] - creased[name] == pytest.approx(0.3 * shear * 3619.11, rel=1e-4)
    assert torques(film_wrinkle=0.3) == torques()


def test_a_blocks_face_is_on_its_own_joint_alone():
    clean = torques()
    for name, (shear, friction) in {"worn": (0.7, 0.85), "dirty": (0.35, 0.5)}.items():
        found = torques(block_face=name)
        expected = shear * 0.15 * 3619.11 + friction * 0.55 * 300.0 * 8.0
        assert found["block to pad"] == pytest.approx(expected, rel=1e-4)
        assert {**found, "block to pad": 0.0} == {**clean, "block to pad": 0.0}
        assert block_face_left(name) == (shear, friction)
    # Old adhesive on the block is the weak link even of an ordinary lens.
    assert held(block_face="dirty").weakest.name == "block to pad"


def test_conditions_have_words():
    assert set(grip_layers()) == {"none", "present", "stripped"}
    assert list(block_faces()) == ["clean", "worn", "dirty"]
    assert all(grip_layers().values())
    assert all(block_faces().values())


def test_key_play():
    # Arithmetic: atan(0.2 / 8) = 1.432 degrees; back again; nothing for a new key.
    assert play_deg(0.2) == pytest.approx(1.432, abs=0.0005)
    assert play_deg(0.2, key_radius_mm=4.0) == pytest.approx(2.862, abs=0.0005)
    assert play_mm(play_deg(0.35)) == pytest.approx(0.35, rel=1e-12)
    assert play_deg(0.0) == 0.0


def test_key_play_takes_nothing_from_the_hold():
    assert held(key_play_mm=0.4).torque_nmm == held().torque_nmm


def test_creep_of_the_hard_job():
    # Slip model of the workbook: about 0.03 mm a degree.
    result = work()
    assert creep_per_degree_mm(result, result.least) == pytest.approx(0.0345, abs=0.0005)
    assert creep_mm(result, 10.0) == pytest.approx(0.345, abs=0.005)
    assert creep_mm(result, 0.0) == 0.0


def test_creep_against_the_limit_curve_itself():
    # Two points on the ellipse close together: the lens moves square to the line between them.
    result = work()
    held_by, place = result.holding, result.least
    arm, sideways = result.cutting.arm_mm[place.index], result.cutting.sideways
    force = result.capacity_n[place.index]
    torque, load = force * arm, force * sideways
    nearby = torque * 1.0001
    there = held_by.force_n * math.sqrt(1.0 - (nearby / held_by.torque_nmm) ** 2)
    shift_per_radian = (nearby - torque) / (load - there)
    assert creep_per_degree_mm(result, place) == pytest.approx(math.radians(shift_per_radian), rel=0.002)


def test_creep_where_a_force_has_no_arm():
    result = work()
    straight = replace(result, cutting=replace(result.cutting, arm_mm=np.zeros_like(result.cutting.arm_mm)))
    assert np.all(np.isinf(creep_of(straight)))
    assert np.isinf(creep_per_degree_mm(straight, Place(turn=1, point=0, angle_deg=0.0)))


def test_clearance_about_another_point():
    outline = superellipse(b_mm=26.0)
    middle = clearance_mm(outline, block_contact("round"))
    assert middle == pytest.approx(1.0, abs=1e-9)
    raised = clearance_mm(outline_from(outline, x_mm=0.0, y_mm=3.0), block_contact("round"))
    assert raised == pytest.approx(-2.0, abs=0.02)
    assert clearance_mm(outline, block_contact("half-eye")) == pytest.approx(4.5, abs=1e-9)


def test_room_to_the_box():
    room = box_room_mm(a_mm=50.0, b_mm=28.0, block="half-eye", right_mm=-2.0, up_mm=3.0)
    assert (room.up_mm, room.down_mm, room.right_mm, room.left_mm) == pytest.approx((2.5, 8.5, 15.0, 11.0))
    assert room.least_mm == pytest.approx(2.5)


FACES = LensFaces.spheres(front_d=2.0, back_d=-8.0)


def uneven(**setup: object) -> CutResult:
    parts = replace(lens(), faces=FACES)
    chosen = Setup(coat="slick", **setup)
    return work_cut(parts, material=work().material, setup=chosen, bench=BENCH)


@pytest.mark.parametrize(
    "setup",
    [
        {"block_curve_d": 6.0},
        {"block_curve_d": 6.0, "block": "half-eye"},
        {"block_curve_d": 0.0, "film": True, "film_wrinkle": 0.4, "block_face": "worn"},
        {"tip_face_mm": 100.0, "tip_stiffness": "stiff"},
        {"film": True, "film_wrinkle": 0.5, "grip_layer": "present", "clamp_force_n": 250.0},
    ],
)
def test_workings_of_an_uneven_grip_come_out(setup: dict):
    result = uneven(**setup)
    for working in margin_workings(result):
        assert_comes_out(working)
    by_symbol = {working.symbol: working for working in margin_workings(result)}
    assert by_symbol["F_0"].value == result.holding.force_n
    assert by_symbol["T_0"].value == result.holding.torque_nmm
    assert ("F_front" in by_symbol) == any(not joint.bearing.is_even for joint in result.holding.joints)


def test_workings_of_the_grip_come_out():
    steps = (
        *gap_workings(block_curve_d=6.0, front_curve_d=2.0, away_mm=12.0),
        *gap_workings(block_curve_d=4.0, front_curve_d=-1.5, away_mm=10.0),
        *contact_workings(gap_mm=0.547, force_n=100.0, area_mm2=452.39),
        *contact_workings(gap_mm=-0.15, force_n=100.0, area_mm2=452.39),
        key_working(0.2),
        creep_working(work()),
        clamp_cap_working(1.2, BENCH),
        clamp_cap_working(1.2, BENCH, bending_share=0.0),
    )
    for step in steps:
        assert_comes_out(step)
    assert steps[4].value == pytest.approx(0.547, abs=0.0005)
    assert steps[-2].value == pytest.approx(290.3, abs=0.05)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: Setup(grip_layer="some"),
            "grip_layer 'some' is not known: give one of none, present, stripped",
        ),
        (
            lambda: Setup(block_face="old"),
            "block_face 'old' is not known: give one of clean, worn, dirty",
        ),
        (
            lambda: Setup(film_wrinkle=0.9),
            "share of a film bridged by air under a crease 0.9 is out of range: give from 0 to 0.6",
        ),
        (
            lambda: Setup(key_play_mm=-0.1),
            "play of the block key -0.1 is out of range: give from 0 to 0.6 mm",
        ),
        (lambda: Setup(tip_swivels="no"), "tip_swivels 'no' is not yes or no: give true or false"),
        (
            lambda: Setup(tip_face_mm=10.0),
            "radius of the face of the back tip 10 is out of range: give from 30 to 500 mm",
        ),
        (
            lambda: Setup(block_curve_d=-2.0),
            "curve of the block, for index 1.530 -2 is out of range: give from 0 to 12 D",
        ),
        (
            lambda: creep_mm(work(), -1.0),
            "slip -1 is out of range: give from 0 to 36000 degrees",
        ),
        (
            lambda: box_room_mm(a_mm=50.0, b_mm=0.0, block="round"),
            "box B 0 is out of range: give above 0 and up to 90 mm",
        ),
        (
            lambda: gap_workings(block_curve_d=6.0, front_curve_d=0.0, away_mm=12.0),
            "front curve 0 D is flat: its sagitta is 0, there is nothing to work",
        ),
        (
            lambda: contact_workings(gap_mm=0.0, force_n=100.0, area_mm2=452.0),
            "gap 0 mm: block and front are of one curve and all of the pad bears",
        ),
    ],
)
def test_conditions_the_bench_does_not_know(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words


def test_every_condition_is_neutral_by_default():
    usual = Setup()
    assert (usual.grip_layer, usual.film_wrinkle, usual.block_face, usual.key_play_mm) == (
        "none",
        0.0,
        "clean",
        0.0,
    )
    assert (usual.block_curve_d, usual.tip_face_mm) == (None, None)
    assert block_face_left("clean") == (1.0, 1.0)
    assert all(joint.bearing.is_even for joint in held(film=True).joints)
    for name in ("film_wrinkle", "key_play_mm"):
        assert parameters()[name].default == 0.0
