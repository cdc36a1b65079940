"""The pieces a written prescription is made of: powers, units, axis marks, separators.

Each token has a kind of one letter: N number, P plano, S sph, C cyl, s DS, c DC, D dioptre, X axis mark,
G degree sign, A add, / separator.
"""

import re
from dataclasses import dataclass

from lablib.errors import LabError

HOW_TO_WRITE = 'write it like "+2.00 -1.50 x 090" or "-3.25 DS"'
LONGEST = 100

_WORDS = {
    "P": ("plano", "pl"),
    "S": ("sphere", "sph"),
    "C": ("cylinder", "cyl"),
    "s": ("ds", "dsph"),
    "c": ("dc", "dcyl"),
    "D": ("d",),
    "X": ("axis", "ax", "x", "×", "@"),
    "G": ("degrees", "deg", "°"),
    "A": ("addition", "add"),
    "/": ("/", ",", ";"),
}
_KIND = {word: kind for kind, words in _WORDS.items() for word in words}
_WORD = "|".join(re.escape(word) for word in sorted(_KIND, key=len, reverse=True))
# A comma is a decimal comma only with a figure after it; otherwise it stands between two parts.
_TOKEN = re.compile(rf"(?:([+-])( *))?((?:[0-9.]|,(?=[0-9]))+)|({_WORD})")

# What a keyboard, a phone or a word processor puts for the plain character. Anything else is refused.
_PLAIN = str.maketrans(
    dict.fromkeys("\u2010\u2011\u2012\u2013\u2212\ufe63", "-")
    | dict.fromkeys("\u00a0\u2007\u2009\u202f\u3000\t", " ")
    | dict.fromkeys("\u00ba\u02da", "°")
    | {chr(code): chr(code - 0xFEE0) for code in range(0xFF01, 0xFF5F)}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """One piece of a written prescription.

    kind: its letter, see above.
    sign: "+", "-" or nothing.
    gap: whether a space stands between sign and figures.
    digits: figures with their point or comma, as written.
    """

    kind: str
    sign: str = ""
    gap: bool = False
    digits: str = ""

    @property
    def written(self) -> str:
        """Sign and figures together."""
        return self.sign + self.digits


def tokens_of(text: str) -> list[Token]:
    """Return the pieces of a written prescription, in order.

    text: one line.

    Raises LabError for anything but a line of at most 100 characters made of such pieces.
    """
    if not isinstance(text, str):
        raise LabError(f"prescription {text!r} is not text: {HOW_TO_WRITE}")
    line = text.strip().translate(_PLAIN)
    if not line:
        raise LabError(f"prescription is empty: {HOW_TO_WRITE}")
    if len(line) > LONGEST:
        raise LabError(f"prescription {quoted(text)} is longer than {LONGEST} characters: {HOW_TO_WRITE}")
    lowered = line.lower()
    tokens, place = [], 0
    while place < len(lowered):
        if lowered[place] == " ":
            place += 1
            continue
        piece = _TOKEN.match(lowered, place)
        if piece is None:
            raise LabError(f"prescription {quoted(text)} {_why_not(line, place)}")
        tokens.append(_token(piece))
        place = piece.end()
    return tokens


def _token(piece: re.Match) -> Token:
    sign, gap, digits, word = piece.groups()
    if word:
        return Token(kind=_KIND[word])
    return Token(kind="N", sign=sign or "", gap=bool(gap), digits=digits)


def _why_not(line: str, place: int) -> str:
    letter = line[place]
    if letter in "oO" and place and line[place - 1].isdigit():
        return (
            f"has a letter {letter} after a figure, for a nought or for a degree sign: write the axis in "
            "three figures, as in 005 or 050"
        )
    if letter in "\r\n":
        return f"runs over more than one line: give one eye on one line; {HOW_TO_WRITE}"
    if letter in "+-":
        return f"has a {letter} with no figure after it: {HOW_TO_WRITE}"
    return f"holds {letter!r}, which belongs to no prescription: {HOW_TO_WRITE}"


def quoted(text: str) -> str:
    """Return a text in quotation marks for a message, shortened when long.

    text: what was given.
    """
    shown = text.strip()
    return repr(shown if len(shown) <= 60 else shown[:57] + "...")
