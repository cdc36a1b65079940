"""A result together with how it was reached: formula, numbers put in, value, unit and source.

The value always comes from the function that computes it for everybody else; the working only
shows the steps. A test evaluates each printed substitution against the value it claims.
"""

import re
from dataclasses import dataclass

from lablib.errors import LabError

# A formula is written with these, with numbers, and with the symbols of its terms. Angles are in degrees.
FUNCTIONS = ("sqrt", "sin", "cos", "tan", "asin", "atan", "abs", "max", "min")
_NAME = re.compile(r"[A-Za-z_][A-Za-z_0-9']*")


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """One number put into a formula.

    symbol: as it stands in the formula.
    value: the number.
    unit: the trade's unit, empty for a pure number.
    digits: decimals to print; enough of them that the printed sum comes out.
    meaning: what the symbol stands for.
    """

    symbol: str
    value: float
    unit: str = ""
    digits: int = 2
    meaning: str = ""

    @property
    def printed(self) -> str:
        """The number as it is printed, without its unit."""
        return plain(self.value, self.digits)

    @property
    def stated(self) -> str:
        """The whole term as it is given to a reader; a power carries its sign, as the trade writes it."""
        sign = "+" if self.unit == "D" and self.printed.strip("-0.") and self.value > 0 else ""
        return f"{self.symbol} = {sign}{self.printed} {self.unit}".rstrip()


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """One step a learner can follow and check by hand.

    what: the result's name in words.
    symbol: its symbol.
    formula: the right-hand side, in the symbols of the terms.
    terms: every number put in.
    value: the result, from the numeric function.
    unit: its unit, empty for a pure number.
    digits: decimals to print.
    source: where the formula was taken from; empty where it is plain arithmetic.

    Raises LabError when the formula holds a symbol that no term explains.
    """

    what: str
    symbol: str
    formula: str
    terms: tuple[Term, ...]
    value: float
    unit: str = ""
    digits: int = 2
    source: str = ""

    def __post_init__(self) -> None:
        known = {term.symbol for term in self.terms} | set(FUNCTIONS)
        for name in _NAME.findall(self.formula):
            if name not in known:
                raise LabError(
                    f"working of {self.what}: {name!r} stands in the formula but no term explains it: "
                    f"add a Term for {name!r}"
                )

    @property
    def substituted(self) -> str:
        """The formula with the numbers put in."""
        numbers = {term.symbol: term.printed for term in self.terms}

        def number(match: re.Match) -> str:
            printed = numbers.get(match.group(), match.group())
            first = match.start() == 0 and not self.formula.startswith("^", match.end())
            return f"({printed})" if printed.startswith("-") and not first else printed

        return _NAME.sub(number, self.formula)

    @property
    def result(self) -> str:
        """The value as it is printed, with its unit."""
        return f"{plain(self.value, self.digits)} {self.unit}".rstrip()

    def as_term(self, meaning: str = "") -> Term:
        """Return the result as a number to put into the next step."""
        return Term(
            symbol=self.symbol,
            value=self.value,
            unit=self.unit,
            digits=self.digits,
            meaning=meaning or self.what,
        )

    def lines(self) -> list[str]:
        """Return the working as text: what it is, the formula, the numbers, the source."""
        indent = " " * (len(self.symbol) + 3)
        where = [
            f"{term.symbol} = {term.printed} {term.unit}".rstrip() + f", {term.meaning}"
            for term in self.terms
            if term.meaning
        ]
        return [
            self.what,
            f"  {self.symbol} = {self.formula}",
            f"{indent}= {self.substituted}",
            f"{indent}= {self.result}",
            *(f"    {line}" for line in where),
            *([f"    source: {self.source}"] if self.source else []),
        ]

    def __str__(self) -> str:
        return "\n".join(self.lines())


def plain(value: float, digits: int) -> str:
    """Return a number with so many decimals and never a signed zero.

    value: the number.
    digits: decimals.
    """
    text = f"{value:.{digits}f}"
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text
