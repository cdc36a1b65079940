"""A wheel's own cutting energy and rubbing, fitted to weighings and readings of a power meter.

Lenses are weighed before and after roughing, ordinary work; nothing is cut for the sake of a reading.
"""

from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np

from lablib.bench.fitted import Fitted
from lablib.errors import LabError, require_between

_LEAST_WEIGHINGS = 6
# Columns more alike than this say nearly the same.
_MOST_ALIKE = 30.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighing:
    """One lens weighed before and after roughing, with the meter read.

    before_g, after_g: [g]; seconds: of roughing [s].
    power_w, idle_w: mean power at the meter while roughing, and while idling [W].
    thickness_mm: mean thickness where the wheel was [mm].

    Raises LabError for numbers that cannot be, a lens that grew, or a wheel that takes no power.
    """

    before_g: float
    after_g: float
    seconds: float
    power_w: float
    idle_w: float
    thickness_mm: float

    def __post_init__(self) -> None:
        for one in fields(self):
            require_between(one.name, getattr(self, one.name), low=0.0, high=10_000.0, open_low=True)
        if self.after_g >= self.before_g:
            raise LabError(
                f"after_g {self.after_g:g} is not below before_g {self.before_g:g}: weigh before, then after "
                f"roughing"
            )
        if self.power_w <= self.idle_w:
            raise LabError(
                f"power_w {self.power_w:g} is not above idle_w {self.idle_w:g}: read the meter while the "
                f"wheel cuts"
            )

    def removal_mm3_per_s(self, density: float) -> float:
        """Return the mean removal rate [mm3/s].

        density: of the material [g/cm3].
        """
        return 1000.0 * (self.before_g - self.after_g) / density / self.seconds


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingFit:
    """A material's own cutting on this wheel.

    specific_energy_j_per_mm3: u [J/mm3]; rubbing_n_per_mm: f [N/mm].
    weighings: how many were used.
    """

    specific_energy_j_per_mm3: Fitted
    rubbing_n_per_mm: Fitted
    weighings: int


def fit_cutting(
    weighings: Sequence[Weighing], *, density: float, surface_speed_m_per_s: float, efficiency: float
) -> CuttingFit:
    """Fit (power less idling) x efficiency = u Q + f w v to weighings, by least squares.

    weighings: six or more with different removal rates; density: [g/cm3].
    surface_speed_m_per_s: of the wheel [m/s].
    efficiency: share of the power at the meter that reaches the wheel, above 0 and up to 1.

    Raises LabError for too few, a density, speed or efficiency that cannot be, and where removal rate and
    thickness cannot be told apart.
    """
    require_between("density", density, low=0.0, high=10.0, unit="g/cm3", open_low=True)
    require_between(
        "surface_speed_m_per_s", surface_speed_m_per_s, low=0.0, high=200.0, unit="m/s", open_low=True
    )
    require_between("efficiency", efficiency, low=0.0, high=1.0, open_low=True)
    if len(weighings) < _LEAST_WEIGHINGS:
        raise LabError(f"{len(weighings)} weighings fit anything: take {_LEAST_WEIGHINGS} or more")
    rates = np.array([one.removal_mm3_per_s(density) for one in weighings])
    drags = surface_speed_m_per_s * np.array([one.thickness_mm for one in weighings])
    power = efficiency * np.array([one.power_w - one.idle_w for one in weighings])
    known = np.stack([rates, drags], axis=1)
    scaled = known / np.linalg.norm(known, axis=0)
    if np.linalg.cond(scaled) > _MOST_ALIKE:
        raise LabError(
            "removal rate and thickness grow together in all weighings, so that cutting and rubbing cannot "
            "be told apart: rough some lenses at half the bite"
        )
    (energy, rubbing), *_ = np.linalg.lstsq(known, power, rcond=None)
    freedom = len(weighings) - 2
    spread = ((power - known @ (energy, rubbing)) ** 2).sum() / freedom
    errors = np.sqrt(spread * np.diag(np.linalg.inv(known.T @ known)))
    return CuttingFit(
        specific_energy_j_per_mm3=Fitted(value=float(energy), error=float(errors[0])),
        rubbing_n_per_mm=Fitted(value=float(rubbing), error=float(errors[1])),
        weighings=len(weighings),
    )
