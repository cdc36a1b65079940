"""Lens form from two surfaces: against published and computed values, and the workings as printed."""

import pytest
from evaluation import assert_comes_out

from lablib.errors import LabError
from lablib.optics.form import centre_for_edge_mm, edge_of_surfaces_mm
from lablib.optics.form_workings import (
    centre_for_edge_workings,
    edge_of_surfaces_workings,
    vogel_front_curve_workings,
)
from lablib.optics.layout_workings import minimum_blank_rule_working
from lablib.optics.prescription import Prescription
from lablib.optics.surface import SurfaceTooSteep
from lablib.optics.surface_workings import radius_working, sagitta_working
from lablib.working import Term


def away(value: float) -> Term:
    return Term(symbol="y", value=value, unit="mm", digits=1, meaning="distance from the optical centre")


def test_edge_of_a_minus_meniscus():
    """M. Jalie, Lens Talk 2023 exercise (rule read): F1 +4.00, F2 -14.00, n 1.523, diameter 44, centre 1."""
    edge = edge_of_surfaces_mm(4.0, -14.0, index=1.523, centre_thickness_mm=1.0, away_mm=22.0)
    assert edge == pytest.approx(6.30, abs=0.005)


def test_centre_of_a_plano_convex_lens():
    """M. Jalie, Lens Talk 2023 (read): front +10.00, n 1.523, diameter 40, edge 1.0: centre 4.98 mm."""
    centre = centre_for_edge_mm(10.0, 0.0, index=1.523, edge_mm=1.0, away_mm=20.0)
    assert centre == pytest.approx(4.98, abs=0.005)


def test_centre_and_edge_are_each_others_answer():
    surfaces = {"front_d": 8.0, "back_d": -2.75, "index": 1.592, "away_mm": 29.0}
    centre = centre_for_edge_mm(**surfaces, edge_mm=1.2)
    assert edge_of_surfaces_mm(**surfaces, centre_thickness_mm=centre) == pytest.approx(1.2, abs=1e-9)


def test_a_minus_lens_leaves_no_centre_for_a_thin_edge():
    assert centre_for_edge_mm(4.0, -8.0, index=1.5, edge_mm=1.0, away_mm=29.0) < 0.0


def test_an_edge_no_lens_has_and_a_surface_that_does_not_reach():
    with pytest.raises(LabError, match=r"edge 0 is out of range: give above 0 and up to 20 mm"):
        centre_for_edge_mm(8.0, -3.0, index=1.5, edge_mm=0.0, away_mm=29.0)
    with pytest.raises(SurfaceTooSteep, match=r"surface radius 35\.7 mm does not reach 40\.0 mm"):
        edge_of_surfaces_mm(4.0, -14.0, index=1.5, centre_thickness_mm=1.0, away_mm=40.0)


@pytest.mark.parametrize(("front_d", "back_d"), [(4.0, -8.0), (8.25, -2.75), (6.0, 0.0), (0.0, -6.0)])
def test_workings_come_out_as_printed(front_d: float, back_d: float):
    edge = edge_of_surfaces_workings(
        front_d, back_d, index=1.6, centre_thickness_mm=6.0, away=away(28.5), name="temporal edge"
    )
    centre = centre_for_edge_workings(front_d, back_d, index=1.6, edge_mm=1.2, away=away(28.5))
    for step in (*edge, *centre):
        assert_comes_out(step)
    flats = (front_d, back_d).count(0.0)
    assert [step.symbol for step in edge][2 - flats :] == ["s_1", "s_2", "e"]
    assert centre[-1].symbol == "t"


def test_radius_and_sagitta_of_the_worked_mistake():
    """Computed: 6.00 D on index 1.530, half-chord 25 mm: radius 88.33 mm, sagitta 3.61 mm."""
    radius = radius_working("radius", 6.0, 1.53, is_back=False)
    assert radius.result == "88.33 mm"
    depth = sagitta_working("sagitta", "s", radius.as_term(), away(25.0))
    assert depth.value == pytest.approx(3.6116, abs=5e-5)
    assert_comes_out(depth)


def test_a_surface_that_bulges_towards_the_eye_lies_in_front_of_its_vertex():
    radius = radius_working("back radius", 6.0, 1.53, is_back=True)
    depth = sagitta_working("depth", "s_2", radius.as_term(), away(25.0))
    assert depth.value == pytest.approx(-3.6116, abs=5e-5)
    assert_comes_out(depth)


@pytest.mark.parametrize(
    ("sphere_d", "cylinder_d", "formula", "curve_d"),
    [(-4.0, -1.0, "M / 2 + 6", 3.75), (4.0, 1.0, "M + 6", 10.5)],
)
def test_front_curve_by_vogels_rule(sphere_d: float, cylinder_d: float, formula: str, curve_d: float):
    """Memory, not read: plus, equivalent + 6; minus, half the equivalent + 6."""
    rx = Prescription(sphere_d=sphere_d, cylinder_d=cylinder_d, axis_deg=90)
    equivalent, curve = vogel_front_curve_workings(rx)
    assert (curve.formula, curve.value) == (formula, curve_d)
    assert_comes_out(equivalent)
    assert_comes_out(curve)


@pytest.mark.parametrize("in_mm", [5.0, -5.0])
def test_least_blank_by_the_rule_counts_outwards_as_inwards(in_mm: float):
    """Common practice: ED 56, 5 mm in or out, allowance 2 mm: 68 mm."""
    blank = minimum_blank_rule_working(56.0, in_mm)
    assert blank.value == 68.0
    assert_comes_out(blank)
