"""The panel of the log: pooled limits, causes ranked two ways, one more week."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.trials import share_at_most
from lablib.job.demo_log import demo_log, demo_weeks
from lablib.panels.panel import NOT_KNOWN
from lablib.panels.spoilage_panel import SpoilagePanel
from lablib.pictures.spoilage_causes import ROWS

PANEL = SpoilagePanel()


def test_every_control_to_its_stops_and_back():
    assert {words for words in move_every_control(SpoilagePanel()) if words} == set()


def test_the_chart_counts_every_row_of_the_log_and_this_week():
    chart = PANEL.at(cut=100, spoiled=7).chart
    assert sum(chart.counts) == len(demo_log().rows) + 7
    assert sum(chart.sizes) == sum(week.lenses for week in demo_weeks()) + 100
    assert len(chart.sizes) == len(demo_weeks()) + 1


@pytest.mark.parametrize(("batch", "count"), [("one week", 20), ("two weeks", 10), ("four weeks", 5)])
def test_batches_hold_so_many_weeks_and_count_the_same_lenses(batch: str, count: int):
    data = PANEL.at(batch=batch)
    assert len(data.batches) == count + 1
    assert sum(data.chart.counts) == sum(PANEL.at().chart.counts)
    assert data.chart.share == PANEL.at().chart.share


def test_a_week_goes_outside_when_enough_are_spoiled_and_a_small_week_needs_a_larger_share():
    least = {
        cut: next(count for count in range(21) if "now" in PANEL.at(cut=cut, spoiled=count).outside)
        for cut in (40, 80, 120)
    }
    assert least == {40: 6, 80: 10, 120: 14}
    shares = [count / cut for cut, count in least.items()]
    assert shares == sorted(shares, reverse=True)


def test_four_weeks_in_one_point_hide_the_bad_week():
    assert PANEL.at().outside == ("13",)
    assert PANEL.at(batch="four weeks").outside == ()


def test_one_cause_alone_is_counted_and_marked():
    data = PANEL.at(cause="turned on the block", spoiled=0)
    (chosen,) = [cause for cause in data.causes if cause.chosen]
    assert chosen.name == "turned on the block"
    assert sum(data.chart.counts) == chosen.count
    assert sum(row.spoiled.cost for row in data.rows) == pytest.approx(chosen.cost)


def test_causes_are_ranked_by_what_is_asked():
    by_money, by_number = (PANEL.at(ranked_by=by).causes for by in ("money", "number"))
    assert [cause.cost for cause in by_money] == sorted((one.cost for one in by_money), reverse=True)
    assert [cause.count for cause in by_number] == sorted((one.count for one in by_number), reverse=True)
    assert by_money[0] != by_number[0]
    assert len(by_money) == len(by_number) == ROWS


def test_what_the_wearer_finds_costs_more_and_a_cause_nobody_wore_has_no_figure():
    data = PANEL.at()
    assert data.mean_cost(by_wearer=True) > 1.5 * data.mean_cost(by_wearer=False)
    assert rows(SpoilagePanel(cause="crazed coat"))["One, found by the wearer"].startswith(NOT_KNOWN)


def test_none_spoiled_is_at_most_so_much():
    assert share_at_most(0, 60) == pytest.approx(0.049, abs=5e-4)
    assert rows(SpoilagePanel(cut=60, spoiled=0))["From this week alone"] == "4.9 % at most, 95 % sure"


def test_the_sentence_says_inside_or_outside_and_which_cause_is_first():
    assert said(SpoilagePanel()) == (
        "This week 4 of 80 lenses are spoiled, 5.0 %: inside the limits, 0.0 to 11.6 %. Outside before: 13. "
        "First by number: scratched, 25 lenses for 570.50."
    )
    assert "outside the limits" in said(SpoilagePanel(spoiled=10))
    assert "None is outside before it." in said(SpoilagePanel(batch="four weeks"))
