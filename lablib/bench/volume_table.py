"""Thickness of one lens and the volume in a bite, tabled, to look up the bite of a given volume."""

import math

import numpy as np

from lablib.bench.plan import UncutLens

# Rows of the table are so far apart; between them t r is a straight line.
_GRID_MM = 0.25
_NEWTON_STEPS = 3
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
        self.thickness = lens.at_mm(radius)
        self.moment = self.thickness * radius
        self.volume = np.zeros_like(self.moment)
        np.cumsum((self.moment[1:] + self.moment[:-1]) * (_GRID_MM / 2.0), axis=0, out=self.volume[1:])
        self.points = np.arange(rim_mm.size)

    def _row(self, radius: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        place = (radius - self.first) / _GRID_MM
        row = np.clip(place.astype(int), 0, len(self.volume) - 2)
        return row, place - row

    def thickness_mm(self, radius: np.ndarray) -> np.ndarray:
        """Return the thickness at a distance for every angle, shape (N,) [mm]."""
        row, part = self._row(radius)
        here = self.thickness[row, self.points]
        return here + part * (self.thickness[row + 1, self.points] - here)

    def volume_mm3_per_rad(self, radius: np.ndarray) -> np.ndarray:
        """Return the running integral up to a distance for every angle, shape (N,) [mm3 per radian]."""
        row, part = self._row(radius)
        here, next_row = self.moment[row, self.points], self.moment[row + 1, self.points]
        return self.volume[row, self.points] + _GRID_MM * part * (here + 0.5 * part * (next_row - here))

    def radius_mm(self, volume: np.ndarray, low_mm: np.ndarray, high_mm: np.ndarray) -> np.ndarray:
        """Return the distance up to which the integral is so much: the inverse, by Newton's method [mm].

        volume: shape (N,) [mm3 per radian]; low_mm, high_mm: shape (N,), between them it is looked for [mm].
        """
        low, high = self.volume_mm3_per_rad(low_mm), self.volume_mm3_per_rad(high_mm)
        part = np.divide(volume - low, high - low, out=np.zeros_like(low), where=high > low)
        radius = low_mm + np.clip(part, 0.0, 1.0) * (high_mm - low_mm)
        for _ in range(_NEWTON_STEPS):
            row, part = self._row(radius)
            here = self.moment[row, self.points]
            slope = here + part * (self.moment[row + 1, self.points] - here)
            step = (self.volume_mm3_per_rad(radius) - volume) / np.maximum(slope, _LEAST_SLOPE)
            radius = np.clip(radius - step, low_mm, high_mm)
        return radius
