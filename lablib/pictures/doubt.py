"""How far a margin can be trusted: many benches on one scale, and below it what hangs on each parameter."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.patches import Polygon

from lablib.pictures.captions import HEADING_PT, WORDS_PT, add_key, moving_words, write_still
from lablib.pictures.doubt_data import DoubtView
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import DOUBT, INK, LEAST_MARGIN, OKABE_ITO, QUIET_INK, TOO_MUCH, Look
from lablib.pictures.window import Box, add_axes

LOW, HIGH, MOST_ROWS = 0.05, 20.0, 7
MIDDLE = Look(colour=INK, mark="v")
BAND = Look(colour=INK, dashes="solid", width_pt=3.0)
LOW_END = Look(colour=OKABE_ITO["blue"], mark="o", hollow=True)
HIGH_END = Look(colour=OKABE_ITO["blue"], mark="o")
_TICKS = (0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20)
_MANY_PX: Box = (20.0, 420.0, 700.0, 520.0)
_ROWS_PX: Box = (20.0, 62.0, 700.0, 364.0)
# The fullest step fills this share of the upper plot; few heights, so that the shape moves and not its scale.
_TALLEST, _TOPS = 0.8, (0.1, 0.2, 0.4, 1.0)
_BAND_AT, _WORDS_UP, _BAR_DOWN = 0.9, 0.72, 0.28
_NOWHERE = np.full((3, 2), np.nan)
_KEY = (
    (20.0, 14.0, LEAST_MARGIN, "by the table"),
    (148.0, 14.0, MIDDLE, "half the benches below"),
    (340.0, 14.0, BAND, "95 % of them"),
    (466.0, 14.0, LOW_END, "at its least"),
    (580.0, 14.0, HIGH_END, "at its greatest"),
)


class DoubtPicture(KeptPicture):
    """One cut: margins on many benches, and the parameters it hangs on."""

    width_px = 720
    height_px = 550

    def build(self) -> None:
        """Add both plots on one scale, their headings and the key."""
        self.many, self.rows = (self._scale(box) for box in (_MANY_PX, _ROWS_PX))
        set_limits(self.many, x=(LOW, HIGH), y=(0.0, 1.0))
        set_limits(self.rows, x=(LOW, HIGH), y=(0.0, float(MOST_ROWS)))
        for box, words in (
            (_MANY_PX, "Margin of this cut on many benches, drawn from the table's ranges"),
            (_ROWS_PX, "One parameter alone at the ends of its range, the one that matters most first"),
        ):
            write_still(self, (10.0, box[3] + 14.0), words, size=HEADING_PT)
        add_key(self, _KEY)
        self._add_moving()

    def _scale(self, box: Box) -> Axes:
        axes = add_axes(self, box)
        axes.set_xscale("log")
        axes.set_xticks(_TICKS, [f"{tick:g}" for tick in _TICKS])
        axes.set_xticks([], minor=True)
        axes.set_yticks([])
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right", "left"]].set_visible(False)
        axes.axvline(1.0, color=INK, linewidth=1.4)
        return axes

    def _add_moving(self) -> None:
        many, rows, moving = self.many, self.rows, self.moving
        hatched = {"facecolor": TOO_MUCH.colour, "alpha": TOO_MUCH.opacity, "linewidth": 0.0, "hatch": "////"}
        self.shape = moving(many.add_patch(Polygon(_NOWHERE, zorder=2, **DOUBT.fill())))
        self.turning = moving(many.add_patch(Polygon(_NOWHERE, zorder=3, **hatched)))
        self.band = moving(many.plot([], [], zorder=5, **BAND.line())[0])
        self.middle = moving(many.plot([], [], zorder=6, **MIDDLE.point())[0])
        self.table = moving(many.plot([], [], zorder=7, **LEAST_MARGIN.point())[0])
        self.through = moving(rows.plot([], [], color=QUIET_INK, linewidth=1.0, linestyle=(0, (3, 2)))[0])
        self.bars = [moving(rows.plot([], [], zorder=4, **BAND.line())[0]) for _ in range(MOST_ROWS)]
        self.ends = [
            moving(rows.plot([], [], zorder=6, clip_on=False, **look.point())[0])
            for look in (LOW_END, HIGH_END)
        ]
        left, bottom, _, top = _ROWS_PX
        step = (top - bottom) / MOST_ROWS
        self.words = [
            moving_words(self, rows, (left, top - (at + 1.0 - _WORDS_UP) * step)) for at in range(MOST_ROWS)
        ]

    def update(self, data: DoubtView) -> None:
        """Draw the benches and the parameters.

        data: what to draw; of very many parameters the last are left out.
        """
        self._draw_many(data)
        shown = data.swings[:MOST_ROWS]
        heights = [MOST_ROWS - 1.0 - at + _BAR_DOWN for at in range(len(shown))]
        for at, (bar, words) in enumerate(zip(self.bars, self.words, strict=True)):
            there = at < len(shown)
            bar.set_data(
                _on_scale([shown[at].at_low, shown[at].at_high]) if there else [],
                [heights[at]] * 2 if there else [],
            )
            words.set_text(shown[at].words if there else "")
        for artist, margins in zip(
            self.ends, ([one.at_low for one in shown], [one.at_high for one in shown]), strict=True
        ):
            artist.set_data(_on_scale(margins), heights)
        self.through.set_data(_on_scale([data.margin] * 2), [0.0, float(MOST_ROWS)])

    def _draw_many(self, data: DoubtView) -> None:
        top = next((top for top in _TOPS if data.shares.max() <= top), _TOPS[-1]) / _TALLEST
        edges, heights = _on_scale(data.edges), data.shares / top
        self.shape.set_xy(_stairs(edges, heights))
        below = data.edges[1:] <= 1.0 + 1e-9
        self.turning.set_xy(_stairs(edges, np.where(below, heights, 0.0)))
        self.band.set_data(_on_scale(data.band), [_BAND_AT] * 2)
        self.middle.set_data(_on_scale([data.middle]), [_BAND_AT])
        self.table.set_data(_on_scale([data.margin]), [_BAND_AT])


def _on_scale(margins: object) -> np.ndarray:
    return np.clip(np.asarray(margins, dtype=float), LOW, HIGH)


def _stairs(edges: np.ndarray, heights: np.ndarray) -> np.ndarray:
    """Corners of a row of boxes on the axis."""
    across, up = np.repeat(edges, 2), np.concatenate([[0.0], np.repeat(heights, 2), [0.0]])
    return np.column_stack([across, up])
