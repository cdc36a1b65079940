"""The panel of a cut turn by turn: its ranges, its numbers, its sentence."""

import numpy as np
import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.parameter import parameters
from lablib.panels.cutting_panel import CuttingPanel
from lablib.panels.job_panel import JobPanel

PLUS = {"sphere_d": 5.0, "front_curve_d": 8.0, "thickness_mm": 6.0}


def test_the_lens_begins_as_in_the_job_panel():
    shared = set(CuttingPanel.ranges) & set(JobPanel.ranges)

    assert {"sphere_d", "crib_mm", "bite_mm", "wheel", "blank_diameter_mm", "coat"} <= shared
    assert all(CuttingPanel.ranges[name].value == JobPanel.ranges[name].value for name in shared)
    assert CuttingPanel().at().cut.margin == pytest.approx(JobPanel().at().cut.margin)


@pytest.mark.parametrize("name", ["wheel_speed_rpm", "lens_speed_rpm"])
def test_the_machine_goes_over_the_range_of_its_parameter(name):
    spec, row = CuttingPanel.ranges[name], parameters()[name]
    assert (spec.low, spec.high, spec.value, spec.unit) == (row.low, row.high, row.default, row.unit)


@pytest.mark.parametrize(
    "start", [{}, {"crib_mm": 3.0, "turn": 12, "eye": "left", "wheel_sense": "with"}, {**PLUS, "turn": 7}]
)
def test_every_control_to_its_stops_and_back(start):
    trouble = {words for words in move_every_control(CuttingPanel(**start)) if words}
    assert all(":" in words for words in trouble), trouble


def test_the_turns_are_those_of_the_cut_and_the_last_stands_for_later_ones():
    panel = CuttingPanel()
    first, last, beyond = panel.at(), panel.at(turn=10), panel.at(turn=40)

    assert len(first.bars) == len(first.cut.hold_nmm) == 10
    assert last.at == beyond.at == 9
    assert (first.kind, last.kind) == ("roughing", "finishing")
    assert first.worst == 0
    assert first.turns[0].summary.margin == pytest.approx(first.cut.margin)


def test_a_turn_has_the_least_margin_of_its_own_row():
    data = CuttingPanel().at(turn=6)
    ratio = data.cut.hold_nmm[5] / np.maximum(data.cut.cutting.torque_nmm[5], 1e-9)

    assert data.shown.margin == pytest.approx(ratio.min())
    assert data.shown.point == int(ratio.argmin())


def test_cribbing_comes_first_and_has_its_own_margin():
    data = CuttingPanel().at(crib_mm=2.0)
    kinds = [bar.kind for bar in data.bars]

    assert kinds == sorted(kinds, key=("cribbing", "roughing", "finishing").index)
    assert kinds.count("cribbing") == len(data.cut.crib.hold_nmm)
    assert min(turn.summary.margin for turn in data.turns[: kinds.count("cribbing")]) == pytest.approx(
        data.cut.crib.margin
    )
    shown = rows(CuttingPanel(crib_mm=2.0))
    assert (shown["Crib margin"], shown["Margin"]) == ("0.81", "2.39 of the cut")


def test_the_minus_lens_asks_most_in_its_first_turn_and_the_plus_lens_later():
    assert CuttingPanel().at().greatest == 0
    plus = CuttingPanel().at(**PLUS)
    assert plus.greatest == 6
    assert "It asks most in turn 7, 0.43 N m; the margin is least in turn 7, 2.17." in said(
        CuttingPanel(**PLUS)
    )


def test_the_turn_alone_works_nothing_again():
    panel = CuttingPanel()
    cut = panel.at().cut
    panel.handles["turn"].set(5)
    panel._redraw()
    assert panel.at(turn=5).cut is panel.at(turn=3).cut
    assert panel.at(turn=3).cut.margin == cut.margin


def test_a_slower_wheel_pushes_harder_and_slower_turning_less():
    panel = CuttingPanel()

    def torque(**values):
        return panel.at(**values).bars[0].turns_nm

    assert torque(wheel_speed_rpm=2000.0) > torque() > torque(wheel_speed_rpm=6000.0)
    assert torque(lens_speed_rpm=5.0) < torque() < torque(lens_speed_rpm=15.0)


def test_what_is_to_be_minded_is_said():
    assert "snatches round a lens that starts to turn" in said(CuttingPanel(wheel_sense="with"))
    assert "The wheel motor is at its limit." in said(CuttingPanel(wheel="glazed"))


def test_a_blank_that_does_not_reach_is_refused():
    panel = CuttingPanel(blank_diameter_mm=50.0, monocular_pd_mm=27.0)
    assert "does not reach the whole outline" in str(panel.trouble)
    assert "take a blank of" in str(panel.trouble)


def test_a_bite_that_the_material_does_not_take_is_refused_by_its_name():
    panel = CuttingPanel(material="crown-glass-1.523")
    assert str(panel.trouble).startswith("crown glass")
    assert "depth per turn 2 is out of range" in str(panel.trouble)


def test_a_feed_that_yields_asks_less_and_takes_longer():
    panel = CuttingPanel()
    depth, capped = panel.at(), panel.at(feed="torque cap")

    assert max(bar.turns_nm for bar in capped.bars) <= 0.6
    assert len(capped.bars) > len(depth.bars)
    assert "stops under the wheel" in said(CuttingPanel(feed="head force", head_force_n=30.0))
    assert "stops under the wheel" not in said(CuttingPanel(feed="head force"))


def test_a_force_that_never_gets_a_lens_done_is_refused_with_the_next_step():
    words = str(CuttingPanel(feed="head force", head_force_n=2.0).trouble)
    assert "never gets this lens done" in words
    assert "give more" in words


def test_by_the_manual_is_how_the_material_is_made_to_be_roughed():
    panel, ways = CuttingPanel(), CuttingPanel.ranges["water"].options
    assert ways == ("by the manual", "wet", "dry")
    assert [panel.at(water=way).cut.setup.water for way in ways] == ["manual", "wet", "dry"]


def test_roughing_against_the_manual_is_said():
    assert "It is roughed against the machine's manual." in said(CuttingPanel(water="dry"))
    assert "manual" not in said(CuttingPanel(water="wet"))


def test_only_the_turns_so_far_are_told_where_the_rest_is_to_be_guessed():
    panel = CuttingPanel(**PLUS, bars="so far", turn=4)
    data = panel.at()

    assert (data.drawn, data.greatest, len(data.bars)) == (4, 3, 10)
    assert "So far it asks most in turn 4, 0.25 N m" in said(panel)
    assert panel.at(turn=10).greatest == CuttingPanel(**PLUS).at().greatest == 6
    assert panel.at(turn=2).cut is data.cut
