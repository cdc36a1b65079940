"""A cut across the edge of a lens: its bevel in the rim, its groove with the cord, or a hole through it."""

import numpy as np
from matplotlib.patches import Circle, Polygon

from lablib.pictures.bevel_data import EdgeAcross, EdgeView
from lablib.pictures.bevel_round import RIM_CURVE, TIP
from lablib.pictures.captions import step_down
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BACK_SURFACE, FRONT_SURFACE, GLASS, INK, OUTLINE, PAPER
from lablib.pictures.window import Box, Window

_SCALES = (32.0, 24.0, 18.0, 14.0, 11.0, 8.0)
# Between the upper rim of the window and the front at the outline, and below the back [shown px].
_HEAD_PX, _FOOT_PX, _MARGIN_PX = 96.0, 20.0, 6.0
# Half the height of a rim and how far it reaches outwards from the bottom of its groove, as it is drawn [mm].
_RIMS_MM = {"metal": (1.1, 0.9), "plastic": (1.9, 2.2)}


class BevelSection:
    """A rectangle of a picture that shows the edge cut across, front up, outwards to the right.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    across_px: where the outline lies, from the left of the box [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box, *, across_px: float) -> None:
        _, bottom, _, top = box_px
        self.window = Window(picture, box_px, across_px=across_px, up_px=top - bottom - _HEAD_PX)
        axes, moving = self.window.axes, picture.moving
        rim = {"facecolor": "#efe4ea", "edgecolor": RIM_CURVE.colour, "linewidth": 1.6, "linestyle": "dashed"}
        self.rim = moving(axes.add_patch(Polygon(NOWHERE, zorder=1, **rim)))
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **GLASS.fill())))
        self.front = moving(axes.plot([], [], zorder=4, **FRONT_SURFACE.line())[0])
        self.back = moving(axes.plot([], [], zorder=4, **BACK_SURFACE.line())[0])
        self.edge = moving(axes.plot([], [], zorder=3, **OUTLINE.line())[0])
        hole = {"facecolor": PAPER, "edgecolor": INK, "linewidth": 1.4}
        self.hole = moving(axes.add_patch(Polygon(NOWHERE, zorder=5, **hole)))
        cord = {"facecolor": "#dddddd", "edgecolor": RIM_CURVE.colour, "linewidth": 1.6}
        self.cord = moving(axes.add_patch(Circle((0.0, 0.0), 0.1, zorder=5, **cord)))
        self.tip = moving(axes.plot([], [], zorder=6, color=TIP.colour, marker="o", markersize=6)[0])

    def update(self, data: EdgeView) -> None:
        """Draw the cut at the place that is shown.

        data: what to draw.
        """
        across = data.across
        _, bottom, _, top = self.window.box_px
        # The front rises inwards, the back lies deepest at the edge of a minus lens or inside a flat one.
        above, below = max(-float(across.front_mm.min()), 0.1), float(across.back_mm.max())
        fits = min((_HEAD_PX - _MARGIN_PX) / above, (top - bottom - _HEAD_PX - _FOOT_PX) / below)
        self.window.set_scale(step_down(_SCALES, fits))
        edge = self._edge(data)
        # A chamfer or a bevel takes the corner: there both surfaces end at what is left of it.
        front = _up_to(across, across.front_mm, edge[0])
        back = _up_to(across, across.back_mm, edge[-1])
        self.front.set_data(*front.T)
        self.back.set_data(*back.T)
        self.edge.set_data(*edge.T)
        self.glass.set_xy(np.concatenate([front, edge, back[::-1]]))
        self._mount(data)

    def _edge(self, data: EdgeView) -> np.ndarray:
        """The edge from the front to the back, as points across and up [mm]."""
        across = data.across
        if data.mounting == "bevel":
            return _bevelled(across, data.here(data.line_mm))
        chamfer, half = across.chamfer_mm, across.groove_mm / 2.0
        corners = [_on_front(across, chamfer), (0.0, -chamfer)]
        if data.mounting == "groove":
            middle, floor = data.here(data.line_mm), -across.groove_mm
            upper, lower = (min(max(middle + side, 0.0), across.edge_mm) for side in (-half, half))
            corners += [(0.0, -upper), (floor, -upper), (floor, -lower), (0.0, -lower)]
        return np.array([*corners, (0.0, chamfer - across.edge_mm), _on_back(across, chamfer)])

    def _mount(self, data: EdgeView) -> None:
        """Rim, cord or hole, and the tip."""
        across, bevel = data.across, data.mounting == "bevel"
        self.rim.set_visible(bevel)
        self.cord.set_visible(data.mounting == "groove")
        self.hole.set_visible(data.mounting == "holes")
        self.tip.set_data(*(([0.0], [-data.here(data.line_mm)]) if bevel else ([], [])))
        if bevel:
            self.rim.set_xy(_rim(across.deep_mm, data.here(data.rim_mm), *_RIMS_MM[data.rim]))
        elif data.mounting == "groove":
            self.cord.set_center((-across.groove_mm / 2.0, -data.here(data.line_mm)))
            self.cord.set_radius(across.groove_mm / 2.0)
        else:
            self.hole.set_xy(_hole(across))


def _up_to(across: EdgeAcross, depth: np.ndarray, end: np.ndarray) -> np.ndarray:
    """A surface from inside the lens up to a point of it near the outline, as points across and up [mm]."""
    inside = across.along_mm < end[0]
    return np.concatenate([np.column_stack([across.along_mm[inside], -depth[inside]]), [end]])


def _on_front(across: EdgeAcross, in_mm: float) -> tuple[float, float]:
    """The point of the front so far inside the outline, across and up [mm]."""
    return -in_mm, -float(np.interp(-in_mm, across.along_mm, across.front_mm))


def _on_back(across: EdgeAcross, in_mm: float) -> tuple[float, float]:
    """The point of the back so far inside the outline, across and up [mm]."""
    return -in_mm, -float(np.interp(-in_mm, across.along_mm, across.back_mm))


def _bevelled(across: EdgeAcross, tip_mm: float) -> np.ndarray:
    """A bevel with flanks of 45 degrees, each down to the foot of the bevel or out into a face."""
    foot, behind_mm = across.deep_mm, across.edge_mm - tip_mm
    if not 0.0 < tip_mm < across.edge_mm:
        return np.array([_on_front(across, foot), _on_back(across, foot)])
    points = [_on_front(across, min(tip_mm, foot)), (0.0, -tip_mm), _on_back(across, min(behind_mm, foot))]
    if tip_mm > foot:
        points.insert(1, (-foot, foot - tip_mm))
    if behind_mm > foot:
        points.insert(-1, (-foot, -tip_mm - foot))
    return np.array(points)


def _rim(deep: float, tip_mm: float, half: float, out: float) -> np.ndarray:
    """A rim with its groove, the bottom of the groove on the outline."""
    ring = [
        (0.0, 0.0),
        (-deep, deep),
        (-deep, half),
        (out, half),
        (out, -half),
        (-deep, -half),
        (-deep, -deep),
    ]
    return np.array(ring) - (0.0, tip_mm)


def _hole(across: EdgeAcross) -> np.ndarray:
    """A hole square through the lens, between both surfaces."""
    sides = -across.hole_in_mm + np.array([-0.5, 0.5]) * across.hole_mm
    front, back = (np.interp(sides, across.along_mm, part) for part in (across.front_mm, across.back_mm))
    return np.column_stack([[*sides, *sides[::-1]], [*-front, *-back[::-1]]])
