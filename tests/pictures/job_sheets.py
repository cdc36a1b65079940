"""Jobs for tests of the job picture; all invented."""

from lablib.job.eye_sheet import EyeSheet, work_eye
from lablib.panels.job_panel import JobPanel
from lablib.panels.job_ticket import ticket_for

# Each can be cut, and each strains the picture in its own way.
EXTREMES = {
    "default": {},
    "left eye, cribbed, with a film": {"eye": "left", "crib_mm": 4.0, "film": "yes"},
    "cribbed close": {"crib_mm": 2.0, "skin": "oily", "wheel": "used"},
    "crib allowance beyond the blank": {"crib_mm": 24.0, "blank_diameter_mm": 60.0},
    "everything against it": {
        "skin": "oily",
        "wheel": "glazed",
        "block": "half-eye",
        "blank_diameter_mm": 85.0,
        "bite_mm": 3.0,
        "sphere_d": -6.0,
        "cylinder_d": -3.0,
        "axis_deg": 30,
        "b_mm": 50.0,
        "height_mm": 30.0,
        "dbl_mm": 24.0,
        "monocular_pd_mm": 28.0,
    },
    "everything for it": {
        "sphere_d": -1.0,
        "material": "hard-resin-1.50",
        "front_curve_d": 6.0,
        "thickness_mm": 2.0,
        "blank_diameter_mm": 58.0,
        "coat": "uncoated",
        "bite_mm": 0.75,
    },
    "glass": {
        "material": "crown-glass-1.523",
        "bite_mm": 0.75,
        "sphere_d": -10.0,
        "eye": "left",
        "blank_diameter_mm": 80.0,
    },
    "knife edge": {
        "sphere_d": 8.0,
        "front_curve_d": 10.0,
        "thickness_at": "thinnest edge",
        "thickness_mm": 0.8,
        "film": "yes",
    },
    "blank too small": {"blank_diameter_mm": 55.0, "crib_mm": 10.0},
    "block stands out": {"b_mm": 24.0, "height_mm": 10.0, "eye": "left", "crib_mm": 3.0},
    "far off the centre": {
        "blank_diameter_mm": 85.0,
        "a_mm": 50.0,
        "dbl_mm": 24.0,
        "monocular_pd_mm": 30.0,
        "b_mm": 50.0,
        "height_mm": 34.0,
    },
    "thick all round": {"thickness_mm": 10.0, "blank_diameter_mm": 85.0, "wheel": "glazed"},
    "rectangle": {"outline": "rectangle", "a_mm": 56.0, "b_mm": 30.0, "height_mm": 15.0, "coat": "coated"},
    "round on centre": {
        "outline": "round",
        "a_mm": 40.0,
        "b_mm": 40.0,
        "height_mm": 20.0,
        "monocular_pd_mm": 29.0,
    },
}


def job(**values: float | str) -> EyeSheet:
    """Return the job of the panel's own start, single values replaced."""
    start = {name: spec.value for name, spec in JobPanel.ranges.items()}
    ticket = ticket_for(start | values)
    return work_eye(ticket, ticket.eyes[0])
