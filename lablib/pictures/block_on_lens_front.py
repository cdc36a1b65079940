"""A lens from the front with the block on it: where the block stands, and how much room it has."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon

from lablib.bench.geometry import angles_rad
from lablib.pictures.block_on_lens_data import BlockOnLens
from lablib.pictures.captions import KEY_WORDS_PX, moving_words
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import (
    BLOCK,
    BOXED_CENTRE,
    CHUCK_AXIS,
    GLASS,
    INK,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
    TOO_SMALL,
    Look,
)
from lablib.pictures.window import Box, Window, shown_px

# Every lens is drawn at one scale, so that a shallow one looks shallow.
_PX_PER_MM = 4.4
_EVERY = 3
# Distances that differ by less are equal.
_TIE_DECIMALS = 6
NEAREST = Look(colour=TOO_SMALL.colour, dashes="solid", width_pt=2.4)


class BlockFront:
    """A rectangle of a picture that shows block and outline as an observer facing the wearer sees them.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px].
    room_px: where the words of the room begin, clear of every lens [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box, room_px: tuple[float, float]) -> None:
        self.window = Window(picture, box_px, px_per_mm=_PX_PER_MM)
        axes, moving = self.window.axes, picture.moving
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        block = {"facecolor": to_rgba(BLOCK.colour, BLOCK.opacity), "edgecolor": BLOCK.colour}
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, linewidth=OUTLINE.width_pt, **glass)))
        self.block = moving(axes.add_patch(Polygon(NOWHERE, zorder=3, linewidth=BLOCK.width_pt, **block)))
        self.box = moving(axes.plot([], [], zorder=2, color=QUIET_INK, linewidth=0.7)[0])
        self.out = moving(axes.plot([], [], zorder=4, **TOO_SMALL.line())[0])
        self.room = moving(axes.plot([], [], zorder=6, **NEAREST.line())[0])
        self.boxed, self.centre, self.chuck = (
            moving(axes.plot([], [], zorder=depth, **look.point() | {"markersize": size})[0])
            for depth, look, size in ((7, BOXED_CENTRE, 10), (8, OPTICAL_CENTRE, 11), (9, CHUCK_AXIS, 9))
        )
        self.chuck.set_markerfacecolor("none")
        x, y = room_px
        sign = Line2D([x, x + 24.0], [y, y], transform=shown_px(picture), **NEAREST.line())
        picture.figure.add_artist(sign)
        self.room_words = moving_words(picture, axes, (x + KEY_WORDS_PX, y), color=INK)

    def update(self, data: BlockOnLens) -> None:
        """Draw a lens on its block.

        data: what to draw.
        """
        sheet, cut = data.sheet, data.sheet.cut
        centre = complex(sheet.centre_x_mm, sheet.up_mm)
        chuck = centre - complex(cut.lens.blank_x_mm, cut.lens.blank_y_mm)
        angle = angles_rad(cut.lens.outline_mm.size)
        way = np.exp(1j * angle)
        reach = cut.holding.contact.reach_mm(angle)
        rim, block = chuck + cut.lens.outline_mm * way, chuck + reach * way
        self.glass.set_xy(_xy(rim[::_EVERY]))
        self.block.set_xy(_xy(block[::_EVERY]))
        half = complex(sheet.frame.a_mm, sheet.frame.b_mm) / 2.0
        box = np.array([-half, half.conjugate(), half, -half.conjugate(), -half])
        self.box.set_data(box.real, box.imag)
        for mark, at in ((self.boxed, 0j), (self.centre, centre), (self.chuck, chuck)):
            mark.set_data([at.real], [at.imag])
        self._draw_room(data, rim, block)

    def _draw_room(self, data: BlockOnLens, rim: np.ndarray, block: np.ndarray) -> None:
        cut = data.sheet.cut
        apart = cut.lens.outline_mm - cut.holding.contact.reach_mm(angles_rad(rim.size))
        shown = np.where(apart < 0.0, block, complex(np.nan, np.nan))
        self.out.set_data(shown.real, shown.imag)
        at = int(np.argmin(np.round(apart, _TIE_DECIMALS)))
        self.room.set_data([block[at].real, rim[at].real], [block[at].imag, rim[at].imag])
        room = cut.block_clearance_mm
        self.room_words.set_text(f"{room:.1f} mm of room" if room > 0.0 else f"stands out {-room:.1f} mm")


def _xy(line: np.ndarray) -> np.ndarray:
    return np.column_stack([line.real, line.imag])
