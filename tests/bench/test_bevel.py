"""Where a bevel lies, and whether its curve is the rim's: closed forms and limits."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lablib.bench.bevel import (
    BevelLine,
    Edge,
    at_share,
    bevel_wander_mm,
    curve_depth_mm,
    fitted_curve_d,
    following_front,
    following_rim,
    short_for_rim_mm,
)
from lablib.bench.bevel_choice import BEVELS, TriedBevel, choose_bevel, is_too_thin_for_a_bevel
from lablib.bench.edges import (
    edge_default,
    edge_number,
    edge_parameters,
    least_edge_mm,
    rim_give_mm,
)
from lablib.errors import LabError

ANGLE = np.arange(360) * math.tau / 360.0
# An ellipse 52 x 36.
ELLIPSE = 1.0 / np.hypot(np.cos(ANGLE) / 26.0, np.sin(ANGLE) / 18.0)
CURVES = st.integers(1, 36).map(lambda quarter: quarter / 4.0)


def edge(
    thickness_mm: float | np.ndarray, front_curve_d: float = 4.0, radius_mm: np.ndarray = ELLIPSE
) -> Edge:
    return Edge(
        radius_mm=radius_mm,
        thickness_mm=np.full_like(radius_mm, thickness_mm)
        if isinstance(thickness_mm, float)
        else thickness_mm,
        front_curve_d=front_curve_d,
    )


def minus_edge(front_curve_d: float = 4.0) -> Edge:
    """The edge of a minus lens: 1.5 mm in the middle, back of 10 D for index 1.530."""
    grown = 1.5 + curve_depth_mm(10.0, ELLIPSE) - curve_depth_mm(front_curve_d, ELLIPSE)
    return edge(grown, front_curve_d)


def test_base_4_lens_in_a_base_8_rim():
    # Curriculum: 26 mm out the bevel must wander 2.7 mm.
    wander = bevel_wander_mm(lens_curve_d=4.0, rim_curve_d=8.0, away_mm=26.0)
    assert wander == pytest.approx(2.7, abs=0.05)
    # By hand: 530 / 8 = 66.25 and 530 / 4 = 132.5 mm.
    rim, front = 66.25 - math.sqrt(66.25**2 - 26.0**2), 132.5 - math.sqrt(132.5**2 - 26.0**2)
    assert wander == pytest.approx(rim - front, abs=1e-9)


def test_between_two_places_only_the_difference_counts():
    whole, near = (bevel_wander_mm(lens_curve_d=4.0, rim_curve_d=8.0, away_mm=away) for away in (26.0, 18.0))
    both = bevel_wander_mm(lens_curve_d=4.0, rim_curve_d=8.0, away_mm=26.0, from_mm=18.0)
    assert both == pytest.approx(whole - near)
    assert both == pytest.approx(following_rim(edge(4.0), rim_curve_d=8.0).wander_mm, abs=1e-9)


@settings(max_examples=40, deadline=None)
@given(lens=CURVES, rim=CURVES)
def test_lens_and_rim_exchanged_turn_the_wander_round(lens: float, rim: float):
    there = bevel_wander_mm(lens_curve_d=lens, rim_curve_d=rim, away_mm=26.0, from_mm=18.0)
    assert there == pytest.approx(
        -bevel_wander_mm(lens_curve_d=rim, rim_curve_d=lens, away_mm=26.0, from_mm=18.0), abs=1e-9
    )
    assert (there > 0.0) == (rim > lens)


def test_a_curve_that_does_not_reach_is_refused():
    # 530 / 12 = 44.2 mm.
    with pytest.raises(LabError, match=r"curve 12 D has a radius of 44\.2 mm and does not reach 45\.0 mm"):
        curve_depth_mm(12.0, 45.0)
    with pytest.raises(LabError, match="curve 30 is out of range"):
        curve_depth_mm(30.0, 5.0)
    with pytest.raises(LabError, match="place it is counted from -1 is out of range"):
        bevel_wander_mm(lens_curve_d=4.0, rim_curve_d=8.0, away_mm=26.0, from_mm=-1.0)


@settings(max_examples=40, deadline=None)
@given(curve=st.floats(-9.0, 15.0), behind=st.floats(0.0, 5.0))
def test_the_fitted_curve_is_the_one_put_in(curve: float, behind: float):
    depth = curve_depth_mm(curve, ELLIPSE) + behind
    assert fitted_curve_d(ELLIPSE, depth) == pytest.approx(curve, abs=1e-3)


def test_a_circle_has_no_curve_of_its_own():
    with pytest.raises(LabError, match="a line round a circle lies on spheres of every curve"):
        fitted_curve_d(np.full(72, 20.0), np.full(72, 1.0))


def test_curves_of_the_bevels():
    thick = minus_edge()
    assert following_front(thick).curve_d == pytest.approx(4.0, abs=1e-4)
    assert following_rim(thick, rim_curve_d=7.0).curve_d == pytest.approx(7.0, abs=1e-4)
    assert at_share(thick, share=1.0).curve_d == pytest.approx(10.0, abs=1e-4)
    # Half way between front and back lies between their curves.
    assert at_share(thick, share=0.0).curve_d < at_share(thick, share=0.5).curve_d < 10.0


def test_what_of_the_rim_has_to_bend():
    even = edge(3.0)
    assert following_rim(even, rim_curve_d=8.0).departs_mm(8.0) == pytest.approx(0.0, abs=1e-9)
    wander = bevel_wander_mm(lens_curve_d=4.0, rim_curve_d=8.0, away_mm=26.0, from_mm=18.0)
    assert following_front(even).departs_mm(8.0) == pytest.approx(wander, abs=1e-9)
    assert following_front(even).wander_mm == 0.0
    assert following_front(even, behind_mm=1.0).from_front_mm.min() == 1.0


def test_room_beside_the_tip():
    assert at_share(edge(3.0), share=0.25).least_side_mm == pytest.approx(0.75)
    assert at_share(edge(3.0), share=0.75).least_side_mm == pytest.approx(0.75)
    assert at_share(edge(1.0), share=0.5).has_room
    assert not at_share(edge(0.99), share=0.5).has_room
    off = BevelLine(name="share", edge=edge(1.0), from_front_mm=np.full(360, 1.4))
    assert off.least_side_mm == pytest.approx(-0.4)


def test_the_edge_a_rim_of_another_curve_needs():
    wander = bevel_wander_mm(lens_curve_d=4.0, rim_curve_d=8.0, away_mm=26.0, from_mm=18.0)
    needed = wander + 2.0 * edge_default("bevel_side_mm")
    assert short_for_rim_mm(edge(2.0), rim_curve_d=8.0) == pytest.approx(needed - 2.0, abs=1e-9)
    assert short_for_rim_mm(edge(needed + 0.01), rim_curve_d=8.0) == 0.0
    assert not following_rim(edge(needed - 0.01), rim_curve_d=8.0).has_room
    assert following_rim(edge(needed + 0.01), rim_curve_d=8.0).has_room


def test_a_flatter_rim_asks_for_the_same_room():
    there = short_for_rim_mm(edge(1.0, 4.0), rim_curve_d=8.0)
    assert short_for_rim_mm(edge(1.0, 8.0), rim_curve_d=4.0) == pytest.approx(there, abs=1e-9)


def test_a_thick_edge_follows_the_front_where_the_rim_allows():
    choice = choose_bevel(minus_edge(), rim="metal", rim_curve_d=5.0)
    assert choice.chosen.line.name == "front"
    assert choice.words == "bevel following the front"


def test_a_thick_edge_follows_a_rim_of_another_curve():
    choice = choose_bevel(edge(3.0), rim="metal", rim_curve_d=8.0)
    assert choice.chosen.line.name == "rim"
    assert choice.words == (
        "bevel following the rim, because following the front would bend the rim by 1.5 mm where it gives "
        "0.5 mm"
    )


def test_an_edge_too_thin_for_the_rim_is_refused_with_every_reason():
    choice = choose_bevel(edge(1.6), rim="metal", rim_curve_d=8.0)
    assert choice.chosen is None
    assert choice.words.startswith("no bevel holds: in the middle of the edge would bend the rim by 1.5 mm")
    assert "following the rim would run 0.38 mm beside the edge" in choice.words
    assert len(choice.tried) == len(BEVELS)
    assert "leaves 0.42 mm beside its tip where 0.5 mm are needed" in (
        choose_bevel(edge(2.4), rim="metal", rim_curve_d=8.0).words
    )


def test_short_or_over_by_a_hair_is_told_as_short_or_over():
    hair = BevelLine(name="front", edge=edge(2.0), from_front_mm=np.full(360, 0.499))
    told = TriedBevel(line=hair, departs_mm=0.54, give_mm=0.5).words
    assert told == (
        "following the front leaves 0.49 mm beside its tip where 0.5 mm are needed and would bend the rim by "
        "0.54 mm where it gives 0.5 mm"
    )
    # What is clear of its limit is rounded as anything else.
    clear = BevelLine(name="rim", edge=edge(2.0), from_front_mm=np.full(360, 0.456))
    assert "leaves 0.46 mm beside its tip" in TriedBevel(line=clear, departs_mm=0.0, give_mm=0.5).words


def test_a_plastic_rim_gives_more():
    assert rim_give_mm("plastic") > rim_give_mm("metal")
    metal, plastic = (choose_bevel(edge(1.6), rim=rim, rim_curve_d=6.0) for rim in ("metal", "plastic"))
    assert metal.chosen is None
    assert plastic.chosen.line.name == "middle"


def test_a_thin_edge_has_its_bevel_in_the_middle():
    plus = edge(np.where(ELLIPSE > 22.0, 1.2, 1.9))
    assert choose_bevel(plus, rim="metal").chosen.line.name == "middle"
    assert choose_bevel(edge(1.0), rim="plastic").chosen.line.name == "middle"


def test_without_a_rim_curve_nothing_is_said_about_curves():
    choice = choose_bevel(edge(3.0), rim="metal")
    assert [one.line.name for one in choice.tried] == ["front", "forward", "middle"]
    assert all(one.departs_mm is None and one.follows for one in choice.tried)
    assert choice.chosen.words == "following the front holds"


def test_least_edges():
    # Common practice: a groove needs about 2 mm; care table and thin-place finding leave 1.0 mm for a rim.
    assert least_edge_mm("grooved") == pytest.approx(2.0)
    assert least_edge_mm("metal") == least_edge_mm("plastic") == pytest.approx(1.0)
    assert least_edge_mm("drilled") == 1.5
    assert is_too_thin_for_a_bevel(edge(0.95))
    assert not is_too_thin_for_a_bevel(edge(1.0 - 1e-9))


def test_what_is_no_edge_is_refused():
    with pytest.raises(LabError, match="give one row of each, of one length"):
        Edge(radius_mm=ELLIPSE, thickness_mm=np.ones(3), front_curve_d=4.0)
    with pytest.raises(LabError, match="edge of 0 mm: every thickness is above 0"):
        edge(0.0)
    with pytest.raises(LabError, match=r"share of the edge in front of the bevel 1\.2 is out of range"):
        at_share(edge(2.0), share=1.2)
    with pytest.raises(LabError, match="mounting 'glued' is not known"):
        least_edge_mm("glued")
    with pytest.raises(LabError, match="rim 'grooved' is not known"):
        choose_bevel(edge(2.0), rim="grooved")


def test_every_number_has_its_range_and_source():
    for name, row in edge_parameters().items():
        assert row.source, name
        assert row.low < row.high, name
        assert edge_number(name) == edge_default(name) == row.default
        with pytest.raises(LabError, match="out of range"):
            edge_number(name, row.high + 1.0)
