"""Workings of the wearing position: each printed substitution comes out, and its value is the right one."""

import pytest
from evaluation import assert_comes_out
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.prescription import Prescription
from lablib.optics.tilt import FORMS, Tilt, compensated, tilt_effect
from lablib.optics.tilt_place_workings import (
    centre_drop_by_rule_workings,
    centre_drop_working,
    tilt_prism_working,
    wrapped_decentration_working,
)
from lablib.optics.tilt_toric_workings import compensated_toric_workings, tilted_toric_workings
from lablib.optics.tilt_workings import compensated_workings, tilt_effect_workings
from lablib.optics.tscherning import ThinLens
from lablib.optics.tscherning_workings import best_form_workings

TILTS = [
    Tilt(pantoscopic_deg=10.0),
    Tilt(wrap_deg=15.0),
    Tilt(pantoscopic_deg=-5.0),
    Tilt(pantoscopic_deg=8.0, wrap_deg=15.0),
    Tilt(pantoscopic_deg=8.0, wrap_deg=15.0, eye="left"),
    Tilt(pantoscopic_deg=-5.0, wrap_deg=12.0),
]


@pytest.mark.parametrize("tilt", TILTS)
@pytest.mark.parametrize("sphere_d", [-6.0, 4.25])
@pytest.mark.parametrize("form", FORMS)
def test_the_effect_of_a_tilt(tilt: Tilt, sphere_d: float, form: str):
    steps = tilt_effect_workings(sphere_d, tilt=tilt, index=1.5, form=form)
    assert_worked(steps)
    by_symbol = {step.symbol: step.value for step in steps}
    effect = tilt_effect(Prescription(sphere_d=sphere_d), tilt=tilt, index=1.5, form=form)
    effect = effect.in_form("minus" if sphere_d < 0.0 else "plus")
    assert (by_symbol["S'"], by_symbol["C'"]) == (effect.sphere_d, effect.cylinder_d)
    assert by_symbol.get("A", effect.axis_deg) == effect.axis_deg


@pytest.mark.parametrize("tilt", TILTS)
@pytest.mark.parametrize("sphere_d", [-6.0, 4.25])
def test_the_compensated_order(tilt: Tilt, sphere_d: float):
    steps = compensated_workings(sphere_d, tilt=tilt, index=1.6)
    assert_worked(steps)
    by_symbol = {step.symbol: step.value for step in steps}
    order = compensated(Prescription(sphere_d=sphere_d), tilt=tilt, index=1.6)
    order = order.in_form("plus" if sphere_d < 0.0 else "minus")
    assert (by_symbol["S_o"], by_symbol["C_o"]) == (order.sphere_d, order.cylinder_d)


@pytest.mark.parametrize("tilt", TILTS[:3])
@pytest.mark.parametrize(
    "rx", ["-4.00 -2.00 x 030", "+3.00 -1.50 x 110", "-1.00 -3.00 x 180", "+2.00 -1.00 x 090"]
)
def test_a_toric_lens_tilted_and_compensated(tilt: Tilt, rx: str):
    lens = Prescription.parse(rx)
    for workings, right in (
        (tilted_toric_workings, tilt_effect),
        (compensated_toric_workings, compensated),
    ):
        steps = workings(lens, tilt=tilt, index=1.6)
        assert_worked(steps)
        by_symbol = {step.symbol: step.value for step in steps}
        wanted = right(lens, tilt=tilt, index=1.6)
        assert (by_symbol["S'"], by_symbol["C'"]) == (wanted.sphere_d, wanted.cylinder_d)
        assert by_symbol.get("A'", wanted.axis_deg) == wanted.axis_deg


def test_a_toric_working_takes_one_line_and_a_cylinder():
    for rx, tilt in (("-4.00 DS", Tilt(wrap_deg=5.0)), ("-4.00 -1.00 x 030", TILTS[3])):
        with pytest.raises(
            LabError, match=r"this working takes a lens with a cylinder, turned about one line"
        ):
            tilted_toric_workings(Prescription.parse(rx), tilt=tilt, index=1.6)


def test_place_and_prism():
    drop = centre_drop_working(8.0)
    assert_worked([drop])
    assert drop.value == pytest.approx(3.79, abs=0.005)
    assert "common value, from memory" in str(drop)
    assert "memory" not in str(centre_drop_working(8.0, centre_of_rotation_mm=27.0))
    rule = centre_drop_by_rule_workings(8.0, 24.0)
    assert_worked(rule)
    assert (rule[0].value, rule[1].value) == (4.0, 20.0)
    assert_comes_out(tilt_prism_working(10.0, front_curve_d=8.0, centre_thickness_mm=4.0, index=1.5))
    assert_comes_out(
        wrapped_decentration_working(a_mm=62.0, dbl_mm=16.0, monocular_pd_mm=32.0, wrap_deg=20.0)
    )


@pytest.mark.parametrize("power_d", [-8.0, -4.0, 4.0, 6.0])
@pytest.mark.parametrize("rotation_mm", [None, 25.0])
def test_the_flatter_front_curve_by_tscherning(power_d: float, rotation_mm: float | None):
    lens = ThinLens(power_d=power_d, index=1.5, centre_of_rotation_mm=rotation_mm)
    steps = best_form_workings(lens)
    assert_worked(steps)
    assert steps[-1].value == lens.front_curves_d()[0]


def test_a_lens_without_such_a_curve_is_said():
    with pytest.raises(LabError, match=r"power \+12.00 D has no spherical form without oblique astigmatism"):
        best_form_workings(ThinLens(power_d=12.0, index=1.5))
