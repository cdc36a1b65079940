"""The panel of the lever arms: its ranges, its numbers, its sentence."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.parameter import parameters
from lablib.panels.cutting_arm_panel import ArmPanel


def test_ranges():
    got = {name: (spec.low, spec.high, spec.step, spec.value) for name, spec in ArmPanel.ranges.items()}
    wheel = parameters()["wheel_diameter_mm"]

    assert got == {
        "half_width_mm": (20.0, 30.0, 0.5, 25.0),
        "half_height_mm": (12.0, 30.0, 0.5, 18.0),
        "direction_deg": (0, 360, 5, 45),
        "bite_mm": (0.0, 3.0, 0.25, 0.0),
        "wheel_mm": (wheel.low, wheel.high, 5.0, wheel.default),
    }


@pytest.mark.parametrize("start", [{}, {"bite_mm": 3.0, "half_height_mm": 25.0, "direction_deg": 200}])
def test_every_control_to_its_stops_and_back(start):
    assert {words for words in move_every_control(ArmPanel(**start)) if words} == set()


# Reference of the slip model: ellipse 25 x 18 at psi 45, wheel 50 mm: h 21.783, h' -6.909; with a bite
# of 2 mm a_T 22.111, a_N 0.696 and beta 6.051 degrees.
def test_the_ellipse_of_the_slip_model():
    bare, bitten = ArmPanel().at(), ArmPanel().at(bite_mm=2.0)

    assert bare.support_mm == pytest.approx(21.783, abs=0.001)
    assert bare.slope_mm == pytest.approx(-6.909, abs=0.001)
    assert bare.distance_mm == pytest.approx(22.852, abs=0.001)
    assert bitten.bite_deg == pytest.approx(6.051, abs=0.001)
    assert bitten.arm_tangential_mm == pytest.approx(22.111, abs=0.001)
    assert bitten.arm_normal_mm == pytest.approx(0.696, abs=0.001)


# Reference of the slip model: round 35 on centre, bite 2 mm: 6.933 degrees, 34.379, 10.260.
@pytest.mark.parametrize("direction", [0, 75, 360])
def test_a_round_lens_has_the_same_arms_all_round(direction):
    shown = ArmPanel().at(half_width_mm=30.0, half_height_mm=30.0, direction_deg=direction, bite_mm=2.0)

    assert shown.around_tangential_mm == pytest.approx(shown.arm_tangential_mm, abs=1e-6)
    assert shown.around_normal_mm == pytest.approx(shown.arm_normal_mm, abs=1e-6)


def test_at_the_ends_of_the_oval_arm_and_distance_are_one():
    shown = rows(ArmPanel(direction_deg=90))

    assert shown["Distance to contact"] == shown["Tangential arm"] == "18.00 mm"
    assert shown["Normal arm"] == "0.00 mm"
    assert said(ArmPanel(direction_deg=90)).endswith("the normal force passes through the chuck axis.")


def test_the_sentence_says_which_way_the_normal_force_turns():
    assert "arm of 6.9 mm and turns it back" in said(ArmPanel())
    assert "arm of 16.1 mm and turns it the same way" in said(ArmPanel(direction_deg=135, bite_mm=3.0))
