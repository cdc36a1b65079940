"""Changes at the bench and which way torque goes, as a question."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

LESS, MORE, SAME = "less", "more", "same"
_SHOWN, _FEWEST, _MOST = 6, 2, 4
_LETTERS = "ABCDEF"
_WAYS = {LESS: "less torque", MORE: "more torque", SAME: "the same torque"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """Something that is changed before a cut.

    theme: what it is about; words: what it is.
    does: "less", "more" or "same", of the greatest cutting torque; reason: why.
    """

    theme: str
    words: str
    does: str
    reason: str


@cache
def changes() -> dict[str, Change]:
    """Return the changes by name; the caller must not change them."""
    rows = read_table("lablib.questions.cutting", "changes.toml")["change"]
    return {name: Change(**row) for name, row in rows.items()}


def _slip(change: Change) -> Slip:
    if change.does == LESS:
        return Slip(
            name=f"{change.theme}-missed",
            step="what turns the lens in the cut",
            words=f"You left this out, and it lowers the torque: {change.words}. {change.reason}",
        )
    tells = "it raises the torque" if change.does == MORE else "the torque stays as it is"
    step = "what turns the lens in the cut" if change.does == MORE else "what holds a lens and what turns it"
    return Slip(
        name=f"{change.theme}-picked",
        step=step,
        words=f"You picked this, and {tells}: {change.words}. {change.reason}",
    )


def _about(theme: str, *, less: bool) -> tuple[str, ...]:
    """Changes of a theme that lower the torque, or those that do not."""
    return tuple(name for name, one in changes().items() if one.theme == theme and (one.does == LESS) == less)


def _themes() -> tuple[str, ...]:
    return tuple(dict.fromkeys(change.theme for change in changes().values()))


def _declared() -> tuple[Slip, ...]:
    """One slip of each name; its words are those of the change it is made with."""
    return tuple({_slip(change).name: _slip(change) for change in changes().values()}.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangesCase:
    """Several changes, in the order shown: names of `changes`."""

    shown: tuple[str, ...]


class WhichWayTorqueGoes(Maker[ChangesCase]):
    """Pick the changes that lower the greatest cutting torque."""

    name = "which-way-torque-goes"
    lesson = "11"
    skill = "torque-directions"
    slips = _declared()

    def draw(self, draws: Draws) -> ChangesCase:
        """Return two to four changes that lower it, among others that raise it or leave it."""
        count = _FEWEST + draws.whole(_MOST - _FEWEST + 1)
        less = draws.some([theme for theme in _themes() if _about(theme, less=True)], count)
        others = [theme for theme in _themes() if theme not in less and _about(theme, less=False)]
        shown = [draws.one_of(_about(theme, less=True)) for theme in less]
        shown += [draws.one_of(_about(theme, less=False)) for theme in draws.some(others, _SHOWN - count)]
        return ChangesCase(shown=draws.shuffled(shown))

    def kind(self, case: ChangesCase) -> SeveralAnswer:
        """Return the changes with a letter each."""
        return SeveralAnswer(
            options=tuple(
                Option(key=name, words=f"{letter}: {changes()[name].words}")
                for letter, name in zip(_LETTERS, case.shown, strict=True)
            )
        )

    def slips_in(self, case: ChangesCase) -> tuple[Slip, ...]:
        """Return the slip of each change."""
        return tuple(_slip(changes()[name]) for name in case.shown)

    def answer(self, case: ChangesCase, slips: Set[str] = NONE) -> object:
        """Return the changes that lower the torque, or the one that a slip is about."""
        for name in case.shown:
            if _slip(changes()[name]).name in slips:
                return WrongPick(key=name, picked=changes()[name].does != LESS)
        return frozenset(name for name in case.shown if changes()[name].does == LESS)

    def pairs(self, case: ChangesCase, kind: SeveralAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each slip is seen by itself."""
        return ()

    def prompt(self, case: ChangesCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "An invented lens of -8.00 D and index 1.67 is to be cut from a round blank of 72 mm, with depth "
            "control, 2 mm bites and a sharp wheel. Here are six changes, each made alone.",
            "Pick every one that lowers the greatest cutting torque: what turns the lens, not what holds it.",
        )

    def solution(self, case: ChangesCase) -> Solution:
        """Return which way each goes, and why."""
        lettered = zip(_LETTERS, case.shown, strict=True)
        return Solution(
            words=tuple(
                f"{letter}: {_WAYS[changes()[name].does]}. {changes()[name].reason}"
                for letter, name in lettered
            )
        )

    def hints(self, case: ChangesCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First put aside what only changes the grip of block, pad and tip.",
            "For the rest, ask what it does to how much comes off in a second, to the wheel's rim speed, to "
            "the thickness under the wheel and to the arm.",
        )
