"""Two eyes that look far and near: from above at true scale, and enlarged at the lens with a ruler."""

import numpy as np
from matplotlib.patches import Circle

from lablib.optics.eye import Eye
from lablib.pictures.captions import HEADING_PT, WORDS_PT, ScaleBar, add_key, moving_words, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.near_sight_data import NearSight
from lablib.pictures.palette import (
    BLUE_INK,
    FRONT_SURFACE,
    INK,
    MIDLINE,
    OKABE_ITO,
    OPTICAL_CENTRE,
    OUTLINE,
    PAPER,
    QUIET_INK,
    Look,
)
from lablib.pictures.window import Window

FAR = Look(colour=OKABE_ITO["orange"], dashes=(0, (4, 2)), width_pt=1.6)
NEAR = Look(colour=BLUE_INK, dashes="solid", width_pt=1.6)
NEAR_POINT = Look(colour=BLUE_INK, mark="o", width_pt=1.8, hollow=True)
_ABOVE_PX, _LENS_AT_PX, _ABOVE_SCALE = (0.0, 260.0, 720.0, 372.0), 58.0, 0.88
_AT_LENS_PX, _AT_LENS_SCALE = (0.0, 44.0, 720.0, 226.0), 8.0
_EYE_MM, _LENS_MM, _PAGE_MM, _FAR_MM = 12.0, 50.0, 22.0, 745.0
# From the ruler's edge at the lens, upwards [mm]: points far and near, the distances, and their words.
_FAR_UP_MM, _NEAR_UP_MM, _WORDS_MM = 4.0, -9.0, 2.0
_RULER_MM, _STROKES = 40, ((10, 3.2), (5, 2.3), (1, 1.4))


class NearSightPicture(KeptPicture):
    """Both eyes behind their lenses, and the points they look through."""

    width_px = 720
    height_px = 400

    def build(self) -> None:
        """Add the view from above, the ruler at the lens, and the key."""
        self.above = Window(self, _ABOVE_PX, across_px=_LENS_AT_PX, px_per_mm=_ABOVE_SCALE)
        self.at_lens = Window(self, _AT_LENS_PX, up_px=104.0, px_per_mm=_AT_LENS_SCALE)
        self.above.axes.plot([-_LENS_MM, _FAR_MM], [0.0, 0.0], zorder=0, **MIDLINE.line())
        self.above.axes.plot([0.0, 0.0], [-_LENS_MM, _LENS_MM], zorder=2, **FRONT_SURFACE.line())
        self.page = self.moving(
            self.above.axes.plot([], [], zorder=3, **(OUTLINE.line() | {"linewidth": 3.0}))[0]
        )
        self._add_ruler()
        self.eyes = {eye: _EyeThatReads(self.above, self.at_lens, eye) for eye in Eye}
        write_still(
            self, (10, 388), "From above, the wearer at the left: the right eye is below", size=HEADING_PT
        )
        write_still(self, (10, 238), "A ruler at the lenses, facing the wearer", size=HEADING_PT)
        ScaleBar(self.at_lens, 660.0, 238.0).update()
        self.page_words = moving_words(self, self.above.axes, (710, 388), ha="right", color=QUIET_INK)
        add_key(self, _KEY)

    def _add_ruler(self) -> None:
        axes = self.at_lens.axes
        axes.plot([-_RULER_MM, _RULER_MM], [0.0, 0.0], color=INK, linewidth=1.2)
        axes.plot([0.0, 0.0], [_NEAR_UP_MM - 2.0, _FAR_UP_MM + 7.0], zorder=0, **MIDLINE.line())
        for at in range(-_RULER_MM, _RULER_MM + 1):
            length = next(size for step, size in _STROKES if at % step == 0)
            axes.plot([at, at], [0.0, -length], color=INK, linewidth=0.7)
            if at % _STROKES[0][0] == 0 and at:
                x, y = self.at_lens.px(at, -4.4)
                write_still(self, (x, y), f"{abs(at)}", ha="center", color=QUIET_INK)

    def update(self, data: NearSight) -> None:
        """Draw two eyes.

        data: what to draw.
        """
        away = data.working_distance_mm
        self.page.set_data([away, away], [-_PAGE_MM, _PAGE_MM])
        self.page_words.set_text(f"page at {away:g} mm")
        for eye in self.eyes.values():
            eye.update(data)


class _EyeThatReads:
    def __init__(self, above: Window, at_lens: Window, eye: Eye) -> None:
        axes, moving = above.axes, above.picture.moving
        self.eye, self.window = eye, at_lens
        ball = Circle((0, 0), _EYE_MM, facecolor=PAPER, edgecolor=INK, linewidth=1.2, zorder=1)
        self.ball = moving(axes.add_patch(ball))
        self.far = moving(axes.plot([], [], zorder=4, **FAR.line())[0])
        self.near = moving(axes.plot([], [], zorder=5, **NEAR.line())[0])
        self._add_distances(at_lens)

    def _add_distances(self, window: Window) -> None:
        axes, moving = window.axes, window.picture.moving
        tick = {"linewidth": 0.9, "marker": "|", "markersize": 7, "zorder": 3}
        self.far_line = moving(axes.plot([], [], color=INK, **tick)[0])
        self.near_line = moving(axes.plot([], [], color=BLUE_INK, **tick)[0])
        large = {"markersize": 11, "zorder": 6}
        self.far_point = moving(axes.plot([], [], **(OPTICAL_CENTRE.point() | large))[0])
        self.near_point = moving(
            axes.plot([], [], **(NEAR_POINT.point() | large | {"markerfacecolor": "none"}))[0]
        )
        words = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 9}
        self.far_words, self.near_words = (window.label(color=colour, **words) for colour in (INK, BLUE_INK))

    def update(self, data: NearSight) -> None:
        far, near = (-self.eye.nasal_sign * one for one in (data.far_mm(self.eye), data.near_mm(self.eye)))
        rotation, page = -data.centre_of_rotation_mm, data.working_distance_mm
        self.ball.set_center((rotation, far))
        self.far.set_data([rotation, _FAR_MM], [far, far])
        self.near.set_data([rotation, 0.0, page], [far, near, 0.0])
        for line, point, at, up in (
            (self.far_line, self.far_point, far, _FAR_UP_MM),
            (self.near_line, self.near_point, near, _NEAR_UP_MM),
        ):
            line.set_data([0.0, at], [up, up])
            point.set_data([at], [0.0])
        eye, inset = self.eye.value, data.inset_mm(self.eye)
        self.far_words.set_text(f"{eye}, far {abs(far):.1f}")
        self.near_words.set_text(f"{eye}, near {abs(near):.1f}: inset {inset:.2f}")
        self.far_words.set_position(self.window.px(np.sign(far) * _MIDDLE_MM, _FAR_UP_MM + _WORDS_MM))
        self.near_words.set_position(self.window.px(np.sign(far) * _MIDDLE_MM, _NEAR_UP_MM - _WORDS_MM))


# Where a distance's words stand from the middle, on its own side [mm].
_MIDDLE_MM = 17.0
_KEY = (
    (10, 20, FAR, "looking far"),
    (122, 20, NEAR, "reading"),
    (212, 20, FRONT_SURFACE, "lenses"),
    (296, 20, OPTICAL_CENTRE, "far point"),
    (394, 20, NEAR_POINT, "near point"),
    (502, 20, MIDLINE, "middle of the bridge"),
)
