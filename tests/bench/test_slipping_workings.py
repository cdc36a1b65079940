"""Workings of the heat: every printed substitution comes out, and the last is the simulation's own figure."""

import pytest
from evaluation import assert_comes_out
from reference_jobs import EASY, work

from lablib.bench.slipping import simulate
from lablib.bench.slipping_workings import heat_workings
from lablib.errors import LabError


@pytest.mark.parametrize("setup", [{}, {"wheel": "glazed"}, {"back_tip_idles": True}, {"block": "half-eye"}])
def test_heat_comes_out(setup):
    ran = simulate(work(**setup))
    steps = heat_workings(ran)
    for step in steps:
        assert_comes_out(step)
    assert steps[-1].value == ran.rise_k
    assert [term.symbol for term in steps[0].terms].count("p_b") == (not setup.get("back_tip_idles"))


def test_a_lens_that_holds_warms_nothing():
    with pytest.raises(LabError, match=r"nothing slid, .*: give a cut whose margin is below 1"):
        heat_workings(simulate(work(EASY)))
