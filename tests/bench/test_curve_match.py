"""Block curve against lens front: the gap, what bears, and what a wrong curve costs."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.bench.contact import block_contact
from lablib.bench.curve_match import (
    block_match,
    contact_area_share,
    contact_turning_share,
    curve_radius_mm,
    mean_squeeze_mm,
    opens,
    rim_gap_mm,
)
from lablib.bench.faces import LensFaces, engraved_curvature_per_mm, engraved_curve_d, sphere_sag_mm
from lablib.bench.holding import holding
from lablib.bench.machine import Bench
from lablib.bench.setup import Setup
from lablib.errors import LabError

ROUND = block_contact("round")
CURVES = st.integers(0, 40).map(lambda quarter: quarter / 4.0)


def front(curve_d: float) -> LensFaces:
    return LensFaces.spheres(front_d=curve_d, back_d=-6.0)


def test_base_6_block_on_a_base_2_front():
    # Curriculum: gap 0.55 mm at 12 mm radius.
    assert rim_gap_mm(block_curve_d=6.0, front_curve_d=2.0, away_mm=12.0) == pytest.approx(0.55, abs=0.005)
    assert opens(rim_gap_mm(block_curve_d=6.0, front_curve_d=2.0, away_mm=12.0)) == "in the middle"
    assert opens(rim_gap_mm(block_curve_d=2.0, front_curve_d=6.0, away_mm=12.0)) == "at the rim"
    assert opens(rim_gap_mm(block_curve_d=4.0, front_curve_d=4.0, away_mm=12.0)) == "nowhere"


def test_radius_of_a_curve():
    # 530 / F: 88.33 mm for 6 D, 265 mm for 2 D, none for a flat one.
    assert curve_radius_mm(6.0) == pytest.approx(88.333, abs=0.0005)
    assert curve_radius_mm(2.0) == pytest.approx(265.0)
    assert curve_radius_mm(0.0) == math.inf
    assert engraved_curve_d(engraved_curvature_per_mm(4.25)) == pytest.approx(4.25)


def test_sagitta_of_a_sphere():
    # Handbook cap: r 88.33, y 25 gives 3.61 (curriculum).
    assert sphere_sag_mm(1.0 / 88.33, 25.0) == pytest.approx(3.61, abs=0.005)
    assert sphere_sag_mm(0.0, 25.0) == 0.0


@settings(max_examples=40, deadline=None)
@given(block=CURVES, lens=CURVES)
def test_gap_changes_its_sign_when_block_and_front_change_places(block: float, lens: float):
    there = rim_gap_mm(block_curve_d=block, front_curve_d=lens, away_mm=12.0)
    back = rim_gap_mm(block_curve_d=lens, front_curve_d=block, away_mm=12.0)
    assert there == pytest.approx(-back, abs=1e-12)


@pytest.mark.parametrize(("block", "lens"), [(6.0, 2.0), (2.0, 6.0), (6.0, 4.0), (4.0, 6.0), (0.5, 8.0)])
def test_closed_form_against_the_pressed_pad(block: float, lens: float):
    match = block_match(ROUND, front(lens), block_curve_d=block, clamp_n=290.0)
    gap = rim_gap_mm(block_curve_d=block, front_curve_d=lens, away_mm=12.0)
    squeeze = mean_squeeze_mm(100.0, ROUND.area_mm2)
    assert match.bearing.area == pytest.approx(
        contact_area_share(rim_gap_mm=gap, mean_squeeze_mm=squeeze), abs=0.01
    )
    assert match.bearing.turning == pytest.approx(
        contact_turning_share(rim_gap_mm=gap, mean_squeeze_mm=squeeze), abs=0.01
    )


@pytest.mark.parametrize("block", ["round", "half-eye"])
def test_a_matched_block_bears_evenly(block: str):
    match = block_match(block_contact(block), front(4.0), block_curve_d=4.0, clamp_n=300.0)
    bearing = match.bearing
    assert (bearing.area, bearing.turning, bearing.friction_radius) == pytest.approx(
        (1.0, 1.0, 1.0), abs=1e-9
    )


@settings(max_examples=30, deadline=None)
@given(lens=CURVES, nearer=st.integers(0, 12), farther=st.integers(1, 12), sign=st.sampled_from([-1.0, 1.0]))
def test_a_block_farther_off_never_bears_with_more(lens: float, nearer: int, farther: int, sign: float):
    shares = []
    for off in (nearer, nearer + farther):
        block = lens + sign * off / 4.0
        if not 0.0 <= block <= 12.0:
            return
        shares.append(block_match(ROUND, front(lens), block_curve_d=block, clamp_n=300.0).bearing.turning)
    assert shares[1] <= shares[0] + 1e-9


def test_steep_block_bears_on_its_rim_and_flat_one_in_the_middle():
    steep = block_match(ROUND, front(2.0), block_curve_d=6.0, clamp_n=290.0)
    flat = block_match(ROUND, front(6.0), block_curve_d=2.0, clamp_n=290.0)
    assert steep.clamped.farther_out > 0.0 > flat.clamped.farther_out
    middle = np.argmin(steep.clamped.face.away_mm)
    assert steep.pressed_on.pressure_mpa[middle] == 0.0
    assert flat.pressed_on.pressure_mpa[middle] == pytest.approx(flat.pressed_on.peak_mpa)


def test_a_toric_front_bears_along_its_meridian():
    curved = {"back_flat_per_mm": 0.01, "back_steep_per_mm": 0.01}
    flat, steep = engraved_curvature_per_mm(4.0), engraved_curvature_per_mm(8.0)
    faces = LensFaces(front_flat_per_mm=flat, front_steep_per_mm=steep, front_flat_deg=90.0, **curved)
    on = block_match(ROUND, faces, block_curve_d=6.0, clamp_n=300.0).pressed_on
    # Along y the front is the flatter one, so there the block of 6 D, steeper, bears on its rim.
    up = on.pressure_mpa[np.abs(on.face.x_mm) < 1.0].mean()
    assert up > on.pressure_mpa[np.abs(on.face.y_mm) < 1.0].mean()


def test_what_a_wrong_block_curve_costs():
    setup, faces = Setup(coat="slick"), LensFaces.spheres(front_d=2.0, back_d=-8.0)

    def held(**changed: object):
        chosen = Setup(coat="slick", **changed)
        return holding(chosen, centre_thickness_mm=1.2, bench=Bench(), faces=faces)

    even = holding(setup, centre_thickness_mm=1.2, bench=Bench())
    matched, steep = held(block_curve_d=2.0), held(block_curve_d=6.0)
    assert matched.torque_nmm == pytest.approx(even.torque_nmm, rel=1e-9)
    assert matched.clamp_cap_n == pytest.approx(even.clamp_cap_n, rel=1e-9)
    # On its rim the block bends the lens over the tip: it bears less clamp force, and both sides lose.
    assert steep.clamp_cap_n < 0.65 * even.clamp_cap_n
    assert steep.front_nmm < even.front_nmm
    assert steep.back_nmm < even.back_nmm
    # The adhesive takes hold where the pad was pressed on: more clamp force brings none of it back.
    forces = [
        held(block_curve_d=6.0, clamp_force_n=force).joints[0].bearing.turning for force in (150.0, 290.0)
    ]
    assert forces[0] == forces[1] < 1.0


def test_a_very_thin_lens_is_pressed_with_less_than_a_chuck_is_set_to():
    setup, faces = Setup(block_curve_d=6.0, tip_face_mm=75.0), front(2.0)
    held = holding(setup, centre_thickness_mm=0.6, bench=Bench(), faces=faces)
    assert held.clamp_force_n == held.clamp_cap_n < 73.0


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: rim_gap_mm(block_curve_d=6.0, front_curve_d=2.0, away_mm=0.0),
            "rim of the block 0 is out of range: give above 0 and up to 30 mm",
        ),
        (
            lambda: rim_gap_mm(block_curve_d=60.0, front_curve_d=2.0, away_mm=12.0),
            "block curve 60 D does not reach 12 mm: give a flatter curve",
        ),
        (
            lambda: contact_area_share(rim_gap_mm=0.5, mean_squeeze_mm=0.0),
            "mean squeeze of the pad 0 is out of range: give above 0 and up to 30 mm",
        ),
        (
            lambda: block_match(ROUND, front(2.0), block_curve_d=13.0, clamp_n=300.0),
            "curve of the block, for index 1.530 13 is out of range: give from 0 to 12 D",
        ),
        (
            lambda: block_match(ROUND, front(2.0), block_curve_d=6.0, clamp_n=600.0),
            "clamp force 600 is out of range: give above 0 and up to 500 N",
        ),
        (
            lambda: LensFaces.spheres(front_d=math.nan, back_d=-6.0),
            "lens face: front_flat_per_mm nan is not a finite number: give a number",
        ),
        (
            lambda: holding(Setup(block_curve_d=6.0), centre_thickness_mm=2.0, bench=Bench()),
            "block curve 6 D has no lens to lie on: hand over the lens's faces, or leave it out",
        ),
        (
            lambda: holding(Setup(tip_face_mm=75.0), centre_thickness_mm=2.0, bench=Bench()),
            "tip face 75 mm has no lens to lie on: hand over the lens's faces, or leave it out",
        ),
    ],
)
def test_curves_that_cannot_be_laid_on(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words
