"""Colour: the published aberrations and Abbe number, sides of the fringe, what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.chromatic import (
    Fringe,
    abbe_number,
    fringe_at,
    fringe_noticed_prism_d,
    fringe_noticed_source,
    fringe_prism_d,
)
from lablib.optics.material_workings import abbe_working, fringe_working, fringe_workings
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at

TORIC = Prescription(sphere_d=-4.0, cylinder_d=-2.0, axis_deg=30)


@pytest.mark.parametrize(("abbe", "fringe"), [(30.0, 0.1667), (58.0, 0.0862)])
def test_five_dioptres_ten_millimetres_off(abbe: float, fringe: float):
    """A. Bhootra, Ophthalmic Lenses, p. 117."""
    found = fringe_at(Prescription(sphere_d=5.0), eye="right", in_mm=0.0, up_mm=-10.0, abbe=abbe)
    assert found.amount_prism_d == pytest.approx(fringe, abs=0.00005)


def test_abbe_number_of_crown_glass():
    """Dictionary of Optometry: n_F 1.5293, n_D 1.5230, n_C 1.5204."""
    indices = {"n_f": 1.5293, "n_d": 1.5230, "n_c": 1.5204}
    assert abbe_number(**indices) == pytest.approx(58.76, abs=0.005)
    assert abbe_working(**indices).result == "58.76"
    assert_worked([abbe_working(**indices)])


@given(st.floats(-30.0, 30.0), st.floats(-30.0, 30.0))
def test_the_fringe_of_a_toric_is_its_prism_over_the_abbe_number(in_mm: float, up_mm: float):
    found = fringe_at(TORIC, eye="left", in_mm=in_mm, up_mm=up_mm, abbe=32.0)
    x, y = prism_at(TORIC, eye="left", in_mm=in_mm, up_mm=up_mm)
    assert found.amount_prism_d * 32.0 == pytest.approx((x * x + y * y) ** 0.5, abs=1e-12)
    assert (
        "lower" in found.words
        or "upper" in found.words
        or "side" in found.words
        or "No colour" in found.words
    )


@pytest.mark.parametrize(
    ("sphere", "point", "side"),
    [
        # Through a minus lens below its centre the base is down: the image moves up, blue farthest.
        (-6.0, (0.0, -12.0), "upper"),
        (6.0, (0.0, -12.0), "lower"),
        (-6.0, (8.0, 0.0), "temporal"),
        (6.0, (8.0, 0.0), "nasal"),
    ],
)
def test_blue_lies_away_from_the_base(sphere: float, point: tuple[float, float], side: str):
    found = fringe_at(Prescription(sphere_d=sphere), eye="right", in_mm=point[0], up_mm=point[1], abbe=30.0)
    assert f"blue rim on the {side} side" in found.words


def test_no_fringe_at_the_centre_and_a_usual_value_for_seeing_it():
    assert fringe_at(TORIC, eye="right", in_mm=0.0, up_mm=0.0, abbe=30.0).words.startswith("No colour here")
    assert "from memory" in fringe_noticed_source()
    at_the_edge = Fringe(in_prism_d=30.0 * fringe_noticed_prism_d(), up_prism_d=0.0, abbe=30.0)
    assert not at_the_edge.is_noticed
    assert Fringe(in_prism_d=4.0, up_prism_d=0.0, abbe=30.0).is_noticed
    assert "hardly noticed" in at_the_edge.words


def test_a_prism_dioptre_is_a_centimetre_a_metre():
    fringe = Fringe(in_prism_d=0.0, up_prism_d=-6.0, abbe=30.0)
    assert fringe.width_mm(1000.0) == pytest.approx(2.0)
    assert fringe.width_mm(6000.0) == pytest.approx(12.0)


def test_the_fringe_is_worked():
    assert_worked(fringe_workings(TORIC, eye="right", in_mm=3.0, up_mm=-9.0, abbe=42.0))
    sphere = fringe_workings(Prescription(sphere_d=5.0), eye="right", in_mm=0.0, up_mm=-12.0, abbe=30.0)
    assert_worked(sphere)
    assert sphere[-1].result == "0.200 prism dioptres"
    assert_worked([fringe_working(6.0, 30.0)])


def test_what_cannot_be_is_refused():
    with pytest.raises(LabError, match="Abbe number 12 is out of range: give from 20 to 70"):
        fringe_prism_d(1.0, 12.0)
    with pytest.raises(LabError, match="Abbe number 80 is out of range"):
        Fringe(in_prism_d=1.0, up_prism_d=0.0, abbe=80.0)
    with pytest.raises(LabError, match="prism at the point -1 is out of range"):
        fringe_prism_d(-1.0, 30.0)
    with pytest.raises(LabError, match="distance of the fringe 0 is out of range"):
        Fringe(in_prism_d=1.0, up_prism_d=0.0, abbe=30.0).width_mm(0.0)
    with pytest.raises(LabError, match=r"indices F 1.52, d 1.53, C 1.51 are not in order: blue is bent most"):
        abbe_number(n_f=1.52, n_d=1.53, n_c=1.51)
    with pytest.raises(LabError, match="index n_F 3 is out of range"):
        abbe_number(n_f=3.0, n_d=1.53, n_c=1.51)
