"""The edge of a lens unrolled with its front at the top, and the bevel or groove that runs along it."""

import numpy as np
from matplotlib.patches import Polygon

from lablib.pictures.bevel_data import EdgeView
from lablib.pictures.captions import WORDS_PT, step_up
from lablib.pictures.edge_round import axes_round
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import (
    EDGE,
    FRONT_SURFACE,
    INK,
    LEAST_MARGIN,
    OKABE_ITO,
    QUIET_INK,
    TOO_SMALL,
    Look,
)
from lablib.pictures.window import Box, place, shown_px

TIP = Look(colour=OKABE_ITO["bluish green"], dashes="solid", width_pt=2.2)
RIM_CURVE = Look(colour=OKABE_ITO["reddish purple"], dashes=(0, (5, 2)), width_pt=2.0)
LIMIT = Look(colour=QUIET_INK, dashes=(0, (1.5, 2)), width_pt=1.2)
# Few depths, so that the scale hardly ever changes; each with the distance between its ticks.
_DEPTHS_MM = {4.0: 1, 8.0: 2, 16.0: 4}
# So much of the whole depth stands in front of the front, for a rim that runs there.
_BEFORE = 0.35
_EVERY = 2


class BevelRound:
    """A rectangle of a picture that shows the edge all round with what runs along it.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the plot without its ticks [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px = box_px
        self.axes = axes = axes_round(picture, box_px)
        self._set_depth(next(iter(_DEPTHS_MM)))
        moving = picture.moving
        self.area = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **EDGE.fill())))
        front = axes.plot([0.0, 360.0], [0.0, 0.0], zorder=3, **FRONT_SURFACE.line())[0]
        self.front = moving(front)
        self.back = moving(axes.plot([], [], zorder=3, color=INK, linewidth=1.4)[0])
        self.limits = moving(axes.plot([], [], zorder=4, **LIMIT.line())[0])
        self.tip = moving(axes.plot([], [], zorder=5, **TIP.line())[0])
        self.short = moving(axes.plot([], [], zorder=6, color=TOO_SMALL.colour, linewidth=5.0, alpha=0.6)[0])
        self.rim = moving(axes.plot([], [], zorder=7, **RIM_CURVE.line())[0])
        self.here = moving(axes.plot([], [], zorder=3, color=INK, linewidth=1.0)[0])
        self.least = moving(axes.plot([], [], zorder=8, **LEAST_MARGIN.point())[0])
        self.least.set(markersize=7, clip_on=False)
        words = {"fontsize": WORDS_PT, "color": INK, "ha": "center", "va": "center", "zorder": 9}
        self.least_words = picture.label(axes, transform=shown_px(picture), **words)

    def update(self, data: EdgeView) -> None:
        """Draw an edge.

        data: what to draw.
        """
        main = data.line_mm if data.at_hole_mm is None else data.at_hole_mm
        lines = [part for part in (data.edge_mm, main, data.rim_mm) if part is not None]
        self._set_depth(step_up(tuple(_DEPTHS_MM), max(float(part.max()) for part in lines)))
        angle, edge = data.round_deg[::_EVERY], data.edge_mm[::_EVERY]
        self.area.set_xy(np.concatenate([np.column_stack([angle, edge]), [(360.0, 0.0), (0.0, 0.0)]]))
        self.back.set_data(angle, edge)
        for line, values in ((self.tip, main), (self.rim, data.rim_mm)):
            line.set_data(*(([], []) if values is None else (angle, values[::_EVERY])))
        self.here.set_data([data.place_deg] * 2, self.axes.get_ylim())
        self._limit(data, angle, edge)
        self._mark(data)

    def _set_depth(self, depth_mm: float) -> None:
        if self.axes.get_ylim()[0] == depth_mm:
            return
        set_limits(self.axes, x=(0.0, 360.0), y=(depth_mm, -_BEFORE * depth_mm))
        self.axes.set_yticks(range(0, int(depth_mm) + 1, _DEPTHS_MM[depth_mm]))

    def _limit(self, data: EdgeView, angle: np.ndarray, edge: np.ndarray) -> None:
        """How near a face the line may come, on either side, and where it comes nearer."""
        ahead = np.full_like(edge, data.limit_mm)
        if data.line_mm is None:
            self.limits.set_data(angle, ahead)
            at_hole = data.at_hole_mm[::_EVERY]
            short = np.round(at_hole, 6) < data.limit_mm
            self.short.set_data(angle, np.where(short, at_hole, np.nan))
            return
        self.limits.set_data(
            np.concatenate([angle, [np.nan], angle]),
            np.concatenate([ahead, [np.nan], edge - data.limit_mm]),
        )
        short = np.round(data.beside_mm[::_EVERY], 6) < data.limit_mm
        self.short.set_data(angle, np.where(short, data.line_mm[::_EVERY], np.nan))

    def _mark(self, data: EdgeView) -> None:
        """Mark the place with the least room and write how much there is."""
        room = data.at_hole_mm if data.beside_mm is None else data.beside_mm
        at = int(np.argmin(np.round(room, 6)))
        depth = room[at] if data.line_mm is None else data.line_mm[at]
        self.least.set_data([data.round_deg[at]], [depth])
        x, y = self._px(float(data.round_deg[at]), float(depth))
        taken = [(x - 6, y - 6, x + 6, y + 6)]
        spots = [(x + 9, y + 9, 1, 1), (x - 9, y + 9, -1, 1), (x + 9, y - 9, 1, -1), (x - 9, y - 9, -1, -1)]
        words = f"least {room[at]:.2f}"
        if data.mounting == "groove":
            words = f"wall {room[at] - data.across.groove_mm / 2.0:.2f}"
        place(self.least_words, words, spots, inside=self.box_px, taken=taken)

    def _px(self, angle_deg: float, depth_mm: float) -> tuple[float, float]:
        left, bottom, right, top = self.box_px
        low, high = self.axes.get_ylim()
        share = (depth_mm - low) / (high - low)
        return left + angle_deg / 360.0 * (right - left), bottom + share * (top - bottom)
