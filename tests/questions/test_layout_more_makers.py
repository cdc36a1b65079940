"""Further makers of layout questions: the trade's own examples, what is drawn, and whether pictures agree."""

import math
from collections import Counter
from functools import cache

import pytest
from made_questions import SEEDS, questions

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame
from lablib.optics.layout import blank_reaching_mm, least_blank, minimum_blank_mm
from lablib.optics.supply import OTHER_FRAME, SURFACED, Blanks
from lablib.questions import layout
from lablib.questions.layout.case import LayoutCase
from lablib.questions.layout.exact_blank import ExactCase
from lablib.questions.layout.height import HeightCase, MovedCase
from lablib.questions.layout.near import NearCase
from lablib.questions.layout.near_inset import InsetCase
from lablib.questions.layout.read_trace import TraceCase
from lablib.questions.layout.ruled import RuledCase
from lablib.questions.layout.which_blank import WhichCase
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question

MAKERS = {maker.name: maker for maker in layout.MAKERS}
FRAME = Frame(a_mm=50.0, b_mm=38.0, dbl_mm=18.0)


@cache
def cases(name: str) -> tuple[object, ...]:
    """Return the first case drawn for every seed."""
    return tuple(MAKERS[name].draw(Draws(seed)) for seed in SEEDS)


def given(question: Question) -> dict[str, float]:
    """Return the numbers given in a question by their symbols."""
    return {term.symbol: term.value for term in question.given}


# --- Height -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "answer_mm"),
    [
        (set(), 2.0),
        ({"whole-b-taken-off"}, -17.0),
        ({"counted-from-the-top"}, -2.0),
        ({"height-itself"}, 21.0),
        ({"whole-b-taken-off", "counted-from-the-top"}, 17.0),
    ],
)
def test_height_of_the_trades_example(slips: set[str], answer_mm: float):
    """Common practice: 21 mm on B 38; 2 up, and not 17 or 2 down."""
    case = HeightCase(frame=FRAME, eye=Eye.RIGHT, pd_mm=32.0, height_mm=21.0)
    assert MAKERS["centration-height"].answer(case, slips) == answer_mm


def test_centres_lie_above_the_midline_more_often_than_below_and_never_near_it():
    ups = [question.right for question in questions("centration-height")]
    assert all(abs(up) >= 1.5 for up in ups)
    assert 0.5 * len(ups) < sum(up > 0.0 for up in ups) < 0.75 * len(ups)


def test_the_height_is_drawn_in_its_own_box():
    for question in questions("centration-height"):
        values, numbers = question.drawing.values, given(question)
        assert values["half_b_mm"] == numbers["B"] / 2.0
        assert max(values["outline_y_mm"]) == pytest.approx(numbers["B"] / 2.0, abs=0.05)
        assert f"the {values['eye']} eye" in question.prompt[0]
        # What is drawn counts from the midline, as the answer does.
        assert values["measured_from"] == "midline"


def test_a_height_below_is_answered_with_minus():
    question = next(one for one in questions("centration-height") if one.right < 0.0)
    assert mark(question, f"{question.right} mm").state is State.RIGHT
    in_words = mark(question, f"{-question.right} mm")
    assert [slip.name for slip in in_words.slips] == ["counted-from-the-top"]


@pytest.mark.parametrize(
    ("raised_mm", "slips", "answer_mm"),
    [
        (2.0, set(), 19.0),
        (-2.0, set(), 23.0),
        (2.0, {"moved-the-wrong-way"}, 23.0),
        (2.0, {"height-kept"}, 21.0),
        (2.0, {"half-of-the-move"}, 20.0),
        (2.0, {"half-of-the-move", "moved-the-wrong-way"}, 22.0),
    ],
)
def test_a_height_taken_too_early(raised_mm: float, slips: set[str], answer_mm: float):
    case = MovedCase(eye=Eye.LEFT, height_mm=21.0, raised_mm=raised_mm)
    assert MAKERS["height-after-adjusting"].answer(case, slips) == answer_mm


def test_the_prompt_says_which_way_the_frame_went():
    for question in questions("height-after-adjusting"):
        way = "up" if given(question)["r"] > 0.0 else "down"
        assert f"has moved {way} on the face" in question.prompt[0]


# --- Near ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("is_near", "slips", "answer_mm"),
    [
        (True, set(), 30.0),
        (True, {"far-for-near"}, 32.0),
        (True, {"half-the-inset"}, 31.0),
        (True, {"whole-inset-for-each"}, 28.0),
        (True, {"both-eyes-for-one"}, 60.0),
        (True, {"far-for-near", "both-eyes-for-one"}, 64.0),
        (False, set(), 32.0),
        (False, {"near-for-far"}, 30.0),
        (False, {"both-eyes-for-one"}, 64.0),
    ],
)
def test_the_distance_of_the_trades_reading_pair(is_near: bool, slips: set[str], answer_mm: float):
    """Common practice: far 64, near 60; 30 each side for reading (job tickets with traps, 8), and not 32."""
    case = NearCase(frame=FRAME, eye=Eye.LEFT, far_mm=64.0, near_mm=60.0, is_near=is_near)
    assert MAKERS["near-distance"].answer(case, slips) == answer_mm


def test_pairs_for_reading_and_for_far_are_asked_with_the_slips_that_fit():
    told = Counter()
    for question in questions("near-distance"):
        names = {mistake.slips[0].name for mistake in question.mistakes}
        is_near = "to read with" in question.prompt[0]
        assert ("far-for-near" in names) == ("half-the-inset" in names) == is_near
        assert ("near-for-far" in names) == (not is_near)
        told[is_near] += 1
    assert min(told.values()) > 0.2 * len(SEEDS)


@pytest.mark.parametrize(("power_d", "inset_mm"), [(0.0, 2.02), (-6.0, 1.76), (6.0, 2.39)])
def test_the_inset_of_the_published_example(power_d: float, inset_mm: float):
    """32 mm, w 400, s 27 (Ellerbrock, from memory; answers computed)."""
    case = InsetCase(pd_mm=32.0, power_d=power_d, working_mm=400.0, rotation_mm=27.0)
    inset = MAKERS["near-inset"]
    assert inset.answer(case) == pytest.approx(inset_mm, abs=0.005)
    assert inset.answer(case, {"power-left-out"}) == pytest.approx(2.02, abs=0.005)
    assert inset.answer(case, {"both-eyes-inset"}) == pytest.approx(2.0 * inset.answer(case))
    assert inset.answer(case, {"distance-for-inset"}) == pytest.approx(32.0 - inset.answer(case))
    # Without the 1 in the sum: P / (w (1/s - F/1000)).
    bare = 32.0 / (400.0 * (1.0 / 27.0 - power_d / 1000.0))
    assert inset.answer(case, {"only-to-the-lens"}) == pytest.approx(bare)
    both = inset.answer(case, {"both-eyes-inset", "distance-for-inset"})
    assert both == pytest.approx(32.0 - 2.0 * inset.answer(case))


def test_power_of_the_other_sign_is_the_slip_of_the_other_lens():
    one, other = (
        InsetCase(pd_mm=32.0, power_d=power, working_mm=400.0, rotation_mm=27.0) for power in (-6.0, 6.0)
    )
    inset = MAKERS["near-inset"]
    assert inset.answer(one, {"power-turned-over"}) == inset.answer(other)


# --- Read off a ruler ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("asked", "slips", "answer_mm"),
    [
        ("A", set(), 50.0),
        ("A", {"bridge-taken-in"}, 68.0),
        ("A", {"whole-front"}, 118.0),
        ("DBL", set(), 18.0),
        ("DBL", {"centres-for-lenses"}, 68.0),
        ("DBL", {"half-the-bridge"}, 9.0),
        ("DBL", {"ruler-not-at-zero"}, 73.0),
        ("centres", set(), 68.0),
        ("centres", {"one-width-for-centres"}, 50.0),
        ("centres", {"lenses-for-centres"}, 18.0),
        ("centres", {"lenses-for-centres", "ruler-not-at-zero"}, 73.0),
    ],
)
@pytest.mark.parametrize("eye", EYES)
def test_boxing_numbers_off_a_ruler(asked: str, slips: set[str], answer_mm: float, eye: Eye):
    """A 50, DBL 18 over a ruler that shows 5 mm where the frame begins."""
    case = RuledCase(frame=FRAME, eye=eye, asked=asked, start_mm=5.0)
    assert MAKERS["read-the-box"].answer(case, slips) == answer_mm


def test_a_ruler_that_does_not_begin_at_the_lens():
    case = RuledCase(frame=FRAME, eye=Eye.RIGHT, asked="A", start_mm=5.0)
    assert MAKERS["read-the-box"].answer(case, {"ruler-not-at-zero"}) == 55.0
    assert MAKERS["read-the-box"].answer(
        RuledCase(frame=FRAME, eye=Eye.LEFT, asked="A", start_mm=5.0), {"ruler-not-at-zero"}
    ) == pytest.approx(5.0 + 50.0 + 18.0 + 50.0)


def test_what_the_ruler_shows_in_the_picture_is_what_the_solution_reads_off():
    for question in questions("read-the-box"):
        values = question.drawing.values
        near, far = (term.value for term in question.solution.workings[0].terms)
        assert values["from_mm"] - values["zero_mm"] == pytest.approx(near)
        assert values["from_mm"] + question.right - values["zero_mm"] == pytest.approx(far)
        # The ruler shows halves and wholes alone, and begins outside the frame.
        assert (2.0 * near).is_integer()
        assert (2.0 * far).is_integer()
        half_a = max(values["outline_x_mm"])
        assert -values["zero_mm"] > 2.0 * half_a + values["dbl_mm"] / 2.0
        if "its A" in question.prompt[-1]:
            assert 2.0 * half_a == pytest.approx(question.right, abs=0.1)


def test_every_boxing_number_is_asked_and_of_both_eyes():
    asked = Counter((case.asked, case.eye) for case in cases("read-the-box"))
    assert len(asked) == 6


@pytest.mark.parametrize(
    ("eye", "slips", "answer_mm"),
    [
        (Eye.RIGHT, set(), 30.0),
        (Eye.LEFT, set(), 33.0),
        (Eye.RIGHT, {"half-of-both-pupils"}, 31.5),
        (Eye.LEFT, {"half-of-both-pupils"}, 31.5),
        (Eye.RIGHT, {"pupil-to-pupil"}, 63.0),
        (Eye.RIGHT, {"the-other-pupil"}, 33.0),
        (Eye.RIGHT, {"from-the-boxed-centre"}, 4.0),
        (Eye.LEFT, {"from-the-boxed-centre"}, 1.0),
        # The right eye lies at the observer's left: 5 + 50 + 9 - 30.
        (Eye.RIGHT, {"reading-at-the-pupil"}, 34.0),
        (Eye.LEFT, {"reading-at-the-pupil"}, 97.0),
    ],
)
def test_distances_off_a_ruler(eye: Eye, slips: set[str], answer_mm: float):
    """30 and 33, 31.5 being half of both (job tickets with traps, 1)."""
    case = RuledCase(frame=FRAME, eye=eye, asked="far", start_mm=5.0, right_pd_mm=30.0, left_pd_mm=33.0)
    assert MAKERS["read-the-wearer"].answer(case, slips) == answer_mm


def test_pupils_are_drawn_where_the_distances_put_them():
    for question in questions("read-the-wearer"):
        values = question.drawing.values
        eye = "right" if "the right eye" in question.prompt[-1] else "left"
        assert values[f"{eye}_pupil_mm"] == question.right
        assert values["from_mm"] == 0.0
        # Facing the wearer the right eye is at the left.
        assert values["way"] == ("left" if eye == "right" else "right")
        assert abs(values["right_pupil_mm"] - values["left_pupil_mm"]) >= 2.5


# --- Blanks -------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "answer_mm"),
    [
        (set(), 2.0 * 25.0 + 2.0),
        ({"about-the-boxed-centre"}, 2.0 * math.hypot(17.0, 15.0) + 2.0),
        ({"decentration-taken-off"}, 2.0 * math.hypot(14.0, 15.0) + 2.0),
        ({"height-left-out"}, 2.0 * math.hypot(20.0, 12.0) + 2.0),
        ({"radius-for-diameter"}, 27.0),
        ({"rim-left-out"}, 50.0),
        ({"rim-on-both-sides"}, 54.0),
        ({"radius-for-diameter", "rim-left-out"}, 25.0),
    ],
)
def test_the_exact_least_blank(slips: set[str], answer_mm: float):
    """A triangle of 15, 20 and 25: 17 temporal and 3 in, 12 below and 3 up."""
    case = ExactCase(frame=FRAME, eye=Eye.RIGHT, in_mm=3.0, up_mm=3.0, temporal_mm=17.0, upward_mm=-12.0)
    assert MAKERS["least-blank-exact"].answer(case, slips) == pytest.approx(answer_mm)


def test_the_point_that_is_told_is_the_farthest_of_the_outline():
    for case in cases("least-blank-exact"):
        outline = case.frame.outline(case.eye)
        exact = minimum_blank_mm(outline, x_mm=case.eye.nasal_sign * case.in_mm, y_mm=case.up_mm)
        # Two numbers told to 0.1 mm.
        assert MAKERS["least-blank-exact"].answer(case) == pytest.approx(exact, abs=0.15)
        at = least_blank(outline, eye=case.eye, in_mm=case.in_mm, up_mm=case.up_mm).farthest_deg
        assert math.cos(math.radians(at)) * case.eye.nasal_sign < 0.0, "on the temporal side"
        assert (case.upward_mm > 0.0) == (math.sin(math.radians(at)) > 0.0)


def test_the_lens_is_drawn_with_its_optical_centre():
    for question, case in zip(questions("least-blank-exact"), cases("least-blank-exact"), strict=True):
        numbers, values = given(question), question.drawing.values
        sign = 1.0 if f"The {Eye.RIGHT} lens" in question.prompt[0] else -1.0
        assert values["centre_x_mm"] == sign * numbers["d_in"]
        assert values["centre_y_mm"] == numbers["d_up"]
        assert blank_reaching_mm(numbers["x_t"] + numbers["d_in"], numbers["y_t"] - numbers["d_up"]) == (
            pytest.approx(question.right)
        )
        assert case.in_mm >= 2.0


def on_order(effective_diameter_mm: float, pd_mm: float, *, surfacing_mm: float = 70.0) -> WhichCase:
    wearer = LayoutCase(
        frame=Frame(a_mm=52.0, b_mm=40.0, dbl_mm=18.0),
        eye=Eye.RIGHT,
        right_pd_mm=pd_mm,
        left_pd_mm=pd_mm,
        is_binocular=True,
    )
    blanks = Blanks(stock_mm=(60.0, 65.0), surfacing_mm=surfacing_mm)
    return WhichCase(layout=wearer, effective_diameter_mm=effective_diameter_mm, blanks=blanks)


@pytest.mark.parametrize(
    ("diameter_mm", "pd_mm", "answer", "slips"),
    [
        # ED 52, A + DBL 70: 4 mm in each is 62, 1 mm is 56.
        (52.0, 34.0, "stock-60", {"larger-than-needed", "surfaced-without-need", "frame-refused"}),
        (52.0, 31.0, "stock-65", {"a-size-too-small", "surfaced-without-need", "frame-refused"}),
        # ED 56, A + DBL 70, PD 60 is 68 with 2 mm (trade problems).
        (56.0, 30.0, SURFACED, {"a-size-too-small", "far-too-small", "frame-refused"}),
        (60.0, 30.0, OTHER_FRAME, {"a-size-too-small", "far-too-small", "surfaced-too-small"}),
    ],
)
def test_which_blank_is_taken(diameter_mm: float, pd_mm: float, answer: str, slips: set[str]):
    maker, case = MAKERS["which-blank"], on_order(diameter_mm, pd_mm)
    assert maker.answer(case) == answer
    assert {slip.name for slip in maker.slips_in(case)} == slips
    led_to = {maker.answer(case, {name}) for name in slips}
    assert led_to | {answer} == {option.key for option in maker.kind(case).options}


def test_every_decision_on_blanks_occurs_and_none_hangs_on_a_few_tenths():
    decided = Counter(case.decided.decision for case in cases("which-blank"))
    assert min(decided[key] for key in ("stock", "surfaced", "another-frame")) > 0.08 * len(SEEDS)
    taken = Counter(question.right for question in questions("which-blank"))
    assert len(taken) >= 4
    for case in cases("which-blank"):
        every = (*case.blanks.stock_mm, case.blanks.surfacing_mm)
        assert all(abs(case.least_mm - one) >= 0.4 for one in every)


# --- Traces and the work on a frame ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("asked", "eye", "slips", "answer_mm"),
    [
        ("A", Eye.RIGHT, set(), 50.0),
        ("A", Eye.LEFT, set(), 50.0),
        ("A", Eye.RIGHT, {"tenths-for-hundredths"}, 500.0),
        # The origin lies 1.2 mm to the observer's right: 23.8 and 26.2.
        ("A", Eye.RIGHT, {"one-radius-doubled"}, 47.6),
        ("A", Eye.RIGHT, {"one-radius-alone"}, 23.8),
        ("nasal", Eye.RIGHT, set(), 23.8),
        ("nasal", Eye.LEFT, set(), 26.2),
        ("temporal", Eye.RIGHT, set(), 26.2),
        ("temporal", Eye.LEFT, set(), 23.8),
        ("nasal", Eye.LEFT, {"nose-and-temple-exchanged"}, 23.8),
        ("B", Eye.RIGHT, set(), 38.0),
        ("B", Eye.RIGHT, {"one-radius-alone"}, 17.8),
    ],
)
def test_what_a_trace_says(asked: str, eye: Eye, slips: set[str], answer_mm: float):
    """50 x 38, an ellipse but for its corners, traced 1.2 mm off the boxed centre."""
    case = TraceCase(frame=FRAME, eye=eye, asked=asked, aside_mm=1.2)
    assert MAKERS["read-a-trace"].answer(case, slips) == pytest.approx(answer_mm, abs=0.001)


def test_widths_and_heights_of_traces_are_those_of_the_frame():
    for case in cases("read-a-trace"):
        if case.asked in ("A", "B"):
            size = case.frame.a_mm if case.asked == "A" else case.frame.b_mm
            assert MAKERS["read-a-trace"].answer(case) == pytest.approx(size, abs=0.011)


def test_the_radii_of_a_trace_are_given_in_their_order():
    for question in questions("read-a-trace"):
        assert list(given(question)) == [f"R_{place}" for place in range(1, 9)]
        meanings = [term.meaning for term in question.given]
        assert meanings[0].startswith("radius at 0 degrees, to the observer's right")
        assert meanings[2].startswith("radius at 90 degrees, up")


def test_the_work_on_a_frame_has_one_order():
    for question in questions("frame-work-order"):
        places = {key: place for place, key in enumerate(question.right)}
        assert places["damage"] < places["adjust"] < places["height"] < places["trace"]
        shown = [option.key for option in question.kind.options]
        assert sorted(shown) == sorted(question.right)
        assert tuple(shown) != question.right
        assert 5 <= len(shown) <= 6


def test_a_frame_adjusted_before_its_damage_is_noted_is_named():
    question = questions("frame-work-order")[0]
    order = [key for key in question.right if key != "adjust"]
    order.insert(order.index("damage"), "adjust")
    assert "adjusts-before-noting" in {slip.name for slip in mark(question, order).slips}
