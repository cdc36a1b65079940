"""Reading a lens with a focimeter: two sharp lines and their drum readings make the prescription.

With the most plus reading first the cylinder comes out minus. The first reading is the sphere, the second
less the first the cylinder, and the axis is the direction of the lines that are sharp second.
"""

from dataclasses import dataclass

from lablib.errors import LabError, require_between
from lablib.optics.focimeter import Focimeter
from lablib.optics.optical_cross import OpticalCross
from lablib.optics.power import POWER_LIMIT_D, without_noise
from lablib.optics.prescription import Prescription


@dataclass(frozen=True, slots=True, kw_only=True)
class SharpLine:
    """A drum reading and the direction of the lines that are sharp there.

    drum_d: what the drum reads [D], from -40 to +40.
    line_deg: direction of the sharp lines [degrees], above 0 and up to 180.

    Raises LabError for a number out of range.
    """

    drum_d: float
    line_deg: float

    def __post_init__(self) -> None:
        drum = require_between("drum reading", self.drum_d, low=-POWER_LIMIT_D, high=POWER_LIMIT_D, unit="D")
        line = require_between(
            "direction of the sharp lines",
            self.line_deg,
            low=0.0,
            high=180.0,
            unit="degrees; 0 is written 180",
            open_low=True,
        )
        object.__setattr__(self, "drum_d", drum + 0.0)
        object.__setattr__(self, "line_deg", line)


def sharp_lines(
    rx: Prescription, *, form: str = "minus", focimeter: Focimeter | None = None
) -> tuple[SharpLine, SharpLine]:
    """Return the two readings at which lines are sharp, in the order that gives the form.

    rx: the lens; of a sphere both lines are sharp at one reading.
    form: "minus" for the most plus reading first, "plus" for the least plus first.
    focimeter: the instrument, which has a zero and steps; None for exact readings with the zero right.

    Raises LabError for another form, or a reading out of range.
    Source: derived in `focimeter`: a sharp line stands across the meridian whose power is read.
    """
    cross = OpticalCross.of(rx.in_form(form))
    first, second = cross.first_d, cross.second_d
    if focimeter is not None:
        first, second = focimeter.reading_d(first), focimeter.reading_d(second)
    return (
        SharpLine(drum_d=first, line_deg=cross.second_meridian_deg),
        SharpLine(drum_d=second, line_deg=cross.first_meridian_deg),
    )


def prescription_of_readings(first: SharpLine, second: SharpLine, *, zero_d: float = 0.0) -> Prescription:
    """Return the lens that two readings belong to, in the form their order gives.

    first, second: the readings, in the order they were taken.
    zero_d: what the drum reads where the target is sharp with no lens [D]; it goes off the sphere alone.

    Raises LabError for lines that are not at right angles, or a lens out of range.
    Source: common practice; derived in `focimeter`.
    """
    apart = without_noise(abs(first.line_deg - second.line_deg))
    if apart != 90.0:
        raise LabError(
            f"sharp lines at {first.line_deg:g} and {second.line_deg:g} are {apart:g} degrees apart: the "
            "second lines stand at right angles to the first; turn the target until neither is broken and "
            "read again"
        )
    return Prescription(
        sphere_d=Focimeter(zero_d=zero_d).power_d(first.drum_d),
        cylinder_d=without_noise(second.drum_d - first.drum_d),
        axis_deg=second.line_deg,
    )
