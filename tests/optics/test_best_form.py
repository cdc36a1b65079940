"""Best form: Tscherning's quadratic, the third order against rays at small angles, forms by rays."""

import numpy as np
import pytest

from lablib.errors import LabError
from lablib.optics.best_form import Bending
from lablib.optics.tscherning import ASTIGMATISM, CRITERIA, MEAN_ERROR, TANGENTIAL_ERROR, ThinLens

POWERS = (-20.0, -8.0, -4.0, -2.0, 2.0, 4.0, 6.0)
READS = {ASTIGMATISM: "astigmatism_d", MEAN_ERROR: "mean_d", TANGENTIAL_ERROR: "tangential_d"}


def thin(power_d: float) -> tuple[ThinLens, Bending]:
    """One power, as a thin lens and as one just thick enough to be there 1 mm from its axis."""
    return ThinLens(power_d=power_d, index=1.5), Bending(power_d=power_d, index=1.5, centre_thickness_mm=0.02)


@pytest.mark.parametrize("power_d", POWERS)
def test_tscherning_by_his_formula(power_d: float):
    """F1^2 (n + 2) - F1 (2 (n^2 - 1) Z + F (n + 2)) + n (F + (n - 1) Z)^2 = 0 (memory)."""
    n, z = 1.5, 1000.0 / 27.0
    expected = np.roots([n + 2, -(2 * (n**2 - 1) * z + power_d * (n + 2)), n * (power_d + (n - 1) * z) ** 2])
    found = ThinLens(power_d=power_d, index=n).front_curves_d()
    assert found == pytest.approx(sorted(expected.real), abs=1e-9)


@pytest.mark.parametrize("power_d", POWERS)
@pytest.mark.parametrize("front_d", [2.0, 8.0])
def test_the_third_order_is_what_small_angles_come_to(power_d: float, front_d: float):
    """At 2 and at 1 degree: the errors themselves, and a quarter of them."""
    flat, bent = thin(power_d)
    for gaze_deg in (1.0, 2.0):
        tangential, sagittal = flat.errors_d(front_d, gaze_deg)
        rays = bent.errors(front_d, gaze_deg)
        # Measured: 8e-5 of an error that is up to 0.01 D, and the 0.02 mm of thickness.
        slack = 3e-5 + 0.01 * abs(tangential)
        assert rays.tangential_d[0] == pytest.approx(tangential, abs=slack)
        assert rays.sagittal_d[0] == pytest.approx(sagittal, abs=slack)


@pytest.mark.parametrize("power_d", POWERS)
@pytest.mark.parametrize("criterion", CRITERIA)
def test_forms_by_rays_at_a_small_angle_are_those_of_the_third_order(power_d: float, criterion: str):
    flat, bent = thin(power_d)
    expected = [front for front in flat.front_curves_d(criterion) if front < 25.0]
    found = bent.front_curves_d(gaze_deg=2.0, criterion=criterion)
    # Measured: 0.022 D at most.
    assert found == pytest.approx(expected, abs=0.03)


@pytest.mark.parametrize("criterion", CRITERIA)
@pytest.mark.parametrize("power_d", [-4.0, 4.0])
def test_a_form_found_leaves_none_of_its_error(power_d: float, criterion: str):
    bent = Bending(power_d=power_d, index=1.6, centre_thickness_mm=2.0 if power_d < 0 else 5.0)
    found = bent.front_curves_d(gaze_deg=30.0, criterion=criterion)
    assert len(found) == 2
    for front in found:
        error = getattr(bent.errors(front, 30.0), READS[criterion])[0]
        assert error == pytest.approx(0.0, abs=1e-6)


def test_for_a_real_lens_and_gaze_the_best_front_is_flatter_than_the_third_order_says():
    """-4.00, 2 mm, 30 degrees: 4.75 for 5.25 D; +4.00, 5 mm: 9.51 for 11.41 D."""
    for power, thickness, rays, third in ((-4.0, 2.0, 4.75, 5.25), (4.0, 5.0, 9.51, 11.41)):
        bent = Bending(power_d=power, index=1.5, centre_thickness_mm=thickness)
        assert bent.front_curves_d(gaze_deg=30.0)[0] == pytest.approx(rays, abs=0.005)
        assert ThinLens(power_d=power, index=1.5).front_curves_d()[0] == pytest.approx(third, abs=0.005)


def test_a_strong_plus_lens_has_no_such_form_until_its_front_is_a_conic():
    bent = Bending(power_d=12.0, index=1.5, centre_thickness_mm=8.0)
    assert ThinLens(power_d=12.0, index=1.5).front_curves_d() == ()
    assert bent.front_curves_d(gaze_deg=30.0) == ()
    (p_value,) = bent.p_values(front_curve_d=15.0, gaze_deg=30.0)
    assert p_value == pytest.approx(0.774, abs=5e-4)
    assert bent.errors(15.0, 30.0, p_value=p_value).astigmatism_d[0] == pytest.approx(0.0, abs=1e-6)


def test_where_an_error_grows_beyond_bounds_is_no_form():
    """+6.00, 5 mm: beside a front of -9.4 D the power grows without bounds, and changes its sign there."""
    found = Bending(power_d=6.0, index=1.5, centre_thickness_mm=5.0).front_curves_d(gaze_deg=30.0)
    assert found == pytest.approx((12.25, 15.71), abs=0.005)


def test_what_has_no_answer_is_refused():
    with pytest.raises(
        LabError, match=r"power 0.00 D has no oblique error, whatever its curve: give a power"
    ):
        ThinLens(power_d=0.0, index=1.5).front_curves_d()
    with pytest.raises(LabError, match=r"criterion 'best' is not known: give one of oblique astigmatism, "):
        ThinLens(power_d=2.0, index=1.5).front_curves_d("best")
    with pytest.raises(LabError, match=r"criterion 'best' is not known"):
        Bending(power_d=2.0, index=1.5, centre_thickness_mm=3.0).front_curves_d(gaze_deg=30, criterion="best")
    for power, gaze in ((0.0, 30.0), (4.0, 0.0)):
        bent = Bending(power_d=power, index=1.5, centre_thickness_mm=3.0)
        with pytest.raises(LabError, match=r"straight ahead or without power there is no oblique error"):
            bent.front_curves_d(gaze_deg=gaze)
        with pytest.raises(LabError, match=r"straight ahead or without power there is no oblique error"):
            bent.p_values(front_curve_d=6.0, gaze_deg=gaze)
    with pytest.raises(LabError, match=r"power 50 is out of range"):
        ThinLens(power_d=50.0, index=1.5)


@pytest.mark.parametrize(
    ("part", "value", "message"),
    [
        ("power_d", 50.0, "power 50 is out of range"),
        ("index", 1.1, "index 1.1 is out of range"),
        ("centre_thickness_mm", 0.0, "centre thickness 0 is out of range: give above 0 and up to 60 mm"),
        ("centre_of_rotation_mm", 5.0, "centre of rotation 5 is out of range: give from 18 to 45 mm"),
    ],
)
def test_a_lens_that_cannot_be_is_refused(part: str, value: float, message: str):
    good = {"power_d": 4.0, "index": 1.5, "centre_thickness_mm": 3.0, "centre_of_rotation_mm": 27.0}
    with pytest.raises(LabError, match=message):
        Bending(**(good | {part: value}))
