"""The margin on a scale by ratio, with its doubt: below 1 the lens turns by the estimate, above it holds."""

import math

from matplotlib.patches import Rectangle

from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import WORDS_PT
from lablib.pictures.palette import CUT_AWAY, DOUBT, INK, LEAST_MARGIN, QUIET_INK
from lablib.pictures.window import Box, add_axes, place, shown_px, write_still

LOW, HIGH = 0.2, 10.0
_TICKS = (0.2, 0.3, 0.5, 1, 2, 3, 5, 10)
# The bar's middle and half its height, and the line of the number above it, as shares of the band.
_BAR_AT, _HALF_BAR, _WORDS_AT = 0.3, 0.18, 0.76
_BESIDE_PX = 6.0


class MarginBand:
    """A rectangle of a picture that shows a margin and how far it may be off.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the band without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px = box_px
        self.axes = axes = add_axes(picture, box_px)
        axes.set_xscale("log")
        set_limits(axes, x=(LOW, HIGH), y=(0.0, 1.0))
        axes.set_xticks(_TICKS, [f"{tick:g}" for tick in _TICKS])
        axes.set_xticks([], minor=True)
        axes.set_yticks([])
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right", "left"]].set_visible(False)
        axes.axvspan(LOW, 1.0, hatch="////", facecolor="none", edgecolor="#dddddd", linewidth=0.0)
        axes.axvspan(1.0, HIGH, **CUT_AWAY.fill())
        axes.axvline(1.0, color=INK, linewidth=1.6)
        top = box_px[3] + 10.0
        for side, words in ((-1, "◀ turns"), (1, "holds ▶")):
            x, ha = self.x_px(1.0) + side * _BESIDE_PX, "left" if side > 0 else "right"
            write_still(picture, (x, top), words, fontsize=WORDS_PT, color=INK, ha=ha)
        self._add_moving(picture)

    def _add_moving(self, picture: KeptPicture) -> None:
        axes, moving = self.axes, picture.moving
        size = {"height": 2.0 * _HALF_BAR, "edgecolor": INK, "facecolor": DOUBT.colour, "linewidth": 0.8}
        self.doubt = moving(axes.add_patch(Rectangle((1.0, _BAR_AT - _HALF_BAR), 1.0, zorder=3, **size)))
        self.beyond = [
            moving(axes.plot([end], [_BAR_AT], zorder=4, color=INK, marker=mark)[0])
            for end, mark in ((LOW, "<"), (HIGH, ">"))
        ]
        self.estimate = moving(axes.plot([], [], zorder=5, **LEAST_MARGIN.point())[0])
        for mark in (*self.beyond, self.estimate):
            mark.set_clip_on(False)
        style = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 6}
        self.words, self.low_words, self.high_words = (
            picture.label(axes, transform=shown_px(picture), color=INK, **style) for _ in range(3)
        )

    def update(self, sheet: EyeSheet) -> None:
        """Draw the margin of a cut.

        sheet: the lens, worked; its cut is known.
        """
        margin, doubt = sheet.cut.margin, sheet.cut.bench.doubt
        low, high = margin / doubt, margin * doubt
        self.doubt.set_x(low)
        self.doubt.set_width(high - low)
        shown = min(max(margin, LOW), HIGH)
        self.estimate.set_data([shown], [_BAR_AT])
        self.beyond[0].set_visible(low < LOW)
        self.beyond[1].set_visible(high > HIGH)
        taken: list[Box] = []
        at = self._y_px(_WORDS_AT)
        place(self.words, f"{margin:.2f}", [(self.x_px(shown), at, 0, 0)], inside=self.box_px, taken=taken)
        for label, end, side in ((self.low_words, low, -1), (self.high_words, high, 1)):
            x = self.x_px(min(max(end, LOW), HIGH))
            spots = [(x, at, 0, 0), (x - side * 40.0, at, 0, 0), (x - side * 80.0, at, 0, 0)]
            place(label, f"{end:.2g}", spots, inside=self.box_px, taken=taken)

    def x_px(self, margin: float) -> float:
        """Return where a margin lies across the picture [shown px].

        margin: between the ends of the scale.
        """
        left, _, right, _ = self.box_px
        return left + math.log(margin / LOW) / math.log(HIGH / LOW) * (right - left)

    def _y_px(self, share: float) -> float:
        _, bottom, _, top = self.box_px
        return bottom + share * (top - bottom)
