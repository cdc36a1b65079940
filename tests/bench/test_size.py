"""Size by circumference: what a change of width does to it, the visible rim, touch-ups."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.bench.geometry import parallel_outline
from lablib.bench.size import (
    FITS,
    LARGE,
    SMALL,
    SizeFit,
    circumference_change_mm,
    visible_circumference_mm,
    width_change_mm,
)
from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, Outline, OutlineShape


def test_half_a_millimetre_round_is_0_16_of_width():
    # Curriculum, lesson 13: +0.5 mm round is 0.16 mm of width.
    assert width_change_mm(0.5) == pytest.approx(0.16, abs=0.005)
    assert circumference_change_mm(0.5) == pytest.approx(math.pi / 2.0)


@given(st.floats(-29.0, 29.0))
def test_there_and_back(change: float):
    assert circumference_change_mm(width_change_mm(change)) == pytest.approx(change)


@pytest.mark.parametrize("exponent", [2.0, 2.6, 4.0])
@pytest.mark.parametrize("off_mm", [-0.5, 0.25, 1.0])
def test_a_parallel_outline_is_longer_by_pi_for_each_millimetre_of_width(exponent: float, off_mm: float):
    # Steiner, against the package's own outlines and parallels.
    frame = Frame(a_mm=52.0, b_mm=36.0, dbl_mm=18.0, shape=OutlineShape.superellipse(exponent))
    outline = frame.outline(Eye.RIGHT)
    moved = Outline(radius_mm=parallel_outline(outline.radius_mm, off_mm))
    assert 2.0 * (moved.radius_mm[0] - outline.radius_mm[0]) == pytest.approx(2.0 * off_mm, abs=1e-3)
    grown = moved.perimeter_mm - outline.perimeter_mm
    assert grown == pytest.approx(circumference_change_mm(2.0 * off_mm), abs=0.01)


def test_the_visible_rim_is_shorter_than_the_bottom_of_its_groove():
    # A round groove of 48 mm across, 0.8 mm deep: 46.4 mm are seen.
    assert visible_circumference_mm(48.0 * math.pi, depth_mm=0.8) == pytest.approx(46.4 * math.pi)
    assert visible_circumference_mm(150.0) == pytest.approx(150.0 - 1.6 * math.pi)


def test_metal_on_size_and_plastic_slightly_full():
    metal, plastic = (SizeFit(lens_mm=150.3, groove_mm=150.0, rim=rim) for rim in ("metal", "plastic"))
    assert (metal.verdict, plastic.verdict) == (LARGE, FITS)
    assert plastic.over_mm == 0.0
    assert plastic.take_off_mm == 0.0
    assert SizeFit(lens_mm=150.0, groove_mm=150.0, rim="plastic").verdict == SMALL


def test_a_touch_up_takes_whole_steps_and_never_too_much():
    # 0.9 mm over is 0.286 mm of width: five steps of 0.05 mm.
    large = SizeFit(lens_mm=150.9, groove_mm=150.0, rim="metal")
    assert large.take_off_mm == pytest.approx(0.25)
    assert large.after(large.take_off_mm).verdict == FITS


@given(over=st.floats(0.21, 6.0), rim=st.sampled_from(["metal", "plastic"]))
def test_one_touch_up_of_a_machine_that_does_as_it_is_told_is_enough(over: float, rim: str):
    large = SizeFit(lens_mm=150.0, groove_mm=150.0 - over, rim=rim)
    if large.verdict == LARGE:
        after = large.after(large.take_off_mm)
        assert after.verdict == FITS
        assert after.over_mm >= -1e-5


def test_exactly_whole_steps_are_all_taken():
    large = SizeFit(lens_mm=150.0 + circumference_change_mm(0.3), groove_mm=150.0, rim="metal")
    assert large.take_off_mm == pytest.approx(0.3)


def test_too_small_is_too_small():
    small = SizeFit(lens_mm=149.5, groove_mm=150.0, rim="metal")
    assert small.verdict == SMALL
    with pytest.raises(LabError, match=r"149\.50 mm round is 0\.50 mm too small for this metal rim: nothing"):
        _ = small.take_off_mm


def test_numbers_no_lens_has_are_refused():
    with pytest.raises(LabError, match="circumference of the lens 20 is out of range"):
        SizeFit(lens_mm=20.0, groove_mm=150.0, rim="metal")
    with pytest.raises(LabError, match="rim 'drilled' is not known"):
        SizeFit(lens_mm=150.0, groove_mm=150.0, rim="drilled")
    with pytest.raises(LabError, match="width taken off -1 is out of range"):
        SizeFit(lens_mm=150.0, groove_mm=150.0, rim="metal").after(-1.0)
    with pytest.raises(LabError, match="change of width 40 is out of range"):
        circumference_change_mm(40.0)
    with pytest.raises(LabError, match="change of circumference 40 is out of range"):
        width_change_mm(40.0)
