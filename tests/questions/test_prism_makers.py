"""Makers of prism questions: the trade's own examples to the printed digit, and what is drawn."""

import pytest
from made_questions import SEEDS, answered, questions

from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import Prism, prism_at, resultant
from lablib.questions import prism
from lablib.questions.prism.base import BaseCase
from lablib.questions.prism.between import TwoPrismsCase
from lablib.questions.prism.centres import CentresCase
from lablib.questions.prism.combining import ObliqueCase, PartsCase
from lablib.questions.prism.decentring import DecentringCase
from lablib.questions.prism.near import NearCase
from lablib.questions.prism.point import PointCase
from lablib.questions.prism.slab import SlabCase
from lablib.questions.prism.splitting import SplitCase
from lablib.questions.prism.thickness import WedgeCase
from lablib.questions.prism.thinning import ThinningCase
from lablib.study.marking import State, mark

MAKERS = {maker.name: maker for maker in prism.MAKERS}
# Half a unit in the second decimal, as the examples are printed.
PRINTED = 0.005


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# --- At a point ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "up_prism_d"),
    [
        ((), -2.4),
        (("millimetres-for-centimetres",), -24.0),
        (("base-of-the-other-sign",), 2.4),
        (("base-of-the-other-sign", "millimetres-for-centimetres"), 24.0),
    ],
)
@pytest.mark.parametrize("eye", list(Eye))
def test_a_sphere_below_its_centre(eye: Eye, slips: tuple[str, ...], up_prism_d: float):
    """Common practice: -3.00, 8 mm below, 2.4 base down."""
    case = PointCase(eye=eye, rx=rx(-3.0), in_mm=0.0, up_mm=-8.0)
    assert answered("prism-at-a-point", case, *slips) == pytest.approx((0.0, up_prism_d))
    assert case.words == "8 mm below the optical centre"


@pytest.mark.parametrize(
    ("slips", "in_prism_d", "up_prism_d"),
    [
        ((), 0.87, -5.50),
        (("sphere-alone",), 0.0, -4.00),
        (("equivalent",), 0.0, -5.00),
        (("wrong-meridian",), 0.87, -4.50),
        (("cross-term-lost",), 0.0, -5.50),
        (("eyes-exchanged",), -0.87, -5.50),
        (("base-of-the-other-sign",), -0.87, 5.50),
        (("millimetres-for-centimetres",), 8.66, -55.0),
        (("wrong-meridian", "cross-term-lost"), 0.0, -4.50),
        (("wrong-meridian", "eyes-exchanged"), -0.87, -4.50),
    ],
)
def test_a_toric_lens_below_its_centre(slips: tuple[str, ...], in_prism_d: float, up_prism_d: float):
    """Matrix form (Long 1976), computed: right -4.00 -2.00 x 030, 10 mm below, 5.50 down with 0.866 in."""
    case = PointCase(eye=Eye.RIGHT, rx=rx(-4.0, -2.0, 30.0), in_mm=0.0, up_mm=-10.0)
    found = answered("prism-at-a-point-toric", case, *slips)
    assert found == pytest.approx((in_prism_d, up_prism_d), abs=PRINTED)


def test_a_toric_lens_read_from_a_lens_makers_example():
    """Jalie, Lens Talk November-December 2024: right +6.00 -3.00 x 140, 11 mm below and 2.5 mm in."""
    case = PointCase(eye=Eye.RIGHT, rx=rx(6.0, -3.0, 140.0), in_mm=2.5, up_mm=-11.0)
    assert answered("prism-at-a-point-toric", case) == pytest.approx((-2.81, 5.03), abs=0.01)
    assert case.words == "11 mm below and 2.5 mm in from the optical centre"


def test_a_point_is_told_in_words_that_lead_back_to_it():
    for name in ("prism-at-a-point", "prism-at-a-point-toric"):
        for question in questions(name):
            words = question.prompt[0]
            numbers = {term.symbol: term.value for term in question.given}
            place = {"above": 0.0, "below": 0.0, "in": 0.0, "out": 0.0}
            for before, word in zip(words.split(), words.split()[2:], strict=False):
                if word in place and before.replace(".", "").isdigit():
                    place[word] = float(before)
            lens = rx(numbers["S"], numbers.get("C", 0.0), numbers.get("A"))
            there = prism_at(
                lens,
                eye=question.kind.eye,
                in_mm=place["in"] - place["out"],
                up_mm=place["above"] - place["below"],
            )
            assert question.right == pytest.approx(there), words


def test_a_solution_of_a_sphere_shows_the_one_step_that_counts():
    for question in questions("prism-at-a-point"):
        (step,) = question.solution.workings
        assert abs(step.value) == pytest.approx(abs(complex(*question.right)))


# --- Decentration for a prism -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "out_mm"),
    [
        ((), 4.0),
        (("other-way",), -4.0),
        (("left-in-centimetres",), 0.4),
        (("rule-turned-over",), 25.0),
        (("multiplied",), 1.0),
        (("rule-turned-over", "left-in-centimetres"), 2.5),
    ],
)
def test_decentration_for_two_prism_dioptres(slips: tuple[str, ...], out_mm: float):
    """Jalie 2022: 2 prism dioptres from 5.00 D take 4 mm; here base out, so out."""
    case = DecentringCase(eye=Eye.LEFT, sphere_d=5.0, base="out", amount_prism_d=2.0)
    assert answered("decentration-for-a-prism", case, *slips) == pytest.approx(-out_mm)


def test_a_minus_lens_moves_against_the_base():
    case = DecentringCase(eye=Eye.RIGHT, sphere_d=-4.0, base="up", amount_prism_d=2.0)
    assert answered("decentration-for-a-prism", case) == pytest.approx(-5.0)


def test_decentrations_are_those_of_a_bench():
    for question in questions("decentration-for-a-prism"):
        assert 2.0 <= abs(question.right) <= 12.0


# --- Together and apart -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("eye", "slips", "amount", "base_deg"),
    [
        (Eye.RIGHT, (), 2.50, 36.87),
        (Eye.LEFT, (), 2.50, 143.13),
        (Eye.RIGHT, ("plain-sum",), 3.50, 36.87),
        (Eye.RIGHT, ("angle-from-the-vertical",), 2.50, 53.13),
        (Eye.LEFT, ("eyes-exchanged",), 2.50, 36.87),
        (Eye.RIGHT, ("plain-sum", "angle-from-the-vertical"), 3.50, 53.13),
    ],
)
def test_two_in_with_one_and_a_half_up(eye: Eye, slips: tuple[str, ...], amount: float, base_deg: float):
    """Computed: 2 in with 1.5 up is 2.50 at 36.87 for the right eye and at 143.13 for the left."""
    case = PartsCase(eye=eye, across="in", across_prism_d=2.0, upright="up", upright_prism_d=1.5)
    expected = Prism(amount_prism_d=amount, base=base_deg).resolved(eye=eye)
    assert answered("resultant", case, *slips) == pytest.approx(expected, abs=PRINTED)


def test_down_read_as_up():
    case = PartsCase(eye=Eye.RIGHT, across="out", across_prism_d=2.0, upright="down", upright_prism_d=1.5)
    assert answered("resultant", case, "down-read-as-up") == (-2.0, 1.5)
    assert MAKERS["resultant"].kind(case).written(case.parts) == "2.50 base at 217 degrees"


@pytest.mark.parametrize(("away_deg", "state"), [(0, State.RIGHT), (3, State.WRONG), (-3, State.WRONG)])
def test_a_base_is_asked_for_to_the_degree_however_small_the_prism(away_deg: int, state: State):
    for question in questions("resultant")[:100]:
        amount, base = (
            abs(complex(*question.right)),
            resultant(eye=question.kind.eye, in_prism_d=question.right[0], up_prism_d=question.right[1]).base,
        )
        given = f"{amount:.2f} @ {(round(base) + away_deg) % 360}"
        assert mark(question, given).state is state, (question.prompt, given)


@pytest.mark.parametrize("eye", Eye)
def test_the_way_to_degrees_says_where_in_and_out_lie(eye: Eye):
    case = BaseCase(eye=eye, form="word", across="out")
    said = " ".join(MAKERS["base-in-degrees"].solution(case).words)
    sides = ("right", "left") if eye is Eye.RIGHT else ("left", "right")
    assert f"in lies to your {sides[0]} and out to your {sides[1]}" in said
    case = BaseCase(eye=eye, form="word", upright="up")
    assert "in lies" not in " ".join(MAKERS["base-in-degrees"].solution(case).words)


@pytest.mark.parametrize(("eye", "turned"), [(Eye.RIGHT, False), (Eye.LEFT, True)])
def test_the_way_to_a_split_says_what_each_gets_and_how_the_left_eye_counts(eye: Eye, turned: bool):
    case = SplitCase(eye=eye, base="down", amount_prism_d=4.0)
    said = " ".join(MAKERS["split"].solution(case).words)
    assert f"Each eye gets half: 2.00 base up for the {eye.other} eye." in said
    assert ("base down before the left eye stands there as base up" in said) == turned


def test_one_prism_is_not_answered_by_its_parts():
    question = questions("resultant")[0]
    parts = "2.00 base in, 1.50 base up"
    marked = mark(question, parts)
    assert marked.state is State.NOT_UNDERSTOOD
    assert marked.words == (
        f"Not marked: {parts!r} has its base in words, and one amount with its base in degrees is asked "
        "for: write it like 2.50 @ 37.",
    )
    assert mark(question, "no prism").state is State.WRONG
    assert mark(question, 3).state is State.NOT_UNDERSTOOD


@pytest.mark.parametrize(
    ("slips", "parts"),
    [
        ((), (4.330, 2.500)),
        (("sine-for-cosine",), (2.500, 4.330)),
        (("eyes-exchanged",), (-4.330, 2.500)),
    ],
)
def test_five_with_its_base_at_thirty(slips: tuple[str, ...], parts: tuple[float, float]):
    """Computed: 5 base 30, right eye: 4.330 in, 2.500 up."""
    case = ObliqueCase(eye=Eye.RIGHT, amount_prism_d=5.0, base_deg=30.0)
    assert answered("resolving", case, *slips) == pytest.approx(parts, abs=0.0005)


@pytest.mark.parametrize(("eye", "inwards"), [(Eye.RIGHT, -0.388), (Eye.LEFT, 0.388)])
def test_one_and_a_half_with_its_base_at_255(eye: Eye, inwards: float):
    """Computed: 1.5 base 255: 1.449 down with 0.388 out for the right eye, in for the left."""
    case = ObliqueCase(eye=eye, amount_prism_d=1.5, base_deg=255.0)
    assert answered("resolving", case) == pytest.approx((inwards, -1.449), abs=0.0005)
    assert answered("resolving", case, "half-turn-lost") == pytest.approx((-inwards, 1.449), abs=0.0005)


def test_parts_are_not_answered_by_the_whole():
    question = questions("resolving")[0]
    marked = mark(question, "5 @ 30")
    assert marked.state is State.NOT_UNDERSTOOD
    assert marked.words == (
        "Not marked: '5 @ 30' has its base in degrees, and two parts are asked for: write them like "
        "1.50 base in, 0.50 base up.",
    )


# --- Base direction -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("case", "base_deg", "wrong"),
    [
        (BaseCase(eye=Eye.LEFT, form="word", across="in"), 180.0, {"eyes-exchanged": 0.0}),
        (BaseCase(eye=Eye.RIGHT, form="word", upright="down"), 270.0, {"clockwise": 90.0}),
        (
            BaseCase(eye=Eye.LEFT, form="equal parts", across="in", upright="down"),
            225.0,
            {"eyes-exchanged": 315.0, "clockwise": 135.0},
        ),
        (
            BaseCase(eye=Eye.RIGHT, form="half circle", upright="down", line_deg=30.0),
            210.0,
            {"eyes-exchanged": 330.0, "clockwise": 150.0, "half-turn": 30.0},
        ),
    ],
)
def test_a_base_in_degrees(case: BaseCase, base_deg: float, wrong: dict[str, float]):
    """ISO 8429: anticlockwise from the observer's right: in is 0 for the right eye, 180 for the left."""
    assert answered("base-in-degrees", case) == base_deg
    assert {slip.name for slip in MAKERS["base-in-degrees"].slips_in(case)} == set(wrong)
    for name, value in wrong.items():
        assert answered("base-in-degrees", case, name) == value


def test_every_way_of_telling_a_base_occurs():
    told = [question.prompt[0] for question in questions("base-in-degrees")]
    for words in ("half circle", "the same amount", "asks for base in.", "asks for base up.", "left eye"):
        assert any(words in one for one in told), words


def test_a_base_in_degrees_is_not_answered_by_its_word():
    question = questions("base-in-degrees")[0]
    marked = mark(question, "base in")
    assert marked.state is State.NOT_UNDERSTOOD
    assert marked.words == (
        "Not marked: 'base in' is a word, and degrees are asked for: write them like 37.",
    )
    assert mark(question, "a base").state is State.NOT_UNDERSTOOD


def test_a_full_turn_is_written_as_none():
    kind = MAKERS["base-in-degrees"].kind(BaseCase(eye=Eye.RIGHT, form="word", across="in"))
    assert kind.written(359.8) == kind.written(0.0) == "base at 0 degrees"


# --- Two eyes -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("base", "eye", "slips", "other"),
    [
        ("up", Eye.RIGHT, (), (0.0, -2.0)),
        ("up", Eye.LEFT, (), (0.0, -2.0)),
        ("up", Eye.RIGHT, ("up-in-both-eyes",), (0.0, 2.0)),
        ("up", Eye.RIGHT, ("full-amount-in-each-eye",), (0.0, -4.0)),
        ("down", Eye.RIGHT, (), (0.0, 2.0)),
        ("in", Eye.RIGHT, (), (2.0, 0.0)),
        ("in", Eye.LEFT, ("in-and-out",), (-2.0, 0.0)),
        ("out", Eye.LEFT, ("full-amount-in-each-eye",), (-4.0, 0.0)),
    ],
)
def test_four_split_between_the_eyes(base: str, eye: Eye, slips: tuple[str, ...], other: tuple[float, float]):
    """Common practice: 4 up before one eye is 2 up there and 2 down before the other; 4 in is 2 in twice."""
    case = SplitCase(eye=eye, base=base, amount_prism_d=4.0)
    assert answered("split", case, *slips) == pytest.approx(other)


@pytest.mark.parametrize(
    ("right", "left", "between", "slip", "wrong"),
    [
        ("down", "down", 0.0, "alike-upright-added", 3.0),
        ("up", "down", 3.0, "opposite-upright-subtracted", 0.0),
        ("in", "in", 3.0, "same-word-sideways-subtracted", 0.0),
        ("out", "in", 0.0, "in-and-out-added", 3.0),
    ],
)
def test_what_two_prisms_leave_between_the_eyes(
    right: str, left: str, between: float, slip: str, wrong: float
):
    """Common practice: sideways the same word adds, up and down opposite words add."""
    case = TwoPrismsCase(right_base=right, right_prism_d=1.5, left_base=left, left_prism_d=1.5)
    assert answered("between-the-eyes", case) == between
    assert answered("between-the-eyes", case, slip) == wrong
    assert answered("between-the-eyes", case, "one-eye-alone") == 1.5
    assert [one.name for one in MAKERS["between-the-eyes"].slips_in(case)] == [slip, "one-eye-alone"]


def test_prism_that_is_alike_is_asked_about_often():
    alike = sum(question.right == 0.0 for question in questions("between-the-eyes"))
    assert len(SEEDS) / 6 < alike < len(SEEDS) / 2


@pytest.mark.parametrize(
    ("sphere_d", "centres_mm", "pd_mm", "slips", "in_prism_d"),
    [
        # Job of an invented lab: -3.00, centres 3.6 mm wide on each side; +3.25 for near centred for far.
        (-3.0, 65.2, 58.0, (), 2.16),
        (3.25, 64.0, 60.0, (), -1.30),
        (3.25, 64.0, 60.0, ("base-of-the-other-sign",), 1.30),
        (3.25, 64.0, 60.0, ("one-eye-alone",), -0.65),
        (3.25, 64.0, 60.0, ("whole-difference-in-each-eye",), -2.60),
        (3.25, 64.0, 60.0, ("millimetres-for-centimetres",), -13.0),
        (-4.0, 58.0, 62.0, (), -1.60),
    ],
)
def test_centres_off_the_pupils(
    sphere_d: float, centres_mm: float, pd_mm: float, slips: tuple[str, ...], in_prism_d: float
):
    """Computed: power times the difference of both distances, in centimetres."""
    case = CentresCase(sphere_d=sphere_d, centres_mm=centres_mm, pd_mm=pd_mm)
    assert answered("centres-too-wide", case, *slips) == pytest.approx((in_prism_d, 0.0))


@pytest.mark.parametrize(
    ("right_d", "left_d", "slips", "amount"),
    [
        (-3.0, -6.0, (), 2.4),
        (-3.0, -6.0, ("same-bases-added",), 7.2),
        (-3.0, -6.0, ("one-lens-alone",), 4.8),
        (-3.0, -6.0, ("millimetres-for-centimetres",), 24.0),
        (2.0, -1.0, (), 2.4),
        (2.0, -1.0, ("opposite-bases-subtracted",), 0.8),
    ],
)
def test_imbalance_at_near(right_d: float, left_d: float, slips: tuple[str, ...], amount: float):
    """Bhootra, Ophthalmic Lenses, p. 47: -3.00 and -6.00, 8 mm below: 2.4 and 4.8 base down, 2.4 between."""
    case = NearCase(right_d=right_d, left_d=left_d, drop_mm=8.0)
    assert answered("near-imbalance", case, *slips) == pytest.approx(amount)


@pytest.mark.parametrize(
    ("right", "left", "key", "slip"),
    [
        (rx(-1.0), rx(-4.5), "left-up", "lens-with-less-minus"),
        (rx(4.0), rx(1.0), "left-up", "lens-with-less-minus"),
        (rx(-2.0, -2.5, 180.0), rx(-3.0, -3.0, 90.0), "right-up", "sphere-alone"),
    ],
)
def test_the_lens_with_slab_off(right: Prescription, left: Prescription, key: str, slip: str):
    """Common practice: base up, on the lens with the most minus or least plus along 90."""
    case = SlabCase(right=right, left=left, drop_mm=10.0)
    eye, other = ("left", "right") if key.startswith("left") else ("right", "left")
    assert answered("slab-off-eye", case) == key
    assert answered("slab-off-eye", case, slip) == f"{other}-up"
    assert answered("slab-off-eye", case, "base-down") == f"{eye}-down"
    assert answered("slab-off-eye", case, "reversed-slab-off") == f"{other}-down"
    assert slip in {one.name for one in MAKERS["slab-off-eye"].slips_in(case)}


def test_slab_off_is_ordered_by_the_prescriber_and_worth_it():
    for question in questions("slab-off-eye"):
        assert "The prescriber has answered our question" in question.prompt[0]
        assert question.mistakes[0].slips[0].name in ("lens-with-less-minus", "sphere-alone")


# --- Thickness ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "up_prism_d"),
    [
        ((), -0.50),
        (("thinning-forgotten",), 1.00),
        (("shared-between-the-eyes",), 0.25),
        (("whole-addition",), -1.25),
        (("thinning-base-up",), 2.50),
    ],
)
def test_thinning_on_top_of_a_prescribed_prism(slips: tuple[str, ...], up_prism_d: float):
    """Common practice: addition 2.25, thinning 1.50 base down in both lenses; 1.00 base up prescribed."""
    case = ThinningCase(eye=Eye.RIGHT, addition_d=2.25, base="up", amount_prism_d=1.0)
    assert answered("thinning-prism", case, *slips) == pytest.approx((0.0, up_prism_d), abs=PRINTED)


@pytest.mark.parametrize(
    ("index", "slips", "difference_mm"),
    [
        (1.498, (), 3.01),
        (1.523, (), 2.87),
        (1.498, ("index-not-less-one",), 1.00),
        (1.498, ("half-the-width",), 1.51),
        (1.498, ("hundred-left-out",), 301.2),
    ],
)
def test_the_two_edges_of_a_prism(index: float, slips: tuple[str, ...], difference_mm: float):
    """Computed: P d / (100 (n - 1)), 3 prism dioptres across 50 mm."""
    case = WedgeCase(amount_prism_d=3.0, across_mm=50.0, index=index)
    found = answered("thickness-difference", case, *slips)
    assert found == pytest.approx(difference_mm, abs=PRINTED if difference_mm < 100 else 0.05)


def test_both_eyes_and_both_signs_are_asked_about():
    for name in ("prism-at-a-point", "prism-at-a-point-toric", "resultant", "resolving", "base-in-degrees"):
        assert {question.kind.eye for question in questions(name)} == set(Eye)
    for name in ("prism-at-a-point", "prism-at-a-point-toric"):
        assert {question.given[0].value > 0.0 for question in questions(name)} == {True, False}
