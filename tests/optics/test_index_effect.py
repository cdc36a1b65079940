"""What a higher index saves: factor, classes, rule against exact lens."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.form import edge_of_surfaces_mm
from lablib.optics.index_effect import curve_variation_factor, index_class, saving, saving_by_rule
from lablib.optics.material_workings import curve_variation_working, saving_working
from lablib.optics.thick_lens import back_surface_d


def test_curve_variation_factor_of_1_700():
    """M. Jalie: 0.523 / (n - 1); n 1.700 gives 0.75."""
    assert curve_variation_factor(1.7) == pytest.approx(0.75, abs=0.005)
    assert curve_variation_factor(1.523) == 1.0


def test_common_practice_examples():
    assert curve_variation_factor(1.66) == pytest.approx(0.792, abs=0.0005)
    assert 100.0 * saving_by_rule(1.498, 1.66) == pytest.approx(24.5, abs=0.05)


@pytest.mark.parametrize(
    ("index", "words"),
    [
        (1.48, "normal index"),
        (1.539, "normal index"),
        (1.54, "mid index"),
        (1.639, "mid index"),
        (1.64, "high index"),
        (1.728, "high index"),
        (1.74, "very high index"),
        (1.9, "very high index"),
    ],
)
def test_index_classes(index: float, words: str):
    """BS 7394-2: normal 1.48 to below 1.54, mid to below 1.64, high to below 1.74, very high from 1.74."""
    assert index_class(index) == words


def test_the_exact_lens_beside_the_rule():
    found = saving(-6.0, from_index=1.5, to_index=1.66, front_curve_d=4.0, least_mm=2.0, away_mm=28.0)
    exact = [
        edge_of_surfaces_mm(
            4.0, back_surface_d(-6.0, 4.0, 2.0, index), index=index, centre_thickness_mm=2.0, away_mm=28.0
        )
        for index in (1.5, 1.66)
    ]
    assert [found.low_mm, found.high_mm] == pytest.approx(exact, abs=1e-9)
    assert found.of_the_whole == pytest.approx(1.0 - exact[1] / exact[0])
    # The centre is not saved, so the whole gains less than the curves promise.
    assert found.of_the_whole < found.by_rule < found.of_the_difference


@given(st.sampled_from([-2.0, -1.0, 1.0, 2.0]), st.floats(1.55, 1.75))
def test_on_weak_lenses_the_rule_is_nearly_exact(power: float, index: float):
    found = saving(power, from_index=1.5, to_index=index, front_curve_d=1.0, least_mm=1.0, away_mm=15.0)
    assert found.of_the_difference == pytest.approx(found.by_rule, abs=0.01)


def test_a_plus_lens_is_saved_at_its_centre():
    found = saving(5.0, from_index=1.498, to_index=1.66, front_curve_d=8.0, least_mm=1.0, away_mm=28.0)
    assert found.low_mm == found.low.centre_thickness_mm > found.high_mm > 1.0
    assert float(found.high.thickness_mm(28.0, 0.0)) == pytest.approx(1.0, abs=1e-8)


@given(st.floats(1.45, 1.7), st.floats(1.45, 1.9))
def test_factor_and_saving_are_worked(one: float, other: float):
    one, other = round(one, 3), round(other, 3)
    assert_worked([curve_variation_working(one)])
    assert_worked([saving_working(one, other)])


def test_what_cannot_be_is_refused():
    with pytest.raises(LabError, match=r"power \+0.00 D is too weak for a saving: give at least 0.25 D"):
        saving(0.0, from_index=1.5, to_index=1.6, front_curve_d=4.0, least_mm=1.0, away_mm=20.0)
    with pytest.raises(LabError, match=r"index 1.45 lies below every class: the lowest begins at 1.48"):
        index_class(1.45)
    with pytest.raises(LabError, match="index 1 is out of range"):
        curve_variation_factor(1.0)
