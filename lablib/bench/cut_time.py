"""How long a cut takes and what it costs: seconds, energy, and the part of it that only rubs."""

import math
from dataclasses import dataclass

import numpy as np

from lablib.bench.cutting import Cutting
from lablib.bench.machine import Bench, LensMaterial
from lablib.bench.margin import CutResult


@dataclass(frozen=True, slots=True, kw_only=True)
class CutTime:
    """Time and energy of one cut, without the cribbing before it and without handling.

    seconds: under the wheel [s].
    energy_j: work of the wheel [J]; rubbing_j: the part of it that makes no chips [J].
    """

    seconds: float
    energy_j: float
    rubbing_j: float

    @property
    def rubbing_share(self) -> float:
        """Part of the energy that only rubs."""
        return self.rubbing_j / self.energy_j

    @property
    def mean_power_w(self) -> float:
        """Power of the wheel over the whole cut [W]."""
        return self.energy_j / self.seconds


def cut_time(result: CutResult) -> CutTime:
    """Return time and energy of a cut.

    result: of `work_cut`; its `crib` has its own.
    """
    seconds = step_seconds(result.cutting, result.bench)
    work = step_energy_j(result)
    rubbing = work * rubbing_share(result.cutting, result.material, result.bench)
    return CutTime(seconds=float(seconds.sum()), energy_j=float(work.sum()), rubbing_j=float(rubbing.sum()))


def step_seconds(cutting: Cutting, bench: Bench) -> np.ndarray:
    """Return how long the wheel is at every angle of every turn, shape (turns, N) [s].

    cutting: of one cut; bench: the speed of its lens. A turn is longer than one turn at that speed where the
    controller slows the lens.
    """
    step = 2.0 * math.pi / cutting.pace.shape[1]
    return cutting.pace * (step / bench.lens_speed_rad_per_s)


def step_energy_j(result: CutResult) -> np.ndarray:
    """Return the work of the wheel at every angle of every turn, shape (turns, N) [J].

    result: of `work_cut`.
    """
    power = result.cutting.force_n * result.bench.surface_speed_m_per_s
    return power * step_seconds(result.cutting, result.bench)


def rubbing_share(cutting: Cutting, material: LensMaterial, bench: Bench) -> np.ndarray:
    """Return the part of the force that only rubs, at every angle of every turn, shape (turns, N).

    cutting: of one cut; material: its specific energy; bench: its rubbing and wheel speed.
    """
    rubbing = bench.rubbing_n_per_mm * cutting.thickness_mm
    chips = material.specific_energy_j_per_mm3 * cutting.removal_mm3_per_s / bench.surface_speed_m_per_s
    whole = rubbing + chips
    return np.divide(rubbing, whole, out=np.zeros_like(whole), where=whole > 0.0)


def least_seconds(turns: int, lens_speed_rpm: float) -> float:
    """Return how long so many turns take at least, where the controller never slows the lens [s].

    turns: of the lens; lens_speed_rpm: [rpm].
    """
    return turns * 60.0 / lens_speed_rpm
