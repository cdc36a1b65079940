"""One cut turn by turn: what each turn asks at most, what holds there, what it takes off, its time."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.cut_time import rubbing_share, step_energy_j, step_seconds
from lablib.bench.margin import CutResult, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnSummary:
    """One turn of a cut.

    turn: counted from 1; finishing: whether it runs on the finishing wheel.
    peak: where the cutting torque is greatest; torque_nmm, hold_nmm, force_n: torque, what holds against it,
        and mean tangential force there [N mm, N mm, N].
    least: where the margin of this turn is least; margin: that margin.
    depth_mm: the deepest bite [mm]; volume_mm3: what it takes off [mm3].
    energy_j: work of the wheel [J]; rubbing_j: the part of it that makes no chips [J].
    seconds: how long it lasts [s].
    """

    turn: int
    finishing: bool
    peak: Place
    torque_nmm: float
    hold_nmm: float
    force_n: float
    least: Place
    margin: float
    depth_mm: float
    volume_mm3: float
    energy_j: float
    rubbing_j: float
    seconds: float


def turns_of(result: CutResult) -> tuple[TurnSummary, ...]:
    """Return every turn of a cut, in order.

    result: of `work_cut`; the turns of its cribbing are those of its `crib`.
    """
    cutting, bench = result.cutting, result.bench
    load = bench.dynamic_factor * cutting.force_n / result.capacity_n
    energy, seconds = step_energy_j(result), step_seconds(cutting, bench).sum(axis=1)
    rubbing = (energy * rubbing_share(cutting, result.material, bench)).sum(axis=1)
    step = 2.0 * np.pi / load.shape[1]
    turns = []
    for row in range(len(load)):
        peak, least = _place(row, cutting.torque_nmm[row]), _place(row, load[row])
        turns.append(
            TurnSummary(
                turn=row + 1,
                finishing=bool(cutting.plan.finishing[row]),
                peak=peak,
                torque_nmm=float(cutting.torque_nmm[peak.index]),
                hold_nmm=float(result.hold_nmm[peak.index]),
                force_n=float(cutting.force_n[peak.index]),
                least=least,
                margin=1.0 / float(load[least.index]),
                depth_mm=float(cutting.plan.depth_mm[row].max()),
                volume_mm3=float(cutting.volume_mm3_per_rad[row].sum()) * step,
                energy_j=float(energy[row].sum()),
                rubbing_j=float(rubbing[row]),
                seconds=float(seconds[row]),
            )
        )
    return tuple(turns)


def _place(row: int, values: np.ndarray) -> Place:
    point = int(values.argmax())
    return Place(turn=row + 1, point=point, angle_deg=360.0 * point / values.size)
