"""Numbers of the trade in questions: each says what it is, in which unit, and how good it is."""

import pytest

from lablib.datafile import GRADES, read_table
from lablib.optics.material import material
from lablib.questions.front_curve import vogel_for_the_other_sign_d
from lablib.questions.lens_form.terms import DISPENSED_MATERIALS, index_for
from lablib.questions.practice import usual, usual_rows

TABLE = read_table("lablib.questions", "practice.toml")


@pytest.mark.parametrize("name", TABLE)
def test_every_number_says_what_it_is_and_where_it_comes_from(name: str):
    row = TABLE[name]
    assert row["words"]
    assert row["unit"]
    assert row["grade"] in GRADES
    weak = ("common practice", "invented")
    assert any(word in row["source"] for word in weak) == (row["grade"] == "teaching estimate")
    if "rows" in row:
        assert usual_rows(name) == tuple(row["rows"])
    else:
        assert usual(name) == row["value"] > 0.0


def test_a_stronger_lens_is_dispensed_in_a_higher_index():
    indices = [material(name).index for name in DISPENSED_MATERIALS]
    assert indices == sorted(indices)
    assert [index_for(power) for power in (-4.0, 4.25, -5.5, 5.75)] == [
        indices[place] for place in (0, 1, 1, 2)
    ]


def test_a_blank_for_surfacing_is_larger_than_any_in_stock():
    for row in usual_rows("blanks"):
        assert row["stock_mm"] == sorted(row["stock_mm"])
        assert row["stock_mm"][-1] < row["surfacing_mm"]


@pytest.mark.parametrize(("equivalent", "curve"), [(2.0, 7.0), (4.0, 8.0), (-2.0, 4.0), (-6.0, 0.0)])
def test_the_half_of_the_rule_for_the_other_sign(equivalent: float, curve: float):
    # By hand: plus read as minus, half of it + 6; minus read as plus, all of it + 6.
    assert vogel_for_the_other_sign_d(equivalent) == curve
