"""One lens of a multifocal pair as worn: rim and box, a segment or the marks of a progressive, the blank."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.optics.clipping import circle
from lablib.optics.eye import Eye
from lablib.optics.progressive import (
    DISTANCE_CIRCLE,
    FITTING_CROSS,
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    PRISM_POINT,
    TEMPORAL_ENGRAVING,
)
from lablib.optics.segment_layout import SegmentLayout
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.multifocal_data import PairLaidOut
from lablib.pictures.palette import (
    BLANK,
    BOXED_CENTRE,
    EDGE,
    ENGRAVING,
    GLASS,
    INK,
    OKABE_ITO,
    OPTICAL_CENTRE,
    OUTLINE,
    QUIET_INK,
    TOO_SMALL,
    Look,
)
from lablib.pictures.window import Box, Window

SEGMENT = Look(colour=INK, dashes="solid", width_pt=1.2, opacity=EDGE.opacity)
SEGMENT_LOST = Look(colour=QUIET_INK, dashes=(0, (2, 2)), width_pt=0.9)
SEGMENT_CENTRE = Look(colour=INK, mark="o", width_pt=0.8)
CROSS = Look(colour=INK, mark="+", width_pt=2.2)
PRISM_REFERENCE = Look(colour=INK, mark="D", width_pt=0.8)
BLANK_CENTRE = Look(colour=QUIET_INK, mark="s", width_pt=1.2, hollow=True)
CIRCLE = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=1.4)
NO_POINTS = np.empty(0, dtype=complex)
_HALF_MARK_PX = 6.0


class MultifocalLens:
    """A rim in its box, with what is laid out in it.

    window: where it is drawn; eye: whose lens.
    """

    def __init__(self, window: Window, eye: Eye) -> None:
        self.window, self.eye = window, eye
        axes, moving = window.axes, window.picture.moving
        glass = {"facecolor": to_rgba(GLASS.colour, GLASS.opacity), "edgecolor": OUTLINE.colour}
        self.glass = moving(axes.add_patch(Polygon(NOWHERE, zorder=2, linewidth=OUTLINE.width_pt, **glass)))
        paint = {"facecolor": to_rgba(EDGE.colour, SEGMENT.opacity), "edgecolor": SEGMENT.colour}
        self.segment = moving(axes.add_patch(Polygon(NOWHERE, zorder=4, linewidth=SEGMENT.width_pt, **paint)))
        self.box = self._line(3, {"color": QUIET_INK, "linewidth": 0.7})
        self.lost = self._line(3, SEGMENT_LOST.line())
        self.blank = self._line(1, BLANK.line())
        self.blank_centre = self._line(6, BLANK_CENTRE.point() | {"markersize": 6})
        self.boxed_centre = self._line(6, BOXED_CENTRE.point())
        self.centre = self._line(7, OPTICAL_CENTRE.point())
        self.segment_centre = self._line(7, SEGMENT_CENTRE.point() | {"markersize": 4})
        self.circles = self._line(5, CIRCLE.line())
        self.engravings = self._line(8, ENGRAVING.point())
        self.prism_point = self._line(8, PRISM_REFERENCE.point() | {"markersize": 5})
        self.cross = self._line(9, CROSS.point() | {"markersize": 13})

    def _line(self, depth: int, style: dict[str, object]):
        return self.window.picture.moving(self.window.axes.plot([], [], zorder=depth, **style)[0])

    def update(self, data: PairLaidOut, taken: list[Box]) -> None:
        """Draw the lens where it is worn.

        data: the pair; taken: boxes of marks to keep words clear of, to which these are added [shown px].
        """
        layout, boxed = data.layout(self.eye), data.at(self.eye, 0.0, 0.0)
        outline = data.frame.outline(self.eye)
        self.glass.set_xy(_xy(boxed + outline.x_mm + 1j * outline.y_mm))
        half = complex(data.frame.a_mm, data.frame.b_mm) / 2.0
        _set(self.box, boxed + np.array([-half, half.conjugate(), half, -half.conjugate(), -half]))
        self._mark(self.boxed_centre, [boxed], taken)
        if isinstance(layout, SegmentLayout):
            self._draw_segment(data, layout, boxed, taken)
            self._draw_marks(data, {}, taken)
        else:
            marks = {mark.name: mark for mark in layout.marks}
            self._draw_marks(data, marks, taken)
            self._clear_segment()
        self._draw_blank(data, taken)

    def _draw_segment(
        self, data: PairLaidOut, layout: SegmentLayout, boxed: complex, taken: list[Box]
    ) -> None:
        left, whole = layout.ring_mm, layout.whole_ring_mm
        self.segment.set_visible(bool(left.size))
        self.segment.set_xy(_xy(boxed + left) if left.size else NOWHERE)
        _set(self.lost, boxed + np.append(whole, whole[0]))
        self._mark(self.centre, [data.at(self.eye, *layout.distance_centre_mm)], taken)
        self._mark(self.segment_centre, [data.at(self.eye, *layout.segment_centre_mm)], taken)

    def _clear_segment(self) -> None:
        self.segment.set_visible(False)
        for line in (self.lost, self.centre, self.segment_centre):
            _set(line, NO_POINTS)

    def _draw_marks(self, data: PairLaidOut, marks: dict, taken: list[Box]) -> None:
        places = {name: data.at(self.eye, mark.in_mm, mark.up_mm) for name, mark in marks.items()}
        wiped = {} if data.engravings_alone else places
        self._mark(self.engravings, _of(places, NASAL_ENGRAVING, TEMPORAL_ENGRAVING), taken)
        self._mark(self.cross, _of(wiped, FITTING_CROSS), taken)
        self._mark(self.prism_point, _of(wiped, PRISM_POINT), taken)
        rings = [
            np.append(circle(wiped[name], marks[name].diameter_mm, points=60), [complex(np.nan, np.nan)])
            for name in (DISTANCE_CIRCLE, NEAR_CIRCLE)
            if name in wiped
        ]
        closed = [np.insert(ring, -1, ring[0]) for ring in rings]
        _set(self.circles, np.concatenate(closed) if closed else NO_POINTS)

    def _draw_blank(self, data: PairLaidOut, taken: list[Box]) -> None:
        cut_out = data.cut_out(self.eye)
        if cut_out is None:
            for line in (self.blank, self.blank_centre):
                _set(line, NO_POINTS)
            return
        centre = data.at(self.eye, *cut_out.blank_centre_mm)
        self._mark(self.blank_centre, [centre], taken)
        ring = circle(centre, cut_out.blank.diameter_mm)
        _set(self.blank, np.append(ring, ring[0]))
        self.blank.set(**(BLANK if cut_out.covers else TOO_SMALL).line())

    def _mark(self, line, places: list[complex], taken: list[Box]) -> None:
        _set(line, np.array(places, dtype=complex))
        for at in places:
            x, y = self.window.px(at.real, at.imag)
            taken.append((x - _HALF_MARK_PX, y - _HALF_MARK_PX, x + _HALF_MARK_PX, y + _HALF_MARK_PX))


def _of(places: dict[str, complex], *names: str) -> list[complex]:
    return [places[name] for name in names if name in places]


def _set(line, points: np.ndarray) -> None:
    line.set_data(points.real, points.imag)


def _xy(points: np.ndarray) -> np.ndarray:
    return np.column_stack([points.real, points.imag])
