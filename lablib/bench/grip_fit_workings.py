"""The line through break-loose readings as workings: what rises with the force, and what sticks."""

import math
from dataclasses import dataclass
from functools import cached_property

from lablib.bench.contact import Annulus, r_eff_mm
from lablib.bench.grip_fit import BreakLoose, GripFit, fit_grip
from lablib.working import Term, Working

_EACH = 2
_PI = Term(symbol="pi", value=math.pi, digits=6, meaning="circle number")
_DISC = "a round joint that slips all over (derived)"


@dataclass(frozen=True, kw_only=True)
class ReadingsOnALine:
    """Break-loose readings that lie on one line, so that two of them give it.

    across_mm: diameter of the round block [mm].
    forces_n: on the block, rising [N]; torques_nmm: at which it broke loose, each the mean of two [N mm].
    """

    across_mm: float
    forces_n: tuple[float, ...]
    torques_nmm: tuple[float, ...]

    @property
    def contact(self) -> Annulus:
        """Where the block holds."""
        return Annulus(radius_mm=self.across_mm / 2.0)

    @cached_property
    def fit(self) -> GripFit:
        """The fitted line.

        Raises LabError as `fit_grip` does.
        """
        pairs = zip(self.forces_n, self.torques_nmm, strict=True)
        readings = [BreakLoose(clamp_n=force, torque_nmm=torque) for force, torque in pairs]
        return fit_grip(readings * _EACH, self.contact)

    @property
    def rise_mm(self) -> float:
        """By how much the torque rises with each newton, mu r_eff [N mm/N = mm]."""
        return self.fit.friction.value * r_eff_mm(self.contact)

    @property
    def sticks_nmm(self) -> float:
        """Torque with no force at all, tau W [N mm]."""
        return self.fit.shear_mpa.value * self.contact.w_mm3


def reading_terms(readings: ReadingsOnALine) -> tuple[Term, ...]:
    """Return every force and torque, numbered from the least force.

    readings: on one line.
    """
    pairs = enumerate(zip(readings.forces_n, readings.torques_nmm, strict=True), start=1)
    return tuple(term for number, (force, torque) in pairs for term in _pair(number, force, torque))


def _pair(number: int, force: float, torque: float) -> tuple[Term, Term]:
    return (
        Term(symbol=f"N_{number}", value=force, unit="N", digits=0, meaning=f"force of reading {number}"),
        Term(
            symbol=f"T_{number}", value=torque, unit="N mm", digits=1, meaning=f"torque of reading {number}"
        ),
    )


def across_term(readings: ReadingsOnALine) -> Term:
    """Return the diameter of the block.

    readings: their block.
    """
    meaning = "diameter of the round block"
    return Term(symbol="D", value=readings.across_mm, unit="mm", digits=0, meaning=meaning)


def friction_workings(readings: ReadingsOnALine) -> tuple[Working, Working, Working]:
    """Return the rise of the line, the block's mean lever, and mu.

    readings: on one line.
    """
    rise = _rise(readings)
    lever = Working(
        what="mean lever of a round block: two thirds of its radius",
        symbol="r_eff",
        formula="D / 3",
        terms=(across_term(readings),),
        value=r_eff_mm(readings.contact),
        unit="mm",
        source=_DISC,
    )
    friction = Working(
        what="friction of the pad on this surface",
        symbol="mu",
        formula="b / r_eff",
        terms=(rise.as_term(), lever.as_term()),
        value=readings.fit.friction.value,
        digits=3,
    )
    return rise, lever, friction


def shear_workings(readings: ReadingsOnALine) -> tuple[Working, Working, Working, Working]:
    """Return the rise of the line, the torque with no force, W of the block, and tau.

    readings: on one line.
    """
    rise = _rise(readings)
    force, torque = reading_terms(readings)[:2]
    sticks = Working(
        what="torque with no force at all: what sticks",
        symbol="T_0",
        formula="T_1 - b * N_1",
        terms=(torque, rise.as_term(), force),
        value=readings.sticks_nmm,
        unit="N mm",
        digits=1,
    )
    turning = Working(
        what="W of a round block",
        symbol="W",
        formula="pi * D^3 / 12",
        terms=(_PI, across_term(readings)),
        value=readings.contact.w_mm3,
        unit="mm3",
        digits=1,
        source=_DISC,
    )
    shear = Working(
        what="shear strength of the pad on this surface",
        symbol="tau",
        formula="T_0 / W",
        terms=(sticks.as_term(), turning.as_term()),
        value=readings.fit.shear_mpa.value,
        unit="MPa",
        digits=4,
    )
    return rise, sticks, turning, shear


def _rise(readings: ReadingsOnALine) -> Working:
    first, last = reading_terms(readings)[:2], reading_terms(readings)[-2:]
    (force, torque), (most_force, most_torque) = first, last
    return Working(
        what="rise of the line: torque more for each newton more",
        symbol="b",
        formula=f"({most_torque.symbol} - T_1) / ({most_force.symbol} - N_1)",
        terms=(most_torque, torque, most_force, force),
        value=readings.rise_mm,
        unit="mm",
        digits=4,
    )
