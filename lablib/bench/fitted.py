"""A number fitted to readings, with how well it is known."""

from dataclasses import dataclass
from functools import cache

from scipy import stats


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """One fitted number.

    value: what it is; error: its standard error, in the same unit.
    """

    value: float
    error: float

    def interval(self, confidence: float = 0.95, *, freedom: int) -> tuple[float, float]:
        """Return between which values the true one lies, with the confidence given.

        confidence: for example 0.95; freedom: readings less numbers fitted.
        """
        reach = student_factor(confidence, freedom=freedom) * self.error
        return self.value - reach, self.value + reach

    def stated(self, digits: int) -> str:
        """Return value and standard error as they are written, without a unit.

        digits: decimals of both.
        """
        return f"{self.value:.{digits}f} ± {self.error:.{digits}f}"


@cache
def student_factor(confidence: float, *, freedom: int) -> float:
    """Return how many standard errors an interval reaches to each side, by Student's t.

    confidence: for example 0.95; freedom: readings less numbers fitted.
    """
    return float(stats.t.ppf((1.0 + confidence) / 2.0, freedom))
