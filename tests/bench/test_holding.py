"""What holds the lens: printed values of the slip model, and its tip fits and load ellipse worked anew."""

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import brentq

from lablib.bench.holding import Holding, clamp_cap_n, holding, stack_torque_nmm
from lablib.bench.joints import pad_age_factors, warmth_factor
from lablib.bench.machine import Bench
from lablib.bench.parameter import table
from lablib.bench.setup import Setup
from lablib.errors import LabError

BENCH = Bench()


def held(centre_thickness_mm: float = 2.0, *, bench: Bench = BENCH, **setup: object) -> Holding:
    setup = {"coat": "slick"} | setup
    return holding(Setup(**setup), centre_thickness_mm=centre_thickness_mm, bench=bench)


@pytest.mark.parametrize(
    ("clamp", "expected"),
    # Slip model of the workbook, calibration: exact vector, tau 0.03, mu 0.22, disc of 12 mm.
    [(100.0, 284.6), (200.0, 460.6), (300.0, 636.6), (400.0, 812.6)],
)
def test_front_torque_over_clamp_force(clamp: float, expected: float):
    result = held(clamp_force_n=clamp)
    assert result.front_nmm == pytest.approx(expected, abs=0.05)
    assert result.weakest.name == "pad to coat"
    assert (result.weakest.shear_mpa, result.weakest.friction) == pytest.approx((0.03, 0.22), abs=1e-12)


@pytest.mark.parametrize(
    ("thickness", "setup", "torque", "force"),
    # Slip model of the workbook, simulation vectors: T_0 and F_0.
    [
        (2.0, {}, 979.0, 136.6),
        (1.2, {}, 951.0, 132.6),
        (1.2, {"skin": "oily"}, 459.0, 64.3),
    ],
)
def test_both_sides_together(thickness: float, setup: dict, torque: float, force: float):
    result = held(thickness, **setup)
    assert result.torque_nmm == pytest.approx(torque, abs=0.5)
    assert result.force_n == pytest.approx(force, abs=0.05)


def test_the_weakest_joint_governs_and_the_rest_adds_nothing():
    # Slip model of the workbook: with an ordinary coat, or a film, the core governs with 1.27 N m.
    for setup in ({"coat": "coated"}, {"film": True}):
        assert held(**setup).weakest.name == "pad core"
        assert held(**setup).front_nmm == pytest.approx(1270.0, abs=5.0)
    stronger = replace(BENCH, block_pad_friction=0.65, core_shear_mpa=0.6)
    assert held(bench=stronger).front_nmm == held().front_nmm


def test_front_in_series_and_back_beside_it():
    # Slip model of the workbook: core 1.27, coat 0.64, back 0.34 N m hold 0.98, as T_0 of 979 N mm above.
    assert stack_torque_nmm((1270.0, 640.0), 340.0) == 980.0
    result = held()
    assert result.torque_nmm == stack_torque_nmm(
        [joint.torque_nmm for joint in result.joints], result.back_nmm
    )


@pytest.mark.parametrize(
    ("setup", "names"),
    [
        ({}, ["block to pad", "pad core", "pad to coat"]),
        ({"coat": "uncoated"}, ["block to pad", "pad core", "pad to lens"]),
        ({"film": True}, ["block to pad", "pad core", "pad to film", "film to coat"]),
        ({"coat": "uncoated", "film": True}, ["block to pad", "pad core", "pad to film", "film to lens"]),
    ],
)
def test_the_front_stack_from_block_to_lens(setup: dict, names: list):
    assert [joint.name for joint in held(**setup).joints] == names


def test_back_tip():
    # mu N r_eff q_T with r_eff 2/3 of 9 mm: 0.34 N m on a slick coat, 0.60 on an ordinary one at 300 N.
    assert held().back_nmm == pytest.approx(0.20 * 300.0 * 6.0 * 0.95, rel=1e-12)
    assert held(coat="coated").back_nmm == pytest.approx(600.0, abs=5.0)
    assert held(back_tape=True).back_nmm == pytest.approx(0.45 * 300.0 * 6.0 * 0.95, rel=1e-12)


def test_an_idle_tip_holds_no_torque_but_still_holds_sideways():
    idle = held(back_tip_idles=True)
    assert idle.back_nmm == 0.0
    assert idle.back_force_n == held().back_force_n
    assert idle.torque_nmm == idle.front_nmm


@pytest.mark.parametrize(
    ("thickness", "expected"),
    # Slip model of the workbook, clamp cap 201.6 t_c^2.
    [(1.0, 202.0), (1.2, 290.0), (1.5, 454.0)],
)
def test_clamp_cap(thickness: float, expected: float):
    assert clamp_cap_n(thickness, BENCH) == pytest.approx(expected, abs=0.5)


def test_clamp_cap_never_above_what_a_chuck_gives():
    assert clamp_cap_n(3.0, BENCH) == 500.0
    assert clamp_cap_n(0.5, replace(BENCH, bending_share=0.0)) == 500.0


def test_clamp_cap_of_a_flat_plate():
    # Even discs of 12 and 9 mm: share ln(12/9), 200 N at 1.2 mm (slip model of the workbook).
    flat = replace(BENCH, bending_share=math.log(12.0 / 9.0))
    assert clamp_cap_n(1.2, flat) == pytest.approx(200.0, abs=5.0)


def test_clamp_force_by_default_and_as_set():
    assert held(2.0).clamp_force_n == 300.0
    assert held(1.2).clamp_force_n == held(1.2).clamp_cap_n < 300.0
    assert held(1.2, clamp_force_n=400.0).clamp_force_n == 400.0


def test_a_lens_with_no_thickness_cannot_be_clamped():
    with pytest.raises(LabError) as caught:
        held(0.0)
    assert str(caught.value) == "centre thickness 0 is out of range: give above 0 and up to 60 mm"


def test_pad_age():
    # Slip model of the workbook: tau x max(0.35, 1 - 0.03 m), mu x max(0.7, 1 - 0.01 m), not the core.
    assert pad_age_factors(12.0, BENCH) == pytest.approx((0.64, 0.88))
    assert pad_age_factors(24.0, BENCH) == pytest.approx((0.35, 0.76))
    faster = replace(BENCH, age_friction_loss_per_month=0.02)
    assert pad_age_factors(24.0, faster) == pytest.approx((0.35, 0.7))
    old, fresh = held(film=True, pad_age_months=12.0), held(film=True)
    shares = [aged.shear_mpa / new.shear_mpa for aged, new in zip(old.joints, fresh.joints, strict=True)]
    assert shares == pytest.approx([0.64, 1.0, 0.64, 1.0])
    assert held(pad_age_months=12.0).weakest.friction == pytest.approx(0.22 * 0.88)


def test_temperature():
    # Slip model of the workbook: tau x exp(-0.03 (T - 23)) on every joint; 23 K more halve it.
    assert warmth_factor(23.0, BENCH) == 1.0
    assert warmth_factor(46.0, BENCH) == pytest.approx(0.5, abs=0.005)
    warm, usual = held(temperature_c=33.0), held()
    for one, other in zip(warm.joints, usual.joints, strict=True):
        assert one.shear_mpa == pytest.approx(other.shear_mpa * math.exp(-0.3))
        assert one.friction == other.friction


def test_skin_is_on_the_lens_faces_only():
    oily, clean = held(skin="oily", film=True), held(film=True)
    assert [joint.torque_nmm for joint in oily.joints[:3]] == [joint.torque_nmm for joint in clean.joints[:3]]
    assert oily.joints[3].shear_mpa == pytest.approx(0.35 * clean.joints[3].shear_mpa)
    assert oily.joints[3].friction == pytest.approx(0.5 * clean.joints[3].friction)
    assert oily.back_nmm == pytest.approx(0.5 * clean.back_nmm)


def test_joints_of_one_shape_carry_torque_and_force_in_one_proportion():
    result = held(block="half-eye", film=True)
    for joint in result.joints:
        assert joint.torque_nmm == pytest.approx(joint.force_n * 6.883, rel=1e-4)


def foundation(back_mm: float, tip_mm: float, stiffness: float) -> tuple[float, float]:
    """Share of an even contact's torque and force: rubber tip of 9 mm at 300 N on a foundation.

    Pressure k max(0, indentation less gap), friction ~ p^(-1/3), so shear stress ~ p^(2/3).
    """
    radius = (np.arange(4000) + 0.5) * 9.0 / 4000
    area = 2.0 * np.pi * radius * 9.0 / 4000
    bare = radius**2 / 2.0 * (1.0 / tip_mm - 1.0 / back_mm)
    gap = bare - bare.min()

    def pressure(depth: float) -> np.ndarray:
        return stiffness * np.maximum(depth - gap, 0.0)

    depth = brentq(lambda depth: float((pressure(depth) * area).sum()) - 300.0, 0.0, 20.0)
    shear, even = pressure(depth) ** (2.0 / 3.0), (300.0 / area.sum()) ** (2.0 / 3.0)
    torque = (shear * radius * area).sum() / (even * (radius * area).sum())
    return float(torque), float((shear * area).sum() / (even * area.sum()))


@pytest.mark.parametrize(
    ("fit", "back", "tip"), [("matched", 60.0, 60.0), ("flat-tip", 50.0, 90.0), ("steep-tip", 150.0, 60.0)]
)
@pytest.mark.parametrize(("stiffness", "words"), [(4.6, "soft"), (40.0, "stiff")])
def test_tip_fits_against_the_foundation_model(
    fit: str, back: float, tip: float, stiffness: float, words: str
):
    result = held(tip_fit=fit, tip_stiffness=words)
    expected = foundation(back, tip, stiffness)
    assert (result.back_torque_fit, result.back_force_fit) == pytest.approx(expected, abs=0.005)


def test_tip_fits_as_tabled():
    # Slip model of the workbook: q_T soft, stiff; q_F soft, stiff.
    expected = {
        "matched": (1.0, 1.0, 1.0, 1.0),
        "flat-tip": (1.08, 0.97, 0.98, 0.70),
        "steep-tip": (0.87, 0.36, 0.97, 0.69),
        "toric": (0.97, 0.81, 0.98, 0.66),
        "tilted": (0.88, 0.74, 0.89, 0.60),
    }
    assert {
        name: (*row["torque"].values(), *row["force"].values()) for name, row in table()["fit"].items()
    } == expected
    assert (held().back_torque_fit, held().back_force_fit) == (0.95, 0.95)


def test_torque_and_sideways_load_share_the_hold():
    result = held()
    arm, sideways = np.array([0.0, 5.0, 30.0, -58.0]), math.sqrt(5.0)
    force = result.capacity_n(arm, sideways)
    used = (force * arm / result.torque_nmm) ** 2 + (force * sideways / result.force_n) ** 2
    assert used == pytest.approx(np.ones(4), rel=1e-12)
    assert force[0] == pytest.approx(result.force_n / sideways)


def test_an_evenly_pressed_disc_lies_little_inside_the_ellipse():
    # A disc of even friction turning about a point at the distance c from its middle: torque about the middle
    # and sideways force, as shares of their greatest. Slip model of the workbook: up to 6.5 % inside.
    radius, angle = np.meshgrid((np.arange(300) + 0.5) / 300, (np.arange(360) + 0.5) * np.pi / 180)
    x, y, area = radius * np.cos(angle), radius * np.sin(angle), radius
    shares = []
    for away in np.geomspace(0.02, 20.0, 120):
        distance = np.hypot(x - away, y)
        force = float((area * (away - x) / distance).sum() / area.sum())
        torque = float((area * (x * (x - away) + y * y) / distance).sum() / (area * radius).sum())
        shares.append(math.hypot(force, torque))
    assert max(shares) < 1.001
    assert min(shares) == pytest.approx(0.935, abs=0.002)
