"""Slip-torque margin: what holds over what turns, at every angle of every turn of one lens's cut."""

import math
from dataclasses import dataclass, replace

import numpy as np
from scipy.special import ndtr

from lablib.bench.clearance import clearance_mm
from lablib.bench.cutting import Cutting, cut
from lablib.bench.feed import plans_of
from lablib.bench.geometry import angles_rad
from lablib.bench.holding import Holding, holding
from lablib.bench.machine import Bench, LensMaterial
from lablib.bench.plan import Plan, UncutLens
from lablib.bench.setup import Setup
from lablib.errors import LabError

# The standard normal distribution has 95 % within so many standard deviations.
TWO_SIDED_95 = 1.96


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One angle of one turn.

    turn: counted from 1; point: which point round the outline; angle_deg: its direction from the chuck
    axis, anticlockwise from +x [degrees].
    """

    turn: int
    point: int
    angle_deg: float

    @property
    def index(self) -> tuple[int, int]:
        """Where the place stands in arrays of the shape (turns, N)."""
        return self.turn - 1, self.point


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CutResult:
    """One cut against what holds the lens; arrays of the shape (turns, N).

    cutting, holding: what turns the lens and what holds it.
    capacity_n: C, the tangential force at which the lens turns [N].
    peak: where the cutting torque is greatest; least: where the margin is least.
    margin: least S = hold / torque over every angle of every turn.
    slip_probability, slip_probability_calibrated: with the doubt about the parameters, and on a bench that
        has been calibrated.
    block_clearance_mm: least distance from the block to the finished outline, negative where it stands
        out [mm].
    lens, material, setup, bench: what it was worked from.
    crib: cribbing as a cut of its own, on the same block and machine; None where the lens is not cribbed.
    """

    cutting: Cutting
    holding: Holding
    capacity_n: np.ndarray
    peak: Place
    least: Place
    margin: float
    slip_probability: float
    slip_probability_calibrated: float
    block_clearance_mm: float
    lens: UncutLens
    material: LensMaterial
    setup: Setup
    bench: Bench
    crib: "CutResult | None" = None

    @property
    def block_clears(self) -> bool:
        """Whether the block lies inside the finished outline."""
        return self.block_clearance_mm > 0.0

    @property
    def hold_nmm(self) -> np.ndarray:
        """Shape (turns, N), T_hold: torque held beside the sideways load [N mm]."""
        return self.capacity_n * np.abs(self.cutting.arm_mm)

    @property
    def peak_removal_rate_mm3_per_s(self) -> float:
        """Greatest removal rate [mm3/s]."""
        return float(self.cutting.removal_mm3_per_s.max())

    @property
    def peak_tangential_force_n(self) -> float:
        """Greatest mean tangential force [N]."""
        return float(self.cutting.force_n.max())

    @property
    def peak_cutting_torque_nmm(self) -> float:
        """Greatest cutting torque, peaks included [N mm]."""
        return float(self.cutting.torque_nmm[self.peak.index])

    @property
    def hold_at_peak_nmm(self) -> float:
        """T_hold where the cutting torque is greatest [N mm]."""
        return float(self.hold_nmm[self.peak.index])

    @property
    def front_hold_nmm(self) -> float:
        """T_front, the weakest joint of the front stack [N mm]."""
        return self.holding.front_nmm

    @property
    def back_hold_nmm(self) -> float:
        """T_back, what the back tip adds [N mm]."""
        return self.holding.back_nmm

    @property
    def weakest_interface(self) -> str:
        """The joint of the front stack that slips first, in words."""
        return self.holding.weakest.name

    @property
    def removed_volume_mm3(self) -> float:
        """Everything this cut takes off [mm3]."""
        return self.cutting.removed_volume_mm3

    @property
    def angle_deg(self) -> np.ndarray:
        """Shape (N,), directions from the chuck axis [degrees]."""
        return np.degrees(angles_rad(self.capacity_n.shape[1]))

    @property
    def worst_torque_nmm(self) -> np.ndarray:
        """Shape (N,), cutting torque round the turn with the least margin [N mm]."""
        return self.cutting.torque_nmm[self.least.turn - 1]

    @property
    def worst_hold_nmm(self) -> np.ndarray:
        """Shape (N,), what holds against it round the same turn [N mm]."""
        return self.hold_nmm[self.least.turn - 1]


def work_cut(
    lens: UncutLens,
    *,
    material: LensMaterial,
    setup: Setup | None = None,
    bench: Bench | None = None,
    rim_mm: np.ndarray | None = None,
) -> CutResult:
    """Work the cut of one lens on the bench, and its cribbing where it is cribbed.

    lens: on its block, about the chuck axis.
    material: how it cuts, from `lens_material`.
    setup: what is chosen for it; None: the defaults.
    bench: machine and grip; None: the defaults of the table.
    rim_mm: shape (N,), what cribbing leaves where that is not so much round the outline, for example the
        curve of `lablib.bench.geometry.parallel_outline` [mm]; None: by the setup.

    Raises LabError where nothing lies outside the outline, and where the feed never gets the lens done.
    """
    setup, bench = setup or Setup(), bench or Bench()
    if setup.lens_speed_rpm is not None:
        bench = replace(bench, lens_speed_rpm=setup.lens_speed_rpm)
    held = holding(setup, centre_thickness_mm=lens.centre_thickness_mm, bench=bench, faces=lens.faces)

    def result(plan: Plan, crib: CutResult | None = None) -> CutResult:
        return _result(lens, plan, held, material=material, setup=setup, bench=bench, crib=crib)

    plan, crib = plans_of(lens, material=material, setup=setup, bench=bench, rim_mm=rim_mm)
    return result(plan, None if crib is None else result(crib))


def _result(
    lens: UncutLens,
    plan: Plan,
    held: Holding,
    *,
    material: LensMaterial,
    setup: Setup,
    bench: Bench,
    crib: CutResult | None,
) -> CutResult:
    chosen = {"wheel": setup.wheel, "wheel_sense": setup.wheel_sense, "water": setup.water}
    cutting = cut(lens, plan, material=material, bench=bench, **chosen)
    capacity = held.capacity_n(cutting.arm_mm, cutting.sideways)
    # The load over the hold: finite where nothing is cut, unlike the margin.
    load = bench.dynamic_factor * cutting.force_n / capacity
    least = _place(load)
    turning = bench.dynamic_factor * float(cutting.force_n[least.index])
    margin = margin_of(holds=float(capacity[least.index]), turns=turning)
    return CutResult(
        cutting=cutting,
        holding=held,
        capacity_n=capacity,
        peak=_place(cutting.torque_nmm),
        least=least,
        margin=margin,
        slip_probability=slip_probability(margin, log_scatter(bench, calibrated=False)),
        slip_probability_calibrated=slip_probability(margin, log_scatter(bench, calibrated=True)),
        block_clearance_mm=clearance_mm(lens.outline_mm, held.contact),
        lens=lens,
        material=material,
        setup=setup,
        bench=bench,
        crib=crib,
    )


def margin_of(*, holds: float, turns: float) -> float:
    """Return the margin S, what holds over what turns.

    holds, turns: two torques, or two tangential forces on the same arm, in one unit.

    Raises LabError where nothing turns the lens: then there is no margin to speak of.
    """
    if not turns > 0.0:
        raise LabError(f"what turns is {turns:g}, not above 0: give the cutting torque, or its force")
    return holds / turns


def _place(values: np.ndarray) -> Place:
    """Where an array of the shape (turns, N) is greatest."""
    turn, point = np.unravel_index(int(values.argmax()), values.shape)
    return Place(turn=int(turn) + 1, point=int(point), angle_deg=360.0 * int(point) / values.shape[1])


def log_scatter(bench: Bench, *, calibrated: bool) -> float:
    """Return the standard deviation of the margin's natural logarithm.

    bench: its scatter from lens to lens, and the doubt about its parameters.
    calibrated: whether the bench's own measurements have replaced the defaults, which ends the doubt.
    """
    return bench.scatter if calibrated else math.hypot(bench.scatter, math.log(bench.doubt) / TWO_SIDED_95)


def slip_probability(margin: float, scatter: float) -> float:
    """Return the probability that a lens turns on its block, Phi(-ln S / sigma).

    margin: S; scatter: sigma, from `log_scatter`.
    """
    return float(ndtr(-math.log(margin) / scatter))
