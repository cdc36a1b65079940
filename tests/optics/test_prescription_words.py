"""What is said to somebody who gives a prescription that cannot be."""

import math

import pytest

from lablib.errors import LabError
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.unclear import AxisMissing, UnclearPrescription


def rx(sphere: float, cylinder: float = 0.0) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder)


def test_a_cylinder_without_axis_is_asked_about():
    with pytest.raises(AxisMissing) as caught:
        rx(-2.25, -1.0)
    fault = caught.value
    assert isinstance(fault, UnclearPrescription)
    assert isinstance(fault, LabError)
    assert fault.name == "cylinder-without-axis"
    assert str(fault) == "cylinder -1.00 has no axis: it cannot be made without one; ask the prescriber"
    assert fault.question == "What is the axis of the cylinder -1.00?"
    assert fault.as_written == "-2.25 -1.00"


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"sphere_d": 40.5}, "sphere 40.5 is out of range: give from -40 to 40 D"),
        ({"sphere_d": "2"}, "sphere '2' is not a number: give a number in D"),
        ({"sphere_d": True}, "sphere True is not a number: give a number in D"),
        ({"sphere_d": math.nan}, "sphere nan is not a finite number: give a number in D"),
        (
            {"sphere_d": 0, "cylinder_d": -20.25, "axis_deg": 90},
            "cylinder -20.25 is out of range: give from -20 to 20 D",
        ),
        (
            {"sphere_d": -35, "cylinder_d": -6, "axis_deg": 90},
            "sphere and cylinder together -41 is out of range: give from -40 to 40 D",
        ),
        (
            {"sphere_d": 1, "cylinder_d": 1, "axis_deg": 0},
            "axis 0 is written 180: give an axis above 0 and up to 180 degrees",
        ),
        (
            {"sphere_d": 1, "cylinder_d": 1, "axis_deg": 194},
            "axis 194 is not a cylinder axis: give an axis above 0 and up to 180 degrees",
        ),
        (
            {"sphere_d": 1, "axis_deg": -5},
            "axis -5 is not a cylinder axis: give an axis above 0 and up to 180 degrees",
        ),
        ({"sphere_d": 1, "axis_deg": math.inf}, "axis inf is not a finite number: give a number in degrees"),
        ({"sphere_d": 1, "addition_d": -1}, "addition -1 is out of range: give from 0 to 12 D"),
        ({"sphere_d": 1, "addition_d": 12.5}, "addition 12.5 is out of range: give from 0 to 12 D"),
    ],
)
def test_words_for_values_out_of_range(values: dict, words: str):
    with pytest.raises(LabError) as caught:
        Prescription(**values)
    assert str(caught.value) == words


def test_words_for_vertex_distances():
    with pytest.raises(LabError, match=r"tested vertex distance 41 is out of range: give from 0 to 40 mm"):
        at_vertex_distance(rx(1), from_mm=41, to_mm=12)
    with pytest.raises(LabError, match=r"^vertex distance -1 is out of range: give from 0 to 40 mm"):
        at_vertex_distance(rx(1), from_mm=12, to_mm=-1)
    with pytest.raises(LabError) as caught:
        at_vertex_distance(rx(40), from_mm=40, to_mm=10)
    assert str(caught.value) == (
        "power +40.00 D cannot be moved 30 mm towards the eye: its focus lies nearer than that; "
        "check the power and both distances"
    )


@pytest.mark.parametrize("matrix", [[[1, 2, 3]], [[1, math.nan], [0, 1]], "text", None, [[1, 0], [0]]])
def test_words_for_a_matrix_of_another_kind(matrix: object):
    with pytest.raises(LabError, match=r"is not two rows of two finite numbers: give \[\[a, b\], \[b, c\]\]"):
        Prescription.from_power_matrix(matrix)


def test_words_for_a_matrix_that_is_not_symmetric_and_a_vector_that_is_no_number():
    with pytest.raises(LabError) as caught:
        Prescription.from_power_matrix([[1, 2], [3, 1]])
    assert str(caught.value) == (
        "power matrix [[1.0, 2.0], [3.0, 1.0]] is not symmetric: a thin lens has equal numbers off the "
        "diagonal; give [[a, b], [b, c]]"
    )
    with pytest.raises(LabError, match="power vector part J0 nan is not a finite number"):
        Prescription.from_power_vector(1.0, math.nan, 0.0)
