"""What each optical quantity may be: one table, so that value objects, tickets and sliders agree."""

from lablib import datafile

_PACKAGE = "lablib.optics"


def limit(name: str) -> tuple[float, float]:
    """Return the least and greatest value of a quantity, in its unit.

    name: a name of the table limits.toml, for example "a_mm".
    """
    return datafile.limit(_PACKAGE, name)


def require_in_limits(thing: str, value: object, name: str) -> float:
    """Return a number that lies within the table's limits.

    thing: what the number is, as it should appear in the message.
    value: what was given.
    name: a name of the table limits.toml.

    Raises LabError with the range and the value.
    """
    return datafile.require_in_limits(thing, value, package=_PACKAGE, name=name)
