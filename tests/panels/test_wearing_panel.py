"""The panel of a worn lens: its ranges, its numbers, its sentence."""

import numpy as np
import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.panels.panel import NOT_KNOWN
from lablib.panels.wearing_panel import WearingPanel


def test_ranges():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in WearingPanel.ranges.items()
        if name not in ("material", "made")
    }

    assert got == {
        "power_d": (-10, 10, 0.25, -6),
        "front_d": (0, 16, 0.25, 3),
        "p_value": (-1, 3, 0.1, 1),
        "tilt_deg": (-5, 20, 1, 10),
        "drop_mm": (0, 8, 0.5, 0),
        "vertex_mm": (8, 20, 0.5, 12),
        "gaze_deg": (-30, 30, 1, 0),
    }


@pytest.mark.parametrize(
    "start", [{}, {"power_d": 6.0, "front_d": 9.0, "made": "compensated", "drop_mm": 5.0}, {"power_d": 0.0}]
)
def test_every_control_to_its_stops_and_back(start):
    trouble = {words for words in move_every_control(WearingPanel(**start)) if words}
    assert all(":" in words for words in trouble), trouble


# The curriculum's example: -6.00 tilted by 10 degrees does -6.06 -0.19 x 180, and -5.94 is ordered for it.
def test_what_tilt_does_and_what_makes_up_for_it():
    shown = rows(WearingPanel())

    assert shown["New sphere"] == shown["Ahead, traced"] == "-6.06 -0.19 x 180"
    assert shown["Compensated"] == "-5.94 +0.18 x 180"
    assert shown["Drop"] == "4.8 mm, by rule 5.0"


def test_the_two_published_forms_differ_in_a_strong_lens():
    shown = rows(WearingPanel(power_d=10.0, front_d=12.0, tilt_deg=20.0))

    assert shown["New sphere"] == "+10.39 +1.38 x 180"
    assert shown["Original sphere"] == "+10.39 +1.32 x 180"


def test_a_compensated_lens_does_straight_ahead_what_was_prescribed():
    panel = WearingPanel(made="compensated")

    assert rows(panel)["Ahead, traced"] == "-6.00 DS"
    assert said(panel).startswith("Looking straight ahead, the eye meets an error of 0.00 D along the turn")


def test_without_tilt_up_and_down_are_alike():
    data = WearingPanel(tilt_deg=0.0).at()

    np.testing.assert_allclose(data.tangential_d, data.tangential_d[::-1], atol=1e-9)
    assert data.tangential_now_d == pytest.approx(0.0, abs=1e-9)


def test_a_gaze_where_no_light_gets_through_has_no_figures():
    start = {"power_d": -10.0, "front_d": 16.0, "p_value": 3.0, "drop_mm": 8.0, "gaze_deg": 30.0}
    panel = WearingPanel(tilt_deg=-5.0, **start)

    assert rows(panel)["Tangential error"] == rows(panel)["Sagittal error"] == NOT_KNOWN
    assert said(panel) == (
        "Looking 30 degrees up, no light reaches the eye: the surfaces of this lens end before."
    )


def test_the_best_front_is_the_flatter_one_or_none():
    assert rows(WearingPanel())["Best front, thin lens"] == "+4.11 D"
    strong = WearingPanel(power_d=10.0, front_d=12.0)
    assert rows(strong)["Best front, thin lens"] == f"{NOT_KNOWN} none is a sphere"


def test_where_no_tilt_can_come_nothing_is_said_of_it():
    square = WearingPanel(move=("front_d",), tilt_deg=0.0)
    assert list(rows(square)) == ["Tangential error", "Sagittal error", "Best front, thin lens"]
    for tilted in (WearingPanel(move=("front_d",)), WearingPanel(move=("tilt_deg",), tilt_deg=0.0)):
        assert len(rows(tilted)) == 8


def test_the_prescriber_is_named():
    assert "prescriber" in WearingPanel.note
