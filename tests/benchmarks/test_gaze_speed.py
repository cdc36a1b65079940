"""How long the oblique errors over 41 directions of gaze take: under 1 ms, for a slider that is dragged."""

import numpy as np
import pytest

from lablib.optics.best_form import Bending
from lablib.optics.chief_rays import WornLens
from lablib.optics.lens import lens_for
from lablib.optics.oblique import oblique_errors
from lablib.optics.prescription import Prescription
from lablib.optics.tilt import Tilt

GAZE_DEG = np.linspace(-40.0, 40.0, 41)


@pytest.mark.parametrize("cylinder_d", [0.0, -2.0], ids=["sphere", "torus"])
def test_41_directions_of_gaze(benchmark, cylinder_d: float):
    rx = Prescription(sphere_d=-4.0, cylinder_d=cylinder_d, axis_deg=30.0)
    lens = lens_for(rx, index=1.6, front_curve_d=4.0, centre_thickness_mm=2.0)
    worn = WornLens(lens=lens, tilt=Tilt(pantoscopic_deg=8.0, wrap_deg=5.0), drop_mm=4.0)
    errors = benchmark(lambda: oblique_errors(worn, GAZE_DEG))
    assert np.isfinite(errors.mean_d).all()


def test_the_search_for_a_best_form(benchmark):
    bending = Bending(power_d=-4.0, index=1.6, centre_thickness_mm=2.0)
    assert len(benchmark(lambda: bending.front_curves_d(gaze_deg=30.0))) == 2
