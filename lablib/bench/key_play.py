"""A worn block key: the block rocks in its chuck, and the axis is off before any lens has slipped."""

import math

from lablib.bench.parameter import default, require_parameter


def play_deg(play_mm: float, *, key_radius_mm: float | None = None) -> float:
    """Return how far a block turns in its chuck from one side of its key to the other [degrees].

    play_mm: room between key and slot, both sides together [mm].
    key_radius_mm: from the block's axis to where the key bears [mm]; None: the usual one.

    The axis of a lens is off by up to so much: it was blocked with the key on one side and the cut presses
    it to the other. The grip is no weaker for it.

    Raises LabError for a number out of range.
    Source: atan(play / radius).
    """
    play = require_parameter("key_play_mm", play_mm)
    radius = default("key_radius_mm") if key_radius_mm is None else key_radius_mm
    return math.degrees(math.atan(play / require_parameter("key_radius_mm", radius)))


def play_mm(off_deg: float, *, key_radius_mm: float | None = None) -> float:
    """Return the room at a key that lets a block turn so far [mm].

    off_deg: from one side to the other [degrees]; key_radius_mm: as in `play_deg`.
    """
    radius = default("key_radius_mm") if key_radius_mm is None else key_radius_mm
    return require_parameter("key_radius_mm", radius) * math.tan(math.radians(off_deg))
