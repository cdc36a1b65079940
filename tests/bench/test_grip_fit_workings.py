"""The line through readings as workings: the reference vector, and every printed substitution comes out."""

import pytest
from evaluation import assert_comes_out

from lablib.bench.grip_fit_workings import ReadingsOnALine, friction_workings, shear_workings

EXACT = ReadingsOnALine(
    across_mm=24.0, forces_n=(100.0, 200.0, 300.0, 400.0), torques_nmm=(284.6, 460.6, 636.6, 812.6)
)


def test_the_exact_vector():
    rise, lever, friction = friction_workings(EXACT)
    assert (rise.value, lever.value, friction.value) == pytest.approx((1.76, 8.0, 0.22))
    _, sticks, turning, shear = shear_workings(EXACT)
    assert (sticks.value, turning.value) == pytest.approx((108.6, 3619.11), abs=0.01)
    assert shear.value == pytest.approx(0.03, abs=2e-5)


@pytest.mark.parametrize("across_mm", [18.0, 24.0, 30.0])
def test_what_is_printed_comes_out(across_mm: float):
    case = ReadingsOnALine(across_mm=across_mm, forces_n=EXACT.forces_n, torques_nmm=EXACT.torques_nmm)
    for working in (*friction_workings(case), *shear_workings(case)):
        assert_comes_out(working)
