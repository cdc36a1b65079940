"""Questions about edges: the curriculum's own examples, and what the general tests cannot see."""

import math
from collections import Counter

import pytest
from made_questions import answered, questions

from lablib.bench.edges import edge_default, least_edge_mm, rim_give_mm
from lablib.questions.edges.circumference import SizeCase
from lablib.questions.edges.groove_wall import GrooveCase
from lablib.questions.edges.mounting import MountingCase
from lablib.questions.edges.place_case import PlaceCase
from lablib.questions.edges.strain import TABLE
from lablib.questions.edges.touch_up import TouchUpCase
from lablib.questions.edges.wander import WanderCase
from lablib.questions.makers import MAKERS
from lablib.questions.situation import situations
from lablib.study.picked import Earlier


def test_half_a_millimetre_round_is_0_16_across():
    # Curriculum, lesson 13: right 0.16 mm, wrong 0.5 mm.
    case = SizeCase(change_mm=0.5, asks_width=True, grows=False)
    assert answered("size-by-circumference", case) == pytest.approx(0.16, abs=0.005)
    assert answered("size-by-circumference", case, "change-taken-over") == 0.5
    assert answered("size-by-circumference", case, "radius-for-width") == pytest.approx(0.25 / math.pi)
    back = SizeCase(change_mm=0.2, asks_width=False, grows=True)
    assert answered("size-by-circumference", back) == pytest.approx(0.2 * math.pi)
    assert answered("size-by-circumference", back, "pi-the-wrong-way") == pytest.approx(0.2 / math.pi)


def test_base_4_lens_in_a_base_8_rim():
    # Curriculum: 2.7 mm at 26 mm, counted from the middle; between 18 and 26 mm by hand 1.475 mm.
    case = WanderCase(front_d=4.0, rim_d=8.0, far_mm=26.0, near_mm=18.0)
    assert answered("bevel-wander", case, "counted-from-the-middle") == pytest.approx(2.7, abs=0.05)
    assert answered("bevel-wander", case) == pytest.approx(1.475, abs=0.0005)
    rim = 66.25 - math.sqrt(66.25**2 - 26.0**2) - (66.25 - math.sqrt(66.25**2 - 18.0**2))
    assert answered("bevel-wander", case, "rim-alone") == pytest.approx(rim)


def test_no_groove_on_a_1_mm_edge():
    # Curriculum: groove on a 1.0 mm edge, refuse.
    case = MountingCase(kind="grooved", material="thiourethane-1.60", least_mm=1.0, greatest_mm=2.4)
    assert answered("edge-for-a-frame", case) == "thicker"
    assert answered("edge-for-a-frame", case, "cut-on-a-thin-edge") == "groove"


@pytest.mark.parametrize(
    ("kind", "material", "least_mm", "right"),
    [
        ("plastic", "hard-resin-1.50", 1.2, "bevel"),
        ("metal", "episulfide-1.74", 0.8, "thicker"),
        ("grooved", "hard-resin-1.50", 2.2, "groove"),
        ("drilled", "hard-resin-1.50", 2.4, "material"),
        ("drilled", "polycarbonate-1.59", 2.4, "drill"),
        ("drilled", "polycarbonate-1.59", 1.2, "thicker"),
    ],
)
def test_which_edge_for_which_frame(kind: str, material: str, least_mm: float, right: str):
    case = MountingCase(kind=kind, material=material, least_mm=least_mm, greatest_mm=least_mm + 1.0)
    assert answered("edge-for-a-frame", case) == right


def test_every_edge_comes_up_and_no_order_is_at_a_limit():
    found = Counter(question.right for question in questions("edge-for-a-frame"))
    assert set(found) == {"bevel", "groove", "drill", "thicker", "material"}
    assert min(found.values()) >= 30


def test_the_wall_behind_a_groove():
    # By hand: 3.0 - 1.2 - 0.3.
    case = GrooveCase(edge_mm=3.0, width_mm=0.6, middle_mm=1.2)
    assert answered("wall-beside-a-groove", case) == pytest.approx(1.5)
    assert answered("wall-beside-a-groove", case, "groove-without-width") == pytest.approx(1.8)
    assert answered("wall-beside-a-groove", case, "whole-width-off-one-wall") == pytest.approx(1.2)
    assert answered("wall-beside-a-groove", case, "wall-in-front") == pytest.approx(0.9)
    assert answered("wall-beside-a-groove", case, "both-walls") == pytest.approx(2.4)


def test_the_solution_says_whether_the_groove_can_be_cut():
    said = {question.solution.words[0].split(":")[-1] for question in questions("wall-beside-a-groove")}
    assert len(said) == 3
    for question in questions("wall-beside-a-groove"):
        front, back = (working.value for working in question.solution.workings)
        holds = min(front, back) >= edge_default("groove_wall_mm")
        assert holds == ("can be cut" in question.solution.words[0])


def place(edges: tuple[float, float], front_d: float, rim_d: float, rim: str = "metal") -> str:
    near, far = edges
    case = PlaceCase(
        a_mm=52.0, b_mm=36.0, rim=rim, front_d=front_d, rim_d=rim_d, near_edge_mm=near, far_edge_mm=far
    )
    return answered("bevel-place", case)


def test_where_the_bevel_goes():
    # Base 4 in base 8 wanders 1.5 mm between 18 and 26 mm: 2.5 mm of edge hold it, metal gives 0.5 mm.
    assert place((2.2, 4.0), 4.0, 5.0) == "front"
    assert place((2.2, 4.0), 4.0, 8.0) == "rim"
    assert place((1.6, 1.2), 4.0, 4.5) == "middle"
    # The middle of an edge that thins outwards moves forward, where the rim runs back.
    assert place((1.6, 1.2), 4.0, 5.0) == "front"
    # Curriculum: the bevel follows the frame's curve where the edge is too thin: refuse.
    assert place((1.6, 1.2), 4.0, 8.0) == "none"
    assert place((1.6, 1.2), 4.0, 6.0, rim="plastic") == "middle"


def test_a_bevel_can_be_placed_with_what_is_told():
    found = Counter()
    for question in questions("bevel-place"):
        near, far, wander, give, side = (term.value for term in question.given)
        if wander <= give:
            told = "middle" if max(near, far) <= edge_default("thin_edge_mm") else "front"
        else:
            told = "rim" if far >= wander + 2.0 * side else "none"
        assert told == question.right, question.seed
        found[told] += 1
    assert min(found.values()) >= 60


@pytest.mark.parametrize(
    ("rim", "slips", "value"),
    [
        # 1.5 mm over is 0.477 across, nine steps; for plastic 1.2 mm over, 0.382, seven steps.
        ("metal", (), 0.45),
        ("plastic", (), 0.35),
        ("metal", ("circumference-as-width",), 1.5),
        ("metal", ("half-of-the-width",), 0.2),
        ("plastic", ("plastic-on-size",), 0.45),
        ("metal", ("metal-full",), 0.35),
        ("metal", ("rounded-up",), 0.5),
    ],
)
def test_one_touch_up(rim: str, slips: tuple[str, ...], value: float):
    case = TouchUpCase(groove_mm=150.0, over_groove_mm=1.5, rim=rim)
    assert answered("touch-up", case, *slips) == pytest.approx(value)


def test_a_touch_up_brings_size_right_and_never_takes_too_much():
    for seed in range(200):
        question = MAKERS["touch-up"].make(seed)
        over, width, taken = (working.value for working in question.solution.workings)
        assert 0.0 <= over - math.pi * taken <= edge_default("size_within_mm"), seed
        assert taken <= width


def test_what_is_read_on_the_block_comes_first_and_strain_last():
    for question in questions("off-the-block"):
        order = list(question.right)
        assert order.index("look") < order.index("deblock") < order.index("insert") < order.index("strain")
        # Whether the film protects the lens on the wheel is a matter of taste.
        assert not {"peel", "chamfer"} <= set(order)
        for mistake in question.mistakes:
            assert isinstance(mistake.value, Earlier)


def test_each_sign_has_three_ways_that_attract():
    assert all(len(one.wrong) == 3 for one in situations(*TABLE).values())
    assert {question.prompt[0] for question in questions("strain-signs")} == {
        f"In an invented lens room: {one.words[0].lower()}{one.words[1:]}."
        for one in situations(*TABLE).values()
    }
    assert not any("force" in one.right for one in situations(*TABLE).values())


def test_limits_told_are_those_of_the_table():
    told = " ".join(questions("edge-for-a-frame")[0].prompt)
    for kind in ("metal", "grooved", "drilled"):
        assert f"{least_edge_mm(kind):g} mm" in told
    assert rim_give_mm("plastic") > rim_give_mm("metal")
