"""The values of the lens panel as a ticket, and a ticket as values with words for what is left out."""

from collections.abc import Sequence

from lablib.errors import LabError
from lablib.job.ticket import Blocking, Cut, EyeOrder, LensOrder, Ticket, Wearer
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.material import material
from lablib.optics.prescription import Prescription
from lablib.panels.panel import Values

# The exponent that the panel's superellipse has.
SUPERELLIPSE = OutlineShape().words
CENTRE, LEAST_EDGE = "centre", "thinnest edge"


def ticket_for(values: Values) -> Ticket:
    """Return a ticket for one eye.

    values: by the control's name.

    Raises LabError when they do not go together.
    """
    eye = Eye(values["eye"])
    order = EyeOrder(
        eye=eye,
        prescription=Prescription(**{name: values[name] for name in ("sphere_d", "cylinder_d", "axis_deg")}),
        monocular_pd_mm=values["monocular_pd_mm"],
        height_mm=values["height_mm"],
        lens=_lens_order(values),
    )
    name = values["outline"]
    shape = OutlineShape() if name == SUPERELLIPSE else OutlineShape.named(name)
    frame = Frame(**{key: values[key] for key in ("a_mm", "b_mm", "dbl_mm")}, shape=shape)
    return Ticket(number="from the lens panel", frame=frame, **{eye.value: order})


def _lens_order(values: Values) -> LensOrder:
    given = "centre_thickness_mm" if values["thickness_at"] == CENTRE else "least_edge_mm"
    return LensOrder(
        material=material(values["material"]),
        front_curve_d=values["front_curve_d"],
        blank_diameter_mm=values["blank_diameter_mm"],
        supply=values["supply"],
        **{given: values["thickness_mm"]},
    )


def values_of(ticket: Ticket, *, shown: Sequence[str] = ()) -> tuple[Values, str]:
    """Return the values of the right eye, or of the left where there is no right one, and a remark.

    ticket: the job.
    shown: any of "coat", "blocking", "cut": what the panel has controls of its own for, so that the remark
        does not call it left out.

    Raises LabError for a prescription that is held, and for a frame that was traced.
    """
    if ticket.frame.traces is not None:
        raise LabError(
            "The frame of this ticket was traced, and this panel has no control for a trace: print its job "
            "sheet instead, or give an outline with A and B"
        )
    order = ticket.eyes[0]
    if order.prescription is None or order.holds:
        questions = " ".join(hold.question for hold in order.holds)
        raise LabError(f"The prescription of the {order.eye} eye is held: {questions}")
    values = {"eye": order.eye.value, **_prescription(order), **_lens(order.lens), **_frame(ticket.frame)}
    values["monocular_pd_mm"] = order.monocular_pd_mm
    values["height_mm"] = ticket.frame.b_mm / 2.0 if order.height_mm is None else order.height_mm
    return values, _remark(ticket, order, shown)


def _prescription(order: EyeOrder) -> Values:
    rx = order.prescription
    values: Values = {"sphere_d": rx.sphere_d, "cylinder_d": rx.cylinder_d}
    return values if rx.axis_deg is None else values | {"axis_deg": rx.axis_deg}


def _lens(lens: LensOrder) -> Values:
    at_centre = lens.centre_thickness_mm is not None
    return {
        "material": lens.material.name,
        "front_curve_d": lens.front_surface_d,
        "thickness_at": CENTRE if at_centre else LEAST_EDGE,
        "thickness_mm": lens.centre_thickness_mm if at_centre else lens.least_edge_mm,
        "supply": lens.supply,
        "blank_diameter_mm": lens.blank_diameter_mm,
    }


def _frame(frame: Frame) -> Values:
    return {"outline": frame.shape.words, "a_mm": frame.a_mm, "b_mm": frame.b_mm, "dbl_mm": frame.dbl_mm}


def _remark(ticket: Ticket, order: EyeOrder, shown: Sequence[str]) -> str:
    known = [f"the {thing}" for thing in shown]
    left_out = [words for there, words in _absent(ticket, order) if there and words not in known]
    which = f"This is the {order.eye} eye."
    return f"{which} Left out here: {', '.join(left_out)}." if left_out else which


def _absent(ticket: Ticket, order: EyeOrder) -> list[tuple[bool, str]]:
    """What a ticket may hold and the panel does not show, and whether this one holds it."""
    return [
        (len(ticket.eyes) == 2, "the left eye"),
        (bool(order.prism), "the prescribed prism"),
        (bool(order.prescription.addition_d), "the addition"),
        (order.lens.coat != "coated", "the coat"),
        (order.lens.multifocal is not None, "the segment or progressive"),
        (ticket.frame.kind is not None, "the kind of frame"),
        (ticket.wearer != Wearer(), "the vertex distances"),
        (ticket.blocking != Blocking(), "the blocking"),
        (ticket.cut != Cut(), "the cut"),
        (bool(ticket.note), "the note"),
    ]
