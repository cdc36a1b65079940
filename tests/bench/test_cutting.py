"""Bite, arms and forces: printed values, a search for the wheel's place, and the volume that goes."""

import math
from dataclasses import replace

import numpy as np
import pytest
from reference_jobs import REFERENCE, lens, superellipse, work
from scipy.integrate import quad

from lablib.bench.cutting import Touch, tangential_force_n, touch_of
from lablib.bench.geometry import angles_rad, circle_from
from lablib.bench.machine import Bench, lens_material
from lablib.bench.plan import UncutLens

WHEEL = 50.0
POINTS = 7200


def ellipse(points: int = POINTS) -> np.ndarray:
    return superellipse(2.0, 50.0, 36.0, points)


def normals(radius: np.ndarray, touch: Touch) -> np.ndarray:
    """Direction of the outward normal at every point [radians]."""
    return angles_rad(radius.size) - np.arctan2(touch.slope_mm, touch.support_mm)


def at_normal(values: np.ndarray, radius: np.ndarray, touch: Touch, psi_deg: float) -> float:
    """A figure where the normal has a direction, read between points."""
    return float(np.interp(math.radians(psi_deg), normals(radius, touch), values))


def test_ellipse_at_45_degrees():
    # Slip model of the workbook: ellipse 25 x 18 at psi 45: h 21.783, h' -6.909, rho 22.852; with d 2 and a
    # wheel of 50 mm radius beta 6.051 degrees, a_T 22.111, a_N 0.696.
    radius = ellipse()
    touch = touch_of(radius, np.full(POINTS, 2.0), WHEEL)
    expected = [
        (touch.support_mm, 21.783),
        (touch.slope_mm, -6.909),
        (radius, 22.852),
        (np.degrees(touch.bite_rad), 6.051),
        (touch.arm_tangential_mm, 22.111),
        (touch.arm_normal_mm, 0.696),
    ]
    for values, printed in expected:
        assert at_normal(values, radius, touch, 45.0) == pytest.approx(printed, abs=5e-4)


def test_ellipse_against_its_support_function():
    # h(psi) = sqrt(a^2 cos^2 + b^2 sin^2), h' its derivative.
    radius = ellipse()
    touch = touch_of(radius, np.zeros(POINTS), WHEEL)
    psi = normals(radius, touch)
    support = np.hypot(25.0 * np.cos(psi), 18.0 * np.sin(psi))
    slope = (18.0**2 - 25.0**2) * np.sin(psi) * np.cos(psi) / support
    assert touch.support_mm == pytest.approx(support, abs=1e-4)
    assert touch.slope_mm == pytest.approx(slope, abs=1e-3)


def test_travel_on_the_ellipse():
    # dphi/dtheta 0.8507 at psi 45 (slip model of the workbook) by the closed forms, and the mean over 16
    # degrees from the closed form of the shaft angle at both ends.
    def shaft(phi: float) -> float:
        psi = math.atan2(25.0**2 * math.sin(phi), 18.0**2 * math.cos(phi))
        support = math.hypot(25.0 * math.cos(psi), 18.0 * math.sin(psi))
        slope = (18.0**2 - 25.0**2) * math.sin(psi) * math.cos(psi) / support
        return psi + math.atan2(slope, support + WHEEL)

    phi = math.atan(18.0**2 / 25.0**2)
    assert 2e-6 / (shaft(phi + 1e-6) - shaft(phi - 1e-6)) == pytest.approx(0.8507, abs=5e-5)
    outline = ellipse(720)
    pace = work({"outline": outline}, bench=Bench(slowing_limit=3.0)).cutting.pace[-1]
    half = math.radians(8.0)
    for at in range(170):
        angle = math.radians(at / 2.0)
        mean = (shaft(angle + half) - shaft(angle - half)) / (2.0 * half)
        assert pace[at] == pytest.approx(max(mean, 1.0 / 3.0), abs=2e-4)


def test_the_controller_slows_no_further_than_its_limit():
    for limit in (1.2, 1.5, 3.0):
        pace = work({"outline": superellipse(3.4)}, bench=Bench(slowing_limit=limit)).cutting.pace
        assert pace.min() == pytest.approx(1.0 / limit)


def test_round_on_centre():
    # Slip model of the workbook: round 35 on centre, d 2: beta 6.933 degrees, a_T 34.379, a_N 10.260.
    touch = touch_of(np.full((1, 720), 35.0), np.full((1, 720), 2.0), WHEEL)
    assert np.degrees(touch.bite_rad) == pytest.approx(np.full((1, 720), 6.933), abs=5e-4)
    assert touch.arm_tangential_mm == pytest.approx(np.full((1, 720), 34.379), abs=5e-4)
    assert touch.arm_normal_mm == pytest.approx(np.full((1, 720), 10.260), abs=5e-4)


def test_round_decentred():
    # h = R + e cos psi, h' = -e sin psi.
    radius = circle_from(70.0, x_mm=3.0, y_mm=0.0, points=POINTS)
    touch = touch_of(radius, np.zeros(POINTS), WHEEL)
    psi = normals(radius, touch)
    assert touch.support_mm == pytest.approx(35.0 + 3.0 * np.cos(psi), abs=1e-5)
    assert touch.slope_mm == pytest.approx(-3.0 * np.sin(psi), abs=1e-5)


def wheel_search(x: np.ndarray, y: np.ndarray, shaft: float) -> tuple[float, float, float]:
    """Press a wheel on a rim from one direction; return its normal's direction and both forces' arms.

    The wheel's centre comes in along the direction until the wheel touches some point of the rim.
    """
    towards = np.array([math.cos(shaft), math.sin(shaft)])
    along, off = x * towards[0] + y * towards[1], y * towards[0] - x * towards[1]
    reach = np.where(np.abs(off) < WHEEL, along + np.sqrt(np.maximum(WHEEL**2 - off**2, 0.0)), -np.inf)
    at = int(reach.argmax())
    normal = (reach[at] * towards - np.array([x[at], y[at]])) / WHEEL
    tangent = np.array([-normal[1], normal[0]])
    # Arm of a force F at the point P about the axis: P x F; arms of unit forces along tangent and inwards.
    tangential = x[at] * tangent[1] - y[at] * tangent[0]
    inward = -(x[at] * normal[1] - y[at] * normal[0])
    return math.atan2(normal[1], normal[0]), tangential, inward


@pytest.mark.parametrize("outline", [ellipse(40_000), superellipse(2.6, points=40_000)])
def test_arms_of_a_light_cut_against_a_search_for_the_wheel(outline: np.ndarray):
    angle = angles_rad(outline.size)
    touch = touch_of(outline, np.zeros(outline.size), WHEEL)
    psi = normals(outline, touch)
    for shaft in np.radians(np.arange(2.0, 89.0, 7.25)):
        normal, tangential, inward = wheel_search(
            outline * np.cos(angle), outline * np.sin(angle), float(shaft)
        )
        assert np.interp(normal, psi, touch.arm_tangential_mm) == pytest.approx(tangential, abs=2e-3)
        # Seen from the lens the normal force pushes inwards: counted like h', its arm is the slope.
        assert np.interp(normal, psi, touch.arm_normal_mm) == pytest.approx(inward, abs=5e-2)


def test_the_sense_hardly_matters_for_a_light_cut():
    # Symmetric outline: the greatest arm is the same either way (slip model of the workbook).
    touch = touch_of(superellipse(), np.zeros(720), WHEEL)
    against = np.abs(touch.arm_tangential_mm + touch.arm_normal_mm / 0.5).max()
    running_with = np.abs(touch.arm_tangential_mm - touch.arm_normal_mm / 0.5).max()
    assert against == pytest.approx(running_with, rel=1e-9)


@pytest.mark.parametrize("depth", [0.5, 1.0, 2.0, 3.0])
@pytest.mark.parametrize("rim", [25.0, 35.0])
def test_the_bite_is_centred_two_thirds_up_its_arc(depth: float, rim: float):
    # Every point of the wheel's arc cutting: it takes what the lens feeds into it, in proportion to the sine
    # of the angle from the bare contact, up to where the wheel leaves the old rim. A round lens on centre.
    between = rim + WHEEL
    out = math.acos((between**2 + WHEEL**2 - (rim + depth) ** 2) / (2.0 * between * WHEEL))
    chips, _ = quad(math.sin, 0.0, out)
    tangential, _ = quad(lambda a: math.sin(a) * (between * math.cos(a) - WHEEL), 0.0, out)
    normal, _ = quad(lambda a: math.sin(a) * between * math.sin(a), 0.0, out)
    touch = touch_of(np.full(8, rim), np.full(8, depth), WHEEL)
    whole = (tangential + normal / 0.5) / chips
    assert touch.arm_tangential_mm[0] + touch.arm_normal_mm[0] / 0.5 == pytest.approx(whole, rel=0.015)


def force(
    removal: float, thickness: float, factor: float = 1.0, *, energy: float = 0.5, **bench: float
) -> float:
    material = replace(REFERENCE, specific_energy_j_per_mm3=energy)
    return float(
        tangential_force_n(
            np.array(removal), np.array(thickness), np.array(factor), material=material, bench=Bench(**bench)
        )
    )


def test_tangential_force_as_printed():
    # Slip model of the workbook: u 0.5, Q 200, v_s 15.708, f_rub 0.15, w 3.2, k 1: 6.846 N.
    assert force(200.0, 3.2) == pytest.approx(6.846, abs=5e-4)
    assert force(200.0, 3.2, 1.4) == pytest.approx(1.4 * 6.8462, abs=5e-4)


def test_tangential_force_of_a_handbook_problem():
    # Surface grinding: wheel 250 mm at 2,600 rpm (34.034 m/s), 17.5 mm3/s, 26 N, u 50.56 J/mm3 (handbook
    # problem, computed). The same rim speed from 130 mm at 5,000 rpm, a glass's u of 5.056, ten times Q.
    material = replace(lens_material("crown-glass-1.523"), specific_energy_j_per_mm3=5.056)
    bench = Bench(wheel_diameter_mm=130.0, wheel_speed_rpm=5000.0, motor_power_w=1100.0)
    assert bench.surface_speed_m_per_s == pytest.approx(34.034, abs=5e-4)
    got = tangential_force_n(np.array(175.0), np.array(0.0), np.array(1.0), material=material, bench=bench)
    assert float(got) == pytest.approx(26.0, abs=0.005)


def test_the_motor_gives_no_more_than_its_power():
    assert force(20_000.0, 5.0) == pytest.approx(600.0 / 15.708, abs=1e-3)


def lying_between(uncut: UncutLens, at: int) -> float:
    """Integral of t r between outline and rim along one direction, by scipy.integrate.quad [mm3/radian]."""
    angle = math.radians(at / 2.0)

    def moment(radius: float) -> float:
        return radius * float(uncut.at_mm(np.full(720, radius))[at])

    inner, outer = float(uncut.outline_mm[at]), float(uncut.rim_mm[at])
    assert uncut.thickness_mm(np.array(inner * math.cos(angle)), np.array(inner * math.sin(angle))) > 0.0
    return quad(moment, inner, outer)[0] if outer > inner else 0.0


PLUS = {"power_d": 4.0, "index": 1.5, "centre_mm": 4.2, "blank_mm": 70.0}


@pytest.mark.parametrize(
    "parts", [{}, {"power_d": -4.0, "blank_mm": 56.0}, {"away_mm": 4.0, "outline": superellipse(3.2)}, PLUS]
)
@pytest.mark.parametrize("crib", [None, 3.0])
def test_volume_is_conserved_over_turns_in_every_direction(parts: dict, crib: float | None):
    # What all turns take, cribbing included, is what lies between the outline and the rim.
    result, uncut = work(parts, crib_allowance_mm=crib), lens(**parts)
    taken = result.cutting.volume_mm3_per_rad.sum(axis=0)
    if result.crib:
        taken = taken + result.crib.cutting.volume_mm3_per_rad.sum(axis=0)
    for at in range(0, 720, 45):
        assert taken[at] == pytest.approx(lying_between(uncut, at), rel=1e-5, abs=1e-3)


def test_removed_volume_is_the_blank_less_the_finished_lens():
    # scipy.integrate.quad over the whole blank and over the lens inside the outline, in polar coordinates
    # about the optical centre and the chuck axis.
    uncut = lens()

    def thickness(x: float, y: float) -> float:
        return float(uncut.thickness_mm(np.array(x), np.array(y)))

    blank = 2.0 * math.pi * quad(lambda r: r * thickness(2.0 + r, 0.0), 0.0, 36.0)[0]
    finished = 0.0
    for at, reach in enumerate(uncut.outline_mm[::4]):
        angle = math.radians(2.0 * at)
        across, up = math.cos(angle), math.sin(angle)
        finished += quad(lambda r, a=across, u=up: r * thickness(r * a, r * u), 0.0, float(reach))[0]
    finished *= 2.0 * math.pi / 180
    assert work().removed_volume_mm3 == pytest.approx(blank - finished, rel=1e-5)


def test_nothing_is_cut_where_there_is_no_bite():
    cutting = work({"blank_mm": 60.0}).cutting
    air = cutting.plan.depth_mm <= 1e-6
    assert air.any()
    assert cutting.force_n[air].max() == 0.0
    assert cutting.force_n[~air].min() > 0.0


def test_the_finishing_wheel_has_its_own_factor():
    for wheel, factor in (("sharp", 1.0), ("glazed", 2.5)):
        cutting = work(wheel=wheel).cutting
        assert set(cutting.wheel_factor[~cutting.plan.finishing, 0]) == {factor}
        assert set(cutting.wheel_factor[cutting.plan.finishing, 0]) == {1.5}
