"""How a value stands in the drawing of a question: the learner's dashed and hollow, the right one filled."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from lablib.pictures.captions import WORDS_PT
from lablib.pictures.label import Label
from lablib.pictures.palette import BLUE_INK, INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import Box, Spot, Window, place

YOURS = Look(colour=OKABE_ITO["vermilion"], dashes=(0, (3.5, 1.8)), mark="o", width_pt=1.8, hollow=True)
RIGHT = Look(colour=OKABE_ITO["blue"], dashes="solid", mark="D", width_pt=2.2)
# A hollow ring goes round a filled mark, so that both are seen where two values nearly meet.
_RING_PT, _FILLED_PT, _ARROW_PT = 10.0, 6.0, 9.0
_HALF_MARK_PX = 8.0
_ARROWS = {"left": "<", "right": ">", "up": "^", "down": "v"}
_BEYOND = {
    "left": "◀ {}, off the picture",
    "right": "{}, off the picture ▶",
    "up": "{}, off the picture ▲",
    "down": "{}, off the picture ▼",
}
# A line is fenced off in pieces no longer than this, when words look for a place.
_PIECE_PX = 12.0
_ALL_SIDES = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, 1), (1, -1), (-1, -1))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Stand:
    """Where a value stands in a drawing.

    line: its line, shape (N, 2), not-a-number where it breaks off [units of the window].
    mark: its mark [units of the window].
    spots: where its words may stand, best first [shown px].
    off: to which side it lies beyond the drawing: "left", "right", "up", "down", or "" where it is in it.
    """

    line: np.ndarray
    mark: tuple[float, float]
    spots: Sequence[Spot]
    off: str = ""

    def beyond(self, name: str) -> str:
        """Return what is written of a value beyond the drawing.

        name: whose it is.
        """
        return _BEYOND[self.off].format(name)


class Sign:
    """A value in a drawing: a line, a mark and words.

    window: of the drawing; look: how it is drawn.
    """

    def __init__(self, window: Window, look: Look) -> None:
        axes, moving = window.axes, window.picture.moving
        self.window, self.look = window, look
        self.line = moving(axes.plot([], [], zorder=10, solid_capstyle="round", **look.line())[0])
        # The filled mark lies on the ring.
        depth = 11 if look.hollow else 12
        self.mark = moving(axes.plot([], [], zorder=depth, clip_on=False, **look.point())[0])
        self.label = words_in(window, color=INK if look.hollow else BLUE_INK, zorder=13)

    def hide(self) -> None:
        """Show nothing."""
        for artist in (self.line, self.mark, self.label):
            artist.set_visible(False)

    def show(self, stand: Stand) -> Box:
        """Draw line and mark, and return the box that the mark takes [shown px].

        stand: where.
        """
        for artist in (self.line, self.mark, self.label):
            artist.set_visible(True)
        self.line.set_data(stand.line[:, 0], stand.line[:, 1])
        self.mark.set_data([stand.mark[0]], [stand.mark[1]])
        self.mark.set_marker(_ARROWS.get(stand.off, self.look.mark))
        size = _RING_PT if self.look.hollow else _FILLED_PT
        self.mark.set_markersize(_ARROW_PT if stand.off else size)
        x, y = self.window.px(*stand.mark)
        return (x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX)


class Measure:
    """A distance of the case: a thin line between two end marks, with its words.

    window: of the drawing; upright: whether it runs up rather than across.
    """

    def __init__(self, window: Window, *, upright: bool = False) -> None:
        style = {"color": QUIET_INK, "linewidth": 0.9, "marker": "_" if upright else "|", "markersize": 7}
        self.window, self.upright = window, upright
        self.line = window.picture.moving(window.axes.plot([], [], zorder=7, **style)[0])
        self.label = words_in(window)

    def hide(self) -> None:
        """Show nothing."""
        self.line.set_visible(False)
        self.label.set_visible(False)

    def show(
        self,
        ends: Sequence[tuple[float, float]],
        words: str,
        *,
        side: int,
        share: float = 0.5,
        **space: object,
    ) -> None:
        """Draw the distance and write its words beside it.

        ends: both points [units of the window]; words: the line.
        side: 1 for words above or to the right, -1 for below or to the left.
        share: how far from the first end to the second the words stand.
        space: `inside`, `taken` and `drawn` of `lablib.pictures.window.place`.
        """
        self.line.set_visible(True)
        self.label.set_visible(True)
        (x0, y0), (x1, y1) = ends
        self.line.set_data([x0, x1], [y0, y1])
        x, y = self.window.px(x0 + share * (x1 - x0), y0 + share * (y1 - y0))
        across = (side, 0) if self.upright else (0, side)
        place(self.label, words, spots_round(x, y, across, gap_px=3.0), **space)


def boxes_along(window: Window, line: np.ndarray) -> list[Box]:
    """Return boxes that together hold a line [shown px].

    window: of the drawing.
    line: shape (N, 2), not-a-number where it breaks off [units of the window].
    """
    points = [window.px(x, y) for x, y in np.asarray(line, dtype=float).tolist()]
    # Where the line breaks off, no piece has a length.
    pieces = [piece for ends in pairwise(points) for piece in _pieces(*ends)]
    return [(min(x, a), min(y, b), max(x, a), max(y, b)) for (x, y), (a, b) in pieces]


def _pieces(start: tuple[float, float], end: tuple[float, float]) -> Iterator[tuple]:
    (x, y), (across, up) = start, (end[0] - start[0], end[1] - start[1])
    longest = max(abs(across), abs(up))
    parts = math.ceil(longest / _PIECE_PX) if longest > 0.0 else 0
    steps = [(x + across * at / parts, y + up * at / parts) for at in range(parts + 1)] if parts else []
    return pairwise(steps)


def words_in(window: Window, **style: object) -> Label:
    """Add a moving text for `lablib.pictures.window.place` and return it.

    window: of the drawing; style: matplotlib's keywords for a text, where they differ.
    """
    style = {"fontsize": WORDS_PT, "color": INK, "ha": "center", "va": "center", "zorder": 8} | style
    return window.label(**style)


def spots_round(x_px: float, y_px: float, *first: tuple[float, float], gap_px: float = 9.0) -> list[Spot]:
    """Return places for words round a point, ever farther from it.

    x_px, y_px: the point [shown px].
    first: the sides to try before the others, each as a step across and up.
    gap_px: distance of the nearest [shown px].
    """
    sides = (*first, *(side for side in _ALL_SIDES if side not in first))
    return [
        (x_px + across * gap, y_px + up * gap, across, up)
        for gap in (gap_px, gap_px + 14.0, gap_px + 28.0, gap_px + 46.0)
        for across, up in sides
    ]
