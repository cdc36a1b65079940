"""An answer that is a number: with its unit, its sign where that matters, and a tolerance."""

import re
from dataclasses import dataclass
from typing import ClassVar

from lablib.errors import LabError, require_finite
from lablib.study.answer import Given, NotUnderstood, Understood
from lablib.study.units import worth
from lablib.working import plain

_NUMBER = re.compile(
    r"\s*(?P<sign>[+\-\u2212\u2013])?\s*(?P<digits>[0-9]{1,9}(?:[.,][0-9]{0,9})?|[.,][0-9]{1,9})\s*(?P<unit>\D{0,20}?)\s*"
)
_LONGEST = 40
# Answers differ from the tolerance's edge by more than this, or by rounding of the machine.
_SLACK = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberAnswer:
    """A number with a unit.

    unit: the unit asked for; empty for a pure number.
    tolerance: how far off still counts as the same [unit], above 0.
    digits: decimals the answer is written with.
    signed: whether an answer without + or - is faulty, as for a power; zero needs none.

    Raises LabError for a tolerance that is not above 0 or finer than the digits can show.
    """

    name: ClassVar[str] = "number"
    unit: str
    tolerance: float
    digits: int
    signed: bool = False

    def __post_init__(self) -> None:
        if require_finite("tolerance", self.tolerance, unit=self.unit) < 0.5 * 10**-self.digits - _SLACK:
            raise LabError(
                f"tolerance {self.tolerance:g} is finer than {self.digits} decimals can show: "
                "widen it or ask for more decimals"
            )

    def is_blank(self, given: Given) -> bool:
        """Return whether nothing has been written yet."""
        return given is None or (isinstance(given, str) and not given.strip())

    def read(self, given: Given) -> Understood[float]:
        """Return the number an answer means, converted to the unit asked for.

        given: a text such as "-2.25", "2,25 mm" or "0.25 m".

        Raises NotUnderstood with the way to write it.
        """
        found = _NUMBER.fullmatch(given) if isinstance(given, str) and len(given) <= _LONGEST else None
        if found is None:
            raise NotUnderstood(f"{_quoted(given)} is not one number: {self._how()}")
        size = float(found["digits"].replace(",", "."))
        factor, notes = self._factor(found["unit"], given)
        return self._understood(found["sign"] or "", size * factor, notes)

    def matches(self, value: float, other: object) -> bool:
        """Return whether a number is within the tolerance of another."""
        return abs(value - other) <= self.tolerance + _SLACK

    def apart(self, one: object, other: object) -> bool:
        """Return whether two numbers are further apart than twice the tolerance."""
        return abs(one - other) > 2.0 * self.tolerance + _SLACK

    def written(self, value: float) -> str:
        """Return a number with its sign where one is asked for, and its unit."""
        text = plain(value, self.digits)
        if self.signed and not text.startswith("-") and text.strip("0."):
            text = f"+{text}"
        return f"{text} {self.unit}".rstrip()

    def _factor(self, unit: str, given: str) -> tuple[float, tuple[str, ...]]:
        if not unit:
            return 1.0, ()
        factor = worth(unit, self.unit)
        if factor is None:
            wanted = f"the answer is in {self.unit}" if self.unit else "the answer is a pure number"
            raise NotUnderstood(f"{_quoted(given)}: {unit} does not fit, {wanted}: {self._how()}")
        return factor, () if factor == 1.0 else (f"{unit} was converted to {self.unit}",)

    def _understood(self, sign: str, size: float, notes: tuple[str, ...]) -> Understood[float]:
        value = -size if sign in ("-", "\u2212", "\u2013") else size
        if self.signed and not sign and size:
            return Understood(
                meanings=(size, -size),
                words=f"{self.written(size).removeprefix('+')}, with no sign",
                faults=("the sign is missing: a power is written with + or -",),
                notes=notes,
            )
        return Understood(meanings=(value + 0.0,), words=self.written(value), notes=notes)

    def _how(self) -> str:
        example = self.written(-2.25 if self.signed else 2.25)
        return f"write one number, as in {example}"


def _quoted(given: Given) -> str:
    text = str(given)
    return repr(text if len(text) <= _LONGEST else text[: _LONGEST - 3] + "...")
