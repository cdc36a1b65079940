"""A lens that turned on its block, as it is drawn: rim, ordered outline, block and the marks of its design.

Everything is seen from the front with the block level, as complex points x + iy from the chuck axis [mm].
"""

from dataclasses import dataclass, field

import numpy as np

from lablib.bench.geometry import angles_rad
from lablib.bench.signs import BURNT_PATCH
from lablib.bench.slipping import Simulation
from lablib.errors import require_one_of
from lablib.inspection.marks import turned_to_deg
from lablib.job.eye_sheet import EyeSheet
from lablib.optics.progressive import (
    FITTING_CROSS,
    NASAL_ENGRAVING,
    TEMPORAL_ENGRAVING,
    Mark,
    named,
    progressive,
)
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment import Segment, segment
from lablib.optics.segment_layout import SegmentLayout

SINGLE_VISION, FLAT_TOP, PROGRESSIVE = DESIGNS = ("single vision", "flat top", "progressive")
"""What a lens may have that shows a turn: a line of three dots, a segment, engravings and a cross."""
# Between two of the three dots that are inked on a lens.
_DOTS_MM = 16.0
# How far below the centre a segment's top and above it a cross are drawn where no height is known.
_TOP_BELOW_MM, _CROSS_ABOVE_MM = 3.0, 3.0
_NONE = np.empty(0, dtype=complex)
_EVERY = 2


def _none() -> np.ndarray:
    return _NONE


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Marks:
    """What on a lens shows that it turned, where it lies on a lens that did not.

    design: one of `DESIGNS`.
    line: both ends of what ought to be level: the outer dots, the corners of a segment's top, the engravings.
    dots: what is marked on it, shape (M,); segment: outline of a segment, shape (K,); both may be empty.
    cross: the fitting cross, shape (1,), or empty.
    """

    design: str
    line: np.ndarray
    dots: np.ndarray = field(default_factory=_none)
    segment: np.ndarray = field(default_factory=_none)
    cross: np.ndarray = field(default_factory=_none)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SeenLens:
    """A lens on its block as it stands now.

    rim: as it is cut now; ordered: the outline as ordered; block: where the block ends; shape (N,) each.
    marks: of a lens that did not turn.
    line_deg: how far the lens is turned against its block, anticlockwise, above -180 and up to 180 [degrees].
    short_mm: how far the rim lies inside the ordered outline, at most [mm]; short_at: where on that outline.
    patch_mm: how far out a burnt patch reaches [mm]; 0 where there is none.
    before: the rim before this turn, as the lens stands now, shape (N,); empty where no turn is shown.
    """

    rim: np.ndarray
    ordered: np.ndarray
    block: np.ndarray
    marks: Marks
    line_deg: float
    short_mm: float = 0.0
    short_at: complex = 0j
    patch_mm: float = 0.0
    before: np.ndarray = field(default_factory=_none)


def seen_lens(ran: Simulation, marks: Marks, *, turn: int | None = None) -> SeenLens:
    """Return a lens as it stands after its cut, or after one of its turns.

    ran: the cut with the lens free to turn; marks: of the lens.
    turn: from 1, 0 before the first; None: the cut is over and the bite of its last turn is not shown.

    Raises LabError for a turn that was not run.
    """
    at = ran.turns_run if turn is None else turn
    ordered_mm, rim_mm = ran.result.lens.outline_mm, ran.seen_rim_mm(at)
    angle, lag_deg = angles_rad(rim_mm.size), _lag_deg(ran, at)
    way, short_mm = np.exp(1j * angle), ordered_mm - rim_mm
    worst = int(short_mm.argmax())
    burnt = at == ran.turns_run and BURNT_PATCH in ran.signs
    return SeenLens(
        rim=(rim_mm * way)[::_EVERY],
        ordered=(ordered_mm * way)[::_EVERY],
        block=(ran.result.holding.contact.reach_mm(angle) * way)[::_EVERY],
        marks=marks,
        line_deg=turned_to_deg(lag_deg),
        short_mm=max(0.0, float(short_mm[worst])),
        short_at=complex(ordered_mm[worst] * way[worst]),
        patch_mm=ran.heat.edge_mm if burnt else 0.0,
        before=(ran.rim_mm[turn - 1] * way * np.exp(1j * np.radians(lag_deg)))[::_EVERY] if turn else _NONE,
    )


def _lag_deg(ran: Simulation, turn: int) -> float:
    return float(ran.lag_deg[turn - 1, -1]) if turn else 0.0


def turn_figure(by_deg: float) -> str:
    """Return the figure of a turn: from 10 degrees on without decimals, which no one can foretell.

    by_deg: the turn, its sign left out [degrees].
    """
    size = abs(by_deg)
    return f"{size:.1f}" if size < 9.95 else f"{size:.0f}"


def written_turn(by_deg: float) -> str:
    """Return a turn as a drawing writes it.

    by_deg: the turn, its sign left out [degrees].
    """
    return f"{turn_figure(by_deg)}°"


def usual_marks(design: str, *, centre: complex = 0j, nasal_sign: int = 1) -> Marks:
    """Return the marks of a design where they usually lie about the optical centre.

    design: one of `DESIGNS`; centre: the optical centre, from the chuck axis [mm].
    nasal_sign: 1 where the nose lies at the observer's right, else -1.

    Raises LabError with the designs there are.
    """
    require_one_of("design", design, DESIGNS)
    if design == FLAT_TOP:
        return _of_segment(segment("flat-top-28"), centre - 1j * _TOP_BELOW_MM)
    if design == PROGRESSIVE:
        return _of_progressive(progressive("general").marks(), centre + 1j * _CROSS_ABOVE_MM, nasal_sign)
    return _of_dots(centre)


def marks_of(sheet: EyeSheet) -> Marks:
    """Return the marks of an ordered lens where they lie on it.

    sheet: the lens, worked; its cut is known. A design that is not laid out has the usual marks.
    """
    centre = complex(sheet.centre_x_mm, sheet.up_mm)
    chuck = centre - complex(sheet.cut.lens.blank_x_mm, sheet.cut.lens.blank_y_mm)
    layout, sign = sheet.multifocal, sheet.eye.nasal_sign
    if isinstance(layout, SegmentLayout):
        return _of_segment(layout.segment, complex(sign * layout.total_inset_mm, layout.top_up_mm) - chuck)
    if isinstance(layout, ProgressiveLayout):
        return _of_progressive(layout.marks, -chuck, sign)
    return _of_dots(centre - chuck)


def _of_dots(centre: complex) -> Marks:
    dots = centre + np.array([-_DOTS_MM, 0.0, _DOTS_MM])
    return Marks(design=SINGLE_VISION, line=dots[[0, -1]], dots=dots)


def _of_segment(ordered: Segment, top: complex) -> Marks:
    """The marks of a segment; of one without corners the line runs level through its middle."""
    half = ordered.corner_mm or ordered.width_mm / 2.0
    below = ordered.top_rise_mm if ordered.corner_mm else ordered.centre_below_top_mm
    line = top - 1j * below + np.array([-half, half])
    return Marks(design=FLAT_TOP, line=line, segment=ordered.ring_mm() + top)


def _of_progressive(marks: tuple[Mark, ...], zero: complex, sign: int) -> Marks:
    def at(*names: str) -> np.ndarray:
        found = (named(marks, name) for name in names)
        return zero + np.array([complex(sign * mark.in_mm, mark.up_mm) for mark in found])

    engravings = at(NASAL_ENGRAVING, TEMPORAL_ENGRAVING)
    return Marks(design=PROGRESSIVE, line=engravings, dots=engravings, cross=at(FITTING_CROSS))
