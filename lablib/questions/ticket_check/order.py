"""The lenses of a ticket as they are written on it, and what the ticket reader asks about them."""

from dataclasses import dataclass
from functools import lru_cache

from lablib.job.checks import holds
from lablib.job.fields import TicketFaults
from lablib.job.ticket_file import ticket_from
from lablib.optics.eye import EYES, Eye

# Frame, distances and lenses of every ticket asked about; none of them is doubtful.
_FRAME = {"a_mm": 52.0, "b_mm": 38.0, "dbl_mm": 18.0}
_DISTANCE_MM, _HEIGHT_MM, _VERTEX_MM = 31.0, 20.0, 12.0
_WEARER = {"vertex_distance_mm": _VERTEX_MM, "tested_vertex_distance_mm": _VERTEX_MM}
_LENS = {
    "material": "hard-resin-1.50",
    "front_curve_d": 5.0,
    "centre_thickness_mm": 3.0,
    "blank_diameter_mm": 70.0,
}
FRAME_WORDS = (
    "A {a_mm:.0f}, B {b_mm:.0f}, DBL {dbl_mm:.0f}".format_map(_FRAME) + f", vertex distance {_VERTEX_MM:.0f}"
)
PD_WORDS, HEIGHT_WORDS = f"{_DISTANCE_MM:.0f}", f"{_HEIGHT_MM:.0f}"
IN_ORDER = f"Frame {FRAME_WORDS}; PD {PD_WORDS} and height {HEIGHT_WORDS} in each eye: these are in order."
"""What every ticket says beside its lenses, as it is read."""


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

    def line(self, eye: Eye) -> str:
        """Return the line of an eye.

        eye: whose.
        """
        return self.right if eye is Eye.RIGHT else self.left

    def shown(self, eye: Eye) -> str:
        """Return the line of an eye with its prism, as it is read on the ticket.

        eye: whose.
        """
        line = self.line(eye)
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
    table["wearer"] = _WEARER
    for eye in EYES:
        line = order.line(eye)
        table[eye.value] = {"prescription": line, "monocular_pd_mm": _DISTANCE_MM, "height_mm": _HEIGHT_MM}
        if eye is order.prism_eye:
            table[eye.value]["prism"] = [{"amount_prism_d": order.prism_prism_d}]
    try:
        ticket = ticket_from(table)
    except TicketFaults as found:
        return tuple(Doubt(words=fault) for fault in found.faults)
    return tuple(Doubt(words=hold.question, eye=hold.eye) for hold in holds(ticket))
