"""Lenses for near and for the middle distance, and their workings."""

import random

import pytest
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.near_power import intermediate_lens, near_lens
from lablib.optics.near_workings import intermediate_lens_working, near_lens_working
from lablib.optics.practice import usual
from lablib.optics.prescription import Prescription


def rx(
    sphere: float, cylinder: float = 0.0, axis: float | None = None, addition: float = 0.0
) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis, addition_d=addition)


# Common practice: +1.00 -0.50 x 090 add 2.25 is +3.25 -0.50 x 090 for near.
def test_the_addition_goes_to_the_sphere_alone():
    assert near_lens(rx(1, -0.5, 90, 2.25)) == rx(3.25, -0.5, 90)
    assert near_lens(rx(0.5, 0.5, 180, 2.25)) == rx(3.25, -0.5, 90).transposed()
    assert near_lens(rx(-2.25, addition=2.25)) == rx(0)


def test_the_middle_distance_takes_half_unless_told():
    lens = rx(1, -0.5, 90, 2.0)
    assert usual("intermediate_share") == 0.5
    assert intermediate_lens(lens) == rx(2, -0.5, 90)
    assert intermediate_lens(lens, share=0.6) == rx(2.2, -0.5, 90)
    assert intermediate_lens(lens, share=1) == near_lens(lens)
    assert intermediate_lens(lens, share=0) == rx(1, -0.5, 90)


def test_words_for_a_lens_without_addition():
    for make in (near_lens, intermediate_lens, near_lens_working, intermediate_lens_working):
        with pytest.raises(LabError) as caught:
            make(rx(1, -0.5, 90))
        assert str(caught.value) == (
            "prescription +1.00 -0.50 x 090 has no addition: a lens for near is made from distance power and "
            "addition; ask for the addition, or for the power for near"
        )


def test_words_for_a_share_and_a_sum_out_of_range():
    with pytest.raises(LabError, match=r"^share of the addition 1\.5 is out of range: give from 0 to 1$"):
        intermediate_lens(rx(1, addition=2), share=1.5)
    with pytest.raises(LabError, match="share of the addition 'half' is not a number: give a number"):
        intermediate_lens(rx(1, addition=2), share="half")
    with pytest.raises(LabError, match="sphere 41 is out of range"):
        near_lens(rx(39, addition=2))


def test_workings():
    for seed in range(200):
        draw = random.Random(seed)
        lens = rx(
            draw.randrange(-48, 49) / 4,
            draw.randrange(-24, 25) / 4,
            draw.randrange(1, 181),
            draw.randrange(3, 15) / 4,
        )
        share = draw.choice([None, 0.4, 0.6])
        near, middle = near_lens_working(lens), intermediate_lens_working(lens, share=share)
        assert_worked([near])
        assert_worked([middle])
        assert near.value == near_lens(lens).sphere_d
        assert middle.value == intermediate_lens(lens, share=share).sphere_d


def test_what_a_learner_reads():
    lens = rx(1, -0.5, 90, 2.25)
    assert (near_lens_working(lens).substituted, near_lens_working(lens).result) == ("1.00 + 2.25", "3.25 D")
    assert intermediate_lens_working(lens).lines()[2:4] == ["      = 1.00 + 0.50 * 2.25", "      = 2.125 D"]
