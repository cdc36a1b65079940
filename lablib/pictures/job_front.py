"""A lens on its block from the front: what is cut away, what holds it, and where it is nearest to turning."""

from dataclasses import dataclass

import numpy as np
from matplotlib.colors import to_rgba
from matplotlib.patches import Polygon

from lablib.bench.geometry import angles_rad
from lablib.job.eye_sheet import EyeSheet
from lablib.pictures.captions import WORDS_PT
from lablib.pictures.cutting_turn import ShownTurn, worst_turn
from lablib.pictures.kept import KeptPicture
from lablib.pictures.lens_section import NOWHERE
from lablib.pictures.palette import (
    BITE,
    BLANK,
    BLOCK,
    CHUCK_AXIS,
    CUT_AWAY,
    GLASS,
    INK,
    LEAST_MARGIN,
    OPTICAL_CENTRE,
    OUTLINE,
    PAPER,
    START_RIM,
    TOO_SMALL,
    Look,
)
from lablib.pictures.window import Box, Window, place

_EVERY = 3
_CIRCLE = np.exp(2j * np.pi * np.arange(121) / 120)
_MARGIN_PX = 4.0
_BESIDE_PX = 8.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Rims:
    """The lines of one lens on the machine, each as complex points x + iy from the boxed centre [mm].

    outline, blank, uncut, start: the finished lens, the blank's rim, where the uncut lens ends (there, or at
        its knife edge), and what the cut starts from.
    before, after: both rims of the turn that is shown.
    block: where the block ends; chuck, centre: chuck axis and optical centre.
    worst: the place of that turn's least margin.
    """

    outline: np.ndarray
    blank: np.ndarray
    uncut: np.ndarray
    start: np.ndarray
    before: np.ndarray
    after: np.ndarray
    block: np.ndarray
    chuck: complex
    centre: complex
    worst: complex


def rims(sheet: EyeSheet, shown: ShownTurn) -> Rims:
    """Return the lines of one lens on the machine.

    sheet: the lens, worked; shown: which turn of which of its cuts.
    """
    cut = shown.cut
    centre = complex(sheet.centre_x_mm, sheet.up_mm)
    chuck = centre - complex(cut.lens.blank_x_mm, cut.lens.blank_y_mm)
    radius, turn = cut.cutting.plan.radius_mm, shown.turn
    angle = angles_rad(radius.shape[1])
    way = np.exp(1j * angle)

    def round_chuck(distance_mm: np.ndarray) -> np.ndarray:
        return chuck + (distance_mm * way)[::_EVERY]

    return Rims(
        outline=round_chuck(cut.lens.outline_mm),
        blank=centre + sheet.order.lens.blank_diameter_mm / 2.0 * _CIRCLE,
        uncut=round_chuck(cut.lens.rim_mm),
        start=round_chuck(radius[0]),
        before=round_chuck(radius[turn - 1]),
        after=round_chuck(radius[turn]),
        block=round_chuck(cut.holding.contact.reach_mm(angle)),
        chuck=chuck,
        centre=centre,
        worst=chuck + radius[turn, shown.point] * way[shown.point],
    )


class BenchFront:
    """A rectangle of a picture that shows a lens on its block as an observer facing the wearer sees it.

    picture: the picture it is part of.
    box_px: left, bottom, right and top [shown px].
    """

    def __init__(self, picture: KeptPicture, box_px: Box) -> None:
        self.window = Window(picture, box_px)
        self._add_areas()
        self._add_marks()

    def _add_areas(self) -> None:
        # Each covers the middle of the one before, so that only a ring of that is left to see.
        rest = {"facecolor": _over_paper(CUT_AWAY.colour, 0.2), "linewidth": 0.0}
        self.uncut = self._area(1, hatched_cribbed())
        self.start = self._area(2, rest | _rim(START_RIM))
        self.before = self._area(3, {"facecolor": _over_paper(BITE.colour, BITE.opacity), "linewidth": 0.0})
        self.after = self._area(4, rest)
        self.outline = self._area(5, {"facecolor": _over_paper(GLASS.colour, GLASS.opacity)} | _rim(OUTLINE))
        self.block = self._area(6, {"facecolor": to_rgba(BLOCK.colour, BLOCK.opacity)} | _rim(BLOCK))

    def _area(self, depth: int, style: dict[str, object]) -> Polygon:
        return self.window.picture.moving(self.window.axes.add_patch(Polygon(NOWHERE, zorder=depth, **style)))

    def _add_marks(self) -> None:
        axes, moving = self.window.axes, self.window.picture.moving
        self.blank = moving(axes.plot([], [], **BLANK.line())[0])
        self.chuck = moving(axes.plot([], [], zorder=8, **CHUCK_AXIS.point())[0])
        self.chuck.set_markersize(9)
        self.centre = moving(axes.plot([], [], zorder=9, **OPTICAL_CENTRE.point())[0])
        self.centre.set_markersize(10)
        self.worst = moving(axes.plot([], [], zorder=10, **LEAST_MARGIN.point())[0])
        self.worst.set_markersize(7)
        self.words = self.window.label(fontsize=WORDS_PT, ha="center", va="center", color=INK, zorder=11)

    def fits(self, sheet: EyeSheet) -> float:
        """Return the largest scale at which a blank can be drawn whole [shown px/mm].

        sheet: the lens.
        """
        left, bottom, right, top = self.window.box_px
        radius = sheet.order.lens.blank_diameter_mm / 2.0
        across = ((right - left) / 2.0 - _MARGIN_PX) / (abs(sheet.centre_x_mm) + radius)
        return min(across, ((top - bottom) / 2.0 - _MARGIN_PX) / (abs(sheet.up_mm) + radius))

    def update(self, sheet: EyeSheet, shown: ShownTurn | None = None) -> None:
        """Draw a lens at the window's scale.

        sheet: the lens, worked; its cut is known.
        shown: which turn of which cut; None for the one with the least margin.
        """
        shown = shown or worst_turn(sheet.cut)
        lines = rims(sheet, shown)
        for name in ("uncut", "start", "before", "after", "outline", "block"):
            line = getattr(lines, name)
            getattr(self, name).set_xy(np.column_stack([line.real, line.imag]))
        self.uncut.set_visible(shown.cut.crib is not None)
        self.blank.set_data(lines.blank.real, lines.blank.imag)
        # Where the cut starts at the blank, its line hides the blank's, which must not happen to a warning.
        self.blank.set(**(BLANK if sheet.blank_covers else TOO_SMALL).line())
        self.blank.set_zorder(1 if sheet.blank_covers else 7)
        for name in ("chuck", "centre", "worst"):
            point = getattr(lines, name)
            getattr(self, name).set_data([point.real], [point.imag])
        self._write(shown.margin, lines)

    def _write(self, margin: float, lines: Rims) -> None:
        """Write the least margin beside its mark, inward of it before anywhere else."""
        x, y = self.window.px(lines.worst.real, lines.worst.imag)
        side = -1 if lines.worst.real > lines.chuck.real else 1
        spots = [(x + side * _BESIDE_PX, y, side, 0), (x, y + _BESIDE_PX, 0, 1), (x, y - _BESIDE_PX, 0, -1)]
        marks = [self.window.px(point.real, point.imag) for point in (lines.chuck, lines.centre)]
        taken = [(a - 6, b - 6, a + 6, b + 6) for a, b in marks]
        place(self.words, f"{margin:.2f}", spots, inside=self.window.box_px, taken=taken)


def hatched_cribbed() -> dict[str, object]:
    """Return matplotlib's keywords for what cribbing took."""
    return {"facecolor": PAPER, "edgecolor": BLANK.colour, "hatch": "...", "linewidth": 0.0}


def _rim(look: Look) -> dict[str, object]:
    return {"edgecolor": look.colour, "linestyle": look.dashes, "linewidth": look.width_pt}


def _over_paper(colour: str, opacity: float) -> tuple[float, float, float]:
    """Return the colour that a see-through one has on white, so that it covers what lies under it."""
    return tuple(opacity * part + (1.0 - opacity) for part in to_rgba(colour)[:3])
