"""Rays through a thin lens near its axis, as points to draw.

z runs along the axis the way the light goes, with the lens at 0; y is the height above the axis. Slopes
are taken as small, so every ray of the bundle meets in one point.
"""

import math
from dataclasses import dataclass

import numpy as np

from lablib.errors import LabError, require_between
from lablib.optics.vergence import ahead_of_vergence_mm, image_vergence_d

_MOST_RAYS = 99
_FARTHEST_MM = 100_000.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RayBundle:
    """Straight pieces of the rays of a bundle, each from its first to its second point.

    incoming_z_mm, incoming_y_mm: shape (N, 2), up to the lens [mm].
    leaving_z_mm, leaving_y_mm: shape (N, 2), from the lens to the focus or the end of the picture [mm].
    drawn_back_z_mm, drawn_back_y_mm: shape (N, 2), from the lens back to the point the light seems to come
        from, or to the edge of the picture [mm]; shape (0, 2) where the light does not spread.
    focus_z_mm: where the leaving light meets, minus where it seems to come from, infinite where it is
        parallel [mm].
    focus_in_picture: whether that point lies inside the picture.
    """

    incoming_z_mm: np.ndarray
    incoming_y_mm: np.ndarray
    leaving_z_mm: np.ndarray
    leaving_y_mm: np.ndarray
    drawn_back_z_mm: np.ndarray
    drawn_back_y_mm: np.ndarray
    focus_z_mm: float
    focus_in_picture: bool


def ray_bundle(
    power_d: float,
    *,
    in_front_mm: float = math.inf,
    half_width_mm: float = 20.0,
    rays: int = 7,
    before_mm: float = 300.0,
    behind_mm: float = 600.0,
) -> RayBundle:
    """Return the rays from an object on the axis through a thin lens in air.

    power_d: power [D].
    in_front_mm: how far in front of the lens the object lies [mm]; infinite for far off.
    half_width_mm: height of the outermost ray at the lens [mm].
    rays: how many, evenly spaced, from 2 to 99.
    before_mm, behind_mm: how far the picture reaches in front of the lens and behind it [mm].

    Raises LabError for a value out of range or an object that is not in front of the lens.
    Source: vergence, `vergence.image_vergence_d`.
    """
    reach_before, reach_behind, outermost = (
        require_between(thing, value, low=0.0, high=_FARTHEST_MM, unit="mm", open_low=True)
        for thing, value in (
            ("picture before the lens", before_mm),
            ("picture behind the lens", behind_mm),
            ("half-width of the bundle", half_width_mm),
        )
    )
    focus = ahead_of_vergence_mm(image_vergence_d(power_d, in_front_mm=in_front_mm))
    heights = np.linspace(-outermost, outermost, _count(rays))
    incoming = _piece(heights, meets_mm=-in_front_mm, ends_mm=(-min(in_front_mm, reach_before), 0.0))
    spreads = focus < 0.0
    last = reach_behind if spreads else min(focus, reach_behind)
    leaving = _piece(heights, meets_mm=focus, ends_mm=(0.0, last))
    first = max(focus, -reach_before) if spreads else 0.0
    back = _piece(heights if spreads else heights[:0], meets_mm=focus, ends_mm=(0.0, first))
    return RayBundle(
        incoming_z_mm=incoming[0],
        incoming_y_mm=incoming[1],
        leaving_z_mm=leaving[0],
        leaving_y_mm=leaving[1],
        drawn_back_z_mm=back[0],
        drawn_back_y_mm=back[1],
        focus_z_mm=focus,
        focus_in_picture=-reach_before <= focus <= reach_behind,
    )


def _count(rays: int) -> int:
    if isinstance(rays, bool) or not isinstance(rays, int) or not 2 <= rays <= _MOST_RAYS:
        raise LabError(f"number of rays {rays!r} cannot be drawn: give a whole number from 2 to {_MOST_RAYS}")
    return rays


def _piece(
    heights: np.ndarray, *, meets_mm: float, ends_mm: tuple[float, float]
) -> tuple[np.ndarray, np.ndarray]:
    """Rays that pass the lens at these heights and meet on the axis at a place, between two ends."""
    ends = np.array(ends_mm)
    z = np.tile(ends, (heights.size, 1))
    return z, np.outer(heights, 1.0 - ends / meets_mm)
