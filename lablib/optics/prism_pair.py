"""The prism of a pair: split between the eyes, given to both alike, or put in by centres off their place.

Components are base in and base up of each eye, out and down being minus. What counts between the eyes is
the sum of the parts base in and the difference of the parts base up; what both eyes have alike only moves
what is seen.
"""

from dataclasses import dataclass

from lablib.errors import require_between, require_finite
from lablib.optics.eye import Eye
from lablib.optics.limits import require_in_limits
from lablib.optics.power import ADDITION_LIMIT_D
from lablib.optics.practice import usual_or
from lablib.optics.prescription import Prescription
from lablib.optics.prism import imbalance, in_words, prism_at


@dataclass(frozen=True, slots=True, kw_only=True)
class PrismPair:
    """The prism each eye of a pair has.

    right_in_prism_d, right_up_prism_d: base in and base up of the right eye [prism D].
    left_in_prism_d, left_up_prism_d: of the left eye [prism D].

    Raises LabError for a component that is not a number.
    """

    right_in_prism_d: float
    right_up_prism_d: float
    left_in_prism_d: float
    left_up_prism_d: float

    def __post_init__(self) -> None:
        for eye in Eye:
            for way in ("in", "up"):
                name = f"{eye}_{way}_prism_d"
                value = require_finite(f"{eye} prism base {way}", getattr(self, name), unit="prism dioptres")
                object.__setattr__(self, name, value + 0.0)

    @property
    def right(self) -> tuple[float, float]:
        """Base in and base up of the right eye [prism D]."""
        return self.right_in_prism_d, self.right_up_prism_d

    @property
    def left(self) -> tuple[float, float]:
        """Base in and base up of the left eye [prism D]."""
        return self.left_in_prism_d, self.left_up_prism_d

    @property
    def between(self) -> tuple[float, float]:
        """What counts between the eyes: base in of both, base up of the right over the left [prism D]."""
        return imbalance(right_prism_d=self.right, left_prism_d=self.left)

    @property
    def alike(self) -> tuple[float, float]:
        """What both eyes have alike: base towards the wearer's left, and base up [prism D]."""
        to_left = (self.right_in_prism_d - self.left_in_prism_d) / 2.0
        return to_left + 0.0, (self.right_up_prism_d + self.left_up_prism_d) / 2.0

    def written(self) -> str:
        """Return the pair as it is spoken: "right 2.00 base in, left 2.00 base in"."""
        return f"right {in_words(*self.right)}, left {in_words(*self.left)}"


def split(*, in_prism_d: float = 0.0, up_prism_d: float = 0.0, right_share: float = 0.5) -> PrismPair:
    """Return a prism split between the eyes.

    in_prism_d: base in that both eyes are to have together [prism D]; both get the same word.
    up_prism_d: base up the right eye is to have over the left [prism D]; the eyes get opposite words.
    right_share: the part of it the right eye gets, from 0 to 1.

    Raises LabError for a value that is not a number or a share out of range.
    Source: common practice; `PrismPair.between` gives the whole back.
    """
    share = require_between("share of the right eye", right_share, low=0.0, high=1.0)
    inwards = require_finite("prism base in", in_prism_d, unit="prism dioptres")
    upwards = require_finite("prism base up", up_prism_d, unit="prism dioptres")
    return PrismPair(
        right_in_prism_d=share * inwards,
        right_up_prism_d=share * upwards,
        left_in_prism_d=(1.0 - share) * inwards,
        left_up_prism_d=-(1.0 - share) * upwards,
    )


def yoked(*, to_left_prism_d: float = 0.0, up_prism_d: float = 0.0) -> PrismPair:
    """Return a prism with its base the same way in space for both eyes; between the eyes it is nothing.

    to_left_prism_d: base towards the wearer's left, minus to the right, in each eye [prism D].
    up_prism_d: base up in each eye [prism D].

    Raises LabError for a value that is not a number.
    Source: common practice.
    """
    sideways = require_finite("prism towards the wearer's left", to_left_prism_d, unit="prism dioptres")
    return PrismPair(
        right_in_prism_d=Eye.RIGHT.nasal_sign * sideways,
        right_up_prism_d=up_prism_d,
        left_in_prism_d=Eye.LEFT.nasal_sign * sideways,
        left_up_prism_d=up_prism_d,
    )


def thinning_prism(addition_d: float, *, share: float | None = None) -> PrismPair:
    """Return the thinning prism of a pair of progressives, base down alike in both eyes.

    addition_d: addition [D].
    share: prism dioptres for each dioptre of addition; None for the usual two thirds.

    Raises LabError for an addition or a share out of range.
    Source: common practice.
    """
    addition = require_between("addition", addition_d, low=0.0, high=ADDITION_LIMIT_D, unit="D")
    part = usual_or("thinning_share", "thinning prism for each dioptre of addition", share)
    return yoked(up_prism_d=-part * addition)


def pair_at(
    right: Prescription,
    left: Prescription,
    *,
    right_mm: tuple[float, float],
    left_mm: tuple[float, float],
) -> PrismPair:
    """Return the prism both eyes meet, each at a point of its own lens.

    right, left: the powers.
    right_mm, left_mm: the points, inwards and upwards from the optical centre [mm].

    Raises LabError for a point that is not a number.
    Source: `prism.prism_at`.
    """
    right_in, right_up = prism_at(right, eye=Eye.RIGHT, in_mm=right_mm[0], up_mm=right_mm[1])
    left_in, left_up = prism_at(left, eye=Eye.LEFT, in_mm=left_mm[0], up_mm=left_mm[1])
    return PrismPair(
        right_in_prism_d=right_in,
        right_up_prism_d=right_up,
        left_in_prism_d=left_in,
        left_up_prism_d=left_up,
    )


def inwards_of_centre_mm(*, centre_mm: float, pd_mm: float) -> float:
    """Return how far inwards of its optical centre an eye looks through a lens [mm]; minus is outwards.

    centre_mm: from the middle of the bridge to the optical centre [mm].
    pd_mm: from the middle of the bridge to the pupil, the monocular distance [mm].

    Raises LabError for a distance no wearer has.
    Source: common practice.
    """
    centre = require_in_limits("distance of the optical centre", centre_mm, "monocular_pd_mm")
    return centre - require_in_limits("monocular distance", pd_mm, "monocular_pd_mm")


def prism_of_centres(
    right: Prescription,
    left: Prescription,
    *,
    right_centre_mm: float,
    left_centre_mm: float,
    right_pd_mm: float,
    left_pd_mm: float,
) -> PrismPair:
    """Return the prism that optical centres wider or narrower than the wearer's distances put in.

    right, left: the powers.
    right_centre_mm, left_centre_mm, right_pd_mm, left_pd_mm: as in `inwards_of_centre_mm`.

    Raises LabError for a distance no wearer has.
    Source: `prism.prism_at`.
    """
    return pair_at(
        right,
        left,
        right_mm=(inwards_of_centre_mm(centre_mm=right_centre_mm, pd_mm=right_pd_mm), 0.0),
        left_mm=(inwards_of_centre_mm(centre_mm=left_centre_mm, pd_mm=left_pd_mm), 0.0),
    )
