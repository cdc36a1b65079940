"""Lens materials: index, Abbe number and density, from the data table or by their numbers."""

from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table, require_grade
from lablib.errors import LabError
from lablib.optics.limits import require_in_limits


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What a lens is made of.

    name: the key in the data table, or "by its numbers".
    words: the name as people read it.
    index: refractive index at the helium d line.
    abbe: Abbe number at the d line; None where it was not given.
    density: [g/cm3].
    source: where the numbers come from.
    grade: published, derived or teaching estimate; "as ordered" for numbers on a ticket.
    cuts_like: name of the material of the table whose cutting it shares; None where that is not known.

    Raises LabError for a number outside what any lens material has.
    """

    name: str
    words: str
    index: float
    density: float
    abbe: float | None = None
    source: str = "the ticket"
    grade: str = "as ordered"
    cuts_like: str | None = None

    def __post_init__(self) -> None:
        for thing in ("index", "density", "abbe"):
            value = getattr(self, thing)
            if value is not None:
                require_in_limits(f"material {self.name}: {thing}", value, thing)


@cache
def materials() -> dict[str, Material]:
    """Return every material of the data table by name, from the lowest index class to the highest."""
    table = read_table("lablib.optics", "materials.toml")
    source, grade = table["source"]["text"], require_grade("materials.toml", table["source"]["grade"])
    return {
        name: Material(
            name=name,
            words=row["words"],
            index=row["n_d"],
            abbe=row["abbe"],
            density=row["density"],
            source=source,
            grade=grade,
            cuts_like=name,
        )
        for name, row in table["material"].items()
    }


def material(name: str) -> Material:
    """Return the material of that name.

    Raises LabError with the names there are.
    """
    known = materials()
    if not isinstance(name, str) or name not in known:
        raise LabError(f"material {name!r} is not in the table: give one of {', '.join(known)}")
    return known[name]
