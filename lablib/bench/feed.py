"""Feeds that yield: under constant head force, or under a torque cap, a bite is as deep as the load allows.

Depth control is `lablib.bench.plan.job_plan`. Here each turn is found from the one before: at every angle
the bite whose force or torque is the one that is set, never deeper than the material's depth per turn. Head
and controller do not follow from one degree to the next: bites are averaged over the controller's window.
"""

from dataclasses import dataclass

import numpy as np
from scipy.ndimage import minimum_filter1d, uniform_filter1d

from lablib.bench.cutting import Touch, arm_share, roughing_factor, tangential_force_n, touch_of, travel_of
from lablib.bench.machine import Bench, LensMaterial
from lablib.bench.plan import (
    LEAST_BITE_MM,
    Plan,
    UncutLens,
    all_roughing,
    crib_plan,
    job_plan,
    joined,
    start_mm,
)
from lablib.bench.setup import Setup
from lablib.bench.volume_table import VolumeTable
from lablib.errors import LabError

# A machine that is not done after so many turns is stopped.
MOST_TURNS = 120
# Bite and the shape it leaves are found in turns.
_ROUNDS, _HALVINGS = 8, 12
_CLOSE_MM = 1e-4
# A turn that takes less than this everywhere gets no further.
_STUCK_MM = 1e-3
# The table of volumes and the cut itself agree to less than this.
_UNDER_CAP = 0.998


@dataclass(frozen=True, slots=True, kw_only=True)
class Feed:
    """A feed that yields, on one machine.

    setup: its feed, and the force or the torque that is set.
    material, bench: how the lens cuts, and the machine.
    """

    setup: Setup
    material: LensMaterial
    bench: Bench

    @property
    def is_capped(self) -> bool:
        """Whether a torque is kept to, not a force."""
        return self.setup.feed == "torque cap"

    def arm_mm(self, touch: Touch) -> np.ndarray:
        """Return the arm of both forces, without its sign [mm].

        touch: where the wheel bears.
        """
        share = arm_share(self.setup.wheel_sense, self.material)
        return np.abs(touch.arm_tangential_mm + share * touch.arm_normal_mm)

    def allowed_n(self, touch: Touch) -> np.ndarray:
        """Return the mean tangential force that the feed allows, shape (N,) [N].

        touch: where the wheel bears.
        """
        if not self.is_capped:
            return np.full(touch.support_mm.shape, self.setup.head_force_n * self.material.kappa)
        most = _UNDER_CAP * self.setup.torque_cap_nmm / self.bench.dynamic_factor
        return most / np.maximum(self.arm_mm(touch), LEAST_BITE_MM)

    def pace(self, touch: Touch) -> np.ndarray:
        """Return gamma, shape (N,): how far the machine turns for the contact.

        touch: where the wheel bears.
        """
        return np.maximum(travel_of(touch, self.bench), 1.0 / self.bench.slowing_limit)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Stage:
    """Roughing, cribbing or finishing of one lens: its target, the deepest bite and the wheel's factor."""

    feed: Feed
    volumes: VolumeTable
    target: np.ndarray
    deepest: float
    factor: float

    def after(self, rim: np.ndarray) -> np.ndarray:
        """The rim after the next turn."""
        bite = np.minimum(self.deepest, np.maximum(rim - self.target, self.deepest / 2.0))
        bite = self._smoothed(self._allowed_bite(rim, bite))
        for _ in range(_ROUNDS):
            # Half way only: a bite changes the shape that changes the bite, and whole steps swing.
            step = (self._smoothed(self._allowed_bite(rim, bite)) - bite) / 2.0
            bite = bite + step
            if np.abs(step).max() < _CLOSE_MM:
                break
        if self.feed.is_capped:
            bite = bite * self._share(rim, bite)
        return self._cut(rim, bite)

    def _cut(self, rim: np.ndarray, bite: np.ndarray) -> np.ndarray:
        return np.minimum(rim, np.maximum(self.target, rim - bite))

    def _allowed_bite(self, rim: np.ndarray, bite: np.ndarray) -> np.ndarray:
        """At every angle the bite of the force that is allowed, for the shape that the last guess leaves."""
        bench, material, after = self.feed.bench, self.feed.material, self._cut(rim, bite)
        touch = touch_of(after, rim - after, bench.wheel_radius_mm)
        rubbing = bench.rubbing_n_per_mm * self.volumes.thickness_mm(rim - bite)
        chips = self.feed.allowed_n(touch) / self.factor - rubbing
        removal = chips * bench.surface_speed_m_per_s / material.specific_energy_j_per_mm3
        volume = np.maximum(removal, 0.0) * self.feed.pace(touch) / bench.lens_speed_rad_per_s
        left = self.volumes.volume_mm3_per_rad(rim) - volume
        return rim - self.volumes.radius_mm(left, rim - self.deepest, rim)

    def _smoothed(self, bite: np.ndarray) -> np.ndarray:
        """A cap is never overshot: there the least bite near by is averaged."""
        width = 2 * max(1, round(self.feed.bench.contact_window_deg / 720.0 * bite.size)) + 1
        low = minimum_filter1d(bite, width, mode="wrap") if self.feed.is_capped else bite
        return uniform_filter1d(low, width, mode="wrap")

    def _torque(self, rim: np.ndarray, after: np.ndarray) -> np.ndarray:
        bench, material = self.feed.bench, self.feed.material
        touch = touch_of(after, rim - after, bench.wheel_radius_mm)
        volume = self.volumes.volume_mm3_per_rad(rim) - self.volumes.volume_mm3_per_rad(after)
        removal = bench.lens_speed_rad_per_s * volume / self.feed.pace(touch)
        thickness = self.volumes.thickness_mm(after)
        force = tangential_force_n(removal, thickness, self.factor, material=material, bench=bench)
        torque = bench.dynamic_factor * force * self.feed.arm_mm(touch)
        return np.where(rim - after > LEAST_BITE_MM, torque, 0.0)

    def _share(self, rim: np.ndarray, bite: np.ndarray) -> float:
        """Share of the bites at which no angle passes the cap, by halving."""
        cap = _UNDER_CAP * self.feed.setup.torque_cap_nmm
        low, high = 0.0, 1.0
        if self._torque(rim, self._cut(rim, bite)).max() <= cap:
            return 1.0
        for _ in range(_HALVINGS):
            middle = (low + high) / 2.0
            fits = self._torque(rim, self._cut(rim, middle * bite)).max() <= cap
            low, high = (middle, high) if fits else (low, middle)
        return low

    def turns(self, start: np.ndarray) -> np.ndarray:
        """Rims from the start, each after one more turn, until the target is reached."""
        rims = [start]
        while np.any(rims[-1] - self.target > LEAST_BITE_MM):
            rims.append(self.after(rims[-1]))
            bite = float((rims[-2] - rims[-1]).max())
            is_open = bool(np.any(rims[-1] - self.target > LEAST_BITE_MM))
            if is_open and (len(rims) > MOST_TURNS or bite < _STUCK_MM):
                raise LabError(self._never_done(rims[-1], len(rims) - 1, bite))
        return np.array(rims)

    def _never_done(self, rim: np.ndarray, turns: int, bite: float) -> str:
        bench, setup = self.feed.bench, self.feed.setup
        open_yet = rim - self.target > LEAST_BITE_MM
        rubbing = self.factor * bench.rubbing_n_per_mm * self.volumes.thickness_mm(rim)[open_yet].max()
        asked, unit = rubbing / self.feed.material.kappa, "N"
        thing, value = "head force", setup.head_force_n
        if self.feed.is_capped:
            touch = touch_of(rim, np.zeros_like(rim), bench.wheel_radius_mm)
            asked, unit = bench.dynamic_factor * rubbing * self.feed.arm_mm(touch)[open_yet].max(), "N mm"
            thing, value = "torque cap", setup.torque_cap_nmm
        return (
            f"{thing} {value:g} {unit} never gets this lens done: turn {turns} takes {bite:.3f} mm at most, "
            f"and rubbing alone asks up to {asked:.0f} {unit}: give more, or dress the wheel"
        )


def plans_of(
    lens: UncutLens,
    *,
    material: LensMaterial,
    setup: Setup,
    bench: Bench,
    rim_mm: np.ndarray | None = None,
) -> tuple[Plan, Plan | None]:
    """Return the turns of a cut as its setup feeds, and those of its cribbing; None where there are none.

    lens: the lens; material, setup, bench: how it is cut.
    rim_mm: shape (N,), what cribbing leaves, in place of the setup's allowance [mm].

    Raises LabError where nothing lies outside the outline, and where the feed never gets the lens done.
    """
    depth, allowance = material.depth_per_turn_mm, setup.crib_allowance_mm
    # A brittle material bears no deeper bite on the finishing wheel than on the roughing wheel.
    fine_depth = min(bench.finishing_depth_mm, depth)
    is_cribbed = not (allowance is None and rim_mm is None)
    if setup.feed != "depth":
        return _fed_plans(
            lens, Feed(setup=setup, material=material, bench=bench), fine_depth, rim_mm, is_cribbed
        )
    plan = job_plan(
        lens,
        depth_mm=depth,
        stock_mm=bench.finishing_stock_mm,
        finishing_mm=fine_depth,
        crib_mm=allowance,
        rim_mm=rim_mm,
    )
    cribbing = {"depth_mm": depth, "crib_mm": allowance, "rim_mm": rim_mm}
    return plan, crib_plan(lens, **cribbing) if is_cribbed else None


def _fed_plans(
    lens: UncutLens, feed: Feed, fine_depth: float, rim_mm: np.ndarray | None, is_cribbed: bool
) -> tuple[Plan, Plan | None]:
    setup, bench, depth = feed.setup, feed.bench, feed.material.depth_per_turn_mm
    uncut, start = start_mm(lens, None), start_mm(lens, setup.crib_allowance_mm, rim_mm)
    volumes = VolumeTable(lens, uncut, depth)
    roughing = roughing_factor(setup.wheel, setup.water, feed.material, bench)

    def turns(begin: np.ndarray, end: np.ndarray, deepest: float, factor: float) -> np.ndarray:
        stage = _Stage(
            feed=feed, volumes=volumes, target=np.minimum(begin, end), deepest=deepest, factor=factor
        )
        return stage.turns(begin)

    rough = turns(start, lens.outline_mm + bench.finishing_stock_mm, depth, roughing)
    fine = turns(rough[-1], lens.outline_mm, fine_depth, bench.finishing_wheel_factor)
    crib = all_roughing(turns(uncut, start, depth, roughing)) if is_cribbed else None
    return joined(lens, rough, fine), crib
