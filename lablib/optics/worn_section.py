"""A worn lens and a line of sight seen from the side, as lines ready to draw.

Places are (z, y): z towards the eye from where the line straight ahead meets the back of the lens, y up [mm].
"""

from dataclasses import dataclass

import numpy as np

from lablib.errors import require_finite
from lablib.optics.chief_rays import ChiefRays, WornLens

_POINTS = 97


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WornSection:
    """An upright cut through the optical centre of a worn lens.

    front_mm, back_mm: the two surfaces from below upwards, shape (n, 2) [mm]; only where there is glass.
    centre_mm: the vertex of the back surface, shape (2,) [mm].
    towards_eye: the lens's own axis, a vector of length 1, shape (2,).
    """

    front_mm: np.ndarray
    back_mm: np.ndarray
    centre_mm: np.ndarray
    towards_eye: np.ndarray


def worn_section(worn: WornLens, *, half_height_mm: float) -> WornSection:
    """Return the upright cut through a lens as it is worn, seen from the side.

    worn: the lens, its place and tilt.
    half_height_mm: how far it reaches above and below the line straight ahead, along the lens [mm].

    Raises LabError for a height that is not a number.
    """
    half, lens = require_finite("half height", half_height_mm, unit="mm"), worn.lens
    up = worn.drop_mm + np.linspace(-half, half, _POINTS)
    none = np.zeros_like(up)
    depths = (
        lens.front.sag_or_nan_mm(none, up),
        lens.centre_thickness_mm + lens.back.sag_or_nan_mm(none, up),
    )
    with np.errstate(invalid="ignore"):
        there = depths[1] >= depths[0]
    front, back = (worn.from_lens(np.column_stack([none, up, depth])[there])[:, [2, 1]] for depth in depths)
    vertex = worn.from_lens(np.array([[0.0, 0.0, lens.centre_thickness_mm]]))[0]
    return WornSection(
        front_mm=front,
        back_mm=back,
        centre_mm=vertex[[2, 1]],
        towards_eye=worn.tilt.axes[[2, 1], 2],
    )


def line_of_sight(rays: ChiefRays, *, before_mm: float, centre_of_rotation_mm: float) -> np.ndarray:
    """Return the way of the light along the first of several rays, seen from the side, shape (4, 2) [mm].

    rays: traced; before_mm: how far in front of the lens it begins [mm].
    centre_of_rotation_mm: from the lens to the eye's centre of rotation, where it ends [mm].

    From in front, over both surfaces, to the centre of rotation; not-a-number where no ray gets through.
    Raises LabError for a length that is not a number.
    """
    before = require_finite("before_mm", before_mm, unit="mm")
    front, back = rays.front_mm[0], rays.back_mm[0]
    eye = np.array([0.0, 0.0, centre_of_rotation_mm])
    return np.array([front + before * rays.outwards[0], front, back, eye])[:, [2, 1]]
