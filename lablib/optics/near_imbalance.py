"""Vertical imbalance at near: what two lenses of different power do to eyes that look down to read.

Whether an imbalance is raised, by how much, and by slab-off or otherwise, the prescriber decides.
"""

from dataclasses import dataclass

from lablib.errors import require_between
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism_pair import PrismPair, pair_at

SLAB_OFF_CAUTION = (
    "Slab-off is never our own idea: the prescriber decides whether it is made and how much. "
    "The bench asks, and records the answer."
)
_MOST_DROP_MM = 30.0
_MOST_INSET_MM = 6.0
# Below this an amount is written 0.00.
_NO_PRISM_D = 0.005


@dataclass(frozen=True, slots=True, kw_only=True)
class SlabOff:
    """Which lens of a pair would have slab-off, and how much; always base up.

    eye: the eye with the least prism base up at the reading point, which is the one with the most minus
        or least plus in the vertical meridian; None where there is no imbalance.
    amount_prism_d: the imbalance that it would take away [prism D].
    """

    eye: Eye | None
    amount_prism_d: float

    @property
    def words(self) -> str:
        """The eye, the amount and the base, and who decides."""
        if self.eye is None:
            return "There is no vertical imbalance at the reading point."
        return f"{self.amount_prism_d:.2f} base up on the {self.eye} lens. {SLAB_OFF_CAUTION}"


def prism_at_reading_point(
    right: Prescription,
    left: Prescription,
    *,
    drop_mm: float,
    right_inset_mm: float = 0.0,
    left_inset_mm: float = 0.0,
) -> PrismPair:
    """Return the prism both eyes meet when they read through the powers for distance.

    right, left: the powers for distance; equal additions change nothing between the eyes.
    drop_mm: how far below the optical centres for distance the eyes look through [mm], from 0 to 30.
    right_inset_mm, left_inset_mm: how far inwards of those centres [mm], from 0 to 6.

    Raises LabError for a distance out of range.
    Source: `prism.prism_at`; checked against Bhootra, Ophthalmic Lenses, p. 47.
    """
    drop = require_between("drop to the reading point", drop_mm, low=0.0, high=_MOST_DROP_MM, unit="mm")
    insets = [
        require_between(f"inset of the {eye} eye", inset, low=0.0, high=_MOST_INSET_MM, unit="mm")
        for eye, inset in ((Eye.RIGHT, right_inset_mm), (Eye.LEFT, left_inset_mm))
    ]
    return pair_at(right, left, right_mm=(insets[0], -drop), left_mm=(insets[1], -drop))


def slab_off(
    right: Prescription,
    left: Prescription,
    *,
    drop_mm: float,
    right_inset_mm: float = 0.0,
    left_inset_mm: float = 0.0,
) -> SlabOff:
    """Return the slab-off that would take away the vertical imbalance at the reading point.

    right, left, drop_mm, right_inset_mm, left_inset_mm: as in `prism_at_reading_point`.

    Raises LabError for a distance out of range.
    Source: common practice: base up on the lens with the most minus or least plus.
    """
    pair = prism_at_reading_point(
        right, left, drop_mm=drop_mm, right_inset_mm=right_inset_mm, left_inset_mm=left_inset_mm
    )
    right_over_left = pair.between[1]
    if abs(right_over_left) < _NO_PRISM_D:
        return SlabOff(eye=None, amount_prism_d=0.0)
    return SlabOff(eye=Eye.LEFT if right_over_left > 0.0 else Eye.RIGHT, amount_prism_d=abs(right_over_left))
