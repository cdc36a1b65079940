"""What questions about prism share: directions, a slip with units, and the numbers given to workings."""

from collections.abc import Iterable

from lablib.study.draws import Draws
from lablib.study.question import Slip
from lablib.working import Term, Working

# What each word is worth, base in or inwards and base up or upwards.
WAYS = {"in": (1.0, 0.0), "out": (-1.0, 0.0), "up": (0.0, 1.0), "down": (0.0, -1.0)}
OPPOSITE = {"in": "out", "out": "in", "up": "down", "down": "up"}
SIDEWAYS = ("in", "out")
UPRIGHT = ("up", "down")
MM_PER_CM = 10.0
CENTIMETRES = Slip(
    name="millimetres-for-centimetres",
    step="the unit of the distance",
    words="You put in millimetres. Prentice's rule wants the distance in centimetres: ten times less.",
)


def given_to(workings: Iterable[Working]) -> tuple[Term, ...]:
    """Return the numbers that are put into a chain and are no result of an earlier step, each once.

    workings: in their order.
    """
    found: dict[str, Term] = {}
    results: set[str] = set()
    for working in workings:
        found |= {term.symbol: term for term in working.terms if term.symbol not in results}
        results.add(working.symbol)
    return tuple(found.values())


def along(way: str, amount: float) -> tuple[float, float]:
    """Return an amount in a direction as a part inwards and a part upwards.

    way: "in", "out", "up" or "down"; amount: in its own unit.
    """
    inwards, upwards = WAYS[way]
    return amount * inwards + 0.0, amount * upwards + 0.0


def draw_sphere(draws: Draws, least_d: float, most_d: float) -> float:
    """Return a sphere in quarter dioptres, plus as often as minus [D].

    draws: to draw from; least_d, most_d: its size [D].
    """
    return draws.step(least_d, most_d, 0.25) * draws.one_of((-1.0, 1.0))
