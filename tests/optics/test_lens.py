"""Lenses from prescriptions: the least-thickness solve, what cannot be, and the curves that come out."""

import math

import numpy as np
import pytest
from hypothesis import given, reject
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.lens import Lens, lens_for, lens_with_least_thickness
from lablib.optics.limits import limit, require_in_limits
from lablib.optics.material import Material, material, materials
from lablib.optics.prescription import Prescription
from lablib.optics.surface import (
    Surface,
    SurfaceTooSteep,
    curvature_per_mm,
    power_from_lens_measure_d,
    sagitta_mm,
    surface_power_d,
)

ANGLE = np.linspace(0.0, 2 * np.pi, 720, endpoint=False)


def rim(radius: float) -> tuple[np.ndarray, np.ndarray]:
    return radius * np.cos(ANGLE), radius * np.sin(ANGLE)


def solved(sphere: float, *, front: float, least: float, radius: float, index: float = 1.5, **more) -> Lens:
    x, y = rim(radius)
    rx = Prescription(sphere_d=sphere, **more)
    return lens_with_least_thickness(rx, index=index, front_curve_d=front, least_mm=least, x_mm=x, y_mm=y)


@pytest.mark.parametrize(
    ("sphere", "front", "radius", "index", "centre"),
    [
        # Published values, thickness: +5.00, n 1.498, F1 +8.00, edge 1.0 at 30 mm (computed): 5.738.
        (5.0, 8.0, 30.0, 1.498, 5.738),
        # Strong plus lenses whose back could not be made at any centre much thicker than the one wanted.
        (10.0, 14.0, 26.0, 1.5, 8.629),
        (10.0, 14.0, 30.0, 1.5, 11.984),
    ],
)
def test_centre_for_an_edge_of_one_millimetre(
    sphere: float, front: float, radius: float, index: float, centre: float
):
    lens = solved(sphere, front=front, least=1.0, radius=radius, index=index)
    assert lens.centre_thickness_mm == pytest.approx(centre, abs=5e-4)


@given(
    sphere=st.integers(4, 32).map(lambda quarter: quarter / 4),
    cylinder=st.integers(-8, 8).map(lambda quarter: quarter / 4),
    axis=st.integers(1, 180),
    least=st.floats(0.3, 3.0),
    radius=st.floats(18.0, 32.0),
    index=st.floats(1.5, 1.74),
)
def test_the_thinnest_point_of_the_rim_has_what_was_asked_for(
    sphere: float, cylinder: float, axis: int, least: float, radius: float, index: float
):
    try:
        lens = solved(
            sphere,
            front=sphere + 4.0,
            least=least,
            radius=radius,
            index=index,
            cylinder_d=cylinder,
            axis_deg=axis,
        )
    except LabError:
        reject()
    assert float(lens.thickness_mm(*rim(radius)).min()) == pytest.approx(least, abs=1e-8)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: solved(-4.0, front=4.0, least=1.0, radius=25.0),
            "least edge 1 mm leaves no centre: this lens is thinnest in the middle, not at its edge: give "
            "the centre thickness instead",
        ),
        (
            lambda: solved(0.0, front=0.0, least=0.0, radius=25.0),
            "least edge 0 is out of range: give above 0 and up to 20 mm",
        ),
        (
            lambda: lens_for(
                Prescription(sphere_d=1.0), index=1.5, front_curve_d=25.0, centre_thickness_mm=60.0
            ),
            "centre thickness 60 mm reaches the focus of the front curve 25 D: it stays below 60.0 mm: take "
            "a thinner lens or a flatter front curve",
        ),
        (
            lambda: lens_for(
                Prescription(sphere_d=1.0), index=1.5, front_curve_d=30.0, centre_thickness_mm=2.0
            ),
            "front curve 30 is out of range: give from -25 to 25 D",
        ),
        (
            lambda: lens_for(
                Prescription(sphere_d=1.0), index=1.5, front_curve_d=4.0, centre_thickness_mm=0.0
            ),
            "centre thickness 0 is out of range: give above 0 and up to 60 mm",
        ),
        (
            lambda: lens_for(
                Prescription(sphere_d=1.0),
                index=1.5,
                front_curve_d=4.0,
                centre_thickness_mm=2.0,
                prism_x_prism_d=24.0,
                prism_y_prism_d=24.0,
            ),
            "prescribed prism 33.9411 is out of range: give from 0 to 30 prism dioptres",
        ),
        (
            lambda: Surface(flat_per_mm=0.01, steep_per_mm=0.01, tilt_x=1.0),
            "surface: tilt 45 is out of range: give from 0 to 30 degrees from level",
        ),
        (
            lambda: Surface(flat_per_mm=math.nan, steep_per_mm=0.01),
            "surface: flat_per_mm nan is not a finite number: give a number",
        ),
        (
            lambda: sagitta_mm(20.0, 25.0),
            "surface radius 20.0 mm does not reach 25.0 mm from its vertex: a surface reaches less than its "
            "radius: take a smaller frame or blank, a higher index or less power",
        ),
        (
            lambda: material("glass"),
            "material 'glass' is not in the table: give one of crown-glass-1.523, hard-resin-1.50, "
            "urethane-1.53, polycarbonate-1.59, thiourethane-1.60, thiourethane-1.67, episulfide-1.74",
        ),
        (
            lambda: Material(name="by its numbers", words="mine", index=1.5, density=13.0),
            "material by its numbers: density 13 is out of range: give from 0.9 to 4.5 g/cm3",
        ),
        (
            lambda: require_in_limits("A", 5.0, "a_mm"),
            "A 5 is out of range: give from 20 to 80 mm",
        ),
    ],
)
def test_what_no_lens_can_be_is_said_in_words(make, words: str):
    with pytest.raises(LabError) as fault:
        make()
    assert str(fault.value) == words


def test_a_centre_beyond_the_limit_is_refused():
    with pytest.raises(LabError, match="least edge 20 mm needs a centre above 60 mm: take a smaller frame"):
        solved(20.0, front=0.0, least=20.0, radius=44.9, index=1.9)


def test_the_steeper_meridian_is_put_in_its_place():
    surface = Surface(flat_per_mm=0.02, steep_per_mm=-0.01, flat_meridian_deg=30.0)
    assert (surface.flat_per_mm, surface.steep_per_mm, surface.flat_meridian_deg) == (-0.01, 0.02, 120.0)


def test_depth_where_a_surface_does_not_reach_is_not_a_number():
    sphere = Surface(flat_per_mm=0.05, steep_per_mm=0.05)
    depth = sphere.sag_or_nan_mm(np.array([0.0, 19.0, 21.0]), np.zeros(3))
    assert np.isfinite(depth).tolist() == [True, True, False]
    with pytest.raises(SurfaceTooSteep):
        sphere.sag_mm(21.0, 0.0)


def test_curvature_and_power_undo_each_other():
    assert surface_power_d(curvature_per_mm(6.0, 1.53), 1.53) == pytest.approx(6.0)
    # 6.00 D on index 1.530: r = 530 / 6 = 88.33 mm.
    assert 1.0 / curvature_per_mm(6.0, 1.53) == pytest.approx(88.33, abs=5e-3)


@pytest.mark.parametrize(
    ("reading", "index", "power"),
    [
        # Published values, surfaces: read for -10.00 on 1.60, computed for +6.12 on 1.498 and 1.586.
        (-10.0, 1.60, -11.32),
        (6.12, 1.498, 5.7505),
        (6.12, 1.586, 6.7666),
    ],
)
def test_lens_measure(reading: float, index: float, power: float):
    digits = 5e-3 if index == 1.60 else 5e-5
    assert power_from_lens_measure_d(reading, index) == pytest.approx(power, abs=digits)


def test_every_material_says_where_its_numbers_come_from():
    table = materials()
    assert len(table) == 7
    assert all(one.grade == "published" and "2010" in one.source for one in table.values())
    assert all(one.cuts_like == name for name, one in table.items())


def test_prism_of_a_tilted_back_is_what_was_asked_for():
    rx = Prescription(sphere_d=-3.0)
    lens = lens_for(
        rx,
        index=1.6,
        front_curve_d=4.0,
        centre_thickness_mm=2.0,
        prism_x_prism_d=3.0,
        prism_y_prism_d=-4.0,
    )
    assert lens.prism_prism_d == pytest.approx(5.0, abs=1e-12)
    assert lens_for(rx, index=1.6, front_curve_d=4.0, centre_thickness_mm=2.0).prism_prism_d == 0.0


def test_limits_are_read_by_name():
    assert limit("a_mm") == (20.0, 80.0)
