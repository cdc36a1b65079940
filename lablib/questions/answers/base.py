"""An answer that is a base direction alone, in words or in degrees, for a known eye."""

from dataclasses import dataclass
from typing import ClassVar

from lablib.errors import LabError, require_between
from lablib.optics.base_reading import HOW_TO_WRITE_BASE, base_direction_deg, read_base
from lablib.optics.eye import Eye
from lablib.study.answer import Given, NotUnderstood, Understood
from lablib.study.marker import way_round
from lablib.working import plain

_QUARTERS = ("in", "up", "out", "down")
_SLACK, _TURN_DEG = 1e-9, 360.0


@dataclass(frozen=True, slots=True, kw_only=True)
class BaseAnswer:
    """A base direction; its value is in the 360 notation of the eye, from 0 and below 360 [degrees].

    eye: the eye it is for: in is 0 for the right eye and 180 for the left.
    tolerance_deg: how far off still counts as the same [degrees], from half of the last decimal written.
    digits: decimals a direction in degrees is written with.

    Raises LabError for no eye or a tolerance out of range.
    """

    name: ClassVar[str] = "base"
    eye: Eye | str
    tolerance_deg: float = 1.0
    digits: int = 0

    def __post_init__(self) -> None:
        object.__setattr__(self, "eye", Eye.of(self.eye))
        require_between(
            "tolerance", self.tolerance_deg, low=0.5 * 10**-self.digits, high=45.0, unit="degrees"
        )

    def is_blank(self, given: Given) -> bool:
        """Return whether nothing has been written yet."""
        return given is None or (isinstance(given, str) and not given.strip())

    def read(self, given: Given) -> Understood[float]:
        """Return the direction an answer means.

        given: a text such as "in", "Base In", "BI" or, in degrees, "37".

        Raises NotUnderstood with the way to write it.
        """
        if not isinstance(given, str):
            raise NotUnderstood(f"this is not text: {HOW_TO_WRITE_BASE}")
        try:
            base = read_base(given)
        except LabError as fault:
            raise NotUnderstood(str(fault)) from None
        return Understood(
            meanings=(base_direction_deg(base, eye=self.eye),),
            words=f"base {base}" if isinstance(base, str) else self._in_degrees(base),
        )

    def matches(self, value: float, other: object) -> bool:
        """Return whether two directions are the same within the tolerance."""
        return _away_deg(value, other) <= self.tolerance_deg + _SLACK

    def apart(self, one: object, other: object) -> bool:
        """Return whether two directions are further apart than twice the tolerance."""
        return _away_deg(one, other) > 2.0 * self.tolerance_deg + _SLACK

    def written(self, value: float) -> str:
        """Return a direction as it is written: one of the four words, or degrees."""
        for base in _QUARTERS:
            if _away_deg(value, base_direction_deg(base, eye=self.eye)) < _SLACK:
                return f"base {base}"
        return f"base at {plain(value, self.digits)} degrees"

    def _in_degrees(self, base_deg: float) -> str:
        """Return degrees as they were read and the words they have for this eye."""
        near = [
            word for word in _QUARTERS if _away_deg(base_deg, base_direction_deg(word, eye=self.eye)) < 90.0
        ]
        where = " and ".join(sorted(near, key=("in", "out", "up", "down").index))
        return f"base at {base_deg:g} degrees, which is {where} for the {self.eye} eye"


def _away_deg(one: float, other: float) -> float:
    """The angle between two directions, the short way round [degrees]."""
    return way_round(one, other, whole=_TURN_DEG)
