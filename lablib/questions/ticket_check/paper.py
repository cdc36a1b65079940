"""A ticket as paper has it: each part of a line in a field of its own, and which fields are in doubt."""

from lablib.optics.eye import EYES, Eye
from lablib.questions.ticket_check.drawn import Ticket
from lablib.questions.ticket_check.kinds import kinds
from lablib.questions.ticket_check.order import FRAME_WORDS, HEIGHT_WORDS, PD_WORDS, Order
from lablib.study.question import Drawing

# What stands before an axis, an addition and a prism in a line.
_MARKS = {"x": "axis", "add": "addition"}
# The fields of an eye, in the order of the drawing.
_FIELDS = ("sphere", "cylinder", "axis", "addition", "prism", "base", "PD", "height")


def drawing(one: Ticket) -> Drawing:
    """Return the paper of a ticket, with what is ringed on it once the question is over.

    one: the ticket.
    """
    values = {eye.value: _fields(one.order, eye) for eye in EYES}
    values |= {"frame": FRAME_WORDS, "note": one.order.note}
    return Drawing(name="ticket", values=values | {"doubtful": doubtful(one), "doubt": doubt(one)})


def doubtful(one: Ticket) -> tuple[str, ...]:
    """Return the fields of a ticket that somebody must be asked about, each as eye and column.

    one: the ticket; a sound one has none.
    """
    return tuple(f"{eye} {column}" for eye in _eyes(one) for column in _columns(one))


def doubt(one: Ticket) -> str:
    """Return the same in words, such as "the axis of the right eye"; empty for a sound ticket.

    one: the ticket.
    """
    columns = " and ".join(f"the {column}" for column in _columns(one))
    if not columns:
        return ""
    whose = "each eye" if kinds()[one.kind].is_of_both else f"the {one.odd_eye} eye"
    return f"{columns} of {whose}"


def in_words(one: Ticket) -> str:
    """Return what the paper shows once the question is over, as a sentence.

    one: the ticket.
    """
    words = doubt(one)
    return f"Ringed on the ticket: {words}." if words else "Nothing is ringed on the ticket."


def _columns(one: Ticket) -> tuple[str, ...]:
    return (one.part,) if one.part else kinds()[one.kind].fields


def _eyes(one: Ticket) -> tuple[Eye, ...]:
    return EYES if kinds()[one.kind].is_of_both else (one.odd_eye,)


def _fields(order: Order, eye: Eye) -> tuple[str, ...]:
    """Return what stands in the fields of an eye, letter for letter."""
    found = dict.fromkeys(_FIELDS, "") | {"PD": PD_WORDS, "height": HEIGHT_WORDS}
    powers, place = iter(("sphere", "cylinder")), ""
    for word in order.line(eye).split():
        if word in _MARKS:
            place = _MARKS[word]
        else:
            found[place or next(powers)] = word
    if eye is order.prism_eye:
        found["prism"] = f"{order.prism_prism_d:.2f}"
    return tuple(found.values())
