"""Segments: their sizes and outline, where they lie in a frame, their jump, and the blanks they come on."""

from dataclasses import replace

import numpy as np
import pytest
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.clipping import area_mm2, circle, clipped
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at
from lablib.optics.segment import (
    STYLES,
    Segment,
    segment,
    segment_names,
    segment_source,
    usual_segment,
)
from lablib.optics.segment_blank import (
    CutOut,
    SegmentBlank,
    segment_blank,
    segment_blank_names,
    segment_blank_source,
)
from lablib.optics.segment_layout import SegmentLayout, reading_drop_mm, segment_inset_mm, total_inset_mm
from lablib.optics.segment_prism import (
    image_jump_prism_d,
    prism_through_segment,
    segment_prism_at,
    unlike_segments_prism_d,
)
from lablib.optics.segment_workings import (
    cut_out_workings,
    image_jump_working,
    prism_through_segment_workings,
    reading_drop_working,
    segment_layout_workings,
)

FRAME = Frame(a_mm=54.0, b_mm=38.0, dbl_mm=18.0)
LAYOUT = SegmentLayout(
    frame=FRAME,
    eye=Eye.RIGHT,
    segment=segment("flat-top-28"),
    far_pd_mm=32.0,
    near_pd_mm=30.0,
    segment_height_mm=18.0,
)


# --- Common practice: A 54 DBL 18, 32 and 30; top 18 on B 38 -------------------------------------------


def test_a_flat_top_is_laid_out():
    assert LAYOUT.segment_inset_mm == 2.0
    assert LAYOUT.total_inset_mm == 6.0
    assert LAYOUT.top_up_mm == -1.0
    assert LAYOUT.distance_centre_mm == (4.0, 0.0)
    assert LAYOUT.top_below_centre_mm == 1.0
    assert LAYOUT.segment_centre_mm == (6.0, -6.0)
    assert replace(LAYOUT, height_mm=21.0).top_below_centre_mm == 3.0


@pytest.mark.parametrize("height", [None, 21.0])
def test_the_layout_is_worked(height: float | None):
    layout = replace(LAYOUT, height_mm=height)
    steps = segment_layout_workings(layout)
    assert_worked(steps)
    assert {step.symbol: step.value for step in steps} == {
        "d_in": 4.0,
        **({"d_up": 2.0} if height else {}),
        "i_s": 2.0,
        "i_t": 6.0,
        "t_up": -1.0,
        "t": layout.top_below_centre_mm,
    }


def test_the_reading_level_counts_from_the_distance_centre():
    assert reading_drop_mm(top_below_centre_mm=3.0, below_top_mm=7.0) == 10.0
    step = reading_drop_working(top_below_centre_mm=3.0, below_top_mm=7.0)
    assert_worked([step])
    assert step.value == 10.0


# --- Image jump: Bhootra, Ophthalmic Lenses, p. 114; add 2.25 with the centre 5 below is common practice ----


@pytest.mark.parametrize(
    ("addition", "name", "jump"),
    [(2.0, "round-24", 2.4), (2.0, "flat-top-28", 1.0), (2.25, "flat-top-28", 1.13)],
)
def test_image_jump(addition: float, name: str, jump: float):
    below = segment(name).centre_below_top_mm
    assert image_jump_prism_d(addition, centre_below_top_mm=below) == pytest.approx(jump, abs=0.005 + 1e-9)
    assert_worked([image_jump_working(addition, centre_below_top_mm=below)])


def test_the_jump_is_what_begins_at_the_top():
    at_top = segment_prism_at(2.0, eye=Eye.LEFT, in_mm=0.0, up_mm=12.0)
    assert at_top == (0.0, pytest.approx(-image_jump_prism_d(2.0, centre_below_top_mm=12.0)))
    assert segment_prism_at(2.0, eye=Eye.LEFT, in_mm=0.0, up_mm=0.0) == (0.0, 0.0)


def test_lens_and_segment_together():
    rx = Prescription(sphere_d=-4.0, cylinder_d=-2.0, axis_deg=30.0, addition_d=2.0)
    places = {
        "point_mm": (6.0, -9.0),
        "distance_centre_mm": (4.0, 0.0),
        "segment_centre_mm": (6.0, -6.0),
    }
    main = prism_at(rx, eye=Eye.RIGHT, in_mm=2.0, up_mm=-9.0)
    total = prism_through_segment(rx, eye=Eye.RIGHT, **places)
    # 3 mm below the centre of +2.00 the base is 0.6 up.
    assert total == (pytest.approx(main[0]), pytest.approx(main[1] + 0.6))
    steps = prism_through_segment_workings(rx, eye=Eye.RIGHT, **places)
    assert_worked(steps)
    assert (steps[-2].value, steps[-1].value) == total


def test_unlike_segments_differ_by_their_jumps():
    # A round 22 right and a flat top left, add 2.50, tops level: the right image falls by 1.5 more.
    assert unlike_segments_prism_d(2.5, right_below_top_mm=11.0, left_below_top_mm=5.0) == -1.5
    assert unlike_segments_prism_d(2.5, right_below_top_mm=5.0, left_below_top_mm=5.0) == 0.0


# --- The outline ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", segment_names())
def test_an_outline_has_the_sizes_of_its_segment(name: str):
    one = segment(name)
    ring = one.ring_mm()
    assert np.ptp(ring.real) == pytest.approx(one.width_mm, abs=0.01)
    assert ring.imag.max() == pytest.approx(0.0, abs=0.01)
    assert ring.imag.min() == pytest.approx(-one.depth_mm, abs=0.01)
    # It turns the same way all round: anticlockwise and without a dent.
    along = np.roll(ring, -1) - ring
    assert (np.conj(along) * np.roll(along, -1)).imag.min() > -1e-9
    assert one.style in STYLES


def test_tops_are_straight_arched_or_part_of_the_disc():
    flat, arched = segment("flat-top-28"), segment("curved-top-28")
    top = flat.ring_mm()[flat.ring_mm().imag > -1e-9]
    assert top.real.max() == pytest.approx(flat.corner_mm) == pytest.approx(np.sqrt(14**2 - 5**2))
    corner = arched.ring_mm()[np.argmin(abs(arched.ring_mm() - complex(arched.corner_mm, -2.0)))]
    assert corner.imag == pytest.approx(-2.0, abs=1e-6)
    assert segment("round-22").corner_mm == 0.0


def test_a_segment_is_cut_by_the_lens():
    assert 0.9 < LAYOUT.share_left < 1.0
    # The foot of a flat top 28, 19 deep and 18 high, lies below the rim; at its middle the lens ends first.
    assert 17.0 < LAYOUT.depth_left_mm <= 18.0
    shallow = replace(LAYOUT, segment_height_mm=10.0)
    assert shallow.share_left < LAYOUT.share_left
    high = replace(LAYOUT, segment=segment("round-22"), segment_height_mm=25.0)
    assert high.share_left == pytest.approx(1.0)
    assert high.depth_left_mm == pytest.approx(22.0, abs=0.01)
    left = replace(LAYOUT, eye=Eye.LEFT)
    assert left.share_left == pytest.approx(LAYOUT.share_left)
    assert left.whole_ring_mm.real.mean() == pytest.approx(-LAYOUT.whole_ring_mm.real.mean())


def test_figures_that_meet_touch_or_miss():
    square = np.array([0, 2, 2 + 2j, 2j])
    assert area_mm2(clipped(square, square + 1 + 1j)) == pytest.approx(1.0)
    assert area_mm2(clipped(square, square + 5)) == 0.0
    assert area_mm2(clipped(square, circle(1 + 1j, 10.0))) == pytest.approx(4.0)
    assert area_mm2(circle(0j, 2.0, points=720)) == pytest.approx(np.pi, abs=1e-3)


# --- The blank --------------------------------------------------------------------------------------------


def test_the_least_blank_with_its_segment_in_place():
    """A sharp rectangle, so that the farthest corner can be worked out by hand."""
    frame = Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0, shape=OutlineShape.named("rectangle"))
    layout = replace(LAYOUT, frame=frame, near_pd_mm=30.0, segment_height_mm=17.0)
    blank = SegmentBlank(diameter_mm=70.0, inset_mm=3.0, drop_mm=5.0)
    cut = CutOut(layout=layout, blank=blank)
    # 4 in less 3, and the top 1 below the midline plus 5.
    assert cut.blank_centre_mm == (1.0, 4.0)
    outline = frame.outline(Eye.RIGHT)
    by_hand = 2.0 * np.hypot(outline.x_mm - 1.0, outline.y_mm - 4.0).max() + 2.0
    assert cut.least_blank_mm == pytest.approx(by_hand)
    assert cut.worst_words == "lower temporal"
    assert 180.0 < cut.worst_deg < 270.0
    assert cut.covers == (by_hand <= 70.0)
    assert cut.beyond_mm.max() == pytest.approx(cut.short_mm)
    assert_worked(cut_out_workings(cut))
    assert cut_out_workings(cut)[-1].value == cut.least_blank_mm
    mirrored = CutOut(layout=replace(layout, eye=Eye.LEFT), blank=blank)
    assert mirrored.least_blank_mm == pytest.approx(cut.least_blank_mm)
    assert mirrored.worst_words == cut.worst_words
    assert mirrored.worst_deg == pytest.approx(540.0 - cut.worst_deg)


def test_a_blank_is_just_enough_at_its_least_diameter():
    cut = CutOut(layout=LAYOUT, blank=segment_blank("70"))
    same = replace(cut.blank, diameter_mm=cut.least_blank_mm)
    assert replace(cut, blank=same).covers
    assert not replace(cut, blank=replace(same, diameter_mm=same.diameter_mm - 0.01)).covers


# --- Tables and words -------------------------------------------------------------------------------------


def test_tables_say_where_their_numbers_come_from():
    assert "from memory" in segment_source()
    assert "invented" in segment_blank_source()
    assert usual_segment("flat top", 28.0) is not None
    assert {usual_segment(one.style, one.width_mm) == one for one in map(segment, segment_names())} == {True}
    assert [segment_blank(name).diameter_mm for name in segment_blank_names()] == [70.0, 75.0]
    assert Segment(style="flat top", width_mm=30, depth_mm=20, centre_below_top_mm=5).words == "flat top 30"


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: segment("flat-top-29"),
            "segment 'flat-top-29' is not known: give one of flat-top-25, flat-top-28, flat-top-35, "
            "round-22, round-24, curved-top-25, curved-top-28",
        ),
        (
            lambda: usual_segment("flat top", 30.0),
            "flat top 30.0 mm wide is not in the table: give 25, 28, 35 mm, or its depth and its centre as "
            "the maker's chart has them",
        ),
        (
            lambda: Segment(style="flat top", width_mm=28.0, depth_mm=19.0, centre_below_top_mm=19.0),
            "segment centre 19 mm below the top lies outside a segment 19 mm deep: check both against the "
            "maker's chart",
        ),
        (
            lambda: Segment(style="flat top", width_mm=28.0, depth_mm=19.0, centre_below_top_mm=14.0),
            "flat top 28 mm wide: its centre lies less than 14 mm below the top, not 14: check the chart, or "
            "call it a round segment",
        ),
        (
            lambda: Segment(style="round segment", width_mm=22.0, depth_mm=20.0, centre_below_top_mm=11.0),
            "round segment 22 mm wide: its depth is its width and its centre lies 11 mm below the top: "
            "change the numbers or the style",
        ),
        (
            lambda: replace(segment("flat-top-28"), top_rise_mm=1.0),
            "top_rise_mm 1 of a flat top: give 0",
        ),
        (
            lambda: replace(segment("curved-top-28"), top_rise_mm=0.0),
            "top_rise_mm 0 of a curved top: give above 0 and up to the depth of its centre",
        ),
        (
            lambda: segment_inset_mm(far_pd_mm=30.0, near_pd_mm=32.0),
            "near distance 32 mm is larger than the far one, 30 mm: eyes turn inwards to read; check whether "
            "the two are exchanged",
        ),
        (
            lambda: total_inset_mm(FRAME, near_pd_mm=60.0),
            "monocular_pd_mm 60 is out of range: give from 18 to 45 mm",
        ),
        (
            lambda: replace(LAYOUT, segment_height_mm=40.0),
            "segment_height_mm 40 is out of range: give above 0 and up to 38 mm above the lowest tangent, "
            "inside B",
        ),
        (
            lambda: reading_drop_mm(top_below_centre_mm=3.0, below_top_mm=-1.0),
            "reading place below the top -1 is out of range: give from 0 to 30 mm",
        ),
        (
            lambda: image_jump_prism_d(-1.0, centre_below_top_mm=5.0),
            "addition -1 is out of range: give from 0 to 12 D",
        ),
        (
            lambda: segment_blank("80"),
            "segment blank '80' is not known: give one of 70, 75",
        ),
    ],
)
def test_words_for_what_cannot_be(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words
