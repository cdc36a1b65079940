"""Best form by traced rays: the front curve, or the conic, that leaves an eye without one oblique error.

A spherical lens can be bent: power, index and thickness stay, and front and back curve change together. For
most powers two bendings are without oblique astigmatism at a gaze, for strong ones none is; then a conic
front helps.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.optimize import brentq

from lablib.errors import LabError, require_one_of
from lablib.optics.chief_rays import WornLens
from lablib.optics.conic import conic_front
from lablib.optics.lens import Lens, lens_for
from lablib.optics.limits import require_in_limits
from lablib.optics.oblique import ObliqueErrors, oblique_errors
from lablib.optics.power import POWER_LIMIT_D, require_power
from lablib.optics.practice import usual_or
from lablib.optics.prescription import Prescription
from lablib.optics.tscherning import ASTIGMATISM, CRITERIA, MEAN_ERROR, TANGENTIAL_ERROR

# What is searched for a form, and how finely before a root is closed in on.
_FRONTS_D = np.arange(-10.0, 25.01, 0.5)
_P_VALUES = np.concatenate(
    [np.arange(-60.0, -6.0, 2.0), np.arange(-6.0, 6.0, 0.25), np.arange(6.0, 20.1, 2.0)]
)
_CURVE_ERROR, _NOTHING_D = 1e-9, 1e-5


@dataclass(frozen=True, slots=True, kw_only=True)
class Bending:
    """A spherical power that may be given many forms.

    power_d: back vertex power [D].
    index: refractive index.
    centre_thickness_mm: [mm].
    centre_of_rotation_mm: from the lens to the eye's centre of rotation [mm]; None for the usual value.

    Raises LabError for a value out of range.
    """

    power_d: float
    index: float
    centre_thickness_mm: float
    centre_of_rotation_mm: float | None = None

    def __post_init__(self) -> None:
        require_power("power", self.power_d, POWER_LIMIT_D)
        require_in_limits("index", self.index, "index")
        require_in_limits("centre thickness", self.centre_thickness_mm, "centre_thickness_mm")
        distance = usual_or("centre_of_rotation", "centre of rotation", self.centre_of_rotation_mm)
        object.__setattr__(self, "centre_of_rotation_mm", distance)

    def lens(self, front_curve_d: float, *, p_value: float = 1.0) -> Lens:
        """Return the lens in one form.

        front_curve_d: front surface power at the vertex [D]; p_value: of the front, 1 for a sphere.

        Raises LabError for a value no lens has.
        """
        rx = Prescription(sphere_d=self.power_d)
        lens = lens_for(
            rx,
            index=self.index,
            front_curve_d=front_curve_d,
            centre_thickness_mm=self.centre_thickness_mm,
        )
        return lens if p_value == 1.0 else conic_front(lens, p_value)

    def errors(
        self, front_curve_d: float, gaze_deg: float | np.ndarray, *, p_value: float = 1.0
    ) -> ObliqueErrors:
        """Return the oblique errors of one form, worn square and straight before the eye.

        front_curve_d, p_value: as in `lens`; gaze_deg: as in `oblique_errors`; both say what they raise.
        """
        lens = self.lens(front_curve_d, p_value=p_value)
        worn = WornLens(lens=lens, centre_of_rotation_mm=self.centre_of_rotation_mm)
        return oblique_errors(worn, gaze_deg)

    def front_curves_d(
        self, *, gaze_deg: float, criterion: str = ASTIGMATISM, p_value: float = 1.0
    ) -> tuple[float, ...]:
        """Return the front curves from -10 to +25 D that make an error nothing at a gaze [D], flatter first.

        gaze_deg: the gaze [degrees], not 0.
        criterion: "oblique astigmatism", "mean oblique error" or "tangential error".
        p_value: of the front, 1 for a sphere.

        Raises LabError for another criterion, a gaze of 0 or out of range, and a power of 0.
        """
        self._require_an_error(gaze_deg)
        return _zeros(self._error(criterion, gaze_deg, lambda front: (front, p_value)), _FRONTS_D)

    def p_values(
        self, *, front_curve_d: float, gaze_deg: float, criterion: str = ASTIGMATISM
    ) -> tuple[float, ...]:
        """Return the p values of the front that make an error nothing at a gaze, smallest first.

        front_curve_d: front surface power at the vertex [D].
        gaze_deg, criterion: as in `front_curves_d`, which also says what it raises.
        """
        self._require_an_error(gaze_deg)
        return _zeros(self._error(criterion, gaze_deg, lambda p: (front_curve_d, p)), _P_VALUES)

    def _require_an_error(self, gaze_deg: float) -> None:
        require_in_limits("gaze", gaze_deg, "gaze_deg")
        if not gaze_deg or not self.power_d:
            raise LabError(
                f"power {self.power_d:g} D at a gaze of {gaze_deg:g} degrees: straight ahead or without "
                "power there is no oblique error to make nothing: give a power and a gaze that are not 0"
            )

    def _error(
        self, criterion: str, gaze_deg: float, form: Callable[[float], tuple[float, float]]
    ) -> Callable[[float], float]:
        require_one_of("criterion", criterion, CRITERIA)
        name = {ASTIGMATISM: "astigmatism_d", MEAN_ERROR: "mean_d", TANGENTIAL_ERROR: "tangential_d"}[
            criterion
        ]

        def error(value: float) -> float:
            front, p_value = form(value)
            try:
                return float(getattr(self.errors(front, gaze_deg, p_value=p_value), name)[0])
            except LabError:
                return np.nan  # no lens has this form

        return error


def _zeros(error: Callable[[float], float], grid: np.ndarray) -> tuple[float, ...]:
    """Where an error goes through nothing along a grid, closed in on; no lens, no step."""
    values = np.array([error(float(at)) for at in grid])
    found = [float(at) for at, value in zip(grid, values, strict=True) if value == 0.0]
    for start in np.flatnonzero(values[:-1] * values[1:] < 0.0):
        at = brentq(error, float(grid[start]), float(grid[start + 1]), xtol=_CURVE_ERROR)
        # A sign also changes where an error grows beyond all bounds, and there it does not become nothing.
        if abs(error(at)) < _NOTHING_D:
            found.append(at)
    return tuple(sorted(found))
