"""Reading a prescription from a line of text: a value, or words that say what is wrong with it.

Nothing is guessed. What a careful reader would ask about (no sign, no axis, no decimal point) is
raised with the question; what cannot be read at all is raised with the way to write it. How
prescriptions are written, and the slips looked for, are common practice, no source.
"""

import re
from dataclasses import dataclass

from lablib.errors import LabError
from lablib.optics import power
from lablib.optics.prescription import Prescription
from lablib.optics.tokens import HOW_TO_WRITE, Token, quoted, tokens_of
from lablib.optics.unclear import (
    AxisMissing,
    AxisWithoutCylinder,
    PointMissing,
    SignMissing,
    UnclearPrescription,
)

# Over the kinds of the tokens, one letter each (see `tokens`): sphere, cylinder, axis, addition.
_ORDER = re.compile(
    r"S?(?P<sphere>[NP])(?:D?S|s|D)?"
    r"(?:/?C?(?P<cylinder>N)(?:D?C|c|D)?)?"
    r"(?:/?(?:X(?P<axis>N)G?|(?P<ringed>N)G))?"
    r"(?:/?A(?P<addition>N)D?)?"
)
_POWER = re.compile(r"[0-9]{1,2}|[0-9]{0,2}[.,][0-9]{1,4}")
_WITHOUT_POINT = re.compile(r"[0-9]{2,4}")
_AXIS = re.compile(r"[0-9]{1,3}")
# What may stand after the point: eighths are written with two decimals, cut off or rounded, or with three.
_STEPS = {"", "12", "125", "13", "25", "37", "375", "38", "5", "62", "625", "63", "75", "87", "875", "88"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """What a line of text was read as.

    prescription: the value.
    notes: what a reader should know about how the text was taken, one sentence each.
    """

    prescription: Prescription
    notes: tuple[str, ...] = ()


def read(text: str) -> Reading:
    """Return the prescription that a line of text holds, with notes on how it was taken.

    text: sphere, cylinder, axis and addition in this order, for example "+2.00 -1.50 x 090 add 2.25".
        Cylinder plus or minus; "plano", "pl", DS, DC, D, sph, cyl; point or comma; the axis after x, @,
        ax or axis or with a degree sign; spaces, slashes, or commas between the parts.

    Raises UnclearPrescription (SignMissing, AxisMissing, AxisWithoutCylinder, PointMissing) with the
    question to ask, and LabError for text that is no prescription.
    """
    tokens = tokens_of(text)
    parts = _parts(tokens, text)
    axis, axis_notes = _axis(parts, text)
    _raise_unclear(parts, text)
    prescription = Prescription(
        sphere_d=_power_d(parts["sphere"]),
        cylinder_d=_power_d(parts["cylinder"]),
        axis_deg=axis,
        addition_d=_power_d(parts["addition"]),
    )
    return Reading(prescription=prescription, notes=(*_power_notes(parts), *axis_notes))


def _parts(tokens: list[Token], text: str) -> dict[str, Token | None]:
    kinds = "".join(token.kind for token in tokens)
    order = _ORDER.fullmatch(kinds)
    if order is None:
        raise LabError(f"prescription {quoted(text)} {_why_not(kinds)}")
    found = {name: tokens[order.start(name)] for name, letter in order.groupdict().items() if letter}
    axis = found.get("axis") or found.get("ringed")
    parts = {name: found.get(name) for name in ("sphere", "cylinder", "addition")} | {"axis": axis}
    for name, token in _written_powers(parts):
        _require_power(name, token, text)
    return parts


def _why_not(kinds: str) -> str:
    if kinds.count("X") > 1 or kinds.count("G") > 1:
        return (
            "gives a power in each of two meridians, or two cylinders, and is not read: "
            f"work out sphere, cylinder and axis and {HOW_TO_WRITE}"
        )
    if not re.search("[NP]", kinds):
        return f"holds no power: {HOW_TO_WRITE}"
    if kinds.startswith("A"):
        return f"begins with an addition: write the sphere before it, or plano; {HOW_TO_WRITE}"
    if kinds.startswith("C") or re.match("[NP]D?[cC]", kinds):
        return f"has a cylinder but no sphere: write the sphere before it, or plano; {HOW_TO_WRITE}"
    if "X" not in kinds and re.match(r"S?[NP][sSD]*/?C?N[cCD]*/?N", kinds):
        return (
            "has a third number without a mark: write x before an axis and add before an addition; "
            f"{HOW_TO_WRITE}"
        )
    return f"is not in the order sphere, cylinder, axis, addition: {HOW_TO_WRITE}"


def _require_power(name: str, token: Token, text: str) -> None:
    if not (_POWER.fullmatch(token.digits) or _WITHOUT_POINT.fullmatch(token.digits)):
        raise LabError(
            f"{name} {token.written} in {quoted(text)} is not a power: give dioptres with up to two figures "
            "before the point and up to four after it, as in -2.25"
        )
    if name == "addition" and token.sign == "-":
        raise LabError(
            f"addition {token.written} in {quoted(text)} is minus: an addition is plus; check whether it is "
            "the cylinder or the power for near"
        )


def _axis(parts: dict[str, Token | None], text: str) -> tuple[float | None, tuple[str, ...]]:
    token = parts["axis"]
    if token is None:
        return None, ()
    if token.sign or not _AXIS.fullmatch(token.digits):
        raise LabError(
            f"axis {token.written} in {quoted(text)} is not a cylinder axis: give whole degrees above 0 and "
            "up to 180, without a sign or a point"
        )
    if int(token.digits) == 0:
        return 180.0, (f"axis {token.digits} is read as 180, which is how this axis is written",)
    return power.require_axis(int(token.digits)), ()


def _raise_unclear(parts: dict[str, Token | None], text: str) -> None:
    """Raise the first thing to ask about; the rest go along with it, so that one call asks them all."""
    as_written = text.strip()
    unclear: list[UnclearPrescription] = []
    for name, token in _written_powers(parts):
        if len(token.digits) > 1 and not re.search("[.,]", token.digits):
            unclear.append(PointMissing(name, token.written, as_written=as_written))
        if not token.sign and name != "addition" and re.search("[1-9]", token.digits):
            unclear.append(SignMissing(name, token.written, as_written=as_written))
    cylinder, axis = parts["cylinder"], parts["axis"]
    if _power_d(cylinder) and not axis:
        unclear.append(AxisMissing(cylinder.written, as_written=as_written))
    if axis and not _power_d(cylinder):
        unclear.append(AxisWithoutCylinder(axis.written, as_written=as_written))
    if unclear:
        unclear[0].others = tuple(unclear[1:])
        raise unclear[0]


def _written_powers(parts: dict[str, Token | None]) -> list[tuple[str, Token]]:
    named = [(name, parts[name]) for name in ("sphere", "cylinder", "addition")]
    return [(name, token) for name, token in named if token and token.kind == "N"]


def _power_d(token: Token | None) -> float:
    if token is None or token.kind == "P":
        return 0.0
    return float(token.sign + token.digits.replace(",", "."))


def _power_notes(parts: dict[str, Token | None]) -> tuple[str, ...]:
    notes = []
    for name, token in _written_powers(parts):
        if token.gap:
            notes.append(f"{name}: the sign before {token.digits} stands apart and is read as its sign")
        fraction = re.split("[.,]", token.digits + ".")[1]
        if fraction.rstrip("0") not in _STEPS:
            notes.append(f"{name} {token.written} is not in quarters or eighths and is taken as written")
    return tuple(notes)
