"""Whether what is ordered goes together: material, frame, coats, tint, use and wearer, with reasons.

Decisions are "make", "change" (ours to decide), "hold" (ask who ordered it) and "refuse" (as ordered it is
not made). Of several the gravest counts.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.datafile import read_table, require_grade
from lablib.optics.material_order import MaterialOrder

DECISIONS = ("make", "change", "hold", "refuse")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pairing:
    """Something that does not go together.

    name: a stable name.
    words: what it is.
    when: what must be so of an order, in the words of `MaterialOrder.traits`.
    decision: "change", "hold" or "refuse".
    reason: why.
    instead: what is offered, asked or done.
    source, grade: where it comes from, and how good that is.
    """

    name: str
    words: str
    when: frozenset[str]
    decision: str
    reason: str
    instead: str
    source: str
    grade: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitness:
    """What is decided about an order.

    order: it.
    found: everything in it that does not go together, the gravest first.
    """

    order: MaterialOrder
    found: tuple[Pairing, ...]

    @property
    def decision(self) -> str:
        """The gravest decision among what was found; "make" where nothing was."""
        return self.found[0].decision if self.found else "make"

    @property
    def sentences(self) -> tuple[str, ...]:
        """The decision with its reasons, one sentence or more for each."""
        if not self.found:
            return ("Make it: nothing in it stands against anything else.",)
        return tuple(
            f"{pairing.decision.capitalize()}, {pairing.words}. {pairing.reason} {pairing.instead}"
            for pairing in self.found
        )


@cache
def pairings() -> Mapping[str, Pairing]:
    """Return everything that does not go together, by name."""
    table = read_table("lablib.optics", "pairings.toml")
    usual = table["source"]
    return MappingProxyType(
        {
            name: Pairing(
                name=name,
                words=row["words"],
                when=frozenset(row["all"]),
                decision=row["decision"],
                reason=row["reason"],
                instead=row["instead"],
                source=row.get("source", usual["text"]),
                grade=require_grade(f"pairing {name}", row.get("grade", usual["grade"])),
            )
            for name, row in table["pairing"].items()
        }
    )


def fitness(order: MaterialOrder) -> Fitness:
    """Return what is decided about an order, with the reasons.

    order: what is wanted.
    """
    traits = order.traits
    found = [pairing for pairing in pairings().values() if pairing.when <= traits]
    gravest_first = sorted(found, key=lambda pairing: -DECISIONS.index(pairing.decision))
    return Fitness(order=order, found=tuple(gravest_first))


def refused_pairings(order: MaterialOrder) -> tuple[Pairing, ...]:
    """Return what of an order is refused, with its reasons; nothing where it may go on.

    order: what is wanted.
    """
    return tuple(pairing for pairing in fitness(order).found if pairing.decision == "refuse")
