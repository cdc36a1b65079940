"""Cuts for tests of the picture of a cut turn by turn; all invented."""

from lablib.panels.cutting_panel import CutSheet, CuttingPanel

# Each strains the picture in its own way.
EXTREMES = {
    "first turn": {},
    "last turn": {"turn": 40},
    "cribbed": {"crib_mm": 3.0, "turn": 5},
    "cribbed, after it": {"crib_mm": 2.0, "turn": 9},
    "many thin turns": {"bite_mm": 0.75, "blank_diameter_mm": 85.0, "crib_mm": 3.0, "turn": 33},
    "everything against it": {
        "wheel": "glazed",
        "blank_diameter_mm": 85.0,
        "bite_mm": 3.0,
        "wheel_speed_rpm": 2000.0,
        "eye": "left",
        "turn": 2,
    },
    "plus": {"sphere_d": 5.0, "front_curve_d": 8.0, "thickness_mm": 6.0, "turn": 7},
    "glass": {"material": "crown-glass-1.523", "bite_mm": 0.75, "sphere_d": -4.0, "turn": 18},
    "wheel with the lens": {"wheel_sense": "with", "lens_speed_rpm": 15.0, "turn": 10},
}
PANEL = CuttingPanel()


def view(**values: float | str) -> CutSheet:
    """Return the panel's own start, single values replaced."""
    return PANEL.at(**values)
