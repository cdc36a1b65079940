"""Axis limits at every band edge, and where the bands come from."""

import math

import pytest

from lablib.errors import LabError
from lablib.inspection.axis import axis_limit_deg, standard_name


@pytest.mark.parametrize(
    ("cylinder", "limit"),
    [
        # ANSI Z80.1-2015, axis table, restated in 18VAC80-30-120 (read). Upper limits belong to their band.
        (0.0, None),
        (0.11, None),
        (0.12, 14.0),
        (0.25, 14.0),
        (0.26, 7.0),
        (0.50, 7.0),
        (0.51, 5.0),
        (0.75, 5.0),
        (0.76, 3.0),
        (1.50, 3.0),
        (1.51, 2.0),
        (6.00, 2.0),
    ],
)
def test_axis_limit(cylinder: float, limit: float | None):
    assert axis_limit_deg(cylinder) == limit
    assert axis_limit_deg(-cylinder) == limit


def test_a_cylinder_on_a_band_edge_but_for_binary_arithmetic_stays_in_the_lower_band():
    assert axis_limit_deg(0.1 + 0.1 + 0.05 + 1e-12) == 14.0


@pytest.mark.parametrize(("cylinder", "degrees"), [(0.25, 13.89), (0.50, 6.89), (0.75, 4.59)])
def test_the_bands_come_from_012_d_of_left_over_cylinder(cylinder: float, degrees: float):
    # asin(0.12 / 2C): rule read in a trade-association paper on Z80.1-2005. The limit rounds it up.
    exact = math.degrees(math.asin(0.12 / (2 * cylinder)))
    assert exact == pytest.approx(degrees, abs=5e-3)
    assert axis_limit_deg(cylinder) == math.ceil(exact)


def test_what_is_not_a_cylinder_or_not_a_table():
    with pytest.raises(LabError, match="cylinder nan is not a finite number: give a number in D"):
        axis_limit_deg(math.nan)
    with pytest.raises(LabError, match=r"data table lablib\.inspection/none\.toml cannot be read"):
        axis_limit_deg(1.0, standard="none")


def test_the_edition_is_named():
    assert standard_name() == "ANSI Z80.1-2015"
