"""The maker about stock, surfaced or another frame: each decision by hand, and the orders that are drawn."""

import pytest

from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import decentration_for
from lablib.questions.lens_form.supply import StockOrSurfaced
from lablib.questions.lens_form.supply_case import SupplyCase
from lablib.study.draws import Draws
from lablib.study.marking import mark

MAKER = StockOrSurfaced()
CASES = tuple(MAKER.draw(Draws(seed)) for seed in range(400))


def order(power_d: float, least_blank_mm: float, **more: object) -> SupplyCase:
    """Return an order where stock comes in 65 and 70 mm and blanks for surfacing up to 75 mm."""
    told = {"eye": Eye.RIGHT, "prism_prism_d": 0.0, "stock_mm": (65.0, 70.0), "surfacing_mm": 75.0} | more
    return SupplyCase(power_d=power_d, least_blank_mm=least_blank_mm, **told)


@pytest.mark.parametrize(
    ("case", "right", "if_stock"),
    [
        (order(-3.0, 62.4), "stock", None),
        # A 58, B 44, DBL 16, pupil at 29 mm: the least blank is 76.9 mm, and the centre is not moved.
        (order(-3.0, 76.9), "another-frame", "stock-too-small"),
        (order(-3.0, 72.0), "surfaced", "stock-too-small"),
        (order(0.75, 58.0, prism_prism_d=1.5), "surfaced", "stock-with-prism"),
        (order(0.75, 76.0, prism_prism_d=1.5), "another-frame", "stock-too-small"),
        # +5.50, n 1.592, A 50, B 32, 2 in: 6.05 mm from a 65 mm stock blank, 4.45 mm surfaced.
        (
            order(5.5, 56.1, stock_centre_mm=6.0, surfaced_centre_mm=4.4),
            "surfaced",
            "stock-for-a-thick-plus",
        ),
        (order(2.0, 62.0, stock_centre_mm=3.1, surfaced_centre_mm=2.1), "stock", None),
        (order(2.0, 62.0, stock_centre_mm=3.2, surfaced_centre_mm=2.1), "surfaced", "stock-for-a-thick-plus"),
    ],
)
def test_each_decision(case: SupplyCase, right: str, if_stock: str | None):
    assert MAKER.answer(case) == right
    assert case.why_not_stock == if_stock
    names = {slip.name for slip in MAKER.slips_in(case)}
    assert "shifts-the-centre" in names
    assert len(names) == 3
    if if_stock:
        assert MAKER.answer(case, {if_stock}) == "stock"
        assert if_stock in names


def test_every_slip_leads_to_a_wrong_option():
    for case in CASES:
        right = MAKER.answer(case)
        wrong = {MAKER.answer(case, {slip.name}) for slip in MAKER.slips_in(case)}
        assert wrong == {"stock", "surfaced", "another-frame", "shift-the-centre"} - {right}


def test_all_decisions_and_all_reasons_occur_often_enough_to_be_learned():
    rights = [MAKER.answer(case) for case in CASES]
    assert all(rights.count(one) > 40 for one in ("stock", "surfaced", "another-frame"))
    reasons = [case.why_not_stock for case in CASES]
    named = ("stock-too-small", "stock-with-prism", "stock-for-a-thick-plus", None)
    assert all(reasons.count(one) > 30 for one in named)


def test_no_decision_hangs_on_a_few_tenths():
    for case in CASES:
        diameters = (*case.stock_mm, case.surfacing_mm)
        assert min(abs(case.least_blank_mm - one) for one in diameters) >= 0.3
        if case.stock_centre_mm:
            assert case.stock_centre_mm >= case.surfaced_centre_mm > 1.0
            assert abs(case.saving_mm - 1.0) >= 0.3


def test_prism_comes_where_no_blank_is_large_enough_to_decentre_for_it():
    seen = 0
    for case in CASES:
        if case.prism_prism_d:
            seen += 1
            away, _ = decentration_for(
                Prescription(sphere_d=case.power_d),
                eye=case.eye,
                in_prism_d=case.prism_prism_d,
                up_prism_d=0.0,
            )
            # The centre then lies so far from the pupil that the farther rim is out of every blank's reach.
            assert abs(away) >= 20.0
            solution = MAKER.solution(case).words
            if case.smallest_stock_mm is not None:
                assert f"{abs(away):.0f} mm" in solution[1]
    assert seen > 30


def test_a_plus_lens_is_told_both_centres_where_both_can_be_had():
    for case in CASES:
        has_both = case.power_d > 0.0 and not case.prism_prism_d and case.smallest_stock_mm is not None
        symbols = [term.symbol for term in MAKER.given(case)]
        assert symbols == ["D_least", *(["t_stock", "t_surfaced"] if has_both else [])]


def test_whoever_moves_the_centre_is_told_what_it_does():
    question = MAKER.make(0)
    (slip,) = mark(question, "shift-the-centre").slips
    assert "prism" in slip.words


def test_what_stock_cannot_give_is_told():
    for case in CASES:
        assert "and without prism" in MAKER.prompt(case)[0]


def test_stock_for_a_minus_lens_is_not_said_to_be_the_thinner():
    solution = MAKER.solution(order(-3.0, 62.4)).words
    assert "does not hang on the rim of its blank" in solution[1]
    assert "The rule of 1 mm is for plus lenses." in solution[1]
