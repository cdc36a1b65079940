"""The lens against real rays: back vertex power, prism, thickness, and what Prentice's rule leaves out.

The expected figures come from a ray tracer that shares no code with the package; test_ray_tracer.py
checks the tracer against a general-purpose one.
"""

import numpy as np
import pytest
from ray_tracer import (
    ALONG_AXIS,
    IDENTITY,
    Placed,
    Torus,
    TracedLens,
    back_vertex_power_matrix_d,
    deviation_prism_d,
    rotation_about,
    square_to_back,
)

from lablib.optics.eye import Eye
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.optics.prism import Prism
from lablib.optics.surface import Surface

INDICES = (1.5, 1.6, 1.67, 1.74)
# sphere, cylinder, axis, front curve [D], centre thickness [mm]
FORMS = [
    (-8.00, 0.00, 180, 0.5, 1.5),
    (-6.25, -2.75, 20, 1.0, 1.3),
    (-4.00, -2.00, 30, 3.0, 1.3),
    (-2.00, +1.25, 120, 5.0, 2.0),
    (0.00, 0.00, 180, 6.0, 2.0),
    (0.00, -4.00, 90, 4.0, 2.0),
    (+1.00, -2.00, 45, 6.0, 2.5),
    (+4.00, -1.50, 77, 8.0, 6.0),
    (+6.00, +2.50, 135, 10.0, 8.0),
    (+14.00, -3.00, 65, 15.0, 12.0),
    # The front alone gives the power of one meridian: the back is a cylinder.
    (+5.00, -1.00, 15, 5.0, 1e-9),
]
# The same without the very strong and the very thin.
COMMON = FORMS[:-2]
PRISM = [(0.5, 0.0), (1.0, 90.0), (2.0, 45.0), (3.0, 180.0), (5.0, 250.0), (10.0, 315.0)]


def made(form, index, amount=0.0, base_deg=0.0):
    """The package's lens for a form, with a prism of so much base towards an angle."""
    sphere, cylinder, axis, front_curve, thickness = form
    return lens_for(
        Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis),
        index=index,
        front_curve_d=front_curve,
        centre_thickness_mm=thickness,
        prism_x_prism_d=amount * np.cos(np.radians(base_deg)),
        prism_y_prism_d=amount * np.sin(np.radians(base_deg)),
    )


def placed(surface, vertex_z_mm):
    """The same surface for the ray tracer, from curvatures and tilts alone; it finds the steeper itself."""
    flat, steep, along = surface.flat_per_mm, surface.steep_per_mm, surface.flat_meridian_deg
    if abs(flat) > abs(steep):
        flat, steep, along = steep, flat, along + 90.0
    slope = np.hypot(surface.tilt_x, surface.tilt_y)
    turn = IDENTITY
    if slope:
        turn = rotation_about([surface.tilt_y, -surface.tilt_x, 0.0], np.degrees(np.arctan(slope)))
    return Placed(Torus(flat, steep, along), vertex_z_mm, turn)


def traced(lens):
    """The same lens for the ray tracer."""
    return TracedLens(placed(lens.front, 0.0), placed(lens.back, lens.centre_thickness_mm), lens.index)


def ordered_matrix_d(form):
    """Power matrix of sphere and cylinder: S + C sin2, -C sin cos, S + C cos2 (Long 1976)."""
    sphere, cylinder, axis = form[:3]
    across = np.array([-np.sin(np.radians(axis)), np.cos(np.radians(axis))])
    return sphere * np.eye(2) + cylinder * np.outer(across, across)


@pytest.mark.parametrize("index", INDICES)
@pytest.mark.parametrize("form", FORMS, ids=str)
def test_rays_near_the_axis_find_the_prescription(form, index):
    found = back_vertex_power_matrix_d(traced(made(form, index)))
    # Measured: 8e-10 D at worst.
    np.testing.assert_allclose(found, ordered_matrix_d(form), rtol=0, atol=1e-8)


@pytest.mark.parametrize("axis", [1, 15, 45, 89, 90, 91, 135, 179, 180])
@pytest.mark.parametrize("cylinder", [-3.25, +3.25])
@pytest.mark.parametrize("sphere", [-5.0, +1.5, +5.0])
def test_rays_find_the_cylinder_in_every_axis(sphere, cylinder, axis):
    form = (sphere, cylinder, axis, 6.0, 4.0)
    found = back_vertex_power_matrix_d(traced(made(form, 1.592)))
    np.testing.assert_allclose(found, ordered_matrix_d(form), rtol=0, atol=1e-8)


@pytest.mark.parametrize("form", FORMS, ids=str)
def test_the_lens_states_the_power_that_rays_find(form):
    lens = made(form, 1.6)
    stated = lens.back_vertex_power().power_matrix()
    np.testing.assert_allclose(stated, back_vertex_power_matrix_d(traced(lens)), rtol=0, atol=1e-8)


def on_axis_deviation(lens):
    return deviation_prism_d(traced(lens), np.zeros(1), np.zeros(1))[0]


@pytest.mark.parametrize(("amount", "base_deg"), PRISM)
@pytest.mark.parametrize("form", FORMS, ids=str)
def test_the_ray_along_the_axis_is_bent_by_the_ordered_prism(form, amount, base_deg):
    towards = np.array([np.cos(np.radians(base_deg)), np.sin(np.radians(base_deg))])
    for index in INDICES:
        # Measured: 5e-15 prism dioptres at worst; the tilt is exact, not the thin-prism rule.
        found = on_axis_deviation(made(form, index, amount, base_deg))
        np.testing.assert_allclose(found, amount * towards, rtol=0, atol=1e-12)


@pytest.mark.parametrize("eye", list(Eye))
def test_base_in_lies_on_the_nose_side_of_either_eye(eye):
    """Right eye base in is 0 degrees, left eye 180 (ISO 8429); light is bent towards the base."""
    inward, up = Prism(amount_prism_d=3.0, base="in").resolved(eye=eye)
    lens = lens_for(
        Prescription(sphere_d=-1.0),
        index=1.5,
        front_curve_d=4.0,
        centre_thickness_mm=2.5,
        prism_x_prism_d=eye.nasal_sign * inward,
        prism_y_prism_d=up,
    )
    x_towards_nose = {Eye.RIGHT: 1.0, Eye.LEFT: -1.0}[eye]
    np.testing.assert_allclose(on_axis_deviation(lens), [3.0 * x_towards_nose, 0.0], rtol=0, atol=1e-12)
    nasal, temporal = lens.thickness_mm(x_towards_nose * np.array([15.0, -15.0]), np.zeros(2))
    assert nasal > temporal + 1.5


@pytest.mark.parametrize(("amount", "base_deg"), PRISM)
def test_the_lens_states_the_prism_that_rays_find(amount, base_deg):
    for form in FORMS:
        lens = made(form, 1.6, amount, base_deg)
        bent = float(np.hypot(*on_axis_deviation(lens)))
        assert lens.prism_prism_d == pytest.approx(bent, abs=1e-12)


def test_base_up_is_thicker_above_and_bends_light_up():
    lens = made((-1.0, 0.0, 180, 4.0, 2.5), 1.5, 3.0, 90.0)
    assert on_axis_deviation(lens)[1] == pytest.approx(3.0, abs=1e-12)
    above, below = lens.thickness_mm(np.zeros(2), np.array([15.0, -15.0]))
    assert above > below + 1.5


def over_common_lenses(amount, measure):
    """What a measure gives for the lenses in common use with a prism: every form, index and three bases."""
    return np.array(
        [
            measure(form, made(form, index, amount, base))
            for form in COMMON
            for index in INDICES
            for base in (0.0, 60.0, 120.0)
        ]
    )


def change_d(form, matrix):
    """By how much the two principal powers of the error differ from none."""
    return np.linalg.eigvalsh(matrix - ordered_matrix_d(form))


# Measured here: over lenses from -8 to +6 D the tilt changes the power seen along the axis by so much,
# in the worst meridian; it grows with the square of the prism.
TILT_COSTS_D = [
    (1.0, -0.011, +0.003),
    (2.0, -0.046, +0.011),
    (3.0, -0.103, +0.024),
    (5.0, -0.288, +0.066),
    (10.0, -1.180, +0.267),
]


@pytest.mark.parametrize(("amount", "least_d", "greatest_d"), TILT_COSTS_D)
def test_what_the_tilt_of_a_prism_does_to_the_power(amount, least_d, greatest_d):
    changes = over_common_lenses(
        amount, lambda form, lens: change_d(form, back_vertex_power_matrix_d(traced(lens)))
    )
    np.testing.assert_allclose([changes.min(), changes.max()], [least_d, greatest_d], rtol=0, atol=5e-4)


def test_what_is_read_with_the_back_held_square_to_the_light():
    """Held so, light passes the front a little to one side, and a thick plus lens shows less prism."""

    def read(form, lens):
        prism, matrix = square_to_back(traced(lens))
        return [prism, *change_d(form, matrix)]

    prism, *changes = over_common_lenses(3.0, read).T
    np.testing.assert_allclose([prism.min(), prism.max()], [2.518, 2.997], rtol=0, atol=5e-4)
    np.testing.assert_allclose([np.min(changes), np.max(changes)], [0.001, 0.051], rtol=0, atol=5e-4)


@pytest.mark.parametrize("index", [1.5, 1.74])
@pytest.mark.parametrize("form", FORMS, ids=str)
def test_thickness_at_random_points_is_where_a_line_meets_both_surfaces(form, index):
    draw = np.random.default_rng(11)
    for amount, base_deg in [(0.0, 0.0), *PRISM]:
        lens = made(form, index, amount, base_deg)
        reach, angle = draw.uniform(0.0, 25.0, 40), draw.uniform(0.0, 2 * np.pi, 40)
        x, y = reach * np.cos(angle), reach * np.sin(angle)
        np.testing.assert_allclose(
            lens.thickness_mm(x, y), traced(lens).thickness_mm(x, y), rtol=0, atol=1e-9
        )


def test_depths_of_steep_and_strongly_tilted_surfaces():
    """Curvatures of either sign, tilts to 28 degrees, points out to nine tenths of what is reached."""
    draw = np.random.default_rng(17)
    for _ in range(150):
        steep = draw.choice([-1.0, 1.0]) / draw.uniform(20.0, 200.0)
        tilt, downhill = np.radians(draw.uniform(0.0, 28.0)), draw.uniform(0.0, 2 * np.pi)
        surface = Surface(
            flat_per_mm=steep * draw.uniform(-0.95, 1.0),
            steep_per_mm=steep,
            flat_meridian_deg=draw.uniform(0.0, 180.0),
            tilt_x=np.tan(tilt) * np.cos(downhill),
            tilt_y=np.tan(tilt) * np.sin(downhill),
        )
        reach = min(35.0, draw.uniform(0.2, 0.9) * (1 - np.sin(tilt)) / abs(steep))
        angle = draw.uniform(0.0, 2 * np.pi)
        x, y = reach * np.cos(angle), reach * np.sin(angle)
        met, _ = placed(surface, 0.0).meet(np.array([[x, y, 0.0]]), ALONG_AXIS[None])
        assert float(surface.sag_mm(x, y)) == pytest.approx(met[0, 2], abs=1e-9)


def test_the_array_functions_keep_the_shape_they_are_given():
    lens = made(FORMS[1], 1.6, 2.0, 45.0)
    x, y = np.meshgrid(np.linspace(-20.0, 20.0, 5), np.linspace(-15.0, 15.0, 4))
    flat = traced(lens).thickness_mm(x.ravel(), y.ravel())
    np.testing.assert_allclose(lens.thickness_mm(x, y), flat.reshape(4, 5), rtol=0, atol=1e-9)


# Sphere, front curve [D], centre thickness [mm]: two or three usual forms of each power.
SPHERES = [
    (-8.0, 0.5, 1.5), (-8.0, 2.0, 1.5),
    (-6.0, 0.5, 1.5), (-6.0, 3.0, 1.5),
    (-4.0, 2.0, 1.8), (-4.0, 4.0, 1.8),
    (-2.0, 3.0, 2.0), (-2.0, 5.0, 2.0),
    (+2.0, 5.0, 3.0), (+2.0, 8.0, 3.0),
    (+4.0, 6.0, 5.0), (+4.0, 10.0, 5.0),
    (+6.0, 8.0, 7.0), (+6.0, 12.0, 7.0),
]  # fmt: skip


def entering_height_mm(lens, leaving_mm):
    """Where a ray parallel to the axis must enter to leave the back surface at a height: fixed point."""
    entering = np.array(leaving_mm, dtype=float)
    for _ in range(15):
        points = np.column_stack([entering, 0 * entering, np.full(len(entering), -20.0)])
        met, _ = lens.towards_eye(points, np.tile(ALONG_AXIS, (len(entering), 1)))
        entering += leaving_mm - met[:, 0]
    return entering


HEIGHTS_MM = np.array([5.0, 10.0, 15.0, 20.0, 25.0])


def excess_over_prentice():
    """Share by which real rays are bent more than height times power, (lens, height)."""
    rows = []
    for sphere, front_curve, thickness in SPHERES:
        for index in (1.5, 1.6, 1.67):
            lens = traced(made((sphere, 0.0, None, front_curve, thickness), index))
            entering = entering_height_mm(lens, HEIGHTS_MM)
            bent = deviation_prism_d(lens, entering, 0 * entering)[:, 0]
            rows.append(bent / (-sphere * HEIGHTS_MM / 10) - 1)
    return np.array(rows)


# Measured here: least and greatest excess at each height over the lenses of SPHERES [per cent].
LEAST_EXCESS = [0.1, 0.3, 0.7, 1.2, 1.9]
GREATEST_EXCESS = [0.9, 3.7, 9.0, 17.9, 33.0]


def test_real_rays_are_bent_more_than_prentice_says():
    excess = 100 * excess_over_prentice()
    assert excess.min() > 0
    assert np.all(np.diff(excess, axis=1) > 0)
    np.testing.assert_allclose(excess.min(axis=0), LEAST_EXCESS, rtol=0, atol=0.05)
    np.testing.assert_allclose(excess.max(axis=0), GREATEST_EXCESS, rtol=0, atol=0.05)
