"""The line through break-loose readings: how sure it is at each force, and what one through 0 would say."""

from collections.abc import Sequence

import numpy as np

from lablib.bench.contact import r_eff_mm
from lablib.bench.fitted import student_factor
from lablib.bench.grip_fit import BreakLoose, GripFit
from lablib.errors import LabError, require_between


def line_nmm(fit: GripFit, forces_n: np.ndarray) -> np.ndarray:
    """Return the torque of the line at forces, for a drawing; only between those tried is it a claim [N mm].

    fit: of `fit_grip`; forces_n: shape (N,) [N].
    """
    sticks = fit.shear_mpa.value * fit.contact.w_mm3
    return sticks + fit.friction.value * r_eff_mm(fit.contact) * forces_n


def band_nmm(fit: GripFit, forces_n: np.ndarray, *, confidence: float = 0.95) -> np.ndarray:
    """Return how far below and above its line the true line may lie, the same each way, shape (N,) [N mm].

    fit: of `fit_grip`; forces_n: shape (N,) [N]; confidence: at each force by itself.

    Source: confidence band of a straight line by least squares, even scatter.
    """
    forces = np.array([one.clamp_n for one in fit.used])
    torques = np.array([one.torque_nmm for one in fit.used])
    middle = forces.mean()
    leverage = 1.0 / len(forces) + (forces_n - middle) ** 2 / ((forces - middle) ** 2).sum()
    reach = student_factor(confidence, freedom=fit.freedom)
    return reach * fit.scatter * torques.mean() * np.sqrt(leverage)


def friction_through_zero(fit: GripFit) -> float:
    """Return the friction that a line through the origin would give: what sticks is called friction too.

    fit: of `fit_grip`; the readings it uses are taken.
    """
    forces = np.array([one.clamp_n for one in fit.used])
    torques = np.array([one.torque_nmm for one in fit.used])
    return float((forces * torques).sum() / (forces**2).sum() / r_eff_mm(fit.contact))


def readings_needed(readings: int, *, error: float, wanted: float) -> float:
    """Return how many readings would bring an error down, the forces and the scatter left as they are.

    readings: taken so far; error: of the fit with them; wanted: the error to come down to, same unit.

    Raises LabError for a number that cannot be.
    Source: the error of a mean, and of a fitted line, falls with the square root of the readings.
    """
    require_between("readings", readings, low=1, high=1e6)
    for name, value in (("error", error), ("wanted", wanted)):
        require_between(name, value, low=0.0, high=1e6, open_low=True)
    return readings * (error / wanted) ** 2


def readings_from(text: str, coat: str) -> tuple[BreakLoose, ...]:
    """Return readings somebody typed.

    text: a line each: force [N], break-loose torque [N m], and where it was read the sliding torque [N m],
        between spaces. Empty lines are passed over.
    coat: what the pad lay on in all of them.

    Raises LabError that names the line, for what is no number, too many or too few of them, and values that
    no jig gives.
    """
    rows = [(at, line.split()) for at, line in enumerate(text.splitlines(), start=1) if line.strip()]
    return tuple(_reading(at, parts, coat) for at, parts in rows)


def _reading(at: int, parts: Sequence[str], coat: str) -> BreakLoose:
    try:
        force, *torques = (float(part.replace(",", ".")) for part in parts)
    except ValueError:
        raise LabError(
            f"line {at}, {' '.join(parts)!r}, is not numbers: write force in N, torque in N m, as 100 0.285"
        ) from None
    if len(torques) not in (1, 2):
        raise LabError(
            f"line {at} has {len(parts)} numbers: write force in N, break-loose torque in N m, and the "
            f"sliding torque in N m where it was read"
        )
    try:
        return BreakLoose(
            clamp_n=force,
            torque_nmm=1000.0 * torques[0],
            sliding_nmm=1000.0 * torques[1] if len(torques) == 2 else None,
            coat=coat,
        )
    except LabError as fault:
        raise LabError(f"line {at}: {fault}") from None
