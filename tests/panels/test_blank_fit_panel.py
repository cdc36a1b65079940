"""The panel of blank and outline: which blank covers, by how much, and what a shift would cost."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.panels.blank_fit_panel import BlankFitPanel

# Invented jobs: one that every 65 mm blank covers, and a raised pair in a pilot's frame.
EASY = {
    "a_mm": 50.0,
    "b_mm": 34.0,
    "dbl_mm": 18.0,
    "outline": "superellipse 2.6",
    "right_pd_mm": 30.0,
    "left_pd_mm": 33.0,
    "right_height_mm": 17.0,
    "left_height_mm": 17.0,
    "blank_mm": 65.0,
    "sphere_d": -1.25,
}
RAISED = {"outline": "pilot", "right_height_mm": 27.0, "left_height_mm": 25.0, "blank_mm": 72.0}


def test_controls_have_the_ranges_the_lessons_speak_of():
    got = {
        name: (spec.low, spec.high, spec.step, spec.value)
        for name, spec in BlankFitPanel.ranges.items()
        if name != "outline"
    }

    assert got == {
        "a_mm": (40, 62, 0.5, 58),
        "b_mm": (24, 50, 0.5, 44),
        "dbl_mm": (14, 24, 0.5, 16),
        "right_pd_mm": (26, 38, 0.5, 29),
        "left_pd_mm": (26, 38, 0.5, 29),
        "right_height_mm": (8, 40, 0.5, 22),
        "left_height_mm": (8, 40, 0.5, 22),
        "blank_mm": (55, 85, 1, 70),
        "sphere_d": (-8, 8, 0.25, -3),
    }
    assert BlankFitPanel.ranges["outline"].options == (
        "superellipse 2.6",
        "superellipse 3",
        "round",
        "rectangle",
        "panto",
        "pilot",
    )


@pytest.mark.parametrize("start", [{}, EASY, RAISED], ids=["start", "easy", "raised"])
def test_every_control_to_its_stops_and_back(start):
    trouble = {words for words in move_every_control(BlankFitPanel(**start)) if words}

    assert all("height_mm" in words and "inside B" in words for words in trouble)


# A 58, B 44, DBL 16, exponent 3.0, 29 mm, -3.00, 70 mm: the lens needs 76.9; 3.6 mm of shift to suit it all
# put in 1.07 each, 2.1 base in together.
def test_it_starts_with_a_pair_that_refuses():
    panel = BlankFitPanel()
    shown = rows(panel)

    assert shown["Boxed centres apart"] == "74.0 mm"
    assert shown["Right, in or out"] == shown["Left, in or out"] == "8.0 mm in"
    assert (shown["Effective diameter"], shown["Usable blank"]) == ("59.7 mm", "68.0 mm")
    assert shown["Right, least blank"] == "76.9 mm"
    assert shown["Right, by rule"] == "77.7 mm, 0.9 over"
    assert shown["Right, blank"] == "6.9 mm too small"
    assert shown["Right, shift"] == "3.6 out mm"
    assert shown["Prism of shifts"] == "2.14 base in"
    assert said(panel).startswith(
        "Right lens: 8.0 in from the boxed centre; it needs 76.9 mm, and the 70 mm blank leaves 3.4 mm "
        "uncovered."
    )
    assert panel.compute(panel.values).cost.right_in_prism_d == pytest.approx(1.07, abs=0.005)


def test_an_easy_pair_needs_no_shift():
    panel = BlankFitPanel(**EASY)
    shown = rows(panel)

    assert (shown["Right, least blank"], shown["Left, least blank"]) == ("60.1 mm", "54.2 mm")
    assert shown["Right, blank"] == "4.9 mm to spare"
    assert shown["Left, by rule"] == "54.2 mm, the same"
    assert shown["Right, shift"] == shown["Prism of shifts"] == "none"
    assert said(panel).endswith("it needs 54.2 mm, and the 65 mm blank covers.")


def test_the_rule_knows_no_height():
    panel = BlankFitPanel(**EASY)
    panel.handles["right_height_mm"].slider.value = 27.0

    assert rows(panel)["Right, up or down"] == "10.0 mm up"
    assert rows(panel)["Right, by rule"].endswith("under")


def test_a_blank_smaller_than_the_outline_is_not_to_be_helped():
    shown = rows(BlankFitPanel(blank_mm=58.0))

    assert shown["Right, shift"] == "– no shift would do"
    assert shown["Prism of shifts"] == "–"


def test_unequal_shifts_leave_something_up_and_down():
    got = rows(BlankFitPanel(right_height_mm=27.0, left_height_mm=22.0))["Prism of shifts"]

    assert "base in and " in got
    assert got.endswith("up or down")


def test_a_pupil_above_the_rim_is_refused_in_words():
    panel = BlankFitPanel(b_mm=24.0, right_height_mm=12.0, left_height_mm=12.0)
    panel.handles["left_height_mm"].slider.value = 30.0

    assert "height_mm 30 is out of range: give from 0 to 24" in str(panel.trouble)


def test_the_panel_says_that_a_centre_is_never_shifted():
    assert "never to be made" in BlankFitPanel.note
    assert "shapes of our own" in BlankFitPanel.note


def test_the_sentence_is_short_enough():
    assert len(said(BlankFitPanel(**RAISED)).split()) <= 46
