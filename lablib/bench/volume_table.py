"""Thickness of one lens and the volume in a bite, tabled, to look up the bite of a given volume."""

import math

import numpy as np

from lablib.bench.plan import UncutLens

# Rows of the table are so far apart; between them t r is a straight line.
_GRID_MM = 0.25
_NEWTON_STEPS = 2
# Where there is next to no lens, t r is no slope to divide by [mm2].
_LEAST_SLOPE = 1e-3


class VolumeTable:
    """Thickness of a lens, and its running integral of t r dr, at every angle."""

    def __init__(self, lens: UncutLens, rim_mm: np.ndarray, margin_mm: float) -> None:
        """Table a lens.

        lens: the lens; rim_mm: shape (N,), its rim now [mm]; margin_mm: how far inside the outline [mm].
        """
        self.first = max(_GRID_MM, float(lens.outline_mm.min()) - margin_mm - _GRID_MM)
        rows = math.ceil((float(rim_mm.max()) - self.first) / _GRID_MM) + 2
        radius = self.first + _GRID_MM * np.arange(rows)[:, None] + np.zeros(rim_mm.size)
        thickness = lens.at_mm(radius)
        moment = thickness * radius
        volume = np.zeros_like(moment)
        np.cumsum((moment[1:] + moment[:-1]) * (_GRID_MM / 2.0), axis=0, out=volume[1:])
        # In one row each: reading there is several times as fast.
        self.thickness, self.moment, self.volume = thickness.ravel(), moment.ravel(), volume.ravel()
        self.points, self.last = np.arange(rim_mm.size), rows - 2

    def _place(self, radius: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Where the row below a distance stands for every angle, and how far above it the distance lies."""
        row = (radius - self.first) / _GRID_MM
        below = np.minimum(np.maximum(row.astype(int), 0), self.last)
        return below * self.points.size + self.points, row - below

    def thickness_mm(self, radius: np.ndarray) -> np.ndarray:
        """Return the thickness at a distance for every angle, shape (N,) [mm].

        radius: shape (N,) [mm].
        """
        at, part = self._place(radius)
        here = self.thickness.take(at)
        return here + part * (self.thickness.take(at + self.points.size) - here)

    def volume_mm3_per_rad(self, radius: np.ndarray) -> np.ndarray:
        """Return the running integral up to a distance for every angle, shape (N,) [mm3 per radian].

        radius: shape (N,) [mm].
        """
        return self._volume_and_slope(radius)[0]

    def _volume_and_slope(self, radius: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        at, part = self._place(radius)
        here = self.moment.take(at)
        rise = part * (self.moment.take(at + self.points.size) - here)
        return self.volume.take(at) + _GRID_MM * part * (here + 0.5 * rise), here + rise

    def radius_mm(self, volume: np.ndarray, low_mm: np.ndarray, high_mm: np.ndarray) -> np.ndarray:
        """Return the distance up to which the integral is so much: the inverse, by Newton's method [mm].

        volume: shape (N,) [mm3 per radian]; low_mm, high_mm: shape (N,), between them it is looked for [mm].
        """
        low, high = self.volume_mm3_per_rad(low_mm), self.volume_mm3_per_rad(high_mm)
        part = np.divide(volume - low, high - low, out=np.zeros_like(low), where=high > low)
        radius = low_mm + np.minimum(np.maximum(part, 0.0), 1.0) * (high_mm - low_mm)
        for _ in range(_NEWTON_STEPS):
            there, slope = self._volume_and_slope(radius)
            radius = radius - (there - volume) / np.maximum(slope, _LEAST_SLOPE)
            radius = np.minimum(np.maximum(radius, low_mm), high_mm)
        return radius
