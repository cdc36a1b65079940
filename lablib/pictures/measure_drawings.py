"""Three drawings of a lens measure on a surface: cut along its pins, from above, and seen along the pins."""

from dataclasses import dataclass

import numpy as np
from matplotlib.patches import Circle, Polygon

from lablib.optics.lens_measure import PinsOnSurface
from lablib.pictures.captions import WORDS_PT, moving_words, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import (
    CYLINDER_AXIS,
    FRONT_SURFACE,
    GLASS,
    INK,
    MIDLINE,
    OKABE_ITO,
    QUIET_INK,
    Look,
)
from lablib.pictures.window import Box, Window, place

PLUNGER = Look(colour=OKABE_ITO["vermilion"], dashes="solid", mark="o", width_pt=2.6)
PINS = Look(colour=INK, dashes="solid", mark="o", width_pt=2.6)
_CUT_PX_PER_MM, _ABOVE_PX_PER_MM, _END_PX_PER_MM = 8.6, 2.4, 17.0
# Where the vertex lies in the cut and in the view along the pins, from the lower rim.
_CUT_UP_PX, _END_UP_PX = 86.0, 36.0
_STEM_MM, _BODY_MM, _LENS_MM = 7.0, 3.3, 28.0
_GAP_MM, _BESIDE_PX = 0.8, 5.0
_WORDS = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 9}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Held:
    """A lens measure as it is held on a surface.

    pins: held square, in the plane of the pins.
    across_mm: shape (N,), places across the plane of the pins [mm].
    vertex_height_mm, pin_height_mm: shape (N,), the surface there under the plunger and under the outer pins,
        from the vertex towards the instrument [mm].
    along_deg: direction of the pins [degrees]; lean_deg: how far it leans sideways [degrees].
    sagitta_mm, reading_d: as it is held [mm], [D].
    power_d: power of the surface along the pins, in its own index [D].
    flat_deg: direction of the flatter meridian of a toric surface [degrees]; None for a sphere.
    """

    pins: PinsOnSurface
    across_mm: np.ndarray
    vertex_height_mm: np.ndarray
    pin_height_mm: np.ndarray
    along_deg: float
    lean_deg: float
    sagitta_mm: float
    reading_d: float
    power_d: float
    flat_deg: float | None


class CutDrawing:
    """The surface and the three pins, cut along the pins, with the measure held square.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px, px_per_mm=_CUT_PX_PER_MM, up_px=_CUT_UP_PX)
        axes, moving = self.window.axes, picture.moving
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, **GLASS.fill())))
        self.surface = moving(axes.plot([], [], zorder=3, **FRONT_SURFACE.line())[0])
        self.outer = moving(axes.plot([], [], zorder=4, **PINS.line())[0])
        self.plunger = moving(axes.plot([], [], zorder=4, **PLUNGER.line())[0])
        self.level = moving(axes.plot([], [], zorder=2, **MIDLINE.line())[0])
        self.words = self.window.label(**_WORDS)

    def update(self, data: Held) -> None:
        """Draw the measure, held square.

        data: what was computed.
        """
        pins = data.pins
        self.surface.set_data(pins.profile_along_mm, pins.profile_height_mm)
        self.glass.set_xy(_body(pins.profile_along_mm, pins.profile_height_mm, -_CUT_UP_PX / _CUT_PX_PER_MM))
        left, middle, right = zip(pins.pin_along_mm, pins.pin_height_mm, strict=True)
        top = max(left[1], middle[1]) + _STEM_MM
        self.outer.set_data([left[0], left[0], right[0], right[0]], [left[1], top, top, right[1]])
        self.plunger.set_data([middle[0], middle[0]], [middle[1], top - _GAP_MM])
        self.level.set_data([left[0], right[0]], [left[1], right[1]])
        x, y = self.window.px(0.0, top)
        sagitta = f"{round(pins.sagitta_mm, 2) + 0.0:+.2f}" if abs(pins.sagitta_mm) >= 0.005 else "0.00"
        words = f"sagitta {sagitta} mm, pins {right[0]:g} mm to either side"
        place(self.words, words, [(x, y + _BESIDE_PX, 0, 1)], inside=self.window.box_px, taken=[])


class AboveDrawing:
    """A round lens from above, the observer facing the wearer, and where the pins stand on it.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px, px_per_mm=_ABOVE_PX_PER_MM)
        axes, moving = self.window.axes, picture.moving
        axes.add_patch(Circle((0.0, 0.0), _LENS_MM, zorder=1, **GLASS.fill()))
        axes.add_patch(Circle((0.0, 0.0), _LENS_MM, fill=False, edgecolor=QUIET_INK, zorder=2))
        self.flat = moving(axes.plot([], [], zorder=3, **CYLINDER_AXIS.line())[0])
        dots = {"marker": PINS.mark, "markersize": 6, "linewidth": 1.2}
        self.pins = moving(axes.plot([], [], color=PINS.colour, zorder=4, **dots)[0])
        self.tip = moving(axes.plot([0.0], [0.0], color=PLUNGER.colour, zorder=5, **dots)[0])
        left, bottom, _, top = box_px
        self.direction = moving_words(picture, axes, (left + 4.0, top - 8.0), color=INK)
        self.flat_words = moving_words(picture, axes, (left + 32.0, bottom + 8.0), color=QUIET_INK)
        sample = self.window.mm(left + 4.0, bottom + 8.0), self.window.mm(left + 28.0, bottom + 8.0)
        self.flat_key = moving(axes.plot(*zip(*sample, strict=True), **CYLINDER_AXIS.line())[0])

    def update(self, data: Held) -> None:
        """Draw where the pins stand, and the flatter meridian of a toric surface.

        data: what was computed.
        """
        turn, along = np.radians(data.along_deg), data.pins.pin_along_mm
        self.pins.set_data(along * np.cos(turn), along * np.sin(turn))
        self.direction.set_text(f"pins on {data.along_deg:g}")
        is_toric = data.flat_deg is not None
        for artist in (self.flat, self.flat_words, self.flat_key):
            artist.set_visible(is_toric)
        if is_toric:
            flat, ends = np.radians(data.flat_deg), np.array([-_LENS_MM, _LENS_MM])
            self.flat.set_data(ends * np.cos(flat), ends * np.sin(flat))
            self.flat_words.set_text(f"flatter meridian on {data.flat_deg:g}")


class EndDrawing:
    """The measure and the surface, seen along the pins: whether it is held square.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px, px_per_mm=_END_PX_PER_MM, up_px=_END_UP_PX)
        axes, moving = self.window.axes, picture.moving
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, **GLASS.fill())))
        self.near = moving(axes.plot([], [], zorder=3, **FRONT_SURFACE.line())[0])
        self.middle = moving(axes.plot([], [], color=QUIET_INK, linewidth=1.0, zorder=2)[0])
        self.upright = moving(axes.plot([], [], zorder=2, **MIDLINE.line())[0])
        self.body = moving(axes.plot([], [], zorder=4, **PINS.line())[0])
        tip = {"marker": PLUNGER.mark, "markevery": [1], "linewidth": 1.4}
        self.tip = moving(axes.plot([], [], color=PLUNGER.colour, zorder=5, **tip)[0])
        words_y = box_px[3] - 7.0
        self.words = moving_words(picture, axes, (box_px[0] + 4.0, words_y), color=INK)
        write_still(picture, (box_px[2], words_y), "blue: pins, grey: plunger", ha="right", color=QUIET_INK)

    def update(self, data: Held) -> None:
        """Draw the measure as it is held.

        data: what was computed.
        """
        self.near.set_data(data.across_mm, data.pin_height_mm)
        self.middle.set_data(data.across_mm, data.vertex_height_mm)
        self.glass.set_xy(_body(data.across_mm, data.pin_height_mm, -_END_UP_PX / _END_PX_PER_MM))
        foot, lean = float(data.pins.pin_height_mm[0]), np.radians(data.lean_deg)
        self.upright.set_data([0.0, 0.0], [foot, foot + _BODY_MM])
        self.body.set_data([0.0, _BODY_MM * np.sin(lean)], [foot, foot + _BODY_MM * np.cos(lean)])
        tip = data.sagitta_mm * np.sin(lean), foot + data.sagitta_mm * np.cos(lean)
        self.tip.set_data([0.0, tip[0]], [foot, tip[1]])
        self.words.set_text(f"leans {abs(data.lean_deg):g}°" if data.lean_deg else "square")


def _body(along: np.ndarray, height: np.ndarray, low: float) -> np.ndarray:
    """The lens below a surface, down to the rim of the drawing, as points of a polygon."""
    return np.column_stack([[along[0], *along, along[-1]], [low, *height, low]])
