"""The panel of a lens and its focus: its range, its numbers, its sentence."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.optics.power import POWER_LIMIT_D, VERTEX_LIMIT_MM
from lablib.panels.panel import NOT_KNOWN
from lablib.panels.vergence_panel import VergencePanel


def test_ranges_lie_inside_what_a_lens_can_be():
    got = {name: (spec.low, spec.high, spec.step, spec.value) for name, spec in VergencePanel.ranges.items()}

    assert got == {
        "power_d": (-20, 20, 0.25, -10),
        "tested_mm": (8, 20, 0.5, 12),
        "worn_mm": (0, 20, 0.5, 12),
    }
    assert got["power_d"][1] <= POWER_LIMIT_D
    assert got["worn_mm"][1] <= VERTEX_LIMIT_MM


@pytest.mark.parametrize(
    "start", [{}, {"power_d": 10.0, "worn_mm": 0.0}, {"power_d": 0.0}, {"power_d": 20.0, "tested_mm": 20.0}]
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(VergencePanel(**start))) == {None}


# C. W. Brooks, Understanding Lens Surfacing: -10.00 and +10.00 from 12 mm to the cornea; rule: d F2.
@pytest.mark.parametrize(
    ("power", "shown"),
    [
        (-10.0, ("-10.0 cm", "-8.93 D", "-11.2 cm", "+1.07 D", "-8.80 D", "+0.13 D")),
        (10.0, ("+10.0 cm", "+11.36 D", "+8.8 cm", "+1.36 D", "+11.20 D", "-0.16 D")),
    ],
)
def test_the_numbers(power, shown):
    names = (
        "Focal length, tested",
        "Power worn, exact",
        "Focal length, worn",
        "Change",
        "Power worn, by rule",
        "Rule less exact",
    )
    assert rows(VergencePanel(power_d=power, worn_mm=0.0)) == dict(zip(names, shown, strict=True))


@pytest.mark.parametrize(
    ("start", "words"),
    [
        (
            {"worn_mm": 0.0},
            "At 12 mm, -10.00 D has its focus 10.0 cm in front of the lens; on the cornea it takes -8.93 D "
            "to keep the focus there, by the rule of thumb -8.80 D.",
        ),
        (
            {"power_d": 4.0, "worn_mm": 10.0},
            "At 12 mm, +4.00 D has its focus 25.0 cm behind the lens; at 10 mm it takes +4.03 D to keep the "
            "focus there, by the rule of thumb +4.03 D.",
        ),
        (
            {},
            "At 12 mm, -10.00 D has its focus 10.0 cm in front of the lens; worn where it was tested, it "
            "stays as it is.",
        ),
        ({"power_d": 0.0}, "A lens of 0.00 D leaves the light parallel, wherever it is worn."),
    ],
)
def test_the_sentence(start, words):
    assert said(VergencePanel(**start)) == words
    assert len(words.split()) < 40


@pytest.mark.parametrize(
    ("power", "focal", "vergence", "words"),
    [
        (4.0, "+25.0 cm", "+4.00 D", "+4.00 D has its focus 25.0 cm behind the lens."),
        (-4.0, "-25.0 cm", "-4.00 D", "-4.00 D has its focus 25.0 cm in front of the lens."),
        (0.0, NOT_KNOWN, "0.00 D", "A lens of 0.00 D leaves the light parallel, wherever it is worn."),
    ],
)
def test_where_only_the_power_moves_nothing_is_said_of_another_distance(power, focal, vergence, words):
    panel = VergencePanel(move=("power_d",), power_d=power)
    assert rows(panel) == {"Focal length": focal, "Vergence behind the lens": vergence}
    assert said(panel) == words


@pytest.mark.parametrize("panel", [{"worn_mm": 0.0}, {"tested_mm": 14.0}])
def test_a_lens_that_was_set_elsewhere_shows_both_distances(panel):
    assert len(rows(VergencePanel(move=("power_d",), **panel))) == 6


def test_a_plano_lens_has_no_focal_length():
    shown = rows(VergencePanel(power_d=0.0, worn_mm=0.0))
    assert shown["Focal length, tested"] == shown["Focal length, worn"] == NOT_KNOWN
    assert shown["Power worn, exact"] == "0.00 D"


def test_the_prescriber_is_named():
    assert "prescriber" in VergencePanel.note
