"""A bench's own grip from break-loose readings: known numbers come back, and bad readings are refused."""

import numpy as np
import pytest

from lablib.bench.contact import Ellipse, block_contact, r_eff_mm
from lablib.bench.grip_fit import BreakLoose, GripFit, fit_grip
from lablib.errors import LabError

ROUND = block_contact("round")
FORCES = (100.0, 200.0, 300.0, 400.0)
# Slip model of the workbook: tau 0.03, mu 0.22, a block of 12 mm radius.
EXACT = dict(zip(FORCES, (284.6, 460.6, 636.6, 812.6), strict=True))


def readings(torques: dict[float, float], times: int = 2, **given: object) -> list[BreakLoose]:
    return [
        BreakLoose(clamp_n=force, torque_nmm=torque, **given)
        for force, torque in torques.items()
        for _ in range(times)
    ]


def test_the_exact_vector_comes_back():
    found = fit_grip(readings(EXACT), ROUND)
    assert found.shear_mpa.value == pytest.approx(0.03, abs=2e-5)
    assert found.friction.value == pytest.approx(0.22, abs=1e-9)
    assert found.friction.error == pytest.approx(0.0, abs=1e-9)
    assert found.left_out == ()
    assert found.freedom == 6
    assert found.torque_nmm(250.0) == pytest.approx(548.6, abs=0.05)
    # Through the origin the adhesive would be friction: the usual mistake.
    force, torque = (np.array(list(part)) for part in (EXACT.keys(), EXACT.values()))
    assert (force * torque).sum() / (force**2).sum() / r_eff_mm(ROUND) == pytest.approx(0.27, abs=0.005)


def test_known_numbers_come_back_from_scattered_readings():
    generator, covered, shears, frictions = np.random.default_rng(5), 0, [], []
    for _ in range(400):
        torques = [
            BreakLoose(clamp_n=force, torque_nmm=EXACT[force] * (1.0 + 0.08 * generator.standard_normal()))
            for force in FORCES
            for _ in range(3)
        ]
        found = fit_grip(torques, ROUND)
        shears.append(found.shear_mpa.value)
        frictions.append(found.friction.value)
        low, high = found.friction.interval(freedom=found.freedom)
        covered += low <= 0.22 <= high
    assert np.mean(shears) == pytest.approx(0.03, abs=0.002)
    assert np.mean(frictions) == pytest.approx(0.22, abs=0.005)
    # The interval is that of even scatter; this one grows with the torque.
    assert 0.88 < covered / 400 < 0.98


def test_readings_that_no_longer_rise_are_left_out():
    levelled = EXACT | {400.0: 640.0, 500.0: 638.0}
    found = fit_grip(readings(levelled), ROUND)
    assert {one.clamp_n for one in found.left_out} == {400.0, 500.0}
    assert found.friction.value == pytest.approx(0.22, abs=1e-9)
    assert found.forces_n == (100.0, 300.0)


def test_what_is_left_below_must_still_be_a_ground_for_a_line():
    few = readings({100.0: 300.0, 200.0: 500.0, 300.0: 505.0})
    with pytest.raises(
        LabError, match="from 300 N on the torque no longer rises, and the 4 readings at 2 for"
    ):
        fit_grip(few, ROUND)
    early = readings({50.0: 300.0} | dict.fromkeys((100.0, 150.0, 200.0, 250.0, 300.0), 600.0), times=1)
    with pytest.raises(LabError, match=r"from 150 N on .* 2 readings at 2 forces below fit any line: take 6"):
        fit_grip(early, ROUND)


def test_beyond_the_forces_tried_nothing_is_said():
    with pytest.raises(LabError, match="clamp_n 450 N lies outside the 100 to 400 N that were tried"):
        fit_grip(readings(EXACT), ROUND).torque_nmm(450.0)


def test_a_block_of_another_shape_has_its_own_w():
    narrow = Ellipse(half_width_mm=12.0, half_height_mm=8.5)
    torques = {force: 0.03 * narrow.w_mm3 + 0.22 * r_eff_mm(narrow) * force for force in FORCES}
    found = fit_grip(readings(torques), narrow)
    assert (found.shear_mpa.value, found.friction.value) == pytest.approx((0.03, 0.22))
    # Taken for the round block, the numbers come out wrong: the block is part of the reading.
    assert fit_grip(readings(torques), ROUND).friction.value < 0.2


def test_sliding_over_break_loose():
    some = [
        BreakLoose(clamp_n=force, torque_nmm=torque, sliding_nmm=share * torque)
        for force, torque in EXACT.items()
        for share in (0.78, 0.82)
    ]
    share = fit_grip(some, ROUND).sliding_share
    assert share.value == pytest.approx(0.80)
    assert share.error == pytest.approx(0.02 / 7.0**0.5)
    assert fit_grip(readings(EXACT), ROUND).sliding_share is None


def test_scatter_is_a_share_of_the_mean():
    uneven = [
        BreakLoose(clamp_n=force, torque_nmm=torque + sign * 20.0)
        for force, torque in EXACT.items()
        for sign in (1, -1)
    ]
    found: GripFit = fit_grip(uneven, ROUND)
    assert found.scatter == pytest.approx((8 * 400.0 / 6) ** 0.5 / 548.6, rel=1e-4)


@pytest.mark.parametrize(
    ("some", "said"),
    [
        (
            readings({100.0: 280.0, 200.0: 460.0}, 3),
            "6 readings at 2 forces fit any line: take 6 or more at 3",
        ),
        (readings(EXACT, 1), "4 readings at 4 forces fit any line"),
        (
            readings(EXACT, 1) + readings(EXACT, 1, coat="coated"),
            "readings on coated, slick are pooled: fit each coat by itself",
        ),
        (
            readings({100.0: 900.0, 200.0: 600.0, 300.0: 300.0}),
            "below 0: torque and force are exchanged, or two joints are mixed",
        ),
        (
            readings({100.0: 50.0, 200.0: 400.0, 300.0: 750.0}),
            "the readings give a shear strength of",
        ),
    ],
)
def test_bad_readings_are_refused_with_the_reason(some, said):
    with pytest.raises(LabError) as found:
        fit_grip(some, ROUND)
    assert said in str(found.value)


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"clamp_n": 0.0, "torque_nmm": 300.0}, "clamp_n"),
        ({"clamp_n": 600.0, "torque_nmm": 300.0}, "clamp_n"),
        ({"clamp_n": 300.0, "torque_nmm": -1.0}, "torque_nmm"),
        ({"clamp_n": 300.0, "torque_nmm": 300.0, "sliding_nmm": 310.0}, "sliding_nmm"),
        (
            {"clamp_n": 300.0, "torque_nmm": 300.0, "coat": "velvet"},
            "coat 'velvet' is not known: give one of",
        ),
    ],
)
def test_a_reading_that_cannot_be_is_refused(given, said):
    with pytest.raises(LabError, match=said):
        BreakLoose(**given)
