"""Causes of spoiled lenses one below the other, with a bar for their number and one for their money."""

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import PolyCollection

from lablib.pictures.captions import HEADING_PT, moving_words, write_still
from lablib.pictures.cutting_bars import boxes
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import BITE, BLUE_INK, JOINT, QUIET_INK, Look
from lablib.pictures.spoilage_data import CauseRow, SpoilageView
from lablib.pictures.window import add_axes

ROWS = 8
CHOSEN = Look(colour=BLUE_INK, mark=">")
_TOP_PX, _ROW_PX, _HALF_BAR_PX = 222.0, 25.0, 7.0
_NAME_PX, _STATION_PX, _FOUND_PX, _MARK_PX = 24.0, 452.0, 590.0, 14.0
# Where the bars of a column begin, and how long the longest is.
_NUMBER_PX, _MONEY_PX = (190.0, 70.0), (302.0, 84.0)
# From the end of a bar to its figure.
_FIGURE_PX = 5.0


class CauseRows:
    """The rows, the longest bar of each column equally long in every state.

    picture, axes: what they are part of.
    """

    def __init__(self, picture: KeptPicture, axes: Axes) -> None:
        write_still(picture, (10, 268), "Causes in the log", size=HEADING_PT)
        for x, words in _HEADS:
            write_still(picture, (x, 242), words, va="baseline", color=QUIET_INK)
        self.page = add_axes(picture, (0.0, 0.0, picture.width_px, _TOP_PX + _ROW_PX / 2.0))
        self.page.set_axis_off()
        set_limits(self.page, x=(0.0, picture.width_px), y=(0.0, _TOP_PX + _ROW_PX / 2.0))
        self.ranked = moving_words(picture, axes, (150, 268), color=BLUE_INK)
        self.bars = [
            picture.moving(self.page.add_collection(PolyCollection([], zorder=2, **look.fill())))
            for look in (JOINT, BITE)
        ]
        self.mark = picture.moving(self.page.plot([], [], **(CHOSEN.point() | {"markersize": 6.5}))[0])
        self.words = [
            [moving_words(picture, self.page, (x, _up_px(row))) for x in _COLUMNS_PX] for row in range(ROWS)
        ]

    def update(self, data: SpoilageView) -> None:
        """Draw the causes.

        data: what to draw.
        """
        self.ranked.set_text(f"ranked by {data.ranked_by}")
        figures = (
            ([cause.count for cause in data.causes], _NUMBER_PX),
            ([cause.cost for cause in data.causes], _MONEY_PX),
        )
        ends = [self._draw(bars, *column) for bars, column in zip(self.bars, figures, strict=True)]
        for row, cause in enumerate(data.causes):
            self._write(self.words[row], cause)
            for label, end in zip(self.words[row][1:3], ends, strict=True):
                label.set_position((end[row] + _FIGURE_PX, _up_px(row)))
        chosen = [row for row, cause in enumerate(data.causes) if cause.chosen]
        self.mark.set_data([_MARK_PX] * len(chosen), [_up_px(row) for row in chosen])

    def _write(self, labels: list, cause: CauseRow) -> None:
        texts = (cause.name, f"{cause.count}", f"{cause.cost:.2f}", cause.station, cause.found_by)
        for label, text in zip(labels, texts, strict=True):
            label.set_text(text)

    def _draw(self, bars: PolyCollection, values: list, place_px: tuple[float, float]) -> np.ndarray:
        """Draw the bars of a column, and return where each ends [shown px]."""
        begin, longest = place_px
        left = np.full(len(values), begin)
        right = begin + longest * np.array(values) / max(values)
        up = np.array([_up_px(row) for row in range(len(values))])
        bars.set_verts(boxes(left, right, up - _HALF_BAR_PX, up + _HALF_BAR_PX))
        return right


def _up_px(row: int) -> float:
    """The middle of a row, from the picture's lower edge [shown px]."""
    return _TOP_PX - row * _ROW_PX


_HEADS = (
    (_NAME_PX, "what went wrong"),
    (_NUMBER_PX[0], "lenses"),
    (_MONEY_PX[0], "money"),
    (_STATION_PX, "to be caught at"),
    (_FOUND_PX, "mostly found by"),
)
_COLUMNS_PX = (_NAME_PX, _NUMBER_PX[0], _MONEY_PX[0], _STATION_PX, _FOUND_PX)
