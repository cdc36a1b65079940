"""What the picture of a worn lens shows: the lens from the side, and its errors over gaze."""

from dataclasses import dataclass

import numpy as np

from lablib.optics.worn_section import WornSection


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WornView:
    """A lens before an eye that turns up and down.

    heading: what the lens is, in words.
    section: the lens from the side.
    sight_mm: the light's way at the chosen gaze, (z, y), shape (4, 2) [mm]; not-a-number where
        none gets through.
    vertex_distance_mm: from where the line straight ahead meets the back of the lens to the cornea [mm].
    into_eye_mm: from the cornea to the eye's centre of rotation [mm].
    gaze_deg: how far the eye is turned, up is plus [degrees].
    tangential_now_d, sagittal_now_d: errors at that gaze [D].
    gazes_deg, tangential_d, sagittal_d: the errors over gaze, all of one shape (n,) [degrees], [D].
    """

    heading: str
    section: WornSection
    sight_mm: np.ndarray
    vertex_distance_mm: float
    into_eye_mm: float
    gaze_deg: float
    tangential_now_d: float
    sagittal_now_d: float
    gazes_deg: np.ndarray
    tangential_d: np.ndarray
    sagittal_d: np.ndarray

    @property
    def rotation_mm(self) -> float:
        """From the lens to the eye's centre of rotation [mm]."""
        return self.vertex_distance_mm + self.into_eye_mm
