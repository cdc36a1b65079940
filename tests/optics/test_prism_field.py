"""The prism of a lens at many points, to draw."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import computed, eyes, tried

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at
from lablib.optics.prism_field import prism_on_grid, prism_on_rings


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# Matrix form (Long 1976), computed: right -4.00 -2.00 x 030, 5 mm nasal 2.25 in with 0.433 down.
def test_a_grid_holds_the_published_point():
    field = prism_on_grid(rx(-4, -2, 30), eye="right", half_width_mm=5, half_height_mm=10, columns=3, rows=3)
    assert field.x_mm.shape == field.base_y_prism_d.shape == (3, 3)
    assert (field.x_mm[1, 2], field.y_mm[1, 2]) == (5.0, 0.0)
    assert field.in_prism_d[1, 2] == pytest.approx(2.25, abs=0.005)
    assert field.up_prism_d[1, 2] == pytest.approx(-0.433, abs=0.0005)
    assert field.amount_prism_d[1, 1] == 0.0
    assert field.amount_prism_d[1, 2] == pytest.approx(math.hypot(2.25, 0.433), abs=0.0005)


@pytest.mark.parametrize("eye", list(Eye))
def test_bases_point_to_the_centre_of_a_plus_lens_and_away_from_that_of_a_minus_lens(eye: Eye):
    for power in (3.0, -3.0):
        field = prism_on_rings(rx(power), eye=eye, radius_mm=20, rings=4, spokes=8)
        assert field.x_mm.shape == (4, 8)
        np.testing.assert_allclose(np.hypot(field.x_mm, field.y_mm)[:, 0], [5, 10, 15, 20])
        np.testing.assert_allclose(field.amount_prism_d[:, 0], [1.5, 3.0, 4.5, 6.0])
        outwards = field.base_x_prism_d * field.x_mm + field.base_y_prism_d * field.y_mm
        assert np.all(outwards * power < 0.0)


@tried
@given(computed(), eyes, st.integers(2, 6), st.integers(2, 6))
def test_every_point_has_its_prism(lens: Prescription, eye: Eye, columns: int, rows: int):
    field = prism_on_grid(lens, eye=eye, half_width_mm=25, half_height_mm=20, columns=columns, rows=rows)
    assert field.x_mm.shape == (rows, columns)
    x, y = field.x_mm[0, 1], field.y_mm[0, 1]
    inwards, upwards = prism_at(lens, eye=eye, in_mm=eye.nasal_sign * x, up_mm=y)
    assert (field.in_prism_d[0, 1], field.up_prism_d[0, 1]) == pytest.approx((inwards, upwards))
    assert field.base_x_prism_d[0, 1] == pytest.approx(eye.nasal_sign * inwards)
    # As drawn the field does not know the eye.
    other = prism_on_grid(lens, eye="left", half_width_mm=25, half_height_mm=20, columns=columns, rows=rows)
    np.testing.assert_allclose(other.base_x_prism_d, field.base_x_prism_d, atol=1e-9)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (
            lambda: prism_on_grid(rx(1), eye="right", half_width_mm=0, half_height_mm=20),
            "half-width of the prism field 0 is out of range: give above 0 and up to 50 mm",
        ),
        (
            lambda: prism_on_grid(rx(1), eye="right", half_width_mm=20, half_height_mm=60),
            "half-height of the prism field 60 is out of range: give above 0 and up to 50 mm",
        ),
        (
            lambda: prism_on_grid(rx(1), eye="right", half_width_mm=20, half_height_mm=20, columns=1),
            "number of columns 1 cannot be drawn: give a whole number from 2 to 201",
        ),
        (
            lambda: prism_on_grid(rx(1), eye="right", half_width_mm=20, half_height_mm=20, rows=2.5),
            "number of rows 2.5 cannot be drawn: give a whole number from 2 to 201",
        ),
        (
            lambda: prism_on_rings(rx(1), eye="right", radius_mm=20, rings=0),
            "number of rings 0 cannot be drawn: give a whole number from 1 to 201",
        ),
        (
            lambda: prism_on_rings(rx(1), eye="right", radius_mm=20, spokes=True),
            "number of spokes True cannot be drawn: give a whole number from 2 to 201",
        ),
        (
            lambda: prism_on_rings(rx(1), eye="right", radius_mm=math.inf),
            "radius of the prism field inf is not a finite number: give a number in mm",
        ),
        (
            lambda: prism_on_rings(rx(1), eye="both", radius_mm=20),
            'eye \'both\' is not an eye: give "right" or "left"',
        ),
    ],
)
def test_words(call, words: str):
    with pytest.raises(LabError) as caught:
        call()
    assert str(caught.value) == words
