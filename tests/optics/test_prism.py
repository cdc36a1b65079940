"""Prism against published values.

Where a row says "computed", it is arithmetic from the stated formula, done apart from this package.
"""

import math
from dataclasses import FrozenInstanceError

import numpy as np
import pytest

from lablib.errors import LabError
from lablib.optics.prescription import Prescription
from lablib.optics.prism import (
    Prism,
    decentration_for,
    imbalance,
    in_words,
    prism_at,
    resultant,
    thickness_difference_mm,
    together,
)


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# Jalie, Lens Talk Nov-Dec 2024 (read): 5.03 base up and 2.81 base out. The horizontal part is 2.81505, so the
# second figure was cut off rather than rounded; the round trip below uses it with four decimals.
def test_prism_at_a_point():
    inwards, upwards = prism_at(rx(6, -3, 140), eye="right", in_mm=2.5, up_mm=-11)
    assert upwards == pytest.approx(5.03, abs=0.005)
    assert math.trunc(inwards * 100) / 100 == -2.81
    assert inwards == pytest.approx(-2.8151, abs=0.00005)


# The same article: 5.0328 up with 2.8151 out puts the centre 11.0 up and 2.5 out.
def test_decentration_for_a_prism():
    centre = decentration_for(rx(6, -3, 140), eye="right", in_prism_d=-2.8151, up_prism_d=5.0328)
    assert centre == pytest.approx((-2.5, 11.0), abs=0.05)


# Jalie 2022 (read): 2 prism dioptres need 4 mm of 5.00 D.
@pytest.mark.parametrize("eye", ["right", "left"])
def test_decentration_of_a_sphere(eye: str):
    assert decentration_for(rx(5), eye=eye, in_prism_d=2, up_prism_d=0) == pytest.approx((4, 0))
    assert decentration_for(rx(-5), eye=eye, in_prism_d=2, up_prism_d=0) == pytest.approx((-4, 0))


# Bhootra, Ophthalmic Lenses, p. 47 (read).
def test_imbalance_at_near():
    right = prism_at(rx(-3), eye="right", in_mm=0, up_mm=-8)
    left = prism_at(rx(-6), eye="left", in_mm=0, up_mm=-8)
    assert right == pytest.approx((0, -2.4), abs=0.05)
    assert left == pytest.approx((0, -4.8), abs=0.05)
    assert imbalance(right_prism_d=right, left_prism_d=left) == pytest.approx((0, 2.4), abs=0.05)


def test_imbalance_adds_sideways_and_subtracts_upwards():
    assert imbalance(right_prism_d=(1.0, 1.0), left_prism_d=(0.5, 1.0)) == (1.5, 0.0)
    assert imbalance(right_prism_d=(1.0, 1.0), left_prism_d=(-1.0, -1.0)) == (0.0, 2.0)


# Matrix form (Long 1976), computed.
@pytest.mark.parametrize(("in_mm", "up_mm", "expected"), [(5, 0, (2.25, -0.433)), (0, -10, (0.866, -5.50))])
def test_oblique_cylinder(in_mm: float, up_mm: float, expected: tuple[float, float]):
    assert prism_at(rx(-4, -2, 30), eye="right", in_mm=in_mm, up_mm=up_mm) == pytest.approx(
        expected, abs=0.0005
    )


# Computed: 3-4-5 triangle, 360 notation of ISO 8429.
@pytest.mark.parametrize(("eye", "base_deg"), [("right", 36.87), ("left", 143.13)])
def test_resultant(eye: str, base_deg: float):
    prism = resultant(eye=eye, in_prism_d=2, up_prism_d=1.5)
    assert prism.amount_prism_d == pytest.approx(2.50, abs=0.005)
    assert prism.base == pytest.approx(base_deg, abs=0.005)


# Computed.
@pytest.mark.parametrize(
    ("amount", "base", "eye", "expected"),
    [
        (5, 30, "right", (4.330, 2.500)),
        (1.5, 255, "right", (-0.388, -1.449)),
        (1.5, 255, "left", (0.388, -1.449)),
    ],
)
def test_resolving(amount: float, base: float, eye: str, expected: tuple[float, float]):
    assert Prism(amount_prism_d=amount, base=base).resolved(eye=eye) == pytest.approx(expected, abs=0.0005)


# ISO 8429: right eye 0 = in, 90 = up, 180 = out, 270 = down; left eye 0 = out, 180 = in.
@pytest.mark.parametrize(
    ("base", "right_deg", "left_deg", "expected"),
    [
        ("in", 0, 180, (2, 0)),
        ("up", 90, 90, (0, 2)),
        ("out", 180, 0, (-2, 0)),
        ("down", 270, 270, (0, -2)),
    ],
)
def test_base_directions(base: str, right_deg: float, left_deg: float, expected: tuple[float, float]):
    for eye, degrees in (("right", right_deg), ("left", left_deg)):
        assert Prism(amount_prism_d=2, base=base).resolved(eye=eye) == expected
        assert Prism(amount_prism_d=2, base=degrees).resolved(eye=eye) == pytest.approx(expected, abs=1e-12)
        assert resultant(eye=eye, in_prism_d=expected[0], up_prism_d=expected[1]).base == degrees


def test_a_whole_turn_is_no_turn():
    assert Prism(amount_prism_d=2, base=360).resolved(eye="right") == pytest.approx((2, 0), abs=1e-12)


def test_several_prisms_in_one_lens():
    prisms = [Prism(amount_prism_d=2, base="in"), Prism(amount_prism_d=1.5, base="up")]
    assert together(prisms, eye="left") == (2.0, 1.5)
    assert together([], eye="left") == (0.0, 0.0)


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ((2.25, -0.433), "2.25 base in with 0.43 base down"),
        ((-1, 0), "1.00 base out"),
        ((0.001, 3), "3.00 base up"),
        ((0, -0.004), "no prism"),
    ],
)
def test_in_words(parts: tuple[float, float], words: str):
    assert in_words(*parts) == words


# P d / (100 (n - 1)), computed.
@pytest.mark.parametrize(("index", "expected"), [(1.498, 3.01), (1.523, 2.87)])
def test_thickness_difference(index: float, expected: float):
    got = thickness_difference_mm(amount_prism_d=3, across_mm=50, index_n=index)
    assert got == pytest.approx(expected, abs=0.005)


def test_prism_round_an_outline_is_an_array():
    angles = np.linspace(0, 2 * np.pi, 720)
    inwards, upwards = prism_at(
        rx(-4, -2, 30), eye="left", in_mm=25 * np.cos(angles), up_mm=20 * np.sin(angles)
    )
    assert inwards.shape == upwards.shape == (720,)
    one = prism_at(rx(-4, -2, 30), eye="left", in_mm=25 * np.cos(angles[100]), up_mm=20 * np.sin(angles[100]))
    assert (inwards[100], upwards[100]) == pytest.approx(one)
    assert type(one[0]) is type(one[1]) is float


def test_an_array_across_and_a_number_up():
    inwards, upwards = prism_at(rx(-4), eye="right", in_mm=np.array([0.0, 10.0]), up_mm=5)
    np.testing.assert_allclose(inwards, [0, 4])
    np.testing.assert_allclose(upwards, [2, 2])


def test_a_plano_meridian_gives_prism_along_the_other_alone():
    lens = rx(0, -2, 90)  # power along 180, none along 90
    assert decentration_for(lens, eye="right", in_prism_d=1, up_prism_d=0) == pytest.approx((-5, 0))
    with pytest.raises(LabError) as caught:
        decentration_for(lens, eye="right", in_prism_d=0, up_prism_d=1)
    assert str(caught.value) == (
        "prism 1.00 base up cannot come from decentring plano -2.00 x 090: along a meridian without power "
        "a lens gives no prism; have the prism surfaced"
    )


def test_a_plano_lens_gives_no_prism():
    assert decentration_for(rx(0), eye="left", in_prism_d=0, up_prism_d=0) == (0, 0)
    with pytest.raises(LabError, match=r"prism 0\.50 base in cannot come from decentring plano: "):
        decentration_for(rx(0), eye="left", in_prism_d=0.5, up_prism_d=0)


def test_a_prism_cannot_be_changed():
    with pytest.raises(FrozenInstanceError):
        Prism(amount_prism_d=1, base="in").base = "out"
