"""What the picture of doubt shows: margins on many benches, and what each parameter alone does to them."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True)
class SwingRow:
    """One parameter at the two ends of its range.

    words: what it is, with its range.
    at_low, at_high: margin with it at either end.
    """

    words: str
    at_low: float
    at_high: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DoubtView:
    """One cut on many benches.

    margin: by the table's own values.
    edges: of the steps of the margin, shape (N + 1,), evenly apart by ratio; shares: of the benches in each,
        shape (N,).
    band: between which margins most of the benches lie; middle: half of them lie below it.
    swings: the parameters that matter most, the first one most.
    """

    margin: float
    edges: np.ndarray
    shares: np.ndarray
    band: tuple[float, float]
    middle: float
    swings: tuple[SwingRow, ...]
