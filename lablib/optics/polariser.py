"""A polarised lens whose filter is turned: how far, and what it then lets through.

The filter of a polarised lens stands so that it stops light that swings level, the glare of water and roads.
A stock lens with a cylinder has its axis laid to that plane in the factory, so that its blank cannot be
turned to another axis without turning the filter too.
"""

import math

from lablib.errors import require_between
from lablib.optics.power import require_axis, without_noise


def filter_turned_deg(*, packet_axis_deg: float, ordered_axis_deg: float) -> float:
    """Return how far the filter turns when a blank is turned to bring its cylinder axis [degrees].

    packet_axis_deg: axis of the blank when its filter stands right, as its packet says [degrees].
    ordered_axis_deg: axis wanted [degrees].

    Above 0 anticlockwise, facing the wearer; the shorter way, so from above -90 up to 90.
    Raises LabError for an axis that is not above 0 and up to 180.
    """
    turn = without_noise(require_axis(ordered_axis_deg) - require_axis(packet_axis_deg)) % 180.0
    return turn - 180.0 if turn > 90.0 else turn


def glare_let_through(turned_deg: float) -> float:
    """Return the share of level-swinging light that passes a filter so far off its place, sin^2.

    turned_deg: how far the filter is turned, either way [degrees].

    The filter is taken as perfect: in its place it stops all such light and its tint takes nothing more.
    Raises LabError for a turn beyond a right angle.
    Source: Malus's law (from memory).
    """
    turn = require_between("turn of the filter", turned_deg, low=-90.0, high=90.0, unit="degrees")
    return math.sin(math.radians(turn)) ** 2
