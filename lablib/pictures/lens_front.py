"""A lens from the front: outline, blank, centres, cuts, and its edge drawn round it to scale."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.kept import KeptPicture
from lablib.pictures.label import Label
from lablib.pictures.lens_section import HATCHED, NOWHERE
from lablib.pictures.palette import (
    BLANK,
    BOXED_CENTRE,
    CUT_AWAY,
    CUTTING_LINE,
    CYLINDER_AXIS,
    EDGE,
    GLASS,
    GREATEST,
    INK,
    LEAST,
    MIDLINE,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
    TOO_SMALL,
)
from lablib.pictures.window import Box, Window, place

# Every third of 720 points is as smooth to the eye and three times as fast.
_EVERY = 3
# A mark stands so far off the band, is so large, and its number stands so far off it.
_MARK_PX, _HALF_MARK_PX, _BESIDE_PX = 9.0, 6.0, 9.0
_MARGIN_PX = 4.0
_CIRCLE = np.exp(2j * np.pi * np.arange(121) / 120)
_FAR_MM = 100.0


class FrontDrawing:
    """A rectangle of a picture that shows a lens as an observer facing the wearer sees it.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px)
        self._add_areas(picture)
        self._add_lines(picture)
        words = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 9}
        self.greatest_words, self.least_words = (self.window.label(color=INK, **words) for _ in range(2))

    def _add_areas(self, picture: KeptPicture) -> None:
        axes, moving = self.window.axes, picture.moving
        self.ghost = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, **CUT_AWAY.fill())))
        self.band = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **EDGE.fill())))
        self.glass = moving(
            axes.add_patch(
                Polygon(
                    NOWHERE,
                    zorder=3,
                    facecolor=to_rgba(GLASS.colour, GLASS.opacity),
                    edgecolor=OUTLINE.colour,
                    linewidth=OUTLINE.width_pt,
                )
            )
        )
        self.missing = moving(axes.add_patch(Polygon(NOWHERE, zorder=4, hatch="////", **HATCHED)))

    def _add_lines(self, picture: KeptPicture) -> None:
        axes, moving = self.window.axes, picture.moving
        self.midline = moving(axes.plot([-_FAR_MM, _FAR_MM], [0.0, 0.0], zorder=4, **MIDLINE.line())[0])
        self.box = moving(axes.plot([], [], color=QUIET_INK, linewidth=0.6, zorder=4)[0])
        self.rim = moving(axes.plot([], [], zorder=5, **BLANK.line())[0])
        self.cut = moving(axes.plot([], [], zorder=5, **CUTTING_LINE.line())[0])
        self.axis = moving(axes.plot([], [], zorder=5, **CYLINDER_AXIS.line())[0])
        self.axis.set_clip_path(self.glass)
        self.boxed_centre = moving(axes.plot([0.0], [0.0], zorder=6, **BOXED_CENTRE.point())[0])
        self.boxed_centre.set_markersize(6)
        self.optical_centre = moving(axes.plot([], [], zorder=7, **OPTICAL_CENTRE.point())[0])
        self.optical_centre.set_markersize(11)
        self.greatest = moving(axes.plot([], [], zorder=8, **GREATEST.point())[0])
        self.least = moving(axes.plot([], [], zorder=8, **LEAST.point())[0])

    def fits(self, sheet: EyeSheet) -> float:
        """Return the largest scale at which all of a lens and its blank can be drawn [shown px/mm].

        sheet: the lens.
        """
        left, bottom, right, top = self.window.box_px
        x, y = banded(sheet)
        radius = sheet.order.lens.blank_diameter_mm / 2.0
        half_x = max(float(np.abs(x).max()), abs(sheet.centre_x_mm) + radius)
        half_y = max(float(np.abs(y).max()), abs(sheet.up_mm) + radius)
        return min(
            ((right - left) / 2.0 - _MARGIN_PX) / half_x,
            ((top - bottom) / 2.0 - _MARGIN_PX) / half_y,
        )

    def update(self, sheet: EyeSheet) -> None:
        """Draw a lens at the window's scale.

        sheet: the lens.
        """
        self._update_areas(sheet)
        self._update_lines(sheet)
        self._write(sheet)

    def _update_areas(self, sheet: EyeSheet) -> None:
        x, y = (part[::_EVERY] for part in (sheet.outline.x_mm, sheet.outline.y_mm))
        outer_x, outer_y = (part[::_EVERY] for part in banded(sheet))
        self.glass.set_xy(np.column_stack([x, y]))
        self.band.set_xy(_between(x, y, outer_x, outer_y))
        radius = sheet.order.lens.blank_diameter_mm / 2.0
        rim = radius * _CIRCLE + complex(sheet.centre_x_mm, sheet.up_mm)
        self.ghost.set_xy(np.column_stack([rim.real, rim.imag]))
        self.rim.set_data(rim.real, rim.imag)
        self.rim.set(**(BLANK if sheet.blank_covers else TOO_SMALL).line())
        self.missing.set_visible(not sheet.blank_covers)
        if not sheet.blank_covers:
            self.missing.set_xy(_between(x, y, *_covered(sheet, x, y)))

    def _update_lines(self, sheet: EyeSheet) -> None:
        half_a, half_b = sheet.frame.a_mm / 2.0, sheet.frame.b_mm / 2.0
        self.box.set_data(
            [-half_a, half_a, half_a, -half_a, -half_a], [-half_b, -half_b, half_b, half_b, -half_b]
        )
        centre = complex(sheet.centre_x_mm, sheet.up_mm)
        ends = sheet.thickest_section.along_mm[[0, -1]]
        line = centre + ends * np.exp(1j * np.radians(sheet.thickest_meridian_deg))
        self.cut.set_data(line.real, line.imag)
        self.optical_centre.set_data([centre.real], [centre.imag])
        axis_deg = sheet.order.prescription.axis_deg
        self.axis.set_visible(axis_deg is not None)
        if axis_deg is not None:
            line = centre + np.array([-_FAR_MM, _FAR_MM]) * np.exp(1j * np.radians(axis_deg))
            self.axis.set_data(line.real, line.imag)

    def _write(self, sheet: EyeSheet) -> None:
        taken: list[Box] = []
        self._mark(sheet, sheet.greatest_at, self.greatest, self.greatest_words, taken)
        self._mark(sheet, sheet.least_at, self.least, self.least_words, taken)

    def _mark(self, sheet: EyeSheet, at: int, mark: Line2D, label: Label, taken: list[Box]) -> None:
        """Put a mark beside the band, and its number beyond or, where that is taken, within."""
        out_x, out_y = (float(part[at]) for part in outward(sheet))
        x_mm, y_mm = (float(part[at]) for part in banded(sheet))
        mark_mm = _MARK_PX / self.window.px_per_mm
        mark.set_data([x_mm + out_x * mark_mm], [y_mm + out_y * mark_mm])
        x, y = self.window.px(x_mm + out_x * mark_mm, y_mm + out_y * mark_mm)
        taken.append((x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX))
        spots = [
            (x + side_x * _BESIDE_PX, y + side_y * _BESIDE_PX, side_x, side_y)
            for side_x, side_y in ((out_x, out_y), (out_y, -out_x), (-out_y, out_x), (-out_x, -out_y))
        ]
        words = f"{sheet.finished.edge_mm[at]:.2f}"
        place(label, words, spots, inside=self.window.box_px, taken=taken)


def outward(sheet: EyeSheet) -> tuple[np.ndarray, np.ndarray]:
    """Return the direction square to the outline at every point, as two arrays of shape (N,).

    sheet: the lens.
    """
    line = sheet.outline.x_mm + 1j * sheet.outline.y_mm
    along = np.roll(line, -1) - np.roll(line, 1)
    normal = -1j * along / np.abs(along)
    return normal.real, normal.imag


def banded(sheet: EyeSheet) -> tuple[np.ndarray, np.ndarray]:
    """Return the outline moved outward by the edge thickness, as two arrays of shape (N,) [mm].

    sheet: the lens.
    """
    x, y = outward(sheet)
    return sheet.outline.x_mm + x * sheet.finished.edge_mm, sheet.outline.y_mm + y * sheet.finished.edge_mm


def _covered(sheet: EyeSheet, x: np.ndarray, y: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Pull the outline in to what the blank covers."""
    beyond = np.maximum(sheet.beyond_blank_mm[::_EVERY], 0.0)
    dx, dy = x - sheet.centre_x_mm, y - sheet.up_mm
    distance = np.hypot(dx, dy)
    return x - dx / distance * beyond, y - dy / distance * beyond


def _between(x: np.ndarray, y: np.ndarray, other_x: np.ndarray, other_y: np.ndarray) -> np.ndarray:
    """Return the points of a polygon that fills the space between two closed lines."""
    there = np.column_stack([np.append(x, x[0]), np.append(y, y[0])])
    back = np.column_stack([np.append(other_x, other_x[0]), np.append(other_y, other_y[0])])
    return np.concatenate([there, back[::-1]])
