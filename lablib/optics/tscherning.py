"""Oblique errors of a thin lens to the third order, and the front curves that make one of them nothing.

Beside the traced rays these are what can be worked by hand: the errors grow with the square of the distance
from the axis at which the line of sight meets the lens, and their share per square millimetre hangs on the
front curve.
"""

import math
from dataclasses import dataclass

import numpy as np

from lablib.errors import LabError, require_one_of
from lablib.optics.limits import require_in_limits
from lablib.optics.power import POWER_LIMIT_D, require_power
from lablib.optics.practice import usual_or

ASTIGMATISM, MEAN_ERROR, TANGENTIAL_ERROR = "oblique astigmatism", "mean oblique error", "tangential error"
CRITERIA = (ASTIGMATISM, MEAN_ERROR, TANGENTIAL_ERROR)


@dataclass(frozen=True, slots=True, kw_only=True)
class ThinLens:
    """A thin spherical lens before an eye that turns.

    power_d: [D].
    index: refractive index.
    centre_of_rotation_mm: from the lens to the eye's centre of rotation [mm]; None for the usual value.

    Raises LabError for a value out of range.
    """

    power_d: float
    index: float
    centre_of_rotation_mm: float | None = None

    def __post_init__(self) -> None:
        require_power("power", self.power_d, POWER_LIMIT_D)
        require_in_limits("index", self.index, "index")
        distance = usual_or("centre_of_rotation", "centre of rotation", self.centre_of_rotation_mm)
        object.__setattr__(self, "centre_of_rotation_mm", distance)

    @property
    def rotation_d(self) -> float:
        """The distance to the centre of rotation as a vergence, Z [D]."""
        return 1000.0 / self.centre_of_rotation_mm

    @property
    def tscherning(self) -> tuple[float, float, float]:
        """The numbers of Tscherning's quadratic in the front curve: a F1^2 - b F1 + c = 0."""
        n, power, z = self.index, self.power_d, self.rotation_d
        return n + 2.0, (n + 2.0) * power + 2.0 * (n**2 - 1.0) * z, n * (power + (n - 1.0) * z) ** 2

    def errors_d(self, front_curve_d: float, gaze_deg: float | np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Return tangential and sagittal error to the third order [D].

        front_curve_d: front surface power [D].
        gaze_deg: how far the eye is turned [degrees], a number or an array of any shape.
        """
        away_m = self.centre_of_rotation_mm / 1000.0 * np.tan(np.radians(gaze_deg))
        tangential, sagittal = (
            np.polyval(row, front_curve_d) * away_m**2
            for row in (self.coefficients(TANGENTIAL_ERROR), self._sagittal())
        )
        return tangential, sagittal

    def coefficients(self, criterion: str) -> np.ndarray:
        """Return an error per square of the distance from the axis, a quadratic in the front curve, (3,).

        criterion: which of `CRITERIA`.

        Raises LabError for another criterion.
        Source: derived, Coddington's equations to the third order; that of the astigmatism is Tscherning's
            (n + 2) F1^2 - ((n + 2) F + 2 (n^2 - 1) Z) F1 + n (F + (n - 1) Z)^2 = 0 (memory), times
            F / (n (n - 1)^2).
        """
        require_one_of("criterion", criterion, CRITERIA)
        astigmatism, sagittal = self._astigmatism(), self._sagittal()
        share = {ASTIGMATISM: 0.0, MEAN_ERROR: 0.5, TANGENTIAL_ERROR: 1.0}[criterion]
        return astigmatism if criterion == ASTIGMATISM else sagittal + share * astigmatism

    def front_curves_d(self, criterion: str = ASTIGMATISM) -> tuple[float, ...]:
        """Return the front curves that make an error nothing [D], flatter first; none where there is no such.

        criterion: as in `coefficients`.

        Raises LabError for another criterion, and for a lens without power, which has no oblique error.
        """
        if not self.power_d:
            raise LabError("power 0.00 D has no oblique error, whatever its curve: give a power")
        square, linear, constant = self.coefficients(criterion)
        under_root = linear**2 - 4.0 * square * constant
        if under_root < 0.0:
            return ()
        half, root = -linear / (2.0 * square), math.sqrt(under_root) / (2.0 * abs(square))
        return float(half - root), float(half + root)

    def _astigmatism(self) -> np.ndarray:
        square, linear, constant = self.tscherning
        factor = self.power_d / (self.index * (self.index - 1.0) ** 2)
        return factor * np.array([square, -linear, constant])

    def _sagittal(self) -> np.ndarray:
        """Both surfaces' obliquity, the thickness the lens gains off its axis, and the way to the sphere."""
        n, power, z = self.index, self.power_d, self.rotation_d
        less = n - 1.0
        entering = n * np.array([2.0, (n - 2.0) * power - 2.0 * less * z, 0.0])
        leaving = np.array([1.0, -2.0 * (power + less * z), (power + less * z) ** 2])
        thickness = np.array([less, 0.0, 0.0])
        to_sphere = np.array([0.0, -1.0 / less, z + power / less])
        on_lens = power / (2.0 * n * less**2) * (entering + leaving - thickness)
        return on_lens + power**2 / 2.0 * to_sphere
