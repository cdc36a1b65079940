"""An answer that is read off a picture by moving a marker to a place."""

import math
from dataclasses import dataclass
from typing import ClassVar

from lablib.errors import LabError
from lablib.study.answer import Given, NotUnderstood, Understood
from lablib.working import plain

_SLACK = 1e-9


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

    Raises LabError when the marker cannot come near enough to every place.
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
        if isinstance(given, bool) or not isinstance(given, int | float) or not math.isfinite(given):
            raise NotUnderstood(f"{given!r} is not a place on the picture: move the marker")
        if not self.low - _SLACK <= given <= self.high + _SLACK:
            raise NotUnderstood(
                f"{given:g} is off the scale: move the marker between {self.low:g} and {self.high:g}"
            )
        return Understood(meanings=(float(given),), words=self.written(given))

    def distance(self, one: float, other: float) -> float:
        """Return how far two places are apart, the short way round where the scale wraps [unit]."""
        away = abs(one - other)
        if self.wraps:
            whole = self.high - self.low
            away = min(away % whole, whole - away % whole)
        return away

    def matches(self, value: float, other: object) -> bool:
        """Return whether two places are the same within the tolerance."""
        return self.distance(value, other) <= self.tolerance + _SLACK

    def apart(self, one: object, other: object) -> bool:
        """Return whether two places are further apart than twice the tolerance."""
        return self.distance(one, other) > 2.0 * self.tolerance + _SLACK

    def written(self, value: float) -> str:
        """Return a place with its unit."""
        return f"{plain(value, self.digits)} {self.unit}".rstrip()
