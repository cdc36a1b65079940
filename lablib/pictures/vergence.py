"""One lens at two distances from the eye: above the axis as tested, below it as worn, with one focus."""

import math
from dataclasses import dataclass

import numpy as np
from matplotlib.collections import LineCollection
from matplotlib.patches import Ellipse

from lablib.optics.power import written_power
from lablib.optics.ray_bundle import RayBundle
from lablib.pictures.captions import HEADING_PT, WORDS_PT, add_key, moving_words, step_down, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.palette import INK, MIDLINE, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import Box, add_axes, place, shown_px

# Few scales, so that the drawing hardly ever changes its size; the focus stays so far from the eye [px].
SCALES_PX_PER_MM = (4.0, 2.6, 1.3, 0.65, 0.32)
_FARTHEST_PX = 300.0
_BOX_PX: Box = (8.0, 42.0, 712.0, 388.0)
_CORNEA_PX, _AXIS_PX = 352.0, 173.0
# Heights from the axis: the outermost ray, the tip of the lens, the measure of the focal length, its words.
_RAY_PX, _TIP_PX, _MEASURE_PX, _WORDS_PX, _HEADING_PX = 96.0, 108.0, 126.0, 138.0, 162.0
_TICK_PX, _EYE_MM = 4.0, 24.0
# Height of the outermost ray of the bundles that are handed in.
HALF_WIDTH_MM = 20.0

TESTED = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=1.5)
WORN = Look(colour=OKABE_ITO["vermilion"], dashes=(0, (6, 1.5)), width_pt=1.5)
TRACED_BACK = Look(colour=QUIET_INK, dashes=(0, (1, 2)), width_pt=1.1)
FOCUS = Look(colour=INK, mark="o", hollow=True, width_pt=1.6)


@dataclass(frozen=True, slots=True, kw_only=True)
class LensAway:
    """A lens so far before the cornea, with the light from far off that passes it.

    power_d: [D]; away_mm: from the cornea [mm]; rays: of its light.
    """

    power_d: float
    away_mm: float
    rays: RayBundle

    @property
    def focus_mm(self) -> float:
        """Where its light meets, from the cornea, minus in front; infinite where it is parallel [mm]."""
        return self.rays.focus_z_mm - self.away_mm if math.isfinite(self.rays.focus_z_mm) else math.inf


@dataclass(frozen=True, slots=True, kw_only=True)
class VertexMove:
    """A lens as tested and the one that does the same as worn.

    tested, worn: the two lenses.
    """

    tested: LensAway
    worn: LensAway


class _Half:
    """What is drawn of one lens, on its own side of the axis.

    side: 1 above the axis, -1 below it.
    """

    def __init__(self, picture: "VergencePicture", side: int, look: Look) -> None:
        self.side, moving, axes = side, picture.moving, picture.axes
        self.rays = moving(axes.add_collection(LineCollection([], zorder=3)))
        self.rays.set(color=look.colour, linewidth=look.width_pt, linestyle=look.dashes)
        self.back = moving(axes.add_collection(LineCollection([], zorder=2)))
        self.back.set(color=TRACED_BACK.colour, linewidth=TRACED_BACK.width_pt, linestyle=TRACED_BACK.dashes)
        self.lens = moving(axes.plot([], [], color=INK, linewidth=2.2, solid_joinstyle="miter", zorder=5)[0])
        self.measure = moving(axes.plot([], [], color=INK, linewidth=0.9, zorder=5)[0])
        at = (14.0, _BOX_PX[1] + _AXIS_PX + side * _HEADING_PX)
        self.heading = moving_words(picture, axes, at, size=HEADING_PT, color=INK)
        self.words = picture.label(
            axes, transform=shown_px(picture), fontsize=WORDS_PT, ha="center", va="center", zorder=9
        )

    def update(self, one: LensAway, scale: float, picture: "VergencePicture") -> None:
        """Draw a lens at a scale [shown px/mm]."""
        rays, z = one.rays, -one.away_mm
        pieces = [(rays.incoming_z_mm, rays.incoming_y_mm), (rays.leaving_z_mm, rays.leaving_y_mm)]
        self.rays.set_segments([line for piece in pieces for line in self._lines(*piece, z)])
        self.back.set_segments(self._lines(rays.drawn_back_z_mm, rays.drawn_back_y_mm, z))
        # The head of an arrow points outwards on a plus lens, inwards on a minus lens; plano has a bar.
        aside, down = 6.0 / scale, 9.0 * np.sign(one.power_d)
        tip, neck = self.side * _TIP_PX, self.side * (_TIP_PX - down)
        self.lens.set_data([z, z, np.nan, z - aside, z, z + aside], [0.0, tip, np.nan, neck, tip, neck])
        self._measure(one, scale, picture)

    def _lines(self, z_mm: np.ndarray, y_mm: np.ndarray, shift: float) -> list[np.ndarray]:
        """The pieces of the rays on this side of the axis, with heights in pixels."""
        heights = y_mm * (_RAY_PX / HALF_WIDTH_MM)
        mine = self.side * heights[:, 0] > 0.0
        return [np.column_stack(ends) for ends in zip(z_mm[mine] + shift, heights[mine], strict=True)]

    def _measure(self, one: LensAway, scale: float, picture: "VergencePicture") -> None:
        """Draw the focal length beside the rays, to the rim of the picture where the focus lies beyond it."""
        parallel = math.isinf(one.focus_mm)
        self.measure.set_visible(not parallel)
        start, level = -one.away_mm, self.side * _MEASURE_PX
        left, right = (edge / scale for edge in (-_CORNEA_PX, _BOX_PX[2] - _BOX_PX[0] - _CORNEA_PX))
        end = start if parallel else min(max(one.focus_mm, left), right)
        points = [(start, level), (end, level)]
        for stop in (start, end) if end == one.focus_mm else (start,):
            points += [(np.nan, np.nan), (stop, level - _TICK_PX), (stop, level + _TICK_PX)]
        self.measure.set_data(*zip(*points, strict=True))
        words = "parallel: no focus" if parallel else f"f = {one.rays.focus_z_mm / 10.0:+.1f} cm"
        at = (picture.px((start + end) / 2.0), _BOX_PX[1] + _AXIS_PX + self.side * _WORDS_PX, 0, 0)
        place(self.words, words, [at], inside=_BOX_PX, taken=[])


class VergencePicture(KeptPicture):
    """Light from far off comes from the left; places along the axis are true to scale, heights are not.

    Above the axis the lens as tested, below it the lens as worn; the focus is one point for both.
    """

    width_px = 720
    height_px = 404

    def build(self) -> None:
        """Add axis, eye, both halves and the key."""
        self.axes = add_axes(self, _BOX_PX)
        self.axes.set_axis_off()
        self.scale = SCALES_PX_PER_MM[0]
        self.axes.plot([-9e3, 9e3], [0.0, 0.0], zorder=1, **MIDLINE.line())
        # The line of the cornea leaves out the height at which the lower focal length is written.
        heights = [-_HEADING_PX - 6.0, -_WORDS_PX - 9.0, np.nan, -_WORDS_PX + 9.0, _TIP_PX]
        self.axes.plot(np.zeros(5), heights, color=QUIET_INK, linewidth=1.0, zorder=1)
        style = {"facecolor": "none", "edgecolor": QUIET_INK, "linewidth": 1.2, "zorder": 1}
        self.eye = self.moving(self.axes.add_patch(Ellipse((_EYE_MM / 2.0, 0.0), _EYE_MM, 1.0, **style)))
        self.halves = (_Half(self, 1, TESTED), _Half(self, -1, WORN))
        self.focus = self.moving(self.axes.plot([], [], zorder=7, **FOCUS.point())[0])
        cornea = (_BOX_PX[0] + _CORNEA_PX + 5.0, _BOX_PX[1] + _AXIS_PX - _HEADING_PX)
        write_still(self, cornea, "cornea", color=QUIET_INK)
        add_key(self, _KEY)

    def px(self, z_mm: float) -> float:
        """Return where a place along the axis lies, from the picture's left rim [shown px].

        z_mm: from the cornea, minus in front of it [mm].
        """
        return _BOX_PX[0] + _CORNEA_PX + z_mm * self.scale

    def update(self, data: VertexMove) -> None:
        """Draw a lens as tested and as worn.

        data: both.
        """
        focus = data.tested.focus_mm
        far = abs(focus) if math.isfinite(focus) else math.inf
        self.scale = step_down(SCALES_PX_PER_MM, _FARTHEST_PX / far if far else SCALES_PX_PER_MM[0])
        width = _BOX_PX[2] - _BOX_PX[0]
        x = (-_CORNEA_PX / self.scale, (width - _CORNEA_PX) / self.scale)
        set_limits(self.axes, x=x, y=(-_AXIS_PX, _BOX_PX[3] - _BOX_PX[1] - _AXIS_PX))
        self.eye.set_height(_EYE_MM * self.scale)
        for half, one, name in zip(self.halves, (data.tested, data.worn), ("tested", "worn"), strict=True):
            half.update(one, self.scale, self)
            half.heading.set_text(f"As {name}: {written_power(one.power_d)} D, {_place(one.away_mm)}")
        self.focus.set_data([focus if math.isfinite(focus) else np.nan], [0.0])


def _place(away_mm: float) -> str:
    return f"{away_mm:g} mm from the cornea" if away_mm else "on the cornea"


_KEY = (
    (14.0, 18.0, TESTED, "light, lens as tested"),
    (186.0, 18.0, WORN, "light, lens as worn"),
    (350.0, 18.0, TRACED_BACK, "traced back"),
    (470.0, 18.0, FOCUS, "focus; light from the left"),
)
