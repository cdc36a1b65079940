"""The panel of the grip: which joint governs, and what its condition does to it."""

import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.parameter import parameters
from lablib.panels.grip_panel import NO, YES, GripPanel

# The ten stacks of the lesson, and the joint that gives way first in each.
STACKS = {
    "uncoated": ({"coat": "uncoated"}, "pad core"),
    "ordinary": ({"coat": "coated"}, "pad to coat"),
    "slick": ({}, "pad to coat"),
    "layer": ({"grip_layer": "present"}, "pad to coat"),
    "film": ({"film": YES}, "pad core"),
    "creased": ({"film": YES, "crease_percent": 60.0}, "film to coat"),
    "dirty block": ({"film": YES, "block_face": "dirty"}, "block to pad"),
    "old pad": ({"film": YES, "pad_age_months": 24.0}, "pad to film"),
    "cold": ({"film": YES, "temperature_c": 10.0}, "film to coat"),
    "fingerprint": ({"film": YES, "skin": "fingerprint"}, "film to coat"),
}


@pytest.mark.parametrize(
    "start",
    [{}, {"film": YES, "crease_percent": 30.0}, {"coat": "uncoated", "back_tape": YES}],
    ids=["start", "film", "bare"],
)
def test_every_control_to_its_stops_and_back(start):
    assert set(move_every_control(GripPanel(**start))) == {None}


@pytest.mark.parametrize(("stack", "weakest"), STACKS.values(), ids=STACKS.keys())
def test_the_weakest_joint_of_each_stack_of_the_lesson(stack, weakest):
    panel = GripPanel(**stack)

    assert rows(panel)["Weakest joint"] == weakest
    assert f"front stack is {weakest}," in said(panel)


# Hard job, slick coat: T_front 0.62, T_back 0.33; with a film 1.27, the core.
def test_it_starts_with_the_reference_job():
    shown = rows(GripPanel())

    assert shown["Front holds"] == "0.62 N m"
    assert shown["Next weakest"] == "pad core 1.27 N m"
    assert shown["Back tip adds"] == "0.33 N m"
    assert shown["Holds together"] == "0.95 N m"
    assert shown["Holds sideways"] == "133 N"
    assert shown["Clamp force"] == shown["Lens bears"] == "290 N"
    assert rows(GripPanel(film=YES))["Front holds"] == "1.27 N m"


def test_the_two_parts_of_a_joint_make_the_whole():
    grip = GripPanel(film=YES, crease_percent=20.0, skin="oily").at()
    for shown, joint in zip((grip.block, grip.core, grip.film, grip.lens), grip.held.joints, strict=True):
        assert shown.name == joint.name
        assert shown.torque_nmm == pytest.approx(joint.torque_nmm)
        assert shown.sticks_nmm == pytest.approx(
            joint.shear_mpa * joint.contact.w_mm3 * joint.bearing.turning
        )
    assert grip.core.rubs_nmm == pytest.approx(0.0)
    assert grip.tip.rubs_nmm == grip.held.back_nmm


def test_each_condition_is_put_in_words():
    grip = GripPanel(
        film=YES, crease_percent=20.0, skin="oily", pad_age_months=9.0, temperature_c=30.0, block_face="worn"
    ).at()

    assert grip.block.state == "worn block, pad 9 months old"
    assert grip.core.state == "30 degrees C"
    assert grip.film.state == "pad 9 months old, 20 % air"
    assert grip.lens.state == "oily lens, slick coat, 20 % air"
    assert grip.tip.state == "290 N, on oily lens, slick coat"


def test_without_a_film_a_crease_is_nowhere():
    plain, creased = (GripPanel(crease_percent=percent).at() for percent in (0.0, 60.0))

    assert plain.film is creased.film is None
    assert plain.held.torque_nmm == creased.held.torque_nmm
    assert creased.lens.state == "fresh pad, clean lens, slick coat"


@pytest.mark.parametrize(
    ("coat", "layer", "words"),
    [
        ("uncoated", "none", "clean lens, no coat"),
        ("coated", "present", "clean lens, ordinary coat"),
        ("slick", "present", "clean lens, grip layer"),
        ("slick", "stripped", "clean lens, layer wiped off"),
    ],
)
def test_the_surface_is_named(coat, layer, words):
    grip = GripPanel(coat=coat, grip_layer=layer).at()

    assert grip.lens.state == f"fresh pad, {words}"
    assert grip.tip.state == f"290 N, on {words}"
    assert GripPanel(coat=coat, grip_layer=layer, back_tape=YES).at().tip.state == "290 N, on tape"


def test_a_worn_key_turns_the_axis_and_weakens_nothing():
    firm, worn = GripPanel(), GripPanel(key_play_mm=0.2)

    assert (rows(firm)["Axis off by key"], rows(worn)["Axis off by key"]) == ("0.0 degrees", "1.4 degrees")
    assert rows(worn)["Holds together"] == rows(firm)["Holds together"]


def test_a_cold_or_an_old_pad_is_not_praised_for_its_strength():
    cold, old, usual = (
        said(GripPanel(**start)) for start in ({"temperature_c": 10.0}, {"pad_age_months": 24.0}, {})
    )

    assert cold.endswith("bring pad, block and lens to 15 C or more first.")
    assert old.endswith("past its shelf life of 12: take a fresh one.")
    assert usual.endswith("With that joint mended, pad core would be the weakest, at 1.27.")


def test_the_clamp_is_no_control_and_the_note_says_why():
    assert not any("clamp" in name for name in GripPanel.ranges)
    assert "it is no remedy" in GripPanel.note
    assert rows(GripPanel(thickness_mm=1.0))["Clamp force"] == "202 N"


def test_controls_have_the_ranges_of_the_bench():
    for name in ("key_play_mm", "pad_age_months", "temperature_c"):
        spec, row = GripPanel.ranges[name], parameters()[name]
        assert (spec.low, spec.high, spec.value, spec.unit) == (row.low, row.high, row.default, row.unit)
    assert GripPanel.ranges["crease_percent"].high == 100.0 * parameters()["film_wrinkle"].high
    assert GripPanel.ranges["film"].options == (NO, YES)


def test_the_sentence_is_short_enough():
    for start in ({"film": YES, "crease_percent": 60.0}, {"temperature_c": 10.0}, {"pad_age_months": 24.0}):
        assert len(said(GripPanel(**start)).split()) <= 52
