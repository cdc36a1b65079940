"""The morning's test lens: what is off, what is set right, and where the limits lie."""

import pytest

from lablib.bench.morning import MorningLens, adjustments
from lablib.errors import LabError

SET = {"axis_set_deg": 90.0, "width_set_mm": 50.0, "height_set_mm": 36.0}
AS_SET = {"axis_read_deg": 90.0, "width_read_mm": 50.0, "height_read_mm": 36.0}


def read(**changed: float) -> MorningLens:
    return MorningLens(**(SET | AS_SET | changed))


@pytest.mark.parametrize(
    ("changed", "adjust"),
    [
        ({}, ()),
        ({"axis_read_deg": 91.0}, ()),
        ({"axis_read_deg": 88.5}, ("axis",)),
        ({"width_read_mm": 50.1, "height_read_mm": 36.1}, ()),
        ({"width_read_mm": 50.2, "height_read_mm": 36.2}, ("size",)),
        ({"width_read_mm": 49.8, "height_read_mm": 35.8, "axis_read_deg": 92.0}, ("axis", "size")),
        ({"width_read_mm": 50.2, "height_read_mm": 35.8}, ("shape",)),
        ({"width_read_mm": 50.4, "height_read_mm": 36.1}, ("size", "shape")),
    ],
)
def test_what_is_to_be_set_right(changed: dict, adjust: tuple[str, ...]):
    assert read(**changed).adjust == adjust
    assert set(adjust) <= set(adjustments())


def test_what_is_off():
    lens = read(width_read_mm=50.3, height_read_mm=36.1)
    assert (lens.width_off_mm, lens.height_off_mm, lens.size_off_mm, lens.shape_off_mm) == (
        0.3,
        0.1,
        0.2,
        0.2,
    )


@pytest.mark.parametrize(
    ("was_set", "was_read", "off"),
    [(180.0, 2.0, 2.0), (2.0, 179.0, -3.0), (90.0, 0.0, 90.0), (45.0, 47.5, 2.5)],
)
def test_an_axis_counts_over_180(was_set: float, was_read: float, off: float):
    assert read(axis_set_deg=was_set, axis_read_deg=was_read).axis_off_deg == off


@pytest.mark.parametrize(
    ("changed", "message"),
    [
        (
            {"axis_read_deg": float("nan")},
            "axis_read_deg nan is not a finite number: give a number in degrees",
        ),
        ({"height_set_mm": 0.0}, "height_set_mm 0 is out of range: give from 10 to 80 mm"),
    ],
)
def test_readings_that_cannot_be(changed: dict, message: str):
    with pytest.raises(LabError) as caught:
        read(**changed)
    assert str(caught.value) == message
