"""Which changes bring one lens under the bound: each alone, ranked, and the cheapest set of all.

Changes of the grip leave the cut as it is, and changes of the cut leave the grip as it is. So every cut and
every grip is worked once, and a set is a pair of them.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import chain, combinations

import numpy as np
from scipy.spatial import ConvexHull, QhullError

from lablib.bench.holding import Holding
from lablib.bench.margin import CutResult, log_scatter, slip_probability
from lablib.errors import LabError, require_between
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.finding import threshold
from lablib.job.remedy import Remedy, changed, remedies, spoiled_lens
from lablib.job.ticket import Ticket


@dataclass(frozen=True, slots=True, kw_only=True)
class RemedySet:
    """Some changes made together on one lens, and what comes of them.

    remedies: the changes; empty: the lens as it is.
    margin: of the cut that follows.
    slip_probability: before the bench is calibrated, or after, as was asked.
    cost: of the changes [money]; minutes: of work on them [min].
    expected_loss: probability of a spoiled lens times what it costs [money].
    """

    remedies: tuple[Remedy, ...]
    margin: float
    slip_probability: float
    cost: float
    minutes: float
    expected_loss: float

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the changes."""
        return tuple(one.name for one in self.remedies)

    @property
    def expected_cost(self) -> float:
        """What the changes cost and what is lost on average in spite of them [money]."""
        return self.cost + self.expected_loss

    @property
    def is_asked(self) -> bool:
        """Whether a change of the order is among them."""
        return any(one.is_asked for one in self.remedies)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RemedyPlan:
    """What can be done for one lens.

    sheet: the lens, worked, as ordered.
    bound: probability of slip that is put up with.
    now: the lens as it is.
    singles: every change that can be made, alone, the greatest margin first.
    cheapest: the cheapest set under the bound; None where no set comes under it.
    best: the set whose changes and remaining losses together cost least.
    """

    sheet: EyeSheet
    bound: float
    now: RemedySet
    singles: tuple[RemedySet, ...]
    cheapest: RemedySet | None
    best: RemedySet


def plan_remedies(sheet: EyeSheet, *, bound: float | None = None, calibrated: bool = False) -> RemedyPlan:
    """Return what can be done for one lens, its cheapest sufficient set by trying every set.

    sheet: the lens, worked; its cut is known.
    bound: probability of slip to come under; None: that of the findings.
    calibrated: whether the bench's own measurements have replaced the defaults.

    A change of the order is tried only where the bench's own changes do not reach the bound: then each alone,
    with every set of the bench's.

    Raises LabError for a bound that is no probability, and where the cut is not known.
    """
    if sheet.cut is None:
        raise LabError(
            f"{sheet.eye} lens: its cut is not known, so that nothing can be ranked: settle what is held, "
            f"take a blank that reaches, or name a material it cuts like"
        )
    bound = threshold("slip_probability") if bound is None else bound
    require_between("bound", bound, low=0.0, high=1.0, unit="", open_low=True)
    judge = _Judge(calibrated=calibrated)
    own = list(judge.sets(sheet, ()))
    asked = [one for one in judge.possible(sheet) if one.is_asked]
    under = [one for one in own if one.slip_probability <= bound]
    tried = own
    if not under:
        for one in asked:
            tried = tried + list(judge.sets(_worked(changed(sheet, one.name), sheet), (one,)))
        under = [one for one in tried if one.slip_probability <= bound]
    alone = [one for one in own if len(one.remedies) == 1]
    alone += [judge.as_worked(_worked(changed(sheet, one.name), sheet), (one,)) for one in asked]
    return RemedyPlan(
        sheet=sheet,
        bound=bound,
        now=own[0],
        singles=tuple(sorted(alone, key=lambda one: -one.margin)),
        cheapest=min(under, key=lambda one: (one.cost, len(one.remedies)), default=None),
        best=min(tried, key=lambda one: (one.expected_cost, len(one.remedies))),
    )


def _worked(ticket: Ticket, sheet: EyeSheet) -> EyeSheet:
    return work_eye(ticket, getattr(ticket, sheet.eye.value), sheet.profile)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Judge:
    """Makes sets of changes into numbers."""

    calibrated: bool

    def possible(self, sheet: EyeSheet) -> list[Remedy]:
        """The changes that would change something, alone."""
        return [one for name, one in remedies().items() if changed(sheet, name) is not None]

    def sets(self, sheet: EyeSheet, made: tuple[Remedy, ...]) -> Iterator[RemedySet]:
        """Every set of the bench's own changes on a lens, the empty one first, beside those already made."""
        possible = self.possible(sheet)
        grips = [one for one in possible if one.part == "grip"]
        cuts = [one for one in possible if one.part in ("cut", "lens")]
        held = {chosen: _changed_all(sheet, chosen).cut.holding for chosen in _subsets(grips)}
        for more in _subsets(cuts):
            cut = _changed_all(sheet, more).cut
            deciding = _deciding(cut)
            for chosen, holds in held.items():
                yield self._valued((*made, *chosen, *more), _margin(cut, holds, deciding), cut)

    def as_worked(self, sheet: EyeSheet, made: tuple[Remedy, ...]) -> RemedySet:
        """A lens as it is, after changes already made."""
        return self._valued(made, sheet.cut.margin, sheet.cut)

    def _valued(self, made: tuple[Remedy, ...], margin: float, cut: CutResult) -> RemedySet:
        chance = slip_probability(margin, log_scatter(cut.bench, calibrated=self.calibrated))
        return RemedySet(
            remedies=made,
            margin=margin,
            slip_probability=chance,
            cost=sum(one.cost for one in made),
            minutes=sum(one.minutes for one in made),
            expected_loss=chance * spoiled_lens().cost,
        )


def _changed_all(sheet: EyeSheet, made: Iterable[Remedy]) -> EyeSheet:
    """The lens with several changes made, one after the other."""
    for one in made:
        ticket = changed(sheet, one.name)
        # A change may have been made unnecessary by one before it.
        sheet = sheet if ticket is None else _worked(ticket, sheet)
    return sheet


def _subsets(made: list[Remedy]) -> Iterator[tuple[Remedy, ...]]:
    return chain.from_iterable(combinations(made, count) for count in range(len(made) + 1))


def _deciding(cut: CutResult) -> np.ndarray:
    """The places of a cut that can have the least margin, whatever holds: corners of force and torque."""
    force = cut.cutting.force_n.ravel()
    loads = np.stack([(force * cut.cutting.arm_mm.ravel()) ** 2, force**2], axis=1)
    try:
        return ConvexHull(loads / loads.max(axis=0)).vertices
    except QhullError:
        return np.arange(force.size)


def _margin(cut: CutResult, holds: Holding, deciding: np.ndarray) -> float:
    force = cut.cutting.force_n.ravel()[deciding]
    capacity = holds.capacity_n(cut.cutting.arm_mm.ravel()[deciding], cut.cutting.sideways)
    return float(1.0 / (cut.bench.dynamic_factor * force / capacity).max())
