"""Every turn of a cut as a bar: what turns the lens there, and what holds it."""

import numpy as np
from matplotlib.collections import LineCollection, PolyCollection
from matplotlib.patches import Rectangle

from lablib.pictures.captions import WORDS_PT
from lablib.pictures.cutting_data import CRIBBING, FINISHING, ROUGHING, CutView, bar_style
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import GREATEST, HOLDS, INK, QUIET_INK
from lablib.pictures.torque_round import TOPS_NM, hatched_excess
from lablib.pictures.window import Box, add_axes, place, shown_px

_TICKS = 5
# How much of its place a bar fills; the line of the hold is a little wider.
_BAR, _LINE = 0.74, 0.94
_UNDER_PX, _ABOVE_PX = 12.0, 9.0


class TurnBars:
    """A rectangle of a picture with a bar for every turn, the turn that is shown marked.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px, self._top_nm = box_px, TOPS_NM[0]
        self.axes = axes = add_axes(picture, box_px)
        axes.set_axisbelow(True)
        axes.grid(axis="y", color="#dddddd", linewidth=0.8)
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right"]].set_visible(False)
        axes.set_xticks([])
        self._set_top(TOPS_NM[0])
        moving = picture.moving
        self.kinds = {
            kind: moving(axes.add_collection(PolyCollection([], zorder=2, **bar_style(kind)), autolim=False))
            for kind in (CRIBBING, ROUGHING, FINISHING)
        }
        excess = PolyCollection([], zorder=3, **hatched_excess())
        self.too_much = moving(axes.add_collection(excess, autolim=False))
        hold = LineCollection([], zorder=4, colors=HOLDS.colour, linewidths=HOLDS.width_pt)
        self.holds = moving(axes.add_collection(hold, autolim=False))
        frame = Rectangle((0.0, 0.0), 0.0, 0.0, fill=False, edgecolor=INK, linewidth=2.2, zorder=5)
        self.shown = moving(axes.add_patch(frame))
        self.peak = moving(axes.plot([], [], zorder=6, clip_on=False, **GREATEST.point())[0])
        self.peak.set_markersize(7)
        words = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 7, "clip_on": False}
        self.first, self.last, self.number = (
            picture.label(axes, transform=shown_px(picture), color=colour, **words)
            for colour in (QUIET_INK, QUIET_INK, INK)
        )

    def update(self, data: CutView) -> None:
        """Draw the turns of a cut.

        data: what to draw.
        """
        self._set_top(data.top_nm)
        places, width = _places(data)
        left, right = places, places + width * _BAR
        bars = data.bars[: data.drawn]
        left, right = left[: data.drawn], right[: data.drawn]
        turns = np.array([bar.turns_nm for bar in bars])
        holds = np.array([bar.holds_nm for bar in bars])
        for kind, part in self.kinds.items():
            of_kind = np.array([bar.kind == kind for bar in bars])
            part.set_verts(boxes(left[of_kind], right[of_kind], 0.0 * turns[of_kind], turns[of_kind]))
            # An empty collection is drawn nearly as slowly as a full one.
            part.set_visible(bool(of_kind.any()))
        over = turns > holds
        self.too_much.set_verts(boxes(left[over], right[over], holds[over], turns[over]))
        self.too_much.set_visible(bool(over.any()))
        ends = np.column_stack([left, left]) + width * _BAR / 2.0
        ends += width * _LINE / 2.0 * np.array([-1.0, 1.0])
        self.holds.set_segments(np.stack([ends, np.column_stack([holds, holds])], axis=-1))
        self.shown.set_bounds(left[data.at], 0.0, width * _BAR, turns[data.at])
        middle = places + width * _BAR / 2.0
        greatest = int(turns.argmax())
        self.peak.set_data([middle[greatest]], [turns[greatest] + self._nm(_ABOVE_PX)])
        self._number(data, middle)

    def _set_top(self, top_nm: float) -> None:
        if self.axes.get_ylim() != (0.0, top_nm):
            set_limits(self.axes, x=(0.0, 1.0), y=(0.0, top_nm))
            self.axes.set_yticks(np.linspace(0.0, top_nm, _TICKS))
        self._top_nm = top_nm

    def _nm(self, px: float) -> float:
        """So many shown pixels up the plot as torque [N m]."""
        _, bottom, _, top = self.box_px
        return px * self._top_nm / (top - bottom)

    def _number(self, data: CutView, middle: np.ndarray) -> None:
        """Number the turn that is shown, and the first and the last where they keep clear of it."""
        left, bottom, right, _ = self.box_px
        room = (left - 8.0, bottom - 24.0, right + 8.0, bottom)
        at_px = left + middle * (right - left)
        taken: list[Box] = []
        y = bottom - _UNDER_PX
        place(self.number, f"turn {data.at + 1}", [(at_px[data.at], y, 0, 0)], inside=room, taken=taken)
        for label, at in ((self.first, 0), (self.last, len(data.bars) - 1)):
            x = at_px[at]
            clear = x + 10.0 < taken[0][0] or x - 10.0 > taken[0][2]
            label.set_visible(clear and not (label is self.last and at == 0))
            label.set_text(f"{at + 1}")
            label.set_position((x, y))


def _places(data: CutView) -> tuple[np.ndarray, float]:
    """The left side of every bar and the width of its place, from 0 to 1; cribbing stands apart."""
    cribbed = sum(bar.kind == CRIBBING for bar in data.bars)
    gap = 1.0 if cribbed else 0.0
    count = len(data.bars)
    slot = np.arange(count) + np.where(np.arange(count) >= cribbed, gap, 0.0)
    width = 1.0 / (count + gap)
    return (slot + (1.0 - _BAR) / 2.0) * width, width


def boxes(left: np.ndarray, right: np.ndarray, low: np.ndarray, high: np.ndarray) -> np.ndarray:
    """Return the corners of upright boxes, shape (boxes, 4, 2).

    left, right, low, high: shape (boxes,) each [units of the axes].
    """
    across = np.stack([left, right, right, left], axis=-1)
    return np.stack([across, np.stack([low, low, high, high], axis=-1)], axis=-1)
