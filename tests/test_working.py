"""A result with its working: what is printed, and that it comes out."""

import math
from dataclasses import FrozenInstanceError, replace

import pytest
from evaluation import assert_comes_out, evaluate, range_by_rounding

from lablib.errors import LabError
from lablib.working import FUNCTIONS, Term, Working, plain


def sagitta(radius_mm: float = 88.3333, half_mm: float = 25.0) -> Working:
    return Working(
        what="sagitta",
        symbol="s",
        formula="r - sqrt(r^2 - y^2)",
        terms=(
            Term(symbol="r", value=radius_mm, unit="mm", meaning="radius"),
            Term(symbol="y", value=half_mm, unit="mm", digits=1, meaning="half the diameter"),
        ),
        value=radius_mm - math.sqrt(radius_mm**2 - half_mm**2),
        unit="mm",
        source="plane geometry",
    )


def test_lines_show_formula_numbers_result_and_source():
    # The sagitta of 6.00 D at 1.530 and 25 mm is 3.6116 mm (published values, thickness table, computed).
    assert sagitta().lines() == [
        "sagitta",
        "  s = r - sqrt(r^2 - y^2)",
        "    = 88.33 - sqrt(88.33^2 - 25.0^2)",
        "    = 3.61 mm",
        "    r = 88.33 mm, radius",
        "    y = 25.0 mm, half the diameter",
        "    source: plane geometry",
    ]
    assert str(sagitta()) == "\n".join(sagitta().lines())


def test_a_term_without_meaning_and_a_working_without_source_print_no_line_for_it():
    step = Working(
        what="sum",
        symbol="F",
        formula="S + C",
        terms=(Term(symbol="S", value=1), Term(symbol="C", value=2)),
        value=3,
    )
    assert step.lines() == ["sum", "  F = S + C", "    = 1.00 + 2.00", "    = 3.00"]


@pytest.mark.parametrize(
    ("formula", "expected"),
    [
        ("S + C", "-4.00 + (-2.00)"),
        ("C - S", "-2.00 - (-4.00)"),
        ("-C", "-(-2.00)"),
        ("S * C^2", "-4.00 * (-2.00)^2"),
        ("max(S, C)", "max((-4.00), (-2.00))"),
    ],
)
def test_minus_numbers_are_bracketed_unless_they_come_first(formula: str, expected: str):
    terms = (Term(symbol="S", value=-4), Term(symbol="C", value=-2))
    working = Working(what="F", symbol="F", formula=formula, terms=terms, value=0)
    assert working.substituted == expected


def test_symbols_that_contain_each_other_are_put_in_whole():
    terms = (Term(symbol="F", value=1), Term(symbol="F1", value=2), Term(symbol="F'", value=3))
    working = Working(what="sum", symbol="x", formula="F + F1 + F'", terms=terms, value=6)
    assert working.substituted == "1.00 + 2.00 + 3.00"


def test_a_symbol_without_a_term_is_refused():
    with pytest.raises(LabError) as caught:
        Working(what="sum", symbol="F", formula="S + C", terms=(Term(symbol="S", value=1),), value=1)
    assert str(caught.value) == (
        "working of sum: 'C' stands in the formula but no term explains it: add a Term for 'C'"
    )


def test_every_function_a_formula_may_use_can_be_worked_out():
    arguments = {"max": "1, 2", "min": "1, 2"}
    for name in FUNCTIONS:
        assert math.isfinite(evaluate(f"{name}({arguments.get(name, '0.5')})"))


def test_a_result_goes_into_the_next_step_unrounded():
    term = sagitta().as_term()
    assert (term.symbol, term.unit, term.digits, term.meaning) == ("s", "mm", 2, "sagitta")
    assert term.value == sagitta().value
    assert sagitta().as_term("front sagitta").meaning == "front sagitta"


@pytest.mark.parametrize(
    ("value", "digits", "expected"),
    [(-0.001, 2, "0.00"), (-0.006, 2, "-0.01"), (0.0, 0, "0"), (-0.4, 0, "0"), (12.3456, 3, "12.346")],
)
def test_plain_prints_no_signed_zero(value: float, digits: int, expected: str):
    assert plain(value, digits) == expected


def test_a_working_cannot_be_changed():
    with pytest.raises(FrozenInstanceError):
        sagitta().value = 4


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("2 + 3 * 4", 14),
        ("-2.00 + 6.00 / (1 - 0.25)", 6),
        ("sin(30)^2", 0.25),
        ("-(-1.50) * cos(60)", 0.75),
        ("2 × 3 − 1", 5),
        ("atan(1) + asin(0.5)", 75),
        ("max(1, sqrt(9), abs(-2))", 3),
        ("-2^2", -4),
    ],
)
def test_evaluation_is_what_a_calculator_in_degrees_gives(text: str, expected: float):
    assert evaluate(text) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize(
    "text", ["S + 1", "__import__('os')", "(1).real", "1 if 2 else 3", "2 +", "'a'", "True"]
)
def test_evaluation_takes_nothing_but_arithmetic(text: str):
    with pytest.raises(ValueError, match=r"cannot be worked out|is not arithmetic"):
        evaluate(text)


def test_a_working_that_comes_out_passes_and_one_that_does_not_fails():
    assert_comes_out(sagitta())
    least, greatest = range_by_rounding(sagitta())
    assert 0.0003 < greatest - least < 0.0006
    for wrong in (
        replace(sagitta(), value=sagitta().value + 0.001),
        replace(sagitta(), formula="r + sqrt(r^2 - y^2)"),
        replace(sagitta(), terms=(sagitta().terms[0], Term(symbol="y", value=25.1, digits=1))),
    ):
        with pytest.raises(AssertionError, match="sagitta"):
            assert_comes_out(wrong)


def test_a_number_printed_in_full_allows_no_rounding():
    exact = sagitta(radius_mm=88.33)
    assert range_by_rounding(exact) == pytest.approx((exact.value, exact.value), abs=1e-12)


@pytest.mark.parametrize(
    ("value", "unit", "stated"),
    [
        (4.25, "D", "+4.25 D"),
        (-4.25, "D", "-4.25 D"),
        (0.0, "D", "0.00 D"),
        (52.0, "mm", "52.00 mm"),
    ],
)
def test_a_power_that_is_stated_has_its_sign(value: float, unit: str, stated: str):
    assert Term(symbol="S", value=value, unit=unit).stated == f"S = {stated}"
