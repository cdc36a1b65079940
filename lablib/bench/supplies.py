"""How long pads and the like last at this pace, and when to order so that none runs out and none dries.

Lenses are counted, not jobs: a job has two lenses, and a spoiled lens takes its supplies again.
"""

import math
from dataclasses import dataclass, fields

from lablib.errors import LabError, require_between

LENSES_PER_JOB = 2.0
_MOST = 1_000_000.0
# What division leaves behind a whole number of pieces makes no further piece.
_SLACK = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """How fast a bench uses one kind of supply.

    jobs_per_day: jobs cut on a working day.
    days_per_week: working days.
    per_lens: pieces used on one lens.
    spoiled_share: share of lenses that is cut again.

    Raises LabError for a pace no bench keeps.
    """

    jobs_per_day: float
    days_per_week: float = 5.0
    per_lens: float = 1.0
    spoiled_share: float = 0.0

    def __post_init__(self) -> None:
        require_between("jobs_per_day", self.jobs_per_day, low=0.0, high=10_000.0, unit="", open_low=True)
        require_between("days_per_week", self.days_per_week, low=0.0, high=7.0, unit="", open_low=True)
        require_between("per_lens", self.per_lens, low=0.0, high=100.0, unit="", open_low=True)
        require_between("spoiled_share", self.spoiled_share, low=0.0, high=0.9, unit="")

    @property
    def pieces_per_week(self) -> float:
        """Pieces used in a week; a lens that is cut again may be spoiled again."""
        lenses = LENSES_PER_JOB * self.jobs_per_day * self.days_per_week
        return lenses * self.per_lens / (1.0 - self.spoiled_share)

    def weeks(self, pieces: float) -> float:
        """Return how long so many pieces last [weeks].

        pieces: in hand, 0 or more.

        Raises LabError for less than none.
        """
        return require_between("pieces", pieces, low=0.0, high=_MOST, unit="") / self.pieces_per_week


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordering:
    """When and how much to order of one kind of supply.

    pace: how fast it goes.
    lead_weeks: from order to delivery [weeks].
    spare_weeks: kept in hand against a late delivery or a busy week [weeks].
    shelf_weeks: from delivery until it may no longer be used [weeks].

    Raises LabError for a time that cannot be, or a shelf life that the spare stock alone outlasts.
    """

    pace: Pace
    lead_weeks: float
    spare_weeks: float
    shelf_weeks: float

    def __post_init__(self) -> None:
        for one in fields(self):
            if one.name != "pace":
                require_between(one.name, getattr(self, one.name), low=0.0, high=520.0, unit="weeks")
        if self.spare_weeks >= self.shelf_weeks:
            raise LabError(
                f"spare_weeks {self.spare_weeks:g} is not below shelf_weeks {self.shelf_weeks:g}: what is "
                f"kept spare would dry before it is used; keep less"
            )

    @property
    def kept_back(self) -> float:
        """Pieces for the lead time and the spare, before they are rounded up."""
        return self.pace.pieces_per_week * (self.lead_weeks + self.spare_weeks)

    @property
    def used_in_time(self) -> float:
        """Pieces of one delivery that are used before they dry, behind the spare, before rounding down."""
        return self.pace.pieces_per_week * (self.shelf_weeks - self.spare_weeks)

    @property
    def order_at(self) -> int:
        """In how many pieces left the next order goes out: what the lead time uses, and the spare."""
        return math.ceil(self.kept_back - _SLACK)

    @property
    def order_at_most(self) -> int:
        """The most pieces to order at once: what comes behind the spare must not dry."""
        return math.floor(self.used_in_time + _SLACK)
