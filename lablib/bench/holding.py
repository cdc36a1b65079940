"""What holds the lens: the front stack in series, the back tip in parallel, sideways load against both.

For fully slipping joints torque is shear strength x W plus friction x clamp force x effective radius.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from lablib.bench.contact import Annulus, Contact, block_contact, r_eff_mm
from lablib.bench.machine import Bench
from lablib.bench.parameter import default, parameters, table
from lablib.bench.setup import Setup
from lablib.errors import require_between

# The temperature strengths are stated for.
REFERENCE_C = default("temperature_c")

_THICKEST_MM = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """One joint of the front stack.

    name: what lies against what.
    contact: where it holds; clamp_n: the force on it [N].
    strength_mpa: shear strength the shares apply to, tau_0 or the core's own [MPa].
    share: of that strength, for these two surfaces.
    bare_friction: coefficient of friction, fresh and clean.
    aged: what the pad's age leaves of strength and friction.
    soiled: what lies on the lens leaves of both.
    warmth: factor of the temperature on the strength.
    """

    name: str
    contact: Contact
    clamp_n: float
    strength_mpa: float
    share: float
    bare_friction: float
    aged: tuple[float, float]
    soiled: tuple[float, float]
    warmth: float

    @property
    def shear_mpa(self) -> float:
        """Shear strength as it is, tau [MPa]."""
        return self.strength_mpa * self.share * self.aged[0] * self.soiled[0] * self.warmth

    @property
    def friction(self) -> float:
        """Coefficient of friction as it is, mu."""
        return self.bare_friction * self.aged[1] * self.soiled[1]

    @property
    def torque_nmm(self) -> float:
        """T_i = tau W + mu N r_eff, the torque it carries before it slips [N mm]."""
        return self.shear_mpa * self.contact.w_mm3 + self.friction * self.clamp_n * r_eff_mm(self.contact)

    @property
    def force_n(self) -> float:
        """What it carries sideways, tau A + mu N [N]."""
        return self.shear_mpa * self.contact.area_mm2 + self.friction * self.clamp_n


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """What block and tip hold together.

    contact: where the block holds the lens.
    joints: of the front stack, from the block to the lens.
    clamp_force_n: as set or by default [N].
    clamp_cap_n: the most the lens bears [N].
    back_friction: of the tip; back_torque_fit, back_force_fit: share of an even contact's.
    back_radius_mm: effective radius of the tip [mm].
    back_nmm, back_force_n: what the tip carries [N mm, N].
    """

    contact: Contact
    joints: tuple[Joint, ...]
    clamp_force_n: float
    clamp_cap_n: float
    back_friction: float
    back_torque_fit: float
    back_force_fit: float
    back_radius_mm: float
    back_nmm: float
    back_force_n: float

    @property
    def weakest(self) -> Joint:
        """The joint of the front stack that slips first in torque; the rest adds nothing."""
        return min(self.joints, key=lambda joint: joint.torque_nmm)

    @property
    def front_nmm(self) -> float:
        """T_front, what the front stack carries [N mm]."""
        return self.weakest.torque_nmm

    @property
    def front_force_n(self) -> float:
        """What the front stack carries sideways [N]."""
        return min(joint.force_n for joint in self.joints)

    @property
    def torque_nmm(self) -> float:
        """T_0, the torque held with no sideways load [N mm]."""
        return stack_torque_nmm([joint.torque_nmm for joint in self.joints], self.back_nmm)

    @property
    def force_n(self) -> float:
        """F_0, the sideways load held with no torque [N]."""
        return self.front_force_n + self.back_force_n

    def capacity_n(self, arm_mm: np.ndarray, sideways: float) -> np.ndarray:
        """Return C, the tangential force at which the lens turns [N].

        arm_mm: any shape, lever arm of the tangential force [mm].
        sideways: c_F, whole force over tangential force.

        Torque and sideways load grow together and their shares of T_0 and F_0 add in squares: the usual
        engineering form (from memory); that they are coupled: Farkas et al., Phys. Rev. Lett. 90 (2003)
        248302.
        """
        return 1.0 / np.sqrt((arm_mm / self.torque_nmm) ** 2 + (sideways / self.force_n) ** 2)


def stack_torque_nmm(front_nmm: Sequence[float], back_nmm: float) -> float:
    """Return the torque a stack holds with no sideways load, T_0 = T_front + T_back [N mm].

    front_nmm: what each joint of the front stack carries; in series, so that the weakest governs [N mm].
    back_nmm: what the back tip carries beside them [N mm].
    """
    return min(front_nmm) + back_nmm


def clamp_cap_n(centre_thickness_mm: float, bench: Bench) -> float:
    """Return the greatest clamp force a lens bears without its coat crazing [N].

    centre_thickness_mm: the thinnest place under the tip [mm].
    bench: its bending share and allowed stress.

    Raises LabError for a thickness that is not above 0.
    Source: bending of a thin plate, 0.62 chi N / t^2 (derived).
    """
    require_between(
        "centre thickness", centre_thickness_mm, low=0.0, high=_THICKEST_MM, unit="mm", open_low=True
    )
    most = most_clamp_n()
    bending = bench.plate_factor * bench.bending_share
    strength = bench.allowed_stress_mpa * centre_thickness_mm**2
    return min(most, strength / bending) if bending else most


def most_clamp_n() -> float:
    """Return the greatest clamp force a chuck gives [N]."""
    return parameters()["clamp_force_n"].high


def holding(setup: Setup, *, centre_thickness_mm: float, bench: Bench) -> Holding:
    """Return what holds the lens.

    setup: what is chosen for this lens.
    centre_thickness_mm: the thinnest place under the tip [mm].
    bench: machine and grip.

    Raises LabError for a thickness that is not above 0.
    """
    cap = clamp_cap_n(centre_thickness_mm, bench)
    clamp = min(bench.clamp_force_n, cap) if setup.clamp_force_n is None else setup.clamp_force_n
    contact = block_contact(setup.block)
    tip = r_eff_mm(Annulus(radius_mm=bench.tip_radius_mm))
    friction = _back_friction(setup, bench)
    torque_fit, force_fit = back_fit(setup, bench)
    return Holding(
        contact=contact,
        joints=_joints(setup, contact, clamp, bench),
        clamp_force_n=clamp,
        clamp_cap_n=cap,
        back_friction=friction,
        back_torque_fit=torque_fit,
        back_force_fit=force_fit,
        back_radius_mm=tip,
        # An idle tip turns with the lens, yet its spindle still holds sideways.
        back_nmm=0.0 if setup.back_tip_idles else friction * clamp * tip * torque_fit,
        back_force_n=friction * clamp * force_fit,
    )


def _back_friction(setup: Setup, bench: Bench) -> float:
    bare = bench.back_tape_friction if setup.back_tape else bench.coats[setup.coat].back_friction
    return bare * bench.skins[setup.skin].friction_factor


def back_fit(setup: Setup, bench: Bench) -> tuple[float, float]:
    """Return q_T and q_F, the share of an even contact's torque and force that the back tip gives.

    setup: its tip fit and stiffness; bench: its share where the fit is not known.
    """
    if setup.tip_fit == "usual":
        return bench.usual_fit, bench.usual_fit
    row = table()["fit"][setup.tip_fit]
    return row["torque"][setup.tip_stiffness], row["force"][setup.tip_stiffness]


def _joints(setup: Setup, contact: Contact, clamp_n: float, bench: Bench) -> tuple[Joint, ...]:
    """Front stack from the block to the lens; pad faces age, the core and the film's own adhesive do not."""
    coat, skin = bench.coats[setup.coat], bench.skins[setup.skin]
    surface = "lens" if setup.coat == "uncoated" else "coat"
    aged = pad_age_factors(setup.pad_age_months, bench)
    soiled = skin.shear_factor, skin.friction_factor

    even = {"contact": contact, "clamp_n": clamp_n, "strength_mpa": bench.pad_shear_mpa}
    even |= {"warmth": warmth_factor(setup.temperature_c, bench), "aged": (1.0, 1.0), "soiled": (1.0, 1.0)}

    def joint(name: str, share: float, friction: float, **changed: object) -> Joint:
        return Joint(name=name, share=share, bare_friction=friction, **even | changed)

    block = joint("block to pad", bench.block_pad_shear_factor, bench.block_pad_friction, aged=aged)
    core = joint("pad core", 1.0, 0.0, strength_mpa=bench.core_shear_mpa)
    if not setup.film:
        lens = joint(f"pad to {surface}", coat.pad_shear_factor, coat.pad_friction, aged=aged, soiled=soiled)
        return block, core, lens
    film = joint("pad to film", bench.pad_film_shear_factor, bench.pad_film_friction, aged=aged)
    lens = joint(f"film to {surface}", bench.film_coat_shear_factor, bench.film_coat_friction, soiled=soiled)
    return block, core, film, lens


def pad_age_factors(months: float, bench: Bench) -> tuple[float, float]:
    """Return what a pad face has left of shear strength and of friction.

    months: age of the pad [months]; bench: its losses.
    """
    shear = max(bench.age_shear_floor, 1.0 - bench.age_shear_loss_per_month * months)
    friction = max(bench.age_friction_floor, 1.0 - bench.age_friction_loss_per_month * months)
    return shear, friction


def warmth_factor(temperature_c: float, bench: Bench) -> float:
    """Return the factor on every shear strength.

    temperature_c: of pad and room [degrees C]; bench: its loss per degree.
    """
    return math.exp(-bench.warmth_loss_per_degree * (temperature_c - REFERENCE_C))
