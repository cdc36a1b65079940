"""What the picture of the feeds is handed: one cut for each way of feeding."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FeedRow:
    """One way of feeding.

    name: what it is called.
    said: what came of it, in a few words.
    ends_s: shape (turns + 1,), when the first turn begins and when each ends [s].
    turns_nm, holds_nm: shape (turns,), greatest cutting torque of each turn and what holds there [N m].
    finishing: shape (turns,), whether it is a finishing turn.
    """

    name: str
    said: str
    ends_s: np.ndarray
    turns_nm: np.ndarray
    holds_nm: np.ndarray
    finishing: np.ndarray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FeedView:
    """The same lens cut in each way.

    rows: one for each, in the order in which they are drawn from the top.
    top_nm: where the scales of torque end [N m].
    """

    rows: tuple[FeedRow, ...]
    top_nm: float
