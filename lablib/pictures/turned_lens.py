"""One lens on its block from the front: block and its line level, the lens turned as far as it has turned."""

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Wedge

from lablib.bench.parameter import default
from lablib.pictures.asked_sign import boxes_along
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import (
    BITE,
    BLOCK,
    BLUE_INK,
    CHUCK_AXIS,
    EDGE,
    GLASS,
    INK,
    OKABE_ITO,
    OUTLINE,
    PAPER,
    QUIET_INK,
    TOO_MUCH,
    Look,
)
from lablib.pictures.turned_lens_data import PROGRESSIVE, SeenLens, written_turn
from lablib.pictures.window import Box, Spot, Window, place

LENS_LINE = Look(colour=OKABE_ITO["blue"], dashes="solid", width_pt=2.2)
BLOCK_LINE = Look(colour=QUIET_INK, dashes=(0, (8, 3, 1.5, 3)), width_pt=1.2)
ORDERED = Look(colour=INK, dashes=(0, (3, 2)), width_pt=0.9)
# The block's line reaches beyond every finished lens, the arc of the turn lies just outside the block.
_BLOCK_LINE_MM, _ARC_MM, _ARC_POINTS = 30.0, 14.5, 41
# Every so many points of a rim words keep off it.
_RIM_EVERY = 5
# Heat grows with the distance from the axis: the patch is a ring, so wide against its radius.
_PATCH_WIDTH = 0.55
_BESIDE_PX, _HALF_MARK_PX = 9.0, 6.0


def lens_style() -> dict[str, object]:
    """Return matplotlib's keywords for the lens: it covers what lies beneath it."""
    face = _over_paper(GLASS)
    return {"facecolor": face, "edgecolor": OUTLINE.colour, "linewidth": OUTLINE.width_pt}


def missing_style() -> dict[str, object]:
    """Return matplotlib's keywords for what the rim is short of the ordered outline."""
    return {
        "facecolor": TOO_MUCH.colour,
        "edgecolor": PAPER,
        "linewidth": 0.0,
        "hatch": "////",
    }


def patch_style() -> dict[str, object]:
    """Return matplotlib's keywords for a burnt patch."""
    face = to_rgba(OKABE_ITO["orange"], 0.75)
    return {"facecolor": face, "edgecolor": OKABE_ITO["vermilion"], "linewidth": 1.0, "hatch": "xxxx"}


def bite_style() -> dict[str, object]:
    """Return matplotlib's keywords for what one turn took off."""
    return {"facecolor": _over_paper(BITE), "linewidth": 0.0}


class TurnedLens:
    """A lens on its block in a window whose zero is the chuck axis.

    window: where it is drawn, at the window's scale.
    """

    def __init__(self, window: Window) -> None:
        self.window = window
        self._add_areas()
        self._add_lines()
        style = {"fontsize": WORDS_PT, "ha": "center", "va": "center", "zorder": 15}
        self.turn, self.short = window.label(color=BLUE_INK, **style), window.label(color=INK, **style)

    def _add_areas(self) -> None:
        # Each covers the middle of those before, so that only what it does not reach is left to see.
        self.before = self._area(1, bite_style())
        self.missing = self._area(2, missing_style())
        self.rim = self._area(4, lens_style())
        self.segment = self._area(
            5, {"facecolor": to_rgba(EDGE.colour, 0.3), "edgecolor": INK, "linewidth": 1.2}
        )
        self.segment.set_clip_path(self.rim)
        self.ordered = self._area(7, {"fill": False, **_edge(ORDERED)})
        self.block = self._area(8, {"facecolor": to_rgba(BLOCK.colour, BLOCK.opacity), **_edge(BLOCK)})
        ring = Wedge((0.0, 0.0), 1.0, 0.0, 360.0, width=0.5, zorder=9, **patch_style())
        self.patch = self.window.picture.moving(self.window.axes.add_patch(ring))

    def _area(self, depth: int, style: dict[str, object]) -> Polygon:
        return self.window.picture.moving(self.window.axes.add_patch(Polygon(NOWHERE, zorder=depth, **style)))

    def _add_lines(self) -> None:
        self.block_line = self._line(10, BLOCK_LINE.line())
        self.block_line.set_data([-_BLOCK_LINE_MM, _BLOCK_LINE_MM], [0.0, 0.0])
        self.arc = self._line(11, {"color": LENS_LINE.colour, "linewidth": 1.2})
        self.arc_end = self._line(11, {"color": LENS_LINE.colour, "linestyle": "none", "markersize": 7})
        self.line = self._line(12, LENS_LINE.line())
        marked = {"color": LENS_LINE.colour, "linestyle": "none", "markerfacecolor": PAPER}
        self.dots = self._line(13, marked | {"marker": "o", "markersize": 6, "markeredgewidth": 1.6})
        self.cross = self._line(13, {"color": INK, "linestyle": "none", "marker": "+", "markersize": 12})
        self.cross.set_markeredgewidth(2.0)
        self.chuck = self._line(14, CHUCK_AXIS.point() | {"markersize": 6})
        self.chuck.set_data([0.0], [0.0])

    def _line(self, depth: int, style: dict[str, object]) -> Line2D:
        return self.window.picture.moving(self.window.axes.plot([], [], zorder=depth, **style)[0])

    def update(self, lens: SeenLens, taken: list[Box] | None = None, *, told: bool = True) -> None:
        """Draw a lens.

        lens: as it stands now.
        taken: boxes that words keep off, to which those of this drawing are added [shown px].
        told: whether the turn is drawn as an arc and written, and what is missing is written.
        """
        for area, points in (
            (self.before, lens.before),
            (self.missing, lens.ordered),
            (self.rim, lens.rim),
            (self.ordered, lens.ordered),
            (self.block, lens.block),
        ):
            _fill(area, points)
        self.patch.set_visible(lens.patch_mm > 0.0)
        self.patch.set_radius(max(lens.patch_mm, 1.0))
        self.patch.set_width(_PATCH_WIDTH * max(lens.patch_mm, 1.0))
        self._turn_marks(lens)
        turned = told and abs(lens.line_deg) >= default("line_off_deg")
        for part in (self.arc, self.arc_end, self.turn):
            part.set_visible(turned)
        self.short.set_visible(told and lens.short_mm >= default("bump_mm"))
        self._draw_arc(lens.line_deg)
        self._write(lens, [] if taken is None else taken)

    def _turn_marks(self, lens: SeenLens) -> None:
        by, marks = np.exp(1j * np.radians(lens.line_deg)), lens.marks
        _fill(self.segment, by * marks.segment)
        self.dots.set_marker("P" if marks.design == PROGRESSIVE else "o")
        for line, points in ((self.line, marks.line), (self.dots, marks.dots), (self.cross, marks.cross)):
            line.set_data((by * points).real, (by * points).imag)

    def _draw_arc(self, line_deg: float) -> None:
        """Draw the turn from the block's line, with an arrow's head where it ends."""
        arc = _ARC_MM * np.exp(1j * np.radians(np.linspace(0.0, line_deg, _ARC_POINTS)))
        self.arc.set_data(arc.real, arc.imag)
        self.arc_end.set_data([arc[-1].real], [arc[-1].imag])
        # A triangle points up; the arc goes on at right angles to its radius.
        self.arc_end.set_marker((3, 0, line_deg if line_deg >= 0.0 else line_deg + 180.0))

    def _write(self, lens: SeenLens, taken: list[Box]) -> None:
        """Write the turn beside the end of its arc, and what is missing beyond the place."""
        box = self.window.box_px
        drawn = boxes_along(self.window, self.line.get_xydata())
        if self.turn.get_visible():
            # On the other side of the block's line than the turn, where no line of the lens comes.
            side = np.copysign(1.0, lens.line_deg)
            x, y = self.window.px(_ARC_MM, 0.0)
            spots = [(x + across, y - side * 3.0, across, -side) for across in (1, -1)]
            spots += [(x + across, y + side * 3.0, across, side) for across in (1, -1)]
            place(self.turn, written_turn(lens.line_deg), spots, inside=box, taken=taken, drawn=drawn)
        if self.short.get_visible():
            drawn += [one for ring in (lens.rim, lens.ordered) for one in self._along(ring)]
            words = f"{lens.short_mm:.1f} mm short"
            place(self.short, words, self._spots_beside(lens), inside=box, taken=taken, drawn=drawn)

    def _along(self, ring: np.ndarray) -> list[Box]:
        points = np.append(ring[::_RIM_EVERY], ring[:1])
        return boxes_along(self.window, np.column_stack([points.real, points.imag]))

    def _spots_beside(self, lens: SeenLens) -> list[Spot]:
        """Where words on what is missing may stand: beyond it, else above or below that end of the lens."""
        left, bottom, right, top = self.window.box_px
        x, y = self.window.px(lens.short_at.real, lens.short_at.imag)
        side, up = np.sign(lens.short_at.real) or 1.0, np.sign(lens.short_at.imag) or 1.0
        beside = [
            (x + side * _BESIDE_PX, y + up * _BESIDE_PX, *way) for way in ((side, up), (side, 0), (0, up))
        ]
        end, high = self.window.px(side * np.abs(lens.ordered.real).max(), np.abs(lens.ordered.imag).max())
        low = self.window.px(0.0, 0.0)[1] * 2.0 - high
        ends = [(end, high, -side, 1), (end, low, -side, -1)]
        corner = right if side > 0.0 else left
        corners = [(corner, top, -side, -1), (corner, bottom, -side, 1)]
        return beside + ends[:: int(up)] + corners[:: int(up)]


def _edge(look: Look) -> dict[str, object]:
    return {"edgecolor": look.colour, "linestyle": look.dashes, "linewidth": look.width_pt}


def _over_paper(look: Look) -> tuple[float, float, float]:
    """Return the colour that a see-through fill has on white, so that it covers what lies under it."""
    return tuple(look.opacity * part + (1.0 - look.opacity) for part in to_rgba(look.colour)[:3])


def _fill(area: Polygon, points: np.ndarray) -> None:
    area.set_visible(points.size > 0)
    area.set_xy(np.column_stack([points.real, points.imag]) if points.size else NOWHERE)
