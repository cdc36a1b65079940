"""The turns of a cut: every bite within its depth, the end on the outline, cribbing a cut of its own."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from reference_jobs import EASY, lens, superellipse

from lablib.bench.plan import LEAST_BITE_MM, Plan, UncutLens, crib_plan, job_plan
from lablib.errors import LabError


def plan(uncut: UncutLens, *, depth: float = 2.0, stock: float = 0.5, crib: float | None = None) -> Plan:
    return job_plan(uncut, depth_mm=depth, stock_mm=stock, finishing_mm=1.0, crib_mm=crib)


@settings(deadline=None)
@given(
    blank=st.floats(50.0, 80.0),
    depth=st.floats(0.25, 3.0),
    stock=st.floats(0.25, 1.0),
    crib=st.none() | st.floats(0.5, 12.0),
)
def test_turns_lead_from_the_rim_to_the_outline(blank: float, depth: float, stock: float, crib: float | None):
    uncut = lens(blank_mm=blank, index=1.6, centre_mm=1.5, power_d=-4.0)
    turns = plan(uncut, depth=depth, stock=stock, crib=crib)
    limit = np.where(turns.finishing, 1.0, depth)[:, None]
    assert turns.depth_mm.min() >= 0.0
    assert np.all(turns.depth_mm <= limit + 1e-9)
    assert turns.depth_mm.max(axis=1).min() > LEAST_BITE_MM
    assert turns.radius_mm[-1] == pytest.approx(uncut.outline_mm, abs=2 * LEAST_BITE_MM)
    rough = turns.radius_mm[1:][~turns.finishing]
    if len(rough):
        reached = np.minimum(turns.radius_mm[0], uncut.outline_mm + stock)
        assert rough[-1] == pytest.approx(reached, abs=LEAST_BITE_MM)
    assert list(turns.finishing) == sorted(turns.finishing)


def test_turns_as_in_the_slip_model():
    # rho_k = max(rho_finished + b, rho_(k-1) - a), then max(rho_finished, rho_(k-1) - a_f).
    uncut = lens()
    turns = plan(uncut)
    rim = uncut.rim_mm
    for radius, finishing in zip(turns.radius_mm[1:], turns.finishing, strict=True):
        rim = np.maximum(uncut.outline_mm + (0.0 if finishing else 0.5), rim - (1.0 if finishing else 2.0))
        assert radius == pytest.approx(rim, abs=1e-9)
    assert turns.finishing.sum() == 1


def test_a_blank_that_falls_short_of_the_stock_is_never_added_to():
    # Where the blank ends within the stock, the bare recursion would put a rim outside the blank.
    uncut = lens(blank_mm=53.0, away_mm=1.0)
    turns = plan(uncut)
    assert np.all(np.diff(turns.radius_mm, axis=0) <= 0.0)


def test_cribbing_ends_where_the_cut_begins():
    uncut = lens()
    crib = crib_plan(uncut, depth_mm=2.0, crib_mm=2.0)
    assert crib.radius_mm[0] == pytest.approx(uncut.rim_mm)
    assert crib.radius_mm[-1] == pytest.approx(uncut.outline_mm + 2.0)
    assert plan(uncut, crib=2.0).radius_mm[0] == pytest.approx(crib.radius_mm[-1])
    assert not crib.finishing.any()


def test_nothing_to_crib():
    assert crib_plan(lens(blank_mm=60.0), depth_mm=2.0, crib_mm=30.0) is None


def test_a_plus_lens_ends_at_its_knife_edge():
    # Plano-convex of radius 100 mm, 3 mm in the middle: the edge is nought where the sagitta is 3 mm.
    uncut = UncutLens(
        outline_mm=np.full(360, 20.0),
        blank_diameter_mm=70.0,
        blank_x_mm=0.0,
        blank_y_mm=0.0,
        thickness_mm=lambda x, y: 3.0 - 100.0 + np.sqrt(100.0**2 - x**2 - y**2),
        centre_thickness_mm=3.0,
    )
    knife = np.sqrt(100.0**2 - 97.0**2)
    assert uncut.rim_mm == pytest.approx(np.full(360, knife), abs=1e-6)


def test_a_lens_that_is_not_there_has_no_thickness():
    uncut = lens(**EASY)

    def torn(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        return np.where(np.hypot(x, y) > 30.0, np.nan, 2.0)

    short = UncutLens(
        outline_mm=uncut.outline_mm,
        blank_diameter_mm=70.0,
        blank_x_mm=0.0,
        blank_y_mm=0.0,
        thickness_mm=torn,
        centre_thickness_mm=2.0,
    )
    assert short.rim_mm == pytest.approx(np.full(720, 30.0), abs=1e-6)
    assert short.at_mm(np.full(720, 31.0)).max() == 0.0


@pytest.mark.parametrize(
    ("outline", "shape"),
    [
        (np.full(7, 20.0), r"\(7,\)"),
        (np.full((2, 10), 20.0), r"\(2, 10\)"),
        (np.full(720, np.nan), r"\(720,\)"),
        (np.full(720, np.inf), r"\(720,\)"),
        (-superellipse(), r"\(720,\)"),
    ],
)
def test_outlines_that_cannot_be_cut(outline: np.ndarray, shape: str):
    words = f"outline of shape {shape} cannot be cut: give 8 or more distances above 0 in one row"
    with pytest.raises(LabError, match=words):
        lens(outline=outline)


def test_the_outline_of_an_uncut_lens_cannot_be_written_into():
    with pytest.raises(ValueError, match="read-only"):
        lens().outline_mm[0] = 1.0


def test_a_blank_inside_the_outline_leaves_nothing_to_cut():
    with pytest.raises(LabError) as caught:
        plan(lens(blank_mm=32.0, away_mm=0.0))
    assert str(caught.value) == (
        "blank of 32 mm leaves nothing outside the outline to cut: give a larger blank or a smaller outline"
    )
