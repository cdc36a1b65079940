"""A second reader of prescriptions, slow and written another way: it tries every way to read a text.

It walks character by character and follows all branches at once, so it shows both what a text can
mean and whether it can mean two things.
"""

from collections.abc import Iterator
from decimal import Decimal

FIGURES = "0123456789"
MINUS = "\u2010\u2011\u2012\u2013\u2212\ufe63"
SPACES = "\t\u00a0\u2007\u2009\u202f\u3000"
DEGREE = "\u00ba\u02da"
SPHERE_UNITS = ("", "d", "ds", "dsph", "sph", "sphere", "dsphere")
CYLINDER_UNITS = ("", "d", "dc", "dcyl", "cyl", "cylinder", "dcylinder")
SEPARATORS = ("", "/", ",", ";")

Meaning = tuple[Decimal, Decimal, int | None, Decimal]


def simple(letter: str) -> str:
    """Return one character as the keyboard has it."""
    if 0xFF01 <= ord(letter) <= 0xFF5E:
        letter = chr(ord(letter) - 0xFEE0)
    for likes, plain in ((MINUS, "-"), (SPACES, " "), (DEGREE, "°")):
        if letter in likes:
            return plain
    return letter.lower() if ord(letter) < 128 else letter


def meanings(text: str) -> set[Meaning]:
    """Return everything a text can mean for certain, as sphere, cylinder, axis, addition."""
    line = "".join(map(simple, text.strip()))
    found = set()
    for sphere, after_sphere in _sphere(line):
        for cylinder, after_cylinder in _cylinder(line, after_sphere):
            for axis, after_axis in _axis(line, after_cylinder):
                for addition, end in _addition(line, after_axis):
                    if _skip(line, end) == len(line) and (cylinder != 0) == (axis is not None):
                        found.add((sphere, cylinder, axis, addition))
    return found


def _sphere(line: str) -> Iterator[tuple[Decimal, int]]:
    for at in _words(line, 0, ("", "sph", "sphere")):
        for value, after in _powers(line, at):
            for end in _words(line, after, SPHERE_UNITS):
                yield value, end
        for after in _words(line, at, ("plano", "pl")):
            for end in _words(line, after, SPHERE_UNITS):
                yield Decimal(0), end


def _cylinder(line: str, start: int) -> Iterator[tuple[Decimal, int]]:
    yield Decimal(0), start
    for at in _words(line, start, SEPARATORS):
        for after_label in _words(line, at, ("", "cyl", "cylinder")):
            for value, after in _powers(line, after_label):
                for end in _words(line, after, CYLINDER_UNITS):
                    yield value, end


def _axis(line: str, start: int) -> Iterator[tuple[int | None, int]]:
    yield None, start
    for at in _words(line, start, SEPARATORS):
        for marks, degrees in (
            (("x", "×", "@", "ax", "axis"), ("", "°", "deg", "degrees")),
            (("",), ("°", "deg", "degrees")),
        ):
            for after_mark in _words(line, at, marks):
                sign, figures, after = _number(line, after_mark)
                whole = 0 < len(figures) <= 3 and all(figure in FIGURES for figure in figures)
                if whole and not sign and int(figures) <= 180:
                    for end in _words(line, after, degrees):
                        yield int(figures) or 180, end


def _addition(line: str, start: int) -> Iterator[tuple[Decimal, int]]:
    yield Decimal(0), start
    for at in _words(line, start, SEPARATORS):
        for after_word in _words(line, at, ("add", "addition")):
            for value, after in _powers(line, after_word, sign_needed=False):
                for end in _words(line, after, ("", "d")):
                    yield value, end


def _words(line: str, at: int, words: tuple[str, ...]) -> Iterator[int]:
    """Yield the place after each of some words, letter by letter with spaces between the pieces allowed."""
    for word in words:
        if not word:
            yield at
            continue
        begin = _skip(line, at)
        if line[begin : begin + len(word)] == word:
            yield begin + len(word)
        elif len(word) > 1 and word[0] == "d" and line[begin : begin + 1] == "d":
            rest = _skip(line, begin + 1)
            if word[1:] in ("sph", "sphere", "cyl", "cylinder") and line[rest:].startswith(word[1:]):
                yield rest + len(word) - 1


def _powers(line: str, at: int, *, sign_needed: bool = True) -> Iterator[tuple[Decimal, int]]:
    sign, figures, after = _number(line, at)
    whole, point, fraction = figures.replace(",", ".").partition(".")
    plain = figures and all(figure in FIGURES for figure in whole + fraction)
    if not plain or bool(point) != bool(fraction) or len(fraction) > 4 or len(whole) > (2 if point else 1):
        return
    value = Decimal(f"{whole or '0'}.{fraction or '0'}")
    if value and sign_needed and not sign:
        return
    if sign == "-" and not sign_needed:
        return
    yield (-value if sign == "-" else value), after


def _number(line: str, at: int) -> tuple[str, str, int]:
    """Return sign, figures with their points and commas, and the place after them."""
    at = _skip(line, at)
    sign = line[at : at + 1] if line[at : at + 1] in ("+", "-") else ""
    begin = end = _skip(line, at + 1) if sign else at
    while end < len(line) and (
        line[end] in FIGURES
        or line[end] == "."
        or (line[end] == "," and line[end + 1 : end + 2] in [*FIGURES])
    ):
        end += 1
    return sign, line[begin:end], end


def _skip(line: str, at: int) -> int:
    while at < len(line) and line[at] == " ":
        at += 1
    return at
