"""Practice lenses as pictures of questions, and how each was set up in words."""

from functools import cache

import numpy as np

from lablib.bench.geometry import angles_rad
from lablib.bench.signs import BURNT_PATCH
from lablib.inspection.marks import turned_to_deg
from lablib.job.eye_sheet import EyeSheet
from lablib.job.spoiled import spoiled
from lablib.job.ticket import Ticket
from lablib.study.question import Drawing

# Of 720 directions every tenth is drawn.
_EVERY = 10
_SKINS = {"clean": "wiped clean", "fingerprint": "a fingerprint on it", "oily": "oil on it"}
_COATS = {"uncoated": "no coat", "coated": "an ordinary coat", "slick": "a slick coat"}


@cache
def drawing_of(name: str) -> Drawing:
    """Return the picture of a practice lens after its cut, as it stands on its block.

    name: of `lablib.job.spoiled.spoiled_names`; its simulation is kept.

    Raises LabError with the names there are.
    """
    sheet = spoiled(name)
    ran = sheet.simulation
    finished, ordered = _row(ran.finished_mm), _row(ran.result.lens.outline_mm)
    return Drawing(
        name="spoiled-lens",
        values={
            "finished_x_mm": finished[0],
            "finished_y_mm": finished[1],
            "ordered_x_mm": ordered[0],
            "ordered_y_mm": ordered[1],
            "line_deg": turned_to_deg(round(ran.slip_deg)),
            "design": sheet.order.lens.design,
            "burnt": int(BURNT_PATCH in ran.signs),
            "block": sheet.ticket.blocking.block,
        },
    )


def _row(radius_mm: np.ndarray) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return an outline as two rows of places from the chuck axis [mm]."""
    radius, angle = radius_mm[::_EVERY], angles_rad(radius_mm.size)[::_EVERY]
    across, up = radius * np.cos(angle), radius * np.sin(angle)
    return tuple((np.round(across, 3) + 0.0).tolist()), tuple((np.round(up, 3) + 0.0).tolist())


def setup_sentences(sheet: EyeSheet) -> tuple[str, ...]:
    """Return how a lens was ordered and set up: what it is, the lens on its block, the cut.

    sheet: of a practice lens.
    """
    ordered, ticket = sheet.order.lens, sheet.ticket
    blocking = ticket.blocking
    film = "a film between pad and lens" if blocking.film else "no film"
    tape = "a tape on its back" if blocking.back_tape else "no tape on its back"
    return (
        f"{ordered.design.capitalize()}, {sheet.order.prescription}, {ordered.material.words}, "
        f"{_COATS[ordered.coat]}, from a {ordered.blank_diameter_mm:g} mm blank.",
        f"Lens: {_SKINS[blocking.skin]}; {pad_words(ticket)}, {film}, {blocking.block} block, {tape}.",
        f"Wheel: {ticket.cut.wheel}; {_bites(sheet)}; {_start(ticket)}.",
    )


def pad_words(ticket: Ticket) -> str:
    """Return the pad with its age.

    ticket: of a practice lens.
    """
    months = ticket.blocking.pad_age_months
    return f"pad of {months:g} months" if months else "new pad"


def _bites(sheet: EyeSheet) -> str:
    return f"bites of {sheet.cut.material.depth_per_turn_mm:g} mm a turn"


def _start(ticket: Ticket) -> str:
    crib = ticket.cut.crib_allowance_mm
    return "cut from the uncut blank" if crib is None else f"cribbed before to {crib:g} mm over the outline"
