"""The panel of the optical cross: what can be set, what it says, and every control at its stops."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.optics.power import CYLINDER_LIMIT_D, POWER_LIMIT_D
from lablib.panels.cross_panel import CrossPanel

PLUS_FORM = {"sphere_d": 0.5, "cylinder_d": 1.5, "axis_deg": 110}


@pytest.fixture
def panel() -> CrossPanel:
    return CrossPanel()


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in CrossPanel.ranges.items()
        if name != "cross"
    }

    assert got == {
        "sphere_d": (-10, 10, 0.25, 2),
        "cylinder_d": (-6, 6, 0.25, -1.5),
        "axis_deg": (1, 180, 1, 20),
        "meridian_deg": (1, 180, 1, 180),
    }
    assert CrossPanel.ranges["cross"].options == ("yes", "no")
    assert got["cylinder_d"][1] <= CYLINDER_LIMIT_D
    assert got["sphere_d"][1] + got["cylinder_d"][1] <= POWER_LIMIT_D


@pytest.mark.parametrize(
    "start",
    [{}, {"cylinder_d": 0.0}, {"sphere_d": -10.0, "cylinder_d": -6.0, "axis_deg": 180, "meridian_deg": 1}],
    ids=["start", "sphere", "strongest"],
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(CrossPanel(**start))) == {None}


# The trade's own example: +2.00 -1.50 x 020 is +0.50 +1.50 x 110, with +2.00 on 20. Common practice.
def test_the_numbers(panel):
    assert rows(panel) == {
        "Power on 180": "+1.82 D",
        "Minus form": "+2.00 -1.50 x 020",
        "Plus form": "+0.50 +1.50 x 110",
        "Cross, more plus": "+2.00 on 020",
        "Cross, less plus": "+0.50 on 110",
        "Spherical equivalent": "+1.250 D",
    }


# S + C sin2: -2.00 -3.00 x 030 has -2.75 along 180 and -4.25 along 90. Computed.
@pytest.mark.parametrize(("meridian", "power"), [(180, "-2.75 D"), (90, "-4.25 D")])
def test_a_power_off_the_cross(meridian, power):
    panel = CrossPanel(sphere_d=-2.0, cylinder_d=-3.0, axis_deg=30, meridian_deg=meridian)
    assert rows(panel)[f"Power on {meridian:03d}"] == power


@pytest.mark.parametrize(
    ("start", "words"),
    [
        ({}, "Along 180 the lens has +1.82 D: between +2.00 on 020 and +0.50 on 110."),
        (
            {"meridian_deg": 20},
            "Along 020 the lens has +2.00 D: its most plus power, on the axis of its minus form, "
            "+2.00 -1.50 x 020.",
        ),
        (
            {"meridian_deg": 110},
            "Along 110 the lens has +0.50 D: its least plus power, on the axis of its plus form, "
            "+0.50 +1.50 x 110.",
        ),
        (
            {"meridian_deg": 65},
            "Along 065 the lens has +1.25 D: halfway between +2.00 on 020 and +0.50 on 110, the spherical "
            "equivalent.",
        ),
        (
            {"meridian_deg": 155},
            "Along 155 the lens has +1.25 D: halfway between +2.00 on 020 and +0.50 on 110, the spherical "
            "equivalent.",
        ),
        ({"cylinder_d": 0.0}, "A sphere: it has +2.00 D along every meridian, and no axis."),
        ({"meridian_deg": 20, "cross": "no"}, "Along 020 the lens has +2.00 D."),
    ],
)
def test_the_sentence(start, words):
    assert said(CrossPanel(**start)) == words
    assert len(words.split()) < 40


@pytest.mark.parametrize(
    ("sphere", "cylinder", "middle"),
    [(1.0, -2.0, "0.000 D"), (-2.0, -0.75, "-2.375 D"), (3.0, 0.0, "+3.000 D")],
)
def test_an_equivalent_shows_its_eighth_and_nothing_has_no_sign(sphere, cylinder, middle):
    assert rows(CrossPanel(sphere_d=sphere, cylinder_d=cylinder))["Spherical equivalent"] == middle


def test_a_hidden_cross_leaves_the_one_reading():
    shown = rows(CrossPanel(cross="no", meridian_deg=110))

    assert shown.pop("Power on 110") == "+0.50 D"
    assert set(shown.values()) == {"–"}
    assert len(shown) == 5


def test_both_forms_of_a_lens_show_the_same_picture(panel):
    other = CrossPanel(**PLUS_FORM)

    assert other.shown_png == panel.shown_png
    assert (rows(other), said(other)) == (rows(panel), said(panel))
    assert CrossPanel(**(PLUS_FORM | {"axis_deg": 20})).shown_png != panel.shown_png


def test_the_note_says_how_axes_are_counted():
    assert "anticlockwise" in CrossPanel.note
    assert "180 is written, never 0" in CrossPanel.note
