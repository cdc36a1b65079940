"""The rule of thumb for another vertex distance, beside the exact `prescription.at_vertex_distance`.

The rule changes each power by the distance in metres times its square. It leaves out every further part
of the exact change, of which the next is the square of the distance times the cube of the power.
"""

from dataclasses import replace

import numpy as np

from lablib.optics.power import without_noise
from lablib.optics.prescription import Prescription, at_vertex_distance


def vertex_change_by_rule_d(power_d: float | np.ndarray, *, closer_mm: float) -> float | np.ndarray:
    """Return by how much a power changes by the rule, d F^2: up where the lens comes closer [D].

    power_d: power [D], a number or an array of any shape.
    closer_mm: how much closer to the eye the lens is worn than tested [mm]; minus where it is farther.

    Source: common practice.
    """
    return closer_mm / 1000.0 * power_d**2


def at_vertex_distance_by_rule(rx: Prescription, *, from_mm: float, to_mm: float) -> Prescription:
    """Return the lens at another vertex distance by the rule, both meridians.

    rx, from_mm, to_mm: as in `at_vertex_distance`, which also says what it raises.

    Raises LabError too where the rule leads to a power out of range.
    Source: common practice.
    """
    at_vertex_distance(rx, from_mm=from_mm, to_mm=to_mm)
    sphere, across = (
        power + vertex_change_by_rule_d(power, closer_mm=from_mm - to_mm)
        for power in (rx.sphere_d, rx.sphere_d + rx.cylinder_d)
    )
    return replace(rx, sphere_d=without_noise(sphere), cylinder_d=without_noise(across - sphere))


def rule_less_exact_d(power_d: float | np.ndarray, *, from_mm: float, to_mm: float) -> float | np.ndarray:
    """Return how far the rule lies above the exact power at another vertex distance [D].

    power_d: power [D], a number or an array of any shape.
    from_mm, to_mm: as in `at_vertex_distance`, which also says what it raises.
    """
    powers = np.asarray(power_d, dtype=float)
    exact = [
        at_vertex_distance(Prescription(sphere_d=one), from_mm=from_mm, to_mm=to_mm).sphere_d
        for one in powers.ravel().tolist()
    ]
    by_rule = powers + vertex_change_by_rule_d(powers, closer_mm=from_mm - to_mm)
    apart = by_rule - np.reshape(exact, powers.shape)
    return apart if np.ndim(power_d) else float(apart)
