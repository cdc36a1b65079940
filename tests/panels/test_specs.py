"""Ranges are checked when they are made, and everything typed is taken or refused in words."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.panels.specs import Choice, Slider


def slider(**changes):
    given = {"name": "sphere_d", "label": "Sphere", "unit": "D"}
    return Slider(**(given | {"low": -12, "high": 8, "step": 0.25, "value": -4} | changes))


def choice(**changes):
    given = {"name": "eye", "label": "Eye", "options": ("right", "left"), "value": "right"}
    return Choice(**(given | changes))


REFUSED = [
    (slider, {"low": 8, "high": -12}, "Sphere: low 8 is not below high -12: change one of them"),
    (slider, {"step": 0}, "Sphere: step 0 is not above 0: give a step above 0"),
    (
        slider,
        {"high": 8.1},
        "Sphere: high 8.1 is not a whole number of steps of 0.25 above low -12: change the step or a stop",
    ),
    (
        slider,
        {"value": 9},
        "Sphere 9 D is out of range here: give a value from -12.00 to +8.00 D in steps of 0.25",
    ),
    (
        slider,
        {"value": -4.1},
        "Sphere -4.1 D lies between two steps here: give -4.25 or -4.00 "
        "(from -12.00 to +8.00 D in steps of 0.25)",
    ),
    (
        slider,
        {"low": 141 * 0.05, "high": 8, "step": 0.05, "value": 8},
        "Sphere: low 7.050000000000001 has more than 6 decimals: write fewer",
    ),
    (slider, {"low": float("nan")}, "Sphere: low nan is not a finite number: give a number in D"),
    (slider, {"step": "0.25"}, "Sphere: step '0.25' is not a number: give a number in D"),
    (
        slider,
        {"label": "Height above the lowest tangent"},
        "label 'Height above the lowest tangent [D]' has 35 characters with its unit: give 1 to 24, so that "
        "it stands beside its box",
    ),
    (
        choice,
        {"label": ""},
        "label '' has 0 characters with its unit: give 1 to 24, so that it stands beside its box",
    ),
    (
        choice,
        {"options": ("right", "right")},
        "Eye: options ('right', 'right') are not two or more different words: list them",
    ),
    (
        choice,
        {"options": ("right",)},
        "Eye: options ('right',) are not two or more different words: list them",
    ),
    (choice, {"value": "middle"}, "Eye 'middle' cannot be had here: give one of right, left"),
]


@pytest.mark.parametrize(("make", "changes", "words"), REFUSED)
def test_what_does_not_fit_is_refused_at_birth(make, changes, words):
    with pytest.raises(LabError, match=f"^{re.escape(words)}$"):
        make(**changes)


@pytest.mark.parametrize(
    ("changes", "value", "text"),
    [
        ({}, -4, "-4.00"),
        ({}, 2.5, "+2.50"),
        ({}, 0, "0.00"),
        ({}, -0.0, "0.00"),
        ({"low": 40, "high": 60, "step": 0.5, "value": 54}, 54, "54.0"),
        ({"low": 1, "high": 180, "step": 1, "value": 20}, 100, "100"),
        ({"low": 1.25, "high": 3.25, "step": 1, "value": 2.25}, 2.25, "2.25"),
        ({"low": 10, "high": 400, "step": 10, "value": 100}, 100, "100"),
    ],
)
def test_values_are_shown_with_the_decimals_of_their_grid(changes, value, text):
    assert slider(**changes).shown(value) == text


@pytest.mark.parametrize(
    ("typed", "value"),
    [("-4.25", -4.25), ("+2", 2), ("2,5", 2.5), (" -.25 D ", -0.25), ("−1.75", -1.75), ("8.", 8), ("0", 0)],
)
def test_what_people_type_is_read(typed, value):
    assert slider().read(typed) == value


@pytest.mark.parametrize(
    "typed", ["", "D", "four", "1 2", "1.2.3", "nan", "inf", "1e2", "--2", "2 mm", "1_0", "٣"]
)
def test_what_is_no_number_is_said(typed):
    words = f"Sphere {typed!r} is not a number: give a value from -12.00 to +8.00 D in steps of 0.25"

    with pytest.raises(LabError, match=f"^{re.escape(words)}$"):
        slider().read(typed)


@pytest.mark.parametrize(
    ("typed", "why"), [("-12.25", "out of range"), ("9", "out of range"), ("0.3", "0.25 or +0.50")]
)
def test_a_typed_number_is_never_moved_to_another(typed, why):
    with pytest.raises(LabError, match=re.escape(why)):
        slider().read(typed)


grids = st.tuples(
    st.integers(-500, 500), st.sampled_from([0.01, 0.05, 0.1, 0.125, 0.25, 0.5, 1, 5]), st.integers(1, 300)
)


@given(grids, st.data())
def test_every_step_is_on_the_grid_and_read_back_from_its_text(grid, data):
    first, step, count = grid
    low = round(first * step, 6)
    made = slider(low=low, high=round(low + count * step, 6), step=step, value=low)
    index = data.draw(st.integers(0, count))
    value = made.nearest(low + index * step)

    assert made.check(value) == value == made.read(made.shown(value))
    assert value == pytest.approx(low + index * step, abs=1e-9)
    with pytest.raises(LabError, match="between two steps"):
        made.check(low + (index if index < count else index - 1) * step + step / 2)


def test_the_rule_is_said_without_a_unit_where_there_is_none():
    bare = slider(label="Index", unit="", low=1, high=2, step=0.01, value=1.5)

    assert (bare.title, bare.rule) == ("Index", "from 1.00 to 2.00 in steps of 0.01")
    with pytest.raises(
        LabError, match=r"^Index 3 is out of range here: give a value from 1\.00 to 2\.00 in steps"
    ):
        bare.check(3)


def test_stops_are_what_is_worth_trying():
    assert slider().stops == (-12, 8)
    assert choice().stops == ("right", "left")
