"""Invented weighings and meter readings of a wheel, as the model of the cut would give them, with scatter."""

import numpy as np

from lablib.bench.cutting_fit import Weighing
from lablib.bench.machine import Bench, LensMaterial
from lablib.errors import require_between

# Half and whole bites on thin and thick lenses, so that cutting and rubbing can be told apart.
_RATES_MM3_PER_S, _THICK_MM = (50.0, 100.0), (2.5, 4.0, 5.5)
_SECONDS, _BEFORE_G, _IDLE_W = 60.0, 24.0, 90.0
EFFICIENCY = 0.8
_MOST_SCATTER = 0.5


def invented_weighings(
    material: LensMaterial, bench: Bench, *, density: float, scatter: float = 0.04, day: int = 1
) -> tuple[Weighing, ...]:
    """Return a day of invented weighings: six lenses roughed at two rates and three thicknesses.

    material: how it cuts; bench: its rubbing and its wheel; density: of the material [g/cm3].
    scatter: standard deviation of the power above idling, as a share of it; day: the same gives the same
        scatter. The power at the meter is that at the wheel over `EFFICIENCY`.

    Raises LabError for a scatter that cannot be.
    """
    require_between("scatter", scatter, low=0.0, high=_MOST_SCATTER)
    generator, found = np.random.default_rng(day), []
    for rate in _RATES_MM3_PER_S:
        for thickness in _THICK_MM:
            rubs = bench.rubbing_n_per_mm * thickness * bench.surface_speed_m_per_s
            power = (material.specific_energy_j_per_mm3 * rate + rubs) / EFFICIENCY
            found.append(
                Weighing(
                    before_g=_BEFORE_G,
                    after_g=_BEFORE_G - rate * _SECONDS * density / 1000.0,
                    seconds=_SECONDS,
                    power_w=_IDLE_W + power * float(np.exp(scatter * generator.standard_normal())),
                    idle_w=_IDLE_W,
                    thickness_mm=thickness,
                )
            )
    return tuple(found)
