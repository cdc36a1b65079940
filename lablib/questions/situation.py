"""Something met at the bench and ways to go on: one is right, each of the others has its own slip."""

from collections.abc import Mapping, Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """Something met at the bench.

    words: what it is; right: what is done; reason: why.
    wrong: ways that attract, by the name of the slip that leads to each.
    """

    words: str
    right: str
    reason: str
    wrong: Mapping[str, str]


@cache
def situations(package: str, name: str) -> Mapping[str, Situation]:
    """Return the situations of a table by name; the caller must not change them.

    package, name: of the TOML file, whose tables are `situation.*` and `slip.*`.
    """
    rows = read_table(package, name)["situation"]
    return {key: Situation(**row) for key, row in rows.items()}


def slips_of(package: str, name: str) -> tuple[Slip, ...]:
    """Return the slips of a table.

    package, name: as in `situations`.
    """
    return tuple(Slip(name=key, **row) for key, row in read_table(package, name)["slip"].items())


@dataclass(frozen=True, slots=True, kw_only=True)
class SituationCase:
    """A situation, and its options in the order shown.

    situation: what is met; shown: keys of the options.
    """

    situation: Situation
    shown: tuple[str, ...]


class SituationMaker(Maker[SituationCase]):
    """Say what is done in a situation of a table; a subclass names the table in `table` and gives hints."""

    table: tuple[str, str]

    def draw(self, draws: Draws) -> SituationCase:
        """Return a situation with its ways in any order."""
        known = situations(*self.table)
        situation = known[draws.one_of(tuple(known))]
        return SituationCase(situation=situation, shown=draws.shuffled((_RIGHT, *situation.wrong)))

    def kind(self, case: SituationCase) -> ChoiceAnswer:
        """Return what can be done."""
        words = {_RIGHT: case.situation.right, **case.situation.wrong}
        return ChoiceAnswer(options=tuple(Option(key=key, words=words[key]) for key in case.shown))

    def answer(self, case: SituationCase, slips: Set[str] = NONE) -> str:
        """Return what is done, or what a slip leads to: an option has the name of its slip."""
        return next(iter(slips), _RIGHT)

    def slips_in(self, case: SituationCase) -> tuple[Slip, ...]:
        """Return the slips of the ways that are offered."""
        return tuple(slip for slip in self.slips if slip.name in case.situation.wrong)

    def pairs(
        self, case: SituationCase, kind: ChoiceAnswer, known: tuple[object, ...]
    ) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: SituationCase) -> tuple[str, ...]:
        """Return the situation and what is asked."""
        words = case.situation.words
        return f"In an invented lens room: {words[0].lower()}{words[1:]}.", "What do you do?"

    def solution(self, case: SituationCase) -> Solution:
        """Return what is done, and why."""
        return Solution(words=(f"{case.situation.right}.", case.situation.reason))
