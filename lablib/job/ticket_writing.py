"""A `Ticket` written as a ticket file, so that what a panel shows can be worked on the command line."""

from dataclasses import asdict

import tomli_w

from lablib.errors import LabError
from lablib.job.ticket import EyeOrder, LensOrder, Ticket
from lablib.job.ticket_file import FORMAT
from lablib.job.ticket_multifocal import multifocal_table
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.material import Material, materials


def ticket_text(ticket: Ticket) -> str:
    """Return a ticket as the text of a ticket file; reading it gives an equal ticket.

    ticket: the job. A prescription that is held cannot be written, since what stood there is not kept. Of a
        traced frame the file's name is written: the ticket belongs into the folder in which the trace lies.

    Raises LabError for a traced frame whose traces were read from no file.
    """
    table = {
        "format": FORMAT,
        "number": ticket.number,
        "note": ticket.note or None,
        "frame": _frame(ticket.frame),
        "wearer": asdict(ticket.wearer),
        **{order.eye.value: _eye(order) for order in ticket.eyes},
        "blocking": asdict(ticket.blocking),
        "cut": asdict(ticket.cut),
    }
    return tomli_w.dumps(_present(table))


def _present(table: dict) -> dict:
    """Leave out what is not given, and tables with nothing in them."""
    kept = {key: _present(value) if isinstance(value, dict) else value for key, value in table.items()}
    return {key: value for key, value in kept.items() if value is not None and value != {}}


def _frame(frame: Frame) -> dict:
    if frame.traces is not None:
        if not frame.traces.file:
            raise LabError(
                "the traces of this frame are in no file: write them to one, and read them from it"
            )
        named = {"trace": frame.traces.file, "dbl_mm": frame.dbl_mm, "kind": frame.kind}
        return named | {"rim_curve_d": frame.rim_curve_d}
    return {
        "a_mm": frame.a_mm,
        "b_mm": frame.b_mm,
        "dbl_mm": frame.dbl_mm,
        "outline": _outline(frame.shape),
        "kind": frame.kind,
        "rim_curve_d": frame.rim_curve_d,
    }


def _outline(shape: OutlineShape) -> dict:
    if shape == OutlineShape.superellipse(shape.upper_nasal):
        return {"family": shape.family, "exponent": shape.upper_nasal}
    return {"family": shape.family}


def _eye(order: EyeOrder) -> dict:
    rx = order.prescription
    return {
        "sphere_d": rx and rx.sphere_d,
        "cylinder_d": (rx and rx.cylinder_d) or None,
        "axis_deg": rx and rx.axis_deg,
        "addition_d": (rx and rx.addition_d) or None,
        "monocular_pd_mm": order.monocular_pd_mm,
        "height_mm": order.height_mm,
        "near_pd_mm": order.near_pd_mm,
        "segment_height_mm": order.segment_height_mm,
        "prism": [{"amount_prism_d": one.amount_prism_d, "base": one.base} for one in order.prism] or None,
        "lens": _lens(order.lens),
    }


def _lens(lens: LensOrder) -> dict:
    return {
        "design": lens.design,
        "material": _material(lens.material),
        "front_curve_d": lens.front_curve_d,
        "front_curve_measured_d": lens.front_curve_measured_d,
        "centre_thickness_mm": lens.centre_thickness_mm,
        "least_edge_mm": lens.least_edge_mm,
        "blank_diameter_mm": lens.blank_diameter_mm,
        "supply": lens.supply,
        "coat": lens.coat,
        **multifocal_table(lens.multifocal),
    }


def _material(made_of: Material) -> str | dict:
    if made_of.name in materials():
        return made_of.name
    return {
        "index": made_of.index,
        "density": made_of.density,
        "abbe": made_of.abbe,
        "cuts_like": made_of.cuts_like,
    }
