"""How far a lens has turned on its block: after each turn as a bar, and round one turn as a line."""

import numpy as np
from matplotlib.collections import PolyCollection
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon, Rectangle

from lablib.pictures.captions import WORDS_PT, step_up
from lablib.pictures.cutting_bars import boxes
from lablib.pictures.edge_round import axes_round
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, TURNS, Look
from lablib.pictures.turning_data import TurningView
from lablib.pictures.window import Box, add_axes, place, shown_px

# Few tops, so that a scale hardly ever changes; each parts well at this many ticks [degrees].
TOPS_DEG = (4.0, 20.0, 60.0, 200.0, 600.0, 2000.0, 4000.0, 8000.0, 24000.0)
BEGINS = Look(colour=OKABE_ITO["vermilion"], mark="v")
_TICKS = 5
# How much of its place a bar fills, and how far below the axis a turn is numbered.
_BAR, _UNDER_PX, _EVERY = 0.74, 11.0, 4


def earlier_style() -> dict[str, object]:
    """Return matplotlib's keywords for what a lens had turned before a turn."""
    return {"facecolor": to_rgba(QUIET_INK, 0.25), "edgecolor": QUIET_INK, "linewidth": 0.8}


def turned_style() -> dict[str, object]:
    """Return matplotlib's keywords for what it turned in a turn."""
    face = to_rgba(TURNS.colour, 0.5)
    return {"facecolor": face, "edgecolor": TURNS.colour, "linewidth": 0.8, "hatch": "////"}


class LagBars:
    """A rectangle of a picture with a bar for every turn, up to the one that is shown.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px = box_px
        self.axes = axes = add_axes(picture, box_px)
        axes.set_axisbelow(True)
        axes.grid(axis="y", color="#dddddd", linewidth=0.8)
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.spines[["top", "right"]].set_visible(False)
        axes.set_xticks([])
        _set_top(axes, 1.0, TOPS_DEG[0])
        moving = picture.moving
        self.earlier, self.turned = (
            moving(axes.add_collection(PolyCollection([], zorder=2, **style), autolim=False))
            for style in (earlier_style(), turned_style())
        )
        frame = Rectangle((0.0, 0.0), 0.0, 0.0, fill=False, edgecolor=INK, linewidth=2.0, zorder=5)
        self.shown = moving(axes.add_patch(frame))
        words = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 7, "clip_on": False}
        self.first, self.last, self.number = (
            picture.label(axes, transform=shown_px(picture), color=colour, **words)
            for colour in (QUIET_INK, QUIET_INK, INK)
        )

    def update(self, data: TurningView) -> None:
        """Draw every turn up to the one that is shown.

        data: what to draw.
        """
        after, count = data.after_deg, data.ran.turns_run
        _set_top(self.axes, 1.0, step_up(TOPS_DEG, float(after[-1])))
        left = (np.arange(count) + (1.0 - _BAR) / 2.0) / count
        right, before = left + _BAR / count, after - data.ran.slip_by_turn_deg
        shown = slice(0, data.at)
        self.earlier.set_verts(boxes(*(part[shown] for part in (left, right, 0.0 * after, before))))
        self.turned.set_verts(boxes(*(part[shown] for part in (left, right, before, after))))
        self.shown.set_visible(data.at > 0)
        if data.at:
            self.shown.set_bounds(left[data.at - 1], 0.0, _BAR / count, after[data.at - 1])
        self._number(data, (left + right) / 2.0)

    def _number(self, data: TurningView, middle: np.ndarray) -> None:
        """Number the turn that is shown, and the first and the last where they keep clear of it."""
        left, bottom, right, _ = self.box_px
        at_px, y = left + middle * (right - left), bottom - _UNDER_PX
        taken: list[Box] = []
        self.number.set_visible(data.at > 0)
        if data.at:
            room = (left - 8.0, bottom - 24.0, right + 8.0, bottom)
            place(self.number, f"turn {data.at}", [(at_px[data.at - 1], y, 0, 0)], inside=room, taken=taken)
        for label, at in ((self.first, 0), (self.last, middle.size - 1)):
            clear = all(at_px[at] + 10.0 < box[0] or at_px[at] - 10.0 > box[2] for box in taken)
            label.set_visible(clear and not (label is self.last and at == 0))
            label.set_text(f"{at + 1}")
            label.set_position((at_px[at], y))


class LagRound:
    """A rectangle of a picture that shows how far a lens turned while the wheel went round it once.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.axes = axes = axes_round(picture, box_px)
        _set_top(axes, 360.0, TOPS_DEG[0])
        self.area = picture.moving(
            axes.add_patch(Polygon(NOWHERE, zorder=2, **turned_style() | {"linewidth": 0.0}))
        )
        self.line = picture.moving(axes.plot([], [], zorder=3, **TURNS.line())[0])
        self.begins = picture.moving(axes.plot([], [], zorder=4, clip_on=False, **BEGINS.point())[0])

    def update(self, data: TurningView) -> None:
        """Draw the turn that is shown, of a right lens.

        data: what to draw.
        """
        _set_top(self.axes, 360.0, step_up(TOPS_DEG, float(data.ran.slip_by_turn_deg.max())))
        turned = np.append(0.0, data.round_deg[_EVERY - 1 :: _EVERY])
        angle = np.linspace(0.0, 360.0, turned.size)
        self.line.set_data(angle, turned)
        self.area.set_xy(np.concatenate([np.column_stack([angle, turned]), [(360.0, 0.0), (0.0, 0.0)]]))
        begins = data.begins_deg
        # Above the axis: what it marks is where on the lens, not how far.
        self.begins.set_data([] if begins is None else [begins], [] if begins is None else [self._above()])

    def _above(self) -> float:
        return 0.12 * self.axes.get_ylim()[1]


def _set_top(axes, right: float, top_deg: float) -> None:
    if axes.get_ylim() != (0.0, top_deg):
        set_limits(axes, x=(0.0, right), y=(0.0, top_deg))
        axes.set_yticks(np.linspace(0.0, top_deg, _TICKS))
