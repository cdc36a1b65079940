"""A lens in its box with a ruler beside it: the answer is a level, from the midline or the lowest tangent."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.errors import LabError, require_between, require_finite, require_one_of
from lablib.optics.eye import Eye
from lablib.optics.limits import limit
from lablib.pictures.asked_base import ASIDE_PX, HEADING_Y_PX, HIGH_PX, KEY_Y_PX, RIM_PX, Asked, AskedPicture
from lablib.pictures.asked_outline import FrontCase
from lablib.pictures.asked_sign import Stand, spots_round, words_in
from lablib.pictures.captions import HEADING_PT, KeyWhereDrawn, add_key, moving_words, step_down
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BOXED_CENTRE, ENGRAVING, GLASS, INK, MIDLINE, OUTLINE, QUIET_INK
from lablib.pictures.window import place

# Few scales, so that one lens looks larger than another [shown px/mm].
SCALES_PX_PER_MM = (5.2, 4.7, 4.2, 3.7, 3.2, 2.6, 2.0)
_MIDLINE, _TANGENT = "midline", "lowest tangent"
# The lens has words at its left and the ruler at its right.
_ACROSS_PX, _MOST_HALF_A_PX, _MOST_HALF_B_PX = 296.0, 132.0, 102.0
_RULER_PX, _TICKS_PX, _NUMBERS_PX, _LEFT_PX = 10.0, (4.0, 7.0, 11.0), 27.0, 9.0
_HALF_MARK_PX = 7.0
_LONG, _MIDDLE = 10, 5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Level(FrontCase):
    """One lens in its box, of which a level is asked.

    half_b_mm: half the boxed height [mm].
    eye: "right" or "left".
    measured_from: what an answer counts up from, "midline" or "lowest tangent".
    engraving_x_mm: engravings to the observer's right of the boxed centre [mm]; none at all, or two.
    engraving_y_mm: their level above the midline [mm].

    Raises LabError as `FrontCase` does, and for a number or a word that cannot be.
    """

    half_b_mm: float
    eye: str
    measured_from: str
    engraving_x_mm: tuple[float, ...] = ()
    engraving_y_mm: float = 0.0
    half_a_mm: float = field(init=False)

    def __post_init__(self) -> None:
        # Zero-argument super() does not work in a dataclass with slots.
        FrontCase.__post_init__(self)
        low, high = (end / 2.0 for end in limit("b_mm"))
        require_between("half_b_mm", self.half_b_mm, low=low, high=high, unit="mm")
        Eye.of(self.eye)
        require_one_of("measured_from", self.measured_from, (_MIDLINE, _TANGENT))
        if len(self.engraving_x_mm) not in (0, 2):
            raise LabError(f"{len(self.engraving_x_mm)} engraving(s) of a drawing: give two, or none")
        for value in (*self.engraving_x_mm, self.engraving_y_mm):
            require_finite("engraving of a drawing", value, unit="mm")
        object.__setattr__(self, "half_a_mm", float(np.abs(self.outline.real).max()))

    @property
    def zero_mm(self) -> float:
        """Where an answer counts from, above the midline [mm]."""
        return 0.0 if self.measured_from == _MIDLINE else -self.half_b_mm


class LevelPicture(AskedPicture):
    """A lens as an observer facing the wearer sees it, between the tangents of its box, beside a ruler."""

    case = Level
    unit, digits = "mm", 1

    def add_case(self) -> None:
        """Add lens, box, ruler and engravings."""
        self.add_window(up_px=HIGH_PX / 2.0, across_px=_ACROSS_PX)
        axes, moving = self.window.axes, self.moving
        style = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.lens = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, linewidth=OUTLINE.width_pt, **style)))
        self.box = moving(axes.plot([], [], color=QUIET_INK, linewidth=0.6, zorder=3)[0])
        self.midline = moving(axes.plot([], [], zorder=3, **MIDLINE.line())[0])
        self.ruler = moving(axes.plot([], [], color=INK, linewidth=0.8, zorder=4)[0])
        self.centre = moving(axes.plot([], [], zorder=5, **BOXED_CENTRE.point())[0])
        self.centre.set_markersize(6)
        self.engravings = moving(axes.plot([], [], zorder=6, **ENGRAVING.point())[0])
        most = int(limit("b_mm")[1]) // _LONG + 1
        self.numbers = [words_in(self.window, color=QUIET_INK) for _ in range(most)]
        self.sides = [words_in(self.window, color=QUIET_INK) for _ in range(2)]
        self.head = moving_words(self, axes, (ASIDE_PX, HEADING_Y_PX), size=HEADING_PT, color=INK)
        add_key(self, [(0.0, KEY_Y_PX, BOXED_CENTRE, "boxed centre")])
        self.counted = moving_words(self, axes, (124.0, KEY_Y_PX), color=QUIET_INK)
        self.engraving_key = KeyWhereDrawn(self, axes, (372.0, KEY_Y_PX, ENGRAVING, "engraving"))

    def show_case(self, case: Level, data: Asked) -> None:
        """Draw the lens about its boxed centre, and the ruler.

        case: the lens; data: nothing else counts.
        """
        across, up = _MOST_HALF_A_PX / case.half_a_mm, _MOST_HALF_B_PX / case.half_b_mm
        self.window.set_scale(step_down(SCALES_PX_PER_MM, min(across, up)))
        half_a, half_b = case.half_a_mm, case.half_b_mm
        self.lens.set_xy(np.column_stack([case.outline.real, case.outline.imag]))
        end = half_a + _RULER_PX / self.window.px_per_mm
        self.box.set_data([-half_a, end, np.nan, -half_a, end], [half_b, half_b, np.nan, -half_b, -half_b])
        self.midline.set_data([-half_a, end], [0.0, 0.0])
        self.centre.set_data([0.0], [0.0])
        self.engravings.set_data(case.engraving_x_mm, [case.engraving_y_mm] * len(case.engraving_x_mm))
        self.engraving_key.show(bool(case.engraving_x_mm))
        self._keep_clear([(0.0, 0.0), *((x, case.engraving_y_mm) for x in case.engraving_x_mm)])
        self.fence(np.column_stack([case.outline.real, case.outline.imag]))
        self._show_ruler(case, end)
        self._write(case)

    def _keep_clear(self, marks: list[tuple[float, float]]) -> None:
        for mark in marks:
            x, y = self.window.px(*mark)
            half = _HALF_MARK_PX
            self.taken.append((x - half, y - half, x + half, y + half))

    def _show_ruler(self, case: Level, left: float) -> None:
        """Draw a tick for each millimetre from tangent to tangent, with a number at every tenth."""
        counted = np.arange(np.ceil(-case.half_b_mm - case.zero_mm), case.half_b_mm - case.zero_mm + 1e-9)
        long, middle = counted % _LONG == 0, counted % _MIDDLE == 0
        length = np.select([long, middle], _TICKS_PX[:0:-1], _TICKS_PX[0]) / self.window.px_per_mm
        level = counted + case.zero_mm
        gap = np.full_like(level, np.nan)
        ticks = np.column_stack([np.full_like(level, left), left + length, gap]).ravel()
        upright = [left, left, np.nan], [-case.half_b_mm, case.half_b_mm, np.nan]
        levels = np.column_stack([level, level, gap]).ravel()
        self.ruler.set_data(np.append(upright[0], ticks), np.append(upright[1], levels))
        beyond = left + _NUMBERS_PX / self.window.px_per_mm
        self._number(counted[long], [self.window.px(beyond, one) for one in level[long].tolist()])

    def _number(self, counted: np.ndarray, at_px: list[tuple[float, float]]) -> None:
        for label in self.numbers:
            label.set_visible(False)
        for label, number, spot in zip(self.numbers, counted.tolist(), at_px, strict=False):
            label.set_visible(True)
            place(label, f"{number:g}", [(*spot, 0, 0)], **self.space)

    def _write(self, case: Level) -> None:
        """Say which eye it is, what an answer counts from, and where the nose is."""
        eye = Eye.of(case.eye)
        self.head.set_text(f"Lens of the {eye.value} eye, facing the wearer [mm]")
        self.counted.set_text(f"ruler counts from the {case.measured_from}")
        for label, side in zip(self.sides, (-1, 1), strict=True):
            x, y = self.window.px(side * case.half_a_mm, case.half_b_mm)
            words = "nasal" if side == eye.nasal_sign else "temporal"
            place(label, words, [(x, y + 4.0, -side, 1)], **self.space)

    def stand(self, case: Level, value: float, right: bool) -> Stand:
        """Return a level across the lens to the ruler.

        case: the lens; value: above what it counts from [mm]; right: whether it is the right one.
        """
        scale = self.window.px_per_mm
        most = (HIGH_PX / 2.0 - RIM_PX) / scale
        up = value + case.zero_mm
        shown = float(np.clip(up, -most, most))
        left, end = -case.half_a_mm - _LEFT_PX / scale, case.half_a_mm + _RULER_PX / scale
        off = "" if shown == up else ("up" if up > 0.0 else "down")
        line = [(left, 0.0), (left, shown)] if off else [(left, shown), (end, shown)]
        beside = ((-1, 0), (-1, 1), (-1, -1)) if right else ((-1, 0), (-1, -1), (-1, 1))
        spots = spots_round(*self.window.px(left, shown), *beside)
        return Stand(line=np.array(line), mark=(left, shown), spots=spots, off=off)
