"""A marker on a scale: where it stands, how far it is from the right place, and scales that cannot be."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.study.answer import NotUnderstood
from lablib.study.marker import MarkerAnswer, way_round

RULE = MarkerAnswer(label="edge", unit="mm", low=0.0, high=12.0, step=0.1, start=0.0, tolerance=0.2, digits=1)
ROUND = MarkerAnswer(
    label="place", unit="degrees", low=0.0, high=360.0, step=1.0, start=0.0, tolerance=6.0, wraps=True
)
PLACES = st.floats(0.0, 360.0)


@pytest.mark.parametrize(
    ("one", "other", "whole", "away"),
    [
        (350.0, 10.0, 360.0, 20.0),
        (10.0, 350.0, 360.0, 20.0),
        (0.0, 360.0, 360.0, 0.0),
        (0.0, 180.0, 360.0, 180.0),
        (5.0, 175.0, 180.0, 10.0),
        (90.0, 180.0, 180.0, 90.0),
    ],
)
def test_the_way_round_is_the_short_one(one: float, other: float, whole: float, away: float):
    assert way_round(one, other, whole=whole) == away


def test_a_place_is_read_with_its_unit():
    understood = RULE.read(4.2)
    assert (understood.meanings, understood.words, understood.faults) == ((4.2,), "4.2 mm", ())
    assert ROUND.read(90).meanings == (90.0,)
    assert ROUND.written(90.0) == "90 degrees"


def test_both_ends_are_on_the_scale():
    assert RULE.read(0).meanings == (0.0,)
    assert RULE.read(12.000000000001).meanings == (12.000000000001,)


@pytest.mark.parametrize("given_", [True, "4", [4], {}, math.nan, math.inf, 10**400, "x" * 300])
def test_what_is_no_place_is_refused(given_: object):
    with pytest.raises(NotUnderstood, match="is not a place on the picture: move the marker"):
        RULE.read(given_)


def test_a_place_off_the_scale_is_refused():
    with pytest.raises(NotUnderstood) as caught:
        RULE.read(12.5)
    assert str(caught.value) == "12.5 is off the scale: move the marker between 0 and 12"


def test_a_marker_that_was_not_moved_is_blank():
    assert RULE.is_blank(None)
    assert RULE.is_blank("")
    assert not RULE.is_blank(0.0)


def test_the_tolerance_counts_to_its_edge_and_apart_is_twice_that():
    assert RULE.matches(4.4, 4.2)
    assert not RULE.matches(4.41, 4.2)
    assert RULE.apart(4.61, 4.2)
    assert not RULE.apart(4.6, 4.2)


def test_a_scale_that_wraps_is_measured_the_short_way_round():
    assert ROUND.distance(358.0, 3.0) == pytest.approx(5.0)
    assert ROUND.distance(0.0, 360.0) == 0.0
    assert ROUND.distance(90.0, 270.0) == 180.0
    assert ROUND.matches(358.0, 3.0)
    assert not replace(ROUND, wraps=False).matches(358.0, 3.0)


@given(PLACES, PLACES)
def test_distance_goes_either_way_and_is_half_a_turn_at_most(one: float, other: float):
    away = ROUND.distance(one, other)
    assert 0.0 <= away <= 180.0
    assert away == pytest.approx(ROUND.distance(other, one))
    assert away == pytest.approx(ROUND.distance((one + 77.0) % 360.0, (other + 77.0) % 360.0), abs=1e-9)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (
            {"tolerance": 0.04},
            "tolerance 0.04 is less than half a step of 0.1: widen it, or let the marker move in "
            "smaller steps",
        ),
        ({"tolerance": math.nan}, "edge: tolerance nan is not a finite number: give a number"),
        ({"low": 12.0}, "edge: a scale from 12 to 12 has no length: put the low end first"),
        ({"high": math.inf}, "edge: end of the scale inf is not a finite number: give a number"),
        ({"step": 0.0}, "edge: step 0 is out of range: give above 0 and up to 12"),
        ({"start": 13.0}, "edge: start 13 is out of range: give from 0 to 12"),
        ({"digits": 0}, "edge: 0 decimal(s) cannot show a scale from 0 in steps of 0.1: give more"),
    ],
)
def test_a_scale_that_cannot_be_is_refused(change: dict, words: str):
    with pytest.raises(LabError) as caught:
        replace(RULE, **change)
    assert str(caught.value) == words
