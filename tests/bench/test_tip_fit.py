"""The back tip on the real back: the slip model's table, rigid and on a swivel."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.bench.faces import LensFaces
from lablib.bench.holding import holding
from lablib.bench.machine import Bench
from lablib.bench.setup import Setup
from lablib.bench.tip_fit import TipFit, tip_fit
from lablib.errors import LabError


def back(flat_mm: float, steep_mm: float, *, tilt_deg: float = 0.0) -> LensFaces:
    return LensFaces(
        front_flat_per_mm=0.0,
        front_steep_per_mm=0.0,
        back_flat_per_mm=1.0 / flat_mm,
        back_steep_per_mm=1.0 / steep_mm,
        tilt_x=math.tan(math.radians(tilt_deg)),
    )


def fit(faces: LensFaces, tip_mm: float, stiffness: str, *, swivels: bool = False) -> TipFit:
    return tip_fit(faces, tip_face_mm=tip_mm, stiffness=stiffness, swivels=swivels)


@pytest.mark.parametrize(
    ("faces", "tip_mm", "torque", "force", "peak"),
    [
        # Slip model of the workbook: q_T soft, stiff; q_F soft, stiff; stiff peak pressure in MPa.
        (back(60.0, 60.0), 60.0, (1.0, 1.0), (1.0, 1.0), 1.2),
        (back(50.0, 50.0), 90.0, (1.08, 0.97), (0.98, 0.70), 5.8),
        (back(150.0, 150.0), 60.0, (0.87, 0.36), (0.97, 0.69), 6.2),
        (back(150.0, 50.0), 75.0, (0.97, 0.81), (0.98, 0.66), 9.5),
        (back(75.0, 75.0, tilt_deg=3.0), 75.0, (0.88, 0.74), (0.89, 0.60), 11.3),
    ],
)
def test_the_table_of_the_slip_model(
    faces: LensFaces, tip_mm: float, torque: tuple, force: tuple, peak: float
):
    soft, stiff = fit(faces, tip_mm, "soft"), fit(faces, tip_mm, "stiff")
    # The table is of parabolas, these are arcs: half a unit of its last figure and a little.
    assert (soft.torque_share, stiff.torque_share) == pytest.approx(torque, abs=0.012)
    assert (soft.force_share, stiff.force_share) == pytest.approx(force, abs=0.012)
    assert stiff.peak_mpa == pytest.approx(peak, rel=0.03)


def test_a_tilted_back_is_nothing_to_a_swivel():
    for stiffness in ("soft", "stiff"):
        on = fit(back(75.0, 75.0, tilt_deg=3.0), 75.0, stiffness, swivels=True)
        assert (on.torque_share, on.force_share, on.contact_share) == pytest.approx((1.0, 1.0, 1.0), abs=1e-6)


@settings(max_examples=25, deadline=None)
@given(
    flat=st.integers(60, 200),
    ratio=st.floats(0.4, 1.0),
    tip=st.integers(40, 150),
    tilt=st.floats(0.0, 3.0),
    stiffness=st.sampled_from(["soft", "stiff"]),
)
def test_a_tip_that_does_not_fit_loses_sideways_hold(
    flat: int, ratio: float, tip: int, tilt: float, stiffness: str
):
    # Shear stress grows with less than the pressure, so that no uneven contact holds more force than an even.
    faces = back(float(flat), max(45.0, flat * ratio), tilt_deg=tilt)
    for swivels in (False, True):
        on = fit(faces, float(tip), stiffness, swivels=swivels)
        assert on.force_share <= 1.0 + 1e-9
        assert on.peak_mpa >= on.pressed_on.mean_mpa - 1e-9


def test_a_tip_face_that_is_named_takes_the_place_of_the_table():
    bench, faces = Bench(), back(150.0, 150.0)

    def held(**setup: object):
        chosen = Setup(clamp_force_n=300.0, **setup)
        return holding(chosen, centre_thickness_mm=2.0, bench=bench, faces=faces)

    named, tabled = (
        held(tip_face_mm=60.0, tip_stiffness="stiff"),
        held(tip_fit="steep-tip", tip_stiffness="stiff"),
    )
    assert named.back_torque_fit == pytest.approx(tabled.back_torque_fit, abs=0.012)
    assert held().back_torque_fit == bench.usual_fit
    # Bearing in its middle it bends the lens more; bearing on its rim it is granted no more force.
    flat = held(tip_face_mm=200.0, tip_stiffness="stiff")
    assert flat.bending_share == held().bending_share < named.bending_share
    assert named.clamp_cap_n < held().clamp_cap_n == flat.clamp_cap_n


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: fit(back(60.0, 60.0), 20.0, "soft"),
            "radius of the face of the back tip 20 is out of range: give from 30 to 500 mm",
        ),
        (
            lambda: fit(back(60.0, 60.0), 60.0, "hard"),
            "tip_stiffness 'hard' is not known: give one of soft, stiff",
        ),
        (
            lambda: fit(back(8.0, 8.0), 60.0, "soft"),
            "a surface curls up before the rim of the face: give a flatter curve or a smaller face",
        ),
    ],
)
def test_tips_that_cannot_be_pressed_on(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words
