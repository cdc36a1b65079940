"""The panel of doubt: one cut on many benches, and the parameters its margin hangs on."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from lablib.bench.margin import CutResult
from lablib.bench.uncertainty import Spread, Swing, spread, swings
from lablib.job.report import percent
from lablib.job.spoiled import AS_IT_WAS, changes, spoiled
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.panels.remedy_panel import LENSES
from lablib.panels.specs import Choice
from lablib.pictures.doubt import HIGH, LOW, MOST_ROWS, DoubtPicture
from lablib.pictures.doubt_data import DoubtView, SwingRow

NOTHING = "nothing"
_CHANGES = {NOTHING: AS_IT_WAS} | {name.replace("-", " "): name for name in changes()}
DRAWS = 4000
_KEPT, _STEPS = 64, 48
# One end of a step lies at a margin of 1, so that what turns is told from what holds.
_EDGES = np.geomspace(LOW, HIGH, _STEPS + 1)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class DoubtSheet(DoubtView):
    """One cut on many benches, with the draws.

    cut: as it was worked; spread: of the draws; every: all parameters that change something.
    """

    cut: CutResult
    spread: Spread
    every: tuple[Swing, ...]


class DoubtPanel(Panel):
    """One practice lens, one thing done otherwise, and how far its margin can be trusted."""

    draws = DoubtPicture
    note = (
        "Lenses are invented. Each bench is drawn from the ranges of the workbook's table, which are "
        "teaching estimates: as often above as below the table's value, the nearer to it the likelier."
    )
    controls = (
        Choice(name="lens", label="Lens", options=tuple(LENSES), value="strong minus"),
        Choice(name="change", label="Change one thing", options=tuple(_CHANGES), value=NOTHING),
    )

    def compute(self, values: Values) -> DoubtSheet:
        """Return one cut on many benches.

        values: by the control's name.
        """
        cut, found, every = _doubted(LENSES[values["lens"]], _CHANGES[values["change"]])
        counts, _ = np.histogram(np.clip(found.margin, LOW, HIGH), bins=_EDGES)
        return DoubtSheet(
            cut=cut,
            spread=found,
            every=every,
            margin=cut.margin,
            edges=_EDGES,
            shares=counts / found.margin.size,
            band=found.band(),
            middle=found.middle,
            swings=tuple(_row(one) for one in every[:MOST_ROWS]),
        )

    def numbers(self, data: DoubtSheet) -> Sequence[tuple[str, str, str]]:
        """Return the margin, its band, and how many benches would turn the lens.

        data: from `compute`.
        """
        low, high = data.band
        return [
            ("Margin by the table", f"{data.margin:.2f}", ""),
            ("Half the benches below", f"{data.middle:.2f}", ""),
            ("95 % of them", f"{low:.2f} to {high:.2f}", ""),
            ("Benches below 1", percent(data.spread.share_below_1), ""),
            ("Benches drawn", f"{data.spread.margin.size}", ""),
            ("Parameters that matter", f"{len(data.every)}" if data.every else NOT_KNOWN, ""),
        ]

    def sentence(self, data: DoubtSheet) -> str:
        """Return the band, and what the margin hangs on most.

        data: from `compute`.
        """
        low, high = data.band
        most = data.every[0]
        return (
            f"Margin {data.margin:.2f} by the table; of benches that nobody has measured, 95 % lie from "
            f"{low:.2f} to {high:.2f}, and {percent(data.spread.share_below_1)} below 1. It hangs most on "
            f"this: {most.parameter.words}, by a factor of {most.factor:.1f} between the ends of its range."
        )


@lru_cache(maxsize=_KEPT)
def _doubted(lens: str, change: str) -> tuple[CutResult, Spread, tuple[Swing, ...]]:
    cut = spoiled(lens, change).cut
    return cut, spread(cut, draws=DRAWS), swings(cut)


def _row(one: Swing) -> SwingRow:
    parameter = one.parameter
    unit = f" {parameter.unit}" if parameter.unit else ""
    return SwingRow(
        words=f"{parameter.words}: {parameter.low:g} to {parameter.high:g}{unit}",
        at_low=one.margin_at_low,
        at_high=one.margin_at_high,
    )
