"""Reflections: Fresnel's values, and the sum over all throws back and forth."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from worked import assert_worked

from lablib.errors import LabError
from lablib.optics.material import materials
from lablib.optics.material_workings import surface_reflectance_working, transmittance_workings
from lablib.optics.reflection import reflectance, surface_reflectance, transmittance, transmittance_at_once

INDICES = st.floats(1.4, 1.95)


@pytest.mark.parametrize(("index", "percent"), [(1.5, 4.0), (1.523, 4.30), (1.6, 5.33), (1.74, 7.29)])
def test_one_surface(index: float, percent: float):
    """((n - 1) / (n + 1))^2, computed from the formula."""
    assert 100.0 * surface_reflectance(index) == pytest.approx(percent, abs=0.005)


@given(INDICES)
def test_two_surfaces_summed_throw_by_throw(index: float):
    share = surface_reflectance(index)
    # Light that goes through, twice as many reflections inside each time.
    summed = sum((1.0 - share) ** 2 * share ** (2 * throws) for throws in range(30))
    assert transmittance(index) == pytest.approx(summed, abs=1e-12)
    assert transmittance(index) == pytest.approx(2.0 * index / (index**2 + 1.0), abs=1e-12)
    assert reflectance(index) == pytest.approx(1.0 - summed, abs=1e-12)


def test_what_is_left_out_is_small():
    missing = [transmittance(one.index) - transmittance_at_once(one.index) for one in materials().values()]
    assert 0.00145 < min(missing) < max(missing) < 0.0045


@given(INDICES)
def test_reflections_are_worked(index: float):
    index = round(index, 3)
    assert_worked(transmittance_workings(index))
    assert_worked([surface_reflectance_working(index)])


@pytest.mark.parametrize("function", [surface_reflectance, transmittance, transmittance_at_once, reflectance])
def test_an_index_no_lens_has_is_refused(function: object):
    with pytest.raises(LabError, match=r"index 1.2 is out of range: give from 1.4 to 1.95"):
        function(1.2)
