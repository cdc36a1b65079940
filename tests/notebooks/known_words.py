"""The glossary as it is looked for in text: its words however they are written."""

import re
from collections.abc import Iterable

from lablib.questions.glossary import Entry

# The words that hold English together. They are the same in every trade, and no new ones come.
_TEXT = """
a an the this that these those it its they them their he she you your we our i one ones both each every all
any some none no not and or nor but if then than as so at by for from in into of off on onto out over to
towards under up down with within without about above across after against along among around before behind
below beneath beside between beyond during near outside inside through until upon while where when which who
whose what why how whether is are was were be been being am has have had having do does did done may might
can could must shall should will would there here more most less least much many few only also too very just
first second third half two three four five six seven eight nine ten left right top bottom yes other another
same such
"""
GRAMMAR = frozenset(_TEXT.split())
WORD = re.compile(r"[^\W\d_]{2,}(?:['’]s)?")


class Known:
    """What a glossary knows, as it is looked for in text.

    entries: of the glossary.
    """

    def __init__(self, entries: Iterable[Entry]) -> None:
        self.entries = tuple(entries)
        self.signs = {(symbol, entry.unit) for entry in self.entries for symbol in entry.symbols}
        self._names = {words_of(name) for entry in self.entries for name in entry.names}
        self._longest = max(map(len, self._names), default=0)

    def left_over(self, text: str) -> list[str]:
        """Return the words of a text that stand in no name of the glossary and do not belong to grammar."""
        return [word for word in self.unknown(text).split() if word != "|" and word not in GRAMMAR]

    def unknown(self, text: str) -> str:
        """Return a text in plain words, with a stroke where a name of the glossary stands.

        text: of any length.
        """
        words, at, told = words_of(text), 0, []
        while at < len(words):
            size = self._size(words, at)
            told.append("|" if size else words[at])
            at += size or 1
        return f" {' '.join(told)} "

    def holds(self, text: str) -> bool:
        """Return whether any name of the glossary stands in a text."""
        words = words_of(text)
        return any(self._size(words, at) for at in range(len(words)))

    def _size(self, words: tuple[str, ...], at: int) -> int:
        """How many words the longest name has that stands at a place; 0 where none does."""
        sizes = range(self._longest, 0, -1)
        return next((size for size in sizes if words[at : at + size] in self._names), 0)


def words_of(text: str) -> tuple[str, ...]:
    """Return the words of a text, each in its plainest form; a single letter and a number are none."""
    return tuple(_plain(word) for word in WORD.findall(text.casefold()))


def _plain(word: str) -> str:
    """A word without what makes it plural or possessive."""
    bare = re.sub(r"['’]s$", "", word)
    bare = {"axes": "axis", "lenses": "lens"}.get(bare, bare)
    return bare if bare in GRAMMAR or len(bare) < 4 else re.sub(r"e?s?$", "", bare)
