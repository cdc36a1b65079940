"""What the picture of the log is handed: the chart's batches, and the causes in their order."""

from dataclasses import dataclass

from lablib.bench.trials import ShareChart


@dataclass(frozen=True, slots=True, kw_only=True)
class CauseRow:
    """One cause of spoiled lenses.

    name: what went wrong; count: lenses; cost: of all of them [money].
    station: where most of them should have been caught; found_by: what found most of them.
    chosen: whether the chart shows this cause alone.
    """

    name: str
    count: int
    cost: float
    station: str
    found_by: str
    chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SpoilageView:
    """A log of spoiled lenses.

    batches: what each batch of the chart is called; the last is this week.
    chart: their shares and limits.
    causes: in the order in which they are drawn from the top.
    ranked_by: "money" or "number".
    about: which causes the chart counts, in words.
    """

    batches: tuple[str, ...]
    chart: ShareChart
    causes: tuple[CauseRow, ...]
    ranked_by: str
    about: str

    @property
    def outside(self) -> tuple[str, ...]:
        """What the batches outside their limits are called."""
        return tuple(self.batches[number - 1] for number in self.chart.outside)
