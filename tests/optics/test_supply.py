"""Stock, surfaced or another frame, and the least blank by rule and by outline."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lablib.errors import LabError
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import least_blank
from lablib.optics.supply import OTHER_FRAME, STOCK, SURFACED, Blanks, supply

BLANKS = Blanks(stock_mm=(65.0, 70.0), surfacing_mm=75.0)


@pytest.mark.parametrize(
    ("order", "decision", "reason", "blank_mm", "words"),
    [
        (
            {"least_blank_mm": 60.1},
            STOCK,
            "stock-does",
            65.0,
            "least blank 60.1 mm, and the stock blank of 65",
        ),
        ({"least_blank_mm": 65.0}, STOCK, "stock-does", 65.0, "least blank 65.0 mm"),
        ({"least_blank_mm": 65.1}, STOCK, "stock-does", 70.0, "least blank 65.1 mm"),
        (
            {"least_blank_mm": 72.0},
            SURFACED,
            "stock-too-small",
            None,
            "least blank 72.0 mm, and no stock blank covers: surfaced",
        ),
        (
            {"least_blank_mm": 76.9},
            OTHER_FRAME,
            "no-blank-covers",
            None,
            "least blank 76.9 mm, and no stock blank covers, and for surfacing 75 mm is the largest: hold",
        ),
        (
            {"least_blank_mm": 60.0, "prism_prism_d": 1.5},
            SURFACED,
            "stock-with-prism",
            None,
            "1.5 prism dioptres: a stock lens is made without: surfaced",
        ),
        (
            {"least_blank_mm": 60.0, "saving_mm": 1.6},
            SURFACED,
            "stock-thick-plus",
            None,
            "surfaced for its outline, this plus lens is 1.6 mm thinner in the middle: surfaced",
        ),
        ({"least_blank_mm": 60.0, "saving_mm": 1.0}, STOCK, "stock-does", 65.0, "least blank 60.0 mm"),
    ],
)
def test_where_a_lens_comes_from(order: dict, decision: str, reason: str, blank_mm: float, words: str):
    found = supply(BLANKS, **order)
    assert (found.decision, found.reason, found.blank_mm) == (decision, reason, blank_mm)
    assert found.words.startswith(words)


def test_a_stock_blank_that_is_larger_than_any_for_surfacing_is_taken():
    large = Blanks(stock_mm=(80.0,), surfacing_mm=75.0)
    assert supply(large, least_blank_mm=78.0).decision == STOCK
    assert supply(large, least_blank_mm=78.0, prism_prism_d=1.0).decision == OTHER_FRAME


def test_a_frame_that_no_stock_blank_covers_is_that_of_the_ticket():
    """Both -3.00 in 58 x 44, DBL 16, exponent 3, 29 mm: 76.9 mm (job tickets with traps, 3; computed)."""
    frame = Frame(a_mm=58.0, b_mm=44.0, dbl_mm=16.0, shape=OutlineShape.superellipse(3.0))
    least = least_blank(frame.outline(Eye.RIGHT), eye=Eye.RIGHT, in_mm=8.0)
    assert least.exact_mm == pytest.approx(76.9, abs=0.05)
    assert (
        supply(Blanks(stock_mm=(70.0,), surfacing_mm=80.0), least_blank_mm=least.exact_mm).decision
        == SURFACED
    )
    assert supply(BLANKS, least_blank_mm=least.exact_mm).decision == OTHER_FRAME


def test_the_easy_ticket_comes_from_stock():
    """-1.25 in 50 x 34, DBL 18, 30 and 33: right 60.1 mm (job tickets with traps, 1; computed)."""
    frame = Frame(a_mm=50.0, b_mm=34.0, dbl_mm=18.0)
    least = least_blank(frame.outline(Eye.RIGHT), eye=Eye.RIGHT, in_mm=4.0)
    assert least.exact_mm == pytest.approx(60.1, abs=0.05)
    assert supply(BLANKS, least_blank_mm=least.exact_mm).blank_mm == 65.0


def test_the_weak_lens_with_prism_is_surfaced():
    """+0.75 with 1.5 base in, 52 x 34, DBL 16, 31 mm: decentred 20 mm: blank 100 mm (ticket 6; computed)."""
    frame = Frame(a_mm=52.0, b_mm=34.0, dbl_mm=16.0)
    in_place, shifted = (
        least_blank(frame.outline(Eye.RIGHT), eye=Eye.RIGHT, in_mm=inward).exact_mm for inward in (3.0, 23.0)
    )
    assert shifted == pytest.approx(100.0, abs=0.5)
    assert supply(BLANKS, least_blank_mm=in_place, prism_prism_d=1.5).decision == SURFACED


ROUND = Frame(a_mm=48.0, b_mm=48.0, dbl_mm=18.0, shape=OutlineShape.named("round"))
PANTO = Frame(a_mm=52.0, b_mm=42.0, dbl_mm=18.0, shape=OutlineShape.named("panto"))


@pytest.mark.parametrize("eye", EYES)
def test_rule_and_outline_agree_where_the_longest_radius_lies_on_the_far_side(eye: Eye):
    found = least_blank(ROUND.outline(eye), eye=eye, in_mm=3.0)
    assert (found.exact_mm, found.rule_mm) == pytest.approx((56.0, 56.0))
    assert found.farthest_deg == (180.0 if eye is Eye.RIGHT else 0.0)
    assert found.words == "the rule and the outline agree here"


@pytest.mark.parametrize("eye", EYES)
def test_the_rule_asks_for_too_much_where_a_corner_is_the_longest_radius(eye: Eye):
    found = least_blank(PANTO.outline(eye), eye=eye, in_mm=4.0)
    assert found.rule_more_mm > 0.7
    assert found.words.startswith(f"the rule asks for {found.rule_more_mm:.1f} mm more than is needed")


@pytest.mark.parametrize(("up_mm", "word"), [(4.0, "raised"), (-4.0, "lowered")])
def test_the_rule_asks_for_too_little_where_the_centre_leaves_the_midline(up_mm: float, word: str):
    found = least_blank(ROUND.outline(Eye.RIGHT), eye=Eye.RIGHT, in_mm=0.0, up_mm=up_mm)
    assert found.rule_more_mm == pytest.approx(-8.0, abs=1e-6)
    assert found.words == (
        f"the rule asks for 8.0 mm too little: the centre is {word} by 4.0 mm, and the rule knows no height"
    )


@given(inward=st.floats(-6.0, 6.0), up=st.floats(-5.0, 5.0))
def test_the_blank_reaches_the_farthest_point_and_no_farther(inward: float, up: float):
    found = least_blank(PANTO.outline(Eye.LEFT), eye=Eye.LEFT, in_mm=inward, up_mm=up)
    outline = PANTO.outline(Eye.LEFT)
    at = round(found.farthest_deg * 2.0)
    x, y = outline.x_mm[at] + inward, outline.y_mm[at] - up
    assert 2.0 * (x**2 + y**2) ** 0.5 + 2.0 == pytest.approx(found.exact_mm)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (
            lambda: Blanks(stock_mm=(70.0, 65.0), surfacing_mm=75.0),
            r"stock blanks \(70\.0, 65\.0\) do not rise",
        ),
        (
            lambda: Blanks(stock_mm=(20.0,), surfacing_mm=75.0),
            "blank 20 is out of range: give from 30 to 100",
        ),
        (
            lambda: supply(BLANKS, least_blank_mm=0.0),
            "least blank 0 is out of range: give above 0 and up to 2",
        ),
        (
            lambda: supply(BLANKS, least_blank_mm=60.0, prism_prism_d=-1.0),
            "prescribed prism -1 is out of range",
        ),
    ],
)
def test_what_no_blank_can_be_is_said_in_words(make, words: str):
    with pytest.raises(LabError, match=words):
        make()
