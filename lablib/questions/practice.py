"""Numbers of the trade that questions put into their cases: one table, each with its source and grade."""

from lablib.datafile import read_table


def usual(name: str) -> float:
    """Return the usual value of a quantity, in its unit.

    name: a name of the table practice.toml, for example "least_edge".
    """
    return _row(name)["value"]


def usual_rows(name: str) -> tuple[dict, ...]:
    """Return what is usual where it takes several rows; the caller must not change them.

    name: a name of the table practice.toml, for example "blanks".
    """
    return tuple(_row(name)["rows"])


def _row(name: str) -> dict:
    return read_table("lablib.questions", "practice.toml")[name]
