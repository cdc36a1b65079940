"""What a spoiled lens costs: the workbook's own example, errors, workings."""

import pytest
from evaluation import assert_comes_out

from lablib.bench.spoilage import SpoiledLens
from lablib.bench.spoilage_workings import paid_terms, spoilage_workings
from lablib.errors import LabError

SIMPLE = {"lens_price": 60.0, "labour_min": 25.0, "hourly_rate": 60.0}
FULL = SIMPLE | {"hourly_rate": 42.0, "delivery": 6.5, "coat": 12.0}


def test_the_lessons_example():
    # Lesson 01: a lens for 60 and labour for 25 make 85.
    spoiled = SpoiledLens(**SIMPLE)
    assert spoiled.labour == 25.0
    assert spoiled.cost == 85.0


def test_everything_that_is_paid_again():
    # By hand: 42 an hour for 25 minutes is 17.50; 60 + 17.50 + 6.50 + 12.
    assert SpoiledLens(**FULL).cost == pytest.approx(96.0, abs=1e-9)


@pytest.mark.parametrize("name", ["lens_price", "labour_min", "hourly_rate", "delivery", "coat"])
def test_nothing_is_below_nought(name: str):
    with pytest.raises(LabError) as caught:
        SpoiledLens(**FULL | {name: -3.0})
    assert str(caught.value) == f"{name} -3 is below 0: give what is paid again, 0 for nothing"


def test_a_price_is_a_number():
    with pytest.raises(LabError, match="lens_price 'sixty' is not a number: give a number"):
        SpoiledLens(**SIMPLE | {"lens_price": "sixty"})


@pytest.mark.parametrize("parts", [SIMPLE, FULL, SIMPLE | {"labour_min": 35.0, "hourly_rate": 47.0}])
def test_the_workings_come_out(parts: dict):
    spoiled = SpoiledLens(**parts)
    labour, whole = spoilage_workings(spoiled)
    assert (labour.value, whole.value) == (spoiled.labour, spoiled.cost)
    for working in (labour, whole):
        assert_comes_out(working)


def test_what_costs_nothing_is_not_written():
    assert [term.symbol for term in paid_terms(SpoiledLens(**SIMPLE))] == ["P", "t", "r"]
    assert spoilage_workings(SpoiledLens(**SIMPLE))[1].substituted == "60.00 + 25.00"
    assert [term.symbol for term in paid_terms(SpoiledLens(**FULL))] == ["P", "t", "r", "V", "C"]
