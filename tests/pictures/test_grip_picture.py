"""The picture of the grip: parts one above the other, a row for each joint, the weakest one marked."""

import itertools

import pytest
from picture_words import require_apart_and_inside, smallest_px, texts_of

from lablib.panels.grip_panel import NO, YES, GripPanel
from lablib.pictures.grip import FULL_NMM, GripPicture
from lablib.pictures.grip_data import Grip

PANEL = GripPanel()
CASES = {
    "start": {},
    "film": {"film": YES},
    "creased": {"film": YES, "crease_percent": 60.0, "skin": "oily"},
    "bare": {"coat": "uncoated", "back_tape": YES, "temperature_c": 10.0, "thickness_mm": 3.0},
    "small": {"block": "half-eye", "pad_age_months": 24.0, "skin": "oily", "thickness_mm": 0.8},
    "dirty": {"block_face": "dirty", "film": YES, "key_play_mm": 0.6},
    "layer": {"grip_layer": "present", "tip_fit": "steep-tip", "tip_stiffness": "stiff"},
}


@pytest.fixture(scope="module")
def picture() -> GripPicture:
    return GripPicture()


@pytest.fixture(params=CASES.values(), ids=CASES.keys())
def drawn(request, picture) -> tuple[GripPicture, Grip]:
    grip = PANEL.at(**request.param)
    picture.update(grip)
    return picture, grip


def rows(picture: GripPicture, grip: Grip):
    """The rows that are drawn, each with its joint."""
    pairs = ((picture.block, grip.block), (picture.core, grip.core), (picture.film, grip.film))
    return [(row, joint) for row, joint in (*pairs, (picture.lens, grip.lens)) if joint]


def test_bars_are_as_long_as_their_torques(drawn):
    picture, grip = drawn
    per_nmm = 232.0 / FULL_NMM
    for row, joint in (*rows(picture, grip), (picture.tip, grip.tip)):
        assert row.sticks.get_width() == pytest.approx(joint.sticks_nmm * per_nmm)
        assert row.rubs.get_width() == pytest.approx(joint.rubs_nmm * per_nmm)
        assert row.rubs.get_x() == pytest.approx(row.sticks.get_x() + row.sticks.get_width())
        assert row.words.get_text().startswith(f"{joint.torque_nmm / 1000.0:.2f}")
        assert row.state.get_text() == joint.state


def test_the_weakest_joint_alone_is_marked_in_its_row_and_where_it_lies(drawn):
    picture, grip = drawn
    marked = [joint.name for row, joint in rows(picture, grip) if "weakest" in row.words.get_text()]
    assert marked == [grip.held.weakest.name]
    (weak,) = (row for row, joint in rows(picture, grip) if joint is grip.weakest)
    heights = set(picture.section.slips.get_ydata())
    assert heights == {weak.lead.get_ydata()[0]}
    assert heights == {picture.section.joint_y(grip, grip.weakest)}


def test_lines_lead_from_the_joints_to_their_rows_without_crossing(drawn):
    picture, grip = drawn
    ends = [tuple(row.lead.get_ydata()) for row, _ in (*rows(picture, grip), (picture.tip, grip.tip))]
    for (from_one, to_one), (from_next, to_next) in itertools.pairwise(ends):
        assert from_one > from_next
        assert to_one > to_next


def test_front_and_tip_make_the_whole(drawn):
    picture, grip = drawn
    front, back = (bar.get_width() for bar in picture.sum)
    assert front + back == pytest.approx(grip.held.torque_nmm * 232.0 / FULL_NMM)
    assert picture.together.get_text().endswith(f"= {grip.held.torque_nmm / 1000.0:.2f}")
    assert grip.weakest.name in picture.together.get_text()


def test_film_coat_and_tape_are_drawn_where_they_are(drawn):
    picture, grip = drawn
    section, names = picture.section, texts_of(picture)
    assert section.film.get_visible() is bool(grip.film) is ("film" in names)
    assert section.front_coat.get_visible() is (grip.setup.coat != "uncoated") is ("coat" in names)
    assert section.tape.get_visible() is grip.setup.back_tape is ("tape" in names)
    assert ("no film" in names) is (grip.film is None)


def test_a_crease_is_as_wide_as_its_air(picture):
    def width(percent: float) -> float:
        picture.update(PANEL.at(film=YES, crease_percent=percent))
        air = picture.section.air
        return float(air.get_xy()[:, 0].max() - air.get_xy()[:, 0].min()) if air.get_visible() else 0.0

    block = picture.section.block.get_width()
    assert [width(percent) / block for percent in (0.0, 30.0, 60.0)] == pytest.approx([0.0, 0.3, 0.6])
    picture.update(PANEL.at(film=NO, crease_percent=60.0))
    assert not picture.section.air.get_visible()


def test_what_lies_on_the_lens_is_marked_and_named(picture):
    marks = []
    for skin in ("clean", "fingerprint", "oily"):
        picture.update(PANEL.at(skin=skin))
        marks.append(len(picture.section.soil.get_xdata()))
        assert ("what lies on the lens" in texts_of(picture)) is (skin != "clean")
    assert marks[0] == 0 < marks[1] < marks[2]


def test_a_half_eye_block_is_drawn_narrower_on_the_same_lens(picture):
    picture.update(PANEL.at())
    block, lens = picture.section.block.get_width(), picture.section.lens.get_width()
    picture.update(PANEL.at(block="half-eye"))
    assert picture.section.block.get_width() == pytest.approx(block * 8.5 / 12.0)
    assert picture.section.lens.get_width() == lens


@pytest.mark.parametrize("fit", GripPanel.ranges["tip_fit"].options)
def test_a_tip_stands_off_where_it_does_not_fit(picture, fit):
    picture.update(PANEL.at(tip_fit=fit))
    face = picture.section.tip.get_xy()[1:-2, 1]
    back = picture.section.back_y(PANEL.at(tip_fit=fit))
    assert face.max() == pytest.approx(back)
    assert bool(face.min() < back) is (fit not in ("usual", "matched"))


def test_the_grip_layer_is_drawn_on_a_slick_coat_alone(picture):
    for coat, layer, there in (
        ("slick", "present", True),
        ("slick", "stripped", False),
        ("coated", "present", False),
    ):
        picture.update(PANEL.at(coat=coat, grip_layer=layer))
        assert picture.section.grip_layer.get_visible() is there


def test_the_key_is_said(picture):
    picture.update(PANEL.at(key_play_mm=0.2))
    assert "key with 0.20 mm play: axis off by up to 1.4°" in texts_of(picture)
    picture.update(PANEL.at())
    assert "key without play" in texts_of(picture)


def test_the_largest_sum_stays_inside(picture):
    picture.update(PANEL.at(**CASES["bare"], tip_fit="flat-tip"))
    assert picture.sum[1].get_x() + picture.sum[1].get_width() < picture.width_px


def test_no_words_overlap_and_all_stay_inside_the_picture(drawn):
    picture, _ = drawn
    assert require_apart_and_inside(picture) > 18


@pytest.mark.parametrize("film", [NO, YES])
def test_no_words_overlap_in_any_state(picture, film):
    options = (
        GripPanel.ranges[name].options for name in ("coat", "grip_layer", "skin", "back_tape", "block")
    )
    for coat, layer, skin, tape, block in itertools.product(*options):
        case = {"coat": coat, "grip_layer": layer, "skin": skin, "back_tape": tape, "block": block}
        for crease, age in ((0.0, 0.0), (60.0, 24.0)):
            picture.update(
                PANEL.at(film=film, crease_percent=crease, pad_age_months=age, key_play_mm=0.6, **case)
            )
            require_apart_and_inside(picture, case)


def test_words_are_large_enough_to_read(picture):
    assert smallest_px(picture) >= 12.0
