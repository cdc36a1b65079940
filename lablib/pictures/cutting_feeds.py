"""Ways of feeding one below the other: the torque of every turn over the time that it takes."""

import numpy as np
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.patches import Rectangle

from lablib.pictures.captions import (
    HEADING_PT,
    KEY_WORDS_PX,
    WORDS_PT,
    add_key,
    moving_words,
    step_up,
    write_still,
)
from lablib.pictures.cutting_bars import boxes
from lablib.pictures.cutting_data import FINISHING, ROUGHING, bar_style
from lablib.pictures.cutting_feeds_data import FeedRow, FeedView
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import HOLDS, INK, QUIET_INK
from lablib.pictures.torque_round import hatched_excess
from lablib.pictures.window import Box, add_axes, shown_px

# Few ends of the time, so that the scale hardly ever changes, and the steps of its ticks [s].
ENDS_S = ((120.0, 20.0), (240.0, 40.0), (480.0, 80.0), (960.0, 160.0), (1920.0, 320.0))
_LOWEST_PX, _HIGH_PX, _STEP_PX = 28.0, 98.0, 152.0
_LEFT_PX, _RIGHT_PX = 44.0, 700.0
_KEY_PX = 468.0
_TICKS = 3


class FeedsPicture(KeptPicture):
    """One plot for each way of feeding, all to the same two scales."""

    width_px = 720
    height_px = 504
    rows = 3

    def build(self) -> None:
        """Add the plots, their headings and the key."""
        write_still(self, (10, 490), "Greatest torque of each turn [N m], over time [s]", size=HEADING_PT)
        boxes = [self._box(row) for row in range(self.rows)]
        self.plots = [FeedPlot(self, box) for box in boxes]
        add_key(self, ((10, _KEY_PX, HOLDS, "holds"),))
        for x, style, words in _PATCHES:
            self.figure.add_artist(Rectangle((x, _KEY_PX - 6), 24, 12, transform=shown_px(self), **style))
            write_still(self, (x + KEY_WORDS_PX, _KEY_PX), words, color=QUIET_INK)

    def _box(self, row: int) -> Box:
        bottom = _LOWEST_PX + (self.rows - 1 - row) * _STEP_PX
        return (_LEFT_PX, bottom, _RIGHT_PX, bottom + _HIGH_PX)

    def update(self, data: FeedView) -> None:
        """Draw every way of feeding.

        data: what to draw.
        """
        longest = max(float(row.ends_s[-1]) for row in data.rows)
        end = step_up([one for one, _ in ENDS_S], longest)
        for plot, row in zip(self.plots, data.rows, strict=True):
            plot.update(row, end_s=end, top_nm=data.top_nm)


class FeedPlot:
    """One way of feeding: a box for every turn, as wide as the turn is long.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.axes = axes = add_axes(picture, box_px)
        axes.set_axisbelow(True)
        axes.grid(axis="y", color="#dddddd", linewidth=0.8)
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right"]].set_visible(False)
        moving = picture.moving
        self.kinds = {
            kind: moving(axes.add_collection(PolyCollection([], zorder=2, **bar_style(kind)), autolim=False))
            for kind in (ROUGHING, FINISHING)
        }
        excess = PolyCollection([], zorder=3, **hatched_excess())
        self.too_much = moving(axes.add_collection(excess, autolim=False))
        hold = LineCollection([], zorder=4, colors=HOLDS.colour, linewidths=HOLDS.width_pt)
        self.holds = moving(axes.add_collection(hold, autolim=False))
        _, _, right, top = box_px
        self.name = moving_words(picture, axes, (10, top + 14), size=HEADING_PT, color=INK)
        self.said = moving_words(picture, axes, (right, top + 14), ha="right", color=INK)

    def update(self, row: FeedRow, *, end_s: float, top_nm: float) -> None:
        """Draw one way of feeding.

        row: what to draw; end_s, top_nm: where the scales end [s, N m].
        """
        self._set_scales(end_s, top_nm)
        begins, ends = row.ends_s[:-1], row.ends_s[1:]
        for kind, finishing in ((ROUGHING, False), (FINISHING, True)):
            of_kind = row.finishing == finishing
            zero = np.zeros(int(of_kind.sum()))
            self.kinds[kind].set_verts(boxes(begins[of_kind], ends[of_kind], zero, row.turns_nm[of_kind]))
        over = row.turns_nm > row.holds_nm
        self.too_much.set_verts(boxes(begins[over], ends[over], row.holds_nm[over], row.turns_nm[over]))
        level = np.column_stack([row.holds_nm, row.holds_nm])
        self.holds.set_segments(np.stack([np.column_stack([begins, ends]), level], axis=-1))
        self.name.set_text(row.name)
        self.said.set_text(row.said)

    def _set_scales(self, end_s: float, top_nm: float) -> None:
        if (self.axes.get_xlim(), self.axes.get_ylim()) == ((0.0, end_s), (0.0, top_nm)):
            return
        set_limits(self.axes, x=(0.0, end_s), y=(0.0, top_nm))
        self.axes.set_xticks(np.arange(0.0, end_s + 1.0, dict(ENDS_S)[end_s]))
        self.axes.set_yticks(np.linspace(0.0, top_nm, _TICKS))


_PATCHES = (
    (92, bar_style(ROUGHING), ROUGHING),
    (194, bar_style(FINISHING), FINISHING),
    (296, hatched_excess(), "more than holds"),
)
