"""A multifocal pair laid out in its frame: segments or progressives, with every distance."""

import numpy as np

from lablib.optics.eye import Eye
from lablib.optics.segment_layout import SegmentLayout
from lablib.pictures.captions import HEADING_PT, WORDS_PT, ScaleBar, add_key, moving_words, write_still
from lablib.pictures.kept import KeptPicture
from lablib.pictures.multifocal_data import PairLaidOut
from lablib.pictures.multifocal_distances import Distance, distances
from lablib.pictures.multifocal_front import (
    BLANK_CENTRE,
    CIRCLE,
    CROSS,
    PRISM_REFERENCE,
    SEGMENT_CENTRE,
    SEGMENT_LOST,
    MultifocalLens,
)
from lablib.pictures.palette import BOXED_CENTRE, ENGRAVING, INK, MIDLINE, OPTICAL_CENTRE, QUIET_INK
from lablib.pictures.window import Box, Spot, Window, place

# One scale for every frame, so that a larger one looks larger.
_PX_PER_MM = 3.5
_WINDOW_PX = (0.0, 88.0, 720.0, 462.0)
_MIDLINE_UP_PX = 186.0
_VERDICT_Y_PX = 74.0
_MOST_DISTANCES = 22
_TICK_PX, _BESIDE_PX = 4.0, 5.0
# Words of upright lines keep off the midline, and may stand farther along.
_OFF_MIDLINE_PX, _STEPS_PX = 13.0, (0.0, 10.0, 20.0, 30.0, -10.0, -20.0, -30.0, 45.0, 60.0, 75.0)
_GAP = complex(np.nan, np.nan)


class MultifocalPicture(KeptPicture):
    """Both rims facing an observer, with boxes, segments or marks, and every distance with its number."""

    width_px = 720
    height_px = 486

    def build(self) -> None:
        """Add the midlines, both lenses, lines and numbers of distances, what is found, and the key."""
        self.window = Window(self, _WINDOW_PX, up_px=_MIDLINE_UP_PX, px_per_mm=_PX_PER_MM)
        axes = self.window.axes
        for x, y in (([0.0, 0.0], [-52.0, 52.0]), ([-102.0, 102.0], [0.0, 0.0])):
            axes.plot(x, y, zorder=0, **MIDLINE.line())
        self.lenses = {eye: MultifocalLens(self.window, eye) for eye in Eye}
        self.leads = self._line(zorder=5, color=QUIET_INK, linewidth=0.5)
        self.solid = self._line(zorder=10, color=INK, linewidth=0.9)
        self.dashed = self._line(zorder=10, color=INK, linewidth=0.9, linestyle=(0, (3, 2)))
        style = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "color": INK, "zorder": 12}
        self.words = [self.window.label(**style) for _ in range(_MOST_DISTANCES)]
        write_still(self, (10, 474), "Facing the wearer: the right lens is on your left", size=HEADING_PT)
        ScaleBar(self.window, 660.0, 474.0).update()
        self.verdicts = {
            eye: moving_words(self, axes, (x, _VERDICT_Y_PX), ha=align, color=INK)
            for eye, x, align in ((Eye.RIGHT, 10, "left"), (Eye.LEFT, 710, "right"))
        }
        add_key(self, _KEY)

    def _line(self, **style: object):
        return self.moving(self.window.axes.plot([], [], **style)[0])

    def update(self, data: PairLaidOut) -> None:
        """Draw a pair.

        data: what to draw.
        """
        taken: list[Box] = []
        for eye, lens in self.lenses.items():
            lens.update(data, taken)
            self.verdicts[eye].set_text(f"{eye.value.capitalize()}: {verdict(data, eye)}")
        drawn = distances(data)
        for line, wearers in ((self.solid, False), (self.dashed, True)):
            parts = [self._with_ticks(one) for one in drawn if one.wearers is wearers]
            _set(line, np.concatenate(parts) if parts else np.empty(0, dtype=complex))
        leads = [[start, end, _GAP] for one in drawn for start, end in one.leads]
        _set(self.leads, np.array(leads, dtype=complex).ravel())
        self._write(drawn, taken)

    def _with_ticks(self, one: Distance) -> np.ndarray:
        """A line with a short stroke across each of its ends, broken off at its end."""
        along = one.end - one.start
        across = 1j * along / abs(along) if abs(along) else 1j
        tick = across * _TICK_PX / _PX_PER_MM
        ends = [[end - tick, end + tick, _GAP] for end in (one.start, one.end)]
        return np.array([one.start, one.end, _GAP, *ends[0], *ends[1]])

    def _write(self, drawn: tuple[Distance, ...], taken: list[Box]) -> None:
        for label in self.words:
            label.set_text("")
        boxes = [self._box(one) for one in drawn]
        for label, one in zip(self.words, drawn, strict=False):
            inside = self.window.box_px
            place(label, one.words, self._spots(one), inside=inside, taken=taken, drawn=boxes)

    def _spots(self, one: Distance) -> list[Spot]:
        """Beside the middle of a line, or beyond its end; then farther along, then on its other side."""
        is_level = one.start.imag == one.end.imag
        ends = sorted((one.start, one.end), key=lambda end: (end * complex(one.way).conjugate()).real)
        first = ends[1] if is_level and one.way.imag == 0.0 else (one.start + one.end) / 2.0
        beside, above = (float(np.sign(part)) for part in (one.way.real, one.way.imag))
        x, y = self.window.px(first.real, first.imag)
        x, y = x + beside * _BESIDE_PX, y + (above * _BESIDE_PX if is_level else 0.0)
        if is_level:
            steps = (0.0, -18.0, 18.0, -36.0, 36.0)
            return [(x + (0.0 if beside else step), y, beside, above) for step in steps] + [
                (x, y - 2.0 * above * _BESIDE_PX, beside, -above)
            ]
        lean = above or 1.0
        steps = (abs(above) * _OFF_MIDLINE_PX + step for step in _STEPS_PX)
        return [(x, y + lean * step, beside, 0.0) for step in steps]

    def _box(self, one: Distance) -> Box:
        (x, y), (other_x, other_y) = (self.window.px(end.real, end.imag) for end in (one.start, one.end))
        return (
            min(x, other_x) - 1.0,
            min(y, other_y) - 1.0,
            max(x, other_x) + 1.0,
            max(y, other_y) + 1.0,
        )


def verdict(data: PairLaidOut, eye: Eye) -> str:
    """Return what the rim leaves of the near part of an eye, and whether its height is enough.

    data: the pair; eye: whose.
    """
    layout = data.layout(eye)
    if isinstance(layout, SegmentLayout):
        cut_out = data.cut_out(eye)
        inside = f"{layout.depth_left_mm:.1f} of {layout.segment.depth_mm:g} mm depth inside"
        if cut_out is None:
            return inside
        blank = f"blank {cut_out.blank.diameter_mm:g}"
        return f"{blank} covers" if cut_out.covers else f"{blank} lacks {cut_out.short_mm:.1f} mm"
    if data.engravings_alone:
        return "where does the cross go?"
    if layout.height_short_mm:
        return f"cross {layout.height_short_mm:.1f} mm under the least height"
    return f"{100.0 * layout.near_circle_left:.0f} % of the near circle inside"


def _set(line, points: np.ndarray) -> None:
    line.set_data(points.real, points.imag)


_KEY = (
    (10, 46, OPTICAL_CENTRE, "distance centre"),
    (146, 46, SEGMENT_CENTRE, "segment centre"),
    (280, 46, SEGMENT_LOST, "segment cut off"),
    (420, 46, BOXED_CENTRE, "boxed centre"),
    (540, 46, MIDLINE, "midline, bridge"),
    (10, 20, CROSS, "fitting cross"),
    (146, 20, PRISM_REFERENCE, "prism reference point"),
    (320, 20, ENGRAVING, "engraving"),
    (420, 20, CIRCLE, "distance, near circle"),
    (600, 20, BLANK_CENTRE, "blank centre"),
)
