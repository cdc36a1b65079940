"""An answer that is a number: with its unit, its sign where that matters, and a tolerance."""

import re
from dataclasses import dataclass, replace
from typing import ClassVar

from lablib.errors import LabError, require_finite
from lablib.study.answer import Given, NotUnderstood, Understood, quoted
from lablib.study.units import worth
from lablib.working import plain

# As many decimals as a pocket calculator or Python prints are taken, and no number in powers of ten.
_NUMBER = re.compile(
    r"(?P<sign>[+\-\u2212\u2013])?\s*"
    r"(?P<digits>[0-9]{1,9}(?:[.,][0-9]{0,20})?|[.,][0-9]{1,20})\s*"
    r"(?P<unit>\D{0,20})"
)
# A comma that can stand before decimals and between thousands.
_EITHER_COMMA = re.compile(r"([1-9][0-9]{0,2}),([0-9]{3})")
_LONGEST = 60
_MOST_SHOWN = 6
_THOUSANDTHS = 3
# Half a place over the number: coarser than 2 is no longer the same number written coarsely.
_COARSEST = 0.25
# Answers differ from the tolerance's edge by more than this, or by rounding of the machine.
_SLACK = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberAnswer:
    """A number with a unit.

    unit: the unit asked for; empty for a pure number.
    tolerance: how far off still counts as the same [unit], above 0.
    digits: decimals the answer is written with.
    signed: whether an answer without + or - is faulty, as for a power; zero needs none.
    also: other ways of writing the unit, for one that is not an everyday unit.

    Raises LabError for a tolerance that is not above 0 or finer than the digits can show.
    """

    name: ClassVar[str] = "number"
    unit: str
    tolerance: float
    digits: int
    signed: bool = False
    also: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if require_finite("tolerance", self.tolerance, unit=self.unit) < 0.5 * 10**-self.digits - _SLACK:
            raise LabError(
                f"tolerance {self.tolerance:g} is finer than an answer of {self.digits} decimal(s) can show: "
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
        text = given.strip() if isinstance(given, str) else ""
        found = _NUMBER.fullmatch(text) if len(text) <= _LONGEST else None
        if found is None or any(sign.isnumeric() for sign in found["unit"]):
            raise NotUnderstood(f"{quoted(given)} is not one number: {self._how()}")
        self._refuse_either_comma(found["digits"], given)
        size = float(found["digits"].replace(",", "."))
        factor, notes = self._factor(found["unit"], given)
        understood = self._understood(found["sign"] or "", size * factor, notes)
        places = len(re.split("[.,]", found["digits"])[-1]) if re.search("[.,]", found["digits"]) else 0
        half = 0.5 * 10.0**-places * factor
        # A number without a figure that counts, such as 0 m, fits everything and says nothing.
        says_little = half > size * factor * _COARSEST
        if half <= self.tolerance + _SLACK or len(understood.meanings) > 1 or says_little:
            return understood
        # Rounded it can lie half a place either way; cut off, a whole place farther from 0.
        (value,) = understood.meanings
        ends = (-half, 2.0 * half) if value >= 0 else (-2.0 * half, half)
        return replace(understood, stands_for=(value + ends[0], value + ends[1]))

    def matches(self, value: float, other: object) -> bool:
        """Return whether a number is within the tolerance of another, or of what that is when rounded."""
        away = min(abs(value - other), abs(value - round(other, self.digits)))
        return away <= self.tolerance + _SLACK

    def apart(self, one: object, other: object) -> bool:
        """Return whether two numbers are further apart than twice the tolerance, and their rounding."""
        return abs(one - other) > 2.0 * self.tolerance + 10.0**-self.digits + _SLACK

    def written(self, value: float) -> str:
        """Return a number with its sign where one is asked for, and its unit."""
        text = plain(value, self.digits)
        if self.signed and not text.startswith("-") and text.strip("0."):
            text = f"+{text}"
        return f"{text} {self.unit}".rstrip()

    def _refuse_either_comma(self, digits: str, given: Given) -> None:
        # Where three decimals or more are asked for, three after a comma are decimals.
        either = _EITHER_COMMA.fullmatch(digits) if self.digits < _THOUSANDTHS else None
        if either:
            whole, rest = either.groups()
            raise NotUnderstood(
                f"{quoted(given)} can be {whole}.{rest} or {whole}{rest}: "
                "write a point before decimals and nothing between thousands"
            )

    def _factor(self, unit: str, given: str) -> tuple[float, tuple[str, ...]]:
        if not unit:
            return 1.0, ()
        factor = worth(unit, self.unit, also=self.also)
        if factor is None:
            wanted = f"does not fit, the answer is in {self.unit}" if self.unit else "is not asked for"
            raise NotUnderstood(f"{quoted(given)}: {unit} {wanted}: {self._how()}")
        return factor, () if factor == 1.0 else (f"{unit} was converted to {self.unit}",)

    def _understood(self, sign: str, size: float, notes: tuple[str, ...]) -> Understood[float]:
        value = -size if sign in ("-", "\u2212", "\u2013") else size
        if self.signed and not sign and size:
            return Understood(
                meanings=(size, -size),
                words=f"{self._as_understood(size).removeprefix('+')}, with no sign",
                faults=("a sign is missing, + or -",),
                notes=notes,
            )
        return Understood(meanings=(value + 0.0,), words=self._as_understood(value), notes=notes)

    def _as_understood(self, value: float) -> str:
        # Never rounded to the digits asked for: 3.96 would be said to be 4.0, and not right.
        decimals = len(f"{value:.{_MOST_SHOWN}f}".rstrip("0").partition(".")[2])
        return replace(self, digits=max(self.digits, decimals)).written(value)

    def _how(self) -> str:
        example = self.written(-2.25 if self.signed else 2.25)
        return f"write one number, as in {example}"
