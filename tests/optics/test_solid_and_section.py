"""A finished lens: volume against closed forms and another integrator, weight, cuts that agree with edges."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import dblquad

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.lens import lens_for
from lablib.optics.prescription import Prescription
from lablib.optics.section import section
from lablib.optics.solid import FinishedLens
from lablib.optics.surface import SurfaceTooSteep

ROUND = Frame(a_mm=44.0, b_mm=44.0, dbl_mm=18.0, shape=OutlineShape.named("round"))
FRAME = Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0)


def finished(
    rx: Prescription,
    *,
    frame: Frame = FRAME,
    front: float = 4.0,
    centre: float = 2.0,
    x_mm: float = 0.0,
    y_mm: float = 0.0,
    **prism: float,
) -> FinishedLens:
    lens = lens_for(rx, index=1.5, front_curve_d=front, centre_thickness_mm=centre, **prism)
    return FinishedLens(lens=lens, outline=frame.outline(Eye.RIGHT), centre_x_mm=x_mm, centre_y_mm=y_mm)


def cap_volume(radius: float, half: float) -> float:
    """Volume of a spherical cap, pi h^2 (3 r - h) / 3 with h its height."""
    height = radius - math.sqrt(radius**2 - half**2)
    return math.pi * height**2 * (3 * radius - height) / 3


def test_volume_of_a_plano_concave_lens():
    # F2 = -6.00 on index 1.5 has the radius 83.333 mm; thickness is t plus the back's sagitta.
    lens = finished(Prescription(sphere_d=-6.0), frame=ROUND, front=0.0)
    expected = math.pi * 22.0**2 * 2.0 + _bowl(500.0 / 6.0, 22.0)
    assert lens.volume_mm3 == pytest.approx(expected, rel=1e-9)


def _bowl(radius: float, half: float) -> float:
    """Integral of the sagitta over the disc: the cylinder of the full height less the cap."""
    sag = radius - math.sqrt(radius**2 - half**2)
    return math.pi * half**2 * sag - cap_volume(radius, half)


def test_volume_of_a_plano_convex_lens():
    # Front +5.00, flat back: thickness is t less the front's sagitta.
    front = 5.0
    lens = finished(
        Prescription(sphere_d=front / (1 - 0.004 * front / 1.5)), frame=ROUND, front=front, centre=4.0
    )
    assert lens.lens.back_curves_d == pytest.approx((0.0, 0.0), abs=1e-12)
    expected = math.pi * 22.0**2 * 4.0 - _bowl(100.0, 22.0)
    assert lens.volume_mm3 == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("prism", [0.0, 3.0])
def test_volume_of_a_decentred_toric_against_a_general_integrator(prism: float):
    # scipy.integrate.dblquad over the ellipse, written in x and y.
    frame = Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0, shape=OutlineShape.superellipse(2.0))
    rx = Prescription(sphere_d=-4.0, cylinder_d=-2.0, axis_deg=35)
    lens = finished(rx, frame=frame, x_mm=3.0, y_mm=1.0, prism_x_prism_d=prism)
    expected, _ = dblquad(
        lambda y, x: float(lens.thickness_mm(np.array(x), np.array(y))),
        -25.0,
        25.0,
        lambda x: -18.0 * math.sqrt(1 - (x / 25.0) ** 2),
        lambda x: 18.0 * math.sqrt(1 - (x / 25.0) ** 2),
        epsabs=0.05,
    )
    assert lens.volume_mm3 == pytest.approx(expected, abs=0.1)


def test_weight_of_a_flat_disc():
    flat = finished(Prescription(sphere_d=0.0), frame=ROUND, front=0.0)
    # 22 mm radius, 2 mm thick, 1.32 g/cm3.
    assert flat.weight_g(1.32) == pytest.approx(math.pi * 2.2**2 * 0.2 * 1.32, rel=1e-9)
    assert flat.least_mm == pytest.approx(2.0)


@given(
    centre=st.floats(1.0, 6.0),
    more=st.floats(0.1, 2.0),
    sphere=st.integers(-32, 0).map(lambda quarter: quarter / 4),
)
def test_weight_rises_with_thickness(centre: float, more: float, sphere: float):
    rx = Prescription(sphere_d=sphere)
    thin, thick = finished(rx, centre=centre), finished(rx, centre=centre + more)
    assert thick.weight_g(1.32) > thin.weight_g(1.32)


def test_edge_at_a_direction_is_the_nearest_point():
    lens = finished(Prescription(sphere_d=-4.0), x_mm=2.0)
    assert lens.edge_at_mm(0.0) == lens.edge_mm[0]
    assert lens.edge_at_mm(179.9) == lens.edge_mm[360]
    assert lens.edge_at_mm(359.9) == lens.edge_mm[0]


def test_a_lens_that_runs_out_at_its_edge_or_inside_is_refused():
    with pytest.raises(LabError, match=r"lens runs out: with 1\.00 mm at the centre its thinnest place"):
        finished(Prescription(sphere_d=4.0), front=6.0, centre=1.0)
    # Prism on a weak minus lens: the thinnest place lies between the centre and the apex, not at the edge.
    inside = finished(Prescription(sphere_d=-2.5), centre=1.5, prism_x_prism_d=3.0)
    assert inside.least_mm < min(inside.edge_mm.min(), 1.5) - 0.1
    with pytest.raises(LabError, match="raise the centre thickness by more than"):
        finished(Prescription(sphere_d=-2.5), centre=0.5, prism_x_prism_d=5.0)


def test_a_surface_too_steep_for_the_outline_is_refused():
    with pytest.raises(SurfaceTooSteep, match=r"surface radius 20\.8 mm does not reach"):
        finished(Prescription(sphere_d=-20.0), front=4.0, centre=1.0)


@pytest.mark.parametrize("direction", [0.0, 30.0, 90.0, 200.0])
@pytest.mark.parametrize("point", [(0.0, 0.0), (3.0, -2.0)])
def test_a_cut_ends_on_the_outline_with_the_thickness_there(direction: float, point: tuple[float, float]):
    lens = finished(Prescription(sphere_d=-5.0, cylinder_d=-1.0, axis_deg=60), x_mm=3.0, y_mm=-2.0)
    cut = section(lens, blank_diameter_mm=70.0, x_mm=point[0], y_mm=point[1], direction_deg=direction)
    cosine, sine = math.cos(math.radians(direction)), math.sin(math.radians(direction))
    for end, thickness in zip(cut.along_mm[[0, -1]], cut.end_thickness_mm, strict=True):
        x, y = point[0] + end * cosine, point[1] + end * sine
        # The superellipse's own equation, to the chord error between points half a degree apart.
        assert abs(x / 25.0) ** 2.6 + abs(y / 18.0) ** 2.6 == pytest.approx(1.0, abs=2e-4)
        assert thickness == pytest.approx(float(lens.thickness_mm(np.array(x), np.array(y))), abs=1e-9)


def test_the_blank_of_a_cut_reaches_its_rim_or_where_the_surfaces_meet():
    minus = finished(Prescription(sphere_d=-4.0), x_mm=3.0)
    cut = section(minus, blank_diameter_mm=70.0, x_mm=0.0, y_mm=0.0, direction_deg=0.0)
    assert cut.blank_along_mm[[0, -1]] == pytest.approx([-32.0, 38.0])
    plus = finished(Prescription(sphere_d=4.0), front=7.0, centre=4.0)
    cut = section(plus, blank_diameter_mm=70.0, x_mm=0.0, y_mm=0.0, direction_deg=0.0)
    assert 25.0 < cut.blank_along_mm[-1] < 35.0
    assert np.all(cut.blank_back_mm >= cut.blank_front_mm)


def test_a_cut_must_be_laid_through_the_lens():
    with pytest.raises(
        LabError, match=r"section through \(40, 0\) mm misses the lens: lay it through a point"
    ):
        section(
            finished(Prescription(sphere_d=-4.0)),
            blank_diameter_mm=70.0,
            x_mm=40.0,
            y_mm=0.0,
            direction_deg=90.0,
        )
