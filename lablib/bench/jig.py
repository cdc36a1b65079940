"""An invented jig: break-loose readings as the model of the grip would give them, with scatter.

The lens is held behind a guard and the block is turned with a torque gauge. The machine's own clamp is not
used, and thick scrap is, because more force than a lens bears shatters it.
"""

import math
from dataclasses import dataclass

import numpy as np

from lablib.bench.contact import Contact
from lablib.bench.grip_fit import BreakLoose
from lablib.bench.joints import front_joints
from lablib.bench.machine import Bench
from lablib.bench.setup import Setup
from lablib.errors import LabError, require_between

FORCES_N = (100.0, 200.0, 300.0, 400.0)
_MOST_SCATTER, _MOST_TIMES = 0.5, 50


@dataclass(frozen=True, slots=True, kw_only=True)
class JigDay:
    """What is tried in the jig on one day.

    coat: of the scrap lens: "uncoated", "coated" or "slick".
    forces_n: tried, one after the other [N]; times: how often each.
    scatter: standard deviation of a torque, as a share of it.
    scrap_mm: centre thickness of the scrap lens [mm].
    day: the same gives the same scatter.

    Raises LabError for no reading at all, a scatter that cannot be, and scrap too thin for its force.
    """

    coat: str
    forces_n: tuple[float, ...] = FORCES_N
    times: int = 3
    scatter: float = 0.1
    scrap_mm: float = 3.0
    day: int = 1

    def __post_init__(self) -> None:
        require_between("times", self.times, low=1, high=_MOST_TIMES)
        require_between("scatter", self.scatter, low=0.0, high=_MOST_SCATTER)
        require_between("scrap_mm", self.scrap_mm, low=0.0, high=50.0, unit="mm", open_low=True)
        for force in self.forces_n:
            least = least_scrap_mm(force, Bench())
            if self.scrap_mm < least:
                raise LabError(
                    f"scrap of {self.scrap_mm:g} mm does not bear {force:g} N: that takes {least:.2f} mm in "
                    f"the middle, and thin scrap shatters; take thicker scrap or stay below that force"
                )


def least_scrap_mm(force_n: float, bench: Bench) -> float:
    """Return how thick a lens must be in the middle to bear a force without its coat crazing [mm].

    force_n: on the block [N]; bench: its bending share and allowed stress.

    Raises LabError for a force below 0.
    Source: bending of a thin plate, 0.62 chi N / t^2 (derived), as the clamp force of a lens.
    """
    require_between("force_n", force_n, low=0.0, high=10_000.0, unit="N")
    return math.sqrt(bench.plate_factor * bench.bending_share * force_n / bench.allowed_stress_mpa)


def jig_readings(jig: JigDay, contact: Contact, bench: Bench) -> tuple[BreakLoose, ...]:
    """Return invented readings: the weakest joint's torque at each force, with scatter.

    jig: what is tried; contact: where the block holds; bench: its grip.

    Raises LabError as `BreakLoose` does.
    """
    generator = np.random.default_rng(jig.day)
    found = []
    for force in jig.forces_n:
        holds = held_nmm(jig.coat, force, contact, bench)
        for _ in range(jig.times):
            # Near the mean a factor and its logarithm scatter alike, and no torque can fall below 0.
            torque = holds * math.exp(jig.scatter * generator.standard_normal())
            found.append(
                BreakLoose(
                    clamp_n=force,
                    torque_nmm=torque,
                    sliding_nmm=torque * min(1.0, bench.sliding_share * math.exp(_slide(jig, generator))),
                    coat=jig.coat,
                )
            )
    return tuple(found)


def held_nmm(coat: str, force_n: float, contact: Contact, bench: Bench) -> float:
    """Return at which torque the weakest joint of a fresh pad gives, without any scatter [N mm].

    coat: of the lens; force_n: on the block [N]; contact: where it holds; bench: its grip.
    """
    return min(joint.torque_nmm for joint in front_joints(Setup(coat=coat), contact, force_n, bench))


def _slide(jig: JigDay, generator: np.random.Generator) -> float:
    """The torque of a sliding block is steadier than that at which it gives."""
    return 0.5 * jig.scatter * float(generator.standard_normal())
