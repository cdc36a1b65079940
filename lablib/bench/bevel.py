"""Where a bevel lies along the edge, and whether its curve is the rim's.

A bevel sits in the rim with its tip. So the tip should run on the rim's curve, while the edge it is cut
into runs with the lens: where the two curves differ, the tip wanders along the edge from place to place.
Depths are counted from a plane on the front where the axis of the outline goes through it, square on the
front there; a sphere's front then falls off alike on all sides, wherever the optical centre is.

Left out: that a lens may sit slightly turned in its rim, which takes a slope off the departure.
"""

from dataclasses import dataclass

import numpy as np
from scipy.optimize import minimize_scalar

from lablib.bench.edges import edge_default, edge_number
from lablib.bench.faces import engraved_curvature_per_mm, engraved_curve_d, sphere_sag_mm
from lablib.errors import LabError, require_between

# Curves that occur on an edge, a hollow one among them [D].
_CURVES_D = (-25.0, 25.0)
_FARTHEST_MM = 60.0


def curve_depth_mm(curve_d: float, away_mm: np.ndarray | float) -> np.ndarray:
    """Return how far a curve has fallen off, by its exact sagitta [mm].

    curve_d: for index 1.530 [D]; away_mm: from its vertex [mm], of any shape.

    Raises LabError for a curve whose sphere ends before it gets there.
    """
    require_between("curve", curve_d, low=_CURVES_D[0], high=_CURVES_D[1], unit="D")
    curvature = engraved_curvature_per_mm(curve_d)
    farthest = float(np.max(away_mm))
    if abs(curvature) * farthest > 1.0:
        raise LabError(
            f"curve {curve_d:g} D has a radius of {1.0 / abs(curvature):.1f} mm and does not reach "
            f"{farthest:.1f} mm out: give a flatter curve or a smaller outline"
        )
    return sphere_sag_mm(curvature, away_mm)


def bevel_wander_mm(
    *, lens_curve_d: float, rim_curve_d: float, away_mm: float, from_mm: float = 0.0
) -> float:
    """Return how far a bevel on the rim's curve moves back along the edge between two places [mm].

    lens_curve_d, rim_curve_d: front of the lens and rim, both for index 1.530 [D].
    away_mm, from_mm: the two places, from the middle of the outline [mm]; from 0 it is counted from where
        the two curves touch.

    Above 0 the bevel moves back on the way out, below 0 forward.

    Raises LabError for a curve that does not reach so far out, or a place that is none.
    Source: exact sagittae of both spheres.
    """
    for name, place in (("place", away_mm), ("place it is counted from", from_mm)):
        require_between(name, place, low=0.0, high=_FARTHEST_MM, unit="mm")
    places = np.array([away_mm, from_mm])
    apart = curve_depth_mm(rim_curve_d, places) - curve_depth_mm(lens_curve_d, places)
    return float(apart[0] - apart[1])


def fitted_curve_d(radius_mm: np.ndarray, depth_mm: np.ndarray) -> float:
    """Return the curve of the sphere that a line round the outline lies nearest to, for index 1.530 [D].

    radius_mm: shape (N,), the outline [mm]; depth_mm: shape (N,), depth of the line [mm].

    Raises LabError for a round outline: a circle lies on spheres of every curve.
    """
    if float(np.ptp(radius_mm)) < 1e-6:
        raise LabError("a line round a circle lies on spheres of every curve: it has no curve to compare")

    def spread(curve_d: float) -> float:
        return float(np.var(depth_mm - curve_depth_mm(curve_d, radius_mm)))

    steepest = min(_CURVES_D[1], engraved_curve_d(1.0 / float(np.max(radius_mm))) * (1.0 - 1e-9))
    found = minimize_scalar(spread, bounds=(-steepest, steepest), method="bounded", options={"xatol": 1e-7})
    return float(found.x)


@dataclass(frozen=True, kw_only=True, eq=False)
class Edge:
    """The edge of a finished lens, before anything is cut into it.

    radius_mm: shape (N,), the outline from its middle, at equal angles [mm].
    thickness_mm: shape (N,), of the edge there [mm].
    front_curve_d: of the lens, for index 1.530 [D].

    Raises LabError for rows of different length, or an edge that is not above 0.
    """

    radius_mm: np.ndarray
    thickness_mm: np.ndarray
    front_curve_d: float

    def __post_init__(self) -> None:
        if self.radius_mm.shape != self.thickness_mm.shape or self.radius_mm.ndim != 1:
            raise LabError(
                f"edge: {self.radius_mm.shape} distances and {self.thickness_mm.shape} thicknesses: give one "
                f"row of each, of one length"
            )
        if not float(self.thickness_mm.min()) > 0.0:
            raise LabError(f"edge of {float(self.thickness_mm.min()):g} mm: every thickness is above 0")

    @property
    def front_mm(self) -> np.ndarray:
        """Shape (N,), depth of the front all round [mm]."""
        return curve_depth_mm(self.front_curve_d, self.radius_mm)

    def rim_apart_mm(self, rim_curve_d: float) -> np.ndarray:
        """Return how much deeper a rim lies than the front all round, shape (N,) [mm].

        rim_curve_d: for index 1.530 [D]; rim and front touch in the middle.

        Raises LabError for a rim curve that does not reach the outline.
        """
        return curve_depth_mm(rim_curve_d, self.radius_mm) - self.front_mm


@dataclass(frozen=True, kw_only=True, eq=False)
class BevelLine:
    """The tip of a bevel round a lens.

    name: how it was placed, of `bevel_choice.BEVELS`, or "share".
    edge: what it is cut into.
    from_front_mm: shape (N,), from the front to the tip [mm].
    """

    name: str
    edge: Edge
    from_front_mm: np.ndarray

    @property
    def least_side_mm(self) -> float:
        """The least distance from the tip to a face, below 0 where the tip would lie beside the edge [mm]."""
        behind = self.edge.thickness_mm - self.from_front_mm
        return float(np.minimum(self.from_front_mm, behind).min())

    @property
    def wander_mm(self) -> float:
        """How far the tip moves along the edge, all round [mm]."""
        return float(np.ptp(self.from_front_mm))

    @property
    def has_room(self) -> bool:
        """Whether a bevel has its side in front and behind, all round."""
        return round(self.least_side_mm, 6) >= edge_default("bevel_side_mm")

    @property
    def curve_d(self) -> float:
        """Curve of the sphere the tip lies nearest to, for index 1.530 [D]; LabError on a round outline."""
        return fitted_curve_d(self.edge.radius_mm, self.edge.front_mm + self.from_front_mm)

    def departs_mm(self, rim_curve_d: float) -> float:
        """Return how far the rim must bend to follow the tip, all round [mm].

        rim_curve_d: for index 1.530 [D].
        """
        return float(np.ptp(self.from_front_mm - self.edge.rim_apart_mm(rim_curve_d)))


def following_front(edge: Edge, *, behind_mm: float | None = None) -> BevelLine:
    """Return a bevel that keeps its distance from the front.

    edge: of the lens; behind_mm: the distance [mm], None for the least.

    Raises LabError for a distance out of range.
    """
    behind = edge_number("bevel_side_mm", behind_mm)
    return BevelLine(name="front", edge=edge, from_front_mm=np.full_like(edge.thickness_mm, behind))


def at_share(edge: Edge, *, share: float, name: str = "share") -> BevelLine:
    """Return a bevel that divides the edge in one ratio all round.

    edge: of the lens; share: of the edge that lies in front of the tip, 0 to 1.

    Raises LabError for a share out of range.
    """
    part = require_between("share of the edge in front of the bevel", share, low=0.0, high=1.0)
    return BevelLine(name=name, edge=edge, from_front_mm=part * edge.thickness_mm)


def following_rim(edge: Edge, *, rim_curve_d: float) -> BevelLine:
    """Return a bevel on the rim's curve, as far forward as the front allows.

    edge: of the lens; rim_curve_d: for index 1.530 [D].

    Whether the edge is thick enough behind it, `BevelLine.has_room` says.

    Raises LabError for a rim curve that does not reach the outline.
    """
    apart = edge.rim_apart_mm(rim_curve_d)
    return BevelLine(
        name="rim", edge=edge, from_front_mm=edge_default("bevel_side_mm") + apart - float(apart.min())
    )


def short_for_rim_mm(edge: Edge, *, rim_curve_d: float) -> float:
    """Return by how much the edge is too thin for a bevel on the rim's curve, 0 where it is not [mm].

    edge: of the lens; rim_curve_d: for index 1.530 [D].

    A lens thicker by so much all round holds it: moving such a bevel back gains nothing, as it is as far
    forward as it can be.
    """
    line = following_rim(edge, rim_curve_d=rim_curve_d)
    behind = float((edge.thickness_mm - line.from_front_mm).min())
    return max(0.0, edge_default("bevel_side_mm") - behind)
