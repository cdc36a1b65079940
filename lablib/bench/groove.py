"""What a groove, a hole and a safety chamfer take of the edge, and what they leave."""

import math
from dataclasses import dataclass

import numpy as np

from lablib.bench.edges import edge_default, edge_number
from lablib.bench.geometry import directions
from lablib.errors import require_between, require_finite

_THICKEST_MM = 30.0
_FARTHEST_MM = 60.0
_DECIMALS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Groove:
    """A groove for a cord at one place of an edge.

    edge_mm: thickness there [mm].
    width_mm: of the groove [mm]; None for the usual one.
    middle_mm: from the front to the middle of the groove [mm]; None for the middle of the edge.

    Raises LabError for a number no edge has.
    """

    edge_mm: float
    width_mm: float | None = None
    middle_mm: float | None = None

    def __post_init__(self) -> None:
        require_between("edge", self.edge_mm, low=0.0, high=_THICKEST_MM, unit="mm", open_low=True)
        edge_number("cord_groove_mm", self.width_mm)
        if self.middle_mm is not None:
            require_between("middle of the groove", self.middle_mm, low=0.0, high=self.edge_mm, unit="mm")

    @property
    def front_wall_mm(self) -> float:
        """What is left in front of the groove, below 0 where it breaks through the face [mm]."""
        middle = self.edge_mm / 2.0 if self.middle_mm is None else self.middle_mm
        return round(middle - edge_number("cord_groove_mm", self.width_mm) / 2.0, _DECIMALS)

    @property
    def back_wall_mm(self) -> float:
        """What is left behind the groove, below 0 where it breaks through the face [mm]."""
        width = edge_number("cord_groove_mm", self.width_mm)
        return round(self.edge_mm - width - self.front_wall_mm, _DECIMALS)

    @property
    def least_wall_mm(self) -> float:
        """The thinner of the two walls [mm]."""
        return min(self.front_wall_mm, self.back_wall_mm)

    @property
    def holds(self) -> bool:
        """Whether both walls are as thick as is needed."""
        return self.least_wall_mm >= edge_default("groove_wall_mm")


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """A hole through a lens.

    x_mm, y_mm: its middle, from the middle of the outline [mm].
    thickness_mm: of the lens there [mm].
    diameter_mm: [mm]; None for the usual one.

    Raises LabError for a number no hole has.
    """

    x_mm: float
    y_mm: float
    thickness_mm: float
    diameter_mm: float | None = None

    def __post_init__(self) -> None:
        for name in ("x_mm", "y_mm"):
            require_finite(f"hole: {name}", getattr(self, name), unit="mm")
        require_between(
            "thickness at the hole", self.thickness_mm, low=0.0, high=_THICKEST_MM, unit="mm", open_low=True
        )
        edge_number("hole_diameter_mm", self.diameter_mm)

    def wall_mm(self, outline_mm: np.ndarray) -> float:
        """Return what is left between the hole and the outline, below 0 where it breaks out [mm].

        outline_mm: shape (N,), distances from the middle of the outline at equal angles [mm].

        Where the hole's middle lies outside, the wall is below 0 by more than its radius.
        """
        away = _nearest_mm(outline_mm, self.x_mm, self.y_mm)
        inside = 1.0 if _is_inside(outline_mm, self.x_mm, self.y_mm) else -1.0
        return inside * away - edge_number("hole_diameter_mm", self.diameter_mm) / 2.0

    def faults(self, outline_mm: np.ndarray, *, bears_holes: bool) -> tuple[str, ...]:
        """Return what speaks against drilling here, in words; nothing where it may be drilled.

        outline_mm: as in `wall_mm`; bears_holes: whether the material does.
        """
        wall, needed = self.wall_mm(outline_mm), edge_default("hole_wall_mm")
        thin = edge_default("hole_edge_mm")
        found = [] if bears_holes else ["the material bears no holes: cracks run from them"]
        if round(self.thickness_mm, _DECIMALS) < thin:
            found.append(f"the lens is {self.thickness_mm:.2f} mm thick there and a hole needs {thin:g} mm")
        if round(wall, _DECIMALS) < needed:
            found.append(f"{wall:.2f} mm are left to the outline and {needed:g} mm are needed")
        return tuple(found)


def chamfer_leg_mm(face_mm: float | None = None) -> float:
    """Return how much of the edge's thickness one safety chamfer takes, at 45 degrees [mm].

    face_mm: width of the chamfer along its own face [mm]; None for the usual one.

    Raises LabError for a width out of range.
    Source: leg of a right-angled triangle with equal legs, face / sqrt(2).
    """
    return edge_number("chamfer_mm", face_mm) / math.sqrt(2.0)


def flat_left_mm(edge_mm: float, *, face_mm: float | None = None) -> float:
    """Return what two safety chamfers leave of an edge, below 0 where they meet [mm].

    edge_mm: thickness of the edge [mm]; face_mm: as in `chamfer_leg_mm`.

    Raises LabError for a number no edge has.
    """
    edge = require_between("edge", edge_mm, low=0.0, high=_THICKEST_MM, unit="mm", open_low=True)
    return edge - 2.0 * chamfer_leg_mm(face_mm)


def _nearest_mm(outline_mm: np.ndarray, x_mm: float, y_mm: float) -> float:
    """Distance from a point to the outline, straight between its points."""
    cosine, sine = directions(outline_mm.size)
    start = np.stack([outline_mm * cosine, outline_mm * sine])
    side = np.roll(start, -1, axis=1) - start
    to_point = np.array([[x_mm], [y_mm]]) - start
    share = np.clip((to_point * side).sum(axis=0) / (side**2).sum(axis=0), 0.0, 1.0)
    return float(np.hypot(*(to_point - share * side)).min())


def _is_inside(outline_mm: np.ndarray, x_mm: float, y_mm: float) -> bool:
    """Whether a point is nearer to the middle than the outline in its direction."""
    angle = np.arange(outline_mm.size + 1) * (2.0 * np.pi / outline_mm.size)
    there = np.interp(np.arctan2(y_mm, x_mm) % (2.0 * np.pi), angle, np.append(outline_mm, outline_mm[0]))
    return bool(np.hypot(x_mm, y_mm) < there)
