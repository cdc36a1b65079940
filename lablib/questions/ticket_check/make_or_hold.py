"""A question of choice: whether a ticket goes on or is held, and for which reason."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.unclear import AxisMissing, PointMissing, SignMissing
from lablib.questions.ticket_check.drawn import Ticket, ticket
from lablib.questions.ticket_check.kinds import Kind, kinds
from lablib.questions.ticket_check.order import IN_ORDER, Doubt, asked
from lablib.questions.ticket_check.paper import drawing, in_words
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Drawing, Mistake, Slip, Solution

_MAKE, _HOLD, _ALTER, _ASK_OTHER = "make", "hold", "make-altered", "hold-for-another-thing"
_OTHER = Slip(
    name="asks-about-what-is-in-order",
    step="which part of the ticket is doubtful",
    words="You held it with a question about something that stands there plainly. Look at the line it is "
    "about.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TicketCase:
    """A ticket, and what there is to choose from.

    ticket: it; other: a doubt about something that is in order; shown: keys of the options, in order.
    """

    ticket: Ticket
    other: Doubt
    shown: tuple[str, ...]

    @property
    def kind(self) -> Kind:
        """The kind of the ticket."""
        return kinds()[self.ticket.kind]


class MakeOrHold(Maker[TicketCase]):
    """Make a ticket or hold it, with the reason."""

    name = "make-or-hold"
    lesson = "02"
    skill = "make-or-hold"
    slips = (_OTHER, *(slip for kind in kinds().values() for slip in (kind.verdict_slip, kind.change_slip)))

    def draw(self, draws: Draws) -> TicketCase:
        """Return a ticket of any kind, and the order of its options."""
        one = ticket(draws.one_of(tuple(kinds())), draws)
        other = draws.one_of(_questions_about(one.sound))
        shown = draws.shuffled((_MAKE, _HOLD, _ALTER, _ASK_OTHER))
        return TicketCase(ticket=one, other=Doubt(words=other, eye=one.sound_eye), shown=shown)

    def kind(self, case: TicketCase) -> ChoiceAnswer:
        """Return two ways to make it and two to hold it."""
        words = {
            _MAKE: "make it as it stands",
            _HOLD: f"hold it and {_doubt(case)}",
            _ALTER: f"make it, with {_filled_in(case.kind.tempts, case)}",
            _ASK_OTHER: f"hold it and {case.other}",
        }
        return ChoiceAnswer(options=tuple(Option(key=key, words=words[key]) for key in case.shown))

    def slips_in(self, case: TicketCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        return (_OTHER, case.kind.verdict_slip, case.kind.change_slip)

    def answer(self, case: TicketCase, slips: Set[str] = NONE) -> str:
        """Return what the ticket reader decides, or the option a slip leads to."""
        right = _HOLD if asked(case.ticket.order) else _MAKE
        if case.kind.verdict_slip.name in slips:
            return _MAKE if right == _HOLD else _HOLD
        if case.kind.change_slip.name in slips:
            return _ALTER
        return _ASK_OTHER if slips else right

    def pairs(self, case: TicketCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: TicketCase) -> tuple[str, ...]:
        """Return the ticket."""
        order = case.ticket.order
        return (
            "An invented ticket, printed. Of the lenses it says:",
            *(f'{eye.value.capitalize()} eye: "{order.shown(eye)}".' for eye in Eye),
            f'Note: "{order.note}".' if order.note else "Note: none.",
            IN_ORDER,
            "Do you make it or hold it?",
        )

    def solution(self, case: TicketCase) -> Solution:
        """Return the reason, with the question to ask where there is one."""
        is_held = bool(asked(case.ticket.order))
        found = f"Hold it and {_doubt(case)}" if is_held else "Make it as it stands."
        return Solution(words=(found, case.kind.reason, in_words(case.ticket)))

    def drawing(self, case: TicketCase) -> Drawing:
        """Return the ticket on paper."""
        return drawing(case.ticket)

    def hints(self, case: TicketCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Read each line part by part: sphere with sign and point, cylinder with sign and axis, addition, "
            "prism with base.",
            "Then compare the eyes, and read the note. What looks odd and can be read in one way only is "
            "made.",
        )


def _doubt(case: TicketCase) -> Doubt:
    """Return what is asked by somebody who holds the ticket: the reader's question, or the tempting one."""
    if case.kind.asks:
        # An axis that can be misread is that of one eye; all other questions here are about the pair.
        eye = case.ticket.odd_eye if case.ticket.axis_deg else None
        return Doubt(words=_filled_in(case.kind.asks, case), eye=eye)
    (one,) = asked(case.ticket.order)
    return one


def _filled_in(words: str, case: TicketCase) -> str:
    small = case.ticket.axis_deg
    return words.format(small=small, large=10 * small)


def _questions_about(rx: Prescription) -> tuple[str, ...]:
    """Return questions that a lens in order answers: its axis, its sign, its point."""
    size = written_power(rx.sphere_d)
    return (
        AxisMissing(written_power(rx.cylinder_d), as_written="").question,
        SignMissing("sphere", size[1:], as_written="").question,
        PointMissing("sphere", size.replace(".", ""), as_written="").question,
    )
