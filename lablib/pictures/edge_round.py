"""The edge of a lens unrolled: its thickness from the nose over the top and back to the nose."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.patches import Polygon

from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import EDGE, GREATEST, INK, LEAST, OUTLINE, QUIET_INK
from lablib.pictures.window import Box, add_axes, place, shown_px

# Few tops, so that the scale hardly ever changes; each with the distances between its ticks and lines.
TOPS_MM = ((10.0, 2, 1), (20.0, 4, 2), (40.0, 10, 5), (80.0, 20, 10))
# A mark and its number stand above the thickest edge.
_ROOM = 0.82
_DIRECTIONS = ("nasal", "top", "temporal", "bottom", "nasal")
_EVERY = 2


def axes_round(picture: KeptPicture, box_px: Box) -> Axes:
    """Add axes whose x runs round the lens, in degrees from the nose over the top.

    picture: where; box_px: left, bottom, right and top without the ticks [shown px].
    """
    axes = add_axes(picture, box_px)
    axes.set_axisbelow(True)
    axes.grid(axis="y", which="both", color="#dddddd", linewidth=0.8)
    axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
    axes.spines[["top", "right"]].set_visible(False)
    axes.set_xticks(range(0, 361, 90), _DIRECTIONS)
    axes.set_xticks(range(0, 361, 30), minor=True)
    return axes


class EdgeRound:
    """A rectangle of a picture that shows the edge thickness all round.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px = box_px
        self.axes = axes = axes_round(picture, box_px)
        self._set_top(*TOPS_MM[0])
        moving = picture.moving
        self.area = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **EDGE.fill())))
        self.line = moving(axes.plot([], [], zorder=3, **OUTLINE.line())[0])
        self.greatest = moving(axes.plot([], [], zorder=5, **GREATEST.point())[0])
        self.least = moving(axes.plot([], [], zorder=5, **LEAST.point())[0])
        for mark in (self.greatest, self.least):
            mark.set_clip_on(False)
        words = {"fontsize": WORDS_PT, "color": INK, "ha": "center", "va": "center", "zorder": 6}
        self.greatest_words, self.least_words = (
            picture.label(axes, transform=shown_px(picture), **words) for _ in range(2)
        )

    def update(self, sheet: EyeSheet) -> None:
        """Draw the edge of a lens.

        sheet: the lens.
        """
        edge = sheet.finished.edge_mm[sheet.from_nasal]
        angle = np.linspace(0.0, 360.0, edge.size + 1)[::_EVERY]
        round_mm = np.append(edge, edge[0])[::_EVERY]
        self._set_top(*next(top for top in TOPS_MM if edge.max() <= _ROOM * top[0] or top == TOPS_MM[-1]))
        self.line.set_data(angle, round_mm)
        corners = [(360.0, 0.0), (0.0, 0.0)]
        self.area.set_xy(np.concatenate([np.column_stack([angle, round_mm]), corners]))
        taken: list[Box] = []
        self._mark(sheet, sheet.greatest_at, self.greatest, self.greatest_words, +1, taken)
        self._mark(sheet, sheet.least_at, self.least, self.least_words, -1, taken)

    def _set_top(self, top_mm: float, tick_mm: int, line_mm: int) -> None:
        if self.axes.get_ylim() == (0.0, top_mm):
            return
        set_limits(self.axes, x=(0.0, 360.0), y=(0.0, top_mm))
        self.axes.set_yticks(range(0, int(top_mm) + 1, tick_mm))
        self.axes.set_yticks(range(0, int(top_mm) + 1, line_mm), minor=True)

    def _mark(self, sheet, at: int, mark, label, side: int, taken: list[Box]) -> None:
        """Put a mark on the line and its number beyond it, or on the other side where there is no room."""
        turned = float(np.flatnonzero(sheet.from_nasal == at)[0]) * 360.0 / sheet.from_nasal.size
        edge = float(sheet.finished.edge_mm[at])
        mark.set_data([turned], [edge])
        left, bottom, right, top = self.box_px
        x = left + turned / 360.0 * (right - left)
        y = bottom + edge / self.axes.get_ylim()[1] * (top - bottom)
        taken.append((x - 6, y - 6, x + 6, y + 6))
        spots = [(x, y + side * 8, 0, side), (x, y - side * 8, 0, -side), (x + 8, y, 1, 1), (x - 8, y, -1, 1)]
        place(label, f"{edge:.2f}", spots, inside=self.box_px, taken=taken)
