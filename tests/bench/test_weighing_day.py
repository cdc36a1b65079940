"""Invented weighings: what they were made of comes back from the fit."""

import numpy as np
import pytest

from lablib.bench.cutting_fit import CuttingFit, fit_cutting
from lablib.bench.machine import Bench, lens_material
from lablib.bench.weighing_day import EFFICIENCY, invented_weighings
from lablib.errors import LabError

MATERIAL, BENCH, DENSITY = lens_material("thiourethane-1.67"), Bench(), 1.36


def fitted(**day: float) -> CuttingFit:
    return fit_cutting(
        invented_weighings(MATERIAL, BENCH, density=DENSITY, **day),
        density=DENSITY,
        surface_speed_m_per_s=BENCH.surface_speed_m_per_s,
        efficiency=EFFICIENCY,
    )


def test_without_scatter_the_numbers_come_back():
    found = fitted(scatter=0.0)
    assert found.specific_energy_j_per_mm3.value == pytest.approx(MATERIAL.specific_energy_j_per_mm3)
    assert found.rubbing_n_per_mm.value == pytest.approx(BENCH.rubbing_n_per_mm)


def test_over_many_days_their_mean_comes_back_and_the_error_is_that_of_the_days():
    energies = [fitted(day=day).specific_energy_j_per_mm3 for day in range(300)]
    values = [one.value for one in energies]
    assert np.mean(values) == pytest.approx(MATERIAL.specific_energy_j_per_mm3, rel=0.01)
    assert np.std(values) == pytest.approx(np.mean([one.error for one in energies]), rel=0.2)


def test_a_scatter_that_cannot_be_is_refused():
    with pytest.raises(LabError, match="scatter"):
        fitted(scatter=0.6)
