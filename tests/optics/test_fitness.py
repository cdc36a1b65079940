"""What goes together in an order: every pairing found and none too many, tickets with traps, errors."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.datafile import GRADES
from lablib.errors import LabError
from lablib.optics.care import care_table
from lablib.optics.fitness import DECISIONS, fitness, pairings, refused_pairings
from lablib.optics.material_order import FILTERS, USES, WEARERS, MaterialOrder, treatment_words
from lablib.optics.prescription import Prescription

RESIN = MaterialOrder(material="hard-resin-1.50")
GLASS = MaterialOrder(material="crown-glass-1.523")
POLY = MaterialOrder(material="polycarbonate-1.59")
SAFETY = replace(POLY, use="hazards", purpose="safety", safety_level="impact-rated", thinnest_mm=2.0)
TORIC = Prescription(sphere_d=-1.0, cylinder_d=-1.75, axis_deg=60)
# One order for each pairing, in which it alone is found.
ALONE = {
    "safety-in-a-dress-frame": replace(SAFETY, purpose="dress"),
    "safety-lens-too-thin": replace(SAFETY, thinnest_mm=1.9),
    "safety-without-marking": replace(SAFETY, marked=False),
    "safety-thickness-not-said": replace(SAFETY, thinnest_mm=None),
    "heavy-tint-at-night": replace(RESIN, use="driving at night", tint_percent=50.0),
    "too-dark-to-drive": replace(RESIN, use="driving by day", tint_percent=93.0),
    "acetone-on-polycarbonate": replace(POLY, wiped_with="acetone"),
    "wheel-of-the-other-kind": replace(GLASS, wheel="plastics"),
    "brittle-for-a-child": replace(RESIN, wearer="child"),
    "holes-in-what-bears-none": replace(RESIN, frame="drilled"),
    "polarised-stock-turned": replace(
        RESIN, filter="polarised", supply="stock", prescription=TORIC, packet_axis_deg=90.0
    ),
    "bath-tint-of-what-takes-none": replace(POLY, tint_percent=20.0),
    "soft-without-hard-coat": replace(POLY, hard_coat=False),
    "anti-reflection-on-bare-resin": replace(RESIN, hard_coat=False, anti_reflection=True),
    "photochromic-behind-a-windscreen": replace(RESIN, filter="photochromic", use="driving by day"),
    "polarised-for-displays": replace(RESIN, filter="polarised", use="displays"),
    "operations-out-of-order": replace(RESIN, steps=("hard-coat", "tint")),
}
# These always come with the operations being out of order.
WITH_ORDER = {
    "hardened-glass-cut": replace(GLASS, steps=("harden", "edge")),
    "tint-after-anti-reflection": replace(RESIN, steps=("anti-reflection", "tint")),
}


def names(order: MaterialOrder) -> list[str]:
    return [pairing.name for pairing in fitness(order).found]


@pytest.mark.parametrize("order", [RESIN, GLASS, POLY, SAFETY], ids=lambda order: order.material)
def test_a_sound_order_is_made(order: MaterialOrder):
    assert fitness(order).decision == "make"
    assert fitness(order).sentences == ("Make it: nothing in it stands against anything else.",)
    assert refused_pairings(order) == ()


@pytest.mark.parametrize("name", ALONE)
def test_a_pairing_is_found_by_itself(name: str):
    found = fitness(ALONE[name])
    assert [pairing.name for pairing in found.found] == [name]
    assert found.decision == pairings()[name].decision
    assert found.sentences[0].startswith(f"{found.decision.capitalize()}, {pairings()[name].words}. ")


@pytest.mark.parametrize("name", WITH_ORDER)
def test_a_pairing_of_operations_is_found_before_their_order(name: str):
    assert names(WITH_ORDER[name]) == [name, "operations-out-of-order"]
    assert [pairing.name for pairing in refused_pairings(WITH_ORDER[name])] == [name]


def test_every_pairing_is_tried_and_well_told():
    assert set(ALONE) | set(WITH_ORDER) == set(pairings())
    for pairing in pairings().values():
        assert pairing.decision in DECISIONS[1:]
        assert pairing.grade in GRADES
        assert pairing.source
        assert all(text.endswith(".") for text in (pairing.reason, pairing.instead)), pairing.name


def test_conditions_are_words_that_orders_can_have():
    can_be = set()
    for order in (*ALONE.values(), *WITH_ORDER.values(), GLASS):
        can_be |= order.traits
    asked = set().union(*(pairing.when for pairing in pairings().values()))
    assert asked <= can_be, asked - can_be


# --- Tickets of common practice ------------------------------------------------------------------------


def test_a_safety_order_in_a_dress_frame_is_refused_however_thick():
    order = MaterialOrder(
        material="hard-resin-1.50", frame="metal", use="hazards", thinnest_mm=2.2, marked=False
    )
    assert fitness(order).decision == "refuse"
    assert names(order) == ["safety-in-a-dress-frame", "safety-lens-too-thin", "safety-without-marking"]
    assert "safety-in-a-dress-frame" in names(replace(order, thinnest_mm=6.0, marked=True))


def test_a_drilled_frame_gets_a_material_that_bears_holes():
    bearing = [
        name
        for name in care_table()
        if "holes-in-what-bears-none" not in names(MaterialOrder(material=name, frame="drilled"))
    ]
    assert bearing == ["urethane-1.53", "polycarbonate-1.59", "thiourethane-1.60", "thiourethane-1.67"]


def test_a_polarised_stock_toric_is_not_turned():
    turned = ALONE["polarised-stock-turned"]
    assert turned.filter_turned_deg == -30.0
    assert fitness(replace(turned, packet_axis_deg=60.0)).decision == "make"
    assert fitness(replace(turned, supply="surfaced", packet_axis_deg=None)).decision == "make"


@pytest.mark.parametrize(("tint", "decision"), [(25.0, "make"), (25.1, "refuse"), (50.0, "refuse")])
def test_at_night_three_quarters_of_the_light_must_come_through(tint: float, decision: str):
    """ISO 8980-3, from memory: 75 %."""
    assert fitness(replace(RESIN, use="driving at night", tint_percent=tint)).decision == decision


def test_a_polarised_lens_is_not_for_driving_at_night():
    assert names(replace(RESIN, filter="polarised", use="driving at night")) == ["heavy-tint-at-night"]


@pytest.mark.parametrize("wearer", ["child", "one eye"])
def test_children_and_one_eyed_wearers_get_a_tough_material(wearer: str):
    tough = [
        name
        for name in care_table()
        if fitness(MaterialOrder(material=name, wearer=wearer)).decision == "make"
    ]
    assert tough == ["urethane-1.53", "polycarbonate-1.59"]


def test_the_most_plus_meridian_counts_for_a_safety_lens():
    rx = Prescription(sphere_d=4.0, cylinder_d=-2.0, axis_deg=90)
    basic = replace(SAFETY, safety_level="basic", prescription=rx, thinnest_mm=2.5)
    assert fitness(basic).decision == "make"
    assert basic.most_plus_d == 4.0
    assert fitness(replace(basic, prescription=Prescription(sphere_d=2.0))).decision == "refuse"


@given(
    st.sampled_from(sorted(care_table())),
    st.sampled_from(USES),
    st.sampled_from(WEARERS),
    st.sampled_from(FILTERS),
    st.floats(0.0, 100.0),
    st.booleans(),
)
def test_any_order_gets_a_decision(material: str, use: str, wearer: str, light: str, tint: float, bare: bool):
    order = MaterialOrder(
        material=material, use=use, wearer=wearer, filter=light, tint_percent=tint, hard_coat=not bare
    )
    found = fitness(order)
    assert found.decision in DECISIONS
    gravity = [DECISIONS.index(pairing.decision) for pairing in found.found]
    assert gravity == sorted(gravity, reverse=True)
    assert all(pairing.when <= order.traits for pairing in found.found)


def test_treatments_are_told():
    assert "no lens tougher" in treatment_words()["hard-coat"]


@pytest.mark.parametrize(
    ("wrong", "words"),
    [
        ({"material": "wood"}, "what material 'wood' bears is not in the table"),
        ({"frame": "wood"}, "frame kind 'wood' is not known"),
        ({"purpose": "party"}, "purpose of the frame 'party' is not known"),
        ({"use": "sleep"}, "use 'sleep' is not known"),
        ({"wearer": "cat"}, "wearer 'cat' is not known"),
        ({"filter": "red"}, "filter 'red' is not known"),
        ({"supply": "shop"}, "supply 'shop' is not known"),
        ({"wheel": "stone"}, "wheel 'stone' is not known"),
        ({"wiped_with": "petrol"}, "solvent 'petrol' is not known"),
        ({"tint_percent": 101.0}, "tint 101 is out of range: give from 0 to 100 % of light taken off"),
        ({"steps": ("edge", "edge")}, "operation edge comes twice"),
        ({"safety_level": "strong"}, "level of a safety lens 'strong' is not known"),
        ({"thinnest_mm": 0.0}, "thinnest place 0 is out of range"),
        ({"packet_axis_deg": 0.0}, "axis 0 is written 180"),
        ({"packet_axis_deg": 90.0}, "packet axis 90 belongs to a cylinder and the order has none"),
    ],
)
def test_an_order_that_cannot_be_is_refused(wrong: dict, words: str):
    with pytest.raises(LabError, match=words):
        replace(RESIN, **wrong)
