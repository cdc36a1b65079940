"""What two changes do to a margin together: gains multiply where one changes the hold, one the torque."""

import math

from lablib.errors import LabError, require_finite


def gain(*, margin: float, changed: float) -> float:
    """Return by what a change multiplies the margin.

    margin: as it was, above 0; changed: with the change, above 0.

    Raises LabError for what is no margin.
    """
    return _above_0("changed margin", changed) / _above_0("margin", margin)


def combined_margin(margin: float, *changed: float) -> float:
    """Return the margin with several changes made at once.

    margin: as it was, above 0; changed: with each of the changes alone, above 0.

    A margin is what holds over what turns, so a change above the line and one below it multiply; over the
    practice lenses the model comes within 1 % of that (derived). Two changes that both act on what holds do
    not: front and back add up, and the weakest joint of the front governs.

    Raises LabError for what is no margin.
    """
    return margin * math.prod(gain(margin=margin, changed=one) for one in changed)


def _above_0(thing: str, value: float) -> float:
    if require_finite(thing, value) <= 0.0:
        raise LabError(f"{thing} {value:g} is not above 0: give what holds over what turns")
    return value
