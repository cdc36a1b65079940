"""Pressure under a soft face that does not fit: a foundation of springs, p = k max(0, indentation less gap).

Each place of the face is a spring by itself. That is near the truth for a thin layer on something hard, and
it shows what matters here: where the contact bears, and where it has lifted off.
"""

from dataclasses import dataclass

import numpy as np

from lablib.bench.contact import Ellipse
from lablib.errors import LabError

_RINGS, _SPOKES = 100, 60
_MOST_STEPS = 60
# Force and moments agree to this share of the force; a moment counts at the rim.
_CLOSE = 1e-9
_LEAST_STEP = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Face:
    """The places of a face at which the gap is looked at, about the chuck axis.

    x_mm, y_mm: shape (M,), where they lie [mm].
    area_mm2: of each [mm2].
    shape: of the face.
    """

    x_mm: np.ndarray
    y_mm: np.ndarray
    area_mm2: float
    shape: Ellipse

    @property
    def away_mm(self) -> np.ndarray:
        """Shape (M,), distance from the axis [mm]."""
        return np.hypot(self.x_mm, self.y_mm)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pressed:
    """A face pressed on.

    face: its places.
    pressure_mpa: shape (M,), 0 where it has lifted off [MPa].
    """

    face: Face
    pressure_mpa: np.ndarray

    @property
    def contact_share(self) -> float:
        """Share of the area that touches."""
        return float(np.mean(self.pressure_mpa > 0.0))

    @property
    def turning_share(self) -> float:
        """Share of W, the integral of the distance from the axis, that touches."""
        away = self.face.away_mm
        return float(away[self.pressure_mpa > 0.0].sum() / away.sum())

    @property
    def friction_radius_share(self) -> float:
        """Mean distance from the axis, weighed by pressure, over an even contact's."""
        away = self.face.away_mm
        return float((self.pressure_mpa * away).sum() / self.pressure_mpa.sum() / away.mean())

    @property
    def farther_out(self) -> float:
        """Mean logarithm of the distance from the axis, weighed by pressure, less an even contact's.

        It says how much more, or less, a plate between block and tip is bent.
        """
        log = np.log(self.face.away_mm)
        return float((self.pressure_mpa * log).sum() / self.pressure_mpa.sum() - log.mean())

    @property
    def peak_mpa(self) -> float:
        """Greatest pressure [MPa]."""
        return float(self.pressure_mpa.max())

    @property
    def mean_mpa(self) -> float:
        """Pressure of an even contact under the same force [MPa]."""
        return float(self.pressure_mpa.mean())


def face_of(shape: Ellipse) -> Face:
    """Return the places of a face: rings of equal areas, so that shares of area come out evenly.

    shape: of the face.
    """
    ring = np.sqrt((np.arange(_RINGS) + 0.5) / _RINGS)[:, None]
    spoke = (np.arange(_SPOKES) + 0.5) * (2.0 * np.pi / _SPOKES)
    return Face(
        x_mm=(shape.half_width_mm * ring * np.cos(spoke)).ravel(),
        y_mm=(shape.half_height_mm * ring * np.sin(spoke)).ravel(),
        area_mm2=shape.area_mm2 / (_RINGS * _SPOKES),
        shape=shape,
    )


def pressed(
    face: Face, gap_mm: np.ndarray, *, stiffness_n_per_mm3: float, force_n: float, swivels: bool = False
) -> Pressed:
    """Return the pressure under a force along the axis.

    face: its places; gap_mm: shape (M,), how far the two surfaces lie apart before they are pressed [mm],
        counted from any level.
    stiffness_n_per_mm3: k, pressure for an indentation [N/mm3].
    force_n: [N].
    swivels: whether the face sets itself so that the pressure has no moment about the axis.

    Raises LabError for a gap that is not known all over the face.
    Source: foundation model (Winkler), K. L. Johnson, Contact Mechanics, 4.3 (from memory).
    """
    if not np.all(np.isfinite(gap_mm)):
        raise LabError(
            "a surface curls up before the rim of the face: give a flatter curve or a smaller face"
        )
    size = max(face.shape.half_width_mm, face.shape.half_height_mm)
    ways = [np.ones_like(face.x_mm), *((face.x_mm / size, face.y_mm / size) if swivels else ())]
    moves, load = np.stack(ways), np.zeros(len(ways))
    load[0] = force_n
    spring = stiffness_n_per_mm3 * face.area_mm2
    depth = _settle(moves, gap_mm - gap_mm.min(), load / spring)
    return Pressed(face=face, pressure_mpa=stiffness_n_per_mm3 * depth)


def _settle(moves: np.ndarray, gap: np.ndarray, load: np.ndarray) -> np.ndarray:
    """Indentation at which springs of unit stiffness bear the load: Newton's method on their energy."""
    place = np.linalg.solve(moves @ moves.T, load + moves @ gap)
    for _ in range(_MOST_STEPS):
        depth = np.maximum(place @ moves - gap, 0.0)
        left = load - moves @ depth
        if np.abs(left).max() <= _CLOSE * load[0]:
            return depth
        touching = moves[:, depth > 0.0]
        step = np.linalg.lstsq(touching @ touching.T, left, rcond=None)[0]
        place = place + _shortened(place, step, moves, gap, load) * step
    raise LabError(f"a face under this load does not settle in {_MOST_STEPS} steps: give a smaller tilt")


def _shortened(
    place: np.ndarray, step: np.ndarray, moves: np.ndarray, gap: np.ndarray, load: np.ndarray
) -> float:
    """How much of a step lowers the energy."""
    share, before = 1.0, _energy(place, moves, gap, load)
    while share > _LEAST_STEP and _energy(place + share * step, moves, gap, load) > before:
        share /= 2.0
    return share


def _energy(place: np.ndarray, moves: np.ndarray, gap: np.ndarray, load: np.ndarray) -> float:
    depth = np.maximum(place @ moves - gap, 0.0)
    return 0.5 * float(depth @ depth) - float(place @ load)
