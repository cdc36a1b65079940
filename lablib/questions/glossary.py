"""The glossary: the trade's words, each with what it means, its symbol, its unit and where it is taught."""

import re
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.errors import LabError, require_one_of

STANDARDS = {
    "ISO 13666": "spectacle lenses, vocabulary",
    "ISO 8624": "measuring system for spectacle frames",
    "ISO 8429": "graduated dial scale",
    "common practice": "what the trade says",
    "our own word": "made for this workbook",
}
_LESSON = re.compile(r"\d\d")
# How many kinds of fit `Entry.fit` tells apart.
_FITS = 4
# Enough to say what a thing is; a lesson says the rest.
_MOST_WORDS = 45


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One word of the glossary, checked once when it is made.

    word: as the trade writes it.
    meaning: one to three short sentences.
    lesson: number of the lesson that teaches it, two digits.
    standard: whose word it is, one of `STANDARDS`.
    other: other names, those on panels among them.
    symbols: as they stand in workings.
    unit: as workings print it; empty for a pure number and where there is nothing to measure.

    Raises LabError for a part that is empty or is not of its kind.
    """

    word: str
    meaning: str
    lesson: str
    standard: str
    other: tuple[str, ...] = ()
    symbols: tuple[str, ...] = ()
    unit: str = ""

    def __post_init__(self) -> None:
        thing = f"glossary: {self.word!r}"
        for name in (*self.names, *self.symbols):
            if not isinstance(name, str) or not name or name != name.strip():
                raise LabError(f"{thing} has the name or symbol {name!r}: give one without spaces around it")
        if not self.meaning.endswith(".") or not 1 <= len(self.meaning.split()) <= _MOST_WORDS:
            raise LabError(
                f"{thing} has the meaning {self.meaning!r}: give 1 to {_MOST_WORDS} words that end with a "
                "full stop"
            )
        if not _LESSON.fullmatch(self.lesson):
            raise LabError(f"{thing} has the lesson {self.lesson!r}: give its number in two digits")
        require_one_of(f"{thing}: standard", self.standard, tuple(STANDARDS))

    @property
    def names(self) -> tuple[str, ...]:
        """The word itself, then its other names."""
        return (self.word, *self.other)

    def fit(self, wanted: str) -> int | None:
        """Return how well the entry answers to what is looked for: 0 is best, None is not at all.

        wanted: what was typed.
        """
        typed = wanted.strip()
        low = typed.casefold()
        names = [name.casefold() for name in self.names]
        if low in names or typed in self.symbols:
            return 0
        if any(name.startswith(low) for name in names):
            return 1
        if all(_has_start(part, names) for part in low.split()):
            return 2
        whole = [" ".join((*names, self.meaning.casefold(), self.lesson, self.standard.casefold()))]
        return 3 if all(_has_start(part, whole) for part in low.split()) else None


def _has_start(part: str, texts: list[str]) -> bool:
    """Whether a word in any of the texts begins with it: "pin" is in "two pins" and not in "spinning"."""
    return any(re.search(rf"(?<!\w){re.escape(part)}", text) for text in texts)


@cache
def entries() -> tuple[Entry, ...]:
    """Return every entry, in the order of the alphabet.

    Raises LabError for an entry that is not complete, or a name that two entries have.
    """
    return glossary_of(read_table("lablib.questions", "glossary.toml")["entry"])


def glossary_of(table: dict) -> tuple[Entry, ...]:
    """Return the entries of a table, in the order of the alphabet.

    table: for each word, its parts as in `Entry`.

    Raises LabError as `entries` does.
    """
    made = [_entry(word, row) for word, row in table.items()]
    seen: dict[str, str] = {}
    for entry in made:
        for name in entry.names:
            first = seen.setdefault(name.casefold(), entry.word)
            if first is not entry.word:
                raise LabError(
                    f"glossary: {name!r} stands under {first!r} and under {entry.word!r}: leave it with one"
                )
    return tuple(sorted(made, key=lambda entry: entry.word.casefold()))


def _entry(word: str, row: dict) -> Entry:
    try:
        return Entry(
            word=word, **{key: tuple(part) if isinstance(part, list) else part for key, part in row.items()}
        )
    except TypeError as fault:
        raise LabError(f"glossary: {word!r} has not the parts of an entry ({fault}): see Entry") from None


def found(wanted: str) -> tuple[Entry, ...]:
    """Return the entries that answer to what is looked for, the best first, all of them for an empty text.

    wanted: a word, the beginning of one, several of them, a symbol, a lesson's number or a standard.
    """
    if not wanted.strip():
        return entries()
    fits = [(entry.fit(wanted), entry) for entry in entries()]
    return tuple(entry for best in range(_FITS) for fit, entry in fits if fit == best)
