"""Where the centre of a tilted lens goes, and the prism and distances of tilt and wrap."""

import math

import numpy as np
import pytest

from lablib.errors import LabError
from lablib.optics.chief_rays import WornLens, chief_rays
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.optics.tilt import Tilt
from lablib.optics.tilt_place import (
    centre_drop_by_rule_mm,
    centre_drop_mm,
    lens_height_mm,
    tilt_prism_prism_d,
    wrapped_decentration_in_mm,
)


def test_one_millimetre_for_two_degrees():
    """8 degrees: 4 mm down by the rule, 27 tan 8 = 3.79 mm by the triangle."""
    assert centre_drop_by_rule_mm(8.0) == 4.0
    assert centre_drop_mm(8.0) == pytest.approx(3.79, abs=0.005)
    assert centre_drop_mm(2.0) == pytest.approx(0.94, abs=0.005)
    assert centre_drop_mm(-6.0) == -centre_drop_mm(6.0)
    assert lens_height_mm(24.0, drop_mm=4.0) == 20.0


def test_rule_and_triangle_lie_within_half_a_millimetre_up_to_fifteen_degrees():
    tilts = np.arange(0.0, 15.1, 1.0)
    apart = [centre_drop_by_rule_mm(tilt) - centre_drop_mm(tilt) for tilt in tilts]
    assert 0.0 <= min(apart) < max(apart) < 0.3


def test_along_the_line_ahead_the_drop_has_the_sine():
    """What the docstring says: 0.07 mm less at 10 degrees and 27 mm."""
    less = centre_drop_mm(10.0) - 27.0 * math.sin(math.radians(10.0))
    assert less == pytest.approx(0.07, abs=0.005)


@pytest.mark.parametrize("power", [-4.0, 0.0, 4.0])
@pytest.mark.parametrize("tilt_deg", [5.0, 10.0])
def test_the_prism_of_a_tilt_is_what_traced_rays_say_whatever_the_power(power: float, tilt_deg: float):
    lens = lens_for(Prescription(sphere_d=power), index=1.5, front_curve_d=8.0, centre_thickness_mm=4.0)
    found = tilt_prism_prism_d(tilt_deg, front_curve_d=8.0, centre_thickness_mm=4.0, index=1.5)
    rays = chief_rays(WornLens(lens=lens, tilt=Tilt(wrap_deg=tilt_deg)), 0.0)
    assert found == pytest.approx(rays.deviation_prism_d[0], rel=0.02)


def test_the_base_is_out_for_wrap_and_down_for_pantoscopic_tilt():
    """A ray seen straight ahead comes from the side of the base: light is bent towards it."""
    lens = lens_for(Prescription(sphere_d=0.0), index=1.5, front_curve_d=8.0, centre_thickness_mm=4.0)
    for eye, nasal in (("right", 1.0), ("left", -1.0)):
        out = chief_rays(WornLens(lens=lens, tilt=Tilt(wrap_deg=10.0, eye=eye)), 0.0).outwards[0]
        assert out[0] * nasal < -1e-3
    assert chief_rays(WornLens(lens=lens, tilt=Tilt(pantoscopic_deg=10.0)), 0.0).outwards[0, 1] < -1e-3


def test_a_wrapped_lens_is_decentred_less_than_a_flat_one():
    """A 62, DBL 16, distance 32: 7.0 mm in when flat; wrapped by 20 degrees 5.46 mm."""
    frame = {"a_mm": 62.0, "dbl_mm": 16.0, "monocular_pd_mm": 32.0}
    assert wrapped_decentration_in_mm(**frame, wrap_deg=0.0) == 7.0
    assert wrapped_decentration_in_mm(**frame, wrap_deg=20.0) == pytest.approx(5.46, abs=0.005)


def test_wrapped_decentration_by_two_points_in_the_plane():
    """The boxed centre and the eye's line on a plate turned about its nasal edge, in coordinates."""
    turn = math.radians(17.0)
    along = np.array([math.cos(turn), math.sin(turn)])
    hinge = np.array([8.0, 0.0])
    centre = hinge + 31.0 * along
    before_the_eye = hinge + (32.0 - 8.0) / along[0] * along
    found = wrapped_decentration_in_mm(a_mm=62.0, dbl_mm=16.0, monocular_pd_mm=32.0, wrap_deg=17.0)
    assert found == pytest.approx((centre - before_the_eye) @ along, abs=1e-12)


def test_what_cannot_be_is_refused():
    with pytest.raises(LabError, match=r"pantoscopic tilt 31 is out of range"):
        centre_drop_mm(31.0)
    with pytest.raises(LabError, match=r"pantoscopic tilt 31 is out of range"):
        centre_drop_by_rule_mm(31.0)
    with pytest.raises(
        LabError, match=r"pupil height 3 mm less a drop of 4 mm leaves the lens below its rim"
    ):
        lens_height_mm(3.0, drop_mm=4.0)
    with pytest.raises(LabError, match=r"tilt 35 is out of range"):
        tilt_prism_prism_d(35.0, front_curve_d=6.0, centre_thickness_mm=2.0, index=1.5)
    with pytest.raises(LabError, match=r"wrap 35 is out of range"):
        wrapped_decentration_in_mm(a_mm=60.0, dbl_mm=16.0, monocular_pd_mm=32.0, wrap_deg=35.0)
