"""A cut through a lens, front surface up: the glass, the blank it came from, and its thicknesses."""

from dataclasses import dataclass

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.optics.section import Section
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import (
    BACK_SURFACE,
    BLANK,
    CUT_AWAY,
    FRONT_SURFACE,
    GLASS,
    INK,
    OUTLINE,
    PAPER,
    TOO_SMALL,
)
from lablib.pictures.window import Box, Spot, Window, place

# Above the front vertex there is room for one number.
_HEAD_PX, _FOOT_PX = 24.0, 8.0
_MARGIN_PX, _GAP_PX = 4.0, 4.0
# Points of a section that are fenced off together when a number looks for a free place.
_SLICE = 8
NOWHERE = np.zeros((1, 2))
# What the blank does not reach.
HATCHED = {"facecolor": PAPER, "edgecolor": TOO_SMALL.colour, "linewidth": 0.0}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cut:
    """A section with the words it is drawn with.

    section: the cut.
    flipped: whether its end lies at the left.
    at_mm: place along the cut where a thickness is written above [mm].
    at_words, start_words, end_words: the thickness there and at both ends, in words.
    """

    section: Section
    flipped: bool
    at_mm: float
    at_words: str
    start_words: str
    end_words: str

    @property
    def shift_mm(self) -> float:
        """Middle of the lens along the cut [mm]."""
        return float(self.section.along_mm[0] + self.section.along_mm[-1]) / 2.0

    def across_mm(self, along_mm: np.ndarray) -> np.ndarray:
        """Return places along the cut as places in the drawing, the lens in the middle [mm].

        along_mm: [mm].
        """
        return (self.shift_mm - along_mm) if self.flipped else (along_mm - self.shift_mm)

    @property
    def half_width_mm(self) -> float:
        """Farthest place to either side that is drawn [mm]."""
        lens, blank = self.section.along_mm, self.section.blank_along_mm
        ends = (lens[[0, -1]], blank[:1], blank[-1:])
        return float(np.abs(self.across_mm(np.concatenate(ends))).max())

    @property
    def depth_mm(self) -> float:
        """Deepest place that is drawn [mm]."""
        return float(max(self.section.back_mm.max(), self.section.blank_back_mm.max(initial=0.0)))


class SectionDrawing:
    """A rectangle of a picture that shows a cut.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        _, bottom, _, top = box_px
        self.window = Window(picture, box_px, up_px=top - bottom - _HEAD_PX)
        axes, moving = self.window.axes, picture.moving
        ghost = {"facecolor": to_rgba(CUT_AWAY.colour, CUT_AWAY.opacity), "edgecolor": BLANK.colour}
        self.blank = moving(
            axes.add_patch(
                Polygon(NOWHERE, linestyle=BLANK.dashes, linewidth=BLANK.width_pt, zorder=1, **ghost)
            )
        )
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **GLASS.fill())))
        self.missing = [
            moving(axes.add_patch(Polygon(NOWHERE, zorder=3, hatch="////", **HATCHED))) for _ in range(2)
        ]
        self.front = moving(axes.plot([], [], zorder=4, **FRONT_SURFACE.line())[0])
        self.back = moving(axes.plot([], [], zorder=4, **BACK_SURFACE.line())[0])
        self.edges = moving(axes.plot([], [], zorder=3, **OUTLINE.line())[0])
        self.gauge = moving(
            axes.plot([], [], color=INK, linewidth=0.8, marker="_", markersize=7, zorder=5)[0]
        )
        words = {"fontsize": WORDS_PT, "color": INK, "ha": "center", "va": "center", "zorder": 6}
        self.at, self.start, self.end = (self.window.label(**words) for _ in range(3))

    def fits(self, cut: Cut) -> float:
        """Return the largest scale at which all of a cut can be drawn [shown px/mm].

        cut: what is to be drawn.
        """
        left, bottom, right, top = self.window.box_px
        across = ((right - left) / 2.0 - _MARGIN_PX) / cut.half_width_mm
        return min(across, (top - bottom - _HEAD_PX - _FOOT_PX) / cut.depth_mm)

    def update(self, cut: Cut) -> None:
        """Draw a cut at the window's scale.

        cut: what to draw.
        """
        section = cut.section
        across, blank_across = cut.across_mm(section.along_mm), cut.across_mm(section.blank_along_mm)
        self.front.set_data(across, -section.front_mm)
        self.back.set_data(across, -section.back_mm)
        self.glass.set_xy(_ring(across, section.front_mm, section.back_mm))
        self.blank.set_xy(_ring(blank_across, section.blank_front_mm, section.blank_back_mm))
        self._hatch(cut, across)
        x0, x1 = across[0], across[-1]
        self.edges.set_data(
            [x0, x0, np.nan, x1, x1],
            [-section.front_mm[0], -section.back_mm[0], np.nan, -section.front_mm[-1], -section.back_mm[-1]],
        )
        self._write(cut)

    def _hatch(self, cut: Cut, across: np.ndarray) -> None:
        """Hatch what the blank does not reach at either end."""
        section = cut.section
        low, high = section.blank_along_mm[[0, -1]] if section.blank_along_mm.size else (np.inf, np.inf)
        for patch, there in zip(
            self.missing, (section.along_mm <= low, section.along_mm >= high), strict=True
        ):
            patch.set_visible(bool(there.any()))
            patch.set_xy(_ring(across[there], section.front_mm[there], section.back_mm[there]))

    def _write(self, cut: Cut) -> None:
        section = cut.section
        front, back = (
            float(np.interp(cut.at_mm, section.along_mm, depth))
            for depth in (section.front_mm, section.back_mm)
        )
        at = float(cut.across_mm(np.array(cut.at_mm)))
        self.gauge.set_data([at, at], [-front, -back])
        space = {"inside": self.window.box_px, "taken": [], "drawn": self._drawn(cut)}
        x, y = self.window.px(at, -front)
        place(self.at, cut.at_words, [(x, y + _GAP_PX, 0, 1)], **space)
        for label, words, index in ((self.start, cut.start_words, 0), (self.end, cut.end_words, -1)):
            place(label, words, self._beside(cut, index), **space)

    def _beside(self, cut: Cut, index: int) -> list[Spot]:
        """Spots for the number of an edge: outside it above, below, or under it."""
        across = float(cut.across_mm(cut.section.along_mm[index]))
        x, front_y = self.window.px(across, -float(cut.section.front_mm[index]))
        _, back_y = self.window.px(across, -float(cut.section.back_mm[index]))
        side = 1 if across > 0 else -1
        return [
            (x, front_y + _GAP_PX, side, 1),
            (x - side * _GAP_PX, back_y - _GAP_PX, side, -1),
            (x, back_y - _GAP_PX, 0, -1),
        ]

    def _drawn(self, cut: Cut) -> list[Box]:
        """Boxes that together hold the lens, and the blank beyond its ends."""
        section = cut.section
        boxes = self._slices(cut, section.along_mm, section.front_mm, section.back_mm)
        along = section.blank_along_mm
        for there in (along < section.along_mm[0], along > section.along_mm[-1]):
            surfaces = (part[there] for part in (along, section.blank_front_mm, section.blank_back_mm))
            boxes += self._slices(cut, *surfaces)
        return boxes

    def _slices(self, cut: Cut, along: np.ndarray, front: np.ndarray, back: np.ndarray) -> list[Box]:
        across, found = cut.across_mm(along), []
        for start in range(0, across.size - 1, _SLICE):
            part = slice(start, start + _SLICE + 1)
            left, right = sorted((float(across[part][0]), float(across[part][-1])))
            low, high = -float(back[part].max()), -float(front[part].min())
            found.append((*self.window.px(left, low), *self.window.px(right, high)))
        return found


def _ring(across: np.ndarray, front: np.ndarray, back: np.ndarray) -> np.ndarray:
    """Return the closed line along the front and back again, as points of a polygon."""
    if not across.size:
        return NOWHERE
    return np.column_stack([np.append(across, across[::-1]), -np.append(front, back[::-1])])
