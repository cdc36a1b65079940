"""Two changes at once: gains multiply across the line of the fraction, and not above it."""

import math

import pytest
from reference_jobs import work

from lablib.bench.gains import combined_margin, gain
from lablib.errors import LabError


def test_the_example_of_the_trade():
    # Film 0.93 to 1.56, crib 0.93 to 2.7: about 4.5 together. Added, they would seem to give 3.3.
    assert combined_margin(0.93, 1.56, 2.7) == pytest.approx(4.53, abs=0.005)
    assert gain(margin=0.93, changed=1.56) == pytest.approx(1.68, abs=0.005)


def test_nothing_changed_is_the_margin_itself():
    assert combined_margin(0.93) == 0.93
    assert combined_margin(0.93, 0.93, 2.7) == pytest.approx(2.7)


@pytest.mark.parametrize("holds", [{"film": True}, {"back_tape": True}, {"pad_age_months": 12.0}])
@pytest.mark.parametrize("turns", [{"crib_allowance_mm": 2.0}, {"wheel": "used"}])
def test_above_and_below_the_line_they_multiply(holds: dict, turns: dict):
    alone = [work(**one).margin for one in ({}, holds, turns)]
    assert work(**holds, **turns).margin == pytest.approx(combined_margin(*alone), rel=0.01)


def test_two_that_both_hold_give_less():
    # Slip model of the workbook: film 1.56, film and back tape 1.97.
    alone = [work(**one).margin for one in ({}, {"film": True}, {"back_tape": True})]
    both = work(film=True, back_tape=True).margin
    assert both == pytest.approx(1.97, abs=0.005)
    assert combined_margin(*alone) > 1.1 * both


def test_what_is_no_margin():
    with pytest.raises(LabError, match="margin 0 is not above 0: give what holds over what turns"):
        gain(margin=0.0, changed=1.0)
    with pytest.raises(LabError, match="changed margin nan is not a finite number"):
        combined_margin(1.0, math.nan)
