"""What the picture of the grip shows: each joint's torque in its two parts, and what it is like."""

from dataclasses import dataclass, replace

from lablib.bench.holding import Holding, Joint
from lablib.bench.setup import Setup

FILM, LENS = "film", "lens"


@dataclass(frozen=True, slots=True, kw_only=True)
class JointShares:
    """One joint's torque, and what it comes from.

    name: what lies against what.
    sticks_nmm, rubs_nmm: from shear strength and from friction [N mm].
    state: what is there that makes it so, in words.
    """

    name: str
    sticks_nmm: float
    rubs_nmm: float
    state: str = ""

    @property
    def torque_nmm(self) -> float:
        """The whole [N mm]."""
        return self.sticks_nmm + self.rubs_nmm


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Grip:
    """One lens gripped between block and back tip.

    setup: what is chosen for it; held: what holds it.
    block, core, film, lens: the joints of the front stack; film None where there is none.
    tip: the back tip.
    weakest: which of the front stack slips first.
    second: which would be the next, the weakest mended.
    play_deg: how far the axis may be off before anything slips [degrees].
    """

    setup: Setup
    held: Holding
    block: JointShares
    core: JointShares
    film: JointShares | None
    lens: JointShares
    tip: JointShares
    weakest: JointShares
    second: JointShares
    play_deg: float


def grip_of(setup: Setup, held: Holding, *, play_deg: float) -> Grip:
    """Return a grip as it is drawn.

    setup: what is chosen for the lens; held: what holds it, by this setup.
    play_deg: of the block's key [degrees].
    """
    shares = [_shares(joint, state) for joint, state in zip(held.joints, _states(setup), strict=True)]
    ranked = sorted(shares, key=lambda one: one.torque_nmm)
    block, core, *film, lens = shares
    return Grip(
        setup=setup,
        held=held,
        block=block,
        core=core,
        film=film[0] if film else None,
        lens=lens,
        tip=JointShares(
            name="back tip", sticks_nmm=0.0, rubs_nmm=held.back_nmm, state=_tip_state(setup, held)
        ),
        weakest=ranked[0],
        second=ranked[1],
        play_deg=play_deg,
    )


def _shares(joint: Joint, state: str) -> JointShares:
    sticks = replace(joint, clamp_n=0.0).torque_nmm
    return JointShares(name=joint.name, sticks_nmm=sticks, rubs_nmm=joint.torque_nmm - sticks, state=state)


def _states(setup: Setup) -> tuple[str, ...]:
    """What each joint of the front stack is like, from the block to the lens."""
    pad = f"pad {setup.pad_age_months:g} months old" if setup.pad_age_months else "fresh pad"
    block = f"{setup.block_face} block, {pad}"
    core = f"{setup.temperature_c:g} degrees C"
    if not setup.film:
        return block, core, f"{pad}, {_lens_state(setup)}"
    crease = f"{100.0 * setup.film_wrinkle:.0f} % air" if setup.film_wrinkle else "no crease"
    return block, core, f"{pad}, {crease}", f"{_lens_state(setup)}, {crease}"


def _lens_state(setup: Setup) -> str:
    surface = _SKIN[setup.skin]
    if setup.coat == "uncoated":
        return f"{surface}, no coat"
    if setup.coat == "coated":
        return f"{surface}, ordinary coat"
    return f"{surface}, {_SLICK[setup.grip_layer]}"


def _tip_state(setup: Setup, held: Holding) -> str:
    under = "on tape" if setup.back_tape else f"on {_lens_state(setup)}"
    return f"{held.clamp_force_n:.0f} N, {under}"


_SKIN = {"clean": "clean lens", "fingerprint": "fingerprint", "oily": "oily lens"}
_SLICK = {"none": "slick coat", "present": "grip layer", "stripped": "layer wiped off"}
