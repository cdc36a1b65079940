"""What is seen through a focimeter: a target of lines at right angles, sharp or smeared, and its place.

The drum sets a sphere against the lens, so what is left is R, the power matrix less the drum's power on both
meridians. Light through the place p of the pupil then misses by R p, so a point of the target is smeared
over an ellipse, R p for all p of the pupil. A line is smeared across by the length of R n at most, n being at
right angles to it; what is smeared along the line does not show. It is sharp where R n is nothing: where n is
a principal meridian and the drum reads the power along n. A sharp line therefore stands at right angles to
the meridian whose power is read: at the sphere's power across the axis, at sphere and cylinder along it.

Directions are those of an observer facing the wearer: the back of the lens lies on the stop.
"""

from dataclasses import dataclass

import numpy as np

from lablib.errors import require_between, require_finite
from lablib.optics.eye import Eye
from lablib.optics.optical_cross import at_right_angles_deg
from lablib.optics.power import POWER_LIMIT_D, require_power, without_noise, wrapped_axis_deg
from lablib.optics.practice import usual, usual_or
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at

_MOST_ZERO_D = 2.0
# Below this a point is smeared alike in all directions, or not at all.
_ALIKE_D = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Focimeter:
    """An instrument: its zero and the steps of its drum.

    zero_d: what the drum reads where the target is sharp with no lens [D]; the eyepiece should make it 0.
    fine_step_d, coarse_step_d: steps of the drum near zero and beyond [D]; None for the usual ones.
    fine_reach_d: power up to which the steps are fine [D]; None for the usual one.

    Raises LabError for a number out of range.
    Source: common practice; instruments differ.
    """

    zero_d: float = 0.0
    fine_step_d: float | None = None
    coarse_step_d: float | None = None
    fine_reach_d: float | None = None

    def __post_init__(self) -> None:
        zero = require_between(
            "zero of the drum", self.zero_d, low=-_MOST_ZERO_D, high=_MOST_ZERO_D, unit="D"
        )
        object.__setattr__(self, "zero_d", zero + 0.0)
        for field, name, thing in (
            ("fine_step_d", "drum_fine_step", "fine step of the drum"),
            ("coarse_step_d", "drum_coarse_step", "coarse step of the drum"),
            ("fine_reach_d", "drum_fine_reach", "reach of the fine steps"),
        ):
            object.__setattr__(self, field, usual_or(name, thing, getattr(self, field)))

    def step_d(self, drum_d: float) -> float:
        """Return the step of the drum at a reading [D].

        drum_d: the reading [D].
        """
        return self.fine_step_d if abs(drum_d) <= self.fine_reach_d else self.coarse_step_d

    def reading_d(self, power_d: float) -> float:
        """Return the reading at which a power is sharp, to the nearest step of the drum [D].

        power_d: the power [D].

        Raises LabError for a power out of range.
        """
        exact = require_power("power", power_d, POWER_LIMIT_D) + self.zero_d
        step = self.step_d(exact)
        return without_noise(round(exact / step) * step)

    def power_d(self, drum_d: float) -> float:
        """Return the power that a reading stands for, the reading less the zero [D].

        drum_d: the reading [D].

        Raises LabError for a reading out of range.
        """
        return without_noise(_drum(drum_d) - self.zero_d)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FocimeterView:
    """The target as it is seen; the first of each pair is the cylinder line, the second the sphere line.

    line_deg: shape (2,), direction of the lines, above 0 and up to 180 [degrees].
    smear_d: shape (2,), half the width a line is smeared across, for each metre of the pupil's radius [D].
    skew_d: shape (2,), how much of that smear leans along the line [D]; a line is unbroken where it is 0.
    tilt_deg: shape (2,), from the line to the long axis of a point's smear, from -90 to 90 [degrees]; 0
        where a point is smeared alike in all directions.
    point_deg: direction of the long axis of a point's smear, above 0 and up to 180 [degrees].
    point_long_d, point_short_d: half the axes of a point's smear, for each metre of the pupil's radius [D].
    centre_x_prism_d, centre_y_prism_d: where the middle of the target stands, to the observer's right and up;
        it moves towards the base of the prism at the stop [prism D].
    """

    line_deg: np.ndarray
    smear_d: np.ndarray
    skew_d: np.ndarray
    tilt_deg: np.ndarray
    point_deg: float
    point_long_d: float
    point_short_d: float
    centre_x_prism_d: float
    centre_y_prism_d: float

    @property
    def is_sharp(self) -> np.ndarray:
        """Shape (2,), whether a line is smeared by less than half a fine step of the drum."""
        return self.smear_d < _just_seen_d()

    @property
    def is_unbroken(self) -> np.ndarray:
        """Shape (2,), whether the smear leans along the line by less than half a fine step of the drum."""
        return np.abs(self.skew_d) < _just_seen_d()


def line_smear_d(
    rx: Prescription, *, drum_d: float | np.ndarray, line_deg: float | np.ndarray
) -> float | np.ndarray:
    """Return half the width a target line is smeared across, for each metre of the pupil's radius [D].

    rx: the lens on the stop.
    drum_d: power on the drum, its zero taken off [D], a number or an array.
    line_deg: direction of the line [degrees], a number or an array of the same shape.

    Source: derived above from the power matrix, Long 1976.
    """
    across, along = _line_parts(rx, drum_d, line_deg)
    smear = np.hypot(across, along)
    return smear if np.ndim(smear) else float(smear)


def line_skew_d(rx: Prescription, *, line_deg: float | np.ndarray) -> float | np.ndarray:
    """Return how much a line's smear leans along it [D]; nothing where it lies along a principal meridian.

    rx: the lens on the stop.
    line_deg: direction of the line [degrees], a number or an array.

    The drum's power falls out: a broken line tells that the target is off the axis at any reading.
    Source: derived above from the power matrix, Long 1976.
    """
    _, along = _line_parts(rx, 0.0, line_deg)
    return along if np.ndim(along) else float(along)


def view(
    rx: Prescription,
    *,
    drum_d: float,
    target_deg: float,
    focimeter: Focimeter | None = None,
    eye: Eye | str = Eye.RIGHT,
    in_mm: float = 0.0,
    up_mm: float = 0.0,
    in_prism_d: float = 0.0,
    up_prism_d: float = 0.0,
) -> FocimeterView:
    """Return what is seen through a focimeter.

    rx: the lens on the stop.
    drum_d: what the drum reads [D].
    target_deg: direction the target's cylinder lines are turned to [degrees]; its sphere lines stand across.
    focimeter: the instrument; None for one whose zero is right.
    eye: the eye the lens is for.
    in_mm, up_mm: the point on the stop, inwards and upwards from the optical centre [mm].
    in_prism_d, up_prism_d: prism surfaced into the lens, base in and base up [prism D].

    Raises LabError for a number out of range or no eye.
    Source: derived above; the way the target moves is common practice.
    """
    power = (focimeter or Focimeter()).power_d(drum_d)
    first = wrapped_axis_deg(require_finite("direction of the target", target_deg, unit="degrees"))
    lines = np.array([first, at_right_angles_deg(first)])
    inwards, upwards = prism_at(rx, eye=eye, in_mm=in_mm, up_mm=up_mm)
    inwards += require_finite("prism base in", in_prism_d, unit="prism dioptres")
    upwards += require_finite("prism base up", up_prism_d, unit="prism dioptres")
    long_d, short_d, point_deg = _point(rx, power)
    leans = (point_deg - lines + 90.0) % 180.0 - 90.0
    return FocimeterView(
        line_deg=lines,
        smear_d=line_smear_d(rx, drum_d=power, line_deg=lines),
        skew_d=line_skew_d(rx, line_deg=lines),
        tilt_deg=np.where(long_d - short_d > _ALIKE_D, leans, 0.0),
        point_deg=point_deg,
        point_long_d=long_d,
        point_short_d=short_d,
        centre_x_prism_d=Eye.of(eye).nasal_sign * inwards + 0.0,
        centre_y_prism_d=upwards + 0.0,
    )


def _line_parts(
    rx: Prescription, drum_d: float | np.ndarray, line_deg: float | np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    """R n in two parts: across the line and along it."""
    (xx, xy), (_, yy) = rx.power_matrix()
    turn = np.radians(line_deg)
    along_x, along_y = np.cos(turn), np.sin(turn)
    smear_x = -(xx - drum_d) * along_y + xy * along_x
    smear_y = -xy * along_y + (yy - drum_d) * along_x
    return smear_y * along_x - smear_x * along_y, smear_x * along_x + smear_y * along_y


def _point(rx: Prescription, power_d: float) -> tuple[float, float, float]:
    """Long and short half-axis of a point's smear, and the direction of the long one."""
    axis = rx.axis_deg or 180.0
    along, across = rx.sphere_d - power_d, rx.sphere_d + rx.cylinder_d - power_d
    if abs(along) >= abs(across):
        return abs(along), abs(across), axis
    return abs(across), abs(along), at_right_angles_deg(axis)


def _drum(value: float) -> float:
    return require_between("drum reading", value, low=-POWER_LIMIT_D, high=POWER_LIMIT_D, unit="D")


def _just_seen_d() -> float:
    return usual("drum_fine_step") / 2.0
