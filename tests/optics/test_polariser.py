"""A filter that turns with its blank."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.material_workings import filter_turned_workings
from lablib.optics.polariser import filter_turned_deg, glare_let_through

AXES = st.integers(1, 180).map(float)


@pytest.mark.parametrize(
    ("packet", "ordered", "turned"),
    [(90, 60, -30), (90, 120, 30), (170, 10, 20), (10, 170, -20), (180, 90, 90), (90, 180, 90), (45, 45, 0)],
)
def test_the_filter_turns_with_the_blank(packet: float, ordered: float, turned: float):
    assert filter_turned_deg(packet_axis_deg=packet, ordered_axis_deg=ordered) == turned


@given(AXES, AXES)
def test_turning_brings_the_axis_and_never_the_long_way(packet: float, ordered: float):
    turned = filter_turned_deg(packet_axis_deg=packet, ordered_axis_deg=ordered)
    assert -90.0 < turned <= 90.0
    assert (packet + turned - ordered) % 180.0 == 0.0
    assert_worked(filter_turned_workings(packet_axis_deg=packet, ordered_axis_deg=ordered))


def test_glare_by_malus():
    assert glare_let_through(0.0) == 0.0
    assert glare_let_through(-30.0) == pytest.approx(0.25)
    assert glare_let_through(90.0) == pytest.approx(1.0)
    with pytest.raises(LabError, match="turn of the filter 100 is out of range"):
        glare_let_through(100.0)


def test_an_axis_of_nought_is_refused():
    with pytest.raises(LabError, match="axis 0 is written 180"):
        filter_turned_deg(packet_axis_deg=0.0, ordered_axis_deg=10.0)
