"""Makers of surfaces: the trade's own examples, to the printed digits, and what is drawn."""

from functools import cache

import pytest
from made_questions import SEEDS, questions

from lablib.optics.prescription import Prescription
from lablib.questions import surfaces
from lablib.questions.surfaces.back_vertex import ThickCase
from lablib.questions.surfaces.base_rules import RulesCase
from lablib.questions.surfaces.lens_measure import MeasureCase
from lablib.questions.surfaces.toric_base import BaseCase
from lablib.questions.surfaces.warpage import WarpageCase
from lablib.study.draws import Draws
from lablib.study.marking import State, mark

MAKERS = {maker.name: maker for maker in surfaces.MAKERS}
# Half of the last printed digit.
D = 0.005


@cache
def cases(name: str) -> tuple[object, ...]:
    """Return the first case drawn for every seed."""
    return tuple(MAKERS[name].draw(Draws(seed)) for seed in SEEDS)


def rx(sphere: float, cylinder: float = 0.0, axis: float | None = None) -> Prescription:
    return Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis)


# --- The lens measure -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("reading_d", "index", "slips", "power_d"),
    [
        (6.12, 1.586, set(), 6.77),
        (6.12, 1.586, {"not-converted"}, 6.12),
        (6.12, 1.586, {"ratio-turned-over"}, 5.54),
        (6.12, 1.586, {"ratio-of-whole-indices"}, 6.34),
        (6.12, 1.498, set(), 5.75),
        (-10.0, 1.600, set(), -11.32),
    ],
)
def test_a_reading_of_the_trades_example(reading_d: float, index: float, slips: set[str], power_d: float):
    """F = R (n - 1) / 0.530; the row of -10.00 was read in print, the others are computed from it."""
    case = MeasureCase(reading_d=reading_d, index=index)
    assert MAKERS["lens-measure"].answer(case, slips) == pytest.approx(power_d, abs=D)


def test_fronts_and_backs_are_asked_about_and_a_missing_sign_is_a_fault():
    for case, question in zip(cases("lens-measure"), questions("lens-measure"), strict=True):
        assert ("front" in question.prompt[0]) == (case.reading_d > 0.0)
        assert mark(question, f"{abs(question.right):.2f}").state is State.FAULTY
    assert {case.reading_d > 0.0 for case in cases("lens-measure")} == {True, False}
    assert {case.index for case in cases("lens-measure")} == {1.5, 1.586, 1.592, 1.66, 1.728}


def test_the_solution_says_which_way_the_index_goes():
    for case, question in zip(cases("lens-measure"), questions("lens-measure"), strict=True):
        assert ("worth more" in question.solution.words[0]) == (abs(question.right) > abs(case.reading_d))


# --- Warpage --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("along_d", "across_d", "slips", "warpage_d"),
    [
        (4.75, 3.75, set(), 1.00),
        (4.75, 3.75, {"mean-for-difference"}, 4.25),
        (4.75, 3.75, {"against-the-first-reading"}, 0.50),
        (3.50, 4.50, {"against-the-first-reading"}, 0.75),
        (4.75, 3.50, {"against-the-first-reading", "mean-for-difference"}, 3.875),
    ],
)
def test_warpage_of_a_front_that_read_four_and_a_quarter(
    along_d: float, across_d: float, slips: set[str], warpage_d: float
):
    """Common practice: the difference of two readings 90 apart."""
    case = WarpageCase(before_d=4.25, along_d=along_d, across_d=across_d)
    assert MAKERS["warpage"].answer(case, slips) == pytest.approx(warpage_d)


def test_the_limit_belongs_to_what_passes_and_both_verdicts_occur():
    """ANSI Z80.1-2015: 1.00 D; every upper limit belongs to the lower band."""
    verdicts = {}
    for question in questions("warpage"):
        within = "D is within it" in question.solution.words[1]
        assert within == (question.right <= 1.0)
        verdicts[within, question.right] = True
    assert (True, 1.0) in verdicts
    assert any(not within for within, _ in verdicts)


# --- Back vertex power ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("slips", "power_d"),
    [
        (set(), 6.41),
        ({"surfaces-simply-added"}, 6.00),
        ({"front-vertex-for-back"}, 6.06),
        ({"index-left-out"}, 6.64),
        ({"index-left-out", "front-vertex-for-back"}, 6.09),
    ],
)
def test_back_vertex_power_of_the_trades_example(slips: set[str], power_d: float):
    """Computed: F1 +10.00, F2 -4.00, t 6, n 1.523; M. Jalie, Principles of Ophthalmic Lenses (memory)."""
    case = ThickCase(front_d=10.0, back_d=-4.0, thickness_mm=6.0, index=1.523)
    assert MAKERS["back-vertex-power"].answer(case, slips) == pytest.approx(power_d, abs=D)


def test_a_thick_lens_is_always_stronger_than_its_surfaces_added():
    for case in cases("back-vertex-power"):
        assert MAKERS["back-vertex-power"].answer(case) > case.front_d + case.back_d


# --- Toric transposition --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("base_d", "part", "slips", "curve_d"),
    [
        (6.0, "sphere", set(), -5.50),
        (6.0, "cross", set(), 7.50),
        (6.0, "sphere", {"form-not-turned"}, -4.00),
        (6.0, "cross", {"form-not-turned"}, 4.50),
        (6.0, "sphere", {"base-curve-added"}, 6.50),
        (6.0, "cross", {"cylinder-for-cross-curve"}, 1.50),
        (6.0, "sphere", {"form-not-turned", "base-curve-added"}, 8.00),
        (6.0, "cross", {"form-not-turned", "cylinder-for-cross-curve"}, -1.50),
        (-6.0, "sphere", set(), 8.00),
        (-6.0, "cross", set(), -7.50),
    ],
)
def test_a_lens_on_a_base_curve(base_d: float, part: str, slips: set[str], curve_d: float):
    """Common practice, computed: +2.00 -1.50 x 020 is +0.50 +1.50 x 110."""
    case = BaseCase(rx=rx(2.0, -1.5, 20.0), base_d=base_d, part=part)
    assert MAKERS["toric-base"].answer(case, slips) == pytest.approx(curve_d)


def test_a_lens_in_the_right_form_already_is_not_turned():
    case = BaseCase(rx=rx(2.0, -1.5, 20.0), base_d=-6.0, part="cross")
    assert not case.is_turned
    assert [slip.name for slip in MAKERS["toric-base"].slips_in(case)] == ["cylinder-for-cross-curve"]
    steps = MAKERS["toric-base"].solution(case).workings
    assert [step.symbol for step in steps] == ["F_c"]


def test_both_sides_both_parts_and_both_forms_occur():
    seen = {(case.base_d > 0.0, case.part, case.is_turned) for case in cases("toric-base")}
    assert len(seen) == 8


# --- Two rules for the front curve ----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("sphere_d", "cylinder_d", "is_first", "slips", "curve_d"),
    [
        (4.0, 1.0, True, set(), 10.50),
        (4.0, 1.0, False, set(), 8.50),
        (-4.0, -1.0, True, set(), 3.75),
        (-4.0, -1.0, False, set(), 3.50),
        (4.0, 1.0, True, {"the-other-rule"}, 8.50),
        (4.0, 1.0, False, {"the-other-rule"}, 10.50),
        (4.0, 1.0, True, {"sphere-for-equivalent"}, 10.00),
        (4.0, 1.0, True, {"share-of-the-other-sign"}, 8.25),
        (-4.0, -1.0, True, {"share-of-the-other-sign"}, 1.50),
        (-4.0, -1.0, True, {"sphere-for-equivalent", "share-of-the-other-sign"}, 2.00),
        (4.0, 1.0, False, {"weaker-meridian"}, 8.00),
        (4.0, 1.0, False, {"equivalent-for-stronger-meridian"}, 8.25),
        (-4.0, -1.0, False, {"weaker-meridian"}, 4.00),
    ],
)
def test_two_rules_that_disagree(
    sphere_d: float, cylinder_d: float, is_first: bool, slips: set[str], curve_d: float
):
    """Vogel from memory; A. Bhootra, Ophthalmic Lenses, p. 25: +8.50 and +3.50 read, the rule inferred."""
    case = RulesCase(rx=rx(sphere_d, cylinder_d, 90.0), is_first=is_first)
    assert MAKERS["base-curve-two-rules"].answer(case, slips) == pytest.approx(curve_d)


def test_the_form_of_a_plus_lens_makes_no_difference():
    maker = MAKERS["base-curve-two-rules"]
    for is_first in (True, False):
        values = {
            maker.answer(RulesCase(rx=lens, is_first=is_first))
            for lens in (rx(4.0, 1.0, 90.0), rx(4.0, 1.0, 90.0).transposed())
        }
        assert len(values) == 1


def test_a_solution_shows_both_values():
    for question in questions("base-curve-two-rules"):
        assert question.solution.words[0].startswith("The first rule gives +")
        assert "the second +" in question.solution.words[0]


def test_a_curve_between_hundredths_is_told_in_full():
    """+5.75 -2.25: 4.625 + 6 = 10.625 and 5.75 / 2 + 6 = 8.875; to two decimals either would be a tie."""
    case = RulesCase(rx=rx(5.75, -2.25, 140.0), is_first=True)
    words = MAKERS["base-curve-two-rules"].solution(case).words
    assert words[0] == "The first rule gives +10.625 D, the second +8.875 D."


def test_both_rules_and_both_signs_are_asked():
    seen = {(case.is_first, case.rx.sphere_d > 0.0) for case in cases("base-curve-two-rules")}
    assert len(seen) == 4
