"""Makers of lens form: the trade's own examples, what is drawn, and whether the picture agrees."""

import math
import re
from collections import Counter
from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from made_questions import SEEDS, questions

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import blank_allowance_mm, minimum_blank_mm
from lablib.optics.lens import lens_for, lens_with_least_thickness
from lablib.optics.prescription import Prescription
from lablib.optics.solid import FinishedLens
from lablib.optics.thick_lens import back_surface_d
from lablib.questions import lens_form
from lablib.questions.lens_form.axis import AxisCase, edges_mm
from lablib.questions.lens_form.edge import EdgeCase
from lablib.questions.lens_form.place_lens import BLUNT, CORNERED
from lablib.questions.lens_form.plus import PlusCase
from lablib.questions.lens_form.surfaces import CapCase
from lablib.questions.lens_form.toric import FramedLens, meridian_ends
from lablib.study.draws import Draws
from lablib.study.marking import State, mark
from lablib.study.question import Question

MAKERS = {maker.name: maker for maker in lens_form.MAKERS}


@cache
def cases(name: str) -> tuple[object, ...]:
    """Return the first case drawn for every seed."""
    return tuple(MAKERS[name].draw(Draws(seed)) for seed in SEEDS)


def given(question: Question) -> dict[str, float]:
    """Return the numbers given in a question by their symbols."""
    return {term.symbol: term.value for term in question.given}


def test_both_eyes_are_asked_about():
    for name in ("temporal-edge", "stock-or-surfaced"):
        assert {case.eye for case in cases(name)} == set(Eye)
    assert {case.eye for case in cases("thickest-edge-place")} == set(Eye)
    assert {case.lens.eye for case in cases("thick-axis")} == set(Eye)


# --- Sagitta ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "depth_mm"),
    [(set(), 3.61), ({"diameter-for-half-diameter"}, 15.51), ({"short-formula"}, 3.54)],
)
def test_sagitta_of_the_lessons_example(slips: set[str], depth_mm: float):
    """Computed: radius 88.33 mm, chord 50 mm; s = r - sqrt(r2 - y2), short y2 / (2 r)."""
    case = CapCase(radius_mm=88.33, chord_mm=50.0)
    assert MAKERS["sagitta"].answer(case, slips) == pytest.approx(depth_mm, abs=5e-3)


def test_whoever_stops_at_the_root_has_the_rest_of_the_radius():
    """Computed: sqrt(88.33^2 - 25^2) = 84.72."""
    case = CapCase(radius_mm=88.33, chord_mm=50.0)
    assert MAKERS["sagitta"].answer(case, {"stopped-at-the-root"}) == pytest.approx(84.72, abs=5e-3)


def test_the_cap_drawn_is_the_one_given():
    for question in questions("sagitta"):
        assert dict(question.drawing.values) == {
            "radius_mm": given(question)["r"],
            "chord_mm": given(question)["c"],
        }


# --- The edge of a minus lens ---------------------------------------------------------------------------


def decentred_minus(*, eye: Eye = Eye.RIGHT, is_temporal: bool = True) -> EdgeCase:
    """Return -4.00 D, n 1.498, front 4.00 D, centre 2.0 mm, A 52, 3 mm in."""
    return EdgeCase(
        frame=Frame(a_mm=52.0, b_mm=36.0, dbl_mm=18.0),
        eye=eye,
        pd_mm=32.0,
        front_d=4.0,
        back_d=back_surface_d(-4.0, 4.0, 2.0, 1.498),
        index=1.498,
        centre_mm=2.0,
        is_temporal=is_temporal,
    )


@pytest.mark.parametrize(
    ("slips", "edge_mm"),
    [(set(), 5.765), ({"decentration-left-out"}, 4.96), ({"other-side"}, 4.275)],
)
@pytest.mark.parametrize("eye", list(Eye))
def test_temporal_edge_of_the_trades_example(slips: set[str], edge_mm: float, eye: Eye):
    """Computed, see test_published_thickness: temporal 5.765, nasal 4.275; at A/2, 4.96."""
    assert MAKERS["temporal-edge"].answer(decentred_minus(eye=eye), slips) == pytest.approx(edge_mm, abs=5e-3)


def test_exchanged_sagittae_leave_less_than_nothing():
    edge = MAKERS["temporal-edge"].answer(decentred_minus(), {"sagittae-exchanged"})
    assert edge == pytest.approx(2.0 - 3.765, abs=6e-4)


def test_where_the_nasal_edge_is_asked_the_other_side_is_the_temporal_one():
    nasal = decentred_minus(is_temporal=False)
    assert MAKERS["temporal-edge"].answer(nasal) == pytest.approx(4.275, abs=6e-4)
    assert MAKERS["temporal-edge"].answer(nasal, {"other-side"}) == pytest.approx(5.765, abs=6e-4)


def test_the_short_formula_makes_both_caps_too_shallow():
    """Computed: 2 + 29^2 (8.0215 - 4.00) / (2000 0.498) = 5.396."""
    edge = MAKERS["temporal-edge"].answer(decentred_minus(), {"short-formula"})
    assert edge == pytest.approx(5.396, abs=6e-4)


def test_both_edges_are_asked():
    assert {case.is_temporal for case in cases("temporal-edge")} == {True, False}


def test_the_cut_drawn_has_the_edge_that_is_right():
    for question in questions("temporal-edge"):
        values = question.drawing.values
        half = values[f"half_{values['side']}_mm"]
        front, back = (
            radius - math.sqrt(radius**2 - half**2)
            for radius in (values["front_radius_mm"], values["back_radius_mm"])
        )
        assert values["centre_mm"] + back - front == pytest.approx(question.right, abs=1e-9)
        assert values["half_left_mm"] + values["half_right_mm"] == pytest.approx(given(question)["A"])
        # Facing the wearer, the temporal side of the right eye lies on the left.
        is_left = ("right lens" in question.prompt[0]) == ("temporal" in question.prompt[-1])
        assert values["side"] == ("left" if is_left else "right")
        asked = "temporal" if "temporal" in question.prompt[-1] else "nasal"
        assert values[f"{values['side']}_words"] == asked
        assert {values["left_words"], values["right_words"]} == {"temporal", "nasal"}


# --- Where the edge is thickest -------------------------------------------------------------------------


def edge_all_round_mm(case: FramedLens) -> np.ndarray:
    """Return the edge every half degree, worked as the job sheet works it."""
    lens = lens_for(
        case.prescription,
        index=case.index,
        front_curve_d=case.front_d,
        centre_thickness_mm=case.centre_mm,
    )
    return FinishedLens(
        lens=lens,
        outline=case.frame.outline(case.eye),
        centre_x_mm=case.eye.nasal_sign * case.in_mm,
        centre_y_mm=case.up_mm,
    ).edge_mm


def test_the_thickest_place_is_that_of_the_finished_lens_and_clearly_so():
    maker = MAKERS["thickest-edge-place"]
    for case in cases("thickest-edge-place"):
        edge, right = edge_all_round_mm(case), maker.answer(case)
        kind = maker.kind(case)
        assert kind.distance(edge.argmax() / 2.0, right) <= 0.5
        beyond = [kind.distance(at / 2.0, right) > kind.tolerance + 0.5 for at in range(edge.size)]
        assert edge[beyond].max() < edge.max() - 0.09
        far_off = [kind.distance(at / 2.0, right) > 2.0 * kind.tolerance + 0.5 for at in range(edge.size)]
        assert edge[far_off].max() < edge.max() - 0.29


def test_the_marker_does_not_stand_at_the_answer_and_the_tolerance_is_said():
    for question in questions("thickest-edge-place"):
        assert not question.kind.matches(question.kind.start, question.right)
        assert question.kind.tolerance == 12.0
        assert "within twelve degrees" in question.prompt[-1]
        assert "about the boxed centre (x)" in question.prompt[0]
        assert re.search(r"With index \d\.\d{3}, front \d\.\d\d D and 1\.8 mm", question.solution.words[-1])


def sphere_in_a_rectangle(eye: Eye, *, cylinder_d: float = 0.0, axis_deg: float | None = None) -> FramedLens:
    """Return a minus lens that is thickest in its lower temporal corner."""
    return FramedLens(
        frame=Frame(a_mm=52.0, b_mm=40.0, dbl_mm=18.0, shape=OutlineShape.named("rectangle")),
        eye=eye,
        prescription=Prescription(sphere_d=-4.0, cylinder_d=cylinder_d, axis_deg=axis_deg),
        index=1.5,
        front_d=4.0,
        centre_mm=2.0,
        in_mm=3.0,
        up_mm=2.0,
    )


@pytest.mark.parametrize(
    ("eye", "low", "high", "midline"), [(Eye.RIGHT, 205, 225, 180), (Eye.LEFT, 315, 335, 0)]
)
def test_a_sphere_is_thickest_in_its_farthest_corner(eye: Eye, low: float, high: float, midline: float):
    maker, case = MAKERS["thickest-edge-place"], sphere_in_a_rectangle(eye)
    right = maker.answer(case)
    assert low < right < high
    # The outline is the same on both sides, so the wrong side is the mirrored one.
    assert maker.answer(case, {"nasal-for-temporal"}) == (180 - right) % 360
    assert maker.answer(case, {"always-on-the-midline"}) == midline
    assert maker.answer(case, {"takes-the-top"}) == 90
    assert maker.answer(case, {"along-the-axis"}) == right


def test_a_cylinder_draws_the_thickest_place_across_its_axis():
    maker = MAKERS["thickest-edge-place"]
    # Across the axis of 130 lies 40, which is 220: the lower temporal corner of a right eye.
    toric = sphere_in_a_rectangle(Eye.RIGHT, cylinder_d=-2.0, axis_deg=130.0)
    assert 205 < maker.answer(toric) < 225
    # Whoever looks along it finds the upper temporal corner.
    assert 135 < maker.answer(toric, {"along-the-axis"}) < 155
    turned = sphere_in_a_rectangle(Eye.RIGHT, cylinder_d=-2.0, axis_deg=40.0)
    assert maker.answer(turned) == maker.answer(toric, {"along-the-axis"})
    assert maker.answer(toric, {"nearer-end-of-the-meridian"}) in (39.0, 40.0, 41.0)
    assert maker.answer(toric, {"meridian-alone"}) in (219.0, 220.0, 221.0)
    names = {slip.name for slip in maker.slips_in(toric)}
    # The farther end and the farthest corner are one place here, and so are the nearer end and where the
    # edge would be thickest with the centre on the other side.
    assert names == {slip.name for slip in maker.slips} - {"meridian-alone", "nasal-for-temporal"}


def test_the_ends_of_a_meridian_are_counted_from_the_optical_centre():
    # By hand: centre 2 mm up and 3 mm in; straight up the outline ends after 18 mm, straight down after 22.
    upright = sphere_in_a_rectangle(Eye.RIGHT, cylinder_d=-2.0, axis_deg=180.0)
    (farther, away), (nearer, less) = meridian_ends(upright)
    assert (away, less) == (pytest.approx(22.0, abs=0.1), pytest.approx(18.0, abs=0.1))
    # Seen from the boxed centre both ends lie a little towards the nose, which is on the observer's right.
    assert farther == pytest.approx(270.0 + math.degrees(math.atan2(3.0, 20.0)), abs=1.0)
    assert nearer == pytest.approx(90.0 - math.degrees(math.atan2(3.0, 20.0)), abs=1.0)


def test_the_likeliest_wrong_places_have_a_name():
    """Both ends of the meridian of the stronger power, and the temporal midline, wherever they are wrong."""
    maker, seen = MAKERS["thickest-edge-place"], Counter()
    for case, question in zip(cases("thickest-edge-place"), questions("thickest-edge-place"), strict=True):
        assert maker.answer(case) == question.right, "drawn once"
        likely = {"always-on-the-midline": float(case.temporal_deg)}
        if case.prescription.cylinder_d:
            (farther, _), (nearer, _) = meridian_ends(case)
            likely |= {"nearer-end-of-the-meridian": float(nearer), "meridian-alone": float(farther)}
        for name, place in likely.items():
            marked = mark(question, place)
            if marked.state is State.WRONG:
                (slip,) = marked.slips
                # Where a farther end lies on the midline, the midline is named.
                assert slip.name == name or name == "meridian-alone", (question.seed, place)
                seen[slip.name] += 1
    assert min(seen.values()) > 60, seen


def test_whoever_is_told_that_the_other_end_lies_farther_is_led_nearer():
    maker = MAKERS["thickest-edge-place"]
    for case in cases("thickest-edge-place"):
        if case.prescription.cylinder_d:
            (farther, away), (nearer, less) = meridian_ends(case)
            kind, right = maker.kind(case), maker.answer(case)
            assert away >= less + 0.5
            assert kind.distance(right, farther) < kind.distance(right, nearer)


def test_spheres_occur_where_corners_decide_and_every_outline_is_drawn():
    shapes = {(case.frame.shape, bool(case.prescription.cylinder_d)) for case in cases("thickest-edge-place")}
    assert {shape for shape, is_toric in shapes if is_toric} == {*CORNERED, *BLUNT}
    assert {shape for shape, is_toric in shapes if not is_toric} == set(CORNERED)


def test_a_place_on_the_nasal_side_is_no_slip_about_the_nose():
    nasal = 0
    for question in questions("thickest-edge-place"):
        names = {mistake.slips[0].name for mistake in question.mistakes}
        toward_nose = 0.0 if question.drawing.values["eye"] == "right" else 180.0
        if question.kind.distance(question.right, toward_nose) < 90.0:
            nasal += 1
            assert "nasal-for-temporal" not in names
    assert nasal > 0


def test_the_picture_shows_the_lens_asked_about():
    axes = set()
    for question in questions("thickest-edge-place"):
        numbers, values = given(question), question.drawing.values
        sign = Eye.of(values["eye"]).nasal_sign
        assert values["centre_x_mm"] == sign * numbers["d_in"]
        assert values["centre_y_mm"] == numbers["d_up"]
        width = max(values["outline_x_mm"]) - min(values["outline_x_mm"])
        assert width == pytest.approx(numbers["A"], abs=0.1)
        axis = f"x {values['axis_deg']:03.0f}" if values["axis_deg"] else "DS"
        assert axis in question.prompt[0]
        axes.add(bool(values["axis_deg"]))
    assert axes == {True, False}


# --- Which axis makes the thicker edge ------------------------------------------------------------------


def wide(cylinder_d: float, sphere_d: float = -4.0, *, eye: Eye = Eye.RIGHT) -> AxisCase:
    """Return the lens of lesson 07, "The axis of a cylinder"."""
    return AxisCase(
        lens=FramedLens(
            frame=Frame(a_mm=50.0, b_mm=36.0, dbl_mm=18.0),
            eye=eye,
            prescription=Prescription(sphere_d=sphere_d, cylinder_d=cylinder_d, axis_deg=90.0),
            index=1.5,
            front_d=4.0,
            centre_mm=2.0,
            in_mm=2.0,
            up_mm=1.0,
        )
    )


@pytest.mark.parametrize("eye", list(Eye))
def test_a_wide_lens_with_axis_90_is_thickest_at_the_temporal_side(eye: Eye):
    maker, case = MAKERS["thick-axis"], wide(-2.0, eye=eye)
    assert maker.answer(case) == "90-temporal"
    assert maker.answer(case, {"axis-for-meridian-of-power"}) == "180-temporal"
    assert maker.answer(case, {"thick-along-the-axis"}) == "90-upright"
    assert maker.answer(case, {"distance-overlooked"}) == "180-upright"
    on_midline = replace(case.lens, up_mm=0.0)
    assert edges_mm(AxisCase(lens=on_midline))[90, "temporal"] == pytest.approx(6.99, abs=5e-3)


def test_the_same_lens_in_plus_form_has_the_other_axis():
    maker, case = MAKERS["thick-axis"], wide(2.0, sphere_d=-6.0)
    assert maker.answer(case) == "180-temporal"
    assert maker.answer(case, {"plus-cylinder-read-as-minus"}) == "90-temporal"
    assert maker.answer(case, {"thick-across-a-plus-cylinder"}) == "180-upright"
    names = [slip.name for slip in maker.slips_in(case)]
    assert names == ["plus-cylinder-read-as-minus", "thick-across-a-plus-cylinder", "distance-overlooked"]


def test_every_option_is_right_somewhere_and_leads_clearly():
    for case, question in zip(cases("thick-axis"), questions("thick-axis"), strict=True):
        second, first = sorted(edges_mm(case).values())[-2:]
        assert first - second >= 0.3
        assert question.right == MAKERS["thick-axis"].answer(case)
        lens = case.lens
        assert 0.0 <= lens.up_mm <= 4.0
        assert "held and the prescriber asked" in question.prompt[0]
        made = f"With index {lens.index:.3f}, front {lens.front_d:.2f} D and {lens.centre_mm:.1f} mm"
        assert question.solution.words[-1].startswith(made)
    assert {question.right for question in questions("thick-axis")} == {
        "90-temporal",
        "180-temporal",
        "90-upright",
        "180-upright",
    }


def test_the_four_edges_compared_are_those_of_the_finished_lens():
    for case in cases("thick-axis")[:40]:
        edge = edge_all_round_mm(replace(case.lens, prescription=_with_axis(case, 180.0)))
        assert edges_mm(case)[180, "temporal"] == pytest.approx(edge[2 * case.lens.temporal_deg], abs=1e-5)
        assert edges_mm(case)[180, "upright"] == pytest.approx(edge[2 * 270], abs=1e-5)
        assert edge[2 * 270] >= edge[2 * 90] - 1e-5, "the bottom is never the nearer end"


def _with_axis(case: AxisCase, axis_deg: float) -> Prescription:
    return replace(case.lens.prescription, axis_deg=axis_deg)


# --- The centre of a plus lens --------------------------------------------------------------------------


def plus(*, is_stock: bool) -> PlusCase:
    """Return +5.50, n 1.592, front 8.00 D, A 50, B 32, 2 in, 65 mm blank, with this supply's own back."""
    outline = Frame(a_mm=50.0, b_mm=32.0, dbl_mm=18.0).outline(Eye.RIGHT)
    farthest = (minimum_blank_mm(outline, x_mm=2.0, y_mm=0.0) - blank_allowance_mm()) / 2.0
    lens = lens_with_least_thickness(
        Prescription(sphere_d=5.5),
        index=1.592,
        front_curve_d=8.0,
        least_mm=1.0,
        x_mm=[32.5 if is_stock else farthest],
        y_mm=[0.0],
    )
    return PlusCase(
        front_d=8.0,
        back_d=lens.back_curves_d[0],
        index=1.592,
        least_mm=1.0,
        a_mm=50.0,
        farthest_mm=farthest,
        blank_mm=65.0,
        is_stock=is_stock,
    )


def test_centre_of_the_trades_example_surfaced_and_from_stock():
    """Computed: surfaced 4.45 mm, from a 65 mm stock blank 6.05 mm."""
    maker = MAKERS["plus-centre"]
    surfaced, stock = maker.answer(plus(is_stock=False)), maker.answer(plus(is_stock=True))
    assert surfaced == pytest.approx(4.45, abs=5e-3)
    assert stock == pytest.approx(6.05, abs=5e-3)
    # The back surface hangs a little on the thickness, so the slips come out near the other supply's centre.
    assert maker.answer(plus(is_stock=False), {"over-the-round-blank"}) == pytest.approx(stock, abs=0.1)
    assert maker.answer(plus(is_stock=True), {"over-the-outline"}) == pytest.approx(surfaced, abs=0.1)


def test_other_slips_on_the_centre_of_a_plus_lens():
    maker, case = MAKERS["plus-centre"], plus(is_stock=False)
    right = maker.answer(case)
    assert maker.answer(case, {"edge-forgotten"}) == pytest.approx(right - 1.0)
    assert maker.answer(case, {"sagittae-exchanged"}) == pytest.approx(1.0 - (right - 1.0))
    nearer = replace(case, farthest_mm=25.0)
    assert maker.answer(case, {"half-of-a"}) == pytest.approx(maker.answer(nearer))
    both = maker.answer(case, {"sagittae-exchanged", "edge-forgotten"})
    assert both == pytest.approx(1.0 - right)


def test_each_supply_has_its_own_slips_and_both_occur():
    for case in cases("plus-centre"):
        names = {slip.name for slip in MAKERS["plus-centre"].slips_in(case)}
        assert ("over-the-outline" in names) == case.is_stock
        assert ("over-the-round-blank" in names) != case.is_stock
        assert ("half-of-a" in names) != case.is_stock
    assert {case.is_stock for case in cases("plus-centre")} == {True, False}


def test_a_stock_lens_is_as_thin_at_its_rim_as_stock_is():
    rims = {case.is_stock: set() for case in cases("plus-centre")}
    for case in cases("plus-centre"):
        rims[case.is_stock].add(case.least_mm)
    assert rims[True] == {0.8, 1.0, 1.2}
    assert max(rims[False]) == 2.0


def test_the_stock_blank_covers_the_outline():
    for question in questions("plus-centre"):
        numbers = given(question)
        assert numbers["D"] >= 2.0 * numbers["y_far"] + blank_allowance_mm() - 0.1
        assert numbers["y_far"] >= numbers["A"] / 2.0


# --- A front curve by rule ------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("sphere_d", "cylinder_d", "slips", "curve_d"),
    [
        (-4.0, -1.0, set(), 3.75),
        (-4.0, -1.0, {"rule-of-the-other-sign"}, 1.5),
        (-4.0, -1.0, {"sphere-for-equivalent"}, 4.0),
        (-4.0, -1.0, {"whole-cylinder"}, 3.5),
        (-4.0, -1.0, {"rule-of-the-other-sign", "sphere-for-equivalent"}, 2.0),
        (4.0, 1.0, set(), 10.5),
        (4.0, 1.0, {"rule-of-the-other-sign"}, 8.25),
        (4.0, 1.0, {"sphere-for-equivalent"}, 10.0),
    ],
)
def test_front_curve_of_the_trades_example(
    sphere_d: float, cylinder_d: float, slips: set[str], curve_d: float
):
    """Vogel's rule, from memory."""
    rx = Prescription(sphere_d=sphere_d, cylinder_d=cylinder_d, axis_deg=90)
    assert MAKERS["front-curve-rule"].answer(rx, slips) == pytest.approx(curve_d)


def test_both_signs_and_both_forms_occur_and_a_base_curve_is_written_without_a_sign():
    signs = {(rx.sphere_d > 0.0, rx.cylinder_d > 0.0) for rx in cases("front-curve-rule")}
    assert signs == {(True, True), (True, False), (False, True), (False, False)}
    for rx in cases("front-curve-rule"):
        assert rx.sphere_d * (rx.sphere_d + rx.cylinder_d) > 0.0
    for question in questions("front-curve-rule"):
        assert mark(question, f"{question.right:.2f}").state is State.RIGHT
        assert not question.kind.written(question.right).startswith("+")


def test_curves_are_such_as_lenses_have_and_are_printed_in_full():
    for question in questions("front-curve-rule"):
        assert 1.0 <= question.right <= 10.0
        assert question.right == round(question.right, 2), "no figure is left to rounding"


def test_new_numbers_are_another_sum():
    sums = [question.given for question in questions("front-curve-rule")[:300]]
    assert len(set(sums)) > 0.5 * len(sums)
    assert sum(one == other for one, other in pairwise(sums)) <= 0.01 * len(sums)
