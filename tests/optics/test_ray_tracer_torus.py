"""The ray tracer's torus of tyre formation, checked by geometry: its quartic, its sections, its normals."""

import numpy as np
import pytest
from ray_tracer import ALONG_AXIS, Placed, Torus, rotation_about

TORI = [
    pytest.param(Torus(1 / 90.0, 1 / 62.0, 35.0), id="minus back"),
    pytest.param(Torus(-1 / 300.0, -1 / 55.0, 170.0), id="hollow towards the front"),
    pytest.param(Torus(-1 / 400.0, 1 / 120.0, 90.0), id="saddle"),
]


def axes_of(torus):
    """Unit vectors along the flat meridian and along the steep one."""
    turn = np.radians(torus.flat_meridian_deg)
    return np.array([np.cos(turn), np.sin(turn), 0.0]), np.array([-np.sin(turn), np.cos(turn), 0.0])


def met_by_level_lines(shape, x, y):
    points = np.column_stack([x, y, np.zeros(len(x))])
    return Placed(shape).meet(points, np.tile(ALONG_AXIS, (len(x), 1)))


def circle_through(a, b):
    """Centre and radius of the circle that fits points (a, b) best, and the largest miss."""
    columns = np.column_stack([2 * a, 2 * b, np.ones(len(a))])
    (centre_a, centre_b, rest), *_ = np.linalg.lstsq(columns, a**2 + b**2, rcond=None)
    radius = np.sqrt(rest + centre_a**2 + centre_b**2)
    return centre_a, centre_b, radius, np.abs(np.hypot(a - centre_a, b - centre_b) - radius).max()


@pytest.mark.parametrize("torus", TORI)
def test_the_torus_satisfies_its_quartic(torus):
    """(u2 + v2 + w2 + R2 - r2)2 = 4 R2 (u2 + w2) about the centre of the tyre, axle along v."""
    x, y = np.random.default_rng(5).uniform(-25.0, 25.0, (2, 200))
    met, _ = met_by_level_lines(torus, x, y)
    along, across = axes_of(torus)
    u, v, w = met @ along, met @ across, met[:, 2] - 1 / torus.flat_per_mm
    tube, ring = 1 / torus.steep_per_mm, 1 / torus.flat_per_mm - 1 / torus.steep_per_mm
    left, right = (u**2 + v**2 + w**2 + ring**2 - tube**2) ** 2, 4 * ring**2 * (u**2 + w**2)
    np.testing.assert_allclose(left, right, rtol=1e-12)


@pytest.mark.parametrize("torus", TORI)
def test_sections_of_the_torus_are_the_circles_of_a_tyre(torus):
    """Across the axle at any height: circles about it. Through the axle at any turn: the one tube circle."""
    along, across = axes_of(torus)
    flat_radius, tube_radius = 1 / torus.flat_per_mm, 1 / torus.steep_per_mm
    s = np.linspace(-20.0, 20.0, 41)
    for height in (-18.0, 0.0, 9.0):
        met, _ = met_by_level_lines(torus, *(np.outer(s, along) + height * across).T[:2])
        centre_u, centre_z, radius, miss = circle_through(met @ along, met[:, 2])
        height_of_arc = tube_radius - np.sign(tube_radius) * np.sqrt(tube_radius**2 - height**2)
        assert miss < 1e-9
        np.testing.assert_allclose(
            [centre_u, centre_z, radius],
            [0.0, flat_radius, abs(flat_radius - height_of_arc)],
            rtol=0,
            atol=1e-6,
        )
    for turn_deg in (-8.0, 0.0, 3.0):
        swing = rotation_about(across, turn_deg)
        axle = np.array([0.0, 0.0, flat_radius])
        turned = Placed(torus).meet(np.outer(s, across), np.tile(ALONG_AXIS, (len(s), 1)))[0]
        moved = axle + (turned - axle) @ swing.T
        np.testing.assert_allclose(torus.value(moved), 0.0, rtol=0, atol=1e-12)
        _, _, radius, miss = circle_through(turned @ across, turned[:, 2])
        assert miss < 1e-9
        assert radius == pytest.approx(abs(tube_radius), abs=1e-6)


def test_a_torus_with_a_flat_meridian_is_a_cylinder():
    along, across = axes_of(Torus(0.0, 1 / 70.0, 20.0))
    x, y = np.random.default_rng(6).uniform(-25.0, 25.0, (2, 50))
    met, normals = met_by_level_lines(Torus(0.0, 1 / 70.0, 20.0), x, y)
    np.testing.assert_allclose(np.hypot(met @ across, met[:, 2] - 70.0), 70.0, rtol=1e-14)
    np.testing.assert_allclose(normals @ along, 0.0, rtol=0, atol=1e-14)


@pytest.mark.parametrize("torus", TORI)
def test_normals_are_square_to_the_surface(torus):
    x, y = np.random.default_rng(7).uniform(-20.0, 20.0, (2, 40))
    _, normals = met_by_level_lines(torus, x, y)
    for step in (np.array([1e-3, 0.0]), np.array([0.0, 1e-3])):
        ahead, _ = met_by_level_lines(torus, x + step[0], y + step[1])
        behind, _ = met_by_level_lines(torus, x - step[0], y - step[1])
        np.testing.assert_allclose(np.sum((ahead - behind) * normals, axis=1) / 2e-3, 0.0, rtol=0, atol=1e-8)


def test_a_torus_of_equal_meridians_is_a_sphere():
    x, y = np.random.default_rng(8).uniform(-25.0, 25.0, (2, 50))
    as_torus, _ = met_by_level_lines(Torus(1 / 60.0, 1 / 60.0, 12.0), x, y)
    np.testing.assert_allclose(as_torus[:, 2], 60.0 - np.sqrt(3600.0 - x**2 - y**2), rtol=0, atol=1e-12)
