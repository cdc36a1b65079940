"""What counting spoiled lenses can show, and what measuring torque can: intervals, tests, sizes, charts.

Every distribution and test is scipy's; here they only get the bench's words.
"""

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import stats

from lablib.errors import LabError, require_between, require_one_of

METHODS = ("exact", "wilson")
SIDES = ("two-sided", "greater", "less")
# Larger trials than this are never run at a bench.
_MOST = 1_000_000
# A change lost this deep in the scatter takes 39,000 readings each way.
_MOST_SCATTERS, _MOST_READINGS = 50.0, 100_000
# Limits of a chart lie so many standard deviations from its mean.
CHART_SCATTERS = 3.0


def require_count(thing: str, count: object, *, of: object) -> tuple[int, int]:
    """Return a count and the number it was found in.

    thing: what was counted, for the message; count, of: whole numbers, 0 to `of`, which is 1 or more.

    Raises LabError for anything else.
    """
    for name, value, low in ((f"{thing}, number seen", of, 1), (thing, count, 0)):
        if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= _MOST:
            raise LabError(f"{name} {value!r} cannot be: give a whole number from {low} to {_MOST}")
    if count > of:
        raise LabError(f"{thing}: {count} in {of} is more than all: give the count, then how many were seen")
    return count, of


def share_interval(
    count: int, of: int, *, method: str = "exact", confidence: float = 0.95
) -> tuple[float, float]:
    """Return between which shares the true one lies, with the confidence given.

    count, of: for example lenses that turned, and lenses cut.
    method: "exact" (Clopper and Pearson), never too narrow, or "wilson", shorter.
    confidence: for example 0.95.

    Raises LabError for counts that cannot be, an unknown method, or a confidence not between 0 and 1.
    """
    require_one_of("method", method, METHODS)
    tried = _tried(count, of)
    found = tried.proportion_ci(confidence_level=_confidence(confidence), method=method)
    return float(found.low), float(found.high)


def share_at_most(count: int, of: int, *, confidence: float = 0.95) -> float:
    """Return below which share the true one lies, with the confidence given: what "none in 60" means.

    count, of, confidence: as in `share_interval`.
    """
    tried = _tried(count, of, alternative="less")
    return float(tried.proportion_ci(confidence_level=_confidence(confidence), method="exact").high)


def _tried(count: int, of: int, alternative: str = "two-sided") -> object:
    return stats.binomtest(*require_count("lenses", count, of=of), alternative=alternative)


def _confidence(confidence: float) -> float:
    return require_between("confidence", confidence, low=0.5, high=0.9999, unit="")


def two_ways_p(first: int, first_of: int, second: int, second_of: int, *, sides: str = "two-sided") -> float:
    """Return how often chance alone makes two ways of working differ as much as seen: Fisher's exact test.

    first, first_of; second, second_of: a count and what it was found in, for each way.
    sides: "two-sided", or "greater" or "less" for the first way's share.

    Raises LabError for counts that cannot be, or an unknown word.
    """
    require_one_of("sides", sides, SIDES)
    rows = [
        (count, of - count)
        for count, of in (
            require_count("first way", first, of=first_of),
            require_count("second way", second, of=second_of),
        )
    ]
    return float(stats.fisher_exact(rows, alternative=sides).pvalue)


def lenses_each_way(before: float, after: float, *, power: float = 0.8, level: float = 0.05) -> int:
    """Return how many lenses each way must be cut to show a fall of the share that is spoiled.

    before, after: the two shares, not equal, each between 0 and 1.
    power: chance that the trial shows it; level: chance that it shows what is not there, on two sides.

    Raises LabError for shares that cannot be told apart.
    Source: the normal formula, J. L. Fleiss, Statistical Methods for Rates and Proportions.
    """
    for name, share in (("share before", before), ("share after", after)):
        require_between(name, share, low=0.0, high=1.0, unit="")
    if before == after:
        raise LabError(f"shares {before:g} and {after:g} are equal: no trial tells them apart; give two")
    z_level, z_power = _z(level, power)
    middle = (before + after) / 2.0
    spread = before * (1.0 - before) + after * (1.0 - after)
    reach = z_level * math.sqrt(2.0 * middle * (1.0 - middle)) + z_power * math.sqrt(spread)
    return math.ceil((reach / (before - after)) ** 2)


def readings_each_way(change: float, scatter: float, *, power: float = 0.8, level: float = 0.05) -> int:
    """Return how many torque readings each way show a change of the mean.

    change, scatter: of one reading, as shares of the mean, both above 0.
    power, level: as in `lenses_each_way`.

    Raises LabError for a change or scatter that is not above 0, and a change too small to be shown.
    Source: power of the two-sample t test, by the noncentral t distribution.
    """
    require_between("change", change, low=0.0, high=10.0, unit="", open_low=True)
    require_between("scatter", scatter, low=0.0, high=_MOST_SCATTERS * change, unit="", open_low=True)
    _z(level, power)

    def shows(readings: int) -> bool:
        freedom = 2 * readings - 2
        beyond = stats.t.ppf(1.0 - level / 2.0, freedom)
        return stats.nct.sf(beyond, freedom, change / scatter * math.sqrt(readings / 2.0)) >= power

    return bisect_left(range(_MOST_READINGS), True, lo=2, key=shows)


def _z(level: float, power: float) -> tuple[float, float]:
    require_between("level", level, low=0.0, high=0.5, unit="", open_low=True)
    require_between("power", power, low=0.5, high=0.999, unit="")
    return float(stats.norm.ppf(1.0 - level / 2.0)), float(stats.norm.ppf(power))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ShareChart:
    """A chart of the share spoiled, batch by batch.

    counts, sizes: shape (N,), spoiled in each batch, and its size.

    Limits come from the pooled share, not from the mean of the batches' shares, and lie three standard
    deviations from it.

    Raises LabError for rows of different length or fewer than two batches, and for counts that cannot be.
    """

    counts: Sequence[int]
    sizes: Sequence[int]

    def __post_init__(self) -> None:
        if len(self.counts) != len(self.sizes) or len(self.counts) < 2:
            raise LabError(
                f"chart of {len(self.counts)} counts and {len(self.sizes)} sizes: "
                f"give as many of both, 2 or more"
            )
        for batch, (count, of) in enumerate(zip(self.counts, self.sizes, strict=True), start=1):
            require_count(f"batch {batch}", count, of=of)

    @property
    def share(self) -> float:
        """Pooled share: all spoiled over all seen."""
        return sum(self.counts) / sum(self.sizes)

    @property
    def shares(self) -> np.ndarray:
        """Shape (N,), share of each batch."""
        return np.array(self.counts) / np.array(self.sizes)

    @property
    def _reach(self) -> np.ndarray:
        return CHART_SCATTERS * np.sqrt(self.share * (1.0 - self.share) / np.array(self.sizes))

    @property
    def upper(self) -> np.ndarray:
        """Shape (N,), upper limit for each batch, never above 1."""
        return np.minimum(1.0, self.share + self._reach)

    @property
    def lower(self) -> np.ndarray:
        """Shape (N,), lower limit for each batch, never below 0."""
        return np.maximum(0.0, self.share - self._reach)

    @property
    def outside(self) -> tuple[int, ...]:
        """Batches outside their limits, counted from 1."""
        beyond = (self.shares > self.upper) | (self.shares < self.lower)
        return tuple(int(at) + 1 for at in np.flatnonzero(beyond))
