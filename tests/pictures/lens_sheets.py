"""Lenses for tests of the lens picture; all invented."""

from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.panels.lens_panel import LensPanel
from lablib.panels.lens_ticket import ticket_for

# Each is possible, and each strains the picture in its own way.
EXTREMES = {
    "default": {},
    "left eye": {"eye": "left"},
    "plus, knife edge": {
        "sphere_d": 8.0,
        "front_curve_d": 10.0,
        "thickness_at": "thinnest edge",
        "thickness_mm": 0.8,
    },
    "strong minus on a flat front": {"sphere_d": -12.0, "front_curve_d": 0.0, "a_mm": 44.0, "b_mm": 30.0},
    "oblique axis": {"sphere_d": -6.0, "cylinder_d": 4.0, "axis_deg": 45, "outline": "pilot", "eye": "left"},
    "raised centre": {"b_mm": 50.0, "height_mm": 40.0, "cylinder_d": -2.0, "axis_deg": 120},
    "lowered centre": {"height_mm": 8.0},
    "thick all round": {"thickness_mm": 10.0, "a_mm": 62.0, "b_mm": 50.0},
    "blank too small": {"blank_diameter_mm": 50.0, "a_mm": 62.0, "monocular_pd_mm": 26.0, "dbl_mm": 24.0},
    "far off the centre": {
        "blank_diameter_mm": 85.0,
        "a_mm": 62.0,
        "dbl_mm": 24.0,
        "monocular_pd_mm": 26.0,
        "b_mm": 50.0,
        "height_mm": 38.0,
    },
    "no power, no corners": {
        "sphere_d": 0.0,
        "outline": "round",
        "a_mm": 40.0,
        "b_mm": 40.0,
        "height_mm": 20.0,
        "monocular_pd_mm": 29.0,
    },
    "smallest frame, decentred out": {
        "a_mm": 40.0,
        "b_mm": 24.0,
        "dbl_mm": 14.0,
        "monocular_pd_mm": 38.0,
        "height_mm": 12.0,
    },
    "rectangle, square": {"outline": "rectangle", "a_mm": 50.0, "b_mm": 50.0, "height_mm": 25.0},
}


def lens(**values: float | str) -> EyeSheet:
    """Return the lens of the panel's own start, single values replaced."""
    start = {name: spec.value for name, spec in LensPanel.ranges.items()}
    ticket = ticket_for(start | values)
    return work_eye(ticket, ticket.eyes[0])
