"""What the picture of a pair of lenses before two eyes shows."""

from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.near_imbalance import SlabOff
from lablib.optics.prism_pair import PrismPair


@dataclass(frozen=True, slots=True, kw_only=True)
class PairSeen:
    """Two spherical lenses, where their centres stand, and what the eyes meet.

    right_d, left_d: powers [D].
    right_centre_mm, left_centre_mm: optical centres, from the middle of the bridge [mm].
    right_pd_mm, left_pd_mm: pupils, from the middle of the bridge [mm].
    drop_mm: how far below the optical centres the eyes look through [mm].
    pair: the prism of both eyes.
    slab: which lens slab-off would be ground on.
    reach_prism_d: the greatest prism these two powers can be set to give one eye [prism D].
    """

    right_d: float
    left_d: float
    right_centre_mm: float
    left_centre_mm: float
    right_pd_mm: float
    left_pd_mm: float
    drop_mm: float
    pair: PrismPair
    slab: SlabOff
    reach_prism_d: float

    def power_d(self, eye: Eye) -> float:
        """Return the power of an eye's lens [D].

        eye: which.
        """
        return self.right_d if eye is Eye.RIGHT else self.left_d

    def centre_mm(self, eye: Eye) -> float:
        """Return where an optical centre stands as drawn, to the observer's right of the bridge [mm].

        eye: which.
        """
        return -eye.nasal_sign * (self.right_centre_mm if eye is Eye.RIGHT else self.left_centre_mm)

    def pupil_mm(self, eye: Eye) -> float:
        """Return where a pupil stands as drawn, to the observer's right of the bridge [mm].

        eye: which.
        """
        return -eye.nasal_sign * (self.right_pd_mm if eye is Eye.RIGHT else self.left_pd_mm)

    def base_prism_d(self, eye: Eye) -> complex:
        """Return an eye's prism as an arrow to draw, x + iy [prism D].

        eye: which.
        """
        inwards, upwards = self.pair.right if eye is Eye.RIGHT else self.pair.left
        return complex(eye.nasal_sign * inwards, upwards)
