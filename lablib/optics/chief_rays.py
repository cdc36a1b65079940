"""Rays that reach the eye's centre of rotation through a worn lens, and the power the lens has along each.

The eye turns about its centre, and light from far away follows the line of sight backwards through the lens.
Each ray is traced by Snell's law, and the narrow bundle round it by Coddington's equations for any direction:
so a sphere, a conic or a torus, tilted or not, and every direction of gaze are covered. Diffraction, colour
and the width of the pupil are not.
"""

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import ArrayLike

from lablib.errors import require_finite
from lablib.optics.lens import Lens
from lablib.optics.limits import require_in_limits
from lablib.optics.practice import usual_or
from lablib.optics.ray_surface import Met, meet
from lablib.optics.tilt import Tilt

_AHEAD = np.array([0.0, 0.0, 1.0])
_SQUARE = np.eye(2)


@dataclass(frozen=True, slots=True, kw_only=True)
class WornLens:
    """A lens where it sits in front of an eye.

    lens: it.
    tilt: how it is turned.
    drop_mm: how far its optical centre lies below the line straight ahead, along the lens [mm].
    centre_of_rotation_mm: from the lens back to the eye's centre of rotation, straight ahead [mm]; None for
        the usual value.

    Raises LabError for a distance out of range.
    """

    lens: Lens
    tilt: Tilt = field(default_factory=Tilt)
    drop_mm: float = 0.0
    centre_of_rotation_mm: float | None = None

    def __post_init__(self) -> None:
        require_in_limits("centre drop", self.drop_mm, "centre_drop_mm")
        distance = usual_or("centre_of_rotation", "centre of rotation", self.centre_of_rotation_mm)
        object.__setattr__(self, "centre_of_rotation_mm", distance)

    def to_lens(self, points: np.ndarray) -> np.ndarray:
        """Return points in the lens's own coordinates, from its front vertex [mm].

        points: shape (n, 3) [mm], from where the line straight ahead meets the back of the lens.
        """
        return points @ self.tilt.axes + [0.0, self.drop_mm, self.lens.centre_thickness_mm]

    def from_lens(self, points: np.ndarray) -> np.ndarray:
        """Return points of the lens as the observer has them [mm], the inverse of `to_lens`.

        points: shape (n, 3) [mm], from the front vertex, along the lens's own axes.
        """
        return (points - [0.0, self.drop_mm, self.lens.centre_thickness_mm]) @ self.tilt.axes.T


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ChiefRays:
    """Traced rays, one for each gaze; not-a-number where none gets through.

    gaze_deg: how far the eye is turned [degrees], shape (n,).
    meridian_deg: the direction in which it is turned [degrees].
    powers_d: power on the sphere about the eye's centre through the lens, shape (n, 2, 2) [D]: the tangential
        direction, that of the turn, first, the sagittal one at right angles to it second.
    front_mm, back_mm: where each ray meets the surfaces, shape (n, 3) [mm], from where the line straight
        ahead meets the back of the lens.
    outwards: unit vectors in front of the lens, away from the eye, shape (n, 3).
    gazes: unit vectors behind it, away from the eye, shape (n, 3).
    """

    gaze_deg: np.ndarray
    meridian_deg: float
    powers_d: np.ndarray
    front_mm: np.ndarray
    back_mm: np.ndarray
    outwards: np.ndarray
    gazes: np.ndarray

    @property
    def deviation_prism_d(self) -> np.ndarray:
        """How far the lens bends each ray, 100 times the tangent of the angle [prism D], shape (n,)."""
        across = np.linalg.norm(np.cross(self.outwards, self.gazes), axis=1)
        return 100.0 * across / np.einsum("ij,ij->i", self.outwards, self.gazes)


def chief_rays(worn: WornLens, gaze_deg: ArrayLike, *, meridian_deg: float = 90.0) -> ChiefRays:
    """Return the rays along which an eye looks through a lens when it turns in one direction.

    worn: the lens, its place and tilt.
    gaze_deg: how far the eye turns [degrees], a number or shape (n,); minus for the opposite direction.
    meridian_deg: the direction it turns in, anticlockwise from the observer's right [degrees]: 90 is up.

    Raises LabError for an angle out of range.
    Source: Snell's law; Coddington's equations in the form for any direction, as matrices (derived).
    """
    gaze = np.atleast_1d(np.asarray(gaze_deg, dtype=float))
    for end in (gaze.min(), gaze.max()):
        require_in_limits("gaze", float(end), "gaze_deg")
    meridian = np.radians(require_finite("meridian", meridian_deg, unit="degrees"))
    radial = np.array([np.cos(meridian), np.sin(meridian), 0.0])
    turn = np.radians(gaze)[:, None]
    gazes = np.sin(turn) * radial - np.cos(turn) * _AHEAD
    across = np.array([-radial[1], radial[0], 0.0])
    with np.errstate(invalid="ignore", divide="ignore"):
        return _traced(worn, gaze, meridian_deg, gazes, across)


def _traced(
    worn: WornLens, gaze: np.ndarray, meridian_deg: float, gazes: np.ndarray, across: np.ndarray
) -> ChiefRays:
    lens, axes = worn.lens, worn.tilt.axes
    centre = np.array([[0.0, 0.0, worn.centre_of_rotation_mm]])
    depth = np.array([0.0, 0.0, lens.centre_thickness_mm])
    eye = worn.to_lens(centre)
    sight, level = gazes @ axes, across @ axes
    back = meet(lens.back, eye - depth + 0.0 * sight, sight)
    inside = _refracted(sight, back.normals, lens.index)
    back_points = back.points + depth
    front = meet(lens.front, back_points, inside)
    outside = _refracted(inside, front.normals, 1.0 / lens.index)

    # Light runs the other way: from far in front, through the front, then the back, to the eye.
    wave = _after(np.zeros((len(gaze), 2, 2)), -outside, -inside, front, level, 1.0, lens.index)
    in_glass = np.einsum("ij,ij->i", front.points - back_points, inside)
    # Where the surfaces have crossed there is no glass, and so no lens to look through.
    wave = _moved(wave, np.where(in_glass >= 0.0, in_glass, np.nan))
    wave = _after(wave, -inside, -sight, back, level, lens.index, 1.0)
    to_eye = np.linalg.norm(eye - back_points, axis=1)
    wave = _moved(wave, to_eye - worn.centre_of_rotation_mm)
    return ChiefRays(
        gaze_deg=gaze,
        meridian_deg=meridian_deg,
        powers_d=1000.0 * wave,
        front_mm=worn.from_lens(front.points),
        back_mm=worn.from_lens(back_points),
        outwards=outside @ axes.T,
        gazes=gazes,
    )


def _refracted(directions: np.ndarray, normals: np.ndarray, ratio: float) -> np.ndarray:
    """Directions behind a surface, Snell's law as vectors; the ratio is index behind over index before."""
    cosine = np.einsum("ij,ij->i", directions, normals)
    behind = np.sqrt(ratio**2 - 1.0 + cosine**2)
    return (directions + (np.copysign(behind, cosine) - cosine)[:, None] * normals) / ratio


def _after(
    wave: np.ndarray,
    before: np.ndarray,
    behind: np.ndarray,
    met: Met,
    level: np.ndarray,
    index: float,
    next_index: float,
) -> np.ndarray:
    """The wave behind a surface, from the wave before it: curvatures in 1/mm, converging light positive.

    On the surface both waves and the surface itself are curvatures of one thing: what a step along it does to
    the path. n' K'^T W' K' = n K^T W K + (n' cos i' - n cos i) S, K from steps on the surface to steps across
    the ray.
    """
    on_surface = _across(met.normals, level)
    bend = np.einsum("nki,nkl,nlj->nij", on_surface, met.curvatures, on_surface, optimize=False)
    arriving = np.swapaxes(_across(before, level), 1, 2) @ on_surface
    leaving = np.linalg.inv(np.swapaxes(_across(behind, level), 1, 2) @ on_surface)
    cosines = [np.einsum("ij,ij->i", way, met.normals) for way in (before, behind)]
    strength = next_index * cosines[1] - index * cosines[0]
    total = index * np.swapaxes(arriving, 1, 2) @ wave @ arriving + strength[:, None, None] * bend
    return np.swapaxes(leaving, 1, 2) @ total @ leaving / next_index


def _across(directions: np.ndarray, level: np.ndarray) -> np.ndarray:
    """Two unit vectors square to each direction, in columns: in the plane of the turn, and across it."""
    second = level - (directions @ level)[:, None] * directions
    second = second / np.sqrt(np.einsum("ij,ij->i", second, second))[:, None]
    return np.stack([np.cross(second, directions), second], axis=2)


def _moved(wave: np.ndarray, way: np.ndarray) -> np.ndarray:
    """The wave farther along its ray, by a way in mm."""
    return wave @ np.linalg.inv(_SQUARE - way[:, None, None] * wave)
