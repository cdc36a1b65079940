"""What a panel can be set to, in numbers and words: known without making a single widget."""

import re
from dataclasses import dataclass
from decimal import Decimal

from lablib.errors import LabError, require_finite

_NUMBER = re.compile(r"[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)")
# A slider sends the same grid point with a rounding error of its own; this far off, it is still that point.
_GRID_SLACK = 1e-6
MOST_DECIMALS = 6
# Room for a label with its unit beside the box; more would be cut off.
TITLE_CHARACTERS = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Slider:
    """A number that a panel lets people move, checked once when it is made.

    name: what the panel's code calls it, with the unit at its end.
    label: what people read.
    unit: the unit they read, empty for a pure number.
    low, high: the two stops [unit].
    step: one step [unit]; a whole number of them lies between the stops.
    value: where it starts [unit], on a step.
    group: the heading it stands under, empty for none.

    Raises LabError when a stop, the step or the value does not fit the others.
    """

    name: str
    label: str
    unit: str
    low: float
    high: float
    step: float
    value: float
    group: str = ""

    def __post_init__(self) -> None:
        _require_room(self.title)
        for part in ("low", "high", "step", "value"):
            number = require_finite(f"{self.label}: {part}", getattr(self, part), unit=self.unit)
            # A computed stop such as 141 * 0.05 is not quite a decimal, and its own text would not read back.
            if number != round(number, MOST_DECIMALS):
                raise LabError(
                    f"{self.label}: {part} {number!r} has more than {MOST_DECIMALS} decimals: write fewer"
                )
        if self.low >= self.high:
            raise LabError(
                f"{self.label}: low {self.low:g} is not below high {self.high:g}: change one of them"
            )
        if self.step <= 0:
            raise LabError(f"{self.label}: step {self.step:g} is not above 0: give a step above 0")
        if not self._on_grid(self.high):
            raise LabError(
                f"{self.label}: high {self.high:g} is not a whole number of steps of {self.step:g} above low "
                f"{self.low:g}: change the step or a stop"
            )
        self.check(self.value)

    @property
    def decimals(self) -> int:
        """Decimals that every value on the grid needs."""
        return max(
            0, *(-Decimal(str(float(part))).normalize().as_tuple().exponent for part in (self.low, self.step))
        )

    @property
    def title(self) -> str:
        """The label with its unit."""
        return f"{self.label} [{self.unit}]" if self.unit else self.label

    @property
    def rule(self) -> str:
        """The range and the step in words."""
        ends = f"from {self.shown(self.low)} to {self.shown(self.high)} {self.unit}".rstrip()
        return f"{ends} in steps of {self.step:g}"

    @property
    def stops(self) -> tuple[float, ...]:
        """Every value worth trying: the two ends."""
        return (self.low, self.high)

    def shown(self, value: float) -> str:
        """Return a value as it is written; with its sign where the range has negative values.

        value: on the grid [unit].
        """
        text = f"{value:+.{self.decimals}f}" if self.low < 0 else f"{value:.{self.decimals}f}"
        return text if text.strip("+-0.") else text.lstrip("+-")

    def nearest(self, value: float) -> float:
        """Return the point of the grid nearest to a value between the stops.

        value: [unit].
        """
        return round(float(self.low + self.step * round((value - self.low) / self.step)), self.decimals)

    def check(self, value: object) -> float:
        """Return a value that is in range and on the grid.

        value: what was given [unit].

        Raises LabError with the range, or with the two steps nearest to the value.
        """
        number = require_finite(self.label, value, unit=self.unit)
        got = f"{self.label} {number:g} {self.unit}".rstrip()
        if not self.low <= number <= self.high:
            raise LabError(f"{got} is out of range here: give a value {self.rule}")
        if not self._on_grid(number):
            below = self.low + self.step * int((number - self.low) / self.step)
            pair = " or ".join(self.shown(self.nearest(end)) for end in (below, below + self.step))
            raise LabError(f"{got} lies between two steps here: give {pair} ({self.rule})")
        return self.nearest(number)

    def read(self, text: str) -> float:
        """Return the value that somebody typed, with or without sign and unit, with point or comma.

        text: what was typed.

        Raises LabError for anything that is not one number in range and on the grid.
        """
        bare = text.strip().removesuffix(self.unit).strip().replace(",", ".").replace("−", "-")
        if not _NUMBER.fullmatch(bare):
            raise LabError(f"{self.label} {text!r} is not a number: give a value {self.rule}")
        return self.check(float(bare))

    def _on_grid(self, value: float) -> bool:
        steps = (value - self.low) / self.step
        return abs(steps - round(steps)) < _GRID_SLACK


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of a few words that a panel lets people pick, checked once when it is made.

    name: what the panel's code calls it.
    label: what people read.
    options: the words, each once.
    value: where it starts.
    group: the heading it stands under, empty for none.

    Raises LabError when there are fewer than two options, one comes twice, or the value is none of them.
    """

    name: str
    label: str
    options: tuple[str, ...]
    value: str
    group: str = ""

    def __post_init__(self) -> None:
        _require_room(self.title)
        if len(self.options) < 2 or len(set(self.options)) < len(self.options):
            raise LabError(
                f"{self.label}: options {self.options!r} are not two or more different words: list them"
            )
        self.check(self.value)

    @property
    def title(self) -> str:
        """The label."""
        return self.label

    @property
    def stops(self) -> tuple[str, ...]:
        """Every value worth trying: all options."""
        return self.options

    def shown(self, value: str) -> str:
        """Return an option as it is written."""
        return value

    def check(self, value: object) -> str:
        """Return a value that is one of the options.

        value: what was given.

        Raises LabError with the options.
        """
        if value not in self.options:
            raise LabError(
                f"{self.label} {value!r} cannot be had here: give one of {', '.join(self.options)}"
            )
        return value


def _require_room(title: str) -> None:
    if not 1 <= len(title) <= TITLE_CHARACTERS:
        raise LabError(
            f"label {title!r} has {len(title)} characters with its unit: give 1 to {TITLE_CHARACTERS}, "
            "so that it stands beside its box"
        )
