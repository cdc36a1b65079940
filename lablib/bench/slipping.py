"""The lens that turns on its block: one cut simulated step by step in the lens's own directions.

Degrees are not predicted: a margin just under 1 gives 1 degree or many, by how the lens steps in. That there
is trouble, of which kind, and the ranking of jobs hold.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from lablib.bench.geometry import angles_rad, on_a_line_deg
from lablib.bench.margin import CutResult, Place
from lablib.bench.signs import NONE, Heat, signs_of, sliding_heat
from lablib.bench.slipping_loop import Lens, grip_of, material_of, run_turn, turn_of
from lablib.errors import LabError

# A lens that is not finished after so many turns spins on its block.
MOST_TURNS = 60

# In steps; less is the rounding of sums of whole steps.
_LEAST_LAG = 1e-9


@dataclass(frozen=True, kw_only=True, eq=False)
class Simulation:
    """One cut with the lens free to turn on its block.

    A lens that lags appears turned anticlockwise against its block, as drawings show it, where the contact
    travels anticlockwise over the lens.

    result: the cut as planned, and what holds.
    lag_deg: shape (turns run, N), how far the lens lags its block after each step [degrees].
    rim_mm: shape (turns run + 1, N), the rim in the lens's own directions before the first turn and after
        each [mm].
    never_finishes: whether something was left to cut after the most turns the machine runs.
    begins: where the lens first slides, in the block's directions; None where it does not.
    heat_j, sliding_s: work and duration of sliding [J, s].
    leads: steps at which the wheel would drive the lens ahead; of that no degrees can be given.
    """

    result: CutResult
    lag_deg: np.ndarray
    rim_mm: np.ndarray
    never_finishes: bool
    begins: Place | None
    heat_j: float
    sliding_s: float
    leads: int

    @property
    def planned_turns(self) -> int:
        """Turns of the plan."""
        return self.result.cutting.plan.finishing.size

    @property
    def turns_run(self) -> int:
        """Turns until nothing was left to cut, the last one idle."""
        return self.lag_deg.shape[0]

    @property
    def slip_deg(self) -> float:
        """How far the lens has turned on its block in all; may pass 360 [degrees]."""
        return float(self.lag_deg[-1, -1])

    @property
    def slip_by_turn_deg(self) -> np.ndarray:
        """Shape (turns run,), how far it turned in each turn [degrees]."""
        return np.diff(self.lag_deg[:, -1], prepend=0.0)

    @property
    def off_level_deg(self) -> float:
        """What a line across the lens shows against the block's, above -90 and up to 90 [degrees]."""
        return on_a_line_deg(self.slip_deg)

    def seen_rim_mm(self, turn: int) -> np.ndarray:
        """Return the rim after a turn as seen from the block, shape (N,) [mm].

        turn: counted from 1; 0: before the first.

        Raises LabError for a turn that was not run.
        """
        if not 0 <= turn <= self.turns_run:
            raise LabError(f"turn {turn} was not run: give 0 to {self.turns_run}")
        lag = 0.0 if turn == 0 else float(self.lag_deg[turn - 1, -1])
        return _turned(self.rim_mm[turn], lag)

    @cached_property
    def finished_mm(self) -> np.ndarray:
        """Shape (N,), the rim at the end as seen from the block [mm]."""
        return self.seen_rim_mm(self.turns_run)

    @cached_property
    def _short_mm(self) -> np.ndarray:
        """Shape (N,), how far the rim at the end lies inside the ordered outline [mm]."""
        return self.result.lens.outline_mm - self.finished_mm

    @property
    def shortfall_mm(self) -> float:
        """How far the rim at the end lies inside the ordered outline, at most; never below 0 [mm]."""
        return max(0.0, float(self._short_mm.max()))

    @property
    def shortfall_deg(self) -> float:
        """In which of the block's directions that is [degrees]."""
        return 360.0 * int(self._short_mm.argmax()) / self._short_mm.size

    @cached_property
    def heat(self) -> Heat | None:
        """What sliding does to the face at its warmest; None where nothing slid."""
        if self.sliding_s == 0.0:
            return None
        return sliding_heat(self.result, heat_j=self.heat_j, sliding_s=self.sliding_s)

    @property
    def rise_k(self) -> float:
        """By how much the sliding face warms where it warms most [K]."""
        return 0.0 if self.heat is None else self.heat.rise_k

    @cached_property
    def signs(self) -> tuple[str, ...]:
        """What the finished lens shows: the signs that apply, the one that tells most first."""
        return signs_of(off_deg=self.off_level_deg, shortfall_mm=self.shortfall_mm, rise_k=self.rise_k)

    @property
    def sign(self) -> str:
        """The sign that tells most, or "none"."""
        return self.signs[0] if self.signs else NONE


def simulate(result: CutResult) -> Simulation:
    """Run one cut with the lens free to turn on its block.

    result: of `work_cut`; its `crib` can be run likewise.

    Raises LabError where only a margin can be given: with the wheel running with the lens, which is then
    snatched round, and under constant head force, where a lens that turns stops under the wheel.
    """
    _require_degrees(result)
    points, plan = result.lens.outline_mm.size, result.cutting.plan
    lens, grip, material = Lens(rim=plan.radius_mm[0].tolist()), grip_of(result), material_of(result)
    turns = [turn_of(result, number) for number in range(plan.finishing.size)]
    lags, rims, removed = [], [plan.radius_mm[0]], True
    while len(lags) < len(turns) or (removed and len(lags) < MOST_TURNS):
        # After the plan its last turn is repeated until the wheel finds nothing.
        turn = turns[min(len(lags), len(turns) - 1)]
        lags.append(run_turn(lens, turn, grip, material, len(lags)))
        rims.append(np.array(lens.rim))
        removed = bool(np.any(rims[-1] < rims[-2]))
    # Many small steps add up to a rounding error that would make a lens that has come to rest creep back.
    lag = np.maximum.accumulate(np.array(lags).ravel()).reshape(-1, points)
    return Simulation(
        result=result,
        lag_deg=np.where(lag < _LEAST_LAG, 0.0, lag) * (360.0 / points),
        rim_mm=np.array(rims),
        never_finishes=removed,
        begins=None if lens.begins is None else _place(*lens.begins, points),
        heat_j=lens.heat_nmm / 1000.0,
        sliding_s=lens.seconds,
        leads=lens.leads,
    )


def _require_degrees(result: CutResult) -> None:
    if result.setup.wheel_sense == "with":
        raise LabError(
            "wheel_sense 'with' cannot be simulated: a lens driven ahead is snatched round, and only the "
            "margin up to its first movement holds; take 'against', or read the margin"
        )
    if result.setup.feed == "head force":
        raise LabError(
            "feed 'head force' cannot be simulated: the wheel presses on however the lens turns, and it "
            "stops under it; take 'depth' or 'torque cap', or read the margin"
        )


def _place(turn: int, point: int, points: int) -> Place:
    return Place(turn=turn + 1, point=point, angle_deg=360.0 * point / points)


def _turned(rim_mm: np.ndarray, by_deg: float) -> np.ndarray:
    """Return a rim turned anticlockwise, at the same directions; between two of them on a straight line."""
    angle = angles_rad(rim_mm.size)
    return np.interp(angle - np.radians(by_deg), angle, rim_mm, period=2.0 * np.pi)
