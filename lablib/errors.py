"""The package's own errors: each text names the thing, the value got, the rule and the next step."""

import math


class LabError(ValueError):
    """A value that cannot be worked with, said in words the person who gave it can act on."""


def require_finite(thing: str, value: object, *, unit: str = "") -> float:
    """Return a number as a float, or say what was given instead.

    thing: what the number is, as it should appear in the message.
    value: what was given.
    unit: the unit to ask for, with no brackets.

    Raises LabError for anything but a finite int or float; True and False are not numbers here.
    """
    wanted = f"give a number in {unit}" if unit else "give a number"
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise LabError(f"{thing} {value!r} is not a number: {wanted}")
    try:
        number = float(value)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise LabError(f"{thing} {number} is not a finite number: {wanted}")
    return number


def require_between(
    thing: str, value: object, *, low: float, high: float, unit: str = "", open_low: bool = False
) -> float:
    """Return a number that lies from low to high, or say the range.

    thing, value, unit: as in `require_finite`.
    low, high: the range, both ends allowed; with open_low the low end itself is not.

    Raises LabError with the range and the value.
    """
    number = require_finite(thing, value, unit=unit)
    if low <= number <= high and not (open_low and number == low):
        return number
    ends = f"above {low:g} and up to {high:g}" if open_low else f"from {low:g} to {high:g}"
    raise LabError(f"{thing} {number:g} is out of range: give {ends} {unit}".rstrip())


def require_one_of(thing: str, value: object, known: tuple[str, ...]) -> str:
    """Return a word that is one of those known.

    thing: what the word is, as it should appear in the message.

    Raises LabError with the words there are.
    """
    if not isinstance(value, str) or value not in known:
        raise LabError(f"{thing} {value!r} is not known: give one of {', '.join(known)}")
    return value
