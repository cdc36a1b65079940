"""A log of spoiled lenses: its chart with limits, and its causes by number and by money."""

import numpy as np
from matplotlib.collections import LineCollection

from lablib.pictures.captions import (
    HEADING_PT,
    WORDS_PT,
    KeyLine,
    add_key,
    moving_words,
    step_up,
    write_still,
)
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import BLUE_INK, GREATEST, HOLDS, INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.spoilage_causes import CauseRows
from lablib.pictures.spoilage_data import SpoilageView
from lablib.pictures.window import add_axes, shown_px

# Few ends of the scale, so that it hardly ever changes, each with the step of its ticks [%].
TOPS = ((20.0, 5.0), (40.0, 10.0), (100.0, 25.0))
MOST_BATCHES = 21
SHARE = Look(colour=BLUE_INK, mark="o", width_pt=1.2)
NOW = Look(colour=INK, mark="D", width_pt=1.6, hollow=True)
POOLED = Look(colour=QUIET_INK, dashes="solid", width_pt=1.2)
LIMIT = Look(colour=OKABE_ITO["vermilion"], dashes=HOLDS.dashes, width_pt=1.8)
_PLOT_PX = (56.0, 330.0, 706.0, 546.0)
_NAME_PX, _SIZE_PX = 311.0, 294.0
# A limit's line takes so much of the place of its batch to either side.
_HALF = 0.42


class SpoilagePicture(KeptPicture):
    """The share spoiled, batch by batch, above the causes."""

    width_px = 720
    height_px = 604

    def build(self) -> None:
        """Add the chart, its key and the rows of the causes."""
        write_still(self, (10, 590), "Lenses spoiled, of those cut [%]", size=HEADING_PT)
        add_key(self, _KEY)
        self.axes = axes = add_axes(self, _PLOT_PX)
        axes.set_axisbelow(True)
        axes.grid(axis="y", color="#dddddd", linewidth=0.8)
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right"]].set_visible(False)
        axes.set_xticks([])
        self.about = moving_words(self, axes, (706, 590), ha="right", color=INK)
        self._add_moving()
        self._add_labels()
        self.causes = CauseRows(self, axes)

    def _add_moving(self) -> None:
        axes, moving = self.axes, self.moving
        limits = LineCollection([], zorder=2, colors=LIMIT.colour, linewidths=LIMIT.width_pt)
        self.limits = moving(axes.add_collection(limits, autolim=False))
        self.pooled = moving(axes.plot([], [], zorder=1, **POOLED.line())[0])
        points = {"zorder": 4, "clip_on": False}
        self.shares, self.outside, self.now = (
            moving(axes.plot([], [], **points | look.point())[0]) for look in (SHARE, GREATEST, NOW)
        )
        self.shares.set(linestyle="solid", linewidth=SHARE.width_pt, markersize=5.5)
        self.now.set(markersize=11, zorder=3)

    def _add_labels(self) -> None:
        for y, words in ((_NAME_PX, "week"), (_SIZE_PX, "cut")):
            write_still(self, (10, y), words, color=QUIET_INK)
        style = {"transform": shown_px(self), "fontsize": WORDS_PT, "ha": "center", "va": "center"}
        self.names, self.sizes = (
            [self.label(self.axes, color=colour, clip_on=False, **style) for _ in range(MOST_BATCHES)]
            for colour in (INK, QUIET_INK)
        )

    def update(self, data: SpoilageView) -> None:
        """Draw the log.

        data: what to draw.
        """
        chart, count = data.chart, len(data.batches)
        shares, upper, lower = (100.0 * part for part in (chart.shares, chart.upper, chart.lower))
        self._set_scale(count, max(float(shares.max()), float(upper.max())))
        at = np.arange(1.0, count + 1.0)
        self.shares.set_data(at, shares)
        beyond = np.array(chart.outside, dtype=int) - 1
        self.outside.set_data(at[beyond], shares[beyond])
        self.now.set_data(at[-1:], shares[-1:])
        self.pooled.set_data([0.5, count + 0.5], [100.0 * chart.share] * 2)
        self.limits.set_segments([*_levels(at, upper), *_levels(at[lower > 0.0], lower[lower > 0.0])])
        self.about.set_text(data.about)
        self._name(data)
        self.causes.update(data)

    def _set_scale(self, count: int, greatest: float) -> None:
        top = step_up([one for one, _ in TOPS], greatest)
        if (self.axes.get_xlim(), self.axes.get_ylim()) != ((0.5, count + 0.5), (0.0, top)):
            set_limits(self.axes, x=(0.5, count + 0.5), y=(0.0, top))
            self.axes.set_yticks(np.arange(0.0, top + 1.0, dict(TOPS)[top]))

    def _name(self, data: SpoilageView) -> None:
        left, _, right, _ = _PLOT_PX
        wide = (right - left) / len(data.batches)
        for number in range(MOST_BATCHES):
            is_there = number < len(data.batches)
            for label, y in ((self.names[number], _NAME_PX), (self.sizes[number], _SIZE_PX)):
                label.set_visible(is_there)
                label.set_position((left + (number + 0.5) * wide, y))
            if is_there:
                self.names[number].set_text(data.batches[number])
                self.sizes[number].set_text(f"{data.chart.sizes[number]}")


def _levels(at: np.ndarray, level: np.ndarray) -> np.ndarray:
    """A level line at each batch, shape (batches, 2, 2)."""
    ends = np.stack([at - _HALF, at + _HALF], axis=-1)
    return np.stack([ends, np.stack([level, level], axis=-1)], axis=-1)


_KEY: tuple[KeyLine, ...] = (
    (10, 568, SHARE, "share"),
    (96, 568, NOW, "this week"),
    (206, 568, GREATEST, "outside its limits"),
    (368, 568, POOLED, "pooled share"),
    (500, 568, LIMIT, "limit, for that many lenses"),
)
