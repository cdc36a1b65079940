"""What two plane figures have in common, and how large a figure is.

Figures are rings of points x + iy, without the first one repeated at the end.
"""

import numpy as np


def ring_of(x_mm: np.ndarray, y_mm: np.ndarray) -> np.ndarray:
    """Return points as a ring, shape (N,) [mm].

    x_mm, y_mm: shape (N,) [mm].
    """
    return np.asarray(x_mm, dtype=float) + 1j * np.asarray(y_mm, dtype=float)


def clipped(ring: np.ndarray, convex: np.ndarray) -> np.ndarray:
    """Return the part of a figure that lies inside another, empty where there is none.

    ring: any figure, shape (N,) [mm].
    convex: a figure without dents, running anticlockwise, shape (M,) [mm].

    Source: I. E. Sutherland, G. W. Hodgman, Reentrant polygon clipping, Comm. ACM 17 (1974) 32.
    """
    for start, end in zip(convex, np.roll(convex, -1), strict=True):
        ring = _cut(ring, start, end)
        if not ring.size:
            break
    return ring


def area_mm2(ring: np.ndarray) -> float:
    """Return the area of a figure [mm2].

    ring: shape (N,) [mm]; empty for nothing at all.
    """
    return abs(float((np.conj(ring) * np.roll(ring, -1)).imag.sum())) / 2.0


def circle(centre: complex, diameter_mm: float, *, points: int = 180) -> np.ndarray:
    """Return a circle as a ring, shape (points,) [mm].

    centre: x + iy [mm]; diameter_mm: [mm].
    """
    return centre + diameter_mm / 2.0 * np.exp(2j * np.pi * np.arange(points) / points)


def _cut(ring: np.ndarray, start: complex, end: complex) -> np.ndarray:
    """Keep what lies to the left of a line."""
    left = (np.conj(end - start) * (ring - start)).imag
    inside = left >= 0.0
    if inside.all():
        return ring
    after = np.roll(left, -1)
    crosses = inside != (after >= 0.0)
    share = np.divide(left, left - after, out=np.zeros_like(left), where=crosses)
    on_line = ring + share * (np.roll(ring, -1) - ring)
    return np.stack([ring, on_line], axis=1)[np.stack([inside, crosses], axis=1)]
