"""The panel of edge and rim: its ranges, its numbers, what it says of bevel, groove and hole."""

import numpy as np
import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.bevel import bevel_wander_mm
from lablib.bench.edges import edge_parameters
from lablib.panels.bevel_panel import BevelPanel

PLUS = {"sphere_d": 4.0, "front_curve_d": 7.0, "thickness_at": "thinnest edge"}


def test_ranges():
    sliders = {name: spec for name, spec in BevelPanel.ranges.items() if hasattr(spec, "low")}
    got = {name: (spec.low, spec.high, spec.step, spec.value) for name, spec in sliders.items()}
    rim = edge_parameters()["rim_curve_d"]

    assert got == {
        "place_deg": (0, 360, 5, 180),
        "rim_curve_d": (rim.low, rim.high, 0.5, rim.default),
        "sphere_d": (-8.0, 6.0, 0.5, -4.0),
        "front_curve_d": (1.0, 9.0, 0.5, 4.0),
        "thickness_mm": (0.8, 6.0, 0.1, 1.5),
    }


@pytest.mark.parametrize("start", [{}, {"mounting": "holes", "rim_curve_d": 10.0}, {"mounting": "groove"}])
def test_every_control_to_its_stops_and_back(start):
    troubles = {words for words in move_every_control(BevelPanel(**start)) if words}
    assert troubles
    # A strong plus lens 1.5 mm thick in its centre has no edge.
    assert all("lens runs out" in words for words in troubles)


def test_a_flat_front_in_a_wrapped_rim_wanders_by_the_sagittae():
    shown = BevelPanel().at(rim_curve_d=8.0)
    radius = shown.edge.radius_mm
    wander = bevel_wander_mm(
        lens_curve_d=4.0, rim_curve_d=8.0, away_mm=float(radius.max()), from_mm=float(radius.min())
    )

    assert shown.shown.line.name == "rim"
    assert np.ptp(shown.line_mm) == pytest.approx(wander, abs=1e-9)
    assert rows(BevelPanel(rim_curve_d=8.0))["Bevel wanders"] == f"{wander:.2f} mm"
    assert shown.shown.line.curve_d == pytest.approx(8.0, abs=1e-3)


def test_the_rim_lies_half_as_far_off_as_it_would_bend():
    shown = BevelPanel().at(rim_curve_d=8.0, way="following the front")
    off = shown.rim_mm - shown.line_mm
    bend = shown.shown.departs_mm

    assert bend > 0.5
    assert (off.min(), off.max()) == pytest.approx((-bend / 2.0, bend / 2.0), abs=1e-3)


def test_the_sentence_says_which_bevel_and_why():
    assert said(BevelPanel()) == "Bevel following the front."
    assert said(BevelPanel(rim_curve_d=8.0)).startswith(
        "Bevel following the rim, because following the front"
    )
    assert said(BevelPanel(rim_curve_d=8.0, sphere_d=-2.0)).startswith("No bevel holds: following the front")
    told = said(BevelPanel(rim_curve_d=8.0, sphere_d=-2.0, way="following the rim"))
    assert told == "Bevel following the rim leaves 0.46 mm beside its tip where 0.5 mm are needed."


def test_where_none_holds_the_one_on_the_rim_is_drawn():
    panel = BevelPanel(rim_curve_d=8.0, sphere_d=-2.0)
    shown = panel.at()
    assert shown.choice.chosen is None
    assert shown.shown.line.name == "rim"
    assert said(panel).endswith("gives 0.5 mm. Drawn is the one that follows the rim.")


def test_a_groove_needs_its_walls_at_the_thinnest_place():
    thin = BevelPanel(mounting="groove", **PLUS, thickness_mm=1.0)
    assert rows(thin)["Least groove wall"] == "0.20 mm, needs 0.7"
    assert said(thin).startswith("No groove: in the middle of the edge it leaves walls of 0.20 mm")
    enough = BevelPanel(mounting="groove", **PLUS, thickness_mm=2.0)
    assert rows(enough)["Least groove wall"] == "0.70 mm, needs 0.7"
    assert said(enough).startswith("The groove holds")


def test_a_hole_needs_a_tough_material_and_thickness_where_it_is():
    assert said(BevelPanel(mounting="holes")).startswith("A hole may be drilled here, where the lens is")
    brittle = said(BevelPanel(mounting="holes", material="hard-resin-1.50"))
    assert brittle.startswith("No hole here: the material bears no holes")
    thin = {"mounting": "holes", **PLUS, "sphere_d": 0.5, "front_curve_d": 5.0, "thickness_mm": 0.8}
    assert "mm thick there and a hole needs 1.5 mm" in said(BevelPanel(**thin))


def test_each_mounting_has_its_own_numbers():
    shown = {name: rows(BevelPanel(mounting=name)) for name in ("bevel", "groove", "holes")}
    assert shown["bevel"]["Rim gives"] == "0.5 mm"
    assert shown["groove"]["Groove"] == "0.6 mm wide"
    assert shown["holes"]["Hole to the outline"] == "2.30 mm, needs 1.5"
    assert set(shown["groove"]) & set(shown["holes"]) == {"Edge here", "Thinnest edge", "Thickest edge"}


def test_the_cut_across_is_as_thick_as_the_edge_all_round():
    for place in range(0, 361, 30):
        shown = BevelPanel().at(place_deg=place)
        assert shown.across.edge_mm == pytest.approx(shown.here(shown.edge_mm), abs=1e-3)
        assert shown.across.along_mm[-1] == shown.across.front_mm[-1] == 0.0
