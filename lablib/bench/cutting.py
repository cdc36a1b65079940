"""What turns the lens: bite, removal rate, forces and lever arms at every angle of every turn.

The outline is described by its support function: h is the distance from the chuck axis to the tangent at
the contact, h' its slope. Arrays have the shape (turns, N).
"""

import math
from dataclasses import dataclass

import numpy as np

from lablib.bench.geometry import lean_rad
from lablib.bench.machine import Bench, LensMaterial
from lablib.bench.plan import LEAST_BITE_MM, Plan, UncutLens


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Touch:
    """Where the wheel bears, shape (turns, N) each.

    support_mm, slope_mm: h and h' of the rim after the turn [mm].
    bite_rad: beta, from the bare contact up to where the removal is centred, about the wheel's centre.
    arm_tangential_mm, arm_normal_mm: lever arms of the two forces about the chuck axis [mm].
    """

    support_mm: np.ndarray
    slope_mm: np.ndarray
    bite_rad: np.ndarray
    arm_tangential_mm: np.ndarray
    arm_normal_mm: np.ndarray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cutting:
    """One cut, worked at every angle of every turn; arrays of the shape (turns, N).

    plan: its turns.
    touch: where the wheel bears.
    travel: turn of the machine per turn of the contact over the lens, averaged over the controller's window.
    pace: gamma, the same where the controller has slowed the lens as much as it may.
    volume_mm3_per_rad: V' [mm3 per radian].
    removal_mm3_per_s: Q [mm3/s].
    thickness_mm: w, at the rim after the turn [mm].
    wheel_factor: shape (turns, 1), k, of the wheel and of roughing wet or dry against the manual.
    force_n: F_t, mean tangential force [N].
    arm_mm: of the tangential force, with what the normal force adds or takes [mm]; negative where the
        normal force turns the lens more than the tangential force does, and the other way.
    torque_nmm: M, peak cutting torque [N mm].
    sideways: c_F, whole force over tangential force.
    """

    plan: Plan
    touch: Touch
    travel: np.ndarray
    pace: np.ndarray
    volume_mm3_per_rad: np.ndarray
    removal_mm3_per_s: np.ndarray
    thickness_mm: np.ndarray
    wheel_factor: np.ndarray
    force_n: np.ndarray
    arm_mm: np.ndarray
    torque_nmm: np.ndarray
    sideways: float

    @property
    def removed_volume_mm3(self) -> float:
        """Everything the cut takes off [mm3]."""
        return float(self.volume_mm3_per_rad.sum()) * 2.0 * math.pi / self.force_n.shape[1]


def cut(
    lens: UncutLens,
    plan: Plan,
    *,
    material: LensMaterial,
    bench: Bench,
    wheel: str,
    wheel_sense: str,
    water: str = "manual",
) -> Cutting:
    """Return forces and torque of one cut.

    lens, plan: what is cut, and in which turns.
    material: how the lens cuts; bench: the machine.
    wheel: condition of the roughing wheel, a name of the table.
    wheel_sense: "against" or "with".
    water: how it is roughed, a name of `lablib.bench.setup.waters`.

    Source: the power balance u Q = F v, S. Malkin and C. Guo, Grinding Technology; lever arms derived.
    """
    wheel_radius = bench.wheel_radius_mm
    touch = touch_of(plan.radius_mm[1:], plan.depth_mm, wheel_radius)
    travel = travel_of(touch, bench)
    pace = np.maximum(travel, 1.0 / bench.slowing_limit)
    volume, thickness = _removed(lens, plan)
    removal = bench.lens_speed_rad_per_s * volume / pace
    roughing = roughing_factor(wheel, water, material, bench)
    factor = np.where(plan.finishing, bench.finishing_wheel_factor, roughing)[:, None]
    force = tangential_force_n(removal, thickness, factor, material=material, bench=bench)
    force = np.where(plan.depth_mm > LEAST_BITE_MM, force, 0.0)
    arm = touch.arm_tangential_mm + arm_share(wheel_sense, material) * touch.arm_normal_mm
    return Cutting(
        plan=plan,
        touch=touch,
        travel=travel,
        pace=pace,
        volume_mm3_per_rad=volume,
        removal_mm3_per_s=removal,
        thickness_mm=thickness,
        wheel_factor=factor,
        force_n=force,
        arm_mm=arm,
        torque_nmm=bench.dynamic_factor * force * np.abs(arm),
        sideways=math.hypot(1.0, 1.0 / material.kappa),
    )


def arm_share(wheel_sense: str, material: LensMaterial) -> float:
    """Return how often the normal force's arm counts beside the tangential force's, 1 / kappa with a sign.

    wheel_sense: "against" or "with", where it counts the other way; material: its kappa.
    """
    return (1.0 if wheel_sense == "against" else -1.0) / material.kappa


def roughing_factor(wheel: str, water: str, material: LensMaterial, bench: Bench) -> float:
    """Return the factor on the cutting force in roughing: the wheel's, and that of water against the manual.

    wheel: condition, a name of the table; water: a name of `lablib.bench.setup.waters`.
    material: how it is made to be roughed; bench: its factors.
    """
    return bench.wheels[wheel] * water_factor(water, material, bench)


def water_factor(water: str, material: LensMaterial, bench: Bench) -> float:
    """Return the factor of roughing wet or dry: 1 where that is how the material is made to be roughed.

    water, material, bench: as in `roughing_factor`.
    """
    if water in ("manual", material.roughed):
        return 1.0
    return bench.dry_for_wet_factor if water == "dry" else bench.wet_for_dry_factor


def touch_of(radius_mm: np.ndarray, depth_mm: np.ndarray, wheel_radius_mm: float) -> Touch:
    """Return support function, bite and lever arms.

    radius_mm: shape (turns, N), the rim after each turn [mm].
    depth_mm: shape (turns, N), depth of the bites [mm].
    wheel_radius_mm: [mm].

    The wheel touches along an arc, and the removal is centred two thirds of the way up it; both forces are
    turned about the wheel's centre by that angle (derived).
    """
    lean = lean_rad(radius_mm)
    support, slope = radius_mm * np.cos(lean), radius_mm * np.sin(lean)
    arc = 2.0 * depth_mm * radius_mm / (wheel_radius_mm * (wheel_radius_mm + radius_mm))
    bite = 2.0 / 3.0 * np.sqrt(arc)
    cosine, sine = np.cos(bite), np.sin(bite)
    return Touch(
        support_mm=support,
        slope_mm=slope,
        bite_rad=bite,
        arm_tangential_mm=(support + wheel_radius_mm) * cosine - slope * sine - wheel_radius_mm,
        arm_normal_mm=(support + wheel_radius_mm) * sine + slope * cosine,
    )


def travel_of(touch: Touch, bench: Bench) -> np.ndarray:
    """Return the turn of the machine per turn of the contact over the lens, shape (..., N).

    touch: where the wheel bears; bench: its wheel, and the window that its controller averages over.
    """
    points = touch.support_mm.shape[-1]
    # The mean over a window is a difference of its two ends.
    ahead = np.arctan2(touch.slope_mm, touch.support_mm + bench.wheel_radius_mm)
    shaft = ahead - np.arctan2(touch.slope_mm, touch.support_mm)
    half = max(1, round(bench.contact_window_deg / 720.0 * points))
    window = 2.0 * half * 2.0 * math.pi / points
    return 1.0 + (np.roll(shaft, -half, axis=-1) - np.roll(shaft, half, axis=-1)) / window


def _removed(lens: UncutLens, plan: Plan) -> tuple[np.ndarray, np.ndarray]:
    """V' and the thickness at the rim after each turn; Simpson's rule through rims and middles of bites."""
    rims = plan.radius_mm
    rows = np.concatenate([rims, (rims[:-1] + rims[1:]) / 2.0])
    thickness = lens.at_mm(rows)
    moment = thickness * rows
    edges, middles = moment[: len(rims)], moment[len(rims) :]
    volume = plan.depth_mm / 6.0 * (edges[:-1] + 4.0 * middles + edges[1:])
    return volume, thickness[1 : len(rims)]


def tangential_force_n(
    removal_mm3_per_s: np.ndarray,
    thickness_mm: np.ndarray,
    wheel_factor: np.ndarray,
    *,
    material: LensMaterial,
    bench: Bench,
) -> np.ndarray:
    """Return the mean tangential force, F_t [N].

    removal_mm3_per_s: Q [mm3/s]; thickness_mm: w [mm]; wheel_factor: k; of shapes that go together.
    material: its specific energy; bench: wheel speed, rubbing and motor power.

    Source: the power balance u Q = F v, S. Malkin and C. Guo, Grinding Technology; rubbing and the
    motor's limit added here.
    """
    speed = bench.surface_speed_m_per_s
    chips = material.specific_energy_j_per_mm3 * removal_mm3_per_s / speed
    force = wheel_factor * (chips + bench.rubbing_n_per_mm * thickness_mm)
    return np.minimum(force, bench.motor_power_w / speed)
