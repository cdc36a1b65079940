"""The fringe against real rays: blue and red light sent through one lens."""

import numpy as np
import pytest
from ray_tracer import Placed, Sphere, TracedLens, deviation_prism_d

from lablib.optics.chromatic import abbe_number, fringe_at
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription

# Crown glass, Dictionary of Optometry: F, D and C lines.
N_F, N_D, N_C = 1.5293, 1.5230, 1.5204


@pytest.mark.parametrize("sphere", [-6.0, -3.0, 3.0, 6.0])
@pytest.mark.parametrize("up_mm", [-12.0, -4.0, 8.0])
def test_blue_and_red_come_apart_by_prism_over_abbe_number(sphere: float, up_mm: float):
    rx = Prescription(sphere_d=sphere)
    lens = lens_for(rx, index=N_D, front_curve_d=5.0 + sphere / 2.0, centre_thickness_mm=3.0)
    blue, red = (
        deviation_prism_d(
            TracedLens(
                front=Placed(Sphere(lens.front.flat_per_mm)),
                back=Placed(Sphere(lens.back.flat_per_mm), vertex_z_mm=3.0),
                index=index,
            ),
            np.array([0.0]),
            np.array([up_mm]),
        )[0, 1]
        for index in (N_F, N_C)
    )
    fringe = fringe_at(rx, eye="right", in_mm=0.0, up_mm=up_mm, abbe=abbe_number(n_f=N_F, n_d=N_D, n_c=N_C))
    # Prentice's rule leaves thickness and obliquity out.
    assert abs(blue - red) == pytest.approx(fringe.amount_prism_d, rel=0.12)
    # Blue is turned more towards the base than red.
    assert np.sign(blue - red) == np.sign(fringe.up_prism_d)
