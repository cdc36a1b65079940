"""Whether a blank covers an outline about the optical centre, and what moving that centre to suit would cost.

The move is worked out so that nobody makes it: an optical centre belongs before the pupil. Where a blank does
not cover, the lens is surfaced, comes from a larger blank, or goes into another frame.
"""

from dataclasses import dataclass
from itertools import combinations

import numpy as np

from lablib.optics.eye import Eye
from lablib.optics.frame import Outline
from lablib.optics.layout import LeastBlank, blank_allowance_mm, least_blank
from lablib.optics.limits import require_in_limits
from lablib.optics.prescription import Prescription
from lablib.optics.prism_pair import PrismPair, pair_at

# A point so little beyond a limit counts as on it [mm].
_SLACK_MM = 1e-9
# Each round adds a point of the outline; a handful settles it.
_MOST_ROUNDS = 60
NO_SHIFT = (0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlankFit:
    """A round blank laid on an outline, its middle at the optical centre.

    eye: which lens; outline: of it.
    in_mm, up_mm: the optical centre from the boxed centre, nasally and up [mm].
    blank_mm: diameter of the blank [mm].

    Raises LabError for a diameter no blank has.
    """

    eye: Eye
    outline: Outline
    in_mm: float
    up_mm: float
    blank_mm: float

    def __post_init__(self) -> None:
        require_in_limits("blank_diameter_mm", self.blank_mm, "blank_diameter_mm")

    @property
    def centre_mm(self) -> complex:
        """The optical centre from the boxed centre, x to the observer's right [mm]."""
        return complex(self.eye.nasal_sign * self.in_mm, self.up_mm)

    @property
    def usable_mm(self) -> float:
        """Radius within which the blank may be used: half its diameter without the allowance [mm]."""
        return (self.blank_mm - blank_allowance_mm()) / 2.0

    @property
    def least(self) -> LeastBlank:
        """The least blank, exactly and by the rule."""
        return least_blank(self.outline, eye=self.eye, in_mm=self.in_mm, up_mm=self.up_mm)

    @property
    def beyond_mm(self) -> np.ndarray:
        """Shape (N,), how far the outline lies beyond the usable blank; 0 or less where covered [mm]."""
        away = np.hypot(self.outline.x_mm - self.centre_mm.real, self.outline.y_mm - self.centre_mm.imag)
        return away - self.usable_mm

    @property
    def spare_mm(self) -> float:
        """How much larger the blank is than the least one [mm]; minus where it is too small."""
        return self.blank_mm - self.least.exact_mm

    @property
    def blank_covers(self) -> bool:
        """Whether the blank is as large as the least one."""
        return self.spare_mm >= -_SLACK_MM

    @property
    def shift_mm(self) -> tuple[float, float] | None:
        """The least move of the optical centre, nasally and up, after which the blank would cover [mm].

        None where no move helps, because the blank is smaller than the outline needs about any point. It is
        the price of a mistake, not a way to work: see `prism_of_shifts`.

        Source: plane geometry. The centre must lie within the usable radius of each outline point; the point
        nearest to where it belongs lies on one such circle, or where two of them cross.
        """
        if self.blank_covers:
            return NO_SHIFT
        found = _nearest_within(self.outline.x_mm + 1j * self.outline.y_mm, self.usable_mm, self.centre_mm)
        if found is None:
            return None
        move = found - self.centre_mm
        return self.eye.nasal_sign * move.real, move.imag


def prism_of_shifts(
    right: Prescription,
    left: Prescription,
    *,
    right_mm: tuple[float, float],
    left_mm: tuple[float, float],
) -> PrismPair:
    """Return the prism both eyes meet after the optical centres were moved off their place.

    right, left: the powers.
    right_mm, left_mm: how far each centre was moved, nasally and up [mm].

    Raises LabError for a move that is not a number.
    Source: `prism_pair.pair_at`: the eye stays, so it looks through a point the other way from the centre.
    """
    seen = {f"{eye}_mm": (-move[0], -move[1]) for eye, move in ((Eye.RIGHT, right_mm), (Eye.LEFT, left_mm))}
    return pair_at(right, left, **seen)


def _nearest_within(points: np.ndarray, radius: float, start: complex) -> complex | None:
    """The place nearest to a start that has all points within a radius; None where there is none."""
    counted: list[complex] = []
    place: complex | None = start
    for _ in range(_MOST_ROUNDS):
        away = np.abs(points - place)
        if away.max() <= radius + _SLACK_MM:
            return place
        counted.append(complex(points[away.argmax()]))
        place = _nearest_of_few(counted, radius, start)
        if place is None:
            return None
    return None


def _nearest_of_few(points: list[complex], radius: float, start: complex) -> complex | None:
    """The same for a few points: it lies on the circle about one of them, or where two such circles cross."""
    outside = [point for point in points if abs(start - point) > radius]
    candidates = [_on_circle(point, radius, start) for point in outside]
    for one, other in combinations(points, 2):
        candidates += _crossings(one, other, radius)
    good = [at for at in candidates if all(abs(at - point) <= radius + _SLACK_MM for point in points)]
    return min(good, key=lambda at: abs(at - start), default=None)


def _on_circle(middle: complex, radius: float, start: complex) -> complex:
    return middle + radius * (start - middle) / abs(start - middle)


def _crossings(one: complex, other: complex, radius: float) -> list[complex]:
    half = (other - one) / 2.0
    upright = radius**2 - abs(half) ** 2
    if upright < 0.0 or half == 0.0:
        return []
    step = 1j * half / abs(half) * upright**0.5
    return [one + half + step, one + half - step]
