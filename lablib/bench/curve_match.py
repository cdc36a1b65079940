"""Block curve against lens front: the gap between them, and how much of the pad bears on the lens."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from lablib.bench.bearing import Bearing
from lablib.bench.contact import Ellipse
from lablib.bench.faces import LensFaces, engraved_curvature_per_mm, sphere_sag_mm
from lablib.bench.foundation import Pressed, face_of, pressed
from lablib.bench.parameter import default, require_clamp_force, require_parameter
from lablib.errors import LabError, require_between

_LARGEST_MM = 30.0
# Below this no gap is told.
_NO_GAP_MM = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BlockMatch:
    """How a block bears on a lens front through its pad.

    block_curve_d: curve of the block's face, for index 1.530 [D].
    pressed_on: the pad as it was pressed on at the blocker: there the adhesive takes hold.
    clamped: the pad under the clamp: how far out its pressure lies is how far out friction acts.
    bearing: what is left of an even contact.
    """

    block_curve_d: float
    pressed_on: Pressed
    clamped: Pressed
    bearing: Bearing


def curve_radius_mm(curve_d: float) -> float:
    """Return the radius of a block or lens front by its curve; infinite for a flat one [mm].

    curve_d: curve [D], engraved for index 1.530.
    """
    curvature = engraved_curvature_per_mm(curve_d)
    return 1.0 / curvature if curvature else float("inf")


def rim_gap_mm(*, block_curve_d: float, front_curve_d: float, away_mm: float) -> float:
    """Return by how much block and front part between the axis and the rim, exactly [mm].

    block_curve_d, front_curve_d: curves [D], engraved for index 1.530.
    away_mm: distance of the rim from the axis [mm].

    Positive: the block is the steeper, bears on its rim and leaves the gap in the middle. Negative: it is
    the flatter, bears in the middle and leaves the gap at its rim.

    Raises LabError for a rim that is not above 0 or beyond 30 mm, or one that a curve does not reach.
    Source: difference of the sagittae of two spheres.
    """
    require_between("rim of the block", away_mm, low=0.0, high=_LARGEST_MM, unit="mm", open_low=True)
    for thing, curve in (("block curve", block_curve_d), ("front curve", front_curve_d)):
        if not abs(curve_radius_mm(curve)) > away_mm:
            raise LabError(f"{thing} {curve:g} D does not reach {away_mm:g} mm: give a flatter curve")
    block, front = (
        sphere_sag_mm(engraved_curvature_per_mm(curve), away_mm) for curve in (block_curve_d, front_curve_d)
    )
    return float(block - front)


def pad_stiffness_n_per_mm3() -> float:
    """Return the pressure that a pad's indentation takes, modulus over thickness [N/mm3]."""
    return default("pad_modulus_mpa") / default("pad_thickness_mm")


def contact_area_share(*, rim_gap_mm: float, mean_squeeze_mm: float) -> float:
    """Return the share of a round pad that touches, sqrt(2 m / g), at most 1, for spheres nearly alike.

    rim_gap_mm: g, of either sign [mm].
    mean_squeeze_mm: m, how far an even contact would be squeezed by the same force, pressure over stiffness
        [mm].

    Raises LabError for a pad that is not squeezed at all.
    Source: foundation of springs under a gap that grows with the square of the distance (derived).
    """
    squeeze = require_between(
        "mean squeeze of the pad", mean_squeeze_mm, low=0.0, high=_LARGEST_MM, unit="mm", open_low=True
    )
    gap = abs(rim_gap_mm)
    return 1.0 if gap <= 2.0 * squeeze else float(np.sqrt(2.0 * squeeze / gap))


def contact_turning_share(*, rim_gap_mm: float, mean_squeeze_mm: float) -> float:
    """Return the share of W that touches: 1 - (1 - u)^1.5 on the rim, u^1.5 in the middle.

    rim_gap_mm, mean_squeeze_mm: as in `contact_area_share`, whose value is u.

    A ring at the rim holds more torque than its area says, a spot in the middle less.
    Source: W of a ring and of a disc (derived).
    """
    area = contact_area_share(rim_gap_mm=rim_gap_mm, mean_squeeze_mm=mean_squeeze_mm)
    return float(1.0 - (1.0 - area) ** 1.5) if rim_gap_mm > 0.0 else float(area**1.5)


def mean_squeeze_mm(force_n: float, area_mm2: float) -> float:
    """Return how far a pad of this area is squeezed by a force if it bears evenly [mm].

    force_n: [N]; area_mm2: [mm2].
    """
    return force_n / (area_mm2 * pad_stiffness_n_per_mm3())


@lru_cache(maxsize=256)
def block_match(
    shape: Ellipse, faces: LensFaces, *, block_curve_d: float, clamp_n: float, press_n: float | None = None
) -> BlockMatch:
    """Return how a block bears on a lens front through its pad.

    shape: of the block; faces: of the lens, at the chuck axis.
    block_curve_d: curve of the block, for index 1.530 [D].
    clamp_n: clamp force [N]; press_n: force the block was pressed on with [N]; None: the usual one.

    Raises LabError for a curve or force out of range, or where the front curls up under the block.
    Source: foundation of springs, `lablib.bench.foundation`.
    """
    require_parameter("block_curve_d", block_curve_d)
    require_clamp_force(clamp_n)
    press = default("pad_press_n") if press_n is None else require_parameter("pad_press_n", press_n)
    face = face_of(shape)
    block = sphere_sag_mm(engraved_curvature_per_mm(block_curve_d), face.away_mm)
    gap = faces.front_mm(face.x_mm, face.y_mm) - block
    stiffness = pad_stiffness_n_per_mm3()
    on, clamped = (
        pressed(face, gap, stiffness_n_per_mm3=stiffness, force_n=force) for force in (press, clamp_n)
    )
    bearing = Bearing(
        area=on.contact_share, turning=on.turning_share, friction_radius=clamped.friction_radius_share
    )
    return BlockMatch(block_curve_d=block_curve_d, pressed_on=on, clamped=clamped, bearing=bearing)


def opens(rim_gap: float) -> str:
    """Return where a gap between block and front lies: "in the middle", "at the rim" or "nowhere".

    rim_gap: from `rim_gap_mm` [mm].
    """
    if abs(rim_gap) <= _NO_GAP_MM:
        return "nowhere"
    return "in the middle" if rim_gap > 0.0 else "at the rim"
