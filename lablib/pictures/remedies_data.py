"""What the picture of remedies shows: one row for each change, the greatest margin first."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RemedyRow:
    """One change made alone, or a set of them.

    words: what is done, short.
    margin: of the cut that follows.
    chance: of a slip, as it is written; cost: of the change, as it is written.
    is_chosen: whether it belongs to the cheapest set under the bound.
    is_asked: whether it changes the order, so that somebody must agree first.
    """

    words: str
    margin: float
    chance: str
    cost: str
    is_chosen: bool = False
    is_asked: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RemediesView:
    """What can be done for one lens.

    now: the lens as it is; singles: each change alone, the greatest margin first.
    chosen: the cheapest set under the bound; None where nothing comes under it, or nothing is needed.
    needed: margin at which the chance of slip is the bound.
    """

    now: RemedyRow
    singles: tuple[RemedyRow, ...]
    chosen: RemedyRow | None
    needed: float
