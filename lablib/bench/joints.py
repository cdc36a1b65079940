"""The joints of the front stack from the block to the lens, each with what its condition leaves of it."""

from dataclasses import dataclass

import numpy as np

from lablib.bench.bearing import EVEN, Bearing
from lablib.bench.contact import Contact, r_eff_mm
from lablib.bench.machine import Bench, Coat
from lablib.bench.parameter import default
from lablib.bench.setup import Setup, block_face_left

# The temperature strengths are stated for.
REFERENCE_C = default("temperature_c")
# As a maker's grip layer lets a slick coat be gripped.
_GRIPS_LIKE = "coated"


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
    bearing: how its two faces bear on each other.
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
    bearing: Bearing = EVEN

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
        sticks = self.shear_mpa * self.contact.w_mm3 * self.bearing.turning
        return sticks + self.friction * self.clamp_n * r_eff_mm(self.contact) * self.bearing.friction_radius

    @property
    def force_n(self) -> float:
        """What it carries sideways, tau A + mu N [N]."""
        sticks = self.shear_mpa * self.contact.area_mm2 * self.bearing.area
        return sticks + self.friction * self.clamp_n


def front_joints(
    setup: Setup, contact: Contact, clamp_n: float, bench: Bench, bearing: Bearing = EVEN
) -> tuple[Joint, ...]:
    """Return the front stack from the block to the lens.

    setup: what is chosen for this lens; contact: where the block holds it.
    clamp_n: clamp force [N]; bench: machine and grip.
    bearing: of block on lens front. Where the pad has lifted off, nothing is passed on by any joint.

    Pad faces age, the core and the film's own adhesive do not.
    """
    coat, skin = gripped_coat(setup, bench), bench.skins[setup.skin]
    surface = "lens" if setup.coat == "uncoated" else "coat"
    aged = pad_age_factors(setup.pad_age_months, bench)
    soiled = skin.shear_factor, skin.friction_factor

    even = {"contact": contact, "clamp_n": clamp_n, "strength_mpa": bench.pad_shear_mpa, "bearing": bearing}
    even |= {"warmth": warmth_factor(setup.temperature_c, bench), "aged": (1.0, 1.0), "soiled": (1.0, 1.0)}

    def joint(name: str, share: float, friction: float, **changed: object) -> Joint:
        return Joint(name=name, share=share, bare_friction=friction, **even | changed)

    worn = block_face_left(setup.block_face)
    block = joint(
        "block to pad", bench.block_pad_shear_factor, bench.block_pad_friction, aged=aged, soiled=worn
    )
    core = joint("pad core", 1.0, 0.0, strength_mpa=bench.core_shear_mpa)
    if not setup.film:
        lens = joint(f"pad to {surface}", coat.pad_shear_factor, coat.pad_friction, aged=aged, soiled=soiled)
        return block, core, lens
    # Air under a crease is in the film's two joints alone: the pad itself still sticks to the block.
    even["bearing"] = bearing.without(setup.film_wrinkle)
    film = joint("pad to film", bench.pad_film_shear_factor, bench.pad_film_friction, aged=aged)
    lens = joint(f"film to {surface}", bench.film_coat_shear_factor, bench.film_coat_friction, soiled=soiled)
    return block, core, film, lens


def gripped_coat(setup: Setup, bench: Bench) -> Coat:
    """Return the surface that pad and tip really meet: under a maker's grip layer a slick coat grips better.

    setup: its coat and grip layer; bench: grip by kind of surface.
    """
    layered = setup.coat == "slick" and setup.grip_layer == "present"
    return bench.coats[_GRIPS_LIKE if layered else setup.coat]


def pad_age_factors(months: float, bench: Bench) -> tuple[float, float]:
    """Return what a pad face has left of shear strength and of friction.

    months: age of the pad [months]; bench: its losses.
    """
    shear = np.maximum(bench.age_shear_floor, 1.0 - bench.age_shear_loss_per_month * months)
    friction = np.maximum(bench.age_friction_floor, 1.0 - bench.age_friction_loss_per_month * months)
    return shear, friction


def warmth_factor(temperature_c: float, bench: Bench) -> float:
    """Return the factor on every shear strength.

    temperature_c: of pad and room [degrees C]; bench: its loss per degree.
    """
    return np.exp(-bench.warmth_loss_per_degree * (temperature_c - REFERENCE_C))
