"""Makers of multifocal questions: the trade's own examples to the printed digit, and what is drawn."""

import pytest
from made_questions import answered, questions

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.multifocal_pair import TwoHeights
from lablib.optics.progressive import ProgressiveDesign
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.optics.segment import segment
from lablib.optics.segment_blank import CutOut, SegmentBlank
from lablib.optics.segment_layout import SegmentLayout
from lablib.questions import multifocals
from lablib.questions.multifocals.addition_side import SideCase
from lablib.questions.multifocals.bifocal_pair import BifocalPair
from lablib.questions.multifocals.blank import BlankCase
from lablib.questions.multifocals.case import FramedEye
from lablib.questions.multifocals.cross import CrossCase
from lablib.questions.multifocals.jump import JumpCase
from lablib.questions.multifocals.remake import traits
from lablib.questions.multifocals.segment_top import TopCase
from lablib.questions.multifocals.total_inset import InsetCase
from lablib.questions.multifocals.unequal_heights import HeightsCase

MAKERS = {maker.name: maker for maker in multifocals.MAKERS}


def framed(a: float, b: float, dbl: float, eye: Eye = Eye.RIGHT) -> FramedEye:
    return FramedEye(frame=Frame(a_mm=a, b_mm=b, dbl_mm=dbl), eye=eye)


# --- Segments, examples of common practice ------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "up"),
    [((), -1.0), (("b-for-half-b",), -20.0), (("above-for-below",), 1.0)],
)
def test_a_top_18_high_in_a_frame_38_high(slips: tuple[str, ...], up: float):
    case = TopCase(place=framed(54, 38, 18), segment_height_mm=18.0, centre_height_mm=21.0)
    assert answered("segment-top", case, *slips) == up
    assert answered("segment-top", case, "height-of-the-distance-centre") == 2.0


@pytest.mark.parametrize(
    ("slips", "inset"),
    [
        ((), 6.0),
        (("far-distance-for-near",), 4.0),
        (("segment-inset-alone",), 2.0),
        (("total-of-both-eyes",), 12.0),
        (("segment-inset-alone", "total-of-both-eyes"), 4.0),
    ],
)
def test_a_54_dbl_18_far_32_near_30(slips: tuple[str, ...], inset: float):
    case = InsetCase(
        place=framed(54, 38, 18), right_far_mm=32.0, left_far_mm=32.0, right_near_mm=30.0, left_near_mm=30.0
    )
    assert answered("total-inset", case, *slips) == inset


@pytest.mark.parametrize(
    ("slips", "jump"),
    [
        ((), 1.125),
        (("depth-for-centre",), 4.275),
        (("millimetres-for-centimetres",), 11.25),
        (("distance-power-for-addition",), 1.0),
        (("near-power-for-addition",), 0.125),
        (("depth-for-centre", "millimetres-for-centimetres"), 42.75),
    ],
)
def test_a_jump_of_a_flat_top_28_with_add_2_25(slips: tuple[str, ...], jump: float):
    case = JumpCase(segment=segment("flat-top-28"), sphere_d=-2.0, addition_d=2.25)
    assert answered("image-jump", case, *slips) == pytest.approx(jump)


@pytest.mark.parametrize(
    ("slips", "up"),
    [
        ((), 4.0),
        (("own-drop-left-out",), -1.0),
        (("drop-taken-off",), -6.0),
        (("blank-centre-at-the-boxed-centre",), 0.0),
        (("b-for-half-b",), -15.0),
    ],
)
def test_the_centre_of_a_blank_above_its_segment(slips: tuple[str, ...], up: float):
    place = framed(54, 38, 18)
    layout = SegmentLayout(
        frame=place.frame,
        eye=place.eye,
        segment=segment("flat-top-28"),
        far_pd_mm=32.0,
        near_pd_mm=30.0,
        segment_height_mm=18.0,
    )
    blank = SegmentBlank(diameter_mm=70.0, inset_mm=3.0, drop_mm=5.0)
    case = BlankCase(cut_out=CutOut(layout=layout, blank=blank))
    assert answered("segment-blank-centre", case, *slips) == up


@pytest.mark.parametrize(("right", "left", "decision"), [(18.0, 16.0, "hold"), (18.0, 17.0, "make")])
def test_heights_are_asked_about_beyond_a_millimetre(right: float, left: float, decision: str):
    case = HeightsCase(frame=framed(54, 38, 18).frame, heights=TwoHeights(right_mm=right, left_mm=left))
    assert answered("unequal-heights", case) == decision


# --- Imbalance at near: R -1.00, L -4.50, 10 below, top 3 below, common practice ---------------------

TICKET_10 = BifocalPair(right_d=-1.0, left_d=-4.5, addition_d=2.25, top_mm=3.0, reading_mm=7.0)


@pytest.mark.parametrize(
    ("slips", "amount"),
    [
        ((), 3.5),
        (("measured-from-the-top",), 2.45),
        (("top-for-reading-level",), 1.05),
        (("bases-added",), 5.5),
        (("millimetres-for-centimetres",), 35.0),
    ],
)
def test_the_imbalance_counts_from_the_distance_centres(slips: tuple[str, ...], amount: float):
    assert answered("near-imbalance-bifocal", TICKET_10, *slips) == pytest.approx(amount)


def test_a_large_imbalance_is_asked_about_and_slab_off_is_never_our_idea():
    maker = MAKERS["near-imbalance-decision"]
    assert maker.answer(TICKET_10) == "ask"
    options = {option.key: option.words for option in maker.kind(TICKET_10).options}
    assert options[maker.answer(TICKET_10, {"slab-off-invented"})].endswith("on the left lens.")
    assert options[maker.answer(TICKET_10, {"slab-off-on-the-wrong-lens"})].endswith("on the right lens.")


def test_half_of_the_decisions_are_to_ask():
    rights = [question.right for question in questions("near-imbalance-decision")]
    assert 0.35 < rights.count("ask") / len(rights) < 0.65
    names = {
        mistake.slips[0].name for one in questions("near-imbalance-decision") for mistake in one.mistakes
    }
    assert {"measured-from-the-top", "imbalance-missed", "asks-without-need"} <= names


# --- Progressives ---------------------------------------------------------------------------------------
# Brooks, Essentials of Ophthalmic Lens Finishing, 2nd ed., p. 400: A 49 B 34 DBL 21, 31.5 and 30.5, cross 20
# and 21, engraved circles 4 mm below the cross.

DESIGN = ProgressiveDesign()


def progressive(eye: Eye, pd: float, height: float) -> ProgressiveLayout:
    frame = Frame(a_mm=49.0, b_mm=34.0, dbl_mm=21.0)
    return ProgressiveLayout(frame=frame, eye=eye, design=DESIGN, monocular_pd_mm=pd, height_mm=height)


RIGHT, LEFT = progressive(Eye.RIGHT, 31.5, 20.0), progressive(Eye.LEFT, 30.5, 21.0)


@pytest.mark.parametrize(
    ("slips", "right", "left"),
    [
        ((), -1.0, 0.0),
        (("engravings-where-the-cross-belongs",), 3.0, 4.0),
        (("engravings-above-the-cross",), 7.0, 8.0),
        (("near-circle-for-engravings",), -11.0, -10.0),
        (("b-for-half-b",), -18.0, -17.0),
    ],
)
def test_engraved_circles_lie_below_the_cross(slips: tuple[str, ...], right: float, left: float):
    assert answered("engraving-level", RIGHT, *slips) == right
    assert answered("engraving-level", LEFT, *slips) == left


@pytest.mark.parametrize(
    ("slips", "right", "left"),
    [
        ((), 3.5, 4.5),
        (("half-of-both",), 4.0, 4.0),
        (("eyes-exchanged",), 4.5, 3.5),
        (("near-inset-added",), 6.0, 7.0),
        (("bridge-left-out",), -7.0, -6.0),
    ],
)
def test_each_cross_stands_at_its_own_distance(slips: tuple[str, ...], right: float, left: float):
    assert answered("cross-inset", CrossCase(layout=RIGHT, other_pd_mm=30.5), *slips) == right
    assert answered("cross-inset", CrossCase(layout=LEFT, other_pd_mm=31.5), *slips) == left


@pytest.mark.parametrize(
    ("slips", "height"),
    [
        ((), 20.0),
        (("cross-on-the-engravings",), 16.0),
        (("cross-below-the-engravings",), 12.0),
        (("distance-circle-for-cross",), 24.0),
        (("near-circle-for-cross",), 6.0),
    ],
)
def test_a_cross_is_put_back_above_the_engravings(slips: tuple[str, ...], height: float):
    assert answered("re-mark-cross", RIGHT, *slips) == pytest.approx(height)


def test_engravings_tell_distance_and_height():
    assert answered("made-to-distance", RIGHT) == 31.5
    assert answered("made-to-distance", RIGHT, "nasal-engraving-for-the-middle") == 14.5
    assert answered("made-to-distance", RIGHT, "decentration-for-the-distance") == 3.5
    assert answered("made-to-distance", RIGHT, "added-to-the-frame") == 38.5
    assert answered("made-to-height", RIGHT) == 20.0
    assert answered("made-to-height", RIGHT, "engravings-for-the-cross") == 16.0
    assert answered("made-to-height", RIGHT, "cross-below-the-engravings") == 12.0
    assert answered("made-to-height", RIGHT, "from-the-midline") == 3.0
    assert answered("made-to-height", RIGHT, "whole-b") == 37.0


@pytest.mark.parametrize(("height", "decision"), [(15.0, "hold"), (18.0, "make"), (19.5, "hold")])
def test_a_progressive_that_does_not_fit_is_held(height: float, decision: str):
    """Ticket 9 of the lessons' own: 50 x 28, least fitting height 18."""
    frame = Frame(a_mm=50.0, b_mm=28.0, dbl_mm=18.0)
    layout = ProgressiveLayout(
        frame=frame, eye=Eye.LEFT, design=DESIGN, monocular_pd_mm=32.0, height_mm=height
    )
    assert answered("fitting-height", layout) == decision


def test_fitting_heights_are_good_low_and_high():
    found = {mistake.slips[0].name for one in questions("fitting-height") for mistake in one.mistakes}
    assert {"holds-a-good-order", "cuts-the-near-part-off", "cuts-the-far-part-off"} <= found


# --- What is drawn ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", list(MAKERS))
def test_a_drawing_holds_no_answer_and_shows_both_eyes_in_turn(name: str):
    drawings = [one.drawing for one in questions(name) if one.drawing is not None]
    if drawings:
        assert {drawing.values["eye"] for drawing in drawings} == {"right", "left"}
        assert {drawing.name for drawing in drawings} <= {"pair", "level"}


def test_the_engravings_of_a_re_marking_are_inside_the_picture():
    for question in questions("re-mark-cross"):
        nasal, temporal = question.drawing.values["engraving_x_mm"]
        assert abs(nasal - temporal) == 34.0
        assert abs(question.drawing.values["engraving_y_mm"]) < question.drawing.values["half_b_mm"]


# --- One lens of a pair remade --------------------------------------------------------------------------


def test_a_remade_lens_is_made_to_the_ticket_and_alike_where_both_eyes_look_through_at_once():
    alike = {one.key for one in traits() if one.is_alike}
    assert alike == {"design", "thinning", "material", "coat", "level"}
    for question in questions("remake-one"):
        offered = {option.key for option in question.kind.options}
        assert question.right == offered & alike
        assert 2 <= len(question.right) <= 3


# --- The addition on the focimeter ------------------------------------------------------------------------


def test_an_addition_on_the_front_is_the_difference_of_the_front_readings():
    """The published thick lens, +10.00 -4.00 t 6 n 1.523: back vertex 6.41, front vertex 6.06."""
    case = SideCase(front_d=10.0, back_d=-4.0, thickness_mm=6.0, index=1.523, addition_d=2.0)
    front_near, front_far, back_near, back_far = (reading.value for reading in case.readings)
    assert (front_far, back_far) == (6.06, 6.41)
    assert answered("addition-side", case) == pytest.approx(front_near - front_far) == pytest.approx(2.0)
    assert answered("addition-side", case, "read-from-the-back") == pytest.approx(2.19)
    assert answered("addition-side", case, "sides-mixed") == pytest.approx(1.65)
    assert answered("addition-side", case, "near-reading-for-addition") == front_near
    assert answered("addition-side", case, "near-reading-for-addition", "read-from-the-back") == back_near
