"""What is seen through a focimeter: a plain target of lines, each point of it smeared as the lens smears it.

Every line is a row of points. Where a line lies along a principal meridian and its power is on the drum, the
points are smeared along the line only, and it looks sharp. Off the axis the smears lean, and the line breaks
up into strokes.
"""

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.collections import PolyCollection
from matplotlib.patches import Circle

from lablib.optics.focimeter import FocimeterView
from lablib.pictures.captions import HEADING_PT, WORDS_PT, moving_words, write_still
from lablib.pictures.kept import KeptPicture, set_limits
from lablib.pictures.level_scale import LevelScale
from lablib.pictures.palette import INK, MIDLINE, OKABE_ITO, QUIET_INK, Look
from lablib.pictures.window import Box, add_axes, place, shown_px

DRUM = Look(colour=OKABE_ITO["vermilion"], mark="v", width_pt=1.6)
# The drum's scale runs so far either way.
DRUM_D = 12
# A point of the target without a lens, and how far a dioptre smears it to either side.
POINT_PX, PX_PER_D = 1.6, 15.0
_MOST_PX, _FAINTEST = 70.0, 0.008
# Rows of points: how far they reach, how far the points and the three lines lie apart.
_REACH_PX, _STEP_PX, _APART_PX = 108.0, 8.0, 22.0
_FIELD: Box = (22.0, 12.0, 402.0, 392.0)
_FIELD_PX, _NUMBERS_PX = 152.0, 172.0
# Numbers at the sides stand farther out: with a tick before it, 180 would read as less than nothing.
_WIDER_PX = 10.0
_DRUM: Box = (440.0, 300.0, 696.0, 350.0)
_ASIDE_PX = 432.0
_CIRCLE = np.exp(2j * np.pi * np.arange(20) / 20)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """What is seen at a drum reading.

    view: the target; its first lines are the three, its second the single one.
    drum_d: what the drum reads [D].
    """

    view: FocimeterView
    drum_d: float


class FocimeterPicture(KeptPicture):
    """The target in its field with directions round it, the drum as a scale, and in words what is sharp."""

    width_px = 720
    height_px = 404

    def build(self) -> None:
        """Add the field, the drum and the words."""
        self._build_field()
        self._build_drum()
        write_still(self, (_ASIDE_PX, 388.0), "Drum [D]", size=HEADING_PT)
        write_still(self, (_ASIDE_PX, 236.0), "Target", size=HEADING_PT)
        self.lines = tuple(
            moving_words(self, self.drum, (_ASIDE_PX, y), size=HEADING_PT, color=INK)
            for y in (210.0, 186.0, 162.0)
        )
        for y, words in ((98.0, "Directions as facing the wearer,"), (80.0, "back of the lens on the stop.")):
            write_still(self, (_ASIDE_PX, y), words, color=QUIET_INK)

    def update(self, data: Seen) -> None:
        """Draw what is seen.

        data: what was computed.
        """
        for group, line_deg, rows in zip(self.groups, data.view.line_deg, _ROWS, strict=True):
            group.set_verts(_smeared(rows, line_deg, data.view))
            group.set_alpha(_strength(data.view))
        self._draw_drum(data.drum_d)
        for label, words in zip(self.lines, line_words(data.view), strict=True):
            label.set_text(words)

    def _build_field(self) -> None:
        axes = self.field = add_axes(self, _FIELD)
        axes.set_axis_off()
        half = (_FIELD[2] - _FIELD[0]) / 2.0
        set_limits(axes, x=(-half, half), y=(-half, half))
        rim = axes.add_patch(Circle((0.0, 0.0), _FIELD_PX, fill=False, edgecolor=QUIET_INK, linewidth=1.2))
        for direction in range(0, 360, 10):
            self._tick(axes, direction)
        axes.plot([-_FIELD_PX, _FIELD_PX], [0.0, 0.0], zorder=0, **MIDLINE.line())
        self.groups = tuple(
            self.moving(axes.add_collection(PolyCollection([], facecolor=INK, linewidth=0, zorder=3)))
            for _ in range(2)
        )
        for group in self.groups:
            group.set_clip_path(rim)

    def _tick(self, axes: Axes, direction: int) -> None:
        """Add a mark on the rim, and the direction's number to every third."""
        turn, numbered = np.radians(direction), direction % 30 == 0
        inner, outer = _FIELD_PX, _FIELD_PX + (7.0 if numbered else 4.0)
        x, y = np.cos(turn), np.sin(turn)
        axes.plot([inner * x, outer * x], [inner * y, outer * y], color=QUIET_INK, linewidth=1.0)
        if numbered and (direction <= 180):
            middle = (_FIELD[0] + _FIELD[2]) / 2.0, (_FIELD[1] + _FIELD[3]) / 2.0
            away = _NUMBERS_PX + _WIDER_PX * abs(x)
            at = middle[0] + away * x, middle[1] + away * y
            write_still(self, at, f"{direction or 180}", ha="center", color=QUIET_INK)

    def _build_drum(self) -> None:
        marks = {"every_d": 1, "numbered_d": 4, "numbers_y_px": _DRUM[1] + 8.0}
        self.scale = LevelScale(self, _DRUM, most_d=DRUM_D, **marks)
        axes = self.drum = self.scale.axes
        self.mark = self.moving(axes.plot([], [], zorder=6, clip_on=False, **DRUM.point())[0])
        style = {"ha": "center", "va": "center", "zorder": 9, "color": INK, "clip_on": False}
        self.reading = self.label(axes, transform=shown_px(self), fontsize=WORDS_PT, **style)

    def _draw_drum(self, drum_d: float) -> None:
        self.mark.set_data([drum_d], [12.0])
        spot = (self.scale.px(drum_d), _DRUM[3] + 6.0, 0, 0)
        place(self.reading, drum_words(drum_d), [spot], inside=(412.0, 296.0, 716.0, 372.0), taken=[])


def drum_words(drum_d: float) -> str:
    """Return a drum reading with its sign, two decimals or three where there are eighths.

    drum_d: the reading [D].
    """
    digits = 2 if round(drum_d * 100.0, 6).is_integer() else 3
    return f"{drum_d:+.{digits}f}" if drum_d else "0.00"


def line_words(view: FocimeterView) -> tuple[str, str, str]:
    """Return what is seen in words: the three lines, the single line, and whether they are broken.

    view: the target.
    """
    three, single = ("sharp" if sharp else "smeared" for sharp in view.is_sharp)
    first, second = view.line_deg
    broken = "unbroken: no stroke leans" if view.is_unbroken.all() else "broken: strokes lean, off the axis"
    return f"three lines along {first:g}: {three}", f"single line along {second:g}: {single}", broken


def _row(aside_px: float) -> np.ndarray:
    """The points of a line that lies along x, as complex numbers."""
    along = np.arange(-_REACH_PX, _REACH_PX + 1.0, _STEP_PX)
    return along + 1j * aside_px


_ROWS = (np.concatenate([_row(aside) for aside in (-_APART_PX, 0.0, _APART_PX)]), _row(0.0))


def _half_axes(view: FocimeterView) -> tuple[float, float]:
    """Half the long and the short axis of a point's smear, with the point's own size [shown px]."""
    long_px, short_px = (POINT_PX + PX_PER_D * smear for smear in (view.point_long_d, view.point_short_d))
    return min(long_px, _MOST_PX), min(short_px, _MOST_PX)


def _smeared(row: np.ndarray, line_deg: float, view: FocimeterView) -> np.ndarray:
    """The smears of all points of a line, shape (points, corners, 2) [shown px]."""
    long_px, short_px = _half_axes(view)
    smear = (long_px * _CIRCLE.real + 1j * short_px * _CIRCLE.imag) * np.exp(1j * np.radians(view.point_deg))
    points = row * np.exp(1j * np.radians(line_deg))
    corners = points[:, np.newaxis] + smear
    return np.stack([corners.real, corners.imag], axis=-1)


def _strength(view: FocimeterView) -> float:
    """How dark a smeared point is: the same light on more area is fainter."""
    long_px, short_px = _half_axes(view)
    # A little darker than by area alone, as the eye takes it; our own choice.
    return max((POINT_PX**2 / (long_px * short_px)) ** 0.6, _FAINTEST)
