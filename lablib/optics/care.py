"""What each material of the table bears: knocks, holes, the tint bath, solvents, wheels."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.datafile import read_table, require_grade
from lablib.errors import LabError
from lablib.optics.material import Material, material, materials

TOUGHNESSES = ("brittle", "moderate", "tough")
SOLVENTS = ("washing-up water", "alcohol", "acetone")
WHEELS = ("plastics", "glass")


@dataclass(frozen=True, slots=True, kw_only=True)
class Care:
    """What one material bears. The words say the same to a reader, with what to mind.

    name: of the material.
    toughness: "brittle", "moderate" or "tough"; toughness_words.
    holes: whether it bears holes; holes_words.
    bath: how it takes a tint in the bath, "well", "slowly" or "no"; bath_words.
    attacked_by: solvents that harm it; wipe_words: what it is wiped with.
    wheel: the wheel it is cut on, "plastics" or "glass"; cut_words: how.
    hard_coat: "none", "advised" or "needed"; hard_coat_words.
    hardened: whether it is hardened after edging, and then never cut again.
    least_centre_mm: how thin the centre of a minus lens is usually made [mm].
    least_edge_mm: how thin the edge of a plus lens is usually left, for a rim all round [mm].
    source, grade: where it comes from, and how good it is.
    """

    name: str
    toughness: str
    toughness_words: str
    holes: bool
    holes_words: str
    bath: str
    bath_words: str
    attacked_by: tuple[str, ...]
    wipe_words: str
    wheel: str
    cut_words: str
    hard_coat: str
    hard_coat_words: str
    hardened: bool
    least_centre_mm: float
    least_edge_mm: float
    source: str
    grade: str

    @property
    def material(self) -> Material:
        """The material itself."""
        return material(self.name)


@cache
def care_table() -> Mapping[str, Care]:
    """Return what every material bears, by its name, in the order of the table of materials."""
    table = _table()
    source = {
        "source": table["source"]["text"],
        "grade": require_grade("care.toml", table["source"]["grade"]),
    }
    return MappingProxyType(
        {
            name: Care(name=name, **(row | {"attacked_by": tuple(row["attacked_by"])}), **source)
            for name in materials()
            if (row := table["material"].get(name))
        }
    )


def care(name: str) -> Care:
    """Return what a material bears.

    name: of the material.

    Raises LabError with the names there are: of a material given by its numbers nothing is known.
    """
    known = care_table()
    if name not in known:
        raise LabError(
            f"what material {name!r} bears is not in the table: give one of {', '.join(known)}, or ask its "
            "maker"
        )
    return known[name]


def toughness_words() -> Mapping[str, str]:
    """Return what each grade of toughness means, the least first."""
    rows = _table()["toughness"]
    return MappingProxyType({name: rows[name] for name in TOUGHNESSES})


def bath_words() -> Mapping[str, str]:
    """Return what each grade of taking a tint means."""
    return MappingProxyType(_table()["bath"])


def care_cautions() -> tuple[str, ...]:
    """Return what to mind about solvents, heat, dust and glass, a sentence or two each."""
    return tuple(_table()["caution"]["texts"])


def _table() -> dict:
    return read_table("lablib.optics", "care.toml")
