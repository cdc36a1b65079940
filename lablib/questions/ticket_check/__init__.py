"""Questions about tickets: which go on and which are held, and how a doubtful line is written properly."""

from lablib.questions.ticket_check.make_or_hold import MakeOrHold
from lablib.questions.ticket_check.sort import SortTickets
from lablib.questions.ticket_check.write import WriteItRight

MAKERS = (MakeOrHold(), SortTickets(), WriteItRight())
"""Questions on tickets: make or hold and why, which of six are held, a line written properly."""
