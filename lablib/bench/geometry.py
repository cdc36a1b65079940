"""Outline and blank as seen from the chuck axis: distances at N equal angles, anticlockwise from +x."""

import math
from functools import cache

import numpy as np
from scipy.interpolate import CubicSpline

from lablib.errors import LabError


@cache
def angles_rad(points: int) -> np.ndarray:
    """Return so many equal angles from 0 [radians]; do not write into them."""
    return np.arange(points) * (2.0 * np.pi / points)


@cache
def directions(points: int) -> tuple[np.ndarray, np.ndarray]:
    """Return cosine and sine at so many equal angles; do not write into them."""
    return np.cos(angles_rad(points)), np.sin(angles_rad(points))


def outline_from(radius_mm: np.ndarray, *, x_mm: float, y_mm: float) -> np.ndarray:
    """Return an outline's distances from another point, at the same number of equal angles [mm].

    radius_mm: shape (N,), distances from the old origin [mm].
    x_mm, y_mm: the new point, from the old origin [mm].

    Raises LabError where the point is outside the outline, or does not see all of it.
    """
    cosine, sine = directions(radius_mm.size)
    across, up = radius_mm * cosine - x_mm, radius_mm * sine - y_mm
    angle = np.unwrap(np.arctan2(up, across))
    closed = np.append(angle, angle[0] + 2.0 * np.pi)
    if np.any(np.diff(closed) <= 0.0):
        raise LabError(
            f"blocking point ({x_mm:g}, {y_mm:g}) mm does not see the whole outline: "
            f"give a point well inside it"
        )
    return _at_equal_angles(closed, np.hypot(across, up))


def _at_equal_angles(closed: np.ndarray, distance: np.ndarray) -> np.ndarray:
    """Read distances at equal angles; closed: their own growing angles, the first once more at the end."""
    seen = CubicSpline(closed, np.append(distance, distance[0]), bc_type="periodic")
    return seen(angles_rad(distance.size))


def parallel_outline(radius_mm: np.ndarray, offset_mm: float) -> np.ndarray:
    """Return the parallel curve of an outline as distances from the same origin, shape (N,) [mm].

    radius_mm: shape (N,), the outline [mm].
    offset_mm: along its outward normal; above 0 outside [mm].

    Where the outline lies slant to the radius, its parallel is farther out than the radius and the offset.

    Raises LabError where the parallel crosses itself, in a bay or a corner rounder than the offset.
    """
    lean = lean_rad(radius_mm)
    along, beside = radius_mm + offset_mm * np.cos(lean), -offset_mm * np.sin(lean)
    angle = np.unwrap(angles_rad(radius_mm.size) + np.arctan2(beside, along))
    closed = np.append(angle, angle[0] + 2.0 * np.pi)
    if np.any(np.diff(closed) <= 0.0) or np.any(along <= 0.0):
        raise LabError(f"parallel of {offset_mm:g} mm crosses itself on this outline: give a smaller offset")
    return _at_equal_angles(closed, np.hypot(along, beside))


def on_a_line_deg(turn_deg: float) -> float:
    """Return what a line shows of a turn, above -90 and up to 90 [degrees].

    turn_deg: anticlockwise; may pass a whole turn [degrees].
    """
    return 90.0 - (90.0 - turn_deg) % 180.0


def lean_rad(radius_mm: np.ndarray) -> np.ndarray:
    """Return the angle from the outward normal to the direction of the point itself [radians].

    radius_mm: shape (..., N), distances at equal angles [mm]; slopes are central differences.
    """
    step = 2.0 * np.pi / radius_mm.shape[-1]
    gain = (np.roll(radius_mm, -1, axis=-1) - np.roll(radius_mm, 1, axis=-1)) / (2.0 * step)
    return np.arctan2(gain, radius_mm)


def circle_from(diameter_mm: float, *, x_mm: float, y_mm: float, points: int) -> np.ndarray:
    """Return a round blank's rim as distances from the chuck axis, shape (points,) [mm].

    diameter_mm: of the blank [mm].
    x_mm, y_mm: its centre, from the chuck axis [mm].

    Raises LabError where the chuck axis is not on the blank.
    """
    radius, away = diameter_mm / 2.0, float(np.hypot(x_mm, y_mm))
    if not away < radius:
        raise LabError(
            f"blank of {diameter_mm:g} mm centred {away:g} mm from the chuck axis does not reach the axis: "
            f"give a larger blank or a nearer centre"
        )
    cosine, sine = directions(points)
    along, off = x_mm * cosine + y_mm * sine, y_mm * cosine - x_mm * sine
    return along + np.sqrt(radius**2 - off**2)


def ellipse_support_mm(half_width_mm: float, half_height_mm: float, normal_deg: float) -> float:
    """Return how far the tangent of an ellipse passes from its centre, the arm of a light cut there [mm].

    half_width_mm, half_height_mm: of the ellipse, its width along x [mm].
    normal_deg: direction of the outward normal where it is touched, anticlockwise from +x [degrees].
    """
    normal = math.radians(normal_deg)
    return math.hypot(half_width_mm * math.cos(normal), half_height_mm * math.sin(normal))
