"""A wheel's own cutting energy from weighings: known numbers come back, and bad readings are refused."""

import numpy as np
import pytest

from lablib.bench.cutting_fit import Weighing, fit_cutting
from lablib.errors import LabError

DENSITY, SPEED, SHARE = 1.32, 15.708, 0.7
ENERGY, RUBBING, IDLE = 0.35, 0.15, 120.0


def weighing(rate: float, thickness: float, noise: float = 1.0) -> Weighing:
    """One lens as a bench of known numbers would give it."""
    seconds = 60.0
    power = (ENERGY * rate + RUBBING * thickness * SPEED) / SHARE
    return Weighing(
        before_g=40.0,
        after_g=40.0 - rate * seconds * DENSITY / 1000.0,
        seconds=seconds,
        power_w=IDLE + power * noise,
        idle_w=IDLE,
        thickness_mm=thickness,
    )


SPREAD = [(150, 3.0), (200, 6.0), (250, 4.0), (300, 7.0), (120, 6.5), (280, 3.5), (220, 5.0), (180, 2.5)]


def fit(some: list[Weighing], **changed: float):
    given = {"density": DENSITY, "surface_speed_m_per_s": SPEED, "efficiency": SHARE} | changed
    return fit_cutting(some, **given)


def test_known_numbers_come_back():
    found = fit([weighing(*one) for one in SPREAD])
    assert found.specific_energy_j_per_mm3.value == pytest.approx(ENERGY)
    assert found.rubbing_n_per_mm.value == pytest.approx(RUBBING)
    assert found.specific_energy_j_per_mm3.error == pytest.approx(0.0, abs=1e-9)
    assert found.weighings == 8


def test_known_numbers_come_back_from_scattered_readings():
    generator, covered = np.random.default_rng(11), 0
    for _ in range(300):
        some = [weighing(*one, noise=1.0 + 0.05 * generator.standard_normal()) for one in SPREAD * 2]
        found = fit(some).specific_energy_j_per_mm3
        low, high = found.interval(freedom=len(some) - 2)
        covered += low <= ENERGY <= high
    assert 0.88 < covered / 300 < 0.99


def test_the_motors_own_loss_is_not_the_lenss():
    # All the power at the meter taken for cutting would make the energy too large by 1 / 0.7.
    found = fit([weighing(*one) for one in SPREAD], efficiency=1.0)
    assert found.specific_energy_j_per_mm3.value == pytest.approx(ENERGY / SHARE)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: fit([weighing(*one) for one in SPREAD[:5]]), "5 weighings fit anything: take 6 or more"),
        (lambda: fit([weighing(50.0 * w, w) for w in (2, 3, 4, 5, 6, 7)]), "cannot be told apart"),
        (lambda: fit([weighing(*one) for one in SPREAD], efficiency=0.0), "efficiency"),
        (lambda: fit([weighing(*one) for one in SPREAD], density=0.0), "density 0 is out of range"),
        (
            lambda: fit([weighing(*one) for one in SPREAD], surface_speed_m_per_s=0.0),
            "surface_speed_m_per_s 0",
        ),
        (lambda: weighing(-10.0, 3.0), "after_g .* is not below before_g"),
        (lambda: weighing(100.0, 3.0, noise=-1.0), "power_w .* is not above idle_w"),
        (lambda: weighing(100.0, 0.0), "thickness_mm"),
    ],
)
def test_bad_readings_are_refused_with_the_reason(call, said):
    with pytest.raises(LabError, match=said):
        call()
