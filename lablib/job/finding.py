"""A finding of the job sheet, and from where on the sheet says something."""

from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.optics.eye import Eye


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something the bench should know before it goes on.

    name: a stable name, for programs.
    text: what was found and what to do next, in words.
    eye: which lens it is about, None for the pair.
    """

    name: str
    text: str
    eye: Eye | None = None


def threshold(name: str) -> float:
    """Return from where on the sheet says something, in the unit of the table findings.toml.

    name: of the threshold, for example "groove_edge".
    """
    return read_table("lablib.job", "findings.toml")[name]["value"]
