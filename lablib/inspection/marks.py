"""How far a lens turned on its block, read from its marks.

A turn counts anticlockwise, as the drawing is seen. The rise of two marks is how much higher the one at the
observer's right lies than the one at the left. Marks are read before the block comes off: afterwards nothing
tells any more where the block stood.
"""

import math
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.errors import LabError, require_between, require_finite


def _row(name: str) -> dict:
    return read_table("lablib.inspection", "marks.toml")[name]


def _within_row(name: str, thing: str, value: float) -> float:
    row = _row(name)
    return require_between(thing, value, low=row["low"], high=row["high"], unit=row["unit"])


# Between the engravings of a progressive [mm].
MARKS_APART_MM = _row("marks_apart")["value"]
# How exactly a rise is read, either way [mm].
RISE_WITHIN_MM = _row("rise_within")["value"]
_HALF_TURN_DEG = 180.0


def turn_deg(rise_mm: float, *, apart_mm: float = MARKS_APART_MM) -> float:
    """Return how far two marks have turned out of the level, anticlockwise positive [degrees].

    rise_mm: how much higher the mark at the observer's right lies [mm].
    apart_mm: distance of the marks on the lens [mm], 34 for the engravings of a progressive.

    The distance is fixed on the lens and turns with it, so the arc sine is exact; the small-angle rule
    agrees with it to a hundredth of a degree up to about 5 degrees.

    Raises LabError for marks no lens has, and for a rise greater than their distance.
    """
    apart = _within_row("marks_apart", "distance of the marks", apart_mm)
    rise = require_finite("rise", rise_mm, unit="mm")
    if abs(rise) > apart:
        raise LabError(
            f"rise {rise:g} mm of marks {apart:g} mm apart: two marks never differ in height by more than "
            "their distance: measure both again"
        )
    return math.degrees(math.asin(rise / apart))


def small_angle_deg(rise_mm: float, *, apart_mm: float = MARKS_APART_MM) -> float:
    """Return the turn by the rule for small angles, the rise over the distance as an arc [degrees].

    rise_mm, apart_mm: as in `turn_deg`, which also says what it raises.
    """
    turn_deg(rise_mm, apart_mm=apart_mm)
    return math.degrees(rise_mm / apart_mm)


def rise_mm(by_deg: float, *, apart_mm: float = MARKS_APART_MM) -> float:
    """Return how much higher the mark at the observer's right lies once the lens has turned [mm].

    by_deg: the turn, anticlockwise positive [degrees]; apart_mm: as in `turn_deg`.

    Raises LabError for marks no lens has, or a turn that is not a number.
    """
    apart = _within_row("marks_apart", "distance of the marks", apart_mm)
    return apart * math.sin(math.radians(require_finite("turn", by_deg, unit="degrees")))


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnReading:
    """A turn as two marks tell it.

    turn_deg: as read; low_deg, high_deg: between which it lies, by how exactly heights are read [degrees].
    """

    turn_deg: float
    low_deg: float
    high_deg: float

    @property
    def doubt_deg(self) -> float:
        """How far it may be off, at most [degrees]."""
        return max(self.high_deg - self.turn_deg, self.turn_deg - self.low_deg)


def read_turn(
    rise_mm: float, *, apart_mm: float = MARKS_APART_MM, within_mm: float = RISE_WITHIN_MM
) -> TurnReading:
    """Return a turn with its doubt.

    rise_mm, apart_mm: as in `turn_deg`, which also says what it raises, for the ends of the reading too.
    within_mm: how far the rise may be off as it is read, either way [mm].
    """
    within = _within_row("rise_within", "exactness of a rise", within_mm)
    turn, low, high = (turn_deg(rise_mm + off, apart_mm=apart_mm) for off in (0.0, -within, within))
    return TurnReading(turn_deg=turn, low_deg=low, high_deg=high)


def top_apart_mm(*, width_mm: float, centre_below_top_mm: float, top_rise_mm: float = 0.0) -> float:
    """Return how far apart the two corners of a cut segment top lie [mm]: less than the segment is wide.

    width_mm: of the segment; centre_below_top_mm: its centre below its top; top_rise_mm: how far the middle
        of a curved top lies above its corners [mm].

    Raises LabError for a round segment, which has no corners and hides a turn, and for sizes no segment has.
    """
    half = require_between("segment width", width_mm, low=0.0, high=100.0, unit="mm", open_low=True) / 2.0
    above = require_finite("segment centre below its top", centre_below_top_mm, unit="mm")
    above -= require_finite("rise of the top", top_rise_mm, unit="mm")
    if not 0.0 <= above < half:
        raise LabError(
            f"corners {above:g} mm above the centre of a segment {width_mm:g} mm wide: there are corners "
            f"only from 0 to less than {half:g} mm; a round segment has none and hides a turn: read the "
            "engraved or dotted line instead"
        )
    return 2.0 * math.sqrt(half**2 - above**2)


def on_a_line_deg(by_deg: float) -> float:
    """Return what a line across the lens shows of a turn, above -90 and up to 90 [degrees].

    by_deg: the turn [degrees]. Half a turn brings a line back upon itself.

    Raises LabError for a turn that is not a number.
    """
    turn = require_finite("turn", by_deg, unit="degrees")
    return _HALF_TURN_DEG / 2.0 - (_HALF_TURN_DEG / 2.0 - turn) % _HALF_TURN_DEG


def turned_to_deg(by_deg: float) -> float:
    """Return where a lens stands that has turned, above -180 and up to 180 [degrees].

    by_deg: in all, whole turns among it [degrees].

    Raises LabError for a turn that is not a number.
    """
    turn = require_finite("turn", by_deg, unit="degrees")
    return _HALF_TURN_DEG - (_HALF_TURN_DEG - turn) % (2.0 * _HALF_TURN_DEG)


def where_turned_to(x_mm: float, y_mm: float, by_deg: float) -> tuple[float, float]:
    """Return where a point of the lens lies once the lens has turned about the chuck axis [mm].

    x_mm, y_mm: of the point before, from the chuck axis [mm]; by_deg: the turn [degrees].

    Raises LabError for what is not a number.
    """
    point = complex(require_finite("x", x_mm, unit="mm"), require_finite("y", y_mm, unit="mm"))
    turn = math.radians(require_finite("turn", by_deg, unit="degrees"))
    turned = point * complex(math.cos(turn), math.sin(turn))
    return turned.real, turned.imag
