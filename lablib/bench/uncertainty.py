"""How far the margin can be trusted: many benches drawn from the ranges of the table, one cut worked on each.

What is set at the machine is known; what is drawn is what nobody has measured: grip, friction, cutting
energy. The plan of the cut stays as it is: only what comes of it is worked again, for all benches at once.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import SimpleNamespace

import numpy as np

from lablib.bench.contact import Annulus, r_eff_mm
from lablib.bench.cutting import arm_share, tangential_force_n
from lablib.bench.drawn_benches import doubted, drawn_benches, stand_in, worked_with
from lablib.bench.holding import back_friction, clamp_cap_n, clamp_n, turning_force_n
from lablib.bench.joints import front_joints
from lablib.bench.margin import CutResult
from lablib.bench.parameter import Parameter
from lablib.errors import LabError, require_between

# Benches on which the deciding places of a cut are looked for, and the number of draws at most.
_SCOUTS, _MOST_DRAWS = 200, 200_000
_SEED = 20_261_125


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Spread:
    """What many drawn benches make of one cut.

    margin: shape (draws,), the margin on each bench.
    names: of the parameters drawn.
    drawn: shape (draws, parameters), their values, each in its unit.
    """

    margin: np.ndarray
    names: tuple[str, ...]
    drawn: np.ndarray

    def band(self, confidence: float = 0.95) -> tuple[float, float]:
        """Return between which margins so large a share of the benches lies.

        confidence: for example 0.95.

        Raises LabError for a share that is not between 0 and 1.
        """
        require_between("confidence", confidence, low=0.01, high=0.999)
        low, high = np.quantile(self.margin, [(1.0 - confidence) / 2.0, (1.0 + confidence) / 2.0])
        return float(low), float(high)

    @property
    def middle(self) -> float:
        """Median margin."""
        return float(np.median(self.margin))

    @property
    def share_below_1(self) -> float:
        """Share of the benches on which the lens would turn, from lens to lens all alike."""
        return float(np.mean(self.margin < 1.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Swing:
    """What one parameter does to the margin when it alone is not as the table says.

    parameter: with its range; margin_at_low, margin_at_high: at the two ends of it.
    """

    parameter: Parameter
    margin_at_low: float
    margin_at_high: float

    @property
    def factor(self) -> float:
        """The larger of the two margins over the smaller."""
        return max(self.margin_at_low, self.margin_at_high) / min(self.margin_at_low, self.margin_at_high)


def spread(result: CutResult, *, draws: int = 10_000, seed: int = _SEED) -> Spread:
    """Return what many benches drawn from the table's ranges make of one cut.

    result: of `work_cut`; its plan stays as it is.
    draws: number of benches; seed: the same gives the same benches.

    Each parameter is drawn by itself: as often above as below the value the cut was worked with, the nearer
    to it the likelier, never outside its range. Distances are ratios. A number that a profile measured is
    drawn like the rest, about what was measured.

    Raises LabError for a number of draws that cannot be, and for a plan that hangs on what is drawn.
    """
    require_between("draws", draws, low=100, high=_MOST_DRAWS)
    _require_fixed_plan(result)
    drawn = drawn_benches(result, draws, seed)
    names = tuple(drawn)
    return Spread(
        margin=_margins(result, drawn, _deciding(result)).min(axis=1),
        names=names,
        drawn=np.stack([drawn[name] for name in names], axis=1),
    )


def swings(result: CutResult) -> tuple[Swing, ...]:
    """Return which parameter the margin hangs on, the one that changes it most first.

    result: as in `spread`. Those that change nothing on this lens are left out.

    Raises LabError for a plan that hangs on what is drawn.
    """
    _require_fixed_plan(result)
    rows = doubted(result)
    margin = _margins(result, _ends(result), _deciding(result)).min(axis=1).reshape(-1, 2)
    found = [
        Swing(parameter=parameter, margin_at_low=float(ends[0]), margin_at_high=float(ends[1]))
        for parameter, ends in zip(rows.values(), margin, strict=True)
    ]
    return tuple(sorted((one for one in found if one.factor > 1.0), key=lambda one: -one.factor))


def _ends(result: CutResult) -> dict[str, np.ndarray]:
    """Two benches for each parameter, on which it alone lies at the low and at the high end."""
    rows = doubted(result)
    changed = {name: np.full(2 * len(rows), value) for name, value in worked_with(result, rows).items()}
    for at, (name, parameter) in enumerate(rows.items()):
        changed[name][2 * at : 2 * at + 2] = parameter.low, parameter.high
    return changed


def _require_fixed_plan(result: CutResult) -> None:
    if result.setup.feed != "depth":
        raise LabError(
            f"feed {result.setup.feed!r}: its bites hang on the very forces that are in doubt; work the cut "
            f"by feed 'depth' to see how far the margin can be trusted"
        )


def _margins(result: CutResult, drawn: Mapping[str, np.ndarray], places: np.ndarray) -> np.ndarray:
    """Margin at places of the cut on every bench, shape (draws, places)."""
    benches = stand_in(result, drawn)
    cutting, setup = result.cutting, result.setup
    roughing = benches.wheel * (result.cutting.wheel_factor[0, 0] / result.bench.wheels[setup.wheel])
    fine = np.repeat(cutting.plan.finishing, cutting.force_n.shape[1])[places]
    force = tangential_force_n(
        cutting.removal_mm3_per_s.ravel()[places],
        cutting.thickness_mm.ravel()[places],
        np.where(fine, benches.finishing_wheel_factor, roughing),
        material=benches.material,
        bench=benches,
    )
    touch = cutting.touch
    share = arm_share(setup.wheel_sense, benches.material)
    arm = touch.arm_tangential_mm.ravel()[places] + share * touch.arm_normal_mm.ravel()[places]
    torque, sideways = _held(result, benches)
    capacity = turning_force_n(arm, np.hypot(1.0, 1.0 / benches.material.kappa), torque, sideways)
    return capacity / (benches.dynamic_factor * force)


def _held(result: CutResult, benches: SimpleNamespace) -> tuple[np.ndarray, np.ndarray]:
    """T_0 and F_0 on every bench, shape (draws, 1) each."""
    setup, held = result.setup, result.holding
    even = setup.block_curve_d is None and setup.tip_face_mm is None
    chi = benches.bending_share if even else held.bending_share
    cap = clamp_cap_n(result.lens.centre_thickness_mm, benches, bending_share=chi)
    clamp = clamp_n(setup, benches, cap)
    joints = front_joints(setup, held.contact, clamp, benches, held.joints[0].bearing)
    front, front_force = (
        np.minimum.reduce(np.broadcast_arrays(*(getattr(joint, what) for joint in joints)))
        for what in ("torque_nmm", "force_n")
    )
    torque_fit, force_fit = held.back_torque_fit, held.back_force_fit
    if even and setup.tip_fit == "usual":
        torque_fit = force_fit = benches.usual_fit
    friction = back_friction(setup, benches)
    tip = r_eff_mm(Annulus(radius_mm=benches.tip_radius_mm))
    back = 0.0 if setup.back_tip_idles else friction * clamp * tip * torque_fit
    return front + back, front_force + friction * clamp * force_fit


def _deciding(result: CutResult) -> np.ndarray:
    """The places of a cut that have the least margin on some of many benches, shape (places,)."""
    every = np.flatnonzero(result.cutting.force_n.ravel() > 0.0)
    scouts = drawn_benches(result, _SCOUTS, _SEED)
    together = {name: np.concatenate([scouts[name], ends]) for name, ends in _ends(result).items()}
    return np.unique(every[_margins(result, together, every).argmin(axis=1)])
