"""Progressives: the chart, marks in a frame, what engravings tell, the pair, the addition as read."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.addition_reading import addition_read_d
from lablib.optics.addition_reading_workings import addition_read_workings
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame
from lablib.optics.layout_workings import decentration_workings
from lablib.optics.multifocal_pair import TwoHeights, remake_imbalance_prism_d
from lablib.optics.progressive import (
    DISTANCE_CIRCLE,
    FITTING_CROSS,
    MARKS,
    NASAL_ENGRAVING,
    NEAR_CIRCLE,
    PRISM_POINT,
    TEMPORAL_ENGRAVING,
    ProgressiveDesign,
    named,
    progressive,
    progressive_names,
    progressive_source,
)
from lablib.optics.progressive_layout import Engravings, ProgressiveLayout, engravings_of, made_to
from lablib.optics.progressive_workings import (
    engraving_level_working,
    made_to_workings,
    near_room_working,
    progressive_layout_workings,
)
from lablib.optics.thick_lens import back_vertex_power_d

GENERAL = progressive("general")
FIRST = Frame(a_mm=49.0, b_mm=34.0, dbl_mm=21.0)
SECOND = Frame(a_mm=44.0, b_mm=32.0, dbl_mm=20.0)
SHALLOW = Frame(a_mm=50.0, b_mm=28.0, dbl_mm=18.0)


def laid_out(
    frame: Frame, eye: Eye, pd: float, height: float, design: ProgressiveDesign = GENERAL
) -> ProgressiveLayout:
    return ProgressiveLayout(frame=frame, eye=eye, design=design, monocular_pd_mm=pd, height_mm=height)


# Brooks, Essentials of Ophthalmic Lens Finishing, 2nd ed., p. 400: engraved circles 4 mm below the cross.
@pytest.mark.parametrize(
    ("frame", "eye", "pd", "height", "cross", "circles"),
    [
        (FIRST, Eye.RIGHT, 31.5, 20.0, (3.5, 3.0), -1.0),
        (FIRST, Eye.LEFT, 30.5, 21.0, (4.5, 4.0), 0.0),
        (SECOND, Eye.RIGHT, 30.5, 19.0, (1.5, 3.0), -1.0),
        (SECOND, Eye.LEFT, 31.0, 19.0, (1.0, 3.0), -1.0),
    ],
)
def test_a_progressive_is_laid_out(
    frame: Frame, eye: Eye, pd: float, height: float, cross: tuple[float, float], circles: float
):
    layout = laid_out(frame, eye, pd, height)
    assert layout.cross_mm == cross
    for name, side in ((NASAL_ENGRAVING, 17.0), (TEMPORAL_ENGRAVING, -17.0)):
        mark = layout.mark(name)
        assert (mark.in_mm, mark.up_mm) == (cross[0] + side, circles)
    upright = decentration_workings(frame, monocular_pd_mm=pd, height_mm=height)[1]
    assert engraving_level_working(layout, upright).value == circles
    assert_worked(progressive_layout_workings(layout))


def test_marks_stand_where_the_chart_says():
    marks = {mark.name: mark for mark in GENERAL.marks()}
    assert tuple(marks) == MARKS
    assert (marks[FITTING_CROSS].in_mm, marks[FITTING_CROSS].up_mm) == (0.0, 0.0)
    assert marks[PRISM_POINT].up_mm == marks[NASAL_ENGRAVING].up_mm == -4.0
    assert marks[DISTANCE_CIRCLE].up_mm == 4.0
    assert (marks[NEAR_CIRCLE].in_mm, marks[NEAR_CIRCLE].up_mm) == (2.5, -14.0)
    # Bhootra, Ophthalmic Lenses, p. 136: two marks 34 mm apart.
    assert marks[NASAL_ENGRAVING].in_mm - marks[TEMPORAL_ENGRAVING].in_mm == 34.0
    from_engravings = named(GENERAL.marks_from_engravings(), FITTING_CROSS)
    assert (from_engravings.in_mm, from_engravings.up_mm) == (0.0, 4.0)
    assert marks[NEAR_CIRCLE].x_mm(Eye.RIGHT) == 2.5
    assert marks[NEAR_CIRCLE].x_mm(Eye.LEFT) == -2.5


def test_a_prism_point_may_lie_off_the_engravings():
    assert named(replace(GENERAL, prism_point_below_cross_mm=3.0).marks(), PRISM_POINT).up_mm == -3.0
    assert ProgressiveDesign(engraving_below_cross_mm=2.0).prism_point_below_cross_mm == 2.0


# Ticket 9 of the lessons' own: 50 x 28, heights 15, least fitting height 18.
def test_a_cross_below_the_least_fitting_height_costs_the_near_circle():
    short = laid_out(SHALLOW, Eye.RIGHT, 31.0, 15.0)
    assert short.height_short_mm == 3.0
    assert short.near_centre_room_mm == 1.0
    assert 0.5 < short.near_circle_left < 0.75
    high = laid_out(SHALLOW, Eye.RIGHT, 31.0, 18.0)
    assert (high.height_short_mm, high.room_above_short_mm) == (0.0, 0.0)
    # The circle touches the rim's lower corner.
    assert 0.99 < high.near_circle_left < 1.0
    assert laid_out(SHALLOW, Eye.RIGHT, 31.0, 19.5).room_above_short_mm == 1.5
    assert laid_out(SHALLOW, Eye.LEFT, 31.0, 15.0, progressive("short")).height_short_mm == 0.0
    step = near_room_working(short)
    assert_worked([step])
    assert step.value == 1.0


# --- What engravings tell -----------------------------------------------------------------------------------


@given(
    eye=st.sampled_from(EYES),
    pd=st.floats(27.0, 37.0),
    height=st.floats(12.0, 26.0),
    name=st.sampled_from(progressive_names()),
)
def test_engravings_tell_what_a_lens_was_made_to(eye: Eye, pd: float, height: float, name: str):
    layout = laid_out(FIRST, eye, pd, height, progressive(name))
    told = made_to(FIRST, eye=eye, design=layout.design, engravings=engravings_of(layout))
    assert (told.monocular_pd_mm, told.height_mm) == pytest.approx((pd, height))
    assert told.tilt_deg == 0.0
    for put_back, wanted in zip(engravings_of(layout).marks(layout.design), layout.marks, strict=True):
        assert (put_back.in_mm, put_back.up_mm) == pytest.approx((wanted.in_mm, wanted.up_mm), abs=1e-9)


@pytest.mark.parametrize(("eye", "sign"), [(Eye.RIGHT, 1.0), (Eye.LEFT, -1.0)])
def test_a_tilted_lens_is_re_marked_tilted(eye: Eye, sign: float):
    found = Engravings(nasal_mm=(20.5, -0.5), temporal_mm=(-13.5, -1.5))
    assert found.tilt_deg(eye) == pytest.approx(sign * 1.685, abs=0.001)
    marks = found.marks(GENERAL)
    cross = named(marks, FITTING_CROSS)
    # 4 mm at right angles to the line: as high as before to 0.01 mm, and 0.12 mm outwards.
    assert (cross.in_mm, cross.up_mm) == pytest.approx((3.5 - 0.118, 3.0 - 0.002), abs=0.001)
    told = made_to(FIRST, eye=eye, design=GENERAL, engravings=found)
    assert (told.monocular_pd_mm, told.height_mm) == pytest.approx((31.618, 19.998), abs=0.001)
    steps = made_to_workings(FIRST, eye=eye, design=GENERAL, engravings=found)
    assert_worked(steps)
    assert (steps[-2].value, steps[-1].value) == (told.monocular_pd_mm, told.height_mm)


def test_level_engravings_are_worked_without_an_angle():
    found = Engravings(nasal_mm=(20.5, -1.0), temporal_mm=(-13.5, -1.0))
    steps = made_to_workings(FIRST, eye=Eye.RIGHT, design=GENERAL, engravings=found)
    assert_worked(steps)
    assert [step.value for step in steps] == [3.5, -1.0, 31.5, 20.0]
    assert steps[-1].formula == "m_up + e + B / 2"


# --- The pair -----------------------------------------------------------------------------------------------


def test_unequal_heights_are_asked_beyond_a_millimetre():
    assert not TwoHeights(right_mm=18.0, left_mm=17.0).is_asked
    far_apart = TwoHeights(right_mm=16.0, left_mm=18.0)
    assert far_apart.is_asked
    assert far_apart.higher is Eye.LEFT
    assert TwoHeights(right_mm=18.0, left_mm=17.0).higher is Eye.RIGHT
    assert TwoHeights(right_mm=18.0, left_mm=18.0).higher is None


def test_a_remade_lens_without_the_thinning_prism_of_the_other():
    assert remake_imbalance_prism_d(kept_down_prism_d=1.33, new_down_prism_d=0.0) == pytest.approx(1.33)
    assert remake_imbalance_prism_d(kept_down_prism_d=1.0, new_down_prism_d=1.5) == pytest.approx(0.5)
    assert remake_imbalance_prism_d(kept_down_prism_d=1.33, new_down_prism_d=1.33) == 0.0


# --- The addition as it is read ---------------------------------------------------------------------

STRONG = {"front_d": 10.0, "back_d": -4.0, "thickness_mm": 6.0, "index": 1.523}


def test_an_addition_on_the_front_is_read_from_the_front():
    assert addition_read_d(2.0, **STRONG) == pytest.approx(2.0)
    from_back = addition_read_d(2.0, **STRONG, read_from="back")
    near = back_vertex_power_d(12.0, -4.0, 6.0, 1.523)
    # The published thick lens, +10.00 -4.00 t 6 n 1.523: back vertex power 6.4101.
    assert from_back == pytest.approx(near - 6.4101, abs=0.00005)
    assert from_back == pytest.approx(2.185, abs=0.001)
    assert addition_read_d(2.0, **STRONG, addition_on="back", read_from="back") == pytest.approx(2.0)
    weak = STRONG | {"front_d": 5.0, "back_d": -7.0, "thickness_mm": 2.0}
    assert addition_read_d(2.0, **weak, read_from="back") == pytest.approx(2.03, abs=0.01)


@pytest.mark.parametrize("side", ["front", "back"])
def test_the_reading_is_worked(side: str):
    steps = addition_read_workings(2.0, **STRONG, read_from=side)
    assert_worked(steps)
    assert steps[-1].value == addition_read_d(2.0, **STRONG, read_from=side)


# --- Words ------------------------------------------------------------------------------------------


def test_the_charts_say_that_they_are_invented():
    assert progressive_source().startswith("invented charts")
    assert all("invented" in progressive(name).words for name in progressive_names())


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: progressive("long"),
            "progressive design 'long' is not known: give one of general, short",
        ),
        (
            lambda: replace(GENERAL, near_circle_below_cross_mm=4.0),
            "near circle 4 mm below the cross is not below the engravings, 4 mm: check both against the "
            "maker's chart",
        ),
        (
            lambda: replace(GENERAL, least_fitting_height_mm=14.0),
            "near circle 14 mm below the cross lies outside a lens of the least fitting height, 14 mm: check "
            "the maker's chart",
        ),
        (
            lambda: replace(GENERAL, near_inset_mm=9.0),
            "near_inset_mm 9 is out of range: give from 0 to 6 mm",
        ),
        (
            lambda: replace(GENERAL, addition_on="middle"),
            "addition_on 'middle' is not known: give one of front, back",
        ),
        (
            lambda: named(GENERAL.marks(), "cross"),
            f"mark 'cross' is not known: give one of {', '.join(MARKS)}",
        ),
        (
            lambda: laid_out(FIRST, Eye.RIGHT, 31.5, 40.0),
            "height_mm 40 is out of range: give from 0 to 34 mm above the lowest tangent, inside B",
        ),
        (
            lambda: laid_out(FIRST, Eye.RIGHT, 31.5, None),
            "height_mm None is not a number: give a number in mm above the lowest tangent",
        ),
        (
            lambda: Engravings(nasal_mm=(-13.5, 0.0), temporal_mm=(20.5, 0.0)),
            "nasal engraving -13.5 mm in lies outwards of the temporal one, 20.5 mm in: the lens lies face "
            "down, or the eyes are exchanged; turn it front up",
        ),
        (
            lambda: Engravings(nasal_mm=(20.0, 0.0), temporal_mm=(-10.0, 0.0)).marks(GENERAL),
            "engravings 30.0 mm apart are not those of the chart, 34 mm: look for both again, front up "
            "against a dark background",
        ),
        (
            lambda: Engravings(nasal_mm=(20.0, "0"), temporal_mm=(-10.0, 0.0)),
            "nasal engraving, up '0' is not a number: give a number in mm",
        ),
        (
            lambda: TwoHeights(right_mm=18.0, left_mm=80.0),
            "height of the left eye 80 is out of range: give from 0 to 70 mm above the lowest tangent",
        ),
        (
            lambda: remake_imbalance_prism_d(kept_down_prism_d=-1.0, new_down_prism_d=0.0),
            "thinning prism -1 is out of range: give from 0 to 6 prism dioptres base down",
        ),
        (
            lambda: addition_read_d(2.0, **STRONG, read_from="side"),
            "read_from 'side' is not known: give one of front, back",
        ),
    ],
)
def test_words_for_what_cannot_be_in_a_progressive(make, words: str):
    with pytest.raises(LabError) as caught:
        make()
    assert str(caught.value) == words
