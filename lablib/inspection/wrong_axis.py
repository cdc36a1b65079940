"""Where a wrong axis comes from: each station's share of it, told by where the mark stands.

All angles count anticlockwise as the drawing is seen, against where they ought to be.
"""

from dataclasses import dataclass, fields
from functools import cache

from lablib.datafile import read_table
from lablib.errors import require_between
from lablib.inspection.marks import on_a_line_deg

BEFORE, SLIP, RIM, MACHINE, NONE = "before", "slip", "rim", "machine", "none"
_LARGEST_DEG = 90.0
# Sums of read angles are compared with what counts as level; the last bit must not decide.
_DECIMALS = 6


def level_deg() -> float:
    """Return what counts as level, or as the same [degrees]: marks and axes are not read closer."""
    return read_table("lablib.inspection", "wrong_axis.toml")["level"]["value"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One origin of a wrong axis.

    name: its stable name; words: what it is; shows: where mark and power stand; check: how to make sure;
    then: what is done.
    """

    name: str
    words: str
    shows: str
    check: str
    then: str


@cache
def causes() -> dict[str, Cause]:
    """Return every cause by name, in the order in which a lens meets them; "none" last."""
    rows = read_table("lablib.inspection", "wrong_axis.toml")["cause"]
    return {name: Cause(name=name, **row) for name, row in rows.items()}


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """What was read of one lens, each against where it ought to be, anticlockwise positive [degrees].

    loose_deg: its axis with the lens loose on the bench, held as it will sit in the frame.
    mark_deg: its mark against the block's line, before the block came off; None where nobody looked.
    framed_deg: its axis in the frame; None where it is not mounted yet.
    other_deg: the axis of the pair's other lens; None where that has no cylinder, or was not read.

    Raises LabError for an angle that is not a number, or beyond 90 degrees either way.
    """

    loose_deg: float
    mark_deg: float | None = None
    framed_deg: float | None = None
    other_deg: float | None = None

    def __post_init__(self) -> None:
        for one in fields(self):
            if (value := getattr(self, one.name)) is not None:
                require_between(one.name, value, low=-_LARGEST_DEG, high=_LARGEST_DEG, unit="degrees")

    @property
    def rim_share_deg(self) -> float:
        """What came in between bench and frame [degrees]."""
        return 0.0 if self.framed_deg is None else _difference(self.framed_deg, self.loose_deg)

    @property
    def before_share_deg(self) -> float | None:
        """What the mark does not explain, so was there before the block [degrees]; None without a mark."""
        return None if self.mark_deg is None else _difference(self.loose_deg, self.mark_deg)

    @property
    def is_alike(self) -> bool:
        """Whether both lenses are off the same way by the same amount, as they are read."""
        if self.other_deg is None or abs(self.loose_deg) <= level_deg():
            return False
        return abs(_difference(self.other_deg, self.loose_deg)) <= level_deg()


def _difference(one_deg: float, other_deg: float) -> float:
    """How far one axis lies from another: a cylinder comes back upon itself in half a turn."""
    return round(on_a_line_deg(one_deg - other_deg), _DECIMALS)


def shares_deg(readings: Readings) -> dict[str, float]:
    """Return each station's share of a wrong axis by the cause's name, where it can be told [degrees].

    readings: of one lens.

    A mark that was read parts slip from what was there before it; without one that share is missing.
    """
    shares = {RIM: readings.rim_share_deg}
    if readings.mark_deg is not None:
        shares |= {BEFORE: readings.before_share_deg, SLIP: readings.mark_deg}
    return shares


def suspects(readings: Readings) -> tuple[Cause, ...]:
    """Return what is to be looked into, the greatest share first; "none" where all is level.

    readings: of one lens.

    Both lenses off alike point to the machine, and the test lens decides. A lens off loose on the bench whose
    mark nobody read may have turned or may have been wrong before: both stay.

    Source: common practice.
    """
    shares = shares_deg(readings)
    found = {name: abs(share) for name, share in shares.items() if abs(share) > level_deg()}
    if readings.is_alike:
        # Whatever the machine does, it does before the rim.
        found = {MACHINE: abs(readings.loose_deg)} | {name: found[name] for name in found if name == RIM}
    elif readings.mark_deg is None and abs(readings.loose_deg) > level_deg():
        found |= {BEFORE: abs(readings.loose_deg), SLIP: abs(readings.loose_deg)}
    names = sorted(found, key=lambda name: -found[name]) or [NONE]
    return tuple(causes()[name] for name in names)
