"""The panel of doubt: its band and its ranking are those of the draws."""

import numpy as np
import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.uncertainty import spread, swings
from lablib.job.spoiled import spoiled
from lablib.panels.doubt_panel import DRAWS, DoubtPanel
from lablib.panels.remedy_panel import LENSES
from lablib.pictures.doubt import MOST_ROWS


def test_every_control_to_its_stops_and_back():
    assert not any(move_every_control(DoubtPanel()))


def test_band_and_ranking_are_those_of_the_cut():
    cut, data = spoiled(LENSES["strong minus"]).cut, DoubtPanel().at()
    assert data.band == spread(cut, draws=DRAWS).band()
    assert [one.parameter.name for one in data.every] == [one.parameter.name for one in swings(cut)]
    assert [(row.at_low, row.at_high) for row in data.swings] == [
        (one.margin_at_low, one.margin_at_high) for one in swings(cut)[:MOST_ROWS]
    ]
    assert data.margin == cut.margin


@pytest.mark.parametrize("lens", LENSES)
def test_every_bench_falls_into_one_step_and_those_below_1_are_told_apart(lens: str):
    data = DoubtPanel().at(lens=lens)
    assert data.shares.sum() == pytest.approx(1.0)
    below = data.edges[1:] <= 1.0 + 1e-9
    assert data.shares[below].sum() == pytest.approx(data.spread.share_below_1, abs=1e-9)
    assert np.isclose(data.edges, 1.0).sum() == 1


def test_a_film_moves_all_benches_up():
    panel = DoubtPanel()
    assert panel.at(change="film").middle > 1.3 * panel.at().middle
    # A lens that is clean already stays as it is.
    assert panel.at(change="clean lens").band == panel.at().band


def test_numbers_and_sentence_say_band_and_what_matters_most():
    panel = DoubtPanel()
    assert rows(panel)["Margin by the table"] == "0.93"
    assert rows(panel)["Benches drawn"] == f"{DRAWS}"
    low, high = panel.at().band
    assert f"95 % lie from {low:.2f} to {high:.2f}" in said(panel)
    assert "It hangs most on this: specific cutting energy, by a factor of 4.6" in said(panel)
