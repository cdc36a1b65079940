"""What the picture of a pair of blanks laid on a frame as worn shows."""

from dataclasses import dataclass

from lablib.optics.blank_fit import BlankFit
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.prism_pair import PrismPair


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PairOfBlanks:
    """A frame on a wearer, and a round blank at the optical centre of each lens.

    frame: the frame.
    right, left: the blanks laid on their outlines, each optical centre before its pupil.
    right_pd_mm, left_pd_mm: pupils, from the middle of the bridge [mm].
    right_height_mm, left_height_mm: pupils, above the lowest tangent of the outline [mm].
    cost: the prism both eyes would meet if the centres were moved to suit the blanks; None where no move
        would do.
    """

    frame: Frame
    right: BlankFit
    left: BlankFit
    right_pd_mm: float
    left_pd_mm: float
    right_height_mm: float
    left_height_mm: float
    cost: PrismPair | None

    def fit(self, eye: Eye) -> BlankFit:
        """Return the blank of an eye.

        eye: whose.
        """
        return self.right if eye is Eye.RIGHT else self.left

    def pd_mm(self, eye: Eye) -> float:
        """Return the monocular distance of an eye [mm].

        eye: whose.
        """
        return self.right_pd_mm if eye is Eye.RIGHT else self.left_pd_mm

    def height_mm(self, eye: Eye) -> float:
        """Return the height of an eye's pupil [mm].

        eye: whose.
        """
        return self.right_height_mm if eye is Eye.RIGHT else self.left_height_mm

    def boxed_centre_mm(self, eye: Eye) -> float:
        """Return where a boxed centre stands as drawn, to the observer's right of the bridge [mm].

        eye: whose.
        """
        return -eye.nasal_sign * self.frame.bridge_to_boxed_centre_mm
