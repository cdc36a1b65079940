"""The panel of near distances: where eyes look through their lenses when they read."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.panels.near_sight_panel import NearSightPanel


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {name: (spec.low, spec.high, spec.step, spec.value) for name, spec in NearSightPanel.ranges.items()}

    assert got == {
        "right_pd_mm": (26, 38, 0.5, 32),
        "left_pd_mm": (26, 38, 0.5, 32),
        "working_distance_mm": (250, 700, 10, 400),
        "centre_of_rotation_mm": (22, 34, 1, 27),
        "power_d": (-10, 10, 0.25, 0),
    }


@pytest.mark.parametrize("start", [{}, {"right_pd_mm": 26.0, "left_pd_mm": 38.0, "power_d": 10.0}])
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(NearSightPanel(**start))) == {None}


# Ellerbrock, from memory: 32 mm, 400 mm, 27 mm gives 2.02; with -6.00 D 1.76; with +6.00 D 2.39 mm.
@pytest.mark.parametrize(("power", "inset"), [(0.0, "2.02"), (-6.0, "1.76"), (6.0, "2.39")])
def test_the_inset_goes_by_distance_and_power(power, inset):
    shown = rows(NearSightPanel(power_d=power))

    assert shown["Right, near inset"] == shown["Left, near inset"] == f"{inset} mm"


def test_each_eye_has_its_own_inset():
    panel = NearSightPanel(right_pd_mm=30.0, left_pd_mm=34.0)
    shown = rows(panel)

    assert (shown["Right, near distance"], shown["Left, near distance"]) == ("28.1 mm", "31.9 mm")
    assert (shown["Both, far distance"], shown["Both, near distance"]) == ("64.0 mm", "60.0 mm")
    assert said(panel) == (
        "Reading at 400 mm, the eyes look through nearer the nose: the right 28.1 mm and the left 31.9 mm "
        "from the middle of the bridge, 60.0 mm near for 64.0 mm far."
    )


def test_the_panel_says_that_measuring_comes_first():
    assert "does not replace the measured near distance" in NearSightPanel.note
