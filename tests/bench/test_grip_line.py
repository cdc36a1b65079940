"""The line through readings: its band against the closed form, the line through 0, and typed readings."""

import numpy as np
import pytest
from scipy import stats

from lablib.bench.contact import block_contact, r_eff_mm
from lablib.bench.fitted import Fitted, student_factor
from lablib.bench.grip_fit import BreakLoose, GripFit, fit_grip
from lablib.bench.grip_line import band_nmm, friction_through_zero, line_nmm, readings_from, readings_needed
from lablib.errors import LabError

ROUND = block_contact("round")
EXACT = {100.0: 284.6, 200.0: 460.6, 300.0: 636.6, 400.0: 812.6}


def fitted(*offs: float) -> GripFit:
    return fit_grip(
        [
            BreakLoose(clamp_n=force, torque_nmm=torque + off)
            for off in offs
            for force, torque in EXACT.items()
        ],
        ROUND,
    )


def test_the_line_and_its_band():
    fit = fitted(-30.0, 30.0)
    assert line_nmm(fit, np.array([0.0, 250.0])) == pytest.approx([108.6, 548.6], abs=0.05)
    # In the middle of the forces the band is that of a mean.
    spread = np.sqrt(8 * 30.0**2 / 6.0)
    at_the_middle = stats.t.ppf(0.975, 6) * spread / np.sqrt(8.0)
    assert band_nmm(fit, np.array([250.0])) == pytest.approx([at_the_middle])
    # With no force the line is what sticks, and its band the error of that.
    reach = student_factor(0.95, freedom=6) * fit.shear_mpa.error * ROUND.w_mm3
    assert band_nmm(fit, np.array([0.0])) == pytest.approx([reach])
    assert band_nmm(fit, np.array([100.0])) == pytest.approx(band_nmm(fit, np.array([400.0])))


def test_through_the_origin_what_sticks_is_taken_for_friction():
    assert friction_through_zero(fitted(0.0, 0.0)) == pytest.approx(0.265, abs=5e-4)
    assert friction_through_zero(fitted(0.0, 0.0)) * r_eff_mm(ROUND) == pytest.approx(2.122, abs=1e-3)


def test_half_the_error_takes_four_times_the_readings():
    assert readings_needed(12, error=0.02, wanted=0.01) == 48.0
    for wrong in ({"readings": 0}, {"error": 0.0}, {"wanted": 0.0}):
        with pytest.raises(LabError, match=next(iter(wrong))):
            readings_needed(**({"readings": 12, "error": 0.02, "wanted": 0.01} | wrong))


def test_students_t():
    # Table of Student's t, two-sided 95 %: 2.228 for 10, 4.303 for 2 (from memory, any table has it).
    assert student_factor(0.95, freedom=10) == pytest.approx(2.228, abs=5e-4)
    assert student_factor(0.95, freedom=2) == pytest.approx(4.303, abs=5e-4)
    assert Fitted(value=1.0, error=0.1).interval(freedom=10) == pytest.approx((0.7772, 1.2228), abs=5e-5)


def test_readings_are_read_as_they_are_typed():
    found = readings_from("100 0.285 0.230\n\n  200 0,461\n", "coated")
    assert found == (
        BreakLoose(clamp_n=100.0, torque_nmm=285.0, sliding_nmm=230.0, coat="coated"),
        BreakLoose(clamp_n=200.0, torque_nmm=461.0, coat="coated"),
    )
    assert readings_from("", "slick") == ()


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("100 0.285\n200 much", "line 2, '200 much', is not numbers: write force in N, torque in N m"),
        ("100", "line 1 has 1 numbers: write force in N, break-loose torque in N m"),
        ("100 0.2 0.1 0.3", "line 1 has 4 numbers"),
        ("100 285", "line 1: torque_nmm"),
        ("100 0.2 0.3", "line 1: sliding_nmm"),
        ("900 0.2", "line 1: clamp_n"),
    ],
)
def test_readings_that_cannot_be_are_refused_with_their_line(text: str, words: str):
    with pytest.raises(LabError, match=words):
        readings_from(text, "slick")


def test_a_fitted_number_is_stated_with_its_error():
    assert Fitted(value=0.2181, error=0.0118).stated(3) == "0.218 ± 0.012"
