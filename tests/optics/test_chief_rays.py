"""Rays to a turning eye: against the tests' own tracer, against batoid, and against geometry."""

from dataclasses import dataclass

import batoid
import numpy as np
import pytest
import ray_tracer
from ray_tracer import Placed, Sphere, Torus, TracedLens, refract

from lablib.errors import LabError
from lablib.optics.chief_rays import WornLens, chief_rays
from lablib.optics.conic import conic_front
from lablib.optics.lens import Lens, lens_for
from lablib.optics.oblique import oblique_errors, power_straight_ahead
from lablib.optics.prescription import Prescription
from lablib.optics.surface import Surface
from lablib.optics.tilt import Tilt


def sphere(radius_mm: float) -> Surface:
    return Surface(flat_per_mm=1.0 / radius_mm, steep_per_mm=1.0 / radius_mm)


MENISCUS = Lens(front=sphere(88.33), back=sphere(53.0), centre_thickness_mm=2.0, index=1.53)
TORIC = lens_for(
    Prescription(sphere_d=-4.0, cylinder_d=-2.5, axis_deg=35.0),
    index=1.6,
    front_curve_d=4.0,
    centre_thickness_mm=2.0,
)
PRISM = lens_for(
    Prescription(sphere_d=3.0, cylinder_d=-1.5, axis_deg=160.0),
    index=1.6,
    front_curve_d=7.0,
    centre_thickness_mm=5.0,
    prism_x_prism_d=2.0,
    prism_y_prism_d=-3.0,
)
HYPERBOLA = conic_front(
    lens_for(Prescription(sphere_d=5.0), index=1.6, front_curve_d=7.0, centre_thickness_mm=5.0), -2.5
)


@dataclass(frozen=True)
class ConicShape:
    """A conic for the tests' own tracer: z = c (x2 + y2 + p z2) / 2."""

    per_mm: float
    p_value: float

    def value(self, p):
        return p[:, 2] - self.per_mm / 2 * (p * p) @ [1.0, 1.0, self.p_value]

    def gradient(self, p):
        return np.array([0.0, 0.0, 1.0]) - self.per_mm * p * [1.0, 1.0, self.p_value]


def shape_of(surface: Surface) -> Sphere | Torus | ConicShape:
    if hasattr(surface, "p_value"):
        return ConicShape(surface.steep_per_mm, surface.p_value)
    if surface.flat_per_mm == surface.steep_per_mm:
        return Sphere(surface.steep_per_mm)
    return Torus(surface.flat_per_mm, surface.steep_per_mm, surface.flat_meridian_deg)


def own_traced(lens: Lens) -> TracedLens:
    """Return the same lens for the tests' own tracer, a prescribed prism's tilt with it."""
    back = lens.back
    lean = np.arctan(np.hypot(back.tilt_x, back.tilt_y))
    turn = (
        ray_tracer.rotation_about([back.tilt_y, -back.tilt_x, 0.0], np.degrees(lean)) if lean else np.eye(3)
    )
    return TracedLens(
        front=Placed(shape_of(lens.front)),
        back=Placed(shape_of(back), lens.centre_thickness_mm, turn),
        index=lens.index,
    )


def turned(tilt: Tilt) -> np.ndarray:
    """The lens's own axes in columns: wrapped about the vertical, then all of it tilted."""
    wrapped = ray_tracer.rotation_about([0.0, 1.0, 0.0], tilt.eye.nasal_sign * tilt.wrap_deg)
    return ray_tracer.rotation_about([-1.0, 0.0, 0.0], tilt.pantoscopic_deg) @ wrapped


def own_powers_d(worn: WornLens, gaze_deg: float, meridian_deg: float) -> np.ndarray:
    """The power matrix by the tests' own tracer, in the lens's coordinates: tangential, sagittal."""
    axes, lens = turned(worn.tilt), own_traced(worn.lens)
    rotation_mm = worn.centre_of_rotation_mm
    centre = axes.T @ [0.0, 0.0, rotation_mm] + [0.0, worn.drop_mm, worn.lens.centre_thickness_mm]
    turn, meridian = np.radians(gaze_deg), np.radians(meridian_deg)
    radial = np.array([np.cos(meridian), np.sin(meridian), 0.0])
    across = axes.T @ np.cross([0.0, 0.0, 1.0], radial)
    gaze = axes.T @ (np.sin(turn) * radial - np.cos(turn) * np.array([0.0, 0.0, 1.0]))

    def tangential_first(direction):
        first = np.cross(across, direction)
        first /= np.linalg.norm(first)
        return np.array([first, np.cross(direction, first)])

    front, outwards = lens.away_from_eye(centre, gaze)
    start = front[0] + 10.0 * outwards[0]
    reference = centre + rotation_mm * gaze
    return ray_tracer._power_matrix_d(lens, start, -outwards[0], tangential_first, reference)


def test_the_meniscus_of_the_pinned_tracer():
    """Radii 88.33 and 53.0 mm: -3.952339 D ahead; turned 27.117 degrees -3.775 and -3.809 D, as batoid."""
    powers = chief_rays(WornLens(lens=MENISCUS), [0.0, 27.117]).powers_d
    np.testing.assert_allclose(powers[0], -3.952339 * np.eye(2), rtol=0, atol=5e-7)
    np.testing.assert_allclose(np.diag(powers[1]), [-3.775, -3.809], rtol=0, atol=5e-4)
    assert abs(powers[1, 0, 1]) < 1e-12


@pytest.mark.parametrize(
    "lens", [MENISCUS, TORIC, PRISM, HYPERBOLA], ids=["sphere", "torus", "prism", "conic"]
)
@pytest.mark.parametrize(
    "tilt",
    [Tilt(), Tilt(pantoscopic_deg=12.0), Tilt(pantoscopic_deg=8.0, wrap_deg=15.0, eye="left")],
    ids=["square", "tilted", "tilted and wrapped"],
)
@pytest.mark.parametrize(
    ("gaze_deg", "meridian_deg"), [(0.0, 90.0), (25.0, 90.0), (-30.0, 20.0), (20.0, 250.0)]
)
def test_powers_agree_with_the_tests_own_tracer(lens: Lens, tilt: Tilt, gaze_deg: float, meridian_deg: float):
    worn = WornLens(lens=lens, tilt=tilt, drop_mm=3.0)
    found = chief_rays(worn, gaze_deg, meridian_deg=meridian_deg).powers_d[0]
    # Measured: 5e-7 D at most; the tracer's bundles are 0.1 mm wide and extrapolated.
    np.testing.assert_allclose(found, own_powers_d(worn, gaze_deg, meridian_deg), rtol=0, atol=2e-6)
    assert found[0, 1] == pytest.approx(found[1, 0], abs=1e-9)


def batoid_way(worn: WornLens, gaze: np.ndarray) -> np.ndarray:
    """The direction in front of the lens by batoid, for a line of sight sent out from the eye."""
    lens, axes = worn.lens, turned(worn.tilt)
    centre = axes.T @ [0.0, 0.0, worn.centre_of_rotation_mm] + [0.0, worn.drop_mm, lens.centre_thickness_mm]
    ray = batoid.RayVector(*(centre[:, None] * 1e-3), *(axes.T @ gaze)[:, None])
    glass, air = batoid.ConstMedium(lens.index), batoid.ConstMedium(1.0)
    # batoid's conic constant is p - 1.
    p = getattr(lens.front, "p_value", 1.0)
    back = batoid.Sphere(1e-3 / lens.back.steep_per_mm)
    front = batoid.Quadric(1e-3 / lens.front.steep_per_mm, p - 1.0)
    at_back = batoid.CoordSys(np.array([0.0, 0.0, lens.centre_thickness_mm * 1e-3]))
    back.refract(ray, air, glass, coordSys=at_back)
    front.refract(ray, glass, air, coordSys=batoid.CoordSys())
    return axes @ ray.toCoordSys(batoid.CoordSys()).v[0]


@pytest.mark.parametrize("lens", [MENISCUS, HYPERBOLA], ids=["sphere", "conic"])
@pytest.mark.parametrize("gaze_deg", [-30.0, 0.0, 20.0])
def test_directions_through_a_tilted_lens_agree_with_batoid(lens: Lens, gaze_deg: float):
    worn = WornLens(lens=lens, tilt=Tilt(pantoscopic_deg=10.0, wrap_deg=6.0), drop_mm=4.0)
    rays = chief_rays(worn, gaze_deg, meridian_deg=70.0)
    # Measured: 3e-16.
    np.testing.assert_allclose(rays.outwards[0], batoid_way(worn, rays.gazes[0]), rtol=0, atol=1e-13)


def test_rays_obey_snell_at_both_surfaces():
    worn = WornLens(lens=HYPERBOLA, tilt=Tilt(pantoscopic_deg=9.0))
    rays = chief_rays(worn, np.linspace(-30.0, 30.0, 7))
    inside = rays.front_mm - rays.back_mm
    inside /= np.linalg.norm(inside, axis=1)[:, None]
    axes = worn.tilt.axes
    for points, before, behind, ratio, surface in (
        (rays.back_mm, rays.gazes, inside, 1.6, worn.lens.back),
        (rays.front_mm, inside, rays.outwards, 1.0 / 1.6, worn.lens.front),
    ):
        own = worn.to_lens(points) - [0.0, 0.0, 5.0 if surface is worn.lens.back else 0.0]
        normals = shape_of(surface).gradient(own)
        normals /= np.linalg.norm(normals, axis=1)[:, None]
        np.testing.assert_allclose(refract(before @ axes, normals, 1.0, ratio), behind @ axes, atol=1e-12)


def test_points_of_the_lens_go_there_and_back():
    worn = WornLens(lens=TORIC, tilt=Tilt(pantoscopic_deg=10.0, wrap_deg=20.0, eye="left"), drop_mm=5.0)
    points = np.array([[1.0, -2.0, 3.0], [0.0, 0.0, 0.0]])
    np.testing.assert_allclose(worn.from_lens(worn.to_lens(points)), points, atol=1e-12)
    # Where the line straight ahead meets the back, the optical centre is 5 mm farther down the lens.
    np.testing.assert_allclose(worn.to_lens(points)[1], [0.0, 5.0, 2.0], atol=1e-12)


def test_a_tilted_lens_leans_with_its_lower_rim_to_the_cheek_and_its_temporal_rim_to_the_temple():
    low, temporal = np.array([[0.0, -20.0, 2.0]]), np.array([[-20.0, 0.0, 2.0]])
    tilted = WornLens(lens=MENISCUS, tilt=Tilt(pantoscopic_deg=10.0))
    assert tilted.from_lens(low)[0, 2] == pytest.approx(20.0 * np.sin(np.radians(10.0)))
    for eye, side in (("right", temporal), ("left", temporal * [-1.0, 1.0, 1.0])):
        wrapped = WornLens(lens=MENISCUS, tilt=Tilt(wrap_deg=10.0, eye=eye))
        assert wrapped.from_lens(side)[0, 2] == pytest.approx(20.0 * np.sin(np.radians(10.0)))


def test_where_the_surfaces_have_crossed_there_is_no_ray():
    thin = lens_for(Prescription(sphere_d=8.0), index=1.5, front_curve_d=10.0, centre_thickness_mm=1.0)
    powers = chief_rays(WornLens(lens=thin), [0.0, 30.0]).powers_d
    assert np.isfinite(powers[0]).all()
    assert np.isnan(powers[1]).all()


def test_a_surface_too_steep_for_the_gaze_gives_no_ray():
    """A back of 14 mm radius has its equator 47 degrees from an eye 27 mm behind its vertex."""
    steep = Lens(front=sphere(60.0), back=sphere(14.0), centre_thickness_mm=2.0, index=1.5)
    powers = chief_rays(WornLens(lens=steep), [46.0, 48.0]).powers_d
    assert np.isfinite(powers[0]).all()
    assert np.isnan(powers[1]).all()


def test_an_axis_through_the_centre_of_rotation_leaves_no_error_along_it():
    """With the centre dropped by 27 sin(10) the lens's axis passes through the eye's centre of rotation."""
    tilt = Tilt(pantoscopic_deg=10.0)
    dropped = WornLens(lens=MENISCUS, tilt=tilt, drop_mm=27.0 * np.sin(np.radians(10.0)))
    down = chief_rays(dropped, -10.0)
    assert down.deviation_prism_d[0] == pytest.approx(0.0, abs=1e-12)
    assert oblique_errors(dropped, -10.0).astigmatism_d[0] == pytest.approx(0.0, abs=1e-9)
    # Not dropped, the line straight ahead goes through the optical centre askew, and has the tilt's cylinder.
    assert abs(oblique_errors(WornLens(lens=MENISCUS, tilt=tilt), 0.0).astigmatism_d[0]) > 0.1


def test_dropping_the_centre_takes_the_cylinder_of_the_tilt_away_ahead():
    """A best form lens is made for gaze off its axis, and with the drop straight ahead is such a gaze."""
    tilt, drop = Tilt(pantoscopic_deg=10.0), 27.0 * np.tan(np.radians(10.0))
    with_drop, without = (
        oblique_errors(WornLens(lens=MENISCUS, tilt=tilt, drop_mm=drop_mm), 0.0).cylinder_d[0]
        for drop_mm in (drop, 0.0)
    )
    assert with_drop < 0.1 * without


def test_errors_count_from_what_was_wanted_and_an_axis_turns_with_the_eye():
    rx = Prescription(sphere_d=-4.0, cylinder_d=-2.5, axis_deg=35.0)
    errors = oblique_errors(WornLens(lens=TORIC), [0.0], meridian_deg=70.0)
    for values in (errors.tangential_d, errors.sagittal_d, errors.cross_d, errors.mean_d, errors.cylinder_d):
        assert values[0] == pytest.approx(0.0, abs=1e-9)
    other = oblique_errors(WornLens(lens=TORIC), [0.0], meridian_deg=70.0, wanted=Prescription(sphere_d=-5.0))
    got = rx.power_in_meridian_d(70.0) + 5.0, rx.power_in_meridian_d(160.0) + 5.0
    assert (other.tangential_d[0], other.sagittal_d[0]) == pytest.approx(got, abs=1e-9)
    assert other.cylinder_d[0] == pytest.approx(2.5, abs=1e-9)


def test_the_parts_of_an_error_belong_together():
    errors = oblique_errors(WornLens(lens=TORIC), np.linspace(-30, 30, 7), meridian_deg=10.0)
    np.testing.assert_allclose(errors.mean_d, (errors.tangential_d + errors.sagittal_d) / 2)
    np.testing.assert_allclose(errors.astigmatism_d, errors.tangential_d - errors.sagittal_d)
    np.testing.assert_allclose(errors.cylinder_d, np.hypot(errors.astigmatism_d, 2 * errors.cross_d))
    assert errors.gaze_deg is errors.rays.gaze_deg
    assert np.abs(errors.cross_d).max() > 0.005


def test_straight_ahead_a_square_lens_has_its_back_vertex_power():
    for lens in (MENISCUS, TORIC, HYPERBOLA):
        found, wanted = power_straight_ahead(WornLens(lens=lens)), lens.back_vertex_power()
        np.testing.assert_allclose(found.power_matrix(), wanted.power_matrix(), atol=1e-9)


def test_no_ray_straight_ahead_is_said():
    thin = lens_for(Prescription(sphere_d=8.0), index=1.5, front_curve_d=10.0, centre_thickness_mm=1.0)
    with pytest.raises(LabError, match="finite numbers"):
        power_straight_ahead(WornLens(lens=thin, drop_mm=19.0))


def test_values_out_of_range_are_refused():
    with pytest.raises(LabError, match=r"gaze 70 is out of range: give from -60 to 60 degrees"):
        chief_rays(WornLens(lens=MENISCUS), [0.0, 70.0])
    with pytest.raises(LabError, match=r"centre drop 30 is out of range: give from -20 to 20 mm"):
        WornLens(lens=MENISCUS, drop_mm=30.0)
    with pytest.raises(LabError, match=r"centre of rotation 5 is out of range: give from 18 to 45 mm"):
        WornLens(lens=MENISCUS, centre_of_rotation_mm=5.0)
    with pytest.raises(LabError, match=r"gaze nan is not a finite number"):
        chief_rays(WornLens(lens=MENISCUS), float("nan"))
    with pytest.raises(LabError, match=r"meridian inf is not a finite number"):
        chief_rays(WornLens(lens=MENISCUS), 0.0, meridian_deg=float("inf"))
