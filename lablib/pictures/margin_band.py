"""The margin on a scale by ratio, with its doubt: below 1 the lens turns by the estimate, above it holds."""

import math

from matplotlib.lines import Line2D
from matplotlib.patches import Rectangle

from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.captions import WORDS_PT, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.label import Label
from lablib.pictures.palette import CRIBBING, CUT_AWAY, DOUBT, INK, LEAST_MARGIN, QUIET_INK
from lablib.pictures.window import Box, add_axes, place, shown_px

LOW, HIGH = 0.2, 10.0
_TICKS = (0.2, 0.3, 0.5, 1, 2, 3, 5, 10)
# The bar's middle and half its height, and the line of the number above it, as shares of the band.
_BAR_AT, _HALF_BAR, _WORDS_AT = 0.3, 0.18, 0.76
_BESIDE_PX, _ASIDE_PX = 6.0, 20.0


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
            write_still(picture, (x, top), words, ha=ha)
        self._add_moving(picture)

    def _add_moving(self, picture: KeptPicture) -> None:
        axes, moving = self.axes, picture.moving
        size = {"height": 2.0 * _HALF_BAR, "edgecolor": INK, "facecolor": DOUBT.colour, "linewidth": 0.8}
        self.doubt = moving(axes.add_patch(Rectangle((1.0, _BAR_AT - _HALF_BAR), 1.0, zorder=3, **size)))
        self.beyond = [
            moving(axes.plot([end], [_BAR_AT], zorder=4, color=INK, marker=mark)[0])
            for end, mark in ((LOW, "<"), (HIGH, ">"))
        ]
        self.estimate = moving(axes.plot([], [], zorder=6, **LEAST_MARGIN.point())[0])
        self.cribbing = moving(axes.plot([], [], zorder=5, **CRIBBING.point())[0])
        for mark in (*self.beyond, self.estimate, self.cribbing):
            mark.set_clip_on(False)
        style = {"fontsize": WORDS_PT, "color": INK, "ha": "center", "va": "center", "zorder": 7}
        self.words, self.crib_words = (
            picture.label(axes, transform=shown_px(picture), **style) for _ in range(2)
        )

    def update(self, sheet: EyeSheet) -> None:
        """Draw the margin of a cut, and that of cribbing where the lens is cribbed.

        sheet: the lens, worked; its cut is known.
        """
        low, high = doubted(sheet)
        self.doubt.set_x(low)
        self.doubt.set_width(high - low)
        self.beyond[0].set_visible(low < LOW)
        self.beyond[1].set_visible(high > HIGH)
        taken: list[Box] = []
        self._mark(self.estimate, self.words, sheet.cut.margin, "", taken)
        crib = sheet.cut.crib
        self.cribbing.set_visible(crib is not None)
        self.crib_words.set_visible(crib is not None)
        if crib is not None:
            self._mark(self.cribbing, self.crib_words, crib.margin, "cribbing ", taken)

    def _mark(self, mark: Line2D, label: Label, margin: float, name: str, taken: list[Box]) -> None:
        """Mark a margin, at the end of the scale where it lies beyond, with its number above the bar."""
        shown = min(max(margin, LOW), HIGH)
        mark.set_data([shown], [_BAR_AT])
        x, y = self.x_px(shown), self._y_px(_WORDS_AT)
        spots = [(x, y, 0, 0), *((x + side * _ASIDE_PX, y, side, 0) for side in (1, -1))]
        words = f"{name}{margin:.2f}"
        if shown != margin:
            words = f"{words} ▶" if margin > HIGH else f"◀ {words}"
        place(label, words, spots, inside=self.box_px, taken=taken)

    def x_px(self, margin: float) -> float:
        """Return where a margin lies across the picture [shown px].

        margin: between the ends of the scale.
        """
        left, _, right, _ = self.box_px
        return left + math.log(margin / LOW) / math.log(HIGH / LOW) * (right - left)

    def _y_px(self, share: float) -> float:
        _, bottom, _, top = self.box_px
        return bottom + share * (top - bottom)


def doubted(sheet: EyeSheet) -> tuple[float, float]:
    """Return the least and the greatest margin that the doubt about the bench allows.

    sheet: the lens, worked; its cut is known.
    """
    margin, doubt = sheet.cut.margin, sheet.cut.bench.doubt
    return margin / doubt, margin * doubt
