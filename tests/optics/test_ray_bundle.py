"""Rays to draw: where they start, turn and end."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import tried

from lablib.errors import LabError
from lablib.optics.ray_bundle import ray_bundle


def test_parallel_light_through_a_plus_lens_ends_in_the_focus():
    rays = ray_bundle(4.0, half_width_mm=20.0, rays=5, before_mm=100.0, behind_mm=300.0)
    assert rays.focus_z_mm == 250.0
    assert rays.focus_in_picture
    np.testing.assert_allclose(rays.incoming_y_mm, np.outer([-20, -10, 0, 10, 20], [1, 1]))
    np.testing.assert_allclose(rays.incoming_z_mm, np.tile([-100.0, 0.0], (5, 1)))
    np.testing.assert_allclose(rays.leaving_z_mm, np.tile([0.0, 250.0], (5, 1)))
    np.testing.assert_allclose(rays.leaving_y_mm[:, 1], 0.0, atol=1e-12)
    assert rays.drawn_back_z_mm.shape == rays.drawn_back_y_mm.shape == (0, 2)


def test_a_focus_beyond_the_picture_ends_the_rays_at_its_edge():
    rays = ray_bundle(2.0, half_width_mm=10.0, rays=3, behind_mm=300.0)
    assert not rays.focus_in_picture
    np.testing.assert_allclose(rays.leaving_z_mm[:, 1], 300.0)
    np.testing.assert_allclose(rays.leaving_y_mm[:, 1], [-4.0, 0.0, 4.0])  # 10 (1 - 300 / 500)


def test_a_minus_lens_is_traced_back_to_its_virtual_focus():
    rays = ray_bundle(-4.0, half_width_mm=10.0, rays=3, before_mm=400.0, behind_mm=250.0)
    assert (rays.focus_z_mm, rays.focus_in_picture) == (-250.0, True)
    np.testing.assert_allclose(rays.leaving_y_mm[:, 1], [-20.0, 0.0, 20.0])
    np.testing.assert_allclose(rays.drawn_back_z_mm[:, 1], -250.0)
    np.testing.assert_allclose(rays.drawn_back_y_mm[:, 1], 0.0, atol=1e-12)
    near = ray_bundle(-4.0, half_width_mm=10.0, rays=3, before_mm=100.0)
    np.testing.assert_allclose(near.drawn_back_z_mm[:, 1], -100.0)
    assert not near.focus_in_picture


def test_plano_and_an_object_in_the_focus():
    plano = ray_bundle(0.0, rays=3)
    assert (plano.focus_z_mm, plano.focus_in_picture) == (math.inf, False)
    np.testing.assert_allclose(plano.leaving_y_mm, [[-20, -20], [0, 0], [20, 20]])
    out = ray_bundle(4.0, in_front_mm=250.0, half_width_mm=10.0, rays=2)
    assert out.focus_z_mm == math.inf
    np.testing.assert_allclose(out.incoming_z_mm[:, 0], -250.0)
    np.testing.assert_allclose(out.incoming_y_mm[:, 0], 0.0)
    np.testing.assert_allclose(out.leaving_y_mm, [[-10, -10], [10, 10]])


@tried
@given(st.floats(-20, 20), st.floats(60, 3000) | st.just(math.inf), st.floats(10, 40))
def test_every_ray_is_bent_by_its_height_times_the_power(power: float, in_front: float, half: float):
    rays = ray_bundle(power, in_front_mm=in_front, half_width_mm=half, rays=9)
    # Prentice's rule for a thin lens: the slope changes by minus height times power.
    coming = np.diff(rays.incoming_y_mm) / np.diff(rays.incoming_z_mm)
    leaving = np.diff(rays.leaving_y_mm) / np.diff(rays.leaving_z_mm)
    heights = rays.leaving_y_mm[:, :1]
    np.testing.assert_allclose(rays.incoming_y_mm[:, 1:], heights)
    # Light of under 0.005 D is taken as parallel.
    np.testing.assert_allclose(leaving - coming, -heights * power / 1000.0, atol=0.005 * half / 1000 + 1e-12)
    if rays.drawn_back_y_mm.size:
        back = np.diff(rays.drawn_back_y_mm) / np.diff(rays.drawn_back_z_mm)
        np.testing.assert_allclose(back, leaving, atol=1e-12)
        assert rays.focus_z_mm < 0.0


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"rays": 1}, "number of rays 1 cannot be drawn: give a whole number from 2 to 99"),
        ({"rays": 2.0}, "number of rays 2.0 cannot be drawn: give a whole number from 2 to 99"),
        ({"rays": True}, "number of rays True cannot be drawn: give a whole number from 2 to 99"),
        (
            {"before_mm": 0},
            "picture before the lens 0 is out of range: give above 0 and up to 100000 mm",
        ),
        ({"behind_mm": -1}, "picture behind the lens -1 is out of range: give above 0 and up to 100000 mm"),
        (
            {"half_width_mm": math.nan},
            "half-width of the bundle nan is not a finite number: give a number in mm",
        ),
        ({"in_front_mm": 0}, "object 0 mm in front of the lens is not in front of it: give a distance above"),
    ],
)
def test_words(values: dict, words: str):
    with pytest.raises(LabError) as caught:
        ray_bundle(4.0, **values)
    assert str(caught.value).startswith(words)
