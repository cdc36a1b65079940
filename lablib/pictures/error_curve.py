"""Tangential and sagittal power errors of an eye that turns up and down, as curves over its gaze."""

import numpy as np
from matplotlib.lines import Line2D

from lablib.pictures.captions import moving_words, step_up, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import OKABE_ITO, QUIET_INK, Look
from lablib.pictures.wearing_data import WornView
from lablib.pictures.window import Box, add_axes, shown_px

# Few scales, so that a curve moves rather than its scale [D].
TOPS_D = (0.5, 1.0, 2.0, 4.0)
TANGENTIAL = Look(colour=OKABE_ITO["vermilion"], dashes="solid", width_pt=2.2)
SAGITTAL = Look(colour=OKABE_ITO["blue"], dashes=(0, (5, 1.5)), width_pt=2.2)
TANGENTIAL_NOW = Look(colour=OKABE_ITO["vermilion"], mark="^")
SAGITTAL_NOW = Look(colour=OKABE_ITO["blue"], mark="s", hollow=True)
_SHARES, _HIGHEST, _MOST_DEG = (-1.0, -0.5, 0.0, 0.5, 1.0), 1.06, 30.0
_TICK_PX = 4.0


class ErrorCurve:
    """Two curves over the gaze; heights are shares of a round power that stands beside them.

    picture: the picture it is part of.
    box_px: left, bottom, right and top of the curves' own field [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.box_px, self.top_d = box_px, TOPS_D[0]
        self.axes = add_axes(picture, box_px)
        self.axes.set_axis_off()
        set_limits(self.axes, x=(-_MOST_DEG, _MOST_DEG), y=(-_HIGHEST, _HIGHEST))
        self._add_scales(picture)
        axes, moving = self.axes, picture.moving
        self.now = moving(axes.plot([], [], color=QUIET_INK, linewidth=1.2, zorder=2)[0])
        self.tangential, self.sagittal = (
            moving(axes.plot([], [], zorder=4, **look.line())[0]) for look in (TANGENTIAL, SAGITTAL)
        )
        self.points = [
            moving(axes.plot([], [], zorder=6, clip_on=False, **look.point())[0])
            for look in (TANGENTIAL_NOW, SAGITTAL_NOW)
        ]

    def _add_scales(self, picture: KeptPicture) -> None:
        """Add the frame, degrees below, and places for five powers at the left."""
        left, bottom, right, top = self.box_px
        style = {"color": QUIET_INK, "transform": shown_px(picture)}
        frame = Line2D([left, right, right, left, left], [bottom, bottom, top, top, bottom], **style)
        frame.set_linewidth(0.8)
        picture.figure.add_artist(frame)
        self.powers = []
        for share in _SHARES:
            y = self._px(0.0, share)[1]
            strong = 1.0 if share == 0.0 else 0.4
            picture.figure.add_artist(Line2D([left - _TICK_PX, right], [y, y], linewidth=strong, **style))
            at = (left - _TICK_PX - 3.0, y)
            self.powers.append(moving_words(picture, self.axes, at, ha="right", color=QUIET_INK))
        for degrees in range(-30, 31, 10):
            x = self._px(degrees, 0.0)[0]
            picture.figure.add_artist(Line2D([x, x], [bottom, bottom - _TICK_PX], linewidth=0.8, **style))
            words = f"{abs(degrees)}"
            write_still(picture, (x, bottom - 13.0), words, color=QUIET_INK, ha="center")
        for x, words, side in ((left, "looking down", "left"), (right, "looking up", "right")):
            write_still(picture, (x, bottom - 31.0), words, color=QUIET_INK, ha=side)

    def _px(self, gaze_deg: float, share: float) -> tuple[float, float]:
        """Where a gaze and a share of the top lie in the picture [shown px]."""
        left, bottom, right, top = self.box_px
        across, up = (gaze_deg + _MOST_DEG) / (2.0 * _MOST_DEG), (share + _HIGHEST) / (2.0 * _HIGHEST)
        return left + (right - left) * across, bottom + (top - bottom) * up

    def update(self, data: WornView) -> None:
        """Draw the errors over the gaze, and mark the gaze that was chosen.

        data: what to draw.
        """
        both = np.abs([data.tangential_d, data.sagittal_d])
        self.top_d = step_up(TOPS_D, float(np.max(both, initial=0.0, where=np.isfinite(both))))
        for label, share in zip(self.powers, _SHARES, strict=True):
            label.set_text(f"{share * self.top_d:+g}" if share else "0")
        self.tangential.set_data(data.gazes_deg, data.tangential_d / self.top_d)
        self.sagittal.set_data(data.gazes_deg, data.sagittal_d / self.top_d)
        self.now.set_data([data.gaze_deg] * 2, [-_HIGHEST, _HIGHEST])
        for point, error in zip(self.points, (data.tangential_now_d, data.sagittal_now_d), strict=True):
            inside = abs(error) <= _HIGHEST * self.top_d
            point.set_data([data.gaze_deg], [error / self.top_d if inside else np.nan])
