"""What a lens shows in its frame, strain above all, and what is done about it, as a question."""

from collections.abc import Mapping, Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_RIGHT = "right"


def _table() -> dict:
    return read_table("lablib.questions.edges", "strain.toml")


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """Something met in the frame.

    words: what it is; right: what is done; reason: why.
    wrong: ways that attract, by the name of the slip that leads to each.
    """

    words: str
    right: str
    reason: str
    wrong: Mapping[str, str]


@cache
def situations() -> dict[str, Situation]:
    """Return the situations by name; the caller must not change them."""
    return {name: Situation(**row) for name, row in _table()["situation"].items()}


@dataclass(frozen=True, slots=True, kw_only=True)
class StrainCase:
    """A situation, and its options in the order shown.

    name: of `situations`; shown: keys of the options.
    """

    name: str
    shown: tuple[str, ...]

    @property
    def situation(self) -> Situation:
        """The situation."""
        return situations()[self.name]


class StrainSigns(Maker[StrainCase]):
    """Say what a sign in the mounted lens means, and what is done."""

    name = "strain-signs"
    lesson = "13"
    skill = "strain"
    slips = tuple(Slip(name=name, **row) for name, row in _table()["slip"].items())

    def draw(self, draws: Draws) -> StrainCase:
        """Return a situation with its ways in any order."""
        name = draws.one_of(tuple(situations()))
        return StrainCase(name=name, shown=draws.shuffled((_RIGHT, *situations()[name].wrong)))

    def kind(self, case: StrainCase) -> ChoiceAnswer:
        """Return what can be done."""
        words = {_RIGHT: case.situation.right, **case.situation.wrong}
        return ChoiceAnswer(options=tuple(Option(key=key, words=words[key]) for key in case.shown))

    def answer(self, case: StrainCase, slips: Set[str] = NONE) -> str:
        """Return what is done, or what a slip leads to: an option has the name of its slip."""
        return next(iter(slips), _RIGHT)

    def slips_in(self, case: StrainCase) -> tuple[Slip, ...]:
        """Return the slips of the ways that are offered."""
        return tuple(slip for slip in self.slips if slip.name in case.situation.wrong)

    def pairs(self, case: StrainCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: StrainCase) -> tuple[str, ...]:
        """Return the situation and what is asked."""
        return f"In an invented lens room: {_inside(case.situation.words)}.", "What do you do?"

    def solution(self, case: StrainCase) -> Solution:
        """Return what is done, and why."""
        return Solution(words=(f"{case.situation.right}.", case.situation.reason))

    def hints(self, case: StrainCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What presses where, or what is missing? Size, shape and the frame itself are three causes.",
            "Which way takes the cause away, and which only hides the sign?",
        )


def _inside(words: str) -> str:
    return words[0].lower() + words[1:]
