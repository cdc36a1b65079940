"""The prism field panel: what can be set, what it says, and that every control stands at its stops."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.errors import LabError
from lablib.panels.prism_field_panel import PrismFieldPanel

TORIC = {"sphere_d": -4.0, "cylinder_d": -2.0, "axis_deg": 30, "up_mm": -10.0}


@pytest.fixture
def panel() -> PrismFieldPanel:
    return PrismFieldPanel()


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in PrismFieldPanel.ranges.items()
        if hasattr(spec, "step")
    }

    assert got == {
        "sphere_d": (-10, 10, 0.25, -3),
        "cylinder_d": (-4, 4, 0.25, 0),
        "axis_deg": (1, 180, 1, 180),
        "in_mm": (-12, 12, 0.5, 0),
        "up_mm": (-12, 12, 0.5, -8),
    }
    assert PrismFieldPanel.ranges["eye"].options == ("right", "left")


@pytest.mark.parametrize(
    "start",
    [{}, TORIC, {"eye": "left", "sphere_d": 10.0, "cylinder_d": 4.0, "in_mm": 12.0, "up_mm": 12.0}],
    ids=["sphere", "toric", "strongest"],
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(PrismFieldPanel(**start))) == {None}


# -3.00, 8 mm below: 2.4 base down. Computed by Prentice's rule.
def test_the_numbers_of_a_sphere(panel):
    assert rows(panel) == {
        "Part in or out": "0.00",
        "Part up or down": "2.40 base down",
        "As one prism": "2.40 prism dioptres",
        "Base, full circle": "270 degrees",
        "Base, half circle": "down at 90 degrees",
        "In letters": "2.40 BD",
        "Power along 180": "-3.00 D",
        "Cross term": "0.00 D",
        "Power along 90": "-3.00 D",
    }
    assert said(panel) == "The right eye looks 8 mm below the optical centre and meets 2.40 base down."


# Right -4.00 -2.00 x 030, 10 mm below: 5.50 down with 0.866 in. Matrix form (Long 1976), computed.
def test_the_numbers_of_a_toric_lens():
    panel = PrismFieldPanel(**TORIC)
    shown = rows(panel)

    assert (shown["Part in or out"], shown["Part up or down"]) == ("0.87 base in", "5.50 base down")
    assert (shown["As one prism"], shown["Base, full circle"]) == ("5.57 prism dioptres", "279 degrees")
    assert (shown["Base, half circle"], shown["In letters"]) == ("down at 99 degrees", "0.87 BI 5.50 BD")
    assert [shown[name] for name in ("Power along 180", "Cross term", "Power along 90")] == [
        "-4.50 D",
        "+0.87 D",
        "-5.50 D",
    ]
    assert said(panel) == (
        "The right eye looks 10 mm below the optical centre and meets 0.87 base in with 5.50 base down, as "
        "one prism 5.57 base at 279 degrees."
    )


def test_in_is_on_the_other_side_for_the_other_eye():
    right, left = (PrismFieldPanel(eye=eye, in_mm=4.0, up_mm=3.0) for eye in ("right", "left"))

    assert rows(right)["In letters"] == rows(left)["In letters"] == "1.20 BI 0.90 BU"
    assert rows(right)["Base, full circle"] == "37 degrees"
    assert rows(left)["Base, full circle"] == "143 degrees"
    assert said(left).startswith("The left eye looks 3 mm above and 4 mm in from the optical centre")


@pytest.mark.parametrize(
    ("start", "where"),
    [({"up_mm": 0.0}, "through"), ({"sphere_d": 0.0}, "8 mm below")],
    ids=["at the centre", "plano"],
)
def test_no_prism_has_no_base(start, where):
    panel = PrismFieldPanel(**start)
    shown = rows(panel)

    assert said(panel) == f"The right eye looks {where} the optical centre and meets no prism."
    assert shown["Base, full circle"] == shown["Base, half circle"] == shown["In letters"] == "–"
    assert shown["As one prism"] == "0.00 prism dioptres"


def test_the_longest_sentence_is_short_enough():
    panel = PrismFieldPanel(sphere_d=-10.0, cylinder_d=-4.0, axis_deg=30, in_mm=-12.0, up_mm=-11.5)

    assert len(said(panel).split()) < 40


def test_the_note_says_what_the_rule_leaves_out(panel):
    assert "By Prentice's rule" in panel.note


def test_a_panel_with_one_control_keeps_the_others_where_they_start():
    panel = PrismFieldPanel(move=("up_mm",))
    panel.handles["up_mm"].slider.value = 4.0

    assert panel.shown == ("up_mm",)
    assert panel.values == PrismFieldPanel().values | {"up_mm": 4.0}
    with pytest.raises(LabError, match=r"Above centre 13 mm is out of range here"):
        PrismFieldPanel(up_mm=13.0)
