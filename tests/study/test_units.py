"""Units behind a number: what one is worth in another, and what does not fit."""

import pytest

from lablib.study.units import worth


@pytest.mark.parametrize(
    ("written", "unit", "factor"),
    [
        ("mm", "mm", 1.0),
        ("cm", "mm", 10.0),
        ("m", "cm", 100.0),
        ("mm", "m", 0.001),
        ("Millimetres", "mm", 1.0),
        ("millimeters", "mm", 1.0),
        ("MM", "mm", 1.0),
        ("mm.", "mm", 1.0),
        ("Nm", "N m", 1.0),
        ("N\u00a0m", "N m", 1.0),
        ("N·m", "N m", 1.0),
        ("N mm", "N m", 0.001),
        ("N m", "N mm", 1000.0),
        ("°", "degrees", 1.0),
        ("deg.", "degrees", 1.0),
        ("%", "%", 1.0),
        ("per cent", "%", 1.0),
        ("kg", "g", 1000.0),
        ("hours", "min", 60.0),
        ("newtons", "N", 1.0),
        ("boards", "boards", 1.0),
        ("", "", 1.0),
    ],
)
def test_what_a_unit_is_worth(written: str, unit: str, factor: float):
    assert worth(written, unit) == pytest.approx(factor)


@pytest.mark.parametrize(
    ("written", "unit"),
    [
        ("N", "N m"),
        ("m", "N m"),
        ("mm", ""),
        ("mm", "N"),
        ("mm mm", "mm"),
        ("degrees", "mm"),
        ("boards", "planks"),
        (".", "mm"),
        ("nonsense", "mm"),
    ],
)
def test_another_quantity_does_not_fit(written: str, unit: str):
    assert worth(written, unit) is None


@pytest.mark.parametrize("written", ["planks", "Planks.", "bd  ft", "boards"])
def test_another_way_of_writing_the_unit_is_worth_one(written: str):
    assert worth(written, "boards", also=("planks", "bd ft")) == 1.0


def test_other_ways_of_writing_belong_to_the_unit_asked_for_alone():
    assert worth("mm", "boards", also=("planks",)) is None
    assert worth("planks", "boards") is None
    assert worth("cm", "mm", also=("mils",)) == 10.0
