"""Two lenses facing the wearer, a point looked through, and its base: the learner's and the right one."""

import numpy as np
from matplotlib.lines import Line2D

from lablib.optics.base_notation import base_notations
from lablib.optics.eye import Eye
from lablib.optics.prism import in_words
from lablib.pictures.asked_base import BAR_PX, KEY_Y_PX, RIM_PX, Asked, AskedPicture, Value, short
from lablib.pictures.asked_prism_lens import RADIUS_MM, LensAsked
from lablib.pictures.asked_prism_pair_data import BETWEEN, CENTRE_IN, TOGETHER, PrismCase, as_drawn
from lablib.pictures.asked_sign import Measure, Stand, spots_round, words_in
from lablib.pictures.captions import add_key, step_down, write_still
from lablib.pictures.palette import INK, OPTICAL_CENTRE, QUIET_INK
from lablib.pictures.prism_field_arrows import PUPIL, arrows
from lablib.pictures.window import Spot, place
from lablib.working import plain

# Few lengths of a prism dioptre, so that one answer looks larger than another [shown px].
SCALES_PX_PER_PRISM_D = (40.0, 34.0, 28.0, 24.0, 20.0, 17.0, 14.0, 12.0, 10.0, 8.5, 7.0, 6.0, 5.0, 4.2, 3.5)
_LONGEST_PX, _HEAD_PX, _ASIDE_PX, _UP_PX = 58.0, 9.0, 6.0, 126.0
# The mark of an arrow stands on its shaft, so that its head is seen; that of a short one at its end.
_ON_SHAFT, _SHORT_PX = 0.45, 24.0
_MEASURE_MM, _BESIDE_BRIDGE_MM = RADIUS_MM + 1.4, 3.5
_NOSE_MM = np.array([(-1.6, -3.0), (-2.4, -9.0), (-4.6, -14.0), (-4.4, -16.6), (-1.6, -17.2), (0.0, -18.0)])
_NOSE_WORDS_MM, _BARS_MM, _ALOFT_MM = 0.0, 4.0, 30.0
# The learner's answer is written below the right one.
_LINES_PX = (8.0, 24.0)
# Words that stand apart from their arrow begin with its mark.
_MARKS = {"yours": "○ ", "right answer": "◆ ", "right, and yours": "◆ "}


class PrismPairPicture(AskedPicture):
    """Both lenses as an observer facing the wearer sees them, the nose between; what is asked is shaded."""

    case = PrismCase
    unit, digits = "prism dioptres", 2

    def add_case(self) -> None:
        """Add both lenses, the nose, the ordered base, and what an arrow's length means."""
        self.add_window(up_px=_UP_PX)
        axes = self.window.axes
        self.sides: dict[float, Line2D] = {}
        for side in (-1.0, 1.0):
            self.sides[side] = self.moving(axes.plot([], [], color=QUIET_INK, linewidth=1.2, zorder=1)[0])
        self.nose = words_in(self.window, color=QUIET_INK)
        self.lenses = {eye: LensAsked(self, eye) for eye in Eye}
        self.centres, self.pupils = Measure(self.window), Measure(self.window)
        self.order = self.moving(axes.plot([], [], color=INK, linewidth=1.6, zorder=7)[0])
        self.order_words = words_in(self.window)
        style = {"color": INK, "linewidth": 1.2, "marker": "|", "markersize": 6, "clip_on": False}
        self.bar = self.moving(axes.plot([], [], **style)[0])
        self.heading("Facing the wearer [mm]")
        write_still(self, (BAR_PX[0] - 60.0, KEY_Y_PX), "1 prism dioptre")
        add_key(self, [(0.0, KEY_Y_PX, OPTICAL_CENTRE, "optical centre")])
        add_key(self, [(124.0, KEY_Y_PX, PUPIL, "point looked through")])

    def show_case(self, case: PrismCase, data: Asked) -> None:
        """Set lenses, distances and the ordered base.

        case: the pair; data: each eye's base is shown once the right answer is in it.
        """
        self.shown_case, told = case, data.right is not None
        scale = step_down(SCALES_PX_PER_PRISM_D, _LONGEST_PX / case.reach_prism_d)
        self.window.set_scale(case.px_per_mm)
        self.mm_per_prism_d = scale / case.px_per_mm
        right, level = self.window.mm(BAR_PX[0] - 70.0, BAR_PX[1])
        self.bar.set_data([right - self.mm_per_prism_d, right], [level, level])
        self._show_nose(case.bridge_mm.real)
        for lens in self.lenses.values():
            lens.show(case, told=told)
        self._measure_both(case)
        self._show_order(case)

    def _show_nose(self, middle_mm: float) -> None:
        for side, line in self.sides.items():
            line.set_data(middle_mm + side * _NOSE_MM[:, 0], _NOSE_MM[:, 1])
            self.fence(line.get_xydata())
        place(self.nose, "nose", [(*self.window.px(middle_mm, _NOSE_WORDS_MM), 0, 0)], **self.space)

    def _measure_both(self, case: PrismCase) -> None:
        for measure, words, level, where in (
            (self.centres, "C", _MEASURE_MM, case.centre_mm),
            (self.pupils, "PD_both", -_MEASURE_MM, case.point_mm),
        ):
            if case.asked != TOGETHER:
                measure.hide()
                continue
            ends = tuple((where(eye).real, level) for eye in Eye)
            whole = abs(ends[1][0] - ends[0][0])
            measure.show(ends, f"{words} {short(whole)}", side=1 if level > 0.0 else -1, **self.space)

    def _show_order(self, case: PrismCase) -> None:
        shown = case.order != 0
        self.order.set_visible(shown)
        self.order_words.set_visible(shown)
        if not shown:
            return
        line = self.arrow(case.point_mm(case.eyes[0]), case.order)
        self.order.set_data(*line.T)
        self.fence(line)
        x, y = self.window.px(*line[1])
        way = case.order / abs(case.order)
        words = f"ordered: {in_words(case.order_in_prism_d, case.order_up_prism_d)}"
        place(self.order_words, words, spots_round(x, y, (way.real, way.imag)), **self.space)

    def mark(self, point: complex) -> None:
        """Keep words off a mark.

        point: where it stands, x + iy [mm].
        """
        x, y = self.window.px(point.real, point.imag)
        self.taken.append((x - 7.0, y - 7.0, x + 7.0, y + 7.0))

    def arrow(self, start: complex, prism: complex) -> np.ndarray:
        """Return an arrow to a base as a line, shape (7, 2) [mm].

        start: where it begins, x + iy [mm]; prism: as drawn, x + iy [prism D].
        """
        return arrows(start, prism * self.mm_per_prism_d, head=_HEAD_PX / self.window.px_per_mm)

    def stand(self, case: PrismCase, value: Value, right: bool) -> Stand:
        """Return the base, or the optical centre, that an answer means.

        case: the pair; value: the answer; right: whether it is the right one.
        """
        found = [self._reach(start, end, right) for start, end in self._ends(case, value, right)]
        start, reach, off = found[0]
        head = 0.0 if case.is_distance or off else _HEAD_PX / self.window.px_per_mm
        line = np.concatenate([arrows(one, length, head=head) for one, length, _ in found])
        is_short = abs(reach) * self.window.px_per_mm < _SHORT_PX
        at = start + reach * (1.0 if case.is_distance or off or is_short else _ON_SHAFT)
        return Stand(line=line, mark=(at.real, at.imag), spots=self._spots(case, right), off=off)

    def _ends(self, case: PrismCase, value: Value, right: bool) -> list[tuple[complex, complex]]:
        """Where the lines of an answer begin, and how far they reach, x + iy [mm]."""
        if case.asked == BETWEEN:
            across = _BESIDE_BRIDGE_MM if right else -_BESIDE_BRIDGE_MM
            return [(complex(across, _BARS_MM), complex(0.0, value * self.mm_per_prism_d))]
        if case.is_distance:
            way = (value, 0.0) if case.asked == CENTRE_IN else (0.0, value)
            return [(case.point_mm(eye), as_drawn(eye, *way)) for eye in case.eyes]
        # What both eyes get together is half before each.
        share = self.mm_per_prism_d / len(case.eyes)
        return [(case.point_mm(eye), as_drawn(eye, value[0] * share, value[1] * share)) for eye in case.eyes]

    def _reach(self, start: complex, reach: complex, right: bool) -> tuple[complex, complex, str]:
        """Move the learner's line aside from the right one, and cut a line off at the rim of the drawing."""
        size = max(abs(reach.real), abs(reach.imag))
        if not size:
            return start, 0j, ""
        way = reach / size
        way /= abs(way)
        start += way * (0.0 if right else 1j) * _ASIDE_PX / self.window.px_per_mm
        left, low, end, high = self.window.box_px
        x0, y0 = self.window.mm(left + RIM_PX, low + RIM_PX)
        x1, y1 = self.window.mm(end - RIM_PX, high - RIM_PX)
        fits = 1.0
        for at, along, least, most in ((start.real, reach.real, x0, x1), (start.imag, reach.imag, y0, y1)):
            if along:
                fits = min(fits, ((most if along > 0.0 else least) - at) / along)
        if fits >= 1.0:
            return start, reach, ""
        sideways = abs(way.real) >= abs(way.imag)
        off = ("right" if way.real > 0.0 else "left") if sideways else ("up" if way.imag > 0.0 else "down")
        return start, reach * fits, off

    def _spots(self, case: PrismCase, right: bool) -> list[Spot]:
        """Where the words of an answer stand: above or below a pair, or on a line below one lens."""
        if case.asked == TOGETHER:
            return spots_round(*self.window.px(0.0, _ALOFT_MM if right else -_ALOFT_MM), (0, 0))
        if case.asked == BETWEEN:
            return spots_round(*self.window.px(0.0, _ALOFT_MM), (1 if right else -1, 0))
        left, low, end, _ = self.window.box_px
        return [((left + end) / 2.0, low + _LINES_PX[right], 0, 0)]

    def same(self, one: Value, other: Value) -> bool:
        """Return whether two answers are closer than anyone could see or read here."""
        pairs = zip(one, other, strict=True) if isinstance(one, tuple) else ((one, other),)
        return all(AskedPicture.same(self, *both) for both in pairs)

    def words(self, name: str, value: Value, stand: Stand) -> str:
        """Return what is written beside an answer.

        name: whose it is; value: the answer; stand: where it stands.
        """
        if stand.off or self.shown_case.asked == BETWEEN:
            return AskedPicture.words(self, name, value, stand)
        said = f"{plain(value, 1)} mm" if self.shown_case.is_distance else self._prism(value)
        return f"{_MARKS[name]}{name} {said}"

    def _prism(self, value: tuple[float, float]) -> str:
        if self.shown_case.in_degrees:
            eye = self.shown_case.eyes[0]
            return base_notations(eye=eye, in_prism_d=value[0], up_prism_d=value[1]).full_circle
        return in_words(*value)
