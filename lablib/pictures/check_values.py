"""Order, check value and reading in three columns, and beside each row how far they lie apart."""

import numpy as np
from matplotlib.patches import Rectangle

from lablib.pictures.captions import HEADING_PT, add_key, moving_words, write_still
from lablib.pictures.check_values_data import CheckRow, CheckView
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import add_axes

ORDER = Look(colour=OKABE_ITO["reddish purple"], mark="D", hollow=True)
CHECK_VALUE = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=2.2)
READING = Look(colour=OKABE_ITO["vermilion"], mark="^")
ALLOWED = Look(colour=OKABE_ITO["sky blue"], opacity=0.45)
# How far each line reaches to either side of the check value.
REACHES = {"D": 1.0, "degrees": 20.0}
_NAMES, _COLUMNS_PX = ("sphere", "cylinder", "axis"), (128.0, 228.0, 326.0)
_LINE_PX, _ROW_TOP_PX, _ROW_PX = (378.0, 610.0), 208.0, 56.0
_HEADS = ("ordered", "check value", "reading")


class CheckValuesPicture(KeptPicture):
    """Three rows: sphere, cylinder, axis."""

    width_px = 720
    height_px = 254

    def build(self) -> None:
        """Add heads, rows and the key."""
        self.rows = [_Row(self, name, _ROW_TOP_PX - _ROW_PX * at) for at, name in enumerate(_NAMES)]
        for x, words in zip(_COLUMNS_PX, _HEADS, strict=True):
            write_still(self, (x, 236), words, size=HEADING_PT, ha="center")
        write_still(self, (sum(_LINE_PX) / 2.0, 236), "off the check value", size=HEADING_PT, ha="center")
        add_key(self, _KEY)
        axes = add_axes(self, (_BAND_PX, 13.0, _BAND_PX + 24.0, 27.0))
        axes.set_axis_off()
        axes.add_patch(Rectangle((0, 0), 1, 1, **ALLOWED.fill()))
        write_still(self, (_BAND_PX + 28.0, 20), "what is allowed", color=QUIET_INK)

    def update(self, data: CheckView) -> None:
        """Draw an inspected lens.

        data: what to draw.
        """
        for at, row in enumerate(self.rows):
            row.update(data.rows[at] if at < len(data.rows) else None)


class _Row:
    """A quantity: three figures, a line with band and marks, and a verdict."""

    def __init__(self, picture: CheckValuesPicture, name: str, y_px: float) -> None:
        left, right = _LINE_PX
        self.axes = add_axes(picture, (left, y_px - 20.0, right, y_px + 20.0))
        self.axes.set_axis_off()
        set_limits(self.axes, x=(-1.0, 1.0), y=(-1.0, 1.0))
        write_still(picture, (10, y_px), name, size=HEADING_PT)
        moving, axes = picture.moving, self.axes
        self.band = moving(axes.add_patch(Rectangle((0, -0.55), 0.0, 1.1, zorder=1, **ALLOWED.fill())))
        self.base = moving(axes.plot([-1.0, 1.0], [0.0, 0.0], color=QUIET_INK, linewidth=1.0, zorder=2)[0])
        self.centre = moving(axes.plot([0.0, 0.0], [-0.7, 0.7], zorder=3, **CHECK_VALUE.line())[0])
        self.order, self.reading = (
            moving(axes.plot([], [], zorder=depth, clip_on=False, **look.point())[0])
            for depth, look in ((5, ORDER), (6, READING))
        )
        self.order.set_markersize(12)
        self.figures = [
            moving_words(picture, axes, (x, y_px), ha="center", color=INK, size=HEADING_PT)
            for x in _COLUMNS_PX
        ]
        self.ends = [
            moving_words(picture, axes, (x, y_px - 24.0), ha="center", color=QUIET_INK) for x in _LINE_PX
        ]
        self.verdict = moving_words(picture, axes, (right + 34.0, y_px), color=INK, size=HEADING_PT)

    def update(self, row: CheckRow | None) -> None:
        """Draw a quantity, or nothing where the lens has none."""
        for artist in (self.band, self.base, self.centre, self.order, self.reading):
            artist.set_visible(row is not None)
        for label, words in zip(self.figures, row.columns if row else ("–",) * 3, strict=True):
            label.set_text(words)
        self.verdict.set_text(_verdict(row))
        if row is None:
            for end in self.ends:
                end.set_text("")
            return
        reach = REACHES[row.unit]
        for end, words in zip(self.ends, (f"-{reach:g} or less", f"+{reach:g} or more"), strict=True):
            end.set_text(words)
        allowed = reach if row.limit is None else row.limit
        self.band.set_bounds(-allowed / reach, -0.55, 2.0 * allowed / reach, 1.1)
        for mark, off in ((self.order, row.order_off), (self.reading, row.read_off)):
            mark.set_data([float(np.clip(off / reach, -1.0, 1.0))], [0.0])


def _verdict(row: CheckRow | None) -> str:
    if row is None:
        return ""
    return "passes" if row.passes else "fails"


_BAND_PX = 470.0
_KEY = (
    (60, 20, ORDER, "ordered"),
    (176, 20, CHECK_VALUE, "check value"),
    (318, 20, READING, "reading"),
)
