"""Two rims facing the wearer, and a distance along the midline: from the bridge, or from a boxed centre."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.errors import require_between, require_one_of
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.pictures.asked_base import KEY_Y_PX, RIM_PX, WIDE_PX, Asked, AskedPicture, short
from lablib.pictures.asked_sign import Measure, Stand, spots_round, words_in
from lablib.pictures.captions import add_key, moving_words, step_down
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import (
    BOXED_CENTRE,
    GLASS,
    MIDLINE,
    OUTLINE,
    PAPER,
    QUIET_INK,
)
from lablib.pictures.window import place

# Few scales, so that one frame looks larger than another [shown px/mm].
SCALES_PX_PER_MM = (3.7, 3.4, 3.1, 2.8, 2.5, 2.2)
_BRIDGE, _BOXED_CENTRE = "bridge", "boxed centre"
_UP_PX, _MARGIN_PX, _MOST_HALF_B_PX = 125.0, 4.0, 70.0
# The learner's value runs below the midline and out at the foot, the right one above it to the head.
_LEVEL_PX, _MEASURE_PX, _NAMES_PX, _HEAD_PX, _FOOT_PX = 16.0, 11.0, 42.0, 8.0, 33.0
# No distance of a pair of eyes is larger.
_MOST_PD_MM = 60.0
# The distance of both eyes, given for one, is to be seen.
_BOTH_PD_MM = 72.0
_EVERY = 6
_SHADING_PX = 136.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two rims, and what is asked of them.

    a_mm, b_mm, dbl_mm: boxing numbers of the frame [mm].
    right_pd_mm, left_pd_mm: monocular distances from the middle of the bridge [mm]; 0: not shown.
    eye: "right" or "left", the one asked about.
    measured_from: "bridge" where the answer is a distance from the middle of the bridge, "boxed centre"
        where it is the decentration, in positive.
    show_eyes: whether the eyes are named before the right answer is shown.
    shade: whether the lens asked about is shaded before the right answer is shown.

    Raises LabError for a number or a word that cannot be.
    """

    a_mm: float
    b_mm: float
    dbl_mm: float
    right_pd_mm: float
    left_pd_mm: float
    eye: str
    measured_from: str
    show_eyes: bool = True
    shade: bool = True
    frame: Frame = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "frame", Frame(a_mm=self.a_mm, b_mm=self.b_mm, dbl_mm=self.dbl_mm))
        for eye in Eye:
            require_between(f"{eye.value}_pd_mm", self.pd_mm(eye), low=0.0, high=_MOST_PD_MM, unit="mm")
        Eye.of(self.eye)
        require_one_of("measured_from", self.measured_from, (_BRIDGE, _BOXED_CENTRE))

    def pd_mm(self, eye: Eye) -> float:
        """Return the monocular distance that is given for an eye [mm], 0 for none.

        eye: which.
        """
        return self.right_pd_mm if eye is Eye.RIGHT else self.left_pd_mm

    def boxed_centre_mm(self, eye: Eye) -> float:
        """Return where a boxed centre lies, from the middle of the bridge to the observer's right [mm].

        eye: which.
        """
        return -eye.nasal_sign * self.frame.bridge_to_boxed_centre_mm

    def place_mm(self, value: float) -> tuple[float, float]:
        """Return where an answer is measured from and to, from the middle of the bridge [mm].

        value: the answer [mm].
        """
        eye = Eye.of(self.eye)
        if self.measured_from == _BRIDGE:
            return 0.0, -eye.nasal_sign * value
        return self.boxed_centre_mm(eye), self.boxed_centre_mm(eye) + eye.nasal_sign * value


class Rim:
    """One rim of the pair: its outline in its box, its boxed centre, its distance and its name.

    picture: the picture it is part of; eye: whose rim.
    """

    def __init__(self, picture: "PairPicture", eye: Eye) -> None:
        axes, moving = picture.window.axes, picture.moving
        self.picture, self.eye = picture, eye
        self.lens = moving(
            axes.add_patch(Polygon(NOWHERE, zorder=2, edgecolor=OUTLINE.colour, linewidth=OUTLINE.width_pt))
        )
        self.box = moving(axes.plot([], [], color=QUIET_INK, linewidth=0.6, zorder=3)[0])
        self.centre = moving(axes.plot([], [], zorder=6, **BOXED_CENTRE.point())[0])
        self.centre.set_markersize(6)
        self.pd = Measure(picture.window)
        self.name = words_in(picture.window)

    def show(self, case: Pair, *, named: bool, shaded: bool) -> None:
        """Draw a rim.

        case: the pair; named: whether its eye is named; shaded: whether it is, where it is asked about.
        """
        middle, half_a, half_b = case.boxed_centre_mm(self.eye), case.a_mm / 2.0, case.b_mm / 2.0
        outline = case.frame.outline(self.eye)
        self.lens.set_xy(np.column_stack([middle + outline.x_mm[::_EVERY], outline.y_mm[::_EVERY]]))
        asked = shaded and case.eye == self.eye.value
        self.lens.set_facecolor(to_rgba(GLASS.colour, GLASS.opacity) if asked else PAPER)
        x0, x1 = middle - half_a, middle + half_a
        self.box.set_data([x0, x1, x1, x0, x0], [-half_b, -half_b, half_b, half_b, -half_b])
        self.centre.set_data([middle], [0.0])
        x, y = self.picture.window.px(middle, half_b)
        self.name.set_visible(named)
        if named:
            place(self.name, f"{self.eye.value} eye", [(x, y + _NAMES_PX, 0, 0)], **self.picture.space)
        self._show_pd(case)

    def _show_pd(self, case: Pair) -> None:
        distance = case.pd_mm(self.eye)
        if not distance:
            self.pd.hide()
            return
        level = -case.b_mm / 2.0 - _MEASURE_PX / self.picture.window.px_per_mm
        ends = ((0.0, level), (-self.eye.nasal_sign * distance, level))
        self.pd.show(ends, f"PD {short(distance)}", side=-1, **self.picture.space)


class PairPicture(AskedPicture):
    """Two rims as an observer facing the wearer sees them; the one asked about is shaded."""

    case = Pair
    unit, digits = "mm", 1

    def add_case(self) -> None:
        """Add the rims, the bridge, and the boxing numbers."""
        self.add_window(up_px=_UP_PX)
        axes = self.window.axes
        self.midline = self.moving(axes.plot([], [], zorder=4, **MIDLINE.line())[0])
        self.bridge_line = self.moving(axes.plot([], [], zorder=4, **MIDLINE.line())[0])
        self.bridge = self.moving(axes.plot([], [], zorder=3, **OUTLINE.line())[0])
        self.rims = {eye: Rim(self, eye) for eye in Eye}
        self.a, self.dbl = Measure(self.window), Measure(self.window)
        self.b = Measure(self.window, upright=True)
        self.middle = words_in(self.window, color=QUIET_INK)
        self.heading("Two rims, facing the wearer [mm]")
        add_key(self, [(0.0, KEY_Y_PX, BOXED_CENTRE, _BOXED_CENTRE)])
        self.shading = moving_words(self, axes, (_SHADING_PX, KEY_Y_PX), color=QUIET_INK)
        self.shading.set_text("shaded: the lens asked about")

    def show_case(self, case: Pair, data: Asked) -> None:
        """Set rims, bridge and boxing numbers.

        case: the pair; data: the eyes are named, and the lens asked about shaded, once the right answer is
            in it.
        """
        self.window.set_scale(step_down(SCALES_PX_PER_MM, _fits(case)))
        half_dbl, half_b = case.dbl_mm / 2.0, case.b_mm / 2.0
        end = half_dbl + case.a_mm
        self.midline.set_data([-end, end], [0.0, 0.0])
        below = _FOOT_PX / self.window.px_per_mm
        self.bridge_line.set_data([0.0, 0.0], [-half_b - below, half_b])
        arc = np.linspace(-1.0, 1.0, 21)
        self.bridge.set_data(half_dbl * arc, case.b_mm * (0.24 - 0.12 * arc**2))
        self._write_middle(half_b)
        told = data.right is not None
        self.shading.set_visible(case.shade or told)
        for rim in self.rims.values():
            rim.show(case, named=case.show_eyes or told, shaded=case.shade or told)
        self._measure(case)

    def _write_middle(self, half_b: float) -> None:
        x, y = self.window.px(0.0, -half_b)
        place(self.middle, "middle of bridge", [(x, y - _FOOT_PX - 2.0, 0, -1)], **self.space)

    def _measure(self, case: Pair) -> None:
        """Write the boxing numbers at the rim that is not asked about, where there is room."""
        half_a, half_b, half_dbl = (size / 2.0 for size in (case.a_mm, case.b_mm, case.dbl_mm))
        above = half_b + _MEASURE_PX / self.window.px_per_mm
        other = Eye.of(case.eye).other
        middle = case.boxed_centre_mm(other)
        x = middle - other.nasal_sign * 0.3 * case.a_mm
        for measure, ends, words in (
            (self.dbl, ((-half_dbl, above), (half_dbl, above)), f"DBL {short(case.dbl_mm)}"),
            (self.a, ((middle - half_a, above), (middle + half_a, above)), f"A {short(case.a_mm)}"),
        ):
            measure.show(ends, words, side=1, **self.space)
        ends, words = ((x, -half_b), (x, half_b)), f"B {short(case.b_mm)}"
        self.b.show(ends, words, side=other.nasal_sign, share=0.72, **self.space)

    def stand(self, case: Pair, value: float, right: bool) -> Stand:
        """Return where an answer stands on the midline.

        case: the pair; value: the answer [mm]; right: whether it is the right one.
        """
        scale, level = self.window.px_per_mm, (_LEVEL_PX if right else -_LEVEL_PX) / self.window.px_per_mm
        start, end = case.place_mm(value)
        most = (WIDE_PX / 2.0 - RIM_PX) / scale
        shown = float(np.clip(end, -most, most))
        off = "" if shown == end else ("right" if end > 0 else "left")
        line = [(start, level), (shown, level)]
        up = 1 if right else -1
        out = up * (case.b_mm / 2.0 + (_HEAD_PX if right else _FOOT_PX) / scale)
        line += [(shown, out)] if off else [(np.nan, np.nan), (shown, -up * 0.36 * case.b_mm), (shown, out)]
        spots = spots_round(*self.window.px(shown, out), (0, up), gap_px=2.0)
        return Stand(line=np.array(line), mark=(shown, level), spots=spots, off=off)


def _fits(case: Pair) -> float:
    """Return the largest scale at which a pair can be drawn [shown px/mm]."""
    across = (WIDE_PX / 2.0 - _MARGIN_PX) / (case.a_mm + case.dbl_mm / 2.0)
    if case.measured_from == _BRIDGE:
        across = min(across, (WIDE_PX / 2.0 - RIM_PX) / _BOTH_PD_MM)
    return min(across, _MOST_HALF_B_PX / (case.b_mm / 2.0))
