"""One prescription in seven materials."""

import numpy as np
import pytest
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.care import care
from lablib.optics.comparison import InMaterial, compared
from lablib.optics.frame import Frame
from lablib.optics.lens import lens_for
from lablib.optics.material import materials
from lablib.optics.material_workings import weight_working
from lablib.optics.prescription import Prescription
from lablib.optics.solid import FinishedLens

FRAME = Frame(a_mm=52.0, b_mm=36.0, dbl_mm=18.0)
MINUS = Prescription(sphere_d=-6.0, cylinder_d=-1.0, axis_deg=180)


def seven(rx: Prescription, front_curve_d: float, **more: object) -> dict[str, InMaterial]:
    found = compared(
        rx,
        frame=FRAME,
        eye="right",
        monocular_pd_mm=32.0,
        front_curve_d=front_curve_d,
        look_in_mm=0.0,
        look_up_mm=-10.0,
        **more,
    )
    return {one.material.name: one for one in found}


def test_all_seven_in_the_order_of_the_table():
    assert tuple(seven(MINUS, 4.0)) == tuple(materials())


def test_a_minus_lens_has_its_usual_centre_and_the_solid_s_own_numbers():
    for name, one in seven(MINUS, 4.0).items():
        assert one.centre_mm == care(name).least_centre_mm
        lens = lens_for(MINUS, index=one.material.index, front_curve_d=4.0, centre_thickness_mm=one.centre_mm)
        alone = FinishedLens(lens=lens, outline=FRAME.outline("right"), centre_x_mm=3.0, centre_y_mm=0.0)
        assert np.array_equal(one.finished.edge_mm, alone.edge_mm)
        assert one.greatest_edge_mm == alone.edge_mm.max()
        assert one.least_edge_mm == alone.edge_mm.min()
        assert one.weight_g == alone.volume_mm3 * one.material.density / 1000.0
        assert one.finished.edge_at_mm(one.greatest_edge_deg) == pytest.approx(one.greatest_edge_mm)
        # 6 and 1 in the vertical meridian, 10 mm below the centre.
        assert one.fringe.prism_prism_d == pytest.approx(7.0)
        assert one.fringe.amount_prism_d == pytest.approx(7.0 / one.material.abbe)


def test_a_plus_lens_is_thinned_to_its_outline():
    for name, one in seven(Prescription(sphere_d=4.0), 8.0).items():
        assert one.least_edge_mm == pytest.approx(care(name).least_edge_mm, abs=1e-8)
        assert one.centre_mm > care(name).least_centre_mm


def test_with_one_thickness_for_all_the_index_alone_decides():
    found = list(seven(MINUS, 4.0, least_mm=2.0).values())
    by_index = sorted(found, key=lambda one: one.material.index)
    edges = [one.greatest_edge_mm for one in by_index]
    assert edges == sorted(edges, reverse=True)
    assert {one.centre_mm for one in found} == {2.0}
    assert [one.transmittance for one in by_index] == sorted(
        (one.transmittance for one in found), reverse=True
    )


def test_the_heaviest_is_glass_and_the_most_colourful_is_not_the_highest_index():
    found = seven(MINUS, 4.0)
    assert max(found, key=lambda name: found[name].weight_g) == "crown-glass-1.523"
    assert max(found, key=lambda name: found[name].fringe.amount_prism_d) == "polycarbonate-1.59"
    assert found["polycarbonate-1.59"].index_class == "mid index"
    assert found["crown-glass-1.523"].curve_variation_factor == 1.0


def test_some_of_them_and_what_cannot_be():
    assert list(seven(MINUS, 4.0, names=["thiourethane-1.67"])) == ["thiourethane-1.67"]
    with pytest.raises(LabError, match="material 'wood' is not in the table"):
        seven(MINUS, 4.0, names=["wood"])
    with pytest.raises(LabError, match="least thickness 0 is out of range"):
        seven(MINUS, 4.0, least_mm=0.0)


def test_the_weight_of_a_volume_is_worked():
    assert_worked([weight_working(5300.0, 1.31, mark="_A", whose="lens A"), weight_working(4000.0, 1.2)])
    assert weight_working(5300.0, 1.31).result == "6.94 g"
