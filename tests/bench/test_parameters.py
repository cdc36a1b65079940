"""The table of parameters: complete, graded, and checked wherever a value goes in."""

from dataclasses import fields, replace

import pytest

from lablib.bench.machine import Bench, Coat, LensMaterial, Skin, lens_material, material_names
from lablib.bench.parameter import Parameter, parameters, require_parameter, table
from lablib.bench.setup import Setup, feeds, tip_fits, waters, wheel_kinds
from lablib.datafile import GRADES, read_table
from lablib.errors import LabError


def test_every_parameter_has_words_a_source_and_a_default_in_its_range():
    for name, one in parameters().items():
        assert one.low <= one.default <= one.high, name
        assert one.low < one.high, name
        assert one.words, name
        assert one.source, name
        assert one.grade in GRADES, name


def test_blocks_and_fits_are_graded_too():
    assert table()["block_source"]["grade"] == "teaching estimate"
    assert table()["fit_source"]["grade"] == "derived"


def test_every_number_of_the_bench_is_the_tables_default():
    bench, known = Bench(), parameters()
    for one in fields(Bench):
        if one.type is float:
            assert getattr(bench, one.name) == known[one.name].default
    for kind, rows in (("coat", bench.coats), ("skin", bench.skins)):
        for name, row in rows.items():
            for one in fields(row):
                if one.name != "name":
                    assert getattr(row, one.name) == known[f"{kind}.{name}.{one.name}"].default
    assert dict(bench.wheels) == {"sharp": 1.0, "used": 1.4, "loaded": 1.8, "glazed": 2.5}


def test_speeds():
    # Slip model of the workbook: a 100 mm wheel at 3,000 rpm runs at 15.7 m/s.
    assert Bench().surface_speed_m_per_s == pytest.approx(15.708, abs=5e-4)
    assert Bench().lens_speed_rad_per_s == pytest.approx(0.83776, abs=5e-6)


def test_the_materials_are_those_of_the_lenses():
    assert set(material_names()) == set(read_table("lablib.optics", "materials.toml")["material"])


def test_how_materials_are_made_to_be_cut():
    # Common practice: polycarbonate roughed dry or nearly so, glass on wheels of its own.
    assert [name for name in material_names() if lens_material(name).roughed == "dry"] == [
        "polycarbonate-1.59"
    ]
    assert [name for name in material_names() if lens_material(name).wheel_kind == "glass"] == [
        "crown-glass-1.523"
    ]


def test_a_lens_is_cut_as_usual_where_nothing_is_said():
    assert (Setup().feed, Setup().water, Setup().wheel_for) == ("depth", "manual", "material")
    assert (next(iter(feeds())), next(iter(waters())), next(iter(wheel_kinds()))) == (
        Setup().feed,
        Setup().water,
        Setup().wheel_for,
    )


@pytest.mark.parametrize(
    ("name", "energy", "kappa", "depth"),
    [
        ("hard-resin-1.50", 0.35, 0.5, 2.0),
        ("urethane-1.53", 0.35, 0.5, 2.0),
        ("polycarbonate-1.59", 0.5, 0.5, 2.0),
        ("thiourethane-1.60", 0.4, 0.5, 2.0),
        ("thiourethane-1.67", 0.4, 0.5, 2.0),
        ("episulfide-1.74", 0.42, 0.5, 2.0),
        ("crown-glass-1.523", 3.0, 0.3, 0.25),
    ],
)
def test_how_materials_cut(name: str, energy: float, kappa: float, depth: float):
    # Slip model of the workbook, table of parameters.
    expected = LensMaterial(name=name, specific_energy_j_per_mm3=energy, kappa=kappa, depth_per_turn_mm=depth)
    assert lens_material(name) == expected


ROW = {"words": "thing", "low": 1.0, "high": 2.0, "unit": "mm", "source": "a test"}


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: Parameter(name="thing", default=3.0, grade="derived", **ROW),
            "thing 3 is out of range: give from 1 to 2 mm",
        ),
        (
            lambda: Parameter(name="thing", default=1.5, grade="sure", **ROW),
            "parameter thing has the grade 'sure': give one of published, derived, teaching estimate",
        ),
        (
            lambda: require_parameter("wheel_diameter_mm", 200.0),
            "wheel diameter 200 is out of range: give from 60 to 150 mm",
        ),
        (
            lambda: Bench(dynamic_factor=1.0),
            "peak over mean cutting force 1 is out of range: give from 1.1 to 1.6",
        ),
        (
            lambda: Bench(lens_speed_rpm="fast"),
            "lens speed 'fast' is not a number: give a number in rpm",
        ),
        (
            lambda: Bench(wheels={"blunt": 2.0}),
            "wheel 'blunt' is not known: give one of sharp, used, loaded, glazed",
        ),
        (
            lambda: Bench(wheels={"sharp": 2.0}),
            "sharp wheel: factor on the cutting force 2 is out of range: give from 1 to 1.2",
        ),
        (
            lambda: Coat(name="wet", pad_shear_factor=0.2, pad_friction=0.2, back_friction=0.2),
            "coat 'wet' is not known: give one of uncoated, coated, slick",
        ),
        (
            lambda: replace(Bench().coats["slick"], pad_friction=0.5),
            "pad to slick coat: friction 0.5 is out of range: give from 0.12 to 0.3",
        ),
        (
            lambda: Skin(name="wet", shear_factor=1.0, friction_factor=1.0),
            "skin 'wet' is not known: give one of clean, fingerprint, oily",
        ),
        (
            lambda: Skin(name="oily", shear_factor=0.9, friction_factor=0.5),
            "oily lens: share of shear strength 0.9 is out of range: give from 0.2 to 0.5",
        ),
        (
            lambda: lens_material("oak"),
            "lens material 'oak' is not known: give one of crown-glass-1.523, hard-resin-1.50, "
            "urethane-1.53, polycarbonate-1.59, thiourethane-1.60, thiourethane-1.67, episulfide-1.74",
        ),
        (
            lambda: replace(lens_material("hard-resin-1.50"), name="oak"),
            "lens material 'oak' is not known: give one of crown-glass-1.523, hard-resin-1.50, "
            "urethane-1.53, polycarbonate-1.59, thiourethane-1.60, thiourethane-1.67, episulfide-1.74",
        ),
        (
            lambda: replace(lens_material("hard-resin-1.50"), depth_per_turn_mm=0.25),
            "depth per turn 0.25 is out of range: give from 0.75 to 3 mm",
        ),
        (
            lambda: replace(lens_material("crown-glass-1.523"), depth_per_turn_mm=2.0),
            "depth per turn 2 is out of range: give from 0.1 to 0.75 mm",
        ),
        (lambda: Setup(coat="wet"), "coat 'wet' is not known: give one of uncoated, coated, slick"),
        (
            lambda: Setup(wheel_sense="up"),
            "wheel_sense 'up' is not known: give one of against, with",
        ),
        (
            lambda: Setup(tip_fit="loose"),
            "tip_fit 'loose' is not known: give one of usual, matched, flat-tip, steep-tip, toric, tilted",
        ),
        (
            lambda: Setup(tip_stiffness="hard"),
            "tip_stiffness 'hard' is not known: give one of soft, stiff",
        ),
        (lambda: Setup(skin="wet"), "skin 'wet' is not known: give one of clean, fingerprint, oily"),
        (lambda: Setup(block="oval"), "block 'oval' is not known: give one of round, half-eye"),
        (
            lambda: Setup(wheel="blunt"),
            "wheel 'blunt' is not known: give one of sharp, used, loaded, glazed",
        ),
        (
            lambda: Setup(feed="slow"),
            "feed 'slow' is not known: give one of depth, head force, torque cap",
        ),
        (lambda: Setup(water="damp"), "water 'damp' is not known: give one of manual, wet, dry"),
        (
            lambda: Setup(wheel_for="metal"),
            "wheel_for 'metal' is not known: give one of material, plastics, glass",
        ),
        (
            lambda: Setup(head_force_n=100.0),
            "force of the head on the wheel 100 is out of range: give from 2 to 80 N",
        ),
        (
            lambda: Setup(torque_cap_nmm=10.0),
            "torque the machine keeps its cut under 10 is out of range: give from 50 to 3000 N mm",
        ),
        (
            lambda: Setup(lens_speed_rpm=20.0),
            "lens speed 20 is out of range: give from 5 to 15 rpm",
        ),
        (lambda: Setup(film="yes"), "film 'yes' is not yes or no: give true or false"),
        (
            lambda: Setup(pad_age_months=30.0),
            "age of the pad 30 is out of range: give from 0 to 24 months",
        ),
        (
            lambda: Setup(temperature_c=50.0),
            "temperature of the room 50 is out of range: give from 10 to 35 degrees C",
        ),
        (
            lambda: Setup(clamp_force_n=600.0),
            "clamp force 600 is out of range: give from 100 to 500 N",
        ),
        (
            lambda: Setup(crib_allowance_mm=0.0),
            "crib allowance 0 is out of range: give from 0.5 to 30 mm",
        ),
    ],
)
def test_words_and_numbers_the_bench_does_not_know(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words


def test_tip_fits_have_words():
    assert set(tip_fits()) == {"usual", "matched", "flat-tip", "steep-tip", "toric", "tilted"}
    assert all(tip_fits().values())
