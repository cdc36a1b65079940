"""A spherical cap on its chord, to scale: the answer is its height, the sagitta."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.patches import Polygon

from lablib.errors import require_between
from lablib.optics.surface import sagitta_mm
from lablib.pictures.asked_base import BAR_PX, HIGH_PX, RIM_PX, Asked, AskedPicture, short
from lablib.pictures.asked_sign import Measure, Stand, spots_round, words_in
from lablib.pictures.captions import ScaleBar, step_down
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import FRONT_SURFACE, GLASS, MIDLINE, OUTLINE, QUIET_INK
from lablib.pictures.window import place

SCALES_PX_PER_MM = (9.0, 7.5, 6.0, 5.0, 4.0, 3.3, 2.7, 2.2)
# The chord lies so far above the lower rim of the window; the cap has the rest, less room for words.
_CHORD_UP_PX, _ROOM_PX = 84.0, 24.0
_LONGEST_CHORD_PX = 390.0
_MEASURE_PX = 14.0
# Who takes the chord for its half gets a height more than four times the right one. It is to be seen, unless
# the scale would have to be smaller than this for it.
_TIMES, _LEAST_FOR_WRONG = 4.6, 4.0
_POINTS = 41


@dataclass(frozen=True, slots=True, kw_only=True)
class Cap:
    """A cap of a sphere.

    radius_mm: of the sphere, above 0 [mm].
    chord_mm: across the cap, above 0 [mm].

    Raises LabError for a number that cannot be, or a chord longer than the sphere is wide.
    """

    radius_mm: float
    chord_mm: float
    height_mm: float = field(init=False)

    def __post_init__(self) -> None:
        require_between("radius_mm", self.radius_mm, low=0.0, high=1e5, unit="mm", open_low=True)
        require_between("chord_mm", self.chord_mm, low=0.0, high=120.0, unit="mm", open_low=True)
        object.__setattr__(self, "height_mm", sagitta_mm(self.radius_mm, self.chord_mm / 2.0))


def arc_mm(half_chord_mm: float, height_mm: float) -> np.ndarray:
    """Return points of the arc over a chord, from its left end to its right end, shape (N, 2) [mm].

    half_chord_mm: half the chord, which lies at height zero about its middle.
    height_mm: of the arc's middle above the chord, below it where negative.
    """
    # The angle at the rim of the chord between chord and apex is a quarter of the arc's own.
    quarter = np.arctan2(height_mm, half_chord_mm)
    if quarter == 0.0:
        return np.column_stack([np.linspace(-half_chord_mm, half_chord_mm, _POINTS), np.zeros(_POINTS)])
    radius = half_chord_mm / np.sin(2.0 * quarter)
    turn = np.linspace(-2.0 * quarter, 2.0 * quarter, _POINTS)
    return np.column_stack([radius * np.sin(turn), height_mm - radius * (1.0 - np.cos(turn))])


class CapPicture(AskedPicture):
    """A cap of a sphere, its chord level, and the middle of the chord in the middle of the picture."""

    case = Cap
    unit, digits = "mm", 2

    def add_case(self) -> None:
        """Add the cap, its chord and its radius."""
        self.add_window(up_px=_CHORD_UP_PX)
        axes, moving = self.window.axes, self.moving
        self.cap = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **GLASS.fill())))
        self.surface = moving(axes.plot([], [], zorder=4, **FRONT_SURFACE.line())[0])
        self.chord = moving(axes.plot([], [], zorder=4, **OUTLINE.line())[0])
        self.middle = moving(axes.plot([], [], zorder=3, **MIDLINE.line())[0])
        self.radius = moving(axes.plot([], [], color=QUIET_INK, linewidth=0.9, zorder=3)[0])
        self.radius_words = words_in(self.window)
        self.chord_measure = Measure(self.window)
        self.scale = ScaleBar(self.window, *BAR_PX)
        self.heading("A surface on its chord, to scale")

    def show_case(self, case: Cap, data: Asked) -> None:
        """Draw the cap.

        case: the cap; data: nothing else counts.
        """
        self.window.set_scale(step_down(SCALES_PX_PER_MM, _fits(case)))
        half, arc = case.chord_mm / 2.0, arc_mm(case.chord_mm / 2.0, case.height_mm)
        self.cap.set_xy(arc)
        self.surface.set_data(arc[:, 0], arc[:, 1])
        self.chord.set_data([-half, half], [0.0, 0.0])
        self.fence(arc)
        low = -_CHORD_UP_PX / self.window.px_per_mm
        self.middle.set_data([0.0, 0.0], [low, case.height_mm])
        below = -_MEASURE_PX / self.window.px_per_mm
        ends, words = ((-half, below), (half, below)), f"chord {short(case.chord_mm)} mm"
        self.fence(np.array(ends))
        self.chord_measure.show(ends, words, side=-1, share=0.22, **self.space)
        self._show_radius(case, low)
        self.scale.update()

    def _show_radius(self, case: Cap, low: float) -> None:
        """Draw the radius from the right end of the chord towards the centre, as far as the picture goes."""
        half, centre = case.chord_mm / 2.0, case.height_mm - case.radius_mm
        foot = max(low, centre)
        x = half * (foot - centre) / -centre if centre < 0.0 else 0.0
        self.radius.set_data([x, half], [foot, 0.0])
        self.fence(np.array([(x, foot), (half, 0.0)]))
        at = self.window.px(x + 0.3 * (half - x), 0.7 * foot)
        spots = spots_round(*at, (1, -1), (-1, 0), (1, 0), gap_px=6.0)
        words = f"radius {short(case.radius_mm)} mm"
        place(self.radius_words, words, spots, **self.space)

    def stand(self, case: Cap, value: float, right: bool) -> Stand:
        """Return the arc over the chord that has a height, with the height drawn in its middle.

        case: the cap; value: height [mm]; right: whether it is the right one.
        """
        scale = self.window.px_per_mm
        low = (RIM_PX - _CHORD_UP_PX) / scale
        high = (HIGH_PX - _CHORD_UP_PX - RIM_PX) / scale
        shown = float(np.clip(value, low, high))
        off = "" if shown == value else ("up" if value > 0.0 else "down")
        line = np.array([(0.0, 0.0), (0.0, shown)])
        if not off:
            line = np.concatenate([arc_mm(case.chord_mm / 2.0, shown), [(np.nan, np.nan)], line])
        away = 1 if right else -1
        spots = spots_round(*self.window.px(0.0, shown), (away, 1), (away, 0), (-away, 1), (away, -1))
        return Stand(line=line, mark=(0.0, shown), spots=spots, off=off)


def _fits(case: Cap) -> float:
    """Return the largest scale at which a cap can be drawn, and one of the whole chord [shown px/mm]."""
    room = HIGH_PX - _CHORD_UP_PX - _ROOM_PX
    whole_chord = max(room / (_TIMES * case.height_mm), _LEAST_FOR_WRONG)
    return min(_LONGEST_CHORD_PX / case.chord_mm, room / case.height_mm, whole_chord)
