"""What workings of powers and prism share: numbers printed in full, and steps in dioptres and degrees."""

import re
from collections.abc import Iterable
from dataclasses import replace

from lablib.optics.prescription import Prescription
from lablib.working import FUNCTIONS, Term, Working, plain

# More decimals than any power, axis or distance is written with.
_MOST_DIGITS = 4
_NAME = re.compile(r"[A-Za-z_][A-Za-z_0-9']*")


def in_full(symbol: str, value: float, unit: str, *, least_digits: int = 2, meaning: str = "") -> Term:
    """Return a number as a term, printed in full up to four decimals.

    symbol, value, unit, meaning: as in `Term`.
    least_digits: decimals that are printed in any case.
    """
    digits = next(
        (digits for digits in range(least_digits, _MOST_DIGITS) if float(plain(value, digits)) == value),
        _MOST_DIGITS,
    )
    return Term(symbol=symbol, value=value, unit=unit, digits=digits, meaning=meaning)


def power_term(symbol: str, power_d: float, meaning: str) -> Term:
    """Return a power as a term.

    symbol, meaning: as in `Term`; power_d: [D].
    """
    return in_full(symbol, power_d, "D", meaning=meaning)


def distance_term(symbol: str, distance_mm: float, meaning: str) -> Term:
    """Return a distance as a term.

    symbol, meaning: as in `Term`; distance_mm: [mm].
    """
    return in_full(symbol, distance_mm, "mm", least_digits=1, meaning=meaning)


def direction_term(symbol: str, angle_deg: float, meaning: str) -> Term:
    """Return an axis, a meridian or another direction as a term.

    symbol, meaning: as in `Term`; angle_deg: [degrees].
    """
    return in_full(symbol, angle_deg, "degrees", least_digits=0, meaning=meaning)


def prism_term(symbol: str, amount_prism_d: float, meaning: str) -> Term:
    """Return a prism as a term.

    symbol, meaning: as in `Term`; amount_prism_d: [prism D].
    """
    return in_full(symbol, amount_prism_d, "prism dioptres", meaning=meaning)


def sphere_and_cylinder(rx: Prescription) -> tuple[Term, Term]:
    """Return sphere S and cylinder C of a prescription as terms.

    rx: the prescription.
    """
    return power_term("S", rx.sphere_d, "sphere"), power_term("C", rx.cylinder_d, "cylinder")


def axis_term(rx: Prescription) -> Term:
    """Return the axis A of a prescription as a term.

    rx: a prescription with a cylinder.
    """
    return direction_term("A", rx.axis_deg, "axis")


def power_step(
    what: str,
    symbol: str,
    formula: str,
    terms: tuple[Term, ...],
    value: float,
    *,
    digits: int = 2,
    source: str = "",
) -> Working:
    """Return a step whose result is a power in dioptres.

    what, symbol, formula, terms, value, digits, source: as in `Working`.
    """
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="D",
        digits=digits,
        source=source,
    )


def prism_step(
    what: str, symbol: str, formula: str, terms: tuple[Term, ...], value: float, *, source: str = ""
) -> Working:
    """Return a step whose result is a prism in prism dioptres.

    what, symbol, formula, terms, value, source: as in `Working`.
    """
    return Working(
        what=what,
        symbol=symbol,
        formula=formula,
        terms=terms,
        value=value,
        unit="prism dioptres",
        source=source,
    )


def quarter_turn_step(what: str, symbol: str, angle: Term, value: float) -> Working:
    """Return the step from an axis or meridian to the one at right angles to it.

    what, symbol: as in `Working`.
    angle: the axis or meridian, above 0 and up to 180 [degrees].
    value: the one at right angles to it [degrees].
    """
    return Working(
        what=what,
        symbol=symbol,
        formula=f"{angle.symbol} {'-' if angle.value > 90.0 else '+'} 90",
        terms=(angle,),
        value=value,
        unit="degrees",
        digits=angle.digits,
    )


def marked(steps: Iterable[Working], mark: str, *, whose: str) -> tuple[Working, ...]:
    """Return steps with a mark behind every symbol, so that those of two eyes can stand in one chain.

    steps: the steps.
    mark: what is put behind each symbol, for example "_R".
    whose: what is put before each name, for example "right eye".
    """

    def name(found: re.Match) -> str:
        return found.group() if found.group() in FUNCTIONS else found.group() + mark

    return tuple(
        replace(
            step,
            what=f"{whose}: {step.what}",
            symbol=step.symbol + mark,
            formula=_NAME.sub(name, step.formula),
            terms=tuple(replace(term, symbol=term.symbol + mark) for term in step.terms),
        )
        for step in steps
    )
