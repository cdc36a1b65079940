"""The invented jig: what it gives without scatter is the model, and thin scrap is refused."""

from dataclasses import replace

import numpy as np
import pytest

from lablib.bench.contact import block_contact
from lablib.bench.grip_fit import fit_grip
from lablib.bench.jig import JigDay, held_nmm, jig_readings, least_scrap_mm
from lablib.bench.machine import Bench
from lablib.errors import LabError

ROUND, BENCH = block_contact("round"), Bench()


def test_without_scatter_the_exact_vector_comes_out():
    found = jig_readings(JigDay(coat="slick", times=1, scatter=0.0), ROUND, BENCH)
    assert [one.torque_nmm for one in found] == pytest.approx([284.6, 460.6, 636.6, 812.6], abs=0.05)
    assert [one.sliding_nmm / one.torque_nmm for one in found] == pytest.approx([BENCH.sliding_share] * 4)


def test_the_core_gives_where_it_is_the_weakest_joint():
    torques = [held_nmm("coated", force, ROUND, BENCH) for force in (100.0, 200.0, 350.0, 400.0)]
    assert torques[1] - torques[0] == pytest.approx(0.4 * 8.0 * 100.0)
    assert torques[2] == torques[3] == pytest.approx(BENCH.core_shear_mpa * ROUND.w_mm3)


def test_known_numbers_come_back_over_many_days():
    fits = [fit_grip(jig_readings(JigDay(coat="slick", day=day), ROUND, BENCH), ROUND) for day in range(200)]
    assert np.mean([fit.shear_mpa.value for fit in fits]) == pytest.approx(0.03, abs=0.002)
    assert np.mean([fit.friction.value for fit in fits]) == pytest.approx(0.22, abs=0.005)
    assert np.mean([fit.sliding_share.value for fit in fits]) == pytest.approx(0.8, abs=0.01)


def test_a_day_is_the_same_each_time_and_unlike_another():
    first, again, other = (jig_readings(JigDay(coat="slick", day=day), ROUND, BENCH) for day in (1, 1, 2))
    assert first == again
    assert first != other


def test_400_n_need_scrap_of_1_41_mm():
    assert least_scrap_mm(400.0, BENCH) == pytest.approx(1.41, abs=5e-3)
    assert least_scrap_mm(400.0, replace(BENCH, bending_share=0.8)) == pytest.approx(2 * 1.4085, abs=1e-3)
    with pytest.raises(
        LabError, match=r"scrap of 1.4 mm does not bear 400 N: that takes 1.41 mm in the middle"
    ):
        JigDay(coat="slick", scrap_mm=1.4)
    assert JigDay(coat="slick", scrap_mm=1.41)


@pytest.mark.parametrize("wrong", [{"times": 0}, {"scatter": 0.6}, {"scrap_mm": 0.0}])
def test_what_cannot_be_tried_is_refused(wrong: dict):
    with pytest.raises(LabError, match=next(iter(wrong))):
        JigDay(coat="slick", **wrong)


def test_no_force_below_0():
    with pytest.raises(LabError, match="force_n"):
        least_scrap_mm(-1.0, BENCH)
