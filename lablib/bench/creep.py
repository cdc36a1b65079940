"""How far a lens creeps sideways while it turns on its block."""

import numpy as np

from lablib.bench.margin import CutResult, Place
from lablib.errors import require_between

_MOST_DEG = 36_000.0


def creep_per_degree_mm(result: CutResult, place: Place) -> float:
    """Return how far a lens that slides at one place shifts for every degree it turns [mm per degree].

    result: of `work_cut`; place: which angle of which turn.

    Torque and sideways load reach the limit together, (M / T_0)^2 + (F / F_0)^2 = 1, and a contact that
    slides moves along the normal of that limit: shift over turn is (F / F_0^2) / (M / T_0^2) a radian, with
    F = c_F F_t and M = F_t arm, so that the force itself drops out.

    Source: normality of the limit curve (as in plasticity, from memory); the ellipse as in
    `lablib.bench.holding.Holding.capacity_n`.
    """
    return float(creep_of(result)[place.index])


def creep_of(result: CutResult) -> np.ndarray:
    """Return the shift for every degree of slip, at every angle of every turn [mm per degree].

    result: of `work_cut`. Shape (turns, N); infinite where the force has no arm, as it shifts the lens there
    and does not turn it.
    """
    held, cutting = result.holding, result.cutting
    with np.errstate(divide="ignore"):
        per_radian = cutting.sideways * (held.torque_nmm / held.force_n) ** 2 / np.abs(cutting.arm_mm)
    return np.radians(per_radian)


def creep_mm(result: CutResult, slip_deg: float) -> float:
    """Return how far a lens creeps that slips by so much where its margin is least [mm].

    result: of `work_cut`; slip_deg: how far it turned [degrees], 0 or more.

    The most it can be: a lens that goes on sliding round the outline is pushed this way and that, and some of
    it cancels. The block's own pull back is left out.

    Raises LabError for a slip below 0.
    """
    slip = require_between("slip", slip_deg, low=0.0, high=_MOST_DEG, unit="degrees")
    return creep_per_degree_mm(result, result.least) * slip
