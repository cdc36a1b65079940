"""The panel of materials: one prescription in all of them, with what the lesson says about it."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.optics.material import materials
from lablib.panels.materials_panel import MaterialsPanel


def test_controls_have_the_ranges_the_lesson_speaks_of():
    sliders = (spec for spec in MaterialsPanel.controls if hasattr(spec, "low"))
    assert {spec.name: (spec.low, spec.high, spec.step, spec.value) for spec in sliders} == {
        "sphere_d": (-10, 8, 0.25, -6),
        "cylinder_d": (-4, 0, 0.25, 0),
        "axis_deg": (1, 180, 1, 180),
        "front_curve_d": (0, 10, 0.25, 4),
        "a_mm": (40, 60, 1, 52),
        "b_mm": (26, 46, 1, 36),
        "monocular_pd_mm": (26, 38, 1, 32),
        "in_mm": (-12, 12, 1, 0),
        "up_mm": (-12, 12, 1, -8),
    }
    assert MaterialsPanel.ranges["material"].options == tuple(materials())


@pytest.mark.parametrize("start", [{}, {"cylinder_d": -2.0, "axis_deg": 30, "material": "episulfide-1.74"}])
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(MaterialsPanel(**start))) == {None}


def test_the_table_tells_of_the_material_chosen():
    shown = rows(MaterialsPanel(material="polycarbonate-1.59"))
    assert shown["Abbe number"] == "31.0"
    assert shown["Index"] == "1.586 mid index"
    assert shown["Prism looked through"] == "4.80 prism D"
    assert shown["Colour fringe"] == "0.155 prism D", "4.80 / 31"
    assert shown["Centre thickness"] == "1.30 mm"
    assert shown["Curve variation factor"] == "0.892", "0.523 / 0.586"
    assert shown["Light thrown back"] == "9.8 %"
    assert shown["Front by Vogel&#x27;s rule"] == "3.00 D", "half of -6.00, plus 6"


def test_the_sentence_names_the_ends():
    told = said(MaterialsPanel())
    assert "episulfide 1.74 (5.03 mm) is thinnest and hard resin 1.50 (7.92 mm) thickest" in told
    assert "Urethane 1.53 (5.3 g) is lightest, crown glass 1.523 (15.1 g) heaviest" in told
    assert "least in crown glass 1.523 (0.08) and most in polycarbonate 1.59 (0.15)" in told
    assert told.endswith("above what is usually noticed in 5 of them.")


def test_at_the_optical_centre_there_is_no_colour():
    assert said(MaterialsPanel(up_mm=0.0)).endswith("Without prism there is no colour in any.")


@pytest.mark.parametrize(("power", "words"), [(-0.5, "none of them"), (-10.0, "all of them")])
def test_how_many_show_colour_is_said_in_words(power, words):
    assert said(MaterialsPanel(sphere_d=power)).endswith(f"noticed in {words}.")


@pytest.mark.parametrize(("choice", "least"), [("1.0", 1.0), ("1.5", 1.5), ("2.0", 2.0)])
def test_one_thinnest_place_for_all(choice, least):
    lenses = MaterialsPanel().at(thinnest=choice).lenses
    assert {round(min(lens.centre_mm, lens.least_edge_mm), 9) for lens in lenses} == {least}


def test_a_point_outside_the_lens_is_refused():
    panel = MaterialsPanel(a_mm=40.0, b_mm=26.0, in_mm=-12.0, up_mm=12.0)
    assert str(panel.trouble) == (
        "the point looked through, 12 mm above, 12 mm out from the centre, lies outside the lens: "
        "bring it nearer to the optical centre, or take a larger frame"
    )


def test_the_panel_says_that_a_thick_lens_is_no_safety_eyewear():
    assert "not safety eyewear, however thick" in MaterialsPanel.note
