"""Numbers of common practice: each has a value in its range, a unit, a source and a grade."""

import pytest

from lablib.datafile import GRADES, read_table
from lablib.errors import LabError
from lablib.optics.practice import source_of, usual, usual_or

NAMES = list(read_table("lablib.optics", "practice.toml"))


@pytest.mark.parametrize("name", NAMES)
def test_every_number_says_what_it_is_and_where_it_comes_from(name: str):
    row = read_table("lablib.optics", "practice.toml")[name]
    low, high = row["range"]
    assert low <= row["value"] <= high
    assert row["grade"] in GRADES
    assert {"words", "unit"} <= set(row)
    assert usual(name) == usual_or(name, "the number", None) == row["value"]
    assert source_of(name) == row["source"]
    assert any(word in row["source"] for word in ("common practice", "memory", "inferred"))


def test_another_number_is_taken_within_the_range():
    assert usual_or("pupil_depth", "pupil", 3.5) == 3.5
    with pytest.raises(LabError) as caught:
        usual_or("pupil_depth", "pupil", 8)
    assert str(caught.value) == "pupil 8 is out of range: give from 2 to 4.5 mm"
