"""Break-loose readings over the force, the line through them with its band, and what nobody has tried."""

import numpy as np
from matplotlib.patches import Polygon, Rectangle

from lablib.pictures.calibration_data import CalibrationView
from lablib.pictures.captions import HEADING_PT, WORDS_PT, add_key, moving_words, step_up, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import INK, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import add_axes

# Few scales, so that the readings move rather than their scale [N m].
TOPS_NM = (0.8, 1.2, 1.6, 3.2, 6.4, 25.6)
MOST_N = 500.0
READING = Look(colour=OKABE_ITO["blue"], mark="o", hollow=True)
LEFT_OUT = Look(colour=OKABE_ITO["vermilion"], mark="x", width_pt=2.0)
FITTED = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=2.2)
BAND = Look(colour=OKABE_ITO["sky blue"], opacity=0.4)
TO_NO_FORCE = Look(colour=OKABE_ITO["blue"], dashes=(0, (2, 2)), width_pt=1.4)
THROUGH_ZERO = Look(colour=OKABE_ITO["vermilion"], dashes=(0, (6, 2)), width_pt=1.8)
BEHIND = Look(colour=INK, dashes=(0, (5, 2, 1, 2)), width_pt=1.4)
_PLOT_PX = (56.0, 96.0, 704.0, 414.0)
_ROOM, _PARTS = 0.94, 4
_NOWHERE = np.full((3, 2), np.nan)
_KEY = (
    (56.0, 42.0, READING, "reading"),
    (150.0, 42.0, LEFT_OUT, "left out"),
    (244.0, 42.0, FITTED, "line, its band about it"),
    (448.0, 42.0, TO_NO_FORCE, "carried on to no force: what sticks"),
    (56.0, 18.0, THROUGH_ZERO, "through the origin"),
    (244.0, 18.0, BEHIND, "what the invented lens holds"),
)


class CalibrationPicture(KeptPicture):
    """One set of readings, and what may be said of the forces that were tried."""

    width_px = 720
    height_px = 440

    def build(self) -> None:
        """Add the plot, its scales, and the key."""
        left, bottom, right, top = _PLOT_PX
        self.axes = axes = add_axes(self, _PLOT_PX)
        axes.spines[["top", "right"]].set_visible(False)
        axes.tick_params(labelsize=WORDS_PT, color=QUIET_INK, labelcolor=INK)
        axes.set_xticks(np.arange(0.0, MOST_N + 1.0, 100.0))
        write_still(self, (10, top + 14.0), "Torque at which the block broke loose, in N m", size=HEADING_PT)
        write_still(self, ((left + right) / 2.0, bottom - 30.0), "Force on the block, in N", ha="center")
        add_key(self, _KEY)
        self.top_nm = 0.0
        self._add_moving()
        self._set_top(TOPS_NM[0])

    def _add_moving(self) -> None:
        axes, moving = self.axes, self.moving
        hatched = {"facecolor": "none", "edgecolor": "#cccccc", "linewidth": 0.0, "hatch": "///"}
        self.not_tried = [
            moving(axes.add_patch(Rectangle((0.0, 0.0), 1.0, 1.0, zorder=1, **hatched))) for _ in range(2)
        ]
        self.band = moving(axes.add_patch(Polygon(_NOWHERE, zorder=2, **BAND.fill())))
        looks = (BEHIND, THROUGH_ZERO, TO_NO_FORCE, FITTED)
        self.behind, self.zero_line, self.to_no_force, self.line = (
            moving(axes.plot([], [], zorder=3 + at, **look.line())[0]) for at, look in enumerate(looks)
        )
        self.used, self.left_out = (
            moving(axes.plot([], [], zorder=8, clip_on=False, **look.point())[0])
            for look in (READING, LEFT_OUT)
        )
        at = (_PLOT_PX[2] - 4.0, _PLOT_PX[1] + 12.0)
        self.words = moving_words(self, axes, at, ha="right", color=QUIET_INK)

    def _set_top(self, top_nm: float) -> None:
        if top_nm == self.top_nm:
            return
        self.top_nm = top_nm
        set_limits(self.axes, x=(0.0, MOST_N), y=(0.0, top_nm))
        ticks = np.linspace(0.0, top_nm, _PARTS + 1)
        self.axes.set_yticks(ticks, [f"{tick:g}" for tick in ticks])

    def update(self, data: CalibrationView) -> None:
        """Draw readings and line, and hatch the forces that were not tried.

        data: what to draw.
        """
        highest = max(part[:, 1:].max(initial=0.0) for part in (data.used, data.left_out, data.band))
        self._set_top(step_up(TOPS_NM, highest / _ROOM))
        low, high = data.tried_n
        for patch, (start, end) in zip(self.not_tried, ((0.0, low), (high, MOST_N)), strict=True):
            patch.set_bounds(start, 0.0, end - start, self.top_nm)
        self.band.set_xy(np.concatenate([data.band[:, :2], data.band[::-1, ::2]]))
        for artist, points in (
            (self.used, data.used),
            (self.left_out, data.left_out),
            (self.zero_line, data.zero_line),
            (self.behind, data.behind),
            (self.line, data.line[data.line[:, 0] >= low]),
            (self.to_no_force, data.line[data.line[:, 0] <= low]),
        ):
            artist.set_data(points[:, 0], points[:, 1])
        self.words.set_text("hatched: nobody tried, nothing is said" if high < MOST_N else "")
