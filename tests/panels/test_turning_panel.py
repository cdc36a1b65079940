"""The panel of a lens that turns on its block: its ranges, its numbers, its sentence, and what it keeps."""

from dataclasses import replace

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.slipping import MOST_TURNS
from lablib.errors import LabError
from lablib.job.spoiled import spoiled
from lablib.panels.panel import NOT_KNOWN
from lablib.panels.turning_panel import TurningPanel

# What makes another of the practice lenses of the panel's own.
OILY_CRIB = {"crib_mm": 3.0, "skin": "oily", "wheel": "used"}
GLAZED = {"wheel": "glazed"}
AT_THE_END = ("Turns run", "Rim short by", "Heat of sliding", "Face warmer by", "Sign")


@pytest.fixture(scope="module")
def panel() -> TurningPanel:
    return TurningPanel()


@pytest.mark.parametrize(
    ("changed", "name"), [({}, "line-off"), (OILY_CRIB, "bumped"), (GLAZED, "burnt"), ({"film": "yes"}, "")]
)
def test_the_lens_is_a_practice_lens_and_becomes_the_others(panel, changed, name):
    ran = panel.at(**changed).ran
    expected = spoiled(name or "line-off", "" if name else "film").simulation

    assert ran.result.margin == pytest.approx(expected.result.margin)
    assert ran.slip_deg == pytest.approx(expected.slip_deg)
    assert ran.signs == expected.signs


@pytest.mark.parametrize("start", [{}, {"turn": 4, "marks": "progressive", **OILY_CRIB}])
def test_every_control_to_its_stops_and_back(start):
    trouble = [words for words in move_every_control(TurningPanel(**start)) if words]
    assert trouble == []


def test_the_turns_reach_from_before_the_first_to_where_the_machine_gives_up():
    spec = TurningPanel.ranges["turn"]
    assert (spec.low, spec.high, spec.value) == (0, MOST_TURNS, 0)


def test_clamp_force_is_no_control():
    assert not any("clamp" in name or "force" in name for name in TurningPanel.ranges)


def test_turn_and_marks_alone_simulate_nothing_again(panel):
    ran = panel.at().ran
    assert panel.at(turn=3, marks="flat top 28").ran is ran
    assert panel.at(turn=60).ran is ran
    assert panel.at(film="yes").ran is not ran


def test_the_marks_are_those_chosen_and_lie_about_the_optical_centre(panel):
    for words, design in (("three dots", "single vision"), ("flat top 28", "flat top")):
        assert panel.at(marks=words).lens.marks.design == design
    dots = panel.at().lens.marks.dots
    assert dots[1] == pytest.approx(2.0 + 0j), "two millimetres inwards of the chuck axis"


def test_the_end_is_not_told_before_the_cut_is_over():
    panel = TurningPanel()
    shown = rows(panel)
    assert {shown[name] for name in AT_THE_END} == {f"{NOT_KNOWN} once it is cut"}
    assert (shown["Turned so far"], shown["Sliding begins"]) == ("0.0 degrees", "not so far")
    assert said(panel) == "Before the first turn the lens's line lies along the block's."

    shown = rows(TurningPanel(turn=60))
    assert (shown["Sign"], shown["Turns run"], shown["Rim short by"]) == ("line off level", "11", "0.00 mm")
    assert (shown["Heat of sliding"], shown["Face warmer by"]) == ("0.18 J", "0.6 K")


def test_a_turn_tells_how_far_the_lens_has_turned_by_then():
    panel = TurningPanel(turn=2)
    data, shown = panel.at(), rows(panel)

    assert shown["Turned so far"] == f"{data.turned_deg:.1f} degrees"
    assert shown["In this turn"] == f"{data.in_turn_deg:.1f} degrees"
    assert shown["Sliding begins"] == "turn 1 nasal"
    assert said(panel).startswith(f"After turn 2 the lens has turned {data.turned_deg:.1f} degrees")


def test_a_turn_is_told_as_the_drawing_writes_it():
    assert rows(TurningPanel(turn=60, **GLAZED))["Turned so far"] == "1404 degrees"
    assert rows(TurningPanel(turn=60))["Turned so far"] == "14 degrees"
    assert "has turned 14 degrees on its block, 0.0 of them in this turn" in said(TurningPanel(turn=60))


def test_the_sentence_ends_with_all_signs():
    assert said(TurningPanel(turn=60, **OILY_CRIB)).endswith("bumped outline and line off level.")
    assert "burnt patch" in said(TurningPanel(turn=60, **GLAZED))


def test_a_lens_that_holds_says_so():
    panel = TurningPanel(turn=60, film="yes")
    assert said(panel) == (
        "After turn 11 the lens has not turned on its block. The cut is over: it held all through and shows "
        "no sign."
    )
    assert (rows(panel)["Sliding begins"], rows(panel)["Sign"]) == ("nowhere", "none")


def test_a_lens_that_spins_on_is_said_never_to_finish(panel):
    shown = panel.at(turn=60, **GLAZED)
    spins = replace(shown, ran=replace(shown.ran, never_finishes=True))

    assert ("Turns run", "never ends", "") in panel.numbers(spins)
    assert " It never finishes: the lens spins; " in panel.sentence(spins)


@pytest.mark.parametrize(
    "better",
    [{"film": "yes"}, {"crib_mm": 2.0}, {"bite_mm": 1.0}, {"back_tape": "yes"}, {"blank_diameter_mm": 64.0}],
)
def test_a_remedy_ends_the_slip(panel, better):
    assert panel.at(**better).ran.result.margin > 1.0
    assert panel.at(**better).ran.slip_deg == 0.0


def test_a_value_between_two_steps_is_refused(panel):
    with pytest.raises(LabError, match=r"Turn shown 0\.5 lies between two steps here"):
        panel.at(turn=0.5)
