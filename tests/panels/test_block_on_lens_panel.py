"""The panel of block against lens: room, blocking point, block curve and back tip."""

import numpy as np
import pytest
from on_screen import rows, said
from stops import move_every_control

from lablib.bench.curve_match import rim_gap_mm
from lablib.bench.setup import Setup
from lablib.optics.material import material
from lablib.panels.block_on_lens_panel import RIGID, BlockOnLensPanel

PANEL = BlockOnLensPanel()


def test_every_control_to_its_stops_and_back():
    trouble = {words for words in move_every_control(BlockOnLensPanel()) if words}

    assert len(trouble) == 1, "a strong plus lens runs out at its edge"
    assert "lens runs out" in trouble.pop()


def test_a_large_decentred_lens_is_refused_in_words():
    panel = BlockOnLensPanel(a_mm=62.0, b_mm=50.0, in_mm=8.0, outline="rectangle")
    panel.handles["in_mm"].slider.value = -4.0
    assert panel.trouble is None
    panel.handles["up_mm"].slider.value = 6.0
    panel.handles["in_mm"].slider.value = 8.0

    assert "80 mm blank does not reach the whole outline" in str(panel.trouble)


# Base 6 block on a base 2 front: gap 0.55 mm at 12 mm radius.
def test_it_starts_with_a_steep_block_on_a_flat_front():
    shown = rows(BlockOnLensPanel())

    assert shown["Block to front gap"] == "0.55 mm in the middle"
    assert shown["Front at 1.530"] == "2.00 D"
    assert shown["Pad bears on"] == "64 % of the block"
    assert shown["Pad sticks by"] == "78 % of an even pad"


def test_a_block_of_the_fronts_curve_bears_all_over():
    shown = rows(BlockOnLensPanel(block_curve_d=2.0))

    assert shown["Block to front gap"].startswith("0.00 mm")
    assert "in the" not in shown["Block to front gap"]
    assert shown["Pad bears on"] == "100 % of the block"
    assert "no gap" in said(BlockOnLensPanel(block_curve_d=2.0))


def test_a_flat_block_leaves_its_gap_at_the_rim():
    data = PANEL.at(block_curve_d=0.0)

    assert data.rim_gap_mm == pytest.approx(
        rim_gap_mm(block_curve_d=0.0, front_curve_d=data.front_curve_d, away_mm=12.0)
    )
    assert rows(BlockOnLensPanel(block_curve_d=0.0))["Block to front gap"].endswith("at the rim")


def test_the_front_is_told_as_a_lens_measure_shows_it():
    index = material("thiourethane-1.67").index

    got = PANEL.at(material="thiourethane-1.67").front_curve_d

    assert got == pytest.approx(2.0 * (1.530 - 1.0) / (index - 1.0))


@pytest.mark.parametrize(
    ("b", "block", "words"),
    [
        (36.0, "round", "yes 6.0 mm of room"),
        (22.0, "round", "no -1.0 mm of room"),
        (22.0, "half-eye", "yes 2.5 mm of room"),
    ],
)
def test_a_round_block_does_not_clear_a_shallow_frame(b, block, words):
    panel = BlockOnLensPanel(b_mm=b, block=block)

    assert rows(panel)["Block clears"] == words
    assert ("standing out by 1.0 mm" in said(panel)) is words.startswith("no")


def test_at_the_optical_centre_the_back_is_square_and_the_outline_reaches_farther():
    boxed, centre, cross = (
        PANEL.at(in_mm=5.0, blocking_point=point).sheet.cut
        for point in ("boxed centre", "optical centre", "fitting cross")
    )

    assert boxed.lens.faces.tilt_deg > 3.0
    assert centre.lens.faces.tilt_deg == pytest.approx(0.0, abs=1e-6)
    assert centre.lens.outline_mm.max() > boxed.lens.outline_mm.max() + 4.0
    np.testing.assert_array_equal(centre.lens.outline_mm, cross.lens.outline_mm)


def test_the_sentence_answers_where_to_block():
    boxed, centre = (
        said(BlockOnLensPanel(in_mm=5.0, blocking_point=point))
        for point in ("boxed centre", "optical centre")
    )

    # 5 mm from the optical centre of -6.00 D: 3 prism dioptres, 1.72 degrees over 0.53, and a little more.
    assert "reaches 25.2 mm, the back leans 3.3 degrees" in boxed
    assert "reaches 30.1 mm, the back leans 0.0 degrees" in centre


def test_a_steep_tip_turns_by_little_and_a_rigid_one_bears_on_one_side():
    stiff = {"tip_stiffness": "stiff", "block_curve_d": 2.0}
    near, steep, rigid = (
        PANEL.at(**stiff, **one) for one in ({}, {"tip_face_mm": 40.0}, {"tip_mount": RIGID})
    )

    assert steep.tip_torque_share < 0.5 < near.tip_torque_share
    side = rigid.tip.pressure_mpa @ rigid.tip.face.x_mm / rigid.tip.pressure_mpa.sum()
    level = near.tip.pressure_mpa @ near.tip.face.x_mm / near.tip.pressure_mpa.sum()
    assert abs(level) < 0.01 < 1.0 < abs(side)


@pytest.mark.parametrize(
    "start",
    [
        {},
        {"block_curve_d": 2.0},
        {"block_curve_d": 0.0},
        {"block_curve_d": 12.0},
        {"tip_face_mm": 40.0, "tip_stiffness": "stiff"},
        {"tip_mount": RIGID, "tip_stiffness": "stiff", "in_mm": 5.0},
        {"cylinder_d": -4.0, "axis_deg": 90, "tip_stiffness": "stiff"},
    ],
)
def test_the_side_view_agrees_with_the_pressures(start):
    """Where pressure is, the face is squeezed in; where none is, it stands off."""
    data = PANEL.at(**start)
    for on, off in ((data.block, data.view.block_off_mm), (data.tip, data.view.tip_off_mm)):
        level = np.abs(on.face.y_mm) < 0.4
        drawn = np.interp(on.face.x_mm[level], data.view.along_mm, off)
        bears = on.pressure_mpa[level] > 0.0
        assert np.all(drawn[bears] < 0.02)
        assert np.all(drawn[~bears] > -0.02)


def test_the_pad_is_never_thinner_than_its_squeeze():
    view = PANEL.at().view
    under = np.abs(view.along_mm) <= view.block_half_mm

    assert np.all(view.pad_mm + np.minimum(view.block_off_mm[under], 0.0) > 0.0)


def test_defaults_of_the_bench_are_the_start():
    start = {name: spec.value for name, spec in BlockOnLensPanel.ranges.items()}

    assert (start["block"], start["tip_stiffness"]) == (Setup().block, Setup().tip_stiffness)
    assert not any("clamp" in name for name in start)


def test_the_sentence_is_short_enough():
    assert len(said(BlockOnLensPanel(b_mm=22.0)).split()) <= 46
