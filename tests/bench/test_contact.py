"""Contact shapes against printed values and against a general integrator."""

import math

import numpy as np
import pytest
from scipy.integrate import dblquad

from lablib.bench.contact import Annulus, Contact, Ellipse, Rectangle, block_contact, block_words, r_eff_mm
from lablib.errors import LabError


@pytest.mark.parametrize(
    ("shape", "expected"),
    [
        # Slip model of the workbook, table of areas (derived there).
        (Annulus(radius_mm=12.0), 3619.11),
        (Annulus(radius_mm=12.0, hole_mm=4.0), 3485.07),
        (Ellipse(half_width_mm=12.0, half_height_mm=8.5), 2205.68),
        (Rectangle(half_width_mm=12.0, half_height_mm=8.5), 3228.36),
    ],
)
def test_w_as_printed(shape: Contact, expected: float):
    assert shape.w_mm3 == pytest.approx(expected, abs=0.005)


def test_w_against_a_general_integrator():
    # scipy.integrate.dblquad of the distance from the axis, over the shape written in x and y.
    ellipse = Ellipse(half_width_mm=9.0, half_height_mm=13.0)
    expected, _ = dblquad(
        lambda y, x: math.hypot(x, y),
        -9.0,
        9.0,
        lambda x: -13.0 * math.sqrt(1.0 - (x / 9.0) ** 2),
        lambda x: 13.0 * math.sqrt(1.0 - (x / 9.0) ** 2),
    )
    assert ellipse.w_mm3 == pytest.approx(expected, rel=1e-6)
    rectangle = Rectangle(half_width_mm=7.0, half_height_mm=3.0)
    expected, _ = dblquad(lambda y, x: math.hypot(x, y), -7.0, 7.0, -3.0, 3.0)
    assert rectangle.w_mm3 == pytest.approx(expected, rel=1e-6)


def test_effective_radii():
    # Disc 2a/3; annulus (2/3)(a^3 - b^3)/(a^2 - b^2); ellipse perimeter / (3 pi); half-eye block 6.88 mm.
    assert r_eff_mm(Annulus(radius_mm=9.0)) == pytest.approx(6.0, abs=1e-12)
    ring = 2.0 / 3.0 * (12.0**3 - 4.0**3) / (12.0**2 - 4.0**2)
    assert r_eff_mm(Annulus(radius_mm=12.0, hole_mm=4.0)) == pytest.approx(ring, rel=1e-12)
    ellipse = Ellipse(half_width_mm=8.5, half_height_mm=12.0)
    assert r_eff_mm(ellipse) == pytest.approx(ellipse.perimeter_mm / (3.0 * math.pi), rel=1e-12)
    assert r_eff_mm(block_contact("half-eye")) == pytest.approx(6.88, abs=0.005)


def test_a_round_ellipse_is_a_disc():
    round_block, disc = block_contact("round"), Annulus(radius_mm=12.0)
    assert round_block.w_mm3 == pytest.approx(disc.w_mm3, rel=1e-12)
    assert round_block.area_mm2 == pytest.approx(disc.area_mm2, rel=1e-12)


def test_reach_lies_on_the_ellipse():
    angle = np.linspace(0.0, 6.0, 50)
    reach = block_contact("half-eye").reach_mm(angle)
    on_rim = (reach * np.cos(angle) / 12.0) ** 2 + (reach * np.sin(angle) / 8.5) ** 2
    assert on_rim == pytest.approx(np.ones(50), abs=1e-12)


def test_blocks_have_words():
    assert block_words() == {"round": "round block, 24 mm", "half-eye": "half-eye block, 24 x 17 mm"}


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: Annulus(radius_mm=0.0),
            "annulus radius_mm 0 is out of range: give above 0 and up to 60 mm",
        ),
        (
            lambda: Annulus(radius_mm=10.0, hole_mm=10.0),
            "annulus hole_mm 10 is out of range: give from 0 to 9.9 mm",
        ),
        (
            lambda: Ellipse(half_width_mm=12.0, half_height_mm=-1.0),
            "ellipse half_height_mm -1 is out of range: give above 0 and up to 60 mm",
        ),
        (
            lambda: Rectangle(half_width_mm=math.nan, half_height_mm=1.0),
            "rectangle half_width_mm nan is not a finite number: give a number in mm",
        ),
        (lambda: block_contact("oval"), "block 'oval' is not known: give one of round, half-eye"),
    ],
)
def test_impossible_shapes(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words
