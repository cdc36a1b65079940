"""The panel of the log: the share of spoiled lenses week by week, and its causes by number and by money."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from lablib.bench.spoilage_log import LogRow, SpoilageLog
from lablib.bench.trials import ShareChart, share_at_most
from lablib.job.demo_log import Week, demo_log, demo_weeks
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.specs import Choice, Slider
from lablib.pictures.spoilage import SpoilagePicture
from lablib.pictures.spoilage_data import CauseRow, SpoilageView

ALL, MONEY, NUMBER = "all of them", "money", "number"
# How many weeks of the log make a batch.
BATCHES = {"one week": 1, "two weeks": 2, "four weeks": 4}
_NOW, _LOG = {"group": "This week"}, {"group": "The log"}
_WEARER = "wearer"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SpoilageSheet(SpoilageView):
    """A log with what the table says about it.

    rows: of the log, as far as the chart counts them.
    """

    rows: tuple[LogRow, ...]

    def mean_cost(self, *, by_wearer: bool) -> float | None:
        """Return what one spoiled lens costs on average [money]; nothing where there is none.

        by_wearer: whether of those that the wearer found, or of the others.
        """
        found = [row.spoiled.cost for row in self.rows if (row.found_by == _WEARER) == by_wearer]
        return sum(found) / len(found) if found else None


class SpoilagePanel(Panel):
    """The demo log with one more week, which is the learner's."""

    draws = SpoilagePicture
    note = (
        "An invented log of an invented lens room. Limits: the pooled share, with this week's lenses, and "
        "three standard deviations up and down for the lenses of that batch. Money without a currency; a "
        "wearer's wait is not in it. This week's lenses have no cause yet: where one cause is counted alone, "
        "they count as that cause, so put them to 0 to see the log by itself."
    )
    controls = (
        Slider(name="cut", label="Lenses cut", unit="", low=20, high=160, step=5, value=80, **_NOW),
        Slider(name="spoiled", label="Lenses spoiled", unit="", low=0, high=20, step=1, value=4, **_NOW),
        Choice(name="batch", label="One point for", options=tuple(BATCHES), value="one week", **_LOG),
        Choice(
            name="cause",
            label="Causes counted",
            options=(ALL, *sorted(cause.name for cause in demo_log().causes())),
            value=ALL,
            **_LOG,
        ),
        Choice(name="ranked_by", label="Causes ranked by", options=(MONEY, NUMBER), value=NUMBER, **_LOG),
    )

    def compute(self, values: Values) -> SpoilageSheet:
        """Return the chart and the causes.

        values: by the control's name.
        """
        rows = tuple(row for row in demo_log().rows if values["cause"] in (ALL, row.cause))
        batches = _batches(BATCHES[values["batch"]])
        counts = SpoilageLog(rows=rows, faults=()).counts([weeks[0].first_day for _, weeks in batches])
        sizes = [sum(week.lenses for week in weeks) for _, weeks in batches]
        return SpoilageSheet(
            batches=(*(name for name, _ in batches), "now"),
            chart=ShareChart(counts=(*counts, int(values["spoiled"])), sizes=(*sizes, int(values["cut"]))),
            causes=_ranked(values["ranked_by"], values["cause"]),
            ranked_by=values["ranked_by"],
            about="all causes" if values["cause"] == ALL else f"this cause alone: {values['cause']}",
            rows=rows,
        )

    def numbers(self, data: SpoilageSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table.

        data: from `compute`.
        """
        chart = data.chart
        spoiled, cut = chart.counts[-1], chart.sizes[-1]
        return [
            ("Lenses cut, all weeks", f"{sum(chart.sizes)}", ""),
            ("Lenses spoiled", f"{sum(chart.counts)}", ""),
            ("Pooled share", f"{100.0 * chart.share:.2f}", "%"),
            ("Mean of the shares", f"{100.0 * float(chart.shares.mean()):.2f}", "%"),
            ("This week", f"{100.0 * float(chart.shares[-1]):.2f}", "%"),
            ("This week, upper limit", f"{100.0 * float(chart.upper[-1]):.2f}", "%"),
            ("This week, lower limit", f"{100.0 * float(chart.lower[-1]):.2f}", "%"),
            ("From this week alone", f"{100.0 * share_at_most(spoiled, cut):.1f}", "% at most, 95 % sure"),
            ("Outside", ", ".join(data.outside) or "none", ""),
            ("Cost of the log's lenses", f"{sum(row.spoiled.cost for row in data.rows):.2f}", ""),
            ("One, found by the wearer", _money(data.mean_cost(by_wearer=True)), "on average"),
            ("One, found before", _money(data.mean_cost(by_wearer=False)), "on average"),
        ]

    def sentence(self, data: SpoilageSheet) -> str:
        """Return whether this week is outside, and which cause stands first.

        data: from `compute`.
        """
        chart, first = data.chart, data.causes[0]
        where = "outside" if "now" in data.outside else "inside"
        earlier = [name for name in data.outside if name != "now"]
        others = f" Outside before: {', '.join(earlier)}." if earlier else " None is outside before it."
        share, lower, upper = (100.0 * float(part[-1]) for part in (chart.shares, chart.lower, chart.upper))
        return (
            f"This week {chart.counts[-1]} of {chart.sizes[-1]} lenses are spoiled, {share:.1f} %: {where} "
            f"the limits, {lower:.1f} to {upper:.1f} %.{others} First by {data.ranked_by}: {first.name}, "
            f"{first.count} lenses for {first.cost:.2f}."
        )


def _money(amount: float | None) -> str:
    return NOT_KNOWN if amount is None else f"{amount:.2f}"


def _batches(weeks_each: int) -> list[tuple[str, tuple[Week, ...]]]:
    """The weeks of the log, so many to a batch, each batch with its name."""
    weeks = demo_weeks()
    starts = range(0, len(weeks), weeks_each)
    return [
        (_name(start + 1, min(start + weeks_each, len(weeks))), weeks[start : start + weeks_each])
        for start in starts
    ]


def _name(first: int, last: int) -> str:
    return f"{first}" if first == last else f"{first}-{last}"


def _ranked(by: str, chosen: str) -> tuple[CauseRow, ...]:
    log = demo_log()
    rows = [
        CauseRow(
            name=cause.name,
            count=cause.count,
            cost=cause.cost,
            station=_most(row.station for row in log.rows if row.cause == cause.name),
            found_by=_most(row.found_by for row in log.rows if row.cause == cause.name),
            chosen=cause.name == chosen,
        )
        for cause in log.causes()
    ]
    # Causes come ranked by money; where numbers are equal, that order stays.
    return tuple(rows if by == MONEY else sorted(rows, key=lambda row: -row.count))


def _most(words: Iterable[str]) -> str:
    return Counter(words).most_common(1)[0][0]
