"""Kinds of tickets, faulty and sound, as data: what is said of each, and the slips it can lead to."""

from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.question import Slip

THROUGH, FILLED, HELD, CHANGED = "lets-{}-through", "fills-in-{}", "holds-{}", "changes-{}"
_ASK = "what has to be asked before a lens is made"
_FILL = "who may fill in what a ticket leaves open"
_READ = "whether a line can be read in more than one way"
_LEAVE = "what the bench may change on a ticket"


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """One kind of ticket.

    key: its stable name.
    is_fault: whether it must be held.
    asks: the question somebody has who holds it; empty where the ticket reader has one.
    tempts: what somebody makes who fills in or changes something.
    reason: why it is held, or made.
    fields: of an eye, those that are doubtful, as they are named on a paper ticket; none where the ticket
        drawn says which it is.
    is_of_both: whether they are doubtful in both eyes.
    as_is, altered: what is said to somebody who made a faulty one as it stands, or held a sound one; and to
        somebody who made it with what tempts.
    """

    key: str
    is_fault: bool
    asks: str
    tempts: str
    reason: str
    fields: tuple[str, ...]
    is_of_both: bool
    as_is: str
    altered: str

    @property
    def verdict_slip(self) -> Slip:
        """The mistake of letting a fault through, or of holding what is sound."""
        name, step = (THROUGH, _ASK) if self.is_fault else (HELD, _READ)
        return Slip(name=name.format(self.key), step=step, words=self.as_is)

    @property
    def change_slip(self) -> Slip:
        """The mistake of filling in what is missing, or of changing what is sound."""
        name, step = (FILLED, _FILL) if self.is_fault else (CHANGED, _LEAVE)
        return Slip(name=name.format(self.key), step=step, words=self.altered)


@cache
def kinds() -> dict[str, Kind]:
    """Return the kinds by key, the faulty ones first."""
    table, found = read_table("lablib.questions.ticket_check", "tickets.toml"), {}
    for group, said in (("fault", ("through", "filled")), ("sound", ("held", "changed"))):
        for key, row in table[group].items():
            found[key] = Kind(
                key=key,
                is_fault=group == "fault",
                asks=row.get("asks", ""),
                tempts=row["tempts"],
                reason=row["reason"],
                fields=tuple(row.get("fields", ())),
                is_of_both=row.get("both_eyes", False),
                as_is=row[said[0]],
                altered=row[said[1]],
            )
    return found
