"""Toric transposition, and its workings.

The examples are plain derivations, computed: nominal powers of thin surfaces add along each meridian.
"""

import random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_prescription_properties import tried, written
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.prescription import Prescription
from lablib.optics.toric_transposition import ToricForm, toric_form
from lablib.optics.toric_workings import toric_form_workings


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# +3.00 +1.00 x 090 on +6.00: along 90 the lens has +3.00, so the back has +3.00 - 6.00; along 180 it has
# +4.00 = +7.00 - 3.00.
def test_a_plus_base_curve_goes_on_the_front():
    form = toric_form(rx(3, 1, 90), base_curve_d=6.0)
    assert form == ToricForm(
        toric_side="front",
        base_d=6.0,
        base_meridian_deg=90.0,
        cross_d=7.0,
        cross_meridian_deg=180.0,
        sphere_curve_d=-3.0,
    )
    assert form.written() == "toric front: base +6.00 on 090, cross +7.00 on 180; back sphere -3.00"
    assert toric_form(rx(4, -1, 180), base_curve_d=6.0) == form


# +2.00 -1.50 x 020 on -6.00: along 20 the lens has +2.00, so the front has +8.00; along 110 it has
# +0.50 = +8.00 - 7.50.
def test_a_minus_base_curve_goes_on_the_back():
    form = toric_form(rx(2, -1.5, 20), base_curve_d=-6.0)
    assert (form.toric_side, form.sphere_curve_d) == ("back", 8.0)
    assert (form.base_d, form.base_meridian_deg) == (-6.0, 20.0)
    assert (form.cross_d, form.cross_meridian_deg) == (-7.5, 110.0)
    assert form.written() == "toric back: base -6.00 on 020, cross -7.50 on 110; front sphere +8.00"
    assert toric_form(rx(0.5, 1.5, 110), base_curve_d=-6.0) == form


@tried
@given(written(), st.sampled_from([-8.0, -6.0, -4.25, 2.0, 6.0, 8.5]))
def test_both_surfaces_together_are_the_lens(lens: Prescription, base: float):
    try:
        form = toric_form(lens, base_curve_d=base)
    except LabError:
        limits = abs(lens.sphere_d) + abs(lens.cylinder_d) + abs(base) > 25.0
        assert limits or not lens.cylinder_d
        return
    assert abs(form.base_d) < abs(form.cross_d)
    np.testing.assert_allclose(form.prescription().power_matrix(), lens.power_matrix(), atol=1e-7)
    assert form.prescription("plus").cylinder_d > 0
    surfaces = (
        Prescription(
            sphere_d=form.base_d,
            cylinder_d=form.cross_d - form.base_d,
            axis_deg=form.base_meridian_deg,
        ).power_matrix(),
        form.sphere_curve_d * np.eye(2),
    )
    np.testing.assert_allclose(sum(surfaces), lens.power_matrix(), atol=1e-7)


@pytest.mark.parametrize(
    ("lens", "base", "words"),
    [
        (
            rx(2, -1, 90),
            0.0,
            "base curve 0 D has no side: a toric surface is put on the front with a plus base curve, on the "
            "back with a minus one; give the base curve with its sign",
        ),
        (
            rx(2),
            6.0,
            "prescription +2.00 DS has no cylinder: a sphere needs no toric surface; give a cylinder",
        ),
        (rx(2, -1, 90), 26.0, "base curve 26 is out of range: give from -25 to 25 D"),
        (rx(2, 4, 90), 22.0, "cross curve 26 is out of range: give from -25 to 25 D"),
        (rx(-18, 1, 90), 9.0, "sphere curve -27 is out of range: give from -25 to 25 D"),
    ],
)
def test_words(lens: Prescription, base: float, words: str):
    for call in (toric_form, toric_form_workings):
        with pytest.raises(LabError) as caught:
            call(lens, base_curve_d=base)
        assert str(caught.value) == words


def test_words_for_a_form_that_is_none():
    with pytest.raises(LabError, match="form 'toric' is not a cylinder form"):
        toric_form(rx(2, -1, 90), base_curve_d=6.0).prescription("toric")


def test_workings():
    for seed in range(200):
        draw = random.Random(seed)
        cylinder = draw.choice([-1, 1]) * draw.randrange(1, 20) / 4
        lens = rx(draw.randrange(-40, 41) / 4, cylinder, draw.randrange(1, 181))
        base = draw.choice([-8.0, -6.0, -4.25, 2.0, 6.0, 8.5])
        form = toric_form(lens, base_curve_d=base)
        steps = toric_form_workings(lens, base_curve_d=base)
        assert_worked(steps)
        assert len(steps) == (6 if base * cylinder < 0 else 3)
        *_, sphere, cross, meridian = steps
        assert (sphere.value, cross.value, meridian.value) == (
            form.sphere_curve_d,
            form.cross_d,
            form.cross_meridian_deg,
        )


def test_what_a_learner_reads():
    steps = toric_form_workings(rx(2, -1.5, 20), base_curve_d=6.0)
    assert [step.substituted for step in steps] == [
        "2.00 + (-1.50)",
        "-(-1.50)",
        "20 + 90",
        "0.50 - 6.00",
        "6.00 + 1.50",
        "110 - 90",
    ]
    assert [step.what for step in steps[3:]] == [
        "sphere curve, on the back",
        "cross curve, on the front",
        "meridian of the cross curve",
    ]
