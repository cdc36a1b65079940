"""The order of operations: what is done to a lens before what, with the reason."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of
from lablib.optics.care import WHEELS


@dataclass(frozen=True, slots=True, kw_only=True)
class BeforeRule:
    """That one operation comes before another.

    name: a stable name.
    first, then: the operations.
    reason: why.
    only: the kind of material it holds for, "plastics" or "glass"; None for both.
    """

    name: str
    first: str
    then: str
    reason: str
    only: str | None = None

    def broken_by(self, steps: Sequence[str], kind: str) -> bool:
        """Return whether a sequence of operations breaks it.

        steps: operations in the order done; kind: of the material, "plastics" or "glass".
        """
        if self.only not in (None, kind) or not {self.first, self.then} <= set(steps):
            return False
        return steps.index(self.then) < steps.index(self.first)


def operations() -> Mapping[str, str]:
    """Return the operations by name, in words."""
    return MappingProxyType(_table()["operation"])


@cache
def before_rules() -> tuple[BeforeRule, ...]:
    """Return every rule of the order of operations."""
    return tuple(BeforeRule(**row) for row in _table()["rule"])


def broken_rules(steps: Sequence[str], *, kind: str) -> tuple[BeforeRule, ...]:
    """Return the rules that a sequence of operations breaks, in the order of the table.

    steps: operations in the order done, each once.
    kind: of the material, "plastics" or "glass".

    Raises LabError for an operation that is not known or comes twice, or for another kind of material.
    """
    require_one_of("kind of material", kind, WHEELS)
    for step in steps:
        require_one_of("operation", step, tuple(operations()))
        if list(steps).count(step) > 1:
            raise LabError(f"operation {step} comes twice: each is done once; leave one out")
    return tuple(rule for rule in before_rules() if rule.broken_by(steps, kind))


def in_order(steps: Sequence[str], *, kind: str) -> tuple[str, ...]:
    """Return operations in an order that breaks no rule; where rules leave a choice, in the table's order.

    steps, kind: as in `broken_rules`, which also says what it raises.
    """
    broken_rules(steps, kind=kind)
    left = [name for name in operations() if name in steps]
    rules = [rule for rule in before_rules() if rule.only in (None, kind)]
    done: list[str] = []
    while left:
        ready = next(
            step for step in left if not any(rule.then == step and rule.first in left for rule in rules)
        )
        left.remove(ready)
        done.append(ready)
    return tuple(done)


def is_settled(steps: Sequence[str], *, kind: str) -> bool:
    """Return whether the rules leave only one order.

    steps, kind: as in `broken_rules`, which also says what it raises.
    """
    ordered = in_order(steps, kind=kind)
    exchanged = (
        [*ordered[:at], ordered[at + 1], ordered[at], *ordered[at + 2 :]] for at in range(len(ordered) - 1)
    )
    return all(broken_rules(one, kind=kind) for one in exchanged)


def operations_source() -> str:
    """Return where the order comes from, as a learner reads it."""
    return _table()["source"]["text"]


def _table() -> dict:
    return read_table("lablib.optics", "operations.toml")
