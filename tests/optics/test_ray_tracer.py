"""The ray tracer is itself checked: against batoid, a general-purpose tracer, and against geometry."""

import batoid
import numpy as np
import pytest
from ray_tracer import (
    ALONG_AXIS,
    Placed,
    Sphere,
    Torus,
    TracedLens,
    back_vertex_power_matrix_d,
    deviation_prism_d,
    refract,
    rotating_eye_power_matrix_d,
    rotation_about,
)

# Radii 88.33 and 53.0 mm, 2 mm thick, index 1.53.
MENISCUS = TracedLens(front=Placed(Sphere(1 / 88.33)), back=Placed(Sphere(1 / 53.0), 2.0), index=1.53)
TILTED = TracedLens(
    front=Placed(Sphere(1 / 88.33)),
    back=Placed(Sphere(1 / 53.0), 2.0, rotation_about([0.6, -0.8, 0.0], 9.0)),
    index=1.6,
)
# A strong toric, steep enough that a wrong formation shows: 90 and 62 mm.
TORIC = TracedLens(
    front=Placed(Sphere(1 / 110.0)),
    back=Placed(Torus(1 / 90.0, 1 / 62.0, 35.0), 3.0, rotation_about([1.0, 0.3, 0.0], 4.0)),
    index=1.6,
)


def rays(count=60, height_mm=20.0, slope=0.25, seed=3):
    """Skew rays towards the eye from in front of a lens."""
    draw = np.random.default_rng(seed)
    points = np.column_stack([draw.uniform(-height_mm, height_mm, (count, 2)), np.full(count, -15.0)])
    directions = np.column_stack([draw.uniform(-slope, slope, (count, 2)), np.ones(count)])
    directions /= np.linalg.norm(directions, axis=1)[:, None]
    return points - directions * 15.0, directions


def batoid_shape(shape):
    """The same shape in batoid, in metres; it has no torus, so its interpolated surface gets a table."""
    if isinstance(shape, Sphere):
        return batoid.Sphere(1e-3 / shape.per_mm)
    grid = np.linspace(-30.0, 30.0, 601)
    x, y = np.meshgrid(grid, grid)
    return batoid.Bicubic(grid * 1e-3, grid * 1e-3, torus_depth(shape, x, y) * 1e-3)


def torus_depth(torus, x, y):
    """Depth by the two angles that sweep out a torus: round the tube, and round the axis of the tyre."""
    rf, rs = 1 / torus.flat_per_mm, 1 / torus.steep_per_mm
    turn = np.radians(torus.flat_meridian_deg)
    u, v = x * np.cos(turn) + y * np.sin(turn), y * np.cos(turn) - x * np.sin(turn)
    reach = rf - rs + rs * np.cos(np.arcsin(v / rs))
    return rf - reach * np.cos(np.arcsin(u / reach))


def batoid_traced(lens, points, directions):
    """Points on the back surface and directions behind it, by batoid."""
    ray = batoid.RayVector(*(points.T * 1e-3), *directions.T)
    glass, air = batoid.ConstMedium(lens.index), batoid.ConstMedium(1.0)
    for placed, before, after in ((lens.front, air, glass), (lens.back, glass, air)):
        frame = batoid.CoordSys(np.array([0.0, 0.0, placed.vertex_z_mm * 1e-3]), placed.rotation)
        batoid_shape(placed.shape).refract(ray, before, after, coordSys=frame)
    ray = ray.toCoordSys(batoid.CoordSys())
    return ray.r * 1e3, ray.v


@pytest.mark.parametrize("lens", [MENISCUS, TILTED], ids=["level", "tilted"])
def test_skew_rays_through_spheres_agree_with_batoid(lens):
    points, directions = rays()
    met, out = lens.towards_eye(points, directions)
    batoid_met, batoid_out = batoid_traced(lens, points, directions)
    # Measured: 7e-15 mm and 1.2e-15.
    np.testing.assert_allclose(met, batoid_met, rtol=0, atol=1e-11)
    np.testing.assert_allclose(out, batoid_out, rtol=0, atol=1e-12)


def test_skew_rays_through_a_tilted_torus_agree_with_batoid():
    points, directions = rays(height_mm=14.0)
    met, out = TORIC.towards_eye(points, directions)
    batoid_met, batoid_out = batoid_traced(TORIC, points, directions)
    # Measured: 3e-9 mm and 1.3e-7, the error of the table's interpolated slopes.
    np.testing.assert_allclose(met, batoid_met, rtol=0, atol=1e-8)
    np.testing.assert_allclose(out, batoid_out, rtol=0, atol=3e-7)


def test_the_agreement_could_tell_the_tyre_from_a_barrel():
    points, directions = rays(height_mm=14.0)
    barrel = TracedLens(
        front=TORIC.front,
        back=Placed(Torus(1 / 62.0, 1 / 90.0, 125.0), 3.0, TORIC.back.rotation),
        index=TORIC.index,
    )
    met, _ = barrel.towards_eye(points, directions)
    assert np.abs(met - batoid_traced(TORIC, points, directions)[0]).max() > 1e-3


def test_a_plane_bends_a_ray_by_the_law_of_sines():
    directions = np.array([[np.sin(0.5), 0.0, np.cos(0.5)]])
    out = refract(directions, ALONG_AXIS[None], 1.0, 1.5)
    np.testing.assert_allclose(out[0], [np.sin(0.5) / 1.5, 0.0, np.cos(np.arcsin(np.sin(0.5) / 1.5))])
    back = refract(-out, ALONG_AXIS[None], 1.5, 1.0)
    np.testing.assert_allclose(back, -directions)


def test_a_totally_reflected_ray_is_not_a_number():
    steep = np.array([[np.sin(1.0), 0.0, np.cos(1.0)]])
    assert np.all(np.isnan(refract(steep, ALONG_AXIS[None], 1.5, 1.0)))


def test_a_ray_that_misses_the_surface_is_an_error():
    with pytest.raises(ArithmeticError, match="misses"):
        Placed(Sphere(1 / 50.0)).meet(np.array([[60.0, 0.0, 0.0]]), ALONG_AXIS[None])


def test_back_vertex_power_of_a_meniscus():
    """F1 = 530/88.33, F2 = -530/53; F2 + F1 / (1 - t F1 / n) = -3.952339 D (computed)."""
    matrix = back_vertex_power_matrix_d(MENISCUS)
    np.testing.assert_allclose(matrix, -3.952339 * np.eye(2), rtol=0, atol=5e-7)


def test_back_vertex_power_of_a_meniscus_agrees_with_batoid():
    height = 0.02
    points = np.array([[height, 0.0, -10.0]])
    met, out = batoid_traced(MENISCUS, points, ALONG_AXIS[None])
    at_vertex = met[0, 0] + (2.0 - met[0, 2]) * out[0, 0] / out[0, 2]
    assert -1000 * out[0, 0] / out[0, 2] / at_vertex == pytest.approx(-3.952339, abs=1e-6)


# Light from 30 degrees off the axis.
EYE = {"rotation_deg": 27.117, "centre_of_rotation_mm": 27.0}


def batoid_rotating_eye_d(lens, *, from_exit_mm):
    """Tangential and sagittal power by batoid rays close to the one bound for the eye's centre.

    from_exit_mm: how far behind the back surface, along the ray, the powers count from.
    """
    turn, centre = np.radians(EYE["rotation_deg"]), np.array([0.0, 0.0, 29.0])
    gaze = np.array([0.0, np.sin(turn), -np.cos(turn)])
    front, outwards = lens.away_from_eye(centre, gaze)
    start, direction = front[0] + 10 * outwards[0], -outwards[0]
    frame = np.array([[0.0, direction[2], -direction[1]], [1.0, 0.0, 0.0]])
    ends = np.array([[0.0, 0.0], [0.02, 0.0], [-0.02, 0.0], [0.0, 0.02], [0.0, -0.02]])
    met, out = batoid_traced(lens, start + ends @ frame, np.tile(direction, (5, 1)))
    chief = out[0]
    reference = met[0] + from_exit_mm * chief
    places = met + out * (((reference - met) @ chief) / (out @ chief))[:, None] - reference
    leaving = np.array([[0.0, chief[2], -chief[1]], [1.0, 0.0, 0.0]])
    return [
        -1000
        * ((out[k] - out[k + 1]) @ leaving[axis] / (out[k] @ chief))
        / ((places[k] - places[k + 1]) @ leaving[axis])
        for axis, k in ((0, 1), (1, 3))
    ]


def past_the_surface_mm(lens):
    """From the exit on the back surface to the sphere about the eye's centre through the back vertex."""
    turn, centre = np.radians(EYE["rotation_deg"]), np.array([[0.0, 0.0, 29.0]])
    exit_point, _ = lens.back.meet(centre, np.array([[0.0, np.sin(turn), -np.cos(turn)]]))
    return np.linalg.norm(exit_point - centre) - 27.0


def test_a_turned_eye_meets_the_powers_that_batoid_finds():
    """Counted from the vertex sphere, 1.516 mm behind the exit: tangential -3.775, sagittal -3.809 D."""
    powers = np.diag(rotating_eye_power_matrix_d(MENISCUS, **EYE))
    np.testing.assert_allclose(powers, [-3.775, -3.809], rtol=0, atol=5e-4)
    by_batoid = batoid_rotating_eye_d(MENISCUS, from_exit_mm=past_the_surface_mm(MENISCUS))
    # Measured: 8e-7 D; batoid's rays are 0.02 mm from the chief ray and not extrapolated.
    np.testing.assert_allclose(powers, by_batoid, rtol=0, atol=2e-6)


def test_where_the_powers_count_from_matters():
    """With the 1.516 mm taken the other way the same rays give -3.819 and -3.853 D, 0.04 D too much."""
    flipped = batoid_rotating_eye_d(MENISCUS, from_exit_mm=-past_the_surface_mm(MENISCUS))
    np.testing.assert_allclose(flipped, [-3.819, -3.853], rtol=0, atol=5e-4)


def test_a_turned_eye_is_the_same_along_every_meridian_of_a_sphere():
    powers = [rotating_eye_power_matrix_d(MENISCUS, **EYE, meridian_deg=m) for m in (0.0, 35.0, 250.0)]
    for matrix in powers[1:]:
        np.testing.assert_allclose(matrix, powers[0], rtol=0, atol=1e-9)


def test_a_real_ray_deviates_more_than_prentice():
    """Leaving the back surface 10 mm from the axis it is bent 3.6 % more than 10 mm times -3.952339 D."""
    eye_side = np.array([[10.0, 0.0, 0.0]])
    heights = np.linspace(10.0, 10.2, 21)
    met, _ = MENISCUS.towards_eye(
        np.column_stack([heights, np.zeros(21), np.full(21, -10.0)]), np.tile(ALONG_AXIS, (21, 1))
    )
    entering = np.interp(eye_side[0, 0], met[:, 0], heights)
    deviation = deviation_prism_d(MENISCUS, np.array([entering]), np.array([0.0]))
    assert abs(deviation[0, 0]) / 3.952339 - 1 == pytest.approx(0.036, abs=5e-4)
    assert deviation[0, 0] > 0  # a minus lens bends light outwards, towards its base


def test_thickness_of_a_meniscus_by_pythagoras():
    """t - s1 + s2 with s = r - sqrt(r2 - y2)."""
    y = np.array([0.0, 7.0, 30.0])
    expected = 2.0 - (88.33 - np.sqrt(88.33**2 - y**2)) + (53.0 - np.sqrt(53.0**2 - y**2))
    np.testing.assert_allclose(MENISCUS.thickness_mm(0 * y, y), expected, rtol=0, atol=1e-12)
