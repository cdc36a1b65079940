"""Two rims facing the wearer above a ruler: the answer is a distance along it, from one place to another."""

from dataclasses import dataclass, field

import numpy as np
from matplotlib.patches import Polygon

from lablib.errors import LabError, require_between, require_finite, require_one_of
from lablib.optics.eye import EYES, Eye
from lablib.optics.limits import limit
from lablib.pictures.asked_base import KEY_Y_PX, RIM_PX, WIDE_PX, Asked, AskedPicture
from lablib.pictures.asked_sign import Stand, spots_round, words_in
from lablib.pictures.captions import KeyWhereDrawn, add_key, step_down
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import BOXED_CENTRE, INK, MIDLINE, OUTLINE, PAPER, PUPIL, QUIET_INK
from lablib.pictures.window import place

# Few scales, so that one frame looks larger than another [shown px/mm].
SCALES_PX_PER_MM = (3.6, 3.3, 3.0, 2.7, 2.4, 2.1)
_RIGHT, _LEFT = "right", "left"
_UP_PX, _MOST_HALF_B_PX, _MARGIN_PX, _NAMES_PX = 134.0, 84.0, 6.0, 12.0
# The ruler lies this far below the lowest tangent; its ticks hang down, the numbers below them.
_RULER_PX, _TICKS_PX, _NUMBERS_PX = 10.0, (4.0, 7.0, 11.0), 19.0
_LONG, _MIDDLE, _FEWEST = 10, 5, 8
_LEVEL, _HALF_MARK_PX = 0.45, 6.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Across:
    """Two rims with a ruler below them, and what is asked along it.

    outline_x_mm, outline_y_mm: points round the right eye's rim, from its boxed centre, shape (N,) [mm]; the
        left one is its mirror.
    dbl_mm: distance between the lenses [mm].
    zero_mm: the ruler's zero, from the middle of the bridge to the observer's right [mm].
    from_mm: where an answer counts from, likewise [mm]; way: "right" or "left", the observer's, to which it
        counts.
    right_pupil_mm, left_pupil_mm: from the middle of the bridge to each pupil [mm]; 0: not shown.

    Raises LabError for a number or a word that cannot be.
    """

    outline_x_mm: np.ndarray
    outline_y_mm: np.ndarray
    dbl_mm: float
    zero_mm: float
    from_mm: float
    way: str
    right_pupil_mm: float = 0.0
    left_pupil_mm: float = 0.0
    rim: np.ndarray = field(init=False)

    def __post_init__(self) -> None:
        x, y = (np.asarray(row, dtype=float) for row in (self.outline_x_mm, self.outline_y_mm))
        if x.ndim != 1 or x.shape != y.shape or x.size < _FEWEST or not np.all(np.isfinite([x, y])):
            raise LabError(
                f"rim of a drawing has rows of shape {x.shape} and {y.shape}: give two rows of one length, "
                f"{_FEWEST} finite numbers or more"
            )
        require_between("dbl_mm", self.dbl_mm, low=0.0, high=limit("dbl_mm")[1], unit="mm")
        for name in ("zero_mm", "from_mm", "right_pupil_mm", "left_pupil_mm"):
            require_finite(name, getattr(self, name), unit="mm")
        require_one_of("way", self.way, (_RIGHT, _LEFT))
        object.__setattr__(self, "rim", x + 1j * y)

    @property
    def half_a_mm(self) -> float:
        """Half the boxed width [mm]."""
        return float(np.abs(self.rim.real).max())

    @property
    def half_b_mm(self) -> float:
        """Half the boxed height [mm]."""
        return float(np.abs(self.rim.imag).max())

    @property
    def end_mm(self) -> float:
        """From the middle of the bridge to either temporal side [mm]."""
        return 2.0 * self.half_a_mm + self.dbl_mm / 2.0

    def middle_mm(self, eye: Eye) -> float:
        """Return where a boxed centre lies, from the middle of the bridge to the observer's right [mm].

        eye: whose.
        """
        return -eye.nasal_sign * (self.half_a_mm + self.dbl_mm / 2.0)

    def ring_mm(self, eye: Eye) -> np.ndarray:
        """Return a rim as complex points from the middle of the bridge [mm].

        eye: whose.
        """
        own = self.rim if eye is Eye.RIGHT else -self.rim.conj()
        return own + self.middle_mm(eye)

    @property
    def pupils_mm(self) -> list[float]:
        """Where the pupils are that are shown, from the middle of the bridge to the observer's right [mm]."""
        told = zip(EYES, (self.right_pupil_mm, self.left_pupil_mm), strict=True)
        return [-eye.nasal_sign * distance for eye, distance in told if distance]


class AcrossPicture(AskedPicture):
    """Two rims as an observer facing the wearer sees them, in their boxes, above a ruler."""

    case = Across
    unit, digits = "mm", 1

    def add_case(self) -> None:
        """Add rims, boxes, ruler and pupils."""
        self.add_window(up_px=_UP_PX)
        axes, moving = self.window.axes, self.moving
        style = {"facecolor": PAPER, "edgecolor": OUTLINE.colour, "linewidth": OUTLINE.width_pt, "zorder": 2}
        self.rims = {eye: moving(axes.add_patch(Polygon(NOWHERE, **style))) for eye in EYES}
        self.boxes = moving(axes.plot([], [], color=QUIET_INK, linewidth=0.6, zorder=3)[0])
        self.midline = moving(axes.plot([], [], zorder=3, **MIDLINE.line())[0])
        self.bridge = moving(axes.plot([], [], zorder=3, **MIDLINE.line())[0])
        self.drops = moving(axes.plot([], [], color=QUIET_INK, linewidth=0.6, zorder=4)[0])
        self.ruler = moving(axes.plot([], [], color=INK, linewidth=0.7, zorder=4)[0])
        self.centres = moving(axes.plot([], [], zorder=5, **BOXED_CENTRE.point())[0])
        self.centres.set_markersize(6)
        self.pupils = moving(axes.plot([], [], zorder=5, **PUPIL.point())[0])
        self.pupils.set_markersize(6)
        most = int((2.0 * limit("a_mm")[1] + limit("dbl_mm")[1]) // _LONG) + 4
        self.numbers = [words_in(self.window, color=QUIET_INK) for _ in range(most)]
        self.names = {eye: words_in(self.window, color=QUIET_INK) for eye in EYES}
        self.heading("Two rims, facing the wearer, above a ruler [mm]")
        add_key(self, [(0.0, KEY_Y_PX, BOXED_CENTRE, "boxed centre")])
        add_key(self, [(124.0, KEY_Y_PX, MIDLINE, "midline, and middle of the bridge")])
        self.pupil_key = KeyWhereDrawn(self, axes, (392.0, KEY_Y_PX, PUPIL, "pupil"))

    def show_case(self, case: Across, data: Asked) -> None:
        """Draw the rims in their boxes, and the ruler below them.

        case: the pair; data: nothing else counts.
        """
        across = (WIDE_PX / 2.0 - _MARGIN_PX) / max(case.end_mm, -case.zero_mm)
        self.window.set_scale(step_down(SCALES_PX_PER_MM, min(across, _MOST_HALF_B_PX / case.half_b_mm)))
        half_b, foot = case.half_b_mm, self._foot(case)
        for eye in EYES:
            ring = case.ring_mm(eye)
            self.rims[eye].set_xy(np.column_stack([ring.real, ring.imag]))
            self.fence(np.column_stack([ring.real, ring.imag]))
            x, y = self.window.px(case.middle_mm(eye), half_b)
            place(self.names[eye], f"{eye} eye", [(x, y + _NAMES_PX, 0, 0)], **self.space)
        sides = [sign * one for one in (case.dbl_mm / 2.0, case.end_mm) for sign in (-1.0, 1.0)]
        level = [-case.end_mm, -case.dbl_mm / 2.0, np.nan, case.dbl_mm / 2.0, case.end_mm, np.nan]
        tangents = [level * 2, [-half_b] * len(level) + [half_b] * len(level)]
        self.boxes.set_data(*np.column_stack([_uprights(sides, foot, half_b), tangents]))
        self.midline.set_data([-case.end_mm, case.end_mm], [0.0, 0.0])
        self.bridge.set_data([0.0, 0.0], [foot, half_b])
        self.centres.set_data([case.middle_mm(eye) for eye in EYES], [0.0, 0.0])
        self.pupils.set_data(case.pupils_mm, [0.0] * len(case.pupils_mm))
        for mark in (*case.pupils_mm, *(case.middle_mm(eye) for eye in EYES)):
            x, y = self.window.px(mark, 0.0)
            self.taken.append((x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX))
        self.pupil_key.show(bool(case.pupils_mm))
        self.drops.set_data(*_uprights(case.pupils_mm, foot, 0.0))
        self._show_ruler(case, foot)

    def _foot(self, case: Across) -> float:
        return -case.half_b_mm - _RULER_PX / self.window.px_per_mm

    def _show_ruler(self, case: Across, foot: float) -> None:
        """Draw a tick for each millimetre from zero to beyond the pair, with a number at every tenth."""
        room = (WIDE_PX / 2.0 - _MARGIN_PX) / self.window.px_per_mm
        counted = np.arange(0.0, np.floor(min(np.ceil(case.end_mm + 2.0), room) - case.zero_mm) + 1.0)
        long, middle = counted % _LONG == 0, counted % _MIDDLE == 0
        length = np.select([long, middle], _TICKS_PX[:0:-1], _TICKS_PX[0]) / self.window.px_per_mm
        x, gap = counted + case.zero_mm, np.full_like(counted, np.nan)
        ticks = (
            np.column_stack([x, x, gap]).ravel(),
            np.column_stack([foot + 0 * x, foot - length, gap]).ravel(),
        )
        self.ruler.set_data(
            np.append([x[0], x[-1], np.nan], ticks[0]), np.append([foot, foot, np.nan], ticks[1])
        )
        for level in (foot, foot - _TICKS_PX[-1] / self.window.px_per_mm):
            self.fence(np.array([(x[0], level), (x[-1], level)]))
        for label in self.numbers:
            label.set_visible(False)
        for label, number in zip(self.numbers, counted[long].tolist(), strict=False):
            label.set_visible(True)
            at, level = self.window.px(number + case.zero_mm, foot)
            place(label, f"{number:g}", [(at, level - _NUMBERS_PX, 0, 0)], **self.space)

    def stand(self, case: Across, value: float, right: bool) -> Stand:
        """Return a distance from its place, and down to the ruler.

        case: the pair; value: the answer [mm]; right: whether it is the right one.
        """
        scale, foot = self.window.px_per_mm, self._foot(case)
        level = (_LEVEL if right else -_LEVEL) * case.half_b_mm
        end = case.from_mm + (value if case.way == _RIGHT else -value)
        most = (WIDE_PX / 2.0 - RIM_PX) / scale
        shown = float(np.clip(end, -most, most))
        off = "" if shown == end else (_RIGHT if end > 0 else _LEFT)
        line = [(case.from_mm, level), (shown, level)]
        if not off:
            line += [(np.nan, np.nan), (shown, level), (shown, foot)]
        return Stand(
            line=np.array(line),
            mark=(shown, level),
            spots=spots_round(*self.window.px(shown, level), (0, 1), (0, -1)),
            off=off,
        )


def _uprights(places: list[float], low: float, high: float) -> tuple[np.ndarray, np.ndarray]:
    """Lines straight up at places, as one row of points each way, broken off in between."""
    x = np.array([[place, place, np.nan] for place in places]).ravel()
    return x, np.tile([low, high, np.nan], len(places))
