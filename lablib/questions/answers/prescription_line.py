"""What a learner's written lens can mean, also where a ticket would be held until somebody answers.

The package's one reader reads it. A sign that is missing is tried both ways and an axis past 180 is taken
half a turn back, so that the answer keeps its meaning; neither is passed over in silence.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product

from lablib.errors import LabError
from lablib.optics.prescription import Prescription
from lablib.optics.reading import Reading, read
from lablib.optics.tokens import Token, quoted, tokens_of
from lablib.optics.unclear import AxisMissing, AxisWithoutCylinder, SignMissing, UnclearPrescription
from lablib.study.answer import Understood

_SPELLED = {
    "P": "plano",
    "S": "sph",
    "C": "cyl",
    "s": "DS",
    "c": "DC",
    "D": "D",
    "X": "x",
    "G": "°",
    "A": "add",
}
_ASK = "; ask the prescriber"
# What somebody does who has no prescriber to ask, by the name of what is unclear.
_NEXT = {
    AxisMissing.name: "; write its axis too, as in x 090",
    AxisWithoutCylinder.name: "; write the cylinder too, or leave the axis out",
}
_WRITTEN_AXIS = re.compile(r"(?<=x )[0-9]+")
# How each box is filled, and a line in which it can be read alone.
_BOXES = {
    "sphere": ("a power with its sign, as in -2.25, or plano", "{}"),
    "cylinder": ("a power with its sign, as in -1.50, or nothing where there is none", "plano / {} / x 90"),
    "axis": ("whole degrees, as in 090", "plano / -1.00 / {}"),
    "addition": ("a power, as in 2.25", "plano / {}"),
}
# What stands before an axis or an addition on a line, and need not stand in its box.
_MARKS = {"axis": ("X", "x "), "addition": ("A", "add ")}
BOXES = tuple(_BOXES)


@dataclass(frozen=True, slots=True, kw_only=True)
class Past180:
    """A lens whose axis stands half a turn too far on: x 210 for x 030.

    lens: the lens, with its axis where it belongs.

    Raises LabError for a sphere, which has no axis.
    """

    lens: Prescription

    def __post_init__(self) -> None:
        if not self.lens.cylinder_d:
            raise LabError(f"{self.lens} has no axis that can go past 180: give a lens with a cylinder")

    def __str__(self) -> str:
        return _WRITTEN_AXIS.sub(lambda axis: str(int(axis.group()) + 180), str(self.lens))


Lens = Prescription | Past180


def understood_line(line: str) -> Understood[Lens]:
    """Return the lens of a line; without a sign all lenses it can be; past 180 the one half a turn back.

    line: for example "+2.00 -1.50 x 090".

    Raises UnclearPrescription for anything else a reader would ask about, LabError for what is no lens.
    """
    tokens = tokens_of(line)
    try:
        return _signed(line, tokens)
    except UnclearPrescription:
        raise
    except LabError as refused:
        place = next((place for place in _axis_places(tokens) if _is_past(tokens[place])), None)
        if place is None:
            raise
        try:
            return _past(tokens, place)
        except UnclearPrescription as unclear:
            if any(isinstance(one, AxisWithoutCylinder) for one in (unclear, *unclear.others)):
                # Its words would name the axis half a turn back, which nobody wrote.
                raise refused from None
            raise
        except LabError:
            raise refused from None


def line_of_boxes(texts: Mapping[str, object]) -> str:
    """Return the line that the texts of the boxes make.

    texts: by the name of the box; empty ones are left out.

    Raises LabError that names the box, for an empty sphere and for a box that does not hold its part alone.
    """
    if "sphere" not in texts:
        raise LabError(f"the sphere box is empty: write {_BOXES['sphere'][0]}")
    return " / ".join(_checked(name, text) for name, text in texts.items())


def for_learner(unclear: UnclearPrescription) -> str:
    """Return all that is unclear in a written lens or prism, to whoever wrote it and has nobody to ask.

    unclear: as the reader raised it, with what else is unclear.
    """
    return "; ".join(_said(one) + _NEXT.get(one.name, "") for one in (unclear, *unclear.others))


def _said(unclear: UnclearPrescription) -> str:
    return str(unclear).partition(_ASK)[0]


def _signed(line: str, tokens: Sequence[Token]) -> Understood[Lens]:
    try:
        reading = read(line)
    except SignMissing as unclear:
        missing = (unclear, *unclear.others)
        if not all(isinstance(one, SignMissing) for one in missing):
            raise
        return _either_sign(tokens, tuple(_said(one) for one in missing))
    lens = reading.prescription
    return Understood(meanings=(lens,), words=str(lens), notes=reading.notes)


def _either_sign(tokens: Sequence[Token], faults: tuple[str, ...]) -> Understood[Lens]:
    places = [place for place in range(len(tokens)) if _lacks_sign(tokens, place)]
    readings = _with_signs(tokens, places)
    words, notes = str(readings[0].prescription).split(" "), "\n".join(readings[0].notes)
    for place in places:
        # The sphere is written first, the cylinder second.
        part = int(any(token.kind in "NP" for token in tokens[:place]))
        words[part:] = [word.lstrip("+-") for word in words[part : part + 1]] + words[part + 1 :]
        notes = re.sub(rf"[+-](?={re.escape(tokens[place].digits)}\b)", "", notes)
    return Understood(
        meanings=tuple(one.prescription for one in readings),
        words=" ".join(words),
        faults=faults,
        notes=tuple(notes.splitlines()),
    )


def _with_signs(tokens: Sequence[Token], places: Sequence[int]) -> list[Reading]:
    """Read a line with either sign at each of some places, leaving out what no lens can be."""
    readings, fault = [], None
    for signs in product("+-", repeat=len(places)):
        chosen = [*tokens]
        for place, sign in zip(places, signs, strict=True):
            chosen[place] = replace(tokens[place], sign=sign)
        try:
            readings.append(read(_as_line(chosen)))
        except LabError as out_of_range:
            fault = out_of_range
    if not readings:
        raise fault
    return readings


def _past(tokens: Sequence[Token], place: int) -> Understood[Lens]:
    written = tokens[place].digits
    back = [*tokens]
    back[place] = replace(tokens[place], digits=str(int(written) - 180))
    found = _signed(_as_line(back), back)
    return Understood(
        meanings=tuple(Past180(lens=lens) for lens in found.meanings),
        words=_WRITTEN_AXIS.sub(written, found.words),
        faults=found.faults,
        notes=(*found.notes, f"axis {written} goes past 180: an axis is written above 0 and up to 180"),
    )


def _is_past(token: Token) -> bool:
    return (
        not token.sign
        and token.digits.isdigit()
        and len(token.digits) == 3
        and 180 < int(token.digits) <= 360
    )


def _axis_places(tokens: Sequence[Token]) -> list[int]:
    """Where axes stand: after the mark of an axis, or before a degree sign."""
    kinds = "".join(token.kind for token in tokens)
    return [found.start() for found in re.finditer("(?<=X)N|N(?=G)", kinds)]


def _lacks_sign(tokens: Sequence[Token], place: int) -> bool:
    token = tokens[place]
    if token.kind != "N" or token.sign or not token.digits.strip("0.,"):
        return False
    is_addition = place > 0 and tokens[place - 1].kind == "A"
    return not is_addition and place not in _axis_places(tokens)


def _as_line(tokens: Sequence[Token]) -> str:
    return " ".join(
        token.sign + " " * token.gap + token.digits or _SPELLED.get(token.kind, "/") for token in tokens
    )


def _checked(name: str, text: object) -> str:
    """Return the text of one box as it stands on a line, or say what is wrong in that box."""
    how, around = _BOXES[name]
    if not isinstance(text, str):
        raise LabError(f"{name} box: this is not text: write {how}")
    try:
        kinds = [token.kind for token in tokens_of(text)]
    except LabError:
        kinds = []
    wrong = f"{name} box: {quoted(text)} is not one {name}: write {how}"
    if sum(kind in "NP" for kind in kinds) != 1:
        raise LabError(wrong)
    kind, mark = _MARKS.get(name, ("", ""))
    marked = text.strip() if kinds[0] == kind else mark + text.strip()
    _require_read(around.format(marked), name, text, wrong)
    return marked


def _require_read(line: str, name: str, text: str, wrong: str) -> None:
    try:
        understood_line(line)
    except UnclearPrescription:
        # Said of the whole line, where another box may clear it up.
        return
    except LabError as fault:
        said = str(fault).replace(quoted(line), quoted(text))
        raise LabError(wrong if said.startswith("prescription") else f"{name} box: {said}") from None
