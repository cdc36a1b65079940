"""An answer that is an amount of prism with its base, in one or two parts, for a known eye."""

from dataclasses import dataclass
from typing import ClassVar

from lablib.errors import LabError, require_between
from lablib.optics.base_reading import HOW_TO_WRITE_PRISM, PrismReading, read_prism
from lablib.optics.eye import Eye
from lablib.optics.prism import in_words, together
from lablib.optics.unclear import BaseMissing
from lablib.questions.answers.prescription_line import for_learner
from lablib.study.answer import Given, NotUnderstood, Understood

_SLACK = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class PrismAnswer:
    """A prism; its value is its components base in and base up, out and down being minus [prism D].

    eye: the eye it is for; a base in degrees needs it.
    tolerance_prism_d: how far off each component may be and still count as the same [prism D], from 0.005.

    A base stands for the sign, so an amount is written without one. A minus amount is read as the opposite
    base and is a fault of writing, so that it is never simply right.

    Raises LabError for no eye or a tolerance out of range.
    """

    name: ClassVar[str] = "prism"
    unit: ClassVar[str] = "prism dioptres"
    eye: Eye | str
    tolerance_prism_d: float

    def __post_init__(self) -> None:
        object.__setattr__(self, "eye", Eye.of(self.eye))
        # The two decimals that prisms are written with show no less.
        require_between("tolerance", self.tolerance_prism_d, low=0.005, high=5.0, unit="prism dioptres")

    def is_blank(self, given: Given) -> bool:
        """Return whether nothing has been written yet."""
        return given is None or (isinstance(given, str) and not given.strip())

    def read(self, given: Given) -> Understood[tuple[float, float]]:
        """Return the prism an answer means.

        given: a text such as "2.4 down", "5.50 base down, 0.87 in", "2.50 BU" or "2.5 @ 37".

        Raises NotUnderstood with the way to write it.
        """
        if not isinstance(given, str):
            raise NotUnderstood(f"this is not text: {HOW_TO_WRITE_PRISM}")
        try:
            reading = read_prism(given)
        except BaseMissing as unclear:
            raise NotUnderstood(f"{for_learner(unclear)}; {HOW_TO_WRITE_PRISM}") from None
        except LabError as fault:
            raise NotUnderstood(str(fault)) from None
        value = together(reading.prisms, eye=self.eye)
        return Understood(meanings=(value,), words=self._words(reading, value), faults=reading.turned)

    def matches(self, value: tuple[float, float], other: object) -> bool:
        """Return whether both components are the same within the tolerance."""
        return _away_prism_d(value, other) <= self.tolerance_prism_d + _SLACK

    def apart(self, one: object, other: object) -> bool:
        """Return whether a component differs by more than twice the tolerance."""
        return _away_prism_d(one, other) > 2.0 * self.tolerance_prism_d + _SLACK

    def written(self, value: tuple[float, float]) -> str:
        """Return a prism as it is written, "2.25 base in with 0.43 base down" or "no prism"."""
        return in_words(*value)

    def _words(self, reading: PrismReading, value: tuple[float, float]) -> str:
        spoken = [
            f"{_in_full(prism.amount_prism_d)} base {prism.base}"
            if isinstance(prism.base, str)
            else f"{_in_full(prism.amount_prism_d)} with its base at {prism.base:g} degrees, which for the "
            f"{self.eye} eye is {in_words(*value)}"
            for prism in reading.prisms
            if prism.amount_prism_d
        ]
        return " with ".join(spoken) or "no prism"


def _in_full(amount_prism_d: float) -> str:
    # Never rounded: 0.876 would be said to be 0.88, and not right.
    return next(
        text for digits in (2, 3, 4) if float(text := f"{amount_prism_d:.{digits}f}") == amount_prism_d
    )


def _away_prism_d(one: tuple[float, float], other: tuple[float, float]) -> float:
    return max(abs(one[0] - other[0]), abs(one[1] - other[1]))
