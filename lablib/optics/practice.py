"""Numbers of common practice: what a bench takes where nothing else is said."""

from lablib.datafile import read_table
from lablib.errors import require_between


def usual(name: str) -> float:
    """Return the usual value of a quantity, in its unit.

    name: a name of the table practice.toml, for example "pupil_depth".
    """
    return _row(name)["value"]


def usual_or(name: str, thing: str, value: float | None) -> float:
    """Return a number within the table's range, or the usual value where none was given.

    name: a name of the table practice.toml.
    thing: what the number is, as it should appear in the message.
    value: what was given, in the table's unit; None for the usual value.

    Raises LabError with the range and the value.
    """
    row = _row(name)
    if value is None:
        return row["value"]
    low, high = row["range"]
    return require_between(thing, value, low=low, high=high, unit=row["unit"])


def source_of(name: str) -> str:
    """Return where a number of common practice comes from, as a learner reads it.

    name: a name of the table practice.toml.
    """
    return _row(name)["source"]


def _row(name: str) -> dict:
    return read_table("lablib.optics", "practice.toml")[name]
