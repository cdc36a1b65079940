"""Practice lenses of an invented lens room: set up on the bench, cut in the simulation, most of them spoiled.

What a lens shows afterwards is never stored: it is simulated from its ticket when it is first asked for, and
kept as long as the program runs. Each lens can be cut again with one thing changed, to see whether that would
have helped. Clamp force is not among the changes: more of it is no remedy.
"""

from dataclasses import dataclass, replace
from functools import cache

from lablib.datafile import read_table
from lablib.errors import require_one_of
from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.job.ticket import Ticket
from lablib.job.ticket_file import ticket_from

AS_IT_WAS = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One thing done otherwise.

    name: its stable name; words: what is done.
    part, key, value: what it sets on a ticket.
    """

    name: str
    words: str
    part: str
    key: str
    value: object

    def made_on(self, ticket: Ticket) -> Ticket:
        """Return a ticket with this change made."""
        return replace(ticket, **{self.part: replace(getattr(ticket, self.part), **{self.key: self.value})})


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoiledJob:
    """A practice lens as it came to the machine.

    name: its stable name; words: what it is and how it was set up, in a few words.
    wrong: what should not have been done, or was left undone, in words; empty where nothing was wrong.
    ticket: its ticket, with one eye.
    """

    name: str
    words: str
    wrong: tuple[str, ...]
    ticket: Ticket


def _table() -> dict:
    return read_table("lablib.job", "spoiled_lenses.toml")


def spoiled_names() -> tuple[str, ...]:
    """Return the names of the practice lenses; the first four are the signs side by side."""
    return tuple(_table()["lens"])


def side_by_side() -> tuple[str, ...]:
    """Return the four shown side by side: no sign, line off level, bumped outline, burnt patch."""
    return spoiled_names()[:4]


@cache
def changes() -> dict[str, Change]:
    """Return every change by name, the cheapest first."""
    return {name: Change(name=name, **row) for name, row in _table()["change"].items()}


@cache
def spoiled_job(name: str) -> SpoiledJob:
    """Return a practice lens.

    name: of `spoiled_names`.

    Raises LabError with the names there are.
    """
    row = _table()["lens"][require_one_of("practice lens", name, spoiled_names())]
    number = f"practice {spoiled_names().index(name) + 1:02d}"
    return SpoiledJob(
        name=name,
        words=row["words"],
        wrong=tuple(row["wrong"]),
        ticket=ticket_from(_table()["usual"] | {"number": number} | row["ticket"]),
    )


def changed_ticket(name: str, change: str = AS_IT_WAS) -> Ticket:
    """Return the ticket of a practice lens with one thing changed.

    name: of `spoiled_names`; change: of `changes`, or "" for the lens as it was.

    Raises LabError with the names there are.
    """
    ticket = spoiled_job(name).ticket
    if change == AS_IT_WAS:
        return ticket
    return changes()[require_one_of("change", change, tuple(changes()))].made_on(ticket)


def does_something(name: str, change: str) -> bool:
    """Return whether a change makes a difference to how a practice lens is set up.

    name, change: as in `changed_ticket`, which also says what it raises.
    """
    return changed_ticket(name, change) != spoiled_job(name).ticket


def spoiled(name: str, change: str = AS_IT_WAS) -> EyeSheet:
    """Return a practice lens, worked; its cut and simulation are worked when first asked for, and kept.

    name, change: as in `changed_ticket`, which also says what it raises. A change that changes nothing gives
    the lens as it was.
    """
    return _worked(name, change if change and does_something(name, change) else AS_IT_WAS)


@cache
def _worked(name: str, change: str) -> EyeSheet:
    ticket = changed_ticket(name, change)
    return work_eye(ticket, ticket.eyes[0])


def holds(name: str, change: str = AS_IT_WAS) -> bool:
    """Return whether a practice lens never slides on its block.

    name, change: as in `changed_ticket`, which also says what it raises.
    """
    return spoiled(name, change).simulation.begins is None


def cures(name: str) -> tuple[str, ...]:
    """Return the single changes by which a practice lens holds, the cheapest first.

    name: of `spoiled_names`.

    Raises LabError with the names there are.
    """
    return tuple(change for change in changes() if does_something(name, change) and holds(name, change))
