"""Two rules for the front curve that disagree, and their workings."""

import random

import pytest
from worked import assert_worked

from lablib.optics.base_curve import bhootra_front_curve_d, front_curves, stronger_meridian_d
from lablib.optics.base_curve_workings import bhootra_front_curve_workings, front_curves_workings
from lablib.optics.practice import source_of
from lablib.optics.prescription import Prescription
from lablib.optics.thick_lens import vogel_front_curve_d


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# Vogel from memory, not read: +10.50 and +3.75. A. Bhootra, Ophthalmic Lenses, p. 25 (read): +8.50 and +3.50;
# the rule behind these two values is inferred.
@pytest.mark.parametrize(
    ("lens", "vogel", "bhootra"), [(rx(4, 1, 90), 10.50, 8.50), (rx(-4, -1, 90), 3.75, 3.50)]
)
def test_two_rules_side_by_side(lens: Prescription, vogel: float, bhootra: float):
    for form in (lens, lens.transposed()):
        curves = front_curves(form)
        assert curves.vogel_d == pytest.approx(vogel, abs=0.005)
        assert curves.bhootra_d == pytest.approx(bhootra, abs=0.005)
        assert curves.difference_d == pytest.approx(vogel - bhootra, abs=0.01)


def test_the_same_rules_as_elsewhere_and_both_forms_alike():
    for lens in (rx(2, -1.5, 20), rx(-6, 2.25, 5), rx(0.5)):
        assert front_curves(lens).vogel_d == vogel_front_curve_d(lens.spherical_equivalent_d)
        assert front_curves(lens).bhootra_d == bhootra_front_curve_d(lens)
        assert bhootra_front_curve_d(lens) == pytest.approx(bhootra_front_curve_d(lens.transposed()))


@pytest.mark.parametrize(
    ("lens", "power"),
    [
        (rx(4, 1, 90), 5.0),
        (rx(-4, -1, 90), -5.0),
        (rx(2, -3, 90), 2.0),
        (rx(-2, 4, 90), 2.0),
        (rx(2, -4, 90), 2.0),
        (rx(-3), -3.0),
        (rx(0), 0.0),
    ],
)
def test_the_stronger_meridian(lens: Prescription, power: float):
    assert stronger_meridian_d(lens) == power


def test_it_is_said_that_the_rule_is_inferred():
    assert source_of("bhootra_share") == (
        "inferred from two values printed in Bhootra, Ophthalmic Lenses, p. 25"
    )
    assert bhootra_front_curve_workings(rx(4, 1, 90))[-1].source == source_of("bhootra_share")


def test_workings():
    for seed in range(200):
        draw = random.Random(seed)
        cylinder = 0.0 if seed % 7 == 0 else draw.randrange(-24, 25) / 4
        lens = rx(draw.randrange(-48, 49) / 4, cylinder, draw.randrange(1, 181))
        alone, both = bhootra_front_curve_workings(lens), front_curves_workings(lens)
        assert_worked(alone)
        assert_worked(both)
        assert alone[-1].value == bhootra_front_curve_d(lens)
        assert both[-1].value == front_curves(lens).difference_d


def test_what_a_learner_reads():
    meridian, curve = bhootra_front_curve_workings(rx(-4, -1, 90))
    assert (meridian.substituted, meridian.result) == ("-4.00 + (-1.00)", "-5.000 D")
    assert (curve.substituted, curve.result) == ("6.00 + 0.50 * (-5.000)", "3.50 D")
    assert front_curves_workings(rx(-4, -1, 90))[-1].substituted == "3.75 - 3.50"
