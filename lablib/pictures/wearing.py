"""A worn lens and its eye from the side at true scale, and beside it the power error over the gaze."""

import numpy as np
from matplotlib.patches import Arc, Circle, Polygon

from lablib.pictures.captions import HEADING_PT, ScaleBar, add_key, moving_words, write_still
from lablib.pictures.error_curve import SAGITTAL, TANGENTIAL, ErrorCurve
from lablib.pictures.kept import KeptPicture
from lablib.pictures.palette import (
    BACK_SURFACE,
    FRONT_SURFACE,
    GLASS,
    INK,
    MIDLINE,
    OKABE_ITO,
    OPTICAL_CENTRE,
    PAPER,
    Look,
)
from lablib.pictures.wearing_data import WornView
from lablib.pictures.window import Window

SIGHT = Look(colour=OKABE_ITO["orange"], dashes="solid", width_pt=2.2)
LENS_AXIS = Look(colour=OKABE_ITO["bluish green"], dashes=(0, (5, 1.5)), width_pt=1.3)
ROTATION = Look(colour=INK, mark="o", width_pt=1.4)
_SIDE_PX, _LENS_AT_PX, _SCALE = (4.0, 60.0, 372.0, 406.0), 152.0, 4.4
_CURVE_PX = (432.0, 104.0, 702.0, 396.0)
# The ball of the eye; its pupil and the half opening of the iris, seen from the centre of rotation [mm].
_BALL_MM, _PUPIL_MM, _IRIS_MM, _CORNEA_MM = 12.0, 12.0, 2.0, 7.8
_AXIS_MM = (30.0, 46.0)
# Heights of the measures below everything, and of their words [mm].
_MEASURE_MM, _WORDS_MM, _TICK_MM = -31.0, -34.5, 1.2


class WearingPicture(KeptPicture):
    """Light comes from the left; the eye looks through the lens along one line of sight."""

    width_px = 720
    height_px = 436

    def build(self) -> None:
        """Add lens, eye and light at the left, the errors at the right, and the key."""
        self.side = Window(self, _SIDE_PX, across_px=_LENS_AT_PX, px_per_mm=_SCALE)
        axes, moving = self.side.axes, self.moving
        axes.plot([-60.0, 60.0], [0.0, 0.0], zorder=1, **MIDLINE.line())
        self.glass = moving(axes.add_patch(Polygon(np.zeros((3, 2)), zorder=2, **GLASS.fill())))
        self.front, self.back = (
            moving(axes.plot([], [], zorder=4, **look.line())[0]) for look in (FRONT_SURFACE, BACK_SURFACE)
        )
        self.lens_axis = moving(axes.plot([], [], zorder=3, **LENS_AXIS.line())[0])
        self.centre = moving(axes.plot([], [], zorder=7, **(OPTICAL_CENTRE.point() | {"markersize": 11}))[0])
        self.sight = moving(axes.plot([], [], zorder=6, **SIGHT.line())[0])
        self.eye = _Eye(self.side)
        self.measures = _Measures(self.side)
        self.errors = ErrorCurve(self, _CURVE_PX)
        self.heading = moving_words(self, axes, (10, 421), size=HEADING_PT, color=INK)
        write_still(self, (396, 421), "Error: power got - power wanted [D]", size=HEADING_PT)
        ScaleBar(self.side, 322.0, 396.0).update()
        add_key(self, _KEY)

    def update(self, data: WornView) -> None:
        """Draw a worn lens.

        data: what to draw.
        """
        section = data.section
        self.front.set_data(*section.front_mm.T)
        self.back.set_data(*section.back_mm.T)
        rim = np.vstack([section.front_mm, section.back_mm[::-1]])
        self.glass.set_visible(len(rim) > 2)
        if len(rim) > 2:
            self.glass.set_xy(rim)
        self.centre.set_data(*section.centre_mm[:, np.newaxis])
        before, behind = _AXIS_MM
        ends = section.centre_mm + np.outer([-before, behind], section.towards_eye)
        self.lens_axis.set_data(*ends.T)
        self.sight.set_data(*data.sight_mm.T)
        self.eye.update(data)
        self.measures.update(data)
        self.errors.update(data)
        self.heading.set_text(data.heading)


class _Eye:
    """A ball that turns about a point behind its own middle, with cornea and iris on its line of sight."""

    def __init__(self, window: Window) -> None:
        axes, moving = window.axes, window.picture.moving
        ball = Circle((0, 0), _BALL_MM, facecolor=PAPER, edgecolor=INK, linewidth=1.2, zorder=2)
        self.ball = moving(axes.add_patch(ball))
        side = 2.0 * _CORNEA_MM
        self.cornea = moving(
            axes.add_patch(Arc((0, 0), side, side, theta1=-46, theta2=46, color=INK, linewidth=1.2, zorder=3))
        )
        self.iris = moving(axes.plot([], [], color=INK, linewidth=2.6, solid_capstyle="butt", zorder=3)[0])
        self.rotation = moving(axes.plot([], [], zorder=7, **(ROTATION.point() | {"markersize": 5}))[0])

    def update(self, data: WornView) -> None:
        turn = np.radians(data.gaze_deg)
        about = np.array([data.rotation_mm, 0.0])
        ahead = np.array([-np.cos(turn), np.sin(turn)])
        across = np.array([ahead[1], -ahead[0]])
        self.ball.set_center(about + (data.into_eye_mm - _BALL_MM - 1.0) * ahead)
        self.cornea.set_center(tuple(about + (data.into_eye_mm - _CORNEA_MM) * ahead))
        self.cornea.angle = 180.0 - data.gaze_deg
        pupil = about + _PUPIL_MM * ahead
        halves = [pupil + step * across for step in (-4.8, -_IRIS_MM)]
        others = [pupil + step * across for step in (_IRIS_MM, 4.8)]
        self.iris.set_data(*np.array([*halves, (np.nan, np.nan), *others]).T)
        self.rotation.set_data(*about[:, np.newaxis])


class _Measures:
    """Vertex distance and the way on to the centre of rotation, below the lens."""

    def __init__(self, window: Window) -> None:
        self.window = window
        self.line = window.picture.moving(window.axes.plot([], [], color=INK, linewidth=0.9, zorder=5)[0])
        style = {"ha": "center", "va": "center", "color": INK, "fontsize": 9.0, "zorder": 9}
        self.words = [window.label(**style) for _ in range(2)]

    def update(self, data: WornView) -> None:
        stops = (0.0, data.vertex_distance_mm, data.rotation_mm)
        points = [(stops[0], _MEASURE_MM), (stops[-1], _MEASURE_MM)]
        for stop in stops:
            points += [(np.nan, np.nan), (stop, _MEASURE_MM - _TICK_MM), (stop, _MEASURE_MM + _TICK_MM)]
        self.line.set_data(*zip(*points, strict=True))
        for label, start, end in zip(self.words, stops, stops[1:], strict=False):
            label.set_text(f"{end - start:g} mm")
            label.set_position(self.window.px((start + end) / 2.0, _WORDS_MM))


_KEY = (
    (10, 40, SIGHT, "line of sight"),
    (126, 40, LENS_AXIS, "axis of the lens"),
    (262, 40, OPTICAL_CENTRE, "optical centre"),
    (396, 40, TANGENTIAL, "tangential: along the turn"),
    (10, 16, FRONT_SURFACE, "front surface"),
    (126, 16, BACK_SURFACE, "back surface"),
    (262, 16, ROTATION, "eye turns here"),
    (396, 16, SAGITTAL, "sagittal: across the turn"),
)
