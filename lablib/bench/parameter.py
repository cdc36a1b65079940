"""The table of machine and grip parameters: default, range, unit, grade and source of each."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table, require_grade
from lablib.errors import require_between

# Tables whose rows are parameters of one choice: coat.slick.pad_friction and the like.
_CHOICES = ("coat", "skin", "block_face", "wheel")


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """One number of the table.

    name: its key, with dots where it belongs to a choice: "coat.slick.pad_friction".
    words: what it is.
    default: used until a bench has been calibrated, in `unit`.
    low, high: its range, both ends allowed.
    unit: empty for a pure number.
    grade: published, derived or teaching estimate.
    source: where it comes from.

    Raises LabError for a default outside the range, or a grade there is not.
    """

    name: str
    words: str
    default: float
    low: float
    high: float
    unit: str
    grade: str
    source: str

    def __post_init__(self) -> None:
        require_grade(f"parameter {self.name}", self.grade)
        self.require(self.default)

    def require(self, value: object) -> float:
        """Return a value that lies in the range.

        value: what was given, in `unit`.

        Raises LabError with the range and the value.
        """
        return require_between(self.words, value, low=self.low, high=self.high, unit=self.unit)


@cache
def table() -> dict:
    """Return the whole table as plain dictionaries; the caller must not change it."""
    return read_table("lablib.bench", "parameters.toml")


@cache
def parameters() -> dict[str, Parameter]:
    """Return every parameter by name, so that a reader can see range, grade and source of each."""
    return {name: Parameter(name=name, **row) for name, row in _rows()}


def _rows() -> Iterator[tuple[str, dict]]:
    yield from table()["parameter"].items()
    for choice in _CHOICES:
        for word, rows in table()[choice].items():
            for name, row in rows.items():
                yield f"{choice}.{word}.{name}", row
    for material, own in table()["material"].items():
        for name, row in table()["kind"][own["kind"]].items():
            yield f"material.{material}.{name}", {**row, "default": own.get(name, row.get("default"))}


def default(name: str) -> float:
    """Return a parameter's default, in its unit.

    name: a key of `parameters`.
    """
    return parameters()[name].default


def require_clamp_force(value: object) -> float:
    """Return a clamp force [N]; a thin lens bears less than the least a chuck is set to.

    value: what was given [N].

    Raises LabError for one that is not above 0, or above what a chuck gives.
    """
    row = parameters()["clamp_force_n"]
    return require_between(row.words, value, low=0.0, high=row.high, unit=row.unit, open_low=True)


def require_parameter(name: str, value: object) -> float:
    """Return a value that lies in a parameter's range.

    name: a key of `parameters`; value: what was given, in its unit.

    Raises LabError with the range and the value.
    """
    return parameters()[name].require(value)
