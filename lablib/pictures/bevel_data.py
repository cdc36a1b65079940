"""What the picture of an edge in its frame is handed: the edge all round, and a cut across it."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeAcross:
    """A cut across the edge at one place, outwards to the right, and what is cut into it.

    along_mm: shape (K,), from the outline, below 0 inside the lens, rising to 0 [mm].
    front_mm, back_mm: shape (K,), depth of both surfaces behind the front at the outline [mm].
    deep_mm: height of a bevel, and depth of the groove in a rim or in the lens [mm].
    groove_mm: width of a groove for a cord [mm].
    chamfer_mm: what a safety chamfer takes off along either side of a corner [mm].
    hole_in_mm, hole_mm: from the outline to the middle of a hole, and its diameter [mm].
    """

    along_mm: np.ndarray
    front_mm: np.ndarray
    back_mm: np.ndarray
    deep_mm: float
    groove_mm: float
    chamfer_mm: float
    hole_in_mm: float
    hole_mm: float

    @property
    def edge_mm(self) -> float:
        """Thickness of the edge [mm]."""
        return float(self.back_mm[-1])


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class EdgeView:
    """The edge of a lens unrolled, from the nose over the top and back to the nose, and cut across.

    mounting: "bevel", "groove" or "holes".
    rim: "plastic" or "metal", of a bevel.
    place_deg: where it is cut across, from the nose over the top [degrees].
    round_deg: shape (N,), all places, the first again at the end [degrees].
    edge_mm: shape (N,), thickness of the edge there [mm].
    line_mm: shape (N,), from the front to the tip of the bevel or the middle of the groove [mm]; None for
        holes.
    rim_mm: shape (N,), from the front to the groove of the rim as it is, not bent, laid as near to the bevel
        as it goes [mm]; None where there is no rim.
    at_hole_mm: shape (N,), thickness of the lens where a hole would go at each place [mm]; None where there
        are none.
    limit_mm: how near the line may come to a face; for holes, how thick the lens must be there [mm].
    across: the cut across.
    """

    mounting: str
    rim: str
    place_deg: float
    round_deg: np.ndarray
    edge_mm: np.ndarray
    line_mm: np.ndarray | None
    rim_mm: np.ndarray | None
    at_hole_mm: np.ndarray | None
    limit_mm: float
    across: EdgeAcross

    def here(self, values_mm: np.ndarray) -> float:
        """Return a value at the place of the cut [mm].

        values_mm: shape (N,), all round [mm].
        """
        return float(np.interp(self.place_deg, self.round_deg, values_mm))

    @property
    def beside_mm(self) -> np.ndarray | None:
        """Shape (N,), from the line to the nearer face, below 0 beside the edge [mm]; None for holes."""
        return None if self.line_mm is None else np.minimum(self.line_mm, self.edge_mm - self.line_mm)
