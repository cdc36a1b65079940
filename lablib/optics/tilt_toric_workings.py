"""A tilted toric lens by its power matrix, as workings to follow by hand.

Every value is the numeric function's; only the steps are written here. The lens is turned about one line:
tilted about the horizontal or wrapped about the vertical.
"""

import math

import numpy as np

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.power_workings import power_matrix_workings
from lablib.optics.prescription import Prescription
from lablib.optics.terms import direction_term, power_step
from lablib.optics.tilt import Tilt, compensated, tilt_effect
from lablib.optics.tilt_workings import sphere_factor_working
from lablib.working import Term, Working

_DERIVED = "derived: a step across the line of sight is a longer step on the tilted lens"


def tilted_toric_workings(rx: Prescription, *, tilt: Tilt, index: float) -> tuple[Working, ...]:
    """Return what a tilted toric lens does, worked by its power matrix, in minus-cylinder form.

    rx: the lens, with a cylinder.
    tilt: about one line alone; index: refractive index.

    Raises LabError for a lens without a cylinder or turned about both lines, and as `tilt_effect` does.
    """
    reached = tilt_effect(rx, tilt=tilt, index=index)
    return _worked(rx, reached, tilt, index, how="{0} * K / {1}", what="with the tilt")


def compensated_toric_workings(rx: Prescription, *, tilt: Tilt, index: float) -> tuple[Working, ...]:
    """Return what to order for a toric prescription in a tilted lens, worked, in minus-cylinder form.

    rx: what the eye is to have, with a cylinder.
    tilt, index: as in `tilted_toric_workings`, which also says what it raises.
    """
    order = compensated(rx, tilt=tilt, index=index)
    return _worked(rx, order, tilt, index, how="{0} / K * {1}", what="to order")


def _worked(
    rx: Prescription, result: Prescription, tilt: Tilt, index: float, *, how: str, what: str
) -> tuple[Working, ...]:
    if not rx.cylinder_d or (tilt.pantoscopic_deg and tilt.wrap_deg):
        raise LabError(
            f"{rx} tilted by {tilt.pantoscopic_deg:g} and wrapped by {tilt.wrap_deg:g} degrees: this "
            "working takes a lens with a cylinder, turned about one line: give one angle 0, or a cylinder"
        )
    angle = direction_term("i", tilt.pantoscopic_deg + tilt.wrap_deg, "tilt of the lens")
    factor = sphere_factor_working(angle, index)
    start = power_matrix_workings(rx, Eye.RIGHT)
    (along_180, crossed), (_, along_90) = result.power_matrix()
    # Across the line of the tilt a power counts twice, the cross term once.
    stretched, kept = ("F90", "F180") if tilt.pantoscopic_deg else ("F180", "F90")
    shares = {stretched: "cos(i)^2", "Fx": "cos(i)", kept: "1"}
    values = {"F180": along_180, "Fx": crossed, "F90": along_90}
    changed = [
        power_step(
            f"{step.what} {what}",
            f"{step.symbol}'",
            how.format(step.symbol, shares[step.symbol]).removesuffix(" / 1").removesuffix(" * 1"),
            (step.as_term(), factor.as_term(), *((angle,) if step.symbol != kept else ())),
            values[step.symbol],
            digits=3,
            source=_DERIVED if step.symbol == stretched else "",
        )
        for step in start
    ]
    return (*start, factor, *changed, *_written(result, [step.as_term() for step in changed], what))


def _written(result: Prescription, terms: list[Term], what: str) -> tuple[Working, ...]:
    """From a power matrix to sphere, cylinder and axis: mean, half the cylinder, and the angle."""
    along_180, crossed, along_90 = terms
    mean = power_step(
        f"spherical equivalent {what}",
        "M",
        "(F180' + F90') / 2",
        (along_180, along_90),
        result.spherical_equivalent_d,
        digits=3,
    )
    half_d = abs(result.cylinder_d) / 2.0
    half = power_step(
        f"half the cylinder {what}",
        "h",
        "sqrt(((F180' - F90') / 2)^2 + Fx'^2)",
        (along_180, along_90, crossed),
        half_d,
        digits=3,
    )
    both = (mean.as_term(), half.as_term())
    sphere = power_step(f"sphere {what}", "S'", "M + h", both, result.sphere_d)
    cylinder = power_step(f"cylinder {what}", "C'", "-2 * h", (half.as_term(),), result.cylinder_d)
    return (mean, half, sphere, cylinder, *_axis(result, terms, half, what))


def _axis(result: Prescription, terms: list[Term], half: Working, what: str) -> tuple[Working, ...]:
    along_180, crossed, along_90 = terms
    if not np.round(crossed.value, crossed.digits) or result.axis_deg is None:
        return ()
    turn = "180 + " if crossed.value < 0.0 else ""
    return (
        Working(
            what=f"axis {what}",
            symbol="A'",
            formula=f"{turn}atan((h - (F180' - F90') / 2) / Fx')",
            terms=(half.as_term(), along_180, along_90, crossed),
            value=math.fmod(result.axis_deg, 180.0) or 180.0,
            unit="degrees",
            digits=1,
        ),
    )
