"""What a turned eye gets from its lens, against what it was prescribed: oblique errors by traced rays.

The eye's far point lies on a sphere about its centre of rotation, so powers count from the sphere about the
same centre through the lens, and every direction of gaze asks for the same power. When the eye turns, the
axis of its cylinder turns with it as Listing's law says.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from lablib.optics.chief_rays import ChiefRays, WornLens, chief_rays
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ObliqueErrors:
    """Power got less power wanted, one for each gaze; not-a-number where no ray gets through.

    rays: the traced rays.
    tangential_d, sagittal_d: along the turn of the eye and across it [D], shape (n,).
    cross_d: what mixes the two [D], shape (n,); 0 where lens and turn share a plane of symmetry.
    """

    rays: ChiefRays
    tangential_d: np.ndarray
    sagittal_d: np.ndarray
    cross_d: np.ndarray

    @property
    def gaze_deg(self) -> np.ndarray:
        """How far the eye is turned [degrees], shape (n,)."""
        return self.rays.gaze_deg

    @property
    def mean_d(self) -> np.ndarray:
        """Mean oblique error: the mean of the tangential and the sagittal one [D], shape (n,)."""
        return (self.tangential_d + self.sagittal_d) / 2.0

    @property
    def astigmatism_d(self) -> np.ndarray:
        """Oblique astigmatism: tangential less sagittal error [D], shape (n,)."""
        return self.tangential_d - self.sagittal_d

    @property
    def cylinder_d(self) -> np.ndarray:
        """The cylinder of the error whatever its axis, never minus [D], shape (n,)."""
        return np.hypot(self.astigmatism_d, 2.0 * self.cross_d)


def oblique_errors(
    worn: WornLens, gaze_deg: ArrayLike, *, meridian_deg: float = 90.0, wanted: Prescription | None = None
) -> ObliqueErrors:
    """Return the errors an eye meets when it turns in one direction behind a lens.

    worn: the lens, its place and tilt.
    gaze_deg, meridian_deg: as in `chief_rays`, which also says what it raises.
    wanted: what the eye was prescribed; None for the back vertex power of the lens.

    Source: far-point sphere and vertex sphere, M. Jalie, The Principles of Ophthalmic Lenses (memory).
    """
    rays = chief_rays(worn, gaze_deg, meridian_deg=meridian_deg)
    rx = worn.lens.back_vertex_power() if wanted is None else wanted
    turn = np.radians(meridian_deg)
    frame = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]])
    error = rays.powers_d - frame.T @ rx.power_matrix() @ frame
    return ObliqueErrors(
        rays=rays,
        tangential_d=error[:, 0, 0],
        sagittal_d=error[:, 1, 1],
        cross_d=(error[:, 0, 1] + error[:, 1, 0]) / 2.0,
    )


def power_straight_ahead(worn: WornLens) -> Prescription:
    """Return the power that an eye looking straight ahead gets, by traced rays, in minus-cylinder form.

    worn: the lens, its place and tilt.

    Raises LabError where no ray gets through.
    """
    ((along, crossed), (_, across)) = chief_rays(worn, 0.0, meridian_deg=0.0).powers_d[0]
    return Prescription.from_power_matrix(np.array([[along, crossed], [crossed, across]]))
