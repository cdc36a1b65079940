"""Surfaces, thickness, layout and materials against published values, the source beside each.

Tolerances are half a unit in the last printed digit. "Read" means the figure stands in the text named;
"rule read", that the rule does and the figure follows from it; "computed", plain arithmetic from the
formula given; "memory", recalled and not seen.
"""

import numpy as np
import pytest

from lablib.datafile import read_table
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, Outline
from lablib.optics.layout import blank_allowance_mm, decentration_mm, minimum_blank_mm, minimum_blank_rule_mm
from lablib.optics.lens import Lens, lens_for, lens_with_least_thickness
from lablib.optics.material import material, materials
from lablib.optics.prescription import Prescription
from lablib.optics.solid import FinishedLens
from lablib.optics.surface import (
    Surface,
    curvature_per_mm,
    power_from_lens_measure_d,
    sagitta_approximate_mm,
    sagitta_mm,
    surface_power_d,
)
from lablib.optics.thick_lens import (
    back_surface_d,
    back_vertex_power_d,
    equivalent_power_d,
    front_vertex_power_d,
    vogel_front_curve_d,
)


def of_surfaces(front_d, back_d, *, index, centre_mm):
    """A lens by its two surface powers."""
    front, back = curvature_per_mm(front_d, index), curvature_per_mm(-back_d, index)
    return Lens(
        front=Surface(flat_per_mm=front, steep_per_mm=front),
        back=Surface(flat_per_mm=back, steep_per_mm=back),
        centre_thickness_mm=centre_mm,
        index=index,
    )


# Surfaces and thickness


def test_sagitta():
    """M. Jalie, Lens Talk 2023 (read): r 52.3 mm, half-diameter 20 mm."""
    assert sagitta_mm(52.3, 20.0) == pytest.approx(3.98, abs=0.005)


def test_centre_of_a_plano_convex_lens():
    """M. Jalie, Lens Talk 2023 (read): front +10.00, n 1.523, diameter 40, edge 1.0: centre 4.98 mm."""
    lens = of_surfaces(10.0, 0.0, index=1.523, centre_mm=4.98)
    assert float(lens.thickness_mm(20.0, 0.0)) == pytest.approx(1.0, abs=0.005)


def test_exact_and_approximate_sagitta():
    """Computed, 6.00 D, n 1.530, y 25: r - sqrt(r2 - y2), and y2 F / (2000 (n - 1))."""
    radius = 1 / curvature_per_mm(6.0, 1.530)
    assert sagitta_mm(radius, 25.0) == pytest.approx(3.6116, abs=5e-5)
    assert sagitta_approximate_mm(6.0, 1.530, 25.0) == pytest.approx(3.5377, abs=5e-5)


@pytest.mark.parametrize(
    ("reading_d", "index", "power_d", "half_digit"),
    [
        (-10.0, 1.60, -11.32, 5e-3),  # read, and computed
        (6.12, 1.498, 5.7505, 5e-5),  # computed
        (6.12, 1.586, 6.7666, 5e-5),  # computed
    ],
)
def test_lens_measure(reading_d, index, power_d, half_digit):
    """The gauge is engraved for index 1.530; power = reading (n - 1) / 0.530."""
    assert power_from_lens_measure_d(reading_d, index) == pytest.approx(power_d, abs=half_digit)
    by_curvature = surface_power_d(curvature_per_mm(reading_d, 1.530), index)
    assert by_curvature == pytest.approx(power_d, abs=half_digit)


@pytest.mark.parametrize(
    ("power", "expected_d"),
    [(back_vertex_power_d, 6.4101), (front_vertex_power_d, 6.0621), (equivalent_power_d, 6.1576)],
)
def test_thick_lens(power, expected_d):
    """Computed: F1 +10.00, F2 -4.00, t 6 mm, n 1.523; F1 / (1 - t F1 / n) + F2 and its fellows."""
    assert power(10.0, -4.0, 6.0, 1.523) == pytest.approx(expected_d, abs=5e-5)


@pytest.mark.parametrize(
    ("wanted_d", "front_d", "thickness_mm", "back_d"), [(5.0, 8.0, 5.0, -3.2195), (-6.0, 4.0, 2.0, -10.0215)]
)
def test_back_surface_for_a_wanted_power(wanted_d, front_d, thickness_mm, back_d):
    """Computed, n 1.498: F2 = F'v - F1 / (1 - t F1 / n)."""
    assert back_surface_d(wanted_d, front_d, thickness_mm, 1.498) == pytest.approx(back_d, abs=5e-5)
    lens = lens_for(
        Prescription(sphere_d=wanted_d), index=1.498, front_curve_d=front_d, centre_thickness_mm=thickness_mm
    )
    np.testing.assert_allclose(lens.back_curves_d, [back_d, back_d], rtol=0, atol=5e-5)


def test_edge_of_a_minus_meniscus():
    """M. Jalie, Lens Talk 2023 exercise (rule read): F1 +4.00, F2 -14.00, n 1.523, diameter 44, centre 1."""
    lens = of_surfaces(4.0, -14.0, index=1.523, centre_mm=1.0)
    assert float(lens.thickness_mm(0.0, 22.0)) == pytest.approx(6.30, abs=0.005)


@pytest.mark.parametrize("eye", list(Eye))
def test_edges_of_a_decentred_minus_lens(eye):
    """Computed: -4.00, n 1.498, F1 +4.00, centre 2.0, A 52, decentred 3 mm in."""
    lens = lens_for(Prescription(sphere_d=-4.0), index=1.498, front_curve_d=4.0, centre_thickness_mm=2.0)
    frame = Frame(a_mm=52.0, b_mm=40.0, dbl_mm=18.0)
    inward, up = decentration_mm(frame, monocular_pd_mm=32.0)
    assert (inward, up) == (3.0, 0.0)
    finished = FinishedLens(
        lens=lens, outline=frame.outline(eye), centre_x_mm=eye.nasal_sign * inward, centre_y_mm=up
    )
    nasal_deg, temporal_deg = (0.0, 180.0) if eye is Eye.RIGHT else (180.0, 0.0)
    assert finished.edge_at_mm(temporal_deg) == pytest.approx(5.765, abs=5e-4)
    assert finished.edge_at_mm(nasal_deg) == pytest.approx(4.275, abs=5e-4)


def test_plus_lens_with_thickness_and_back_surface_solved_together():
    """Computed: +5.00, n 1.498, F1 +8.00, edge 1.0 at 30 mm from the centre: 5.738 mm, F2 -3.2529."""
    angle = np.radians(np.arange(0.0, 360.0, 5.0))
    lens = lens_with_least_thickness(
        Prescription(sphere_d=5.0),
        index=1.498,
        front_curve_d=8.0,
        least_mm=1.0,
        x_mm=30.0 * np.cos(angle),
        y_mm=30.0 * np.sin(angle),
    )
    assert lens.centre_thickness_mm == pytest.approx(5.738, abs=5e-4)
    assert lens.back_curves_d[0] == pytest.approx(-3.2529, abs=5e-5)


@pytest.mark.parametrize(("sphere_d", "cylinder_d", "front_d"), [(4.0, 1.0, 10.50), (-4.0, -1.0, 3.75)])
def test_base_curve_by_vogels_rule(sphere_d, cylinder_d, front_d):
    """Memory, not read; Bhootra, Ophthalmic Lenses, p. 25 (read) has another rule: +8.50 and +3.50."""
    rx = Prescription(sphere_d=sphere_d, cylinder_d=cylinder_d, axis_deg=90)
    assert vogel_front_curve_d(rx.spherical_equivalent_d) == pytest.approx(front_d, abs=5e-3)


# Layout


@pytest.mark.parametrize(
    ("a_mm", "dbl_mm", "pd_mm", "in_mm"), [(50.0, 18.0, 64.0, 2.0), (53.0, 17.0, 67.0, 1.5)]
)
def test_decentration(a_mm, dbl_mm, pd_mm, in_mm):
    """C. Brooks, Essentials of Ophthalmic Lens Finishing, 2nd ed., p. 391: inputs read, answers computed."""
    frame = Frame(a_mm=a_mm, b_mm=40.0, dbl_mm=dbl_mm)
    inward, up = decentration_mm(frame, monocular_pd_mm=pd_mm / 2)
    assert inward == pytest.approx(in_mm, abs=0.05)
    assert up == 0.0


# A, B, DBL, monocular distance, height of the cross; in, up, engraved circles 4 mm below the cross
CROSSES = [
    (49.0, 34.0, 21.0, 31.5, 20.0, 3.5, 3.0, -1.0),
    (49.0, 34.0, 21.0, 30.5, 21.0, 4.5, 4.0, 0.0),
    (44.0, 32.0, 20.0, 30.5, 19.0, 1.5, 3.0, -1.0),
    (44.0, 32.0, 20.0, 31.0, 19.0, 1.0, 3.0, -1.0),
]


@pytest.mark.parametrize(("a", "b", "dbl", "monocular", "height", "inward", "up", "circles"), CROSSES)
def test_layout_of_a_fitting_cross(a, b, dbl, monocular, height, inward, up, circles):
    """C. Brooks, Essentials of Ophthalmic Lens Finishing, 2nd ed., p. 400: inputs read, answers computed."""
    frame = Frame(a_mm=a, b_mm=b, dbl_mm=dbl)
    found = decentration_mm(frame, monocular_pd_mm=monocular, height_mm=height)
    assert found == pytest.approx((inward, up), abs=0.05)
    assert found[1] - 4.0 == pytest.approx(circles, abs=0.05)


def test_least_blank_by_the_rule():
    """Trade problems: ED 56, A + DBL 70, PD 60: 66, with an allowance of 1 mm 67 (read), of 2 mm 68."""
    frame = Frame(a_mm=52.0, b_mm=40.0, dbl_mm=18.0)
    inward, _ = decentration_mm(frame, monocular_pd_mm=30.0)
    assert blank_allowance_mm() == 2.0
    assert minimum_blank_rule_mm(56.0, inward) == pytest.approx(68.0, abs=0.5)
    assert minimum_blank_rule_mm(56.0, inward) - blank_allowance_mm() == pytest.approx(66.0, abs=0.5)


def test_the_rule_is_right_for_a_round_outline():
    """On a circle the farthest point does lie opposite the decentration, so rule and outline agree."""
    frame = Frame(a_mm=56.0, b_mm=56.0, dbl_mm=14.0)
    inward, _ = decentration_mm(frame, monocular_pd_mm=30.0)
    round_outline = Outline(radius_mm=np.full(720, 28.0))
    least = minimum_blank_mm(round_outline, x_mm=inward, y_mm=0.0)
    assert least == pytest.approx(68.0, abs=1e-9)
    assert least == pytest.approx(
        minimum_blank_rule_mm(round_outline.effective_diameter_mm, inward), abs=1e-9
    )


def test_effective_diameter_of_a_sharp_rectangle():
    """Computed: sqrt(50^2 + 36^2) = 61.61 mm. Points every 0.005 degrees, so that one is at the corner."""
    angle = np.radians(np.arange(72_000) * 0.005)
    with np.errstate(divide="ignore"):
        radius = np.minimum(25.0 / np.abs(np.cos(angle)), 18.0 / np.abs(np.sin(angle)))
    assert Outline(radius_mm=radius).effective_diameter_mm == pytest.approx(61.61, abs=0.005)


# Materials

# n_d, n_e, V_d, density
MATERIALS = {
    "crown-glass-1.523": (1.523, 1.525, 58.8, 2.54),
    "hard-resin-1.50": (1.500, 1.502, 58, 1.32),
    "urethane-1.53": (1.530, 1.533, 44, 1.11),
    "polycarbonate-1.59": (1.586, 1.591, 31, 1.20),
    "thiourethane-1.60": (1.592, 1.596, 42, 1.31),
    "thiourethane-1.67": (1.660, 1.665, 32, 1.36),
    "episulfide-1.74": (1.728, 1.734, 33, 1.47),
}


@pytest.mark.parametrize("name", MATERIALS)
def test_materials(name):
    """Ophthalmic Optics Files: Materials and Treatments, a lens maker's handbook, 2010 (read)."""
    index, index_e, abbe, density = MATERIALS[name]
    found = material(name)
    assert (found.index, found.abbe, found.density) == (index, abbe, density)
    assert read_table("lablib.optics", "materials.toml")["material"][name]["n_e"] == index_e
    assert found.grade == "published"


def test_every_material_of_the_table_is_checked():
    assert list(materials()) == list(MATERIALS)


def test_abbe_number_of_crown_glass():
    """Dictionary of Optometry: n_F 1.5293, n_D 1.5230, n_C 1.5204 give 58.76; the table prints 58.8."""
    abbe = (1.5230 - 1) / (1.5293 - 1.5204)
    assert abbe == pytest.approx(58.76, abs=0.005)
    assert material("crown-glass-1.523").abbe == pytest.approx(abbe, abs=0.05)
