"""A lens cut in two, to scale: the answer is the thickness of an edge, drawn as a bracket beside it."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.patches import Polygon

from lablib.errors import LabError, require_between, require_finite, require_one_of
from lablib.optics.surface import Surface
from lablib.pictures.asked_base import (
    ASIDE_PX,
    BAR_PX,
    HEADING_Y_PX,
    HIGH_PX,
    KEY_Y_PX,
    RIM_PX,
    WIDE_PX,
    Asked,
    AskedPicture,
    short,
)
from lablib.pictures.asked_sign import Measure, Stand, spots_round, words_in
from lablib.pictures.captions import ScaleBar, moving_words, step_down, write_still
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BACK_SURFACE, FRONT_SURFACE, GLASS, INK, MIDLINE, OUTLINE, QUIET_INK
from lablib.pictures.window import place

SCALES_PX_PER_MM = (7.0, 6.0, 5.0, 4.2, 3.5, 2.8, 2.2)
# From the top of the window to the front vertex; beside the lens, brackets and below it, words.
_HEAD_PX, _BESIDE_PX, _FOOT_PX = 82.0, 50.0, 36.0
_MEASURE_PX = 20.0
# How far from the edge the brackets stand: the right one, and outside it the learner's.
_RIGHT_PX, _YOURS_PX, _HOOK_PX = 12.0, 28.0, 5.0
_POINTS, _LONGEST_WORDS = 41, 10
_SIDES = {"left": (-1,), "right": (1,), "both": (-1, 1)}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CutLens:
    """A lens cut in two through its optical centre, front surface up.

    half_left_mm, half_right_mm: from the optical centre to each cut edge, above 0 [mm].
    front_radius_mm, back_radius_mm: positive where the centre lies on the eye's side; 0 for flat [mm].
    centre_mm: thickness at the optical centre, above 0 [mm].
    side: "left", "right" or "both": which edge is asked about.
    left_words, right_words: what each side is called, written once the right answer is shown; empty for none.

    Raises LabError for a number or a word that cannot be, or a surface that does not reach an edge.
    """

    half_left_mm: float
    half_right_mm: float
    front_radius_mm: float
    back_radius_mm: float
    centre_mm: float
    side: str
    left_words: str = ""
    right_words: str = ""
    along_mm: np.ndarray = field(init=False)
    front_mm: np.ndarray = field(init=False)
    back_mm: np.ndarray = field(init=False)

    def __post_init__(self) -> None:
        for name in ("half_left_mm", "half_right_mm", "centre_mm"):
            require_between(name, getattr(self, name), low=0.0, high=60.0, unit="mm", open_low=True)
        require_one_of("side", self.side, tuple(_SIDES))
        for words in (self.left_words, self.right_words):
            if len(words) > _LONGEST_WORDS:
                raise LabError(f"side {words!r} is too long a name: give {_LONGEST_WORDS} letters at most")
        along = np.linspace(-self.half_left_mm, self.half_right_mm, _POINTS)
        object.__setattr__(self, "along_mm", along)
        object.__setattr__(self, "front_mm", _sag_mm("front_radius_mm", self.front_radius_mm, along))
        back = self.centre_mm + _sag_mm("back_radius_mm", self.back_radius_mm, along)
        object.__setattr__(self, "back_mm", back)

    @property
    def middle_mm(self) -> float:
        """Middle of the lens, to the right of its optical centre [mm]."""
        return (self.half_right_mm - self.half_left_mm) / 2.0

    def edge_mm(self, side: int) -> tuple[float, float]:
        """Return how far out an edge lies from the middle of the lens, and the depth of its front [mm].

        side: 1 for the right, -1 for the left.
        """
        front = float(self.front_mm[0 if side < 0 else -1])
        return side * (self.half_left_mm + self.half_right_mm) / 2.0, front


def _sag_mm(name: str, radius_mm: float, along: np.ndarray) -> np.ndarray:
    bent = 1.0 / radius_mm if require_finite(name, radius_mm, unit="mm") else 0.0
    return Surface(flat_per_mm=bent, steep_per_mm=bent).sag_mm(along, np.zeros_like(along))


class SectionPicture(AskedPicture):
    """A lens cut in two, its middle in the middle of the picture; the edges asked about are drawn heavy."""

    case = CutLens
    unit, digits = "mm", 2

    def add_case(self) -> None:
        """Add the cut, its measures and its words."""
        self.add_window(up_px=HIGH_PX - _HEAD_PX)
        axes, moving = self.window.axes, self.moving
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, **GLASS.fill())))
        self.front = moving(axes.plot([], [], zorder=4, **FRONT_SURFACE.line())[0])
        self.back = moving(axes.plot([], [], zorder=4, **BACK_SURFACE.line())[0])
        self.edges = {side: moving(axes.plot([], [], zorder=5, color=OUTLINE.colour)[0]) for side in (-1, 1)}
        self.optical_axis = moving(axes.plot([], [], zorder=3, **MIDLINE.line())[0])
        self.halves = [Measure(self.window) for _ in range(2)]
        self.centre = words_in(self.window)
        self.radii = moving_words(self, axes, (ASIDE_PX, KEY_Y_PX), color=INK)
        self.scale = ScaleBar(self.window, *BAR_PX)
        self.heading("A lens cut in two, front surface up")
        heavy = (self.width_px - ASIDE_PX, HEADING_Y_PX)
        write_still(self, heavy, "heavy edge: asked about", color=QUIET_INK, ha="right")

    def show_case(self, case: CutLens, data: Asked) -> None:
        """Draw the cut.

        case: the lens; data: half-diameters and radii are written once the right answer is in it.
        """
        self.window.set_scale(step_down(SCALES_PX_PER_MM, _fits(case)))
        across = case.along_mm - case.middle_mm
        self.front.set_data(across, -case.front_mm)
        self.back.set_data(across, -case.back_mm)
        ring = np.append(case.front_mm, case.back_mm[::-1])
        self.glass.set_xy(np.column_stack([np.append(across, across[::-1]), -ring]))
        for side, line in self.edges.items():
            at = 0 if side < 0 else -1
            line.set_data([across[at]] * 2, [-case.front_mm[at], -case.back_mm[at]])
            line.set_linewidth(3.2 if side in _SIDES[case.side] else 1.0)
        for depth in (case.front_mm, case.back_mm):
            self.fence(np.column_stack([across, -depth]))
        self._measure(case)
        # What a learner has to work out on the way is not given away before.
        self._tell(case, told=data.right is not None)
        self.scale.update()

    def _measure(self, case: CutLens) -> None:
        """Draw the optical axis, and write the thickness on it below the lens."""
        zero, px = -case.middle_mm, self.window.px_per_mm
        low = float(case.back_mm.max()) + _MEASURE_PX / px
        self.optical_axis.set_data([zero, zero], [_above_mm(case, px), -low])
        x, y = self.window.px(zero, -case.centre_mm)
        words = f"centre {short(case.centre_mm)} mm"
        spots = [
            (x + side * 4.0, y - below, side, -1) for below in (4.0, 9.0, 14.0, 20.0) for side in (1, -1)
        ]
        place(self.centre, words, spots, **self.space)

    def _tell(self, case: CutLens, *, told: bool) -> None:
        """Write half-diameters with the names of both sides, and radii, or nothing."""
        self.radii.set_visible(told)
        self.radii.set_text(f"front {_radius(case.front_radius_mm)},  back {_radius(case.back_radius_mm)}")
        zero, above = -case.middle_mm, _above_mm(case, self.window.px_per_mm)
        ends_mm, names = (-case.half_left_mm, case.half_right_mm), (case.left_words, case.right_words)
        for measure, end, name in zip(self.halves, ends_mm, names, strict=True):
            if not told:
                measure.hide()
                continue
            ends = ((zero, above), (zero + end, above))
            self.fence(np.array(ends))
            measure.show(ends, f"{name} {short(abs(end))} mm".lstrip(), side=1, **self.space)

    def stand(self, case: CutLens, value: float, right: bool) -> Stand:
        """Return a bracket from the front edge down by a thickness, or up where it is negative, at each edge.

        case: the lens; value: thickness [mm]; right: whether it is the right one.
        """
        scale = self.window.px_per_mm
        deepest, highest = (HIGH_PX - _HEAD_PX - RIM_PX) / scale, (RIM_PX - _HEAD_PX) / scale
        lines, gap = [], (_RIGHT_PX if right else _YOURS_PX) / scale
        for side in _SIDES[case.side]:
            edge, front = case.edge_mm(side)
            x, hook = edge + side * gap, edge + side * (gap - _HOOK_PX / scale)
            end = float(np.clip(front + value, highest, deepest))
            lines += [(np.nan, np.nan), (hook, -front), (x, -front), (x, -end), (hook, -end)]
        off = "" if end == front + value else ("up" if value < 0.0 else "down")
        up = 1 if value <= 0.0 else -1
        first = ((-side, up), (0, up), (-side, 0)) if right else ((0, up), (-side, up), (-side, 0))
        spots = spots_round(*self.window.px(x, -end), *first)
        return Stand(line=np.array(lines[1:]), mark=(x, -end), spots=spots, off=off)


def _above_mm(case: CutLens, px_per_mm: float) -> float:
    """Return how high above the front vertex the half-diameters are measured [mm]."""
    return max(0.0, float(-case.front_mm.min())) + _MEASURE_PX / px_per_mm


def _radius(radius_mm: float) -> str:
    return f"radius {short(radius_mm)} mm" if radius_mm else "flat"


def _fits(case: CutLens) -> float:
    """Return the largest scale at which a cut can be drawn [shown px/mm]."""
    across = (WIDE_PX - 2.0 * _BESIDE_PX) / (case.half_left_mm + case.half_right_mm)
    deep = float(max(case.back_mm.max(), case.front_mm.max()) - min(case.front_mm.min(), 0.0))
    return min(across, (HIGH_PX - _HEAD_PX - _FOOT_PX) / deep)
