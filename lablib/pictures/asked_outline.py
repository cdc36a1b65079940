"""A lens from the front as the drawings of questions show it: outline, optical centre, boxed centre."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.errors import LabError, require_finite
from lablib.pictures.asked_base import BAR_PX, KEY_Y_PX
from lablib.pictures.captions import ScaleBar, add_key
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BOXED_CENTRE, GLASS, MIDLINE, OPTICAL_CENTRE, OUTLINE
from lablib.pictures.window import Box, Window

_FEWEST = 8
_HALF_MARK_PX = 7.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FrontCase:
    """One lens from the front, as an observer facing the wearer sees it.

    outline_x_mm, outline_y_mm: points round the outline, from the boxed centre, shape (N,) [mm].
    centre_x_mm, centre_y_mm: optical centre, from the boxed centre [mm].

    Raises LabError for rows of different length, too few points, or what is not a finite number.
    """

    outline_x_mm: np.ndarray
    outline_y_mm: np.ndarray
    centre_x_mm: float
    centre_y_mm: float
    outline: np.ndarray = field(init=False)
    centre: complex = field(init=False)

    def __post_init__(self) -> None:
        x, y = (np.asarray(row, dtype=float) for row in (self.outline_x_mm, self.outline_y_mm))
        if x.ndim != 1 or x.shape != y.shape or x.size < _FEWEST:
            raise LabError(
                f"outline of a drawing has rows of shape {x.shape} and {y.shape}: "
                f"give two rows of one length, {_FEWEST} points or more"
            )
        if not np.all(np.isfinite([x, y])):
            raise LabError("outline of a drawing holds a number that is not finite: give millimetres")
        centre = [require_finite(name, getattr(self, name)) for name in ("centre_x_mm", "centre_y_mm")]
        object.__setattr__(self, "outline", x + 1j * y)
        object.__setattr__(self, "centre", complex(*centre))


class FrontLens:
    """The lens in its window, with the key below it.

    window: where it is drawn.
    """

    def __init__(self, window: Window) -> None:
        axes, picture = window.axes, window.picture
        self.window = window
        style = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.glass = picture.moving(
            axes.add_patch(Polygon(NOWHERE, zorder=2, linewidth=OUTLINE.width_pt, **style))
        )
        self.midline = picture.moving(axes.plot([], [], zorder=3, **MIDLINE.line())[0])
        self.boxed_centre = picture.moving(axes.plot([], [], zorder=5, **BOXED_CENTRE.point())[0])
        self.boxed_centre.set_markersize(6)
        self.optical_centre = picture.moving(axes.plot([], [], zorder=6, **OPTICAL_CENTRE.point())[0])
        self.optical_centre.set_markersize(11)
        self.scale = ScaleBar(window, *BAR_PX)
        add_key(picture, [(0.0, KEY_Y_PX, OPTICAL_CENTRE, "optical centre")])
        add_key(picture, [(124.0, KEY_Y_PX, BOXED_CENTRE, "boxed centre")])

    def show(self, case: FrontCase, zero: complex) -> list[Box]:
        """Draw the lens at the window's scale, and return the boxes of both centres [shown px].

        case: the lens; zero: which point of it lies in the middle of the window [mm].
        """
        line = case.outline - zero
        self.glass.set_xy(np.column_stack([line.real, line.imag]))
        self.midline.set_data([line.real.min(), line.real.max()], [-zero.imag, -zero.imag])
        found = []
        for mark, point in ((self.boxed_centre, -zero), (self.optical_centre, case.centre - zero)):
            mark.set_data([point.real], [point.imag])
            x, y = self.window.px(point.real, point.imag)
            found.append((x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX))
        self.scale.update()
        return found
