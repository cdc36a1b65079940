"""What is done at the block, as a question: grip layer, wipe, film, cold pad, and what is no cure."""

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
    return read_table("lablib.questions.blocking", "decisions.toml")


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """Something met at the block.

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
class LayerCase:
    """A situation, and its options in the order shown.

    name: of `situations`; shown: keys of the options.
    """

    name: str
    shown: tuple[str, ...]

    @property
    def situation(self) -> Situation:
        """The situation."""
        return situations()[self.name]


class GripLayer(Maker[LayerCase]):
    """Say what is done before a lens goes on its block, and after it comes off."""

    name = "grip-layer"
    lesson = "10"
    skill = "surfaces-before-blocking"
    slips = tuple(Slip(name=name, **row) for name, row in _table()["slip"].items())

    def draw(self, draws: Draws) -> LayerCase:
        """Return a situation with its ways in any order."""
        name = draws.one_of(tuple(situations()))
        return LayerCase(name=name, shown=draws.shuffled((_RIGHT, *situations()[name].wrong)))

    def kind(self, case: LayerCase) -> ChoiceAnswer:
        """Return what can be done."""
        words = {_RIGHT: case.situation.right, **case.situation.wrong}
        return ChoiceAnswer(options=tuple(Option(key=key, words=words[key]) for key in case.shown))

    def answer(self, case: LayerCase, slips: Set[str] = NONE) -> str:
        """Return what is done, or what a slip leads to: an option has the name of its slip."""
        return next(iter(slips), _RIGHT)

    def slips_in(self, case: LayerCase) -> tuple[Slip, ...]:
        """Return the slips of the ways that are offered."""
        return tuple(slip for slip in self.slips if slip.name in case.situation.wrong)

    def pairs(self, case: LayerCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: LayerCase) -> tuple[str, ...]:
        """Return the situation and what is asked."""
        return f"In an invented lens room: {_inside(case.situation.words)}.", "What do you do?"

    def solution(self, case: LayerCase) -> Solution:
        """Return what is done, and why."""
        return Solution(words=(f"{case.situation.right}.", case.situation.reason))

    def hints(self, case: LayerCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Name the two surfaces that are to hold each other. What lies between them now?",
            "Which of the ways changes that, and which only presses harder on it, or spoils a surface?",
        )


def _inside(words: str) -> str:
    return words[0].lower() + words[1:]
