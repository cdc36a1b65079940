"""A cut through a lens, front surface up: the glass, the blank it came from, and its thicknesses."""

from dataclasses import dataclass

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.optics.section import Section
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import BACK_SURFACE, BLANK, CUT_AWAY, FRONT_SURFACE, GLASS, INK, OUTLINE
from lablib.pictures.window import Box, Window, place

WORDS_PT, HEADING_PT = 9.0, 9.5
# Above the front vertex there is room for one number; below the deepest edge for one more.
_HEAD_PX, _FOOT_PX = 24.0, 20.0
_MARGIN_PX = 4.0
NOWHERE = np.zeros((1, 2))


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
        left, bottom, right, top = box_px
        self.window = Window(
            picture,
            left_px=left,
            bottom_px=bottom,
            width_px=right - left,
            height_px=top - bottom,
            origin_x_px=(right - left) / 2.0,
            origin_y_px=top - bottom - _HEAD_PX,
        )
        axes, moving = self.window.axes, picture.moving
        ghost = {"facecolor": to_rgba(CUT_AWAY.colour, CUT_AWAY.opacity), "edgecolor": BLANK.colour}
        self.blank = moving(
            axes.add_patch(
                Polygon(NOWHERE, linestyle=BLANK.dashes, linewidth=BLANK.width_pt, zorder=1, **ghost)
            )
        )
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **GLASS.fill())))
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
        x0, x1 = across[0], across[-1]
        self.edges.set_data(
            [x0, x0, np.nan, x1, x1],
            [-section.front_mm[0], -section.back_mm[0], np.nan, -section.front_mm[-1], -section.back_mm[-1]],
        )
        self._write(cut)

    def _write(self, cut: Cut) -> None:
        section, taken = cut.section, []
        front, back = (
            float(np.interp(cut.at_mm, section.along_mm, depth))
            for depth in (section.front_mm, section.back_mm)
        )
        at = float(cut.across_mm(np.array(cut.at_mm)))
        self.gauge.set_data([at, at], [-front, -back])
        x, y = self.window.px(at, -front)
        place(self.at, cut.at_words, [(x, y + 11)], inside=self.window.box_px, taken=taken)
        for label, words, index in ((self.start, cut.start_words, 0), (self.end, cut.end_words, -1)):
            place_at = float(cut.across_mm(section.along_mm[index]))
            x, y = self.window.px(place_at, -section.back_mm[index])
            outward = 18 if place_at > 0 else -18
            place(label, words, [(x + outward, y - 10)], inside=self.window.box_px, taken=taken)


def _ring(across: np.ndarray, front: np.ndarray, back: np.ndarray) -> np.ndarray:
    """Return the closed line along the front and back again, as points of a polygon."""
    if not across.size:
        return NOWHERE
    return np.column_stack([np.append(across, across[::-1]), -np.append(front, back[::-1])])
