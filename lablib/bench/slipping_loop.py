"""The inner loop of the simulation: one lens under the wheel, step by step, in its own directions.

Plain lists and floats: an array call at every step takes ten times as long.
"""

import math
from dataclasses import dataclass, field

import numpy as np

from lablib.bench.cutting import tangential_force_n
from lablib.bench.margin import CutResult
from lablib.bench.plan import LEAST_BITE_MM

# Thickness and its running integral are tabled so far apart along each direction.
_GRID_MM = 0.25


@dataclass(slots=True, kw_only=True)
class Turn:
    """One planned turn as the loop needs it; lists of length N by the block's directions.

    target: rim after the turn [mm]; cosine, sine: of the lean of its normal.
    pace: gamma; least: share of the plan's pace at which the lens stands still.
    chips: tangential force per volume in the way, at pace 1 [N per mm3 per radian]; rubbing: per thickness
    [N/mm].
    """

    target: list[float]
    cosine: list[float]
    sine: list[float]
    pace: list[float]
    least: list[float]
    chips: float
    rubbing: float


@dataclass(slots=True, kw_only=True)
class Grip:
    """What holds and where the wheel stands, the same at every step.

    torque_nmm, force_n: T_0 and F_0 [N mm, N]; sideways: c_F; arm_share: normal over tangential force, with
    the sign of the wheel's sense; sliding: sliding over break-loose hold, r; dynamic: k_dyn.
    wheel_mm: radius of the wheel [mm]; most_n: force at which the motor is at its limit [N].
    seconds: that one step lasts at pace 1 [s]; step: angle of one step [radians].
    """

    torque_nmm: float
    force_n: float
    sideways: float
    arm_share: float
    sliding: float
    dynamic: float
    wheel_mm: float
    most_n: float
    seconds: float
    step: float


@dataclass(slots=True, kw_only=True)
class Material:
    """Thickness of the lens and its running integral along every direction, lists of lists [direction][row].

    first_mm: distance of the first row [mm]; thickness: [mm]; volume: of t r dr from the first row [mm3 per
    radian].
    """

    first_mm: float
    thickness: list[list[float]]
    volume: list[list[float]]


@dataclass(slots=True, kw_only=True)
class Lens:
    """The lens as it stands, changed by every turn.

    rim: in its own directions [mm]; place: lens direction under the wheel, in steps from 0; taken: steps.
    sliding: whether it slides; low: deepest target since this direction came under the wheel [mm].
    heat_nmm: work of sliding [N mm]; seconds: of sliding [s]; leads: steps at which the wheel would drive it.
    begins: turn and direction where it first slid.
    """

    rim: list[float]
    place: float = 0.0
    taken: int = 0
    sliding: bool = False
    low: float = math.inf
    heat_nmm: float = 0.0
    seconds: float = 0.0
    leads: int = 0
    begins: tuple[int, int] | None = field(default=None)


def material_of(result: CutResult) -> Material:
    """Return thickness and running integral of a lens between its outline and the rim the cut starts from.

    result: of `work_cut`.
    """
    lens, rims = result.lens, result.cutting.plan.radius_mm
    first = float(rims.min()) - _GRID_MM
    rows = math.ceil((float(rims.max()) - first) / _GRID_MM) + 2
    radius = first + _GRID_MM * np.arange(rows)[:, None] + np.zeros(lens.outline_mm.size)
    thickness = lens.at_mm(radius)
    moment = thickness * radius
    volume = np.zeros_like(moment)
    np.cumsum((moment[1:] + moment[:-1]) * (_GRID_MM / 2.0), axis=0, out=volume[1:])
    return Material(first_mm=first, thickness=thickness.T.tolist(), volume=volume.T.tolist())


def turn_of(result: CutResult, number: int) -> Turn:
    """Return one planned turn, laid out for the loop.

    result: of `work_cut`; number: of the turn, from 0.
    """
    cutting, bench = result.cutting, result.bench
    support, slope = cutting.touch.support_mm[number], cutting.touch.slope_mm[number]
    radius = cutting.plan.radius_mm[number + 1]
    # One formula for the force: its two parts are read off it, each alone and far below the motor's limit.
    alone = {"wheel_factor": cutting.wheel_factor[number, 0], "material": result.material, "bench": bench}
    chips, rubbing = (float(tangential_force_n(q, w, **alone)) for q, w in ((1.0, 0.0), (0.0, 1.0)))
    return Turn(
        target=radius.tolist(),
        cosine=(support / radius).tolist(),
        sine=(slope / radius).tolist(),
        pace=cutting.pace[number].tolist(),
        least=np.clip(1.0 - cutting.travel[number], 0.0, 1.0).tolist(),
        chips=chips * bench.lens_speed_rad_per_s,
        rubbing=rubbing,
    )


def grip_of(result: CutResult) -> Grip:
    """Return what holds the lens and what is the same at every step.

    result: of `work_cut`.
    """
    bench, step = result.bench, 2.0 * math.pi / result.lens.outline_mm.size
    return Grip(
        torque_nmm=result.holding.torque_nmm,
        force_n=result.holding.force_n,
        sideways=result.cutting.sideways,
        arm_share=1.0 / result.material.kappa,
        sliding=bench.sliding_share,
        dynamic=bench.dynamic_factor,
        wheel_mm=bench.wheel_radius_mm,
        most_n=bench.motor_power_w / bench.surface_speed_m_per_s,
        seconds=step / bench.lens_speed_rad_per_s,
        step=step,
    )


def run_turn(lens: Lens, turn: Turn, grip: Grip, material: Material, number: int) -> list[float]:
    """Take the lens once round under the wheel and return how far it lags after every step, in steps.

    lens: changed in place; turn: as planned; number: that turn's, from 0, for the record.
    """
    rim, place, low, sliding = lens.rim, lens.place, lens.low, lens.sliding
    first, thickness, volume = material.first_mm, material.thickness, material.volume
    per_grid, count, wheel, share = 1.0 / _GRID_MM, len(rim), grip.wheel_mm, grip.arm_share
    per_torque, per_force = 1.0 / grip.torque_nmm**2, (grip.sideways / grip.force_n) ** 2
    sqrt, sin, cos, floor = math.sqrt, math.sin, math.cos, math.floor
    lags, before = [], turn.target[-1]
    steps = zip(turn.target, turn.cosine, turn.sine, turn.pace, turn.least, strict=True)
    for point, (target, cosine, sine, pace, least) in enumerate(steps):
        whole = floor(place)
        own = whole % count
        # Between two directions of the lens the target lies between two of the plan.
        radius = target - (place - whole) * (target - before)
        before = target
        depth = rim[own] - radius
        share_of_pace = 1.0
        if depth <= LEAST_BITE_MM:
            sliding = False
        else:
            inner, outer = (radius - first) * per_grid, (rim[own] - first) * per_grid
            i, o = int(inner), int(outer)
            table, thick = volume[own], thickness[own]
            taken = (table[o] + (outer - o) * (table[o + 1] - table[o])) - (
                table[i] + (inner - i) * (table[i + 1] - table[i])
            )
            rubbing = turn.rubbing * (thick[i] + (inner - i) * (thick[i + 1] - thick[i]))
            force = turn.chips * taken / pace + rubbing
            if force > grip.most_n:
                force = grip.most_n
            bite = 2.0 / 3.0 * sqrt(2.0 * depth * radius / (wheel * (wheel + radius)))
            reach, slope, up, along = radius * cosine + wheel, radius * sine, sin(bite), cos(bite)
            arm = reach * along - slope * up - wheel + share * (reach * up + slope * along)
            capacity = 1.0 / sqrt(arm * arm * per_torque + per_force)
            if arm <= 0.0:
                sliding = False
                lens.leads += grip.dynamic * force > capacity
            elif grip.dynamic * force > capacity:
                sliding = True
                lens.begins = lens.begins or (number, point)
            elif force <= grip.sliding * capacity:
                sliding = False
            if sliding:
                slides, pull = grip.sliding * capacity, force - rubbing
                share_of_pace = max(least, min(1.0, (slides - rubbing) / pull)) if pull > 0.0 else least
                lens.heat_nmm += slides * arm * (1.0 - share_of_pace) * grip.step
                lens.seconds += pace * grip.seconds
            low = min(low, radius)
        place += share_of_pace
        # A direction is cut when the wheel leaves it; cut at once, it would halve the slip at any step size.
        if floor(place) != whole:
            rim[own] = min(rim[own], low)
            low = math.inf
        lags.append(lens.taken + point + 1 - place)
    lens.place, lens.low, lens.sliding, lens.taken = place, low, sliding, lens.taken + count
    return lags
