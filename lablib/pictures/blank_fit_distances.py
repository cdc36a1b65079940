"""Distances drawn beside a pair of rims: A, B, DBL, to a boxed centre, to the pupils, and their heights."""

from matplotlib.lines import Line2D

from lablib.optics.eye import Eye
from lablib.pictures.blank_fit_data import PairOfBlanks
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.label import Label
from lablib.pictures.palette import INK
from lablib.pictures.window import Box, Window, place

# How far beyond the box a distance is drawn, those of the frame above, those of the wearer below [mm].
_FIRST_MM, _SECOND_MM, _BELOW_MM, _BESIDE_MM = 3.5, 3.0, 4.0, 2.5
_WORDS_PX, _TICK_PX = 8.0, 3.0
# Where along an upright distance its words may stand, best first.
_SHARES = (0.5, 0.3, 0.7)
# No distance is drawn higher: its words would leave the picture [mm].
_HIGHEST_MM = 57.0
# One distance: from, to [mm], to which side its words stand (across, up), and the words.
Distance = tuple[complex, complex, tuple[int, int], str]


class Distances:
    """The distances of a frame and its wearer.

    window: where they are drawn.
    """

    def __init__(self, window: Window) -> None:
        axes, moving = window.axes, window.picture.moving
        self.window = window
        self.lines: list[Line2D] = []
        self.words: list[Label] = []
        for is_wearers, is_upright in _STYLES:
            dashes = (0, (3, 2)) if is_wearers else "solid"
            tick = {"marker": "_" if is_upright else "|", "markersize": 7}
            line = axes.plot([], [], color=INK, linewidth=0.9, linestyle=dashes, zorder=9, **tick)[0]
            self.lines.append(moving(line))
            self.words.append(window.label(fontsize=WORDS_PT, ha="center", va="center", color=INK, zorder=12))

    def update(self, data: PairOfBlanks, taken: list[Box]) -> None:
        """Draw every distance.

        data: the pair; taken: boxes of words to keep clear of, to which these are added [shown px].
        """
        for line, label, (start, end, (beside, above), words) in zip(
            self.lines, self.words, distances(data), strict=True
        ):
            line.set_data([start.real, end.real], [start.imag, end.imag])
            spots = [
                (x + side * beside * _WORDS_PX, y + above * _WORDS_PX, side * beside, 0)
                for share in (_SHARES if beside else _SHARES[:1])
                for x, y in [self._px(start + share * (end - start))]
                for side in (1, -1)
            ]
            place(label, words, spots, inside=self.window.box_px, taken=taken)
            taken.append(self._along(start, end))

    def _px(self, at: complex) -> tuple[float, float]:
        return self.window.px(at.real, at.imag)

    def _along(self, start: complex, end: complex) -> Box:
        """A narrow box round a line [shown px]."""
        (x, y), (other_x, other_y) = self._px(start), self._px(end)
        left, right, low, high = min(x, other_x), max(x, other_x), min(y, other_y), max(y, other_y)
        return (left - _TICK_PX, low - _TICK_PX, right + _TICK_PX, high + _TICK_PX)


# In the order of `distances`: whether the wearer's, whether upright.
_STYLES = (
    (False, False),
    (False, True),
    (False, False),
    (False, False),
    (True, False),
    (True, False),
    (True, True),
    (True, True),
)


def distances(data: PairOfBlanks) -> tuple[Distance, ...]:
    """Return every distance that is drawn.

    data: the pair.
    """
    frame, boxed = data.frame, data.frame.bridge_to_boxed_centre_mm
    top, low = frame.b_mm / 2.0, -frame.b_mm / 2.0
    # Above the blank, whose rim would run through the words.
    blank = data.left.up_mm + data.left.blank_mm / 2.0
    above = min(max(blank, top + 2.0 * _FIRST_MM) + _SECOND_MM, _HIGHEST_MM)
    first, second = 1j * (top + _FIRST_MM), 1j * above
    outer, inner = boxed + frame.a_mm / 2.0, frame.dbl_mm / 2.0
    aside = complex(-outer - _BESIDE_MM)
    return (
        (first - outer, first - inner, (0, 1), f"A {frame.a_mm:.1f}"),
        (aside + 1j * low, aside + 1j * top, (-1, 0), f"B {frame.b_mm:.1f}"),
        (first - inner, first + inner, (0, 1), f"DBL {frame.dbl_mm:.1f}"),
        (second, second + boxed, (0, 1), f"(A + DBL) / 2 = {boxed:.1f}"),
        *(_across(data, eye, low) for eye in Eye),
        *(_upright(data, eye, low) for eye in Eye),
    )


def _across(data: PairOfBlanks, eye: Eye, low: float) -> Distance:
    level = 1j * (low - _BELOW_MM)
    pupil = -eye.nasal_sign * data.pd_mm(eye)
    return level, level + pupil, (0, -1), f"{eye} {data.pd_mm(eye):.1f}"


def _upright(data: PairOfBlanks, eye: Eye, low: float) -> Distance:
    foot = complex(-eye.nasal_sign * data.pd_mm(eye), low)
    height = data.height_mm(eye)
    return foot, foot + 1j * height, (-eye.nasal_sign, 0), f"height {height:.1f}"
