"""The lenses of a ticket as they are written on it, and what the ticket reader asks about them."""

from dataclasses import dataclass
from functools import lru_cache

from lablib.job.checks import holds
from lablib.job.fields import TicketFaults
from lablib.job.ticket_file import ticket_from
from lablib.optics.eye import Eye

# Frame, distances and lenses of every ticket asked about; none of them is doubtful.
_FRAME = {"a_mm": 52.0, "b_mm": 38.0, "dbl_mm": 18.0}
_DISTANCE_MM = 31.0
_LENS = {
    "material": "hard-resin-1.50",
    "front_curve_d": 5.0,
    "centre_thickness_mm": 3.0,
    "blank_diameter_mm": 70.0,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """Something that must be asked before a ticket goes on.

    words: the question; eye: whose lens it is about, None for the pair.
    """

    words: str
    eye: Eye | None = None

    def __str__(self) -> str:
        return f"ask about the {self.eye} eye: {self.words}" if self.eye else f"ask: {self.words}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """The lenses of a ticket, letter for letter.

    right, left: the lines of the two eyes.
    prism_eye: the eye that has a prism without a base, None for neither; prism_prism_d: its amount [prism D].
    note: what the dispenser noted, empty for nothing.
    """

    right: str
    left: str
    prism_eye: Eye | None = None
    prism_prism_d: float = 0.0
    note: str = ""

    def shown(self, eye: Eye) -> str:
        """Return the line of an eye with its prism, as it is read on the ticket.

        eye: whose.
        """
        line = self.right if eye is Eye.RIGHT else self.left
        return f"{line}, prism {self.prism_prism_d:.2f}" if eye is self.prism_eye else line

    @property
    def on_one_line(self) -> str:
        """The lenses and the note, to be read among other tickets."""
        lenses = "; ".join(f"{eye.value} {self.shown(eye)}" for eye in Eye)
        return f"{lenses}; note: {self.note}" if self.note else lenses


@lru_cache(maxsize=256)
def asked(order: Order) -> tuple[Doubt, ...]:
    """Return what the ticket reader asks about the lenses of an order; nothing where they can be made.

    order: the lenses as written. A line that cannot be read is asked about in the reader's own words.
    """
    table = {"format": 1, "number": "T", "note": order.note, "frame": _FRAME, "lens": _LENS}
    for eye, line in ((Eye.RIGHT, order.right), (Eye.LEFT, order.left)):
        table[eye.value] = {"prescription": line, "monocular_pd_mm": _DISTANCE_MM}
        if eye is order.prism_eye:
            table[eye.value]["prism"] = [{"amount_prism_d": order.prism_prism_d}]
    try:
        ticket = ticket_from(table)
    except TicketFaults as found:
        return tuple(Doubt(words=fault) for fault in found.faults)
    return tuple(Doubt(words=hold.question, eye=hold.eye) for hold in holds(ticket))
