"""The panel of the focimeter: its range, what it says, and that a lens can be found with it."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.optics.focimeter_reading import SharpLine, prescription_of_readings
from lablib.optics.practice import usual
from lablib.optics.prescription import Prescription
from lablib.panels.focimeter_panel import FocimeterPanel


def test_ranges_reach_every_lens_the_panel_can_hold():
    got = {name: (spec.low, spec.high, spec.step, spec.value) for name, spec in FocimeterPanel.ranges.items()}

    assert got == {
        "sphere_d": (-8, 8, 0.25, 2),
        "cylinder_d": (-4, 4, 0.25, -1.5),
        "axis_deg": (1, 180, 1, 20),
        "drum_d": (-12, 12, 0.125, 0),
        "target_deg": (1, 180, 1, 180),
    }
    assert got["sphere_d"][1] + got["cylinder_d"][1] <= got["drum_d"][1]
    assert got["drum_d"][2] == usual("drum_fine_step")


@pytest.mark.parametrize(
    "start",
    [{}, {"cylinder_d": 0.0}, {"sphere_d": -8.0, "cylinder_d": -4.0, "target_deg": 20, "drum_d": 12.0}],
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(FocimeterPanel(**start))) == {None}


@pytest.mark.parametrize(
    ("start", "shown", "words"),
    [
        (
            {"drum_d": 2.0, "target_deg": 20},
            {
                "Drum": "+2.00 D",
                "Three lines": "smeared along 20",
                "Single line": "sharp along 110",
                "Both": "unbroken",
            },
            "Drum at +2.00 D: the three lines along 20 are smeared, the single line along 110 is sharp; "
            "no stroke leans, nothing is broken.",
        ),
        (
            {},
            {
                "Drum": "0.00 D",
                "Three lines": "smeared along 180",
                "Single line": "smeared along 90",
                "Both": "broken",
            },
            "Drum at 0.00 D: the three lines along 180 are smeared, the single line along 90 is smeared; "
            "strokes lean: broken, off the axis.",
        ),
    ],
)
def test_what_it_says(start, shown, words):
    panel = FocimeterPanel(**start)
    assert rows(panel) == shown
    assert said(panel) == words
    assert len(words.split()) < 40


def test_the_lens_is_nowhere_told_where_its_sliders_are_hidden():
    panel = FocimeterPanel(move=("drum_d", "target_deg"), sphere_d=-1.75, cylinder_d=-1.25, axis_deg=65)
    told = " ".join([*rows(panel).values(), said(panel)])

    assert panel.shown == ("drum_d", "target_deg")
    for part in ("-1.75", "-1.25", "65"):
        assert part not in told


@pytest.mark.parametrize("lens", [(-1.75, -1.25, 65), (2.0, -1.5, 20), (3.5, -0.25, 180)])
def test_a_lens_is_found_as_at_the_bench(lens):
    """Turn the target until nothing is broken; then the most plus sharp reading, then the next."""
    sphere, cylinder, axis = lens
    panel = FocimeterPanel(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)
    panel.handles["target_deg"].slider.value = axis
    assert rows(panel)["Both"] == "unbroken"
    found = []
    for step in range(32, -33, -1):
        panel.handles["drum_d"].slider.value = step * 0.125
        shown = rows(panel)
        for line in ("Three lines", "Single line"):
            if shown[line].startswith("sharp"):
                found.append(SharpLine(drum_d=step * 0.125, line_deg=float(shown[line].split()[-1])))

    first, second = found
    assert prescription_of_readings(first, second) == Prescription(
        sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis
    )


def test_the_note_has_eyepiece_and_zero():
    assert "eyepiece" in FocimeterPanel.note
    assert "zero" in FocimeterPanel.note
