"""The panel of the feeds: its ranges, its numbers, its sentence."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.parameter import parameters
from lablib.panels.cutting_feed_panel import FeedPanel
from lablib.panels.cutting_panel import CuttingPanel
from lablib.panels.panel import NOT_KNOWN


def test_controls_are_those_of_the_cutting_panel():
    for name, spec in FeedPanel.ranges.items():
        other = CuttingPanel.ranges[name]
        assert (spec.title, spec.value, spec.stops) == (other.title, other.value, other.stops)
    force, cap = parameters()["head_force_n"], parameters()["torque_cap_nmm"]
    ranges = FeedPanel.ranges
    assert (ranges["head_force_n"].low, ranges["head_force_n"].high) == (force.low, force.high)
    assert (ranges["torque_cap_nm"].low, ranges["torque_cap_nm"].high) == (cap.low / 1000, cap.high / 1000)


def test_every_control_to_its_stops_and_back():
    trouble = {words for words in move_every_control(FeedPanel()) if words}
    assert all(":" in words for words in trouble), trouble


def test_a_thicker_lens_costs_torque_time_or_nothing_of_both():
    thin, thick = FeedPanel().at(), FeedPanel().at(thickness_mm=6.0)

    def of(data, name):
        return data.cuts[name].peak_cutting_torque_nmm, next(
            row.ends_s[-1] for row, known in zip(data.rows, data.cuts, strict=True) if known == name
        )

    assert of(thick, "depth")[0] > 1.4 * of(thin, "depth")[0]
    assert of(thick, "depth")[1] == pytest.approx(of(thin, "depth")[1], rel=0.02)
    for feed in ("head force", "torque cap"):
        assert of(thick, feed)[0] < 1.05 * of(thin, feed)[0], feed
        assert of(thick, feed)[1] > 1.3 * of(thin, feed)[1], feed


def test_the_torque_cap_is_kept():
    for cap in (0.4, 0.8):
        cut = FeedPanel().at(torque_cap_nm=cap).cuts["torque cap"]
        assert cut.peak_cutting_torque_nmm == pytest.approx(1000.0 * cap, rel=0.02)
        assert cut.peak_cutting_torque_nmm <= 1000.0 * cap


def test_what_never_gets_done_has_no_figures():
    panel = FeedPanel(head_force_n=2.0)

    assert panel.trouble is None
    assert panel.at().cuts["head force"] is None
    assert rows(panel)["Head force: margin"] == NOT_KNOWN
    assert rows(panel)["Depth control: margin"] == "0.81"
    assert "Head force: never gets done" in said(panel)


def test_the_sentence_says_margin_turns_and_time_of_each():
    assert said(FeedPanel()).startswith("Depth control: margin 0.81, 10 turns, 78 s; Head force: margin ")


def test_a_lens_that_cannot_be_cut_in_any_way_is_refused():
    panel = FeedPanel(sphere_d=8.0)
    assert "lens runs out" in str(panel.trouble)
