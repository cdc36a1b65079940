"""What questions about lens form share: how two surfaces are told, and the index a power is dispensed in."""

from lablib.optics.material import material
from lablib.questions.practice import usual_rows
from lablib.working import Term

# Materials a lens is dispensed in, the lowest index first, each up to a power.
_DISPENSED = usual_rows("dispensed_material")
DISPENSED_MATERIALS = tuple(row["material"] for row in _DISPENSED)


def index_for(power_d: float) -> float:
    """Return the index of a material in which such a lens is usually dispensed.

    power_d: the strongest power of the lens [D]. Common practice, and a rough one.
    """
    return material(next(row["material"] for row in _DISPENSED if abs(power_d) <= row["up_to_d"])).index


def surface_terms(front_d: float, back_d: float, index: float) -> tuple[Term, Term, Term]:
    """Return two surfaces and the index between them as numbers that are given.

    front_d, back_d: surface powers [D]; index: of the lens.
    """
    return (
        Term(symbol="F_1", value=front_d, unit="D", digits=2, meaning="front surface power"),
        Term(symbol="F_2", value=back_d, unit="D", digits=2, meaning="back surface power"),
        Term(symbol="n", value=index, digits=3, meaning="index"),
    )
