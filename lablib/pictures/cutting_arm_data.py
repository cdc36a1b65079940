"""What the picture of the lever arms is handed: the lens under the wheel, and the arms all round."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ArmView:
    """A lens under the wheel at one place, with both forces; points as x + iy from the chuck axis [mm].

    rim, before: the rim after the bite and before it.
    contact: where the wheel leaves the rim; wheel: the wheel's centre; wheel_radius_mm: its radius [mm].
    bears: where the removal is centred, and both forces act.
    tangential, normal: directions of the two forces there, of length 1.
    foot_tangential, foot_normal: feet of the perpendiculars from the chuck axis on the lines of the
        tangential and of the normal force.
    direction_deg: of the outward normal at the contact [degrees].
    distance_mm: from the chuck axis to the contact [mm].
    arm_tangential_mm, arm_normal_mm: lever arms of the two forces [mm].
    around_deg: shape (N,), directions of the normal all round, rising from below 0 to above 360 [degrees].
    around_distance_mm, around_tangential_mm, around_normal_mm: shape (N,), the same three there [mm].
    """

    rim: np.ndarray
    before: np.ndarray
    contact: complex
    wheel: complex
    wheel_radius_mm: float
    bears: complex
    tangential: complex
    normal: complex
    foot_tangential: complex
    foot_normal: complex
    direction_deg: float
    distance_mm: float
    arm_tangential_mm: float
    arm_normal_mm: float
    around_deg: np.ndarray
    around_distance_mm: np.ndarray
    around_tangential_mm: np.ndarray
    around_normal_mm: np.ndarray
