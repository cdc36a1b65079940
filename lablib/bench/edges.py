"""The table of numbers for edges and mounting: default, range, unit, grade and source of each."""

from functools import cache

from lablib.bench.parameter import Parameter
from lablib.datafile import read_table
from lablib.errors import require_one_of

# Rims that hold a lens by a bevel all round.
RIMS = ("plastic", "metal")
MOUNTINGS = (*RIMS, "grooved", "drilled")


@cache
def edge_parameters() -> dict[str, Parameter]:
    """Return every number by its name, so that a reader can see range, grade and source of each."""
    rows = read_table("lablib.bench", "edges.toml")["parameter"]
    return {name: Parameter(name=name, **row) for name, row in rows.items()}


def edge_default(name: str) -> float:
    """Return what is taken where nothing else is said, in its unit.

    name: a key of `edge_parameters`.
    """
    return edge_parameters()[name].default


def edge_number(name: str, value: float | None = None) -> float:
    """Return a number within the table's range, or the default where none was given.

    name: a key of `edge_parameters`; value: in its unit, None for the default.

    Raises LabError with the range and the value.
    """
    row = edge_parameters()[name]
    return row.default if value is None else row.require(value)


def least_edge_mm(mounting: str) -> float:
    """Return the least edge a mounting needs, all round [mm].

    mounting: "plastic", "metal", "grooved" or "drilled".

    A bevel needs its side twice, a groove itself and two walls. For holes it is what is needed where they
    are drilled.

    Raises LabError for another mounting.
    """
    require_one_of("mounting", mounting, MOUNTINGS)
    if mounting == "grooved":
        return edge_default("cord_groove_mm") + 2.0 * edge_default("groove_wall_mm")
    if mounting == "drilled":
        return edge_default("hole_edge_mm")
    return 2.0 * edge_default("bevel_side_mm")


def rim_give_mm(rim: str) -> float:
    """Return how far a rim may be made to follow a bevel of another curve [mm].

    rim: "plastic" or "metal".

    Raises LabError for another rim.
    """
    return edge_default(f"give_{require_one_of('rim', rim, RIMS)}_mm")
