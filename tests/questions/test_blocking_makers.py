"""Questions about blocking: the curriculum's own examples, and what the general tests cannot see."""

from collections import Counter

import pytest
from made_questions import answered, questions

from lablib.bench.contact import Annulus
from lablib.bench.parameter import parameters
from lablib.bench.setup import Setup
from lablib.questions.blocking.block_curve import GapCase
from lablib.questions.blocking.clamp import ClampCase
from lablib.questions.blocking.clears import RoomCase
from lablib.questions.blocking.condition_case import ConditionCase
from lablib.questions.blocking.key import KeyCase
from lablib.questions.blocking.layer import TABLE
from lablib.questions.blocking.smaller_block import BlockCase
from lablib.questions.blocking.weakest import WeakestCase
from lablib.questions.blocking.where import WhereCase
from lablib.questions.situation import situations
from lablib.study.marking import mark


def test_from_12_to_10_mm_adhesion_keeps_0_58():
    # Curriculum, lesson 10: x 0.58 right; x 0.69 by the area, x 0.83 by the radius.
    case = BlockCase(sticks_nm=1.0, rubs_nm=0.0, large_mm=12.0, small_mm=10.0)
    assert answered("smaller-block", case) == pytest.approx(0.58, abs=0.005)
    assert answered("smaller-block", case, "sticking-by-the-area") == pytest.approx(0.69, abs=0.005)
    assert answered("smaller-block", case, "sticking-by-the-radius") == pytest.approx(0.83, abs=0.005)
    rubs = BlockCase(sticks_nm=0.0, rubs_nm=1.2, large_mm=12.0, small_mm=10.0)
    assert answered("smaller-block", rubs) == pytest.approx(1.0)
    assert Annulus(radius_mm=10.0).w_mm3 / Annulus(radius_mm=12.0).w_mm3 == pytest.approx((10.0 / 12.0) ** 3)


def test_base_6_block_on_a_base_2_front():
    # Curriculum: gap 0.55 mm at 12 mm radius.
    case = GapCase(block_d=6.0, front_d=2.0, width_mm=24.0)
    assert answered("block-curve-gap", case) == pytest.approx(0.55, abs=0.005)
    turned = GapCase(block_d=2.0, front_d=6.0, width_mm=24.0)
    assert answered("block-curve-gap", turned) == pytest.approx(answered("block-curve-gap", case))


def test_the_gap_says_where_it_lies():
    for question in questions("block-curve-gap"):
        block, front = (term.value for term in question.given[:2])
        place = "bears on its rim" if block > front else "bears in the middle"
        assert place in question.solution.words[0]


def test_an_oily_coat_in_numbers():
    # Slip model of the workbook: pad on slick coat, tau 0.03 MPa and mu 0.22, oily 0.35 and 0.5, 12 months
    # 0.64 and 0.88; W 3619, N 290, r_eff 8.
    setup = Setup(coat="slick", skin="oily", pad_age_months=12.0, block_face="worn", clamp_force_n=290.0)
    case = ConditionCase(setup=setup, joint="pad to coat")
    expected = 0.03 * 0.64 * 0.35 * 3619.0 + 0.22 * 0.88 * 0.5 * 290.0 * 8.0
    assert answered("joint-in-its-condition", case) == pytest.approx(expected / 1000.0, abs=5e-6)
    added = 0.03 * (0.64 + 0.35 - 1.0) * 3619.0 + 0.22 * (0.88 + 0.5 - 1.0) * 290.0 * 8.0
    assert answered("joint-in-its-condition", case, "losses-added") == pytest.approx(added / 1000.0, abs=5e-6)


@pytest.mark.parametrize(
    ("joint", "counts"),
    [("block to pad", {"age", "block"}), ("pad to coat", {"age", "skin"}), ("film to coat", {"skin"})],
)
def test_where_a_condition_counts(joint: str, counts: set[str]):
    setup = Setup(film=joint.startswith("film"), skin="oily", pad_age_months=6.0, block_face="dirty")
    assert set(ConditionCase(setup=setup, joint=joint).here) == counts


@pytest.mark.parametrize(
    ("setup", "weakest"),
    [
        (Setup(coat="uncoated"), "pad core"),
        (Setup(coat="slick", block_face="dirty"), "pad to coat"),
        (Setup(coat="slick", film=True), "pad core"),
        (Setup(coat="slick", film=True, block_face="dirty"), "block to pad"),
        (Setup(coat="slick", film=True, skin="fingerprint"), "film to coat"),
        (Setup(coat="uncoated", skin="oily"), "pad to lens"),
    ],
)
def test_the_weakest_joint_of_a_stack(setup: Setup, weakest: str):
    # Slip model of the workbook: the stacks of lesson 10.
    assert answered("weakest-joint", WeakestCase(setup=setup)) == weakest


def test_the_weakest_joint_is_clear_and_no_stack_is_on_the_edge():
    for question in questions("weakest-joint"):
        told = question.solution.words[0].split(": ")[1].split(". The least")[0].split(", ")
        torques = sorted(float(one.rsplit(" ", 1)[1]) for one in told)
        assert torques[1] >= 1.08 * torques[0]
        assert any(one.startswith(f"{question.right} {torques[0]:.2f}") for one in told)


def test_every_joint_gives_first_somewhere():
    found = Counter(question.right for question in questions("weakest-joint"))
    assert set(found) == {"pad core", "pad to coat", "pad to lens", "film to coat", "block to pad"}
    assert min(found.values()) > 15


def test_nought_is_no_usual_slip_of_a_worn_key():
    for question in questions("key-play"):
        assert mark(question, "0").slips == ()


def test_clamp_force_of_a_thin_lens():
    # Slip model of the workbook: 202 N at 1.0 mm, 290 N at 1.2 mm.
    assert answered("clamp-cap", ClampCase(centre_mm=1.0, rim_mm=1.3)) == pytest.approx(202.0, abs=0.5)
    assert answered("clamp-cap", ClampCase(centre_mm=1.5, rim_mm=1.2)) == pytest.approx(290.0, abs=0.5)


def test_clamp_force_is_never_offered_as_a_cure():
    for question in questions("clamp-cap"):
        assert "not cured by more clamp force" in question.solution.words[-1]
    assert any("more-clamp" in one.wrong for one in situations(*TABLE).values())
    assert not any("clamp" in one.right for one in situations(*TABLE).values())


def test_room_above_a_raised_cross():
    # B 28, cross 17 above the lowest tangent: 11 mm to the top, less half of 24 or of 17 mm.
    case = RoomCase(b_mm=28.0, height_mm=17.0, block="round")
    assert answered("block-clears-the-frame", case) == pytest.approx(-1.0)
    assert answered("block-clears-the-frame", case, "far-side-taken") == pytest.approx(5.0)
    assert answered("block-clears-the-frame", case, "blocked-at-the-boxed-centre") == pytest.approx(2.0)
    narrow = RoomCase(b_mm=28.0, height_mm=17.0, block="half-eye")
    assert answered("block-clears-the-frame", narrow) == pytest.approx(2.5)


@pytest.mark.parametrize(
    ("b_mm", "cross_mm", "progressive", "right"),
    [
        (30.0, 3.0, False, "round at box"),
        (30.0, 3.0, True, "half-eye at cross"),
        (24.0, 4.0, True, "none"),
        (24.0, -4.0, False, "half-eye at box"),
    ],
)
def test_where_a_lens_is_blocked(b_mm: float, cross_mm: float, progressive: bool, right: str):
    case = WhereCase(a_mm=50.0, b_mm=b_mm, cross_mm=cross_mm, progressive=progressive)
    assert answered("where-to-block", case) == right


def test_every_way_of_blocking_comes_up():
    found = Counter(question.right for question in questions("where-to-block"))
    assert min(found.values()) > 20
    assert {key.split(" at ")[0] for key in found} == {"round", "half-eye", "none"}


def test_key_play_in_degrees():
    # Arithmetic: atan(0.2 / 8) is 1.4 degrees.
    case = KeyCase(play_mm=0.2, across_mm=16.0)
    assert answered("key-play", case) == pytest.approx(1.432, abs=0.0005)
    low = parameters()["key_radius_mm"].low
    assert all(question.given[1].value / 2.0 >= low for question in questions("key-play"))


def test_the_tip_that_suits_presses_least():
    for question in questions("tip-on-its-back"):
        assert question.right == "suits"
        pressures = {}
        for key, told in zip(
            (option.key for option in question.kind.options), question.solution.words[1:-1], strict=True
        ):
            pressures[key] = float(told.split("up to ")[1].split(" MPa")[0])
        assert pressures["suits"] < min(value for key, value in pressures.items() if key != "suits")


def test_each_situation_has_three_ways_that_attract():
    assert all(len(one.wrong) == 3 for one in situations(*TABLE).values())
    assert {question.prompt[0] for question in questions("grip-layer")} == {
        f"In an invented lens room: {one.words[0].lower()}{one.words[1:]}."
        for one in situations(*TABLE).values()
    }


def test_the_line_is_read_before_the_block_comes_off():
    for question in questions("blocking-steps"):
        order = list(question.right)
        assert order.index("scribe") < order.index("cut") < order.index("look")
        if "deblock" in order:
            assert order.index("look") < order.index("deblock")
