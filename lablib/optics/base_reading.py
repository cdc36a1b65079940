"""Reading a base direction, or a prism with its base, from a line of text.

Nothing is guessed: an amount without a base is raised with the question to ask, and what cannot be read
is raised with the way to write it. How prisms are written is common practice, no source.
"""

import re
from dataclasses import dataclass
from itertools import pairwise

from lablib.errors import LabError
from lablib.optics.eye import Eye
from lablib.optics.prism import Prism, resultant
from lablib.optics.tokens import LONGEST, quoted
from lablib.optics.unclear import BaseMissing

HOW_TO_WRITE_BASE = 'write one direction and no amount, like "base in", "BI" or, in degrees, "37"'
HOW_TO_WRITE_PRISM = 'write it like "2.50 base up", "2.50 BU, 1.00 BI" or "2.50 @ 37"'

_DIOPTRE = ("dioptre", "dioptres", "diopter", "diopters")
# One letter for each kind of piece: W a direction, B base, T at, G degrees, U prism dioptres, J between two
# amounts, Z no prism; N is a number.
_WORDS = {
    "W": ("in", "out", "up", "down", "nasal", "temporal", "bi", "bo", "bu", "bd"),
    "B": ("base",),
    "T": ("@", "at"),
    "G": ("degrees", "degree", "deg", "°"),
    "U": ("δ", "∆", "^", "prism", "prism d", *(f"prism {name}" for name in _DIOPTRE)),
    "J": (",", ";", "/", "&", "and", "with"),
    "Z": ("no prism", "none"),
}
_KIND = {word: kind for kind, words in _WORDS.items() for word in words}
# A word ends where its letters end, so that "prism down" holds no "prism d".
_WORD = "|".join(
    re.escape(word) + ("(?![a-z])" if word[-1].isascii() and word[-1].isalpha() else "")
    for word in sorted(_KIND, key=len, reverse=True)
)
_PIECE = re.compile(
    rf"(?P<sign>[+-]?) *(?P<digits>[0-9]+(?:[.,][0-9]+)?|\.[0-9]+)|base-(?=[a-z])|(?P<word>{_WORD})"
)
_UNKNOWN = re.compile(r"[a-z]+|.", re.DOTALL)
_DIRECTION = {"nasal": "in", "temporal": "out", "bi": "in", "bo": "out", "bu": "up", "bd": "down"}
_OPPOSITE = {"in": "out", "out": "in", "up": "down", "down": "up"}
_ACROSS = ("in", "out")

# Over the kinds of the pieces.
_BASE = r"(?:B?W|B?TNG?|BNG?|NG)"
_ONE_BASE = re.compile(rf"{_BASE}|N")
_AMOUNT = re.compile(rf"NU?{_BASE}|B?WNU?|NU?")
_PRISM = re.compile(rf"Z|(?:{_AMOUNT.pattern})(?:J?(?:{_AMOUNT.pattern}))?")
_SIZE = re.compile(r"[0-9]{1,3}(?:[.,][0-9]{1,4})?|\.[0-9]{1,4}")

# What a keyboard or a word processor puts for the plain character.
_PLAIN = str.maketrans(
    dict.fromkeys("\u2010\u2011\u2012\u2013\u2212", "-")
    | dict.fromkeys("\u00a0\u2007\u2009\u202f\t", " ")
    | dict.fromkeys("\u00ba\u02da", "°")
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PrismReading:
    """What a line of text was read as.

    prisms: one prism, or one in or out and one up or down; none at all for no prism.
    turned: for each minus amount, which was turned round to the opposite base, the words that say so.
    """

    prisms: tuple[Prism, ...]
    turned: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    kind: str
    sign: str = ""
    digits: str = ""
    word: str = ""

    @property
    def size(self) -> float:
        return float(self.digits.replace(",", "."))


def read_base(text: str) -> str | float:
    """Return the base direction a line of text holds: "in", "out", "up" or "down", or degrees from 0 to 360.

    text: for example "in", "base in", "BI", "nasal", "37", "base at 37 degrees"; capitals do not matter.

    Raises LabError for text that is not one base direction.
    """
    pieces = _pieces(text, "base direction", HOW_TO_WRITE_BASE)
    if not _ONE_BASE.fullmatch("".join(piece.kind for piece in pieces)):
        raise LabError(f"base direction {quoted(text)} {_why_no_base(pieces)}: {HOW_TO_WRITE_BASE}")
    return _base(pieces, text)


def read_prism(text: str) -> PrismReading:
    """Return the prism a line of text holds.

    text: an amount and its base, for example "2.50 base up", "2.5 BU", "2.5 @ 37"; or one amount in or out
        and one up or down, "5.50 base down, 0.87 in"; or "0" or "no prism".

    Raises BaseMissing for an amount without a base, LabError for text that is no prism.
    """
    pieces = _pieces(text, "prism", HOW_TO_WRITE_PRISM)
    kinds = "".join(piece.kind for piece in pieces)
    if not _PRISM.fullmatch(kinds):
        raise LabError(f"prism {quoted(text)} {_why_no_prism(kinds)}: {HOW_TO_WRITE_PRISM}")
    _refuse_dash(pieces, text)
    parts = [pieces[found.start() : found.end()] for found in _AMOUNT.finditer(kinds)]
    read = [_one_prism(part, text) for part in parts]
    prisms = tuple(prism for prism, _ in read if prism is not None)
    _require_two_directions(prisms, text)
    return PrismReading(prisms=prisms, turned=tuple(said for _, said in read if said))


def base_direction_deg(base: str | float, *, eye: Eye | str) -> float:
    """Return a base direction in the 360 notation, from 0 and below 360 [degrees].

    base: "in", "out", "up" or "down", or degrees from 0 to 360.
    eye: the eye it is for; in is 0 for the right eye and 180 for the left.

    Raises LabError for another direction or no eye.
    """
    in_prism_d, up_prism_d = Prism(amount_prism_d=1.0, base=base).resolved(eye=eye)
    return resultant(eye=eye, in_prism_d=in_prism_d, up_prism_d=up_prism_d).base


def _pieces(text: str, thing: str, how: str) -> list[_Piece]:
    if not isinstance(text, str):
        raise LabError(f"{thing} is not text: {how}")
    line = text.strip()
    if not line:
        raise LabError(f"{thing} is empty: {how}")
    if len(line) > LONGEST:
        raise LabError(f"{thing} {quoted(line)} is longer than {LONGEST} characters: {how}")
    lowered = line.translate(_PLAIN).lower()
    pieces, place = [], 0
    while place < len(lowered):
        if lowered[place] == " ":
            place += 1
            continue
        found = _PIECE.match(lowered, place)
        if found is None:
            raise LabError(f"{thing} {quoted(line)} {_why_unknown(lowered, place)}: {how}")
        pieces.append(_piece(found))
        place = found.end()
    return pieces


def _piece(found: re.Match) -> _Piece:
    if found["digits"]:
        return _Piece(kind="N", sign=found["sign"], digits=found["digits"])
    word = found["word"] or "base"
    return _Piece(kind=_KIND[word], word=_DIRECTION.get(word, word))


def _why_unknown(line: str, place: int) -> str:
    piece = _UNKNOWN.match(line, place).group()
    if piece == "d":
        return "has a D that can be dioptres or down"
    if piece in ("i", "o", "u"):
        return f"has the letter {piece.upper()} alone for a base direction"
    if piece in "+-":
        return f"has a {piece} with no number after it"
    return f"holds {piece!r}, which belongs to no prism and no base direction"


def _why_no_base(pieces: list[_Piece]) -> str:
    directions = sum(piece.kind in "WN" for piece in pieces)
    if directions > 1:
        return "is more than a direction"
    return "is not in the order of a direction" if directions else "names no direction"


def _why_no_prism(kinds: str) -> str:
    if "N" not in kinds:
        return "has no amount"
    if "W" in kinds and {"T", "G"} & {*kinds}:
        return "gives a base as a word and in degrees"
    if "G" in kinds and not re.search(r"N.*N", kinds):
        return "has a direction in degrees and no amount"
    if len(re.findall("N(?!G)", kinds)) > 2:
        return "holds more than one amount in or out and one up or down"
    return "is not an amount and its base after it"


def _refuse_dash(pieces: list[_Piece], text: str) -> None:
    """Refuse a minus in the middle, which can be a dash or a sign."""
    for before, piece in pairwise(pieces):
        if piece.sign == "-" and before.kind in "WNGU":
            raise LabError(
                f"prism {quoted(text)} has a - before {piece.digits} that can be a dash or a sign: leave it "
                f"out, or write and between two amounts; {HOW_TO_WRITE_PRISM}"
            )


def _one_prism(part: list[_Piece], text: str) -> tuple[Prism | None, str]:
    """Return one prism, None for an amount of nothing, and what is to be said of a minus amount."""
    amount = next(piece for piece in part if piece.kind == "N")
    if not _SIZE.fullmatch(amount.digits):
        raise LabError(
            f"amount {amount.digits} in {quoted(text)} is not read: give prism dioptres with up to three "
            "figures before the point and up to four after it"
        )
    rest = [piece for piece in part if piece is not amount and piece.kind != "U"]
    if not rest and not amount.size:
        return None, ""
    if not rest:
        raise BaseMissing(amount.digits, as_written=text.strip())
    base = _base(rest, text)
    if amount.sign != "-" or not amount.size:
        return Prism(amount_prism_d=amount.size, base=base), ""
    turned = _OPPOSITE[base] if isinstance(base, str) else (base + 180.0) % 360.0
    said = f"a minus amount is read as the opposite base, {_spoken(base)} as {_spoken(turned)}"
    return Prism(amount_prism_d=amount.size, base=turned), said


def _base(pieces: list[_Piece], text: str) -> str | float:
    piece = next(piece for piece in pieces if piece.kind in "WN")
    if piece.kind == "W":
        return piece.word
    if piece.sign or not _SIZE.fullmatch(piece.digits) or piece.size > 360.0:
        raise LabError(
            f"base direction {piece.sign}{piece.digits} in {quoted(text)} is not a direction: give degrees "
            "from 0 to 360 without a sign"
        )
    return piece.size


def _spoken(base: str | float) -> str:
    return f"base {base}" if isinstance(base, str) else f"base {base:g} degrees"


def _require_two_directions(prisms: tuple[Prism, ...], text: str) -> None:
    if len(prisms) < 2:
        return
    across = [prism.base in _ACROSS for prism in prisms]
    if any(not isinstance(prism.base, str) for prism in prisms) or sorted(across) != [False, True]:
        raise LabError(
            f"prism {quoted(text)} is not one amount in or out with one up or down: put them together first; "
            f"{HOW_TO_WRITE_PRISM}"
        )
