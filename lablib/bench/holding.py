"""What holds the lens: the front stack in series, the back tip in parallel, sideways load against both.

For fully slipping joints torque is shear strength x W plus friction x clamp force x effective radius.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from lablib.bench.bearing_on import back_fit, block_bearing, uneven_bending_share
from lablib.bench.contact import Annulus, Contact, block_contact, r_eff_mm
from lablib.bench.faces import LensFaces
from lablib.bench.joints import Joint, front_joints, gripped_coat
from lablib.bench.machine import Bench
from lablib.bench.parameter import parameters
from lablib.bench.setup import Setup
from lablib.errors import require_between

_THICKEST_MM = 60.0
_LEAST_BENDING = 1e-12


@dataclass(frozen=True, slots=True, kw_only=True)
class Holding:
    """What block and tip hold together.

    contact: where the block holds the lens.
    joints: of the front stack, from the block to the lens.
    clamp_force_n: as set or by default [N].
    clamp_cap_n: the most the lens bears [N].
    bending_share: chi, bending of the clamped lens as a share of a simply supported plate's.
    back_friction: of the tip; back_torque_fit, back_force_fit: share of an even contact's.
    back_radius_mm: effective radius of the tip [mm].
    back_nmm, back_force_n: what the tip carries [N mm, N].
    """

    contact: Contact
    joints: tuple[Joint, ...]
    clamp_force_n: float
    clamp_cap_n: float
    bending_share: float
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
        return turning_force_n(arm_mm, sideways, self.torque_nmm, self.force_n)


def turning_force_n(arm_mm: np.ndarray, sideways: float, torque_nmm: float, force_n: float) -> np.ndarray:
    """Return the tangential force at which a lens turns, of shapes that go together [N].

    arm_mm, sideways: as in `Holding.capacity_n`; torque_nmm, force_n: T_0 and F_0 [N mm, N].
    """
    return 1.0 / np.sqrt((arm_mm / torque_nmm) ** 2 + (sideways / force_n) ** 2)


def stack_torque_nmm(front_nmm: Sequence[float], back_nmm: float) -> float:
    """Return the torque a stack holds with no sideways load, T_0 = T_front + T_back [N mm].

    front_nmm: what each joint of the front stack carries; in series, so that the weakest governs [N mm].
    back_nmm: what the back tip carries beside them [N mm].
    """
    return min(front_nmm) + back_nmm


def clamp_cap_n(centre_thickness_mm: float, bench: Bench, *, bending_share: float | None = None) -> float:
    """Return the greatest clamp force a lens bears without its coat crazing [N].

    centre_thickness_mm: the thinnest place under the tip [mm].
    bench: its bending share and allowed stress.
    bending_share: chi where block and tip press unevenly; None: the bench's own.

    Raises LabError for a thickness that is not above 0.
    Source: bending of a thin plate, 0.62 chi N / t^2 (derived).
    """
    require_between(
        "centre thickness", centre_thickness_mm, low=0.0, high=_THICKEST_MM, unit="mm", open_low=True
    )
    most = most_clamp_n()
    bending = bench.plate_factor * (bench.bending_share if bending_share is None else bending_share)
    strength = bench.allowed_stress_mpa * centre_thickness_mm**2
    # A lens that does not bend bears whatever a chuck gives.
    return np.minimum(most, strength / np.maximum(bending, _LEAST_BENDING))


def most_clamp_n() -> float:
    """Return the greatest clamp force a chuck gives [N]."""
    return parameters()["clamp_force_n"].high


def holding(
    setup: Setup, *, centre_thickness_mm: float, bench: Bench, faces: LensFaces | None = None
) -> Holding:
    """Return what holds the lens.

    setup: what is chosen for this lens.
    centre_thickness_mm: the thinnest place under the tip [mm].
    bench: machine and grip.
    faces: of the lens at the chuck axis; needed only where the setup names the curve of the block or of the
        tip's face.

    Raises LabError for a thickness that is not above 0, and for a curve that has no lens to lie on.
    """
    contact, cap = block_contact(setup.block), clamp_cap_n(centre_thickness_mm, bench)
    chi = bench.bending_share
    if setup.block_curve_d is not None or setup.tip_face_mm is not None:
        # How unevenly block and tip press is looked at under the force a lens bears that is pressed evenly.
        chi = uneven_bending_share(setup, bench, contact, clamp_n(setup, bench, cap), faces)
        cap = clamp_cap_n(centre_thickness_mm, bench, bending_share=chi)
    clamp = clamp_n(setup, bench, cap)
    tip = r_eff_mm(Annulus(radius_mm=bench.tip_radius_mm))
    friction = back_friction(setup, bench)
    torque_fit, force_fit = back_fit(setup, bench, faces=faces, clamp_n=clamp)
    return Holding(
        contact=contact,
        joints=front_joints(setup, contact, clamp, bench, block_bearing(setup, contact, clamp, faces)),
        clamp_force_n=clamp,
        clamp_cap_n=cap,
        bending_share=chi,
        back_friction=friction,
        back_torque_fit=torque_fit,
        back_force_fit=force_fit,
        back_radius_mm=tip,
        # An idle tip turns with the lens, yet its spindle still holds sideways.
        back_nmm=0.0 if setup.back_tip_idles else friction * clamp * tip * torque_fit,
        back_force_n=friction * clamp * force_fit,
    )


def clamp_n(setup: Setup, bench: Bench, cap: float) -> float:
    """Return the clamp force: as set, else what the bench gives and the lens bears [N].

    setup: its clamp force or None; bench: its usual one; cap: the most the lens bears [N].
    """
    if setup.clamp_force_n is not None:
        return setup.clamp_force_n
    return np.minimum(bench.clamp_force_n, cap)


def back_friction(setup: Setup, bench: Bench) -> float:
    """Return the coefficient of friction of the back tip, on tape or on the lens as it is.

    setup: its tape, coat and what lies on it; bench: grip by surface.
    """
    bare = bench.back_tape_friction if setup.back_tape else gripped_coat(setup, bench).back_friction
    return bare * bench.skins[setup.skin].friction_factor
