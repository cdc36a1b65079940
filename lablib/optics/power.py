"""Powers and axes: what they may be, and how they are written."""

from lablib.errors import LabError, require_between, require_finite

# Wider than any usual order; our own judgement, no source.
POWER_LIMIT_D = 40.0
CYLINDER_LIMIT_D = 20.0
ADDITION_LIMIT_D = 12.0
VERTEX_LIMIT_MM = 40.0

_NOISE_DIGITS = 9


def written_power(power_d: float) -> str:
    """Return a power as it is written: sign always, two decimals, and "0.00" for none.

    power_d: power [D].
    """
    text = f"{power_d:+.2f}"
    return "0.00" if text.strip("+-") == "0.00" else text


def wrapped_axis_deg(angle_deg: float) -> float:
    """Return the axis for any angle: turned by half turns until it is above 0 and up to 180 [degrees].

    angle_deg: any angle [degrees].
    """
    return without_noise(angle_deg) % 180 or 180.0


def without_noise(value: float) -> float:
    """Return a number without what binary arithmetic adds to it, and never a minus zero.

    Else a sum of written powers leaves a cylinder of 1e-16 D, or an axis of 1e-15 degrees for 180.

    value: the number.
    """
    return round(value, _NOISE_DIGITS) + 0.0


def require_power(thing: str, value: object, limit_d: float) -> float:
    """Return a power that lies between minus and plus its limit.

    thing: what the power is, as it should appear in the message.
    value: what was given [D].
    limit_d: the limit [D].

    Raises LabError with the range and the value.
    """
    return require_between(thing, value, low=-limit_d, high=limit_d, unit="D") + 0.0


def require_axis(value: object) -> float:
    """Return a cylinder axis above 0 and up to 180.

    value: what was given [degrees].

    Raises LabError for anything else, and for 0 with the advice to write 180.
    """
    axis = require_finite("axis", value, unit="degrees")
    if axis == 0:
        raise LabError("axis 0 is written 180: give an axis above 0 and up to 180 degrees")
    if not 0 < axis <= 180:
        raise LabError(f"axis {axis:g} is not a cylinder axis: give an axis above 0 and up to 180 degrees")
    return axis
