"""What is done for cleaning and hygiene at a bench, and what is not, as a question."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_SHOWN, _FEWEST, _MOST = 5, 2, 3
_LETTERS = "ABCDE"


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """Something people do at a bench.

    theme: what it is about; words: what is done; done: whether it should be; reason: why.
    """

    theme: str
    words: str
    done: bool
    reason: str


@cache
def items() -> dict[str, Item]:
    """Return what people do, by name; the caller must not change it."""
    rows = read_table("lablib.questions.bench_care", "hygiene.toml")["item"]
    return {name: Item(**row) for name, row in rows.items()}


def _slip(name: str) -> Slip:
    item = items()[name]
    done = item.words[0].lower() + item.words[1:]
    told, verb = ("left this out", "left-out") if item.done else ("picked this", "picked")
    return Slip(
        name=f"{name}-{verb}",
        step="what keeps people, lenses and bench clean and whole",
        words=f"You {told}: {done}. {item.reason}",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HygieneCase:
    """What is offered, in the order shown: names of `items`."""

    shown: tuple[str, ...]


class BenchHygiene(Maker[HygieneCase]):
    """Pick what is done."""

    name = "bench-hygiene"
    lesson = "15"
    skill = "cleaning-and-hygiene"
    slips = tuple(map(_slip, items()))

    def draw(self, draws: Draws) -> HygieneCase:
        """Return two or three good habits among five, no two about the same thing."""
        themes = draws.some(tuple(dict.fromkeys(item.theme for item in items().values())), _SHOWN)
        good = _FEWEST + draws.whole(_MOST - _FEWEST + 1)
        shown = [draws.one_of(_about(theme, done=at < good)) for at, theme in enumerate(themes)]
        return HygieneCase(shown=draws.shuffled(shown))

    def kind(self, case: HygieneCase) -> SeveralAnswer:
        """Return what is offered, with a letter each."""
        return SeveralAnswer(
            options=tuple(
                Option(key=name, words=f"{letter}: {items()[name].words}.")
                for letter, name in zip(_LETTERS, case.shown, strict=True)
            )
        )

    def slips_in(self, case: HygieneCase) -> tuple[Slip, ...]:
        """Return the slip of each."""
        return tuple(map(_slip, case.shown))

    def answer(self, case: HygieneCase, slips: Set[str] = NONE) -> object:
        """Return what is done, or the one that a slip is about."""
        for name in case.shown:
            if _slip(name).name in slips:
                return WrongPick(key=name, picked=not items()[name].done)
        return frozenset(name for name in case.shown if items()[name].done)

    def pairs(self, case: HygieneCase, kind: SeveralAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each slip is seen by itself."""
        return ()

    def prompt(self, case: HygieneCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Here are five habits that people have at a bench.",
            "Pick every one that is good for people, lenses and bench.",
        )

    def solution(self, case: HygieneCase) -> Solution:
        """Return each with its reason."""
        lettered = zip(_LETTERS, case.shown, strict=True)
        return Solution(
            words=tuple(
                f"{letter}: {'yes' if items()[name].done else 'no'}. {items()[name].reason}"
                for letter, name in lettered
            )
        )

    def hints(self, case: HygieneCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Ask of each: where does the dirt go, and who meets it next?",
            "First put aside what brings a hand to something that turns.",
        )


def _about(theme: str, *, done: bool) -> tuple[str, ...]:
    return tuple(name for name, item in items().items() if item.theme == theme and item.done == done)
