"""What may be claimed after a calibration, in words."""

from dataclasses import dataclass

from lablib.bench.fitted import Fitted
from lablib.bench.grip_fit import GripFit
from lablib.pictures.calibration_data import CalibrationView


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Calibration(CalibrationView):
    """Readings and their fit.

    fit: of the readings; through_zero: friction by the line through the origin, None where that is hidden.
    is_sliding: whether the torque of a sliding block was taken.
    """

    fit: GripFit
    through_zero: float | None
    is_sliding: bool


def claim(data: Calibration) -> str:
    """Return what may be claimed of a fit, what not, and what was wrong with the readings.

    data: readings and their fit.
    """
    fit = data.fit
    low, high = fit.forces_n
    said = (
        f"Coat {fit.used[0].coat}, round block, {low:g} to {high:g} N: with 95 % confidence tau is "
        f"{between(fit.shear_mpa, fit)} MPa and mu {between(fit.friction, fit)}. Nothing is said "
        f"of other coats or other forces."
    )
    return " ".join([said, *_minded(data)])


def between(one: Fitted, fit: GripFit) -> str:
    """Return the interval of a fitted number with 95 % confidence, in words.

    one: of the fit; fit: for the readings it rests on.
    """
    low, high = one.interval(freedom=fit.freedom)
    if low < 0.0:
        # Neither can be below 0, so that the lower end says nothing.
        return f"up to {high:.3f}"
    return f"{low:.3f} to {high:.3f}"


def _minded(data: Calibration) -> list[str]:
    """What is wrong with how the readings were taken or fitted."""
    said, fit = [], data.fit
    if fit.left_out:
        forces = sorted({one.clamp_n for one in fit.left_out})
        said.append(
            f"At {' and '.join(f'{force:g}' for force in forces)} N the torque no longer rose as the "
            f"lower forces promise: another joint gave way there, or the readings scatter. They are left out."
        )
    if data.through_zero is not None:
        said.append(
            f"Through the origin mu would be {data.through_zero:.3f} and tau 0: what sticks is taken for "
            f"friction."
        )
    if data.is_sliding:
        said.append("These are torques of a block that slides already: what it takes to start is more.")
    return said
