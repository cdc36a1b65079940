"""Block, pad, lens and back tip in a level cut through the chuck axis, drawn true."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.pictures.block_on_lens_data import BlockOnLens, SideView
from lablib.pictures.grip_section import PAD, TIP
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BACK_SURFACE, BLOCK, FRONT_SURFACE, GLASS, INK, PAPER, TOO_SMALL
from lablib.pictures.window import Box, Window

_PX_PER_MM = 21.0
# The front at the chuck axis stands so high in the drawing [shown px from its lower edge].
_FRONT_PX = 176.0
_BLOCK_MM, _TIP_MM = 2.2, 2.2
LIFTED = {"facecolor": PAPER, "edgecolor": TOO_SMALL.colour, "linewidth": 0.8, "hatch": "////"}


class BlockSide:
    """A rectangle of a picture that shows what presses on the lens, front up.

    picture: the picture it is part of; box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px, up_px=_FRONT_PX, px_per_mm=_PX_PER_MM)
        self.glass = self._area(1, {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "linewidth": 0.0})
        self.block = self._area(3, {"facecolor": to_rgba(BLOCK.colour, BLOCK.opacity), "edgecolor": INK})
        self.pad = self._area(3, {"facecolor": to_rgba(PAD.colour, PAD.opacity), "edgecolor": INK})
        self.tip = self._area(3, {"facecolor": to_rgba(TIP.colour, TIP.opacity), "edgecolor": INK})
        self.block_air, self.tip_air = (self._area(4, LIFTED) for _ in range(2))
        axes, moving = self.window.axes, picture.moving
        self.front, self.back = (
            moving(axes.plot([], [], zorder=5, **look.line())[0]) for look in (FRONT_SURFACE, BACK_SURFACE)
        )
        axis = {"color": INK, "linewidth": 0.7, "linestyle": (0, (8, 3, 1.5, 3))}
        axes.plot([0.0, 0.0], [-8.0, 5.5], zorder=2, **axis)

    def _area(self, depth: int, style: dict[str, object]) -> Polygon:
        return self.window.picture.moving(self.window.axes.add_patch(Polygon(NOWHERE, zorder=depth, **style)))

    def update(self, data: BlockOnLens) -> None:
        """Draw a lens between block and tip.

        data: what to draw.
        """
        view = data.view
        x = view.along_mm
        self.glass.set_xy(_band(x, view.front_mm, view.back_mm))
        self.front.set_data(x, view.front_mm)
        self.back.set_data(x, view.back_mm)
        self._draw_block(view)
        self._draw_tip(view)

    def _draw_block(self, view: SideView) -> None:
        on = np.abs(view.along_mm) <= view.block_half_mm
        x, front, off = view.along_mm[on], view.front_mm[on], view.block_off_mm[on]
        face, lower = front + off + view.pad_mm, front + np.maximum(off, 0.0)
        self.pad.set_xy(_band(x, face, lower))
        self.block.set_xy(_band(x, np.full_like(x, face.max() + _BLOCK_MM), face))
        self._lift(self.block_air, x, lower, front)

    def _draw_tip(self, view: SideView) -> None:
        on = np.abs(view.along_mm) <= view.tip_half_mm
        x, back, off = view.along_mm[on], view.back_mm[on], view.tip_off_mm[on]
        upper = back - np.maximum(off, 0.0)
        self.tip.set_xy(_band(x, upper, np.full_like(x, upper.min() - _TIP_MM)))
        self._lift(self.tip_air, x, back, upper)

    def _lift(self, area: Polygon, x: np.ndarray, upper: np.ndarray, lower: np.ndarray) -> None:
        area.set_xy(_band(x, upper, lower))
        area.set_visible(bool(np.any(upper > lower)))


def _band(x: np.ndarray, upper: np.ndarray, lower: np.ndarray) -> np.ndarray:
    return np.column_stack([np.concatenate([x, x[::-1]]), np.concatenate([upper, lower[::-1]])])
