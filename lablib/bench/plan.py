"""The plan of a cut: the lens before it, and its rim after every turn, about the chuck axis."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from lablib.bench.faces import LensFaces
from lablib.bench.geometry import circle_from, directions
from lablib.errors import LabError

# Less than this is no bite.
LEAST_BITE_MM = 1e-6

# 27 halvings of under 100 mm leave less than the least bite.
_HALVINGS = 27


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class UncutLens:
    """A lens on its block, before the wheel, in coordinates about the chuck axis.

    outline_mm: shape (N,), the finished outline at 0, 360/N, ... degrees anticlockwise from +x [mm].
    blank_diameter_mm: [mm]; blank_x_mm, blank_y_mm: its centre [mm].
    thickness_mm: function of x_mm and y_mm, arrays of one shape [mm]; not a number, or 0 and less, where
        there is no lens.
    centre_thickness_mm: the thinnest place under the back tip [mm].
    faces: front and back at the chuck axis; None where nobody asks how block and tip fit them.
    rim_mm: shape (N,), where the uncut lens ends: at the blank's rim or at its own knife edge [mm].

    Raises LabError for an outline of fewer than 8 distances or one that is not above 0, and where the chuck
    axis is not on the blank.
    """

    outline_mm: np.ndarray
    blank_diameter_mm: float
    blank_x_mm: float
    blank_y_mm: float
    thickness_mm: Callable[[np.ndarray, np.ndarray], np.ndarray]
    centre_thickness_mm: float
    faces: LensFaces | None = None
    rim_mm: np.ndarray = field(init=False)

    def __post_init__(self) -> None:
        outline = np.array(self.outline_mm, dtype=float)
        if outline.ndim != 1 or outline.size < 8 or not np.all((outline > 0.0) & (outline < np.inf)):
            raise LabError(
                f"outline of shape {outline.shape} cannot be cut: give 8 or more distances above 0 in one row"
            )
        outline.setflags(write=False)
        object.__setattr__(self, "outline_mm", outline)
        blank = circle_from(
            self.blank_diameter_mm, x_mm=self.blank_x_mm, y_mm=self.blank_y_mm, points=outline.size
        )
        object.__setattr__(self, "rim_mm", self._knife_edge(blank))

    def at_mm(self, radius_mm: np.ndarray) -> np.ndarray:
        """Return the thickness at distances from the chuck axis, never below 0 [mm].

        radius_mm: shape (..., N), one distance for every angle of the outline [mm].
        """
        cosine, sine = directions(self.outline_mm.size)
        thickness = self.thickness_mm(radius_mm * cosine, radius_mm * sine)
        return np.maximum(np.nan_to_num(thickness, nan=0.0), 0.0)

    def _knife_edge(self, rim: np.ndarray) -> np.ndarray:
        """Draw the rim in to where the surfaces meet, by bisection from the outline outwards."""
        if np.all(self.at_mm(rim) > 0.0):
            return rim
        inner, outer = np.minimum(self.outline_mm, rim), rim
        for _ in range(_HALVINGS):
            middle = (inner + outer) / 2.0
            there = self.at_mm(middle) > 0.0
            inner, outer = np.where(there, middle, inner), np.where(there, outer, middle)
        return np.where(self.at_mm(rim) > 0.0, rim, inner)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Plan:
    """The turns of one cut.

    radius_mm: shape (turns + 1, N), the rim before the first turn and after each [mm].
    finishing: shape (turns,), whether a turn runs on the finishing wheel.
    """

    radius_mm: np.ndarray
    finishing: np.ndarray

    @property
    def depth_mm(self) -> np.ndarray:
        """Shape (turns, N), depth of every bite [mm]."""
        return self.radius_mm[:-1] - self.radius_mm[1:]


def job_plan(
    lens: UncutLens,
    *,
    depth_mm: float,
    stock_mm: float,
    finishing_mm: float,
    crib_mm: float | None,
    rim_mm: np.ndarray | None = None,
) -> Plan:
    """Return the turns that bring a lens to its outline: roughing, then finishing.

    lens: the lens.
    depth_mm, finishing_mm: depth of a roughing and of a finishing bite [mm].
    stock_mm: what roughing leaves for finishing [mm].
    crib_mm: what cribbing has left round the outline before [mm]; None: the uncut rim.
    rim_mm: shape (N,), a rim of any shape to start from in place of both [mm].

    Raises LabError where nothing lies outside the outline.
    """
    start = start_mm(lens, crib_mm, rim_mm)
    rough = _turns(start, lens.outline_mm + stock_mm, depth_mm)
    return joined(lens, rough, _turns(rough[-1], lens.outline_mm, finishing_mm))


def joined(lens: UncutLens, rough: np.ndarray, fine: np.ndarray) -> Plan:
    """Return roughing and finishing as one plan.

    lens: the lens.
    rough, fine: rims of both, shape (turns + 1, N); the second begins where the first ends [mm].

    Raises LabError where there is no turn at all.
    """
    radius = np.concatenate([rough, fine[1:]])
    if len(radius) == 1:
        raise LabError(
            f"blank of {lens.blank_diameter_mm:g} mm leaves nothing outside the outline to cut: "
            f"give a larger blank or a smaller outline"
        )
    return Plan(radius_mm=radius, finishing=np.arange(len(radius) - 1) >= len(rough) - 1)


def crib_plan(
    lens: UncutLens, *, depth_mm: float, crib_mm: float, rim_mm: np.ndarray | None = None
) -> Plan | None:
    """Return the turns of cribbing, from the uncut rim to the allowance round the outline; None if none.

    lens, depth_mm, crib_mm: as in `job_plan`; rim_mm: shape (N,), a rim of any shape to end at [mm].
    """
    target = lens.outline_mm + crib_mm if rim_mm is None else rim_mm
    return all_roughing(_turns(start_mm(lens, None), target, depth_mm))


def all_roughing(radius_mm: np.ndarray) -> Plan | None:
    """Return rims as a plan without finishing; None where there is no turn.

    radius_mm: shape (turns + 1, N) [mm].
    """
    turns = len(radius_mm) - 1
    return Plan(radius_mm=radius_mm, finishing=np.zeros(turns, dtype=bool)) if turns else None


def start_mm(lens: UncutLens, crib_mm: float | None, rim_mm: np.ndarray | None = None) -> np.ndarray:
    """Return the rim a cut starts from, shape (N,) [mm].

    lens, crib_mm, rim_mm: as in `job_plan`. Where the blank does not reach the outline nothing is cut.
    """
    given = lens.outline_mm + crib_mm if rim_mm is None and crib_mm is not None else rim_mm
    rim = lens.rim_mm if given is None else np.minimum(lens.rim_mm, given)
    return np.maximum(lens.outline_mm, rim)


def turns_for(away_mm: float, depth_mm: float) -> int:
    """Return how many turns take off so much.

    away_mm: the most there is to take off at any angle [mm]; depth_mm: of a bite [mm].
    """
    return max(0, math.ceil((away_mm - LEAST_BITE_MM) / depth_mm))


def _turns(start: np.ndarray, target: np.ndarray, depth: float) -> np.ndarray:
    """Rims from the start to the target, shape (turns + 1, N), never growing and no bite above the depth."""
    end = np.minimum(start, target)
    turns = turns_for(float((start - end).max()), depth)
    return np.maximum(end, start - depth * np.arange(turns + 1)[:, None])
