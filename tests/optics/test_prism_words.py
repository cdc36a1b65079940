"""What is said to somebody who gives a prism that cannot be."""

import math

import pytest

from lablib.errors import LabError
from lablib.optics.prescription import Prescription
from lablib.optics.prism import (
    Prism,
    decentration_for,
    prism_at,
    resultant,
    thickness_difference_mm,
    together,
)
from lablib.optics.unclear import BaseMissing, UnclearPrescription


def rx(sphere: float) -> Prescription:
    return Prescription(sphere_d=sphere)


def test_a_prism_without_base_is_asked_about():
    with pytest.raises(BaseMissing) as caught:
        Prism(amount_prism_d=2)
    fault = caught.value
    assert isinstance(fault, UnclearPrescription)
    assert fault.name == "prism-without-base"
    assert str(fault) == "prism 2.00 has no base direction: it cannot be made without one; ask the prescriber"
    assert fault.question == "Which way does the base of the prism 2.00 point?"
    assert fault.as_written == "2.00 prism dioptres"


@pytest.mark.parametrize(
    ("values", "words"),
    [
        (
            {"amount_prism_d": -1, "base": "in"},
            "prism -1 is minus: give a plus amount and turn its base round",
        ),
        (
            {"amount_prism_d": math.nan, "base": "in"},
            "prism nan is not a finite number: give a number in prism dioptres",
        ),
        (
            {"amount_prism_d": 1, "base": "nasal"},
            "base 'nasal' is not a base direction: give in, out, up or down, or degrees from 0 to 360",
        ),
        (
            {"amount_prism_d": 1, "base": 361},
            "base direction 361 is out of range: give from 0 to 360 degrees",
        ),
        (
            {"amount_prism_d": 1, "base": True},
            "base direction True is not a number: give a number in degrees",
        ),
    ],
)
def test_words_for_a_wrong_prism(values: dict, words: str):
    with pytest.raises(LabError) as caught:
        Prism(**values)
    assert str(caught.value) == words


@pytest.mark.parametrize("place", [math.nan, math.inf, "5", None, True, [1.0, math.nan], "far"])
def test_words_for_a_point_that_is_no_number(place: object):
    with pytest.raises(LabError, match=r"^point inwards .* is not a finite number: give a number in mm"):
        prism_at(rx(1), eye="right", in_mm=place, up_mm=0)
    with pytest.raises(LabError, match=r"^point upwards .* is not a finite number: give a number in mm"):
        prism_at(rx(1), eye="right", in_mm=0, up_mm=place)


def test_words_for_an_eye_and_a_prism_that_are_none():
    for call in (
        lambda: prism_at(rx(1), eye="both", in_mm=0, up_mm=0),
        lambda: decentration_for(rx(1), eye="both", in_prism_d=0, up_prism_d=0),
        lambda: resultant(eye="both", in_prism_d=0, up_prism_d=0),
        lambda: together([], eye="both"),
        lambda: Prism(amount_prism_d=1, base="in").resolved(eye="both"),
    ):
        with pytest.raises(LabError, match='eye \'both\' is not an eye: give "right" or "left"'):
            call()
    with pytest.raises(LabError, match="prism base in nan is not a finite number: give a number in prism"):
        decentration_for(rx(1), eye="right", in_prism_d=math.nan, up_prism_d=0)
    with pytest.raises(LabError, match="prism base up '1' is not a number: give a number in prism dioptres"):
        resultant(eye="right", in_prism_d=0, up_prism_d="1")


def test_words_for_a_thickness_difference_out_of_range():
    with pytest.raises(LabError, match="prism 40 is out of range: give from 0 to 30 prism dioptres"):
        thickness_difference_mm(amount_prism_d=40, across_mm=50, index_n=1.5)
    with pytest.raises(LabError, match="distance across the lens 200 is out of range"):
        thickness_difference_mm(amount_prism_d=4, across_mm=200, index_n=1.5)
    with pytest.raises(LabError, match="index 1 is out of range"):
        thickness_difference_mm(amount_prism_d=4, across_mm=50, index_n=1)
