"""The panel of remedies: its ranking is the search's, the bound is kept, the clamp is never among them."""

from dataclasses import replace

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.machine import Bench
from lablib.bench.margin import log_scatter, slip_probability
from lablib.job.remedy import remedies
from lablib.job.remedy_search import plan_remedies
from lablib.job.spoiled import spoiled
from lablib.panels import remedy_panel
from lablib.panels.panel import NOT_KNOWN
from lablib.panels.remedy_panel import LENSES, RemedyPanel
from lablib.pictures.remedies import MOST_ROWS


def test_every_control_to_its_stops_and_back():
    assert not any(move_every_control(RemedyPanel()))


@pytest.mark.parametrize("lens", LENSES)
def test_the_set_is_under_the_bound_and_its_changes_are_marked(lens: str):
    data = RemedyPanel().at(lens=lens)
    assert len(data.singles) <= MOST_ROWS
    margins = [row.margin for row in data.singles]
    assert margins == sorted(margins, reverse=True)
    if data.chosen:
        assert data.plan.cheapest.slip_probability <= 0.1
        assert data.chosen.margin >= data.needed
        marked = {row.words for row in data.singles if row.is_chosen}
        assert marked == set(data.plan.cheapest.names)
    else:
        assert data.now.margin >= data.needed
    assert not any("clamp" in row.words for row in data.singles)


def test_the_ranking_is_that_of_the_search():
    plan = plan_remedies(spoiled(LENSES["strong minus"]), bound=0.1)
    data = RemedyPanel().at()
    assert [row.words for row in data.singles] == [one.names[0] for one in plan.singles]
    assert rows(RemedyPanel())["The set: cost"] == f"{plan.cheapest.cost:.2f}"


@pytest.mark.parametrize("calibrated", ["no", "yes"])
def test_the_line_of_the_bound_is_where_the_chance_is_the_bound(calibrated: str):
    data = RemedyPanel().at(bound=20, calibrated=calibrated)
    scatter = log_scatter(Bench(), calibrated=calibrated == "yes")
    assert slip_probability(data.needed, scatter) == pytest.approx(0.2)


def test_a_stricter_bound_never_costs_less():
    panel = RemedyPanel(lens="glazed wheel")
    costs = [panel.at(bound=bound).plan.cheapest.cost for bound in (50, 20, 10, 5, 1)]
    assert costs == sorted(costs)


def test_the_sentence_names_the_set_or_says_that_none_is_needed():
    assert said(RemedyPanel()).startswith("Cheapest set under 10 %: back tape and smaller bites. Margin 0.93")
    assert said(RemedyPanel(lens="weak minus")).endswith("nothing needs a change.")


def test_where_no_set_is_enough_the_panel_says_so(monkeypatch):
    found = remedy_panel._plan
    monkeypatch.setattr(remedy_panel, "_plan", lambda *given: replace(found(*given), cheapest=None))
    panel = RemedyPanel()
    assert "No set of changes brings the chance of slip to 10 %: at best" in said(panel)
    assert rows(panel)["The set: cost"] == NOT_KNOWN


def test_a_set_that_changes_the_order_says_ask_first(monkeypatch):
    found = remedy_panel._plan

    def asked(*given):
        plan = found(*given)
        return replace(plan, cheapest=replace(plan.cheapest, remedies=(remedies()["other material"],)))

    monkeypatch.setattr(remedy_panel, "_plan", asked)
    assert said(RemedyPanel()).endswith("Ask first: it changes the order.")
