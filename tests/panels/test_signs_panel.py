"""The panel of four lenses side by side: which sign each shows, and what one change does to it."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.job.spoiled import changes, does_something, side_by_side, spoiled
from lablib.panels.signs_panel import SignsPanel


@pytest.fixture(scope="module")
def panel() -> SignsPanel:
    return SignsPanel()


def shown(panel: SignsPanel, change: str) -> list[str]:
    """The sign of each lens after a change."""
    return [lens.sign for lens in panel.at(change=change).lenses]


def test_every_control_to_its_stops_and_back():
    assert set(move_every_control(SignsPanel())) == {None}


def test_the_four_show_nothing_a_line_a_bump_and_a_patch(panel):
    assert shown(panel, "nothing") == ["none", "line off level", "bumped outline", "burnt patch"]


def test_what_is_shown_is_what_was_simulated(panel):
    for lens, name in zip(panel.at(change="film").lenses, side_by_side(), strict=True):
        ran = spoiled(name, "film").simulation
        assert (lens.margin, lens.signs) == (ran.result.margin, ran.signs)
        assert (lens.turned_deg, lens.rise_k) == (ran.slip_deg, ran.rise_k)
        assert lens.seen.short_mm == pytest.approx(ran.shortfall_mm)


@pytest.mark.parametrize("number", [2, 3, 4])
def test_each_spoiled_lens_has_a_change_that_cures_it_and_one_that_does_not(panel, number: int):
    after = {change: shown(panel, change)[number - 1] for change in panel.ranges["change"].options[2:]}

    assert "none" in after.values()
    assert set(after.values()) - {"none"}


def test_the_margins_fall_from_the_first_to_the_last(panel):
    margins = [lens.margin for lens in panel.at(change="nothing").lenses]

    assert margins == sorted(margins, reverse=True)
    assert margins[0] > 1.0 > margins[1]


def test_a_clean_lens_cures_the_oily_one_alone(panel):
    told = panel.at(change="clean lens")

    assert [lens.is_changed for lens in told.lenses] == [False, False, True, False]
    assert shown(panel, "clean lens") == ["none", "line off level", "none", "burnt patch"]
    assert panel.sentence(told) == (
        "With the lens wiped clean before blocking: lens 1 as it was, margin 2.74; lens 2 as it was, "
        "margin 0.93; lens 3 no sign, margin 1.33; lens 4 as it was, margin 0.37."
    )


def test_smaller_bites_bring_a_lens_that_slides_on_more_heat(panel):
    before, after = (panel.at(change=change).lenses[3] for change in ("nothing", "smaller bites"))

    assert after.margin > before.margin
    assert after.rise_k > before.rise_k


def test_only_changes_that_touch_one_of_the_four_are_offered_and_clamp_force_is_none(panel):
    offered = panel.ranges["change"].options[2:]

    assert [option.replace(" ", "-") for option in offered] == [
        change for change in changes() if any(does_something(name, change) for name in side_by_side())
    ]
    assert not any("clamp" in option for option in offered)


def test_numbers_and_sentence_of_the_lenses_as_they_were():
    panel = SignsPanel(change="nothing")

    assert rows(panel)["Lens 1, margin"] == "2.74 holds"
    assert rows(panel)["Lens 2, turned by"] == "14°"
    assert rows(panel)["Lens 3, short by"] == "0.61 mm"
    assert rows(panel)["Lens 4, warmed by"] == "30.4 K"
    assert said(panel).startswith("As they were cut: lens 1 no sign, margin 2.74; lens 2 line off level, ")
    assert said(panel).endswith("lens 4 burnt patch and bumped outline and line off level, margin 0.37.")


def test_before_the_cut_nothing_is_given_away():
    panel = SignsPanel()

    assert set(rows(panel).values()) == {"–"}
    assert said(panel).startswith(
        "Four lenses on their blocks, each line level: lens 1 thin lens, slick coat"
    )
    assert not any(sign in said(panel) for sign in ("line off", "bumped", "burnt", "margin"))
    for lens in panel.at().lenses:
        assert (lens.seen.line_deg, lens.seen.short_mm, lens.seen.patch_mm) == (0.0, 0.0, 0.0)
        assert abs(lens.seen.rim).min() > abs(lens.seen.ordered).min()
