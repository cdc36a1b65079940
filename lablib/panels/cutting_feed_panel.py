"""The panel of the feeds: the same lens cut in three ways, its torque over time."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from lablib.bench.margin import CutResult
from lablib.bench.setup import feeds
from lablib.bench.turns import turns_of
from lablib.errors import LabError
from lablib.panels.cutting_panel import CutJob, CuttingPanel, cut_for, job_for
from lablib.panels.panel import NOT_KNOWN, Panel, Values
from lablib.pictures.cutting_feeds import FeedsPicture
from lablib.pictures.cutting_feeds_data import FeedRow, FeedView
from lablib.pictures.torque_round import top_for

_WORDS = {"depth": "depth control"}
_FEED, _LENS = {"group": "Feed"}, {"group": "Lens"}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FeedSheet(FeedView):
    """One lens cut in each way.

    cuts: by the name of the feed; None where the cut would never get done.
    """

    cuts: Mapping[str, CutResult | None]


class FeedPanel(Panel):
    """One lens fed to the wheel in three ways."""

    draws = FeedsPicture
    note = CuttingPanel.note
    controls = (
        *(
            replace(CuttingPanel.ranges[name], **_FEED)
            for name in ("bite_mm", "head_force_n", "torque_cap_nm")
        ),
        *(
            replace(CuttingPanel.ranges[name], **_LENS)
            for name in ("sphere_d", "material", "front_curve_d", "thickness_mm", "blank_diameter_mm")
        ),
    )

    def compute(self, values: Values) -> FeedSheet:
        """Return the lens cut in each way.

        values: by the control's name.

        Raises LabError when no lens can be made so, or it can be cut in none of the ways.
        """
        rest = {name: spec.value for name, spec in CuttingPanel.ranges.items()} | values
        job = job_for(rest)
        cuts = {name: _cut(job, rest | {"feed": name}) for name in feeds()}
        rows = tuple(_row(name, cut) for name, cut in cuts.items())
        turns, holds = (max(float(part.max(initial=0.0)) for part in parts) for parts in _torques(rows))
        return FeedSheet(rows=rows, top_nm=top_for(turns, holds), cuts=cuts)

    def numbers(self, data: FeedSheet) -> Sequence[tuple[str, str, str]]:
        """Return the rows of the table: torque, margin and time for each feed.

        data: from `compute`.
        """
        return [line for name, cut in data.cuts.items() for line in _lines(name, cut)]

    def sentence(self, data: FeedSheet) -> str:
        """Return what each feed costs and gives.

        data: from `compute`.
        """
        return f"{'; '.join(f'{row.name}: {row.said}' for row in data.rows)}."


def _cut(job: CutJob, values: Values) -> CutResult | None:
    """The cut; None where a feed that chooses its own bites never gets done."""
    try:
        return cut_for(job, values)
    except LabError:
        if values["feed"] == "depth":
            raise
        return None


def _row(name: str, cut: CutResult | None) -> FeedRow:
    words = _WORDS.get(name, name).capitalize()
    if cut is None:
        none = np.zeros(0)
        return FeedRow(
            name=words,
            said="never gets done",
            ends_s=np.zeros(1),
            turns_nm=none,
            holds_nm=none,
            finishing=none.astype(bool),
        )
    turns = turns_of(cut)
    ends = np.cumsum([0.0, *(turn.seconds for turn in turns)])
    return FeedRow(
        name=words,
        said=f"margin {cut.margin:.2f}, {len(turns)} turns, {ends[-1]:.0f} s",
        ends_s=ends,
        turns_nm=np.array([turn.torque_nmm for turn in turns]) / 1000.0,
        holds_nm=np.array([turn.hold_nmm for turn in turns]) / 1000.0,
        finishing=np.array([turn.finishing for turn in turns]),
    )


def _torques(rows: Sequence[FeedRow]) -> tuple[list[np.ndarray], list[np.ndarray]]:
    return [row.turns_nm for row in rows], [row.holds_nm for row in rows]


def _lines(name: str, cut: CutResult | None) -> list[tuple[str, str, str]]:
    words = _WORDS.get(name, name).capitalize()
    if cut is None:
        return [
            (f"{words}: torque", NOT_KNOWN, ""),
            (f"{words}: margin", NOT_KNOWN, ""),
            (f"{words}: time", NOT_KNOWN, ""),
        ]
    seconds = sum(turn.seconds for turn in turns_of(cut))
    return [
        (f"{words}: torque", f"{cut.peak_cutting_torque_nmm / 1000.0:.2f}", "N m"),
        (f"{words}: margin", f"{cut.margin:.2f}", ""),
        (f"{words}: time", f"{seconds:.0f}", "s"),
    ]
