"""An answer that is read off a picture by moving a marker to a place."""

from dataclasses import dataclass
from typing import ClassVar

from lablib.errors import LabError, require_between, require_finite
from lablib.study.answer import Given, NotUnderstood, Understood, quoted
from lablib.working import plain

_SLACK = 1e-9


def way_round(one: float, other: float, *, whole: float) -> float:
    """Return how far two places on a ring are apart, the short way round.

    one, other: the places; whole: the way all round, in the same unit.
    """
    away = abs(one - other) % whole
    return min(away, whole - away)


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkerAnswer:
    """A place on a scale of the picture, where the learner puts a marker.

    label: what the marker is called beside its slider.
    unit: of the scale.
    low, high, step: of the slider [unit].
    start: where the marker stands at first, which is no answer [unit].
    tolerance: how far off still counts as the same [unit], at least half a step.
    digits: decimals of the scale.
    wraps: whether the two ends of the scale are one place, as round a lens.

    Raises LabError for a scale that cannot be, or when the marker cannot come near enough to every place.
    """

    name: ClassVar[str] = "marker"
    label: str
    unit: str
    low: float
    high: float
    step: float
    start: float
    tolerance: float
    digits: int = 0
    wraps: bool = False

    def __post_init__(self) -> None:
        low, high = (require_finite(f"{self.label}: end of the scale", end) for end in (self.low, self.high))
        if low >= high:
            raise LabError(
                f"{self.label}: a scale from {low:g} to {high:g} has no length: put the low end first"
            )
        require_between(f"{self.label}: step", self.step, low=0.0, high=high - low, open_low=True)
        require_between(f"{self.label}: start", self.start, low=low, high=high)
        require_finite(f"{self.label}: tolerance", self.tolerance)
        if any(abs(round(one, self.digits) - one) > _SLACK for one in (low, self.step)):
            raise LabError(
                f"{self.label}: {self.digits} decimal(s) cannot show a scale from {low:g} in steps of "
                f"{self.step:g}: give more"
            )
        if self.tolerance < self.step / 2.0 - _SLACK:
            raise LabError(
                f"tolerance {self.tolerance:g} is less than half a step of {self.step:g}: widen it, or "
                "let the marker move in smaller steps"
            )

    def is_blank(self, given: Given) -> bool:
        """Return whether the marker has not been moved yet."""
        return given is None or given == ""

    def read(self, given: Given) -> Understood[float]:
        """Return the place of the marker.

        given: a number on the scale.

        Raises NotUnderstood for what is no number, or off the scale.
        """
        try:
            place = require_finite(self.label, given)
        except LabError:
            raise NotUnderstood(f"{quoted(given)} is not a place on the picture: move the marker") from None
        if not self.low - _SLACK <= place <= self.high + _SLACK:
            raise NotUnderstood(
                f"{place:g} is off the scale: move the marker between {self.low:g} and {self.high:g}"
            )
        return Understood(meanings=(place,), words=self.written(place))

    def distance(self, one: float, other: float) -> float:
        """Return how far two places are apart, the short way round where the scale wraps [unit]."""
        return way_round(one, other, whole=self.high - self.low) if self.wraps else abs(one - other)

    def matches(self, value: float, other: object) -> bool:
        """Return whether two places are the same within the tolerance."""
        return self.distance(value, other) <= self.tolerance + _SLACK

    def apart(self, one: object, other: object) -> bool:
        """Return whether two places are further apart than twice the tolerance."""
        return self.distance(one, other) > 2.0 * self.tolerance + _SLACK

    def written(self, value: float) -> str:
        """Return a place with its unit."""
        return f"{plain(value, self.digits)} {self.unit}".rstrip()
