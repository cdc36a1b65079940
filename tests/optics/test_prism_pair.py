"""The prism of a pair: split, alike, put in by centres, at the reading point; and image jump.

Where a row says "computed", it is arithmetic from the stated formula, done apart from this package.
"""

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import computed, tried
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.near_imbalance import SLAB_OFF_CAUTION, SlabOff, prism_at_reading_point, slab_off
from lablib.optics.practice import source_of
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at
from lablib.optics.prism_pair import (
    PrismPair,
    inwards_of_centre_mm,
    pair_at,
    prism_of_centres,
    split,
    thinning_prism,
    yoked,
)
from lablib.optics.prism_pair_workings import (
    between_workings,
    centres_workings,
    near_imbalance_workings,
    split_workings,
    thinning_prism_working,
)

prisms = st.floats(-12, 12)


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# Common practice: 4 base in together is 2 base in for each eye; 4 up for the right eye is 2 up and 2 down.
def test_splitting_gives_the_same_word_sideways_and_opposite_words_upwards():
    assert split(in_prism_d=4).written() == "right 2.00 base in, left 2.00 base in"
    assert split(in_prism_d=-3).written() == "right 1.50 base out, left 1.50 base out"
    assert split(up_prism_d=4).written() == "right 2.00 base up, left 2.00 base down"
    assert split(up_prism_d=4, right_share=0.25).written() == "right 1.00 base up, left 3.00 base down"
    assert split(in_prism_d=4, right_share=1).written() == "right 4.00 base in, left no prism"
    assert split() == PrismPair(right_in_prism_d=0, right_up_prism_d=0, left_in_prism_d=0, left_up_prism_d=0)


@tried
@given(prisms, prisms, st.floats(0, 1))
def test_what_was_split_comes_together_again(inwards: float, upwards: float, share: float):
    pair = split(in_prism_d=inwards, up_prism_d=upwards, right_share=share)
    assert pair.between == pytest.approx((inwards, upwards), abs=1e-12)


@tried
@given(prisms, prisms, prisms, prisms)
def test_what_is_between_and_what_is_alike_are_the_whole_pair(a: float, b: float, c: float, d: float):
    pair = PrismPair(right_in_prism_d=a, right_up_prism_d=b, left_in_prism_d=c, left_up_prism_d=d)
    halves, same = (
        split(in_prism_d=pair.between[0], up_prism_d=pair.between[1]),
        yoked(to_left_prism_d=pair.alike[0], up_prism_d=pair.alike[1]),
    )
    for eye in ("right", "left"):
        total = [one + other for one, other in zip(getattr(halves, eye), getattr(same, eye), strict=True)]
        assert getattr(pair, eye) == pytest.approx(tuple(total), abs=1e-9)


def test_yoked_prism_is_nothing_between_the_eyes():
    pair = yoked(to_left_prism_d=3, up_prism_d=-2)
    assert pair.written() == (
        "right 3.00 base in with 2.00 base down, left 3.00 base out with 2.00 base down"
    )
    assert pair.between == (0.0, 0.0)
    assert pair.alike == (3.0, -2.0)


# Common practice: about two thirds of the addition, base down in both eyes.
def test_thinning_prism():
    pair = thinning_prism(2.25)
    assert pair.written() == "right 1.50 base down, left 1.50 base down"
    assert pair.between == (0.0, 0.0)
    assert thinning_prism(2.0, share=0.5).right == (0.0, -1.0)
    assert thinning_prism(0.0).written() == "right no prism, left no prism"


# Job of an invented lab: -3.00 both, centres 3.6 mm out of their place to fit a blank: 1.08 base in each,
# 2.16 together (computed, 3.00 x 0.36).
def test_centres_too_wide_for_a_minus_pair():
    pair = prism_of_centres(
        rx(-3), rx(-3), right_centre_mm=32.6, left_centre_mm=32.6, right_pd_mm=29, left_pd_mm=29
    )
    assert pair.right == pytest.approx((1.08, 0.0))
    assert pair.between == pytest.approx((2.16, 0.0))
    assert inwards_of_centre_mm(centre_mm=32.6, pd_mm=29) == pytest.approx(3.6)


# Job of an invented lab: +3.25 for near centred for far, 32 in place of 30 mm: 0.65 base out each, 1.3
# together (computed).
def test_centres_too_wide_for_a_plus_pair():
    pair = prism_of_centres(
        rx(3.25), rx(3.25), right_centre_mm=32, left_centre_mm=32, right_pd_mm=30, left_pd_mm=30
    )
    assert pair.written() == "right 0.65 base out, left 0.65 base out"
    assert pair.between == pytest.approx((-1.3, 0.0))


@pytest.mark.parametrize(
    ("power", "wider", "word"), [(4, 2, "out"), (4, -2, "in"), (-4, 2, "in"), (-4, -2, "out")]
)
def test_wider_and_narrower_centres(power: float, wider: float, word: str):
    pair = prism_of_centres(
        rx(power),
        rx(power),
        right_centre_mm=31 + wider,
        left_centre_mm=32 + wider,
        right_pd_mm=31,
        left_pd_mm=32,
    )
    assert pair.written() == f"right 0.80 base {word}, left 0.80 base {word}"


# Bhootra, Ophthalmic Lenses, p. 47 (read): right -3.00, left -6.00, 8 mm below: 2.4 and 4.8 base down,
# difference 2.4.
def test_imbalance_at_near():
    pair = prism_at_reading_point(rx(-3), rx(-6), drop_mm=8)
    assert pair.right == pytest.approx((0, -2.4), abs=0.05)
    assert pair.left == pytest.approx((0, -4.8), abs=0.05)
    assert pair.between[1] == pytest.approx(2.4, abs=0.05)


# Computed: right -1.00, left -4.50, 10 mm below the distance centres: 3.5, to be raised on the left lens.
@pytest.mark.parametrize(
    ("right", "left", "eye", "amount"),
    [
        (rx(-1), rx(-4.5), Eye.LEFT, 3.5),
        (rx(-4.5), rx(-1), Eye.RIGHT, 3.5),
        (rx(4), rx(1), Eye.LEFT, 3.0),
        (rx(2), rx(-1), Eye.LEFT, 3.0),
        # The vertical meridian counts: -1.00 -3.00 x 180 has -4.00 there, -1.00 -3.00 x 090 has -1.00.
        (rx(-1, -3, 180), rx(-1, -3, 90), Eye.RIGHT, 3.0),
    ],
)
def test_slab_off(right: Prescription, left: Prescription, eye: Eye, amount: float):
    found = slab_off(right, left, drop_mm=10)
    assert found.eye is eye
    assert found.amount_prism_d == pytest.approx(amount)
    assert found.words == f"{amount:.2f} base up on the {eye} lens. {SLAB_OFF_CAUTION}"
    assert "the prescriber decides" in SLAB_OFF_CAUTION


def test_no_imbalance_no_slab_off():
    assert slab_off(rx(-2), rx(-2), drop_mm=10) == SlabOff(eye=None, amount_prism_d=0.0)
    assert slab_off(rx(-2), rx(-5), drop_mm=0).words == "There is no vertical imbalance at the reading point."


@tried
@given(computed(), computed(), st.floats(1, 20))
def test_slab_off_goes_to_the_most_minus_or_least_plus_upright(
    right: Prescription, left: Prescription, drop: float
):
    upright = right.power_in_meridian_d(90), left.power_in_meridian_d(90)
    found = slab_off(right, left, drop_mm=drop)
    assert found.amount_prism_d == pytest.approx(abs(upright[0] - upright[1]) * drop / 10, abs=0.005)
    if found.eye:
        assert found.eye is (Eye.RIGHT if upright[0] < upright[1] else Eye.LEFT)


def test_an_inset_counts_through_the_oblique_cylinder():
    # Right -4.00 -2.00 x 030, 5 mm nasal: 0.433 down (published values); with 10 mm below 5.50 down: 5.933.
    pair = prism_at_reading_point(rx(-4, -2, 30), rx(-4), drop_mm=10, right_inset_mm=5, left_inset_mm=0)
    assert pair.right_up_prism_d == pytest.approx(-5.933, abs=0.0005)
    assert pair == pair_at(rx(-4, -2, 30), rx(-4), right_mm=(5, -10), left_mm=(0, -10))


# Image jump, Bhootra, Ophthalmic Lenses, p. 114 (read): at the top of a segment the eye meets the prism of
# the addition at that distance above the segment's centre. Round 24, addition 2.00: 2.4 base down; flat top
# 28 x 19 with its centre 5 mm below the top: 1.0 base down.
@pytest.mark.parametrize(("above_mm", "jump"), [(12.0, -2.4), (5.0, -1.0)])
def test_image_jump(above_mm: float, jump: float):
    assert prism_at(rx(2), eye="right", in_mm=0, up_mm=above_mm)[1] == pytest.approx(jump, abs=0.05)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (
            lambda: PrismPair(
                right_in_prism_d=math.nan, right_up_prism_d=0, left_in_prism_d=0, left_up_prism_d=0
            ),
            "right prism base in nan is not a finite number: give a number in prism dioptres",
        ),
        (
            lambda: PrismPair(right_in_prism_d=0, right_up_prism_d=0, left_in_prism_d=0, left_up_prism_d="1"),
            "left prism base up '1' is not a number: give a number in prism dioptres",
        ),
        (
            lambda: split(in_prism_d=4, right_share=1.5),
            "share of the right eye 1.5 is out of range: give from 0 to 1",
        ),
        (
            lambda: split(in_prism_d="4"),
            "prism base in '4' is not a number: give a number in prism dioptres",
        ),
        (
            lambda: split(up_prism_d=None),
            "prism base up None is not a number: give a number in prism dioptres",
        ),
        (
            lambda: yoked(to_left_prism_d=None),
            "prism towards the wearer's left None is not a number: give a number in prism dioptres",
        ),
        (
            lambda: yoked(up_prism_d=None),
            "right prism base up None is not a number: give a number in prism dioptres",
        ),
        (lambda: thinning_prism(-1), "addition -1 is out of range: give from 0 to 12 D"),
        (
            lambda: thinning_prism(2, share=2),
            "thinning prism for each dioptre of addition 2 is out of range: give from 0 to 1",
        ),
        (
            lambda: inwards_of_centre_mm(centre_mm=62, pd_mm=31),
            "distance of the optical centre 62 is out of range: give from 18 to 45 mm",
        ),
        (
            lambda: inwards_of_centre_mm(centre_mm=32, pd_mm=64),
            "monocular distance 64 is out of range: give from 18 to 45 mm",
        ),
        (
            lambda: slab_off(rx(-1), rx(-2), drop_mm=-8),
            "drop to the reading point -8 is out of range: give from 0 to 30 mm",
        ),
        (
            lambda: slab_off(rx(-1), rx(-2), drop_mm=8, left_inset_mm=7),
            "inset of the left eye 7 is out of range: give from 0 to 6 mm",
        ),
        (
            lambda: pair_at(rx(-1), rx(-2), right_mm=(0, 0), left_mm=("far", 0)),
            "point inwards 'far' is not a finite number: give a number in mm",
        ),
    ],
)
def test_words(call, words: str):
    with pytest.raises(LabError) as caught:
        call()
    assert str(caught.value) == words


def drawn_lens(draw: random.Random) -> Prescription:
    cylinder = draw.choice([0.0, draw.randrange(-16, 17) / 4])
    return rx(draw.randrange(-40, 41) / 4, cylinder, draw.randrange(1, 181))


def test_workings_of_a_split():
    assert split_workings() == ()
    for seed in range(200):
        draw = random.Random(seed)
        inwards, upwards = draw.choice([0.0, draw.randrange(-32, 33) / 4]), draw.randrange(-32, 33) / 4
        share = draw.choice([0.5, 0.25, 1.0])
        pair = split(in_prism_d=inwards, up_prism_d=upwards, right_share=share)
        steps = split_workings(in_prism_d=inwards, up_prism_d=upwards, right_share=share)
        assert_worked(steps)
        found = {step.symbol: step.value for step in steps}
        assert found.get("P_in_R", 0.0) == pair.right[0]
        assert found.get("P_in_L", 0.0) == pair.left[0]
        assert found.get("P_up_R", 0.0) == pair.right[1]
        assert found.get("P_up_L", 0.0) == pair.left[1]
        together = between_workings(pair)
        assert_worked(together)
        assert tuple(step.value for step in together) == pair.between


def test_workings_of_centres_and_of_reading():
    for seed in range(200):
        draw = random.Random(seed)
        right, left = drawn_lens(draw), drawn_lens(draw)
        values = {
            "right_centre_mm": draw.randrange(56, 72) / 2,
            "left_centre_mm": draw.randrange(56, 72) / 2,
            "right_pd_mm": draw.randrange(56, 72) / 2,
            "left_pd_mm": draw.randrange(56, 72) / 2,
        }
        steps = centres_workings(right, left, **values)
        assert_worked(steps)
        assert tuple(step.value for step in steps[-2:]) == prism_of_centres(right, left, **values).between
        place = {
            "drop_mm": draw.randrange(5, 13),
            "right_inset_mm": draw.choice([0, 2]),
            "left_inset_mm": draw.choice([0, 2.5]),
        }
        steps = near_imbalance_workings(right, left, **place)
        assert_worked(steps)
        assert steps[-2].value == prism_at_reading_point(right, left, **place).between[1]
        assert steps[-1].value == slab_off(right, left, **place).amount_prism_d


def test_working_of_thinning_prism():
    for addition in (0.0, 0.75, 2.25, 3.5):
        for share in (None, 0.5):
            working = thinning_prism_working(addition, share=share)
            assert_worked([working])
            assert working.value == -thinning_prism(addition, share=share).right_up_prism_d
    assert thinning_prism_working(2.25).source == source_of("thinning_share")
    assert thinning_prism_working(2.25).substituted == "0.6667 * 2.25"


def test_what_a_learner_reads():
    assert [step.substituted for step in split_workings(up_prism_d=4)] == [
        "0.50 * 4.00",
        "-(1 - 0.50) * 4.00",
    ]
    steps = near_imbalance_workings(rx(-1), rx(-4.5), drop_mm=10)
    assert [step.symbol for step in steps] == ["P_in_R", "P_up_R", "P_in_L", "P_up_L", "P_up", "V"]
    assert steps[1].formula == "-S_R * up_R / 10"
    assert steps[1].substituted == "-(-1.00) * (-10.0) / 10"
    assert steps[4].substituted == "-1.00 - (-4.50)"
    assert (steps[5].substituted, steps[5].result) == ("abs(3.50)", "3.50 prism dioptres")
    wide = centres_workings(
        rx(3.25), rx(3.25), right_centre_mm=32, left_centre_mm=32, right_pd_mm=30, left_pd_mm=30
    )
    assert (wide[0].symbol, wide[0].substituted) == ("in_R", "32.0 - 30.0")
    assert wide[-2].substituted == "-0.65 + (-0.65)"
