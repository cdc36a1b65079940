"""Tickets for tests; all jobs invented."""

from pathlib import Path

import tomli_w

from lablib.job.ticket import Ticket
from lablib.job.ticket_file import ticket_from

FRAME = {"a_mm": 50.0, "b_mm": 32.0, "dbl_mm": 18.0, "outline": {"family": "superellipse", "exponent": 2.6}}
LENS = {
    "material": "hard-resin-1.50",
    "front_curve_d": 4.0,
    "centre_thickness_mm": 2.0,
    "blank_diameter_mm": 70.0,
}


def table(**parts: object) -> dict:
    """Return a good ticket as a table, single parts replaced; None leaves a part out."""
    good = {
        "format": 1,
        "number": "T-1",
        "frame": FRAME,
        "right": {"sphere_d": -2.0, "monocular_pd_mm": 32.0},
        "left": {"sphere_d": -2.0, "monocular_pd_mm": 32.0},
        "lens": LENS,
    }
    return {key: value for key, value in (good | parts).items() if value is not None}


def ticket(**parts: object) -> Ticket:
    """Return the ticket of `table`."""
    return ticket_from(table(**parts))


def ticket_path(folder: Path, **parts: object) -> Path:
    """Write the ticket of `table` into a folder and return its path."""
    path = folder / "ticket.toml"
    path.write_text(tomli_w.dumps(table(**parts)), encoding="utf-8")
    return path
