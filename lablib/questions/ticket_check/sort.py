"""A question with several answers: which of six tickets must be held."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.questions.ticket_check.drawn import Ticket, ticket
from lablib.questions.ticket_check.kinds import kinds
from lablib.questions.ticket_check.order import IN_ORDER, asked
from lablib.questions.ticket_check.paper import doubt
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_SHOWN, _FEWEST = 6, 2
_LETTERS = "ABCDEF"


@dataclass(frozen=True, slots=True, kw_only=True)
class PileCase:
    """A pile of tickets, each of another kind.

    tickets: in their order.
    """

    tickets: tuple[Ticket, ...]


class SortTickets(Maker[PileCase]):
    """Pick the tickets that must be held out of six."""

    name = "sort-tickets"
    lesson = "02"
    skill = "sort-tickets"
    slips = tuple(kind.verdict_slip for kind in kinds().values())

    def draw(self, draws: Draws) -> PileCase:
        """Return two to four tickets to be held, among others that only look odd."""
        faulty = [key for key, kind in kinds().items() if kind.is_fault]
        sound = [key for key, kind in kinds().items() if not kind.is_fault]
        count = _FEWEST + draws.whole(_SHOWN - 2 * _FEWEST + 1)
        keys = draws.shuffled((*draws.some(faulty, count), *draws.some(sound, _SHOWN - count)))
        return PileCase(tickets=tuple(ticket(key, draws) for key in keys))

    def kind(self, case: PileCase) -> SeveralAnswer:
        """Return the tickets."""
        return SeveralAnswer(
            options=tuple(
                Option(key=one.kind, words=f"{letter}: {one.order.on_one_line}")
                for letter, one in zip(_LETTERS, case.tickets, strict=True)
            )
        )

    def slips_in(self, case: PileCase) -> tuple[Slip, ...]:
        """Return the slip of each ticket."""
        return tuple(kinds()[one.kind].verdict_slip for one in case.tickets)

    def answer(self, case: PileCase, slips: Set[str] = NONE) -> object:
        """Return the tickets the reader asks about, or the one that a slip is about."""
        for one in case.tickets:
            if kinds()[one.kind].verdict_slip.name in slips:
                return WrongPick(key=one.kind, picked=not asked(one.order))
        return frozenset(one.kind for one in case.tickets if asked(one.order))

    def pairs(self, case: PileCase, kind: SeveralAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each slip is seen by itself."""
        return ()

    def prompt(self, case: PileCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Six invented tickets lie before you, printed. Beside the lenses each says the same.",
            IN_ORDER,
            "Pick every ticket that must be held until somebody has answered a question.",
        )

    def solution(self, case: PileCase) -> Solution:
        """Return the reason for each ticket that is held, and for each that only looks odd."""
        found = [(letter, kinds()[one.kind], one) for letter, one in zip(_LETTERS, case.tickets, strict=True)]
        return Solution(
            words=tuple(
                f"Hold {letter} for {doubt(one)}. {kind.reason}"
                if kind.is_fault
                else f"Make {letter}. {kind.reason}"
                for letter, kind, one in sorted(found, key=lambda each: not each[1].is_fault)
            )
        )

    def hints(self, case: PileCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Read each eye part by part. Is every sign, point, axis and base there, and none too many?",
            "Then compare the two eyes, and read the note.",
            "What looks odd and can be read in one way only is made.",
        )
