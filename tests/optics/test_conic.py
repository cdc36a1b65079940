"""Conic surfaces: their equation, their curvatures by differences, and lenses with one for a front."""

import numpy as np
import pytest

from lablib.errors import LabError
from lablib.optics.conic import Conic, conic_front, conic_lens_with_edge
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.optics.surface import Surface, SurfaceTooSteep

P_VALUES = (-8.0, -1.0, 0.0, 0.6, 1.0, 1.8)


def conic(radius_mm: float, p_value: float) -> Conic:
    return Conic(flat_per_mm=1.0 / radius_mm, steep_per_mm=1.0 / radius_mm, p_value=p_value)


@pytest.mark.parametrize("p_value", P_VALUES)
@pytest.mark.parametrize("radius_mm", [60.0, -80.0])
def test_points_lie_on_the_conic(p_value: float, radius_mm: float):
    """y^2 = 2 r z - p z^2."""
    x, y = np.array([0.0, 3.0, -20.0]), np.array([0.0, -4.0, 15.0])
    depth = conic(radius_mm, p_value).sag_mm(x, y)
    np.testing.assert_allclose(x**2 + y**2, 2.0 * radius_mm * depth - p_value * depth**2, atol=1e-10)


def test_a_conic_with_p_1_is_a_sphere():
    x, y = np.meshgrid(np.linspace(-25, 25, 5), np.linspace(-25, 25, 5))
    sphere = Surface(flat_per_mm=1 / 60.0, steep_per_mm=1 / 60.0, tilt_x=0.05)
    as_conic = Conic(flat_per_mm=1 / 60.0, steep_per_mm=1 / 60.0, tilt_x=0.05)
    np.testing.assert_allclose(as_conic.sag_mm(x, y), sphere.sag_mm(x, y), atol=1e-9)
    flat = Conic(flat_per_mm=0.0, steep_per_mm=0.0, p_value=-3.0)
    assert not flat.sag_mm(x, y).any()


def test_below_1_it_flattens_outwards_and_above_it_steepens():
    depths = [float(conic(60.0, p).sag_mm(25.0, 0.0)) for p in P_VALUES]
    assert depths == sorted(depths)


@pytest.mark.parametrize("p_value", P_VALUES)
def test_curvatures_by_differences_of_the_section(p_value: float):
    """Along: z'' / (1 + z'^2)^1.5; across: the normal's distance to the axis, z' / (y sqrt(1 + z'^2))."""
    away, step = np.array([5.0, 15.0, 25.0]), 1e-3
    sags = [conic(60.0, p_value).sag_mm(away + k * step, 0.0 * away) for k in (-1, 0, 1)]
    slope, bend = (sags[2] - sags[0]) / (2 * step), (sags[2] - 2 * sags[1] + sags[0]) / step**2
    along, across = conic(60.0, p_value).curvatures_per_mm(away)
    np.testing.assert_allclose(along, bend / (1 + slope**2) ** 1.5, rtol=1e-5)
    np.testing.assert_allclose(across, slope / (away * np.sqrt(1 + slope**2)), rtol=1e-6)


def test_at_the_vertex_every_conic_has_the_curvature_of_its_sphere():
    for p_value in P_VALUES:
        assert conic(60.0, p_value).curvatures_per_mm(0.0) == (1 / 60.0, 1 / 60.0)


def test_where_it_does_not_reach_there_is_nothing():
    """p 4 reaches half as far as its radius."""
    assert np.isnan(conic(60.0, 4.0).curvatures_per_mm(31.0)).all()
    with pytest.raises(
        SurfaceTooSteep,
        match=r"conic of radius 60.0 mm and p 4 does not reach 31.0 mm from its vertex: take a smaller frame",
    ):
        conic(60.0, 4.0).sag_mm(31.0, 0.0)
    assert np.isfinite(conic(60.0, 4.0).sag_mm(29.0, 0.0))


def test_what_cannot_be_is_refused():
    with pytest.raises(LabError, match=r"conic with curvatures 0.01 and 0.02 per mm: it is turned about its"):
        Conic(flat_per_mm=0.01, steep_per_mm=0.02)
    with pytest.raises(LabError, match=r"p value 25 is out of range: give from -60 to 20"):
        conic(60.0, 25.0)
    with pytest.raises(LabError, match=r"surface: flat_per_mm nan is not a finite number"):
        Conic(flat_per_mm=float("nan"), steep_per_mm=0.01)


def test_a_lens_keeps_power_and_centre_when_its_front_is_made_a_conic():
    lens = lens_for(Prescription(sphere_d=5.0), index=1.6, front_curve_d=6.0, centre_thickness_mm=5.0)
    aspheric = conic_front(lens, -2.0)
    assert aspheric.back_vertex_power().sphere_d == pytest.approx(5.0, abs=1e-9)
    assert aspheric.thickness_mm(0.0, 0.0) == 5.0
    assert aspheric.thickness_mm(25.0, 0.0) > lens.thickness_mm(25.0, 0.0)


@pytest.mark.parametrize("rx", ["+5.00 DS", "+3.00 +1.00 x 030"])
def test_a_flattened_front_needs_a_thinner_centre_for_the_same_edge(rx: str):
    form = {"index": 1.6, "front_curve_d": 6.0, "edge_mm": 1.0, "away_mm": 30.0}
    lens = Prescription.parse(rx)
    sphere, aspheric = (conic_lens_with_edge(lens, p_value=p, **form) for p in (1.0, -4.0))
    for made in (sphere, aspheric):
        turn = np.linspace(0.0, 2.0 * np.pi, 721)
        edge = made.thickness_mm(30.0 * np.cos(turn), 30.0 * np.sin(turn))
        assert edge.min() == pytest.approx(1.0, abs=1e-5)
        np.testing.assert_allclose(made.back_vertex_power().power_matrix(), lens.power_matrix(), atol=1e-9)
    assert aspheric.centre_thickness_mm < sphere.centre_thickness_mm - 0.2


def test_a_minus_lens_has_no_centre_to_solve_for():
    with pytest.raises(LabError, match=r"edge 1 mm leaves no centre: this lens is thinnest in the middle"):
        conic_lens_with_edge(
            Prescription(sphere_d=-5.0), index=1.6, front_curve_d=3.0, p_value=0.0, edge_mm=1.0, away_mm=30.0
        )
