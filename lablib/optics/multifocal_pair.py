"""The two lenses of a multifocal pair against one another: heights that differ, and one lens remade.

Nothing here is put right by the bench: unequal heights, a choice between two designs and prism are asked.
"""

from dataclasses import dataclass

from lablib.errors import require_between
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits
from lablib.optics.power import without_noise
from lablib.optics.practice import usual
from lablib.optics.prism import imbalance

# Half a unit of the last figure in which heights are written.
_LEVEL_MM = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoHeights:
    """The heights of two segment tops, or of two fitting crosses.

    right_mm, left_mm: above the lowest tangent of each lens [mm].

    Raises LabError for a height out of range.
    """

    right_mm: float
    left_mm: float

    def __post_init__(self) -> None:
        for eye in Eye:
            require_in_limits(f"height of the {eye} eye", getattr(self, f"{eye}_mm"), "height_mm")

    @property
    def right_over_left_mm(self) -> float:
        """Right height less left height [mm]."""
        return without_noise(self.right_mm - self.left_mm)

    @property
    def higher(self) -> Eye | None:
        """The eye whose height is the larger; None where they are level."""
        if abs(self.right_over_left_mm) < _LEVEL_MM:
            return None
        return Eye.RIGHT if self.right_over_left_mm > 0.0 else Eye.LEFT

    @property
    def is_asked(self) -> bool:
        """Whether the difference is so large that it is asked about before the lenses are cut."""
        return abs(self.right_over_left_mm) > usual("heights_apart")


def remake_imbalance_prism_d(*, kept_down_prism_d: float, new_down_prism_d: float) -> float:
    """Return the vertical prism a remade lens puts between the eyes by its thinning prism [prism D].

    kept_down_prism_d: thinning prism of the lens that is kept, base down [prism D].
    new_down_prism_d: of the new lens, base down [prism D].

    Alike in both it disturbs nobody; ordered without it, one new lens does. The amount is never minus.
    Raises LabError for a prism out of range.
    Source: common practice.
    """
    kept, new = (
        -require_between("thinning prism", amount, low=0.0, high=6.0, unit="prism dioptres base down")
        for amount in (kept_down_prism_d, new_down_prism_d)
    )
    return abs(imbalance(right_prism_d=(0.0, kept), left_prism_d=(0.0, new))[1])
