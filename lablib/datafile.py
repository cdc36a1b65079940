"""Data tables: TOML files inside the package, where every number has a unit, a source and a grade."""

import tomllib
from functools import cache
from importlib import resources

from lablib.errors import LabError, require_between

GRADES = ("published", "derived", "teaching estimate")


@cache
def read_table(package: str, name: str) -> dict:
    """Return a packaged TOML table as plain dictionaries; the caller must not change it.

    package: the package that holds the file, for example "lablib.optics".
    name: the file's name, for example "materials.toml".

    Raises LabError naming the file if it is missing or is not TOML.
    """
    try:
        return tomllib.loads(resources.files(package).joinpath(name).read_text(encoding="utf-8"))
    except (OSError, tomllib.TOMLDecodeError) as fault:
        raise LabError(
            f"data table {package}/{name} cannot be read ({fault}): reinstall the package"
        ) from None


def require_grade(thing: str, grade: object) -> str:
    """Return a grade of evidence, or say which grades there are.

    Raises LabError for anything but one of `GRADES`.
    """
    if grade not in GRADES:
        raise LabError(f"{thing} has the grade {grade!r}: give one of {', '.join(GRADES)}")
    return grade


def limit(package: str, name: str) -> tuple[float, float]:
    """Return the least and greatest value of a quantity, in its unit.

    package: the package whose limits.toml holds it, for example "lablib.optics".
    name: of the quantity, for example "a_mm".
    """
    row = read_table(package, "limits.toml")["limit"][name]
    return row["low"], row["high"]


def require_in_limits(thing: str, value: object, *, package: str, name: str) -> float:
    """Return a number that lies within its limits.

    thing: what the number is, as it should appear in the message.
    value: what was given.
    package, name: as in `limit`.

    Raises LabError with the range and the value.
    """
    row = read_table(package, "limits.toml")["limit"][name]
    return require_between(
        thing, value, low=row["low"], high=row["high"], unit=row["unit"], open_low=row.get("open_low", False)
    )
