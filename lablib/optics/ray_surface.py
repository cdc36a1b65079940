"""Where rays meet a surface, and how it is curved there: the exact step of every traced ray.

Vectors are rows of arrays of shape (n, 3), in the coordinates of the surface's vertex: x to the right of an
observer facing the wearer, y up, z towards the eye. A ray that meets nothing gives not-a-number.
"""

from dataclasses import dataclass

import numpy as np

from lablib.optics.conic import Conic
from lablib.optics.surface import Surface

_MOST_STEPS = 30
_STEP_MM = 1e-12


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Met:
    """Where rays meet a surface.

    points: [mm], shape (n, 3).
    normals: unit vectors towards the eye, shape (n, 3).
    curvatures: [1/mm], shape (n, 3, 3): for steps along the surface what each bends towards the normal.
    """

    points: np.ndarray
    normals: np.ndarray
    curvatures: np.ndarray


def meet(surface: Surface, points: np.ndarray, directions: np.ndarray) -> Met:
    """Return where rays meet a surface, nearest to the plane through its vertex.

    surface: a sphere, a conic or a torus of tyre formation, level or tilted about its vertex.
    points, directions: of the rays, shape (n, 3) [mm] and unit vectors.

    Source: derived; the surfaces as equations F(x, y, z) = 0, with the gradient of F for the normal and its
        second derivatives for the curvature.
    """
    axes = _axes(surface)
    own, along = points @ axes, directions @ axes
    own = own - along * (own[:, 2] / along[:, 2])[:, None]
    with np.errstate(invalid="ignore", divide="ignore"):
        if surface.flat_per_mm == surface.steep_per_mm:
            met, gradient, second = _on_conic(surface, own, along)
        else:
            met, gradient, second = _on_torus(surface, own, along)
        # Where the normal leans more than square to the axis the surface has curled back on itself.
        length = np.where(gradient[:, 2] > 0.0, np.sqrt(np.einsum("ij,ij->i", gradient, gradient)), np.nan)
        normals = (gradient / length[:, None]) @ axes.T
        curvatures = (axes * (-second / length[:, None])[:, None, :]) @ axes.T
    return Met(points=met @ axes.T, normals=normals, curvatures=curvatures)


def _axes(surface: Surface) -> np.ndarray:
    """The flat meridian, the steep meridian and the normal at the vertex, one in each column."""
    normal = np.array([-surface.tilt_x, -surface.tilt_y, 1.0])
    normal /= np.linalg.norm(normal)
    turn = np.radians(surface.flat_meridian_deg)
    level = np.array([[np.cos(turn), np.sin(turn), 0.0], [-np.sin(turn), np.cos(turn), 0.0]])
    # Tilted about a line in the vertex plane, so that a tilt does not turn the meridians round the axis.
    between = normal + np.array([0.0, 0.0, 1.0])
    along, across = level - np.outer(level @ normal / (1.0 + normal[2]), between)
    return np.column_stack([along, across, normal])


def _on_conic(surface: Surface, start: np.ndarray, along: np.ndarray) -> tuple[np.ndarray, ...]:
    """Points on z - c (x2 + y2 + p z2) / 2 = 0 by its quadratic, from points in the vertex plane."""
    c = surface.steep_per_mm
    p = surface.p_value if isinstance(surface, Conic) else 1.0
    bend = c * np.array([1.0, 1.0, p])
    square = (along**2) @ bend
    half = (start * along) @ bend - along[:, 2]
    rest = (start**2) @ bend
    # The root nearer to the vertex plane; this way of writing it also holds for a flat surface.
    root = -half + np.copysign(np.sqrt(half**2 - square * rest), -half)
    met = start + along * (rest / root)[:, None]
    gradient = np.array([0.0, 0.0, 1.0]) - met * bend
    return met, gradient, np.broadcast_to(-bend, met.shape)


def _on_torus(surface: Surface, start: np.ndarray, along: np.ndarray) -> tuple[np.ndarray, ...]:
    """Points on a torus by Newton's method along the rays, from points in the vertex plane.

    With h the depth of the steep arc at v, the sweep about the flat centre gives z - h = c (u2 + z2 - h2) /
    2.
    """
    way = np.zeros(len(start))
    for _ in range(_MOST_STEPS):
        met = start + along * way[:, None]
        value, gradient, second = _torus(surface, met)
        step = value / np.einsum("ij,ij->i", gradient, along)
        way = way - step
        if not np.any(np.abs(step) > _STEP_MM):
            break
    return met, gradient, second


def _torus(surface: Surface, met: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """The equation of the torus, its gradient and its second derivatives, which mix no directions."""
    flat, steep = surface.flat_per_mm, surface.steep_per_mm
    u, v, z = met.T
    root = np.sqrt(1.0 - (steep * v) ** 2)
    arc, slope = steep * v**2 / (1.0 + root), steep * v / root
    left = 1.0 - flat * arc
    value = z - arc - flat / 2.0 * (u**2 + z**2 - arc**2)
    gradient = np.column_stack([-flat * u, -slope * left, 1.0 - flat * z])
    across = flat * slope**2 - steep / root**3 * left
    second = np.column_stack([np.full_like(across, -flat), across, np.full_like(across, -flat)])
    return value, gradient, second
