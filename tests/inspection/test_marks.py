"""A turn read from marks: the closed forms, the trade's example, what a segment's top tells."""

import math

import pytest
from evaluation import assert_comes_out
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.inspection.marks import (
    MARKS_APART_MM,
    RISE_WITHIN_MM,
    on_a_line_deg,
    read_turn,
    rise_mm,
    small_angle_deg,
    top_apart_mm,
    turn_deg,
    turned_to_deg,
    where_turned_to,
)
from lablib.inspection.marks_workings import (
    doubt_workings,
    small_angle_working,
    top_apart_working,
    turn_working,
)
from lablib.optics.progressive import progressive
from lablib.optics.segment import segment

TURNS = st.floats(-89.0, 89.0)


def test_the_example_of_the_trade():
    # 1.2 mm over marks 34 mm apart: 2.0 degrees; over half the distance it would be 4.0.
    assert turn_deg(1.2) == pytest.approx(2.0, abs=0.05)
    assert turn_deg(1.2, apart_mm=17.0) == pytest.approx(4.0, abs=0.05)


def test_the_engravings_of_the_charts_are_so_far_apart():
    assert progressive("general").engravings_apart_mm == MARKS_APART_MM


@given(turn=TURNS, apart=st.floats(10.0, 80.0))
def test_two_marks_on_a_turned_lens_tell_its_turn(turn: float, apart: float):
    # Two points fixed on the lens, turned as points of the plane: an independent way to their heights.
    left, right = (where_turned_to(x, 3.0, turn) for x in (-apart / 2.0, apart / 2.0))
    assert turn_deg(right[1] - left[1], apart_mm=apart) == pytest.approx(turn, abs=1e-5)
    assert rise_mm(turn, apart_mm=apart) == pytest.approx(right[1] - left[1], abs=1e-9)


@given(rise=st.floats(-3.0, 3.0))
def test_the_rule_for_small_angles_is_a_hundredth_of_a_degree_off_at_most(rise: float):
    assert abs(small_angle_deg(rise) - turn_deg(rise)) < 0.01


def test_a_reading_has_a_doubt():
    reading = read_turn(1.2)
    assert (reading.low_deg, reading.high_deg) == (
        turn_deg(1.2 - RISE_WITHIN_MM),
        turn_deg(1.2 + RISE_WITHIN_MM),
    )
    assert reading.doubt_deg == pytest.approx(0.42, abs=0.005)
    # Marks that lie closer tell less.
    assert read_turn(1.2, apart_mm=26.0).doubt_deg > reading.doubt_deg


def test_the_corners_of_a_segment_top_are_nearer_than_its_width():
    flat = segment("flat-top-28")
    apart = top_apart_mm(width_mm=flat.width_mm, centre_below_top_mm=flat.centre_below_top_mm)
    assert apart == pytest.approx(2.0 * flat.corner_mm)
    assert apart == pytest.approx(26.15, abs=0.005)


@pytest.mark.parametrize("name", ["curved-top-25", "curved-top-28"])
def test_so_are_those_of_a_curved_one(name: str):
    curved = segment(name)
    apart = top_apart_mm(
        width_mm=curved.width_mm,
        centre_below_top_mm=curved.centre_below_top_mm,
        top_rise_mm=curved.top_rise_mm,
    )
    assert apart == pytest.approx(2.0 * curved.corner_mm)


def test_a_round_segment_hides_a_turn():
    with pytest.raises(LabError, match="a round segment has none and hides a turn: read the engraved"):
        top_apart_mm(width_mm=24.0, centre_below_top_mm=12.0)


def test_marks_that_cannot_be():
    with pytest.raises(LabError, match=r"rise 35 mm of marks 34 mm apart: .* measure both again"):
        turn_deg(35.0)
    with pytest.raises(LabError, match="rise nan is not a finite number: give a number in mm"):
        turn_deg(math.nan)
    with pytest.raises(LabError, match="distance of the marks 5 is out of range: give from 10 to 80 mm"):
        turn_deg(1.0, apart_mm=5.0)
    with pytest.raises(LabError, match="distance of the marks 5 is out of range"):
        rise_mm(1.0, apart_mm=5.0)
    with pytest.raises(LabError, match=r"exactness of a rise 2 is out of range: give from 0\.05 to 1 mm"):
        read_turn(1.0, within_mm=2.0)
    with pytest.raises(LabError, match="turn inf is not a finite number: give a number in degrees"):
        on_a_line_deg(math.inf)
    with pytest.raises(LabError, match="turn nan is not a finite number: give a number in degrees"):
        turned_to_deg(math.nan)


@pytest.mark.parametrize(("turn", "shown"), [(0, 0), (14, 14), (90, 90), (91, -89), (180, 0), (1406, -34)])
def test_a_line_comes_back_upon_itself(turn: float, shown: float):
    assert on_a_line_deg(turn) == shown


@pytest.mark.parametrize(
    ("turned", "stands"),
    [(0, 0), (14.3, 14.3), (180, 180), (190, -170), (359, -1), (1404, -36), (720, 0)],
)
def test_whole_turns_are_taken_off(turned: float, stands: float):
    assert turned_to_deg(turned) == pytest.approx(stands)


@given(rise=st.integers(-300, 300), apart=st.sampled_from([34.0, 30.0, 26.0, 20.0]))
def test_workings_come_out(rise: int, apart: float):
    millimetres = rise / 100
    for step in (
        turn_working(millimetres, apart_mm=apart),
        small_angle_working(millimetres, apart_mm=apart),
        *doubt_workings(millimetres, apart_mm=apart),
    ):
        assert_comes_out(step)


def test_the_turn_of_a_segment_top_is_worked_from_its_corners():
    apart = top_apart_working(width_mm=28.0, centre_below_top_mm=5.0)
    turn = turn_working(1.2, apart_mm=apart.value, apart=apart.as_term())
    assert_comes_out(apart)
    assert_comes_out(turn)
    assert turn.value == pytest.approx(2.63, abs=0.005)
