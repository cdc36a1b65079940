"""Works out the printed substitution of a Working, as a learner with a pocket calculator would."""

import ast
import itertools
import math
from dataclasses import replace

from lablib.working import Working

_OPERATIONS = {
    ast.Add: lambda left, right: left + right,
    ast.Sub: lambda left, right: left - right,
    ast.Mult: lambda left, right: left * right,
    ast.Div: lambda left, right: left / right,
    ast.Pow: lambda left, right: left**right,
}
_FUNCTIONS = {
    "sqrt": math.sqrt,
    "sin": lambda angle: math.sin(math.radians(angle)),
    "cos": lambda angle: math.cos(math.radians(angle)),
    "tan": lambda angle: math.tan(math.radians(angle)),
    "asin": lambda ratio: math.degrees(math.asin(ratio)),
    "atan": lambda ratio: math.degrees(math.atan(ratio)),
    "abs": abs,
    "max": max,
    "min": min,
}


def evaluate(text: str) -> float:
    """Return the value of an expression of numbers, + - * / ^, brackets and the functions of a Working.

    Angles are in degrees. Raises ValueError for anything else in the text.
    """
    plain_text = text.replace("^", "**").replace("×", "*").replace("·", "*").replace("−", "-")
    try:
        return _value(ast.parse(plain_text, mode="eval").body)
    except (SyntaxError, KeyError) as fault:
        raise ValueError(f"{text!r} cannot be worked out: {fault}") from None


def _value(node: ast.expr) -> float:
    match node:
        case ast.Constant(value=int() | float() as number) if not isinstance(number, bool):
            return float(number)
        case ast.UnaryOp(op=ast.USub(), operand=inner):
            return -_value(inner)
        case ast.UnaryOp(op=ast.UAdd(), operand=inner):
            return _value(inner)
        case ast.BinOp(left=left, op=operation, right=right):
            return _OPERATIONS[type(operation)](_value(left), _value(right))
        case ast.Call(func=ast.Name(id=name), args=arguments, keywords=[]):
            return _FUNCTIONS[name](*map(_value, arguments))
    raise ValueError(f"{ast.unparse(node)!r} is not arithmetic")


def range_by_rounding(working: Working) -> tuple[float, float]:
    """Return the least and greatest result that fit the printed numbers, each within half its last figure.

    A number that is printed in full counts as exact.
    """
    choices = []
    for term in working.terms:
        printed = float(term.printed)
        half = 0.0 if printed == term.value else 0.5 * 10**-term.digits
        ends = (printed,) if not half else (printed - half, printed, printed + half)
        choices.append([replace(term, value=end, digits=term.digits + 1) for end in ends])
    results = []
    for terms in itertools.product(*choices):
        try:
            results.append(evaluate(replace(working, terms=terms).substituted))
        except (ValueError, ZeroDivisionError):
            continue  # a corner outside the function's range, such as the arc sine of 1.0005
    return min(results), max(results)


def assert_comes_out(working: Working) -> None:
    """Check a Working as printed: the substitution gives the value, and the result is the value rounded."""
    least, greatest = range_by_rounding(working)
    slack = 1e-8 * max(1.0, abs(working.value))
    assert least - slack <= working.value <= greatest + slack, (
        f"{working.what}: {working.substituted} = {evaluate(working.substituted)}, value {working.value}"
    )
    printed = float(working.result.removesuffix(working.unit))
    assert abs(printed - working.value) <= 0.5 * 10**-working.digits + slack, (
        f"{working.what}: {working.result}"
    )
