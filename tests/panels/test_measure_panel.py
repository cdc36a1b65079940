"""The panel of the lens measure: its range, its numbers, its sentence."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.optics.limits import limit
from lablib.optics.material import materials
from lablib.optics.power import CYLINDER_LIMIT_D
from lablib.optics.practice import usual
from lablib.panels.measure_panel import MeasurePanel


def test_ranges_are_those_the_lesson_speaks_of_and_lie_inside_what_surfaces_can_be():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in MeasurePanel.ranges.items()
        if hasattr(spec, "step")
    }

    assert got == {
        "first_d": (-10, 10, 0.25, 6),
        "second_d": (-10, 10, 0.25, 6),
        "along_deg": (1, 180, 1, 180),
        "lean_deg": (-30, 30, 1, 0),
    }
    low, high = limit("front_curve_d")
    assert low <= -10 < 10 <= high
    assert got["second_d"][1] - got["first_d"][0] <= CYLINDER_LIMIT_D
    assert MeasurePanel.ranges["material"].options == tuple(materials())


@pytest.mark.parametrize(
    "start",
    [
        {},
        {"second_d": 7.0, "along_deg": 45, "lean_deg": 10},
        {"first_d": -10.0, "second_d": 10.0, "material": "hard-resin-1.50"},
    ],
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(MeasurePanel(**start))) == {None}


# F 0.530 / (n - 1): +6.00 in index 1.586 reads 5.43 on a dial engraved for 1.530.
def test_the_numbers_of_a_sphere():
    assert rows(MeasurePanel()) == {
        "Dial shows": "+5.43 D",
        "Power from the dial": "+6.00 D",
        "Power on the pins": "+6.00 D",
        "Index of the lens": "1.586",
        "Square, on 180": "+5.43 D",
        "Square, on 90": "+5.43 D",
        "These two differ by": "0.00 D",
    }


def test_a_surface_of_two_meridians_reads_between_them_when_the_pins_are_turned():
    shown = [
        float(rows(MeasurePanel(second_d=8.0, along_deg=along))["Dial shows"].split()[0])
        for along in (180, 150, 120, 90)
    ]
    assert shown == sorted(shown)
    assert shown[0] == pytest.approx(5.43)
    assert shown[-1] == pytest.approx(8.0 * 0.53 / 0.586, abs=0.005)


def test_leaning_reads_too_steep_to_either_side():
    square = MeasurePanel().at().reading_d
    for lean in (10, 20, 30):
        left, right = (MeasurePanel(lean_deg=sign * lean).at().reading_d for sign in (-1, 1))
        assert left == pytest.approx(right)
        assert left > square
        square = left


@pytest.mark.parametrize(
    ("start", "words"),
    [
        ({}, "Square on 180, the dial shows +5.43 D; in index 1.586 that is +6.00 D."),
        (
            {"second_d": 6.75, "along_deg": 90},
            "Square on 90, the dial shows +6.10 D; in index 1.586 that is +6.75 D; 180 and 90 differ by "
            "0.68 D.",
        ),
        (
            {"lean_deg": -20},
            "Leaning 20 degrees on 180, the dial shows +5.77 D; held square it shows +5.43 D.",
        ),
    ],
)
def test_the_sentence(start, words):
    assert said(MeasurePanel(**start)) == words
    assert len(words.split()) < 40


def test_the_note_says_what_the_computation_takes():
    assert usual("pin_distance") == 10.0
    assert "10 mm" in MeasurePanel.note
    assert "1.530" in MeasurePanel.note
