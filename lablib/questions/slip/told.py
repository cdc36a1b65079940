"""What a turn spoils in a lens with no cylinder, and what is never done against slip: several are picked."""

from abc import abstractmethod
from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_OFFERED, _FEWEST = 5, 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """Something that may be picked.

    key: its stable name; words: what it is; reason: why it belongs there, or why not.
    belongs: whether it is among what is asked for.
    slip: the mistake that can be made with it.
    """

    key: str
    words: str
    reason: str
    belongs: bool
    slip: Slip

    @property
    def mistake(self) -> WrongPick:
        """How the mistake shows among the picks."""
        return WrongPick(key=self.key, picked=not self.belongs)


def _table() -> dict:
    return read_table("lablib.questions.slip", "told.toml")


def _told(key: str, row: dict, *, belongs: bool, left_out: str, picked: str, step: str) -> Told:
    done = row["words"][0].lower() + row["words"][1:]
    ending, words = (left_out, "You left this out") if belongs else (picked, "You picked this")
    slip = Slip(name=f"{key}-{ending}", step=step, words=f"{words}: {done}. {row['reason']}")
    return Told(key=key, words=row["words"], reason=row["reason"], belongs=belongs, slip=slip)


@cache
def on_a_sphere() -> dict[str, Told]:
    """Return what may be spoiled in a lens with no cylinder by key, what stays sound behind it."""
    how = {"left_out": "overlooked", "picked": "thought-spoiled", "step": "what turns with the lens"}
    return {
        key: _told(key, row, belongs=kind == "spoiled", **how)
        for kind in ("spoiled", "sound")
        for key, row in _table()[kind].items()
    }


@cache
def against_slip() -> dict[str, Told]:
    """Return what is never done against slip by key, what is done behind it."""
    how = {"left_out": "not-refused", "picked": "refused", "step": "what harms lens, machine or hands"}
    return {
        key: _told(key, row, belongs=kind == "never", **how)
        for kind in ("never", "done")
        for key, row in _table()[kind].items()
    }


def lenses() -> dict[str, str]:
    """Return the lenses a turn is told of by key, in words."""
    return {key: row["words"] for key, row in _table()["lens"].items()}


def spoiled_on(lens: str) -> tuple[Told, ...]:
    """Return what a turn spoils in a lens.

    lens: a key of `lenses`.
    """
    rows = _table()["spoiled"]
    return tuple(on_a_sphere()[key] for key in rows if {"every", lens} & set(rows[key]["on"]))


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldCase:
    """What is offered, and of which lens.

    lens: a key of `lenses`, empty where no lens is told; offered: in the order shown.
    """

    lens: str
    offered: tuple[Told, ...]


class _Several(Maker[ToldCase]):
    """Asks to pick all that belong to something."""

    lesson = "12"

    def draw(self, draws: Draws) -> ToldCase:
        """Return two or three that belong there, among five."""
        lens, belong, others = self._drawn_from(draws)
        count = min(len(belong), _FEWEST + draws.whole(2))
        offered = (*draws.some(belong, count), *draws.some(others, _OFFERED - count))
        return ToldCase(lens=lens, offered=draws.shuffled(offered))

    @abstractmethod
    def _drawn_from(self, draws: Draws) -> tuple[str, tuple[Told, ...], tuple[Told, ...]]:
        """Return the lens, what belongs there and what does not."""

    def kind(self, case: ToldCase) -> SeveralAnswer:
        """Return what is offered."""
        return SeveralAnswer(options=tuple(Option(key=one.key, words=one.words) for one in case.offered))

    def answer(self, case: ToldCase, slips: Set[str] = NONE) -> object:
        """Return what belongs there, or the one pick that a slip is about."""
        for one in case.offered:
            if one.slip.name in slips:
                return one.mistake
        return frozenset(one.key for one in case.offered if one.belongs)

    def slips_in(self, case: ToldCase) -> tuple[Slip, ...]:
        """Return the slips about what is offered, in the order in which they are told."""
        offered = {one.slip for one in case.offered}
        return tuple(slip for slip in self.slips if slip in offered)

    def pairs(self, case: ToldCase, kind: SeveralAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each pick is seen by itself."""
        return ()

    def _reasons(self, case: ToldCase, *, belongs: str, other: str) -> tuple[str, ...]:
        """Return each with a verdict and its reason, those that belong there first."""
        ordered = sorted(case.offered, key=lambda one: not one.belongs)
        return tuple(f"{one.words}: {belongs if one.belongs else other}. {one.reason}" for one in ordered)


class TurnedSphere(_Several):
    """What a turn on the block spoils in a lens with no cylinder."""

    name = "turned-sphere"
    skill = "what-a-turn-does"
    slips = tuple(one.slip for one in on_a_sphere().values())

    def _drawn_from(self, draws: Draws) -> tuple[str, tuple[Told, ...], tuple[Told, ...]]:
        lens = draws.one_of(tuple(lenses()))
        return lens, spoiled_on(lens), tuple(one for one in on_a_sphere().values() if not one.belongs)

    def prompt(self, case: ToldCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"An invented job: {lenses()[case.lens]} turned on its block by some degrees.",
            "Which of these can the turn have spoiled? Pick all that apply.",
        )

    def solution(self, case: ToldCase) -> Solution:
        """Return each with its reason."""
        return Solution(
            words=(
                *self._reasons(case, belongs="yes", other="no"),
                "There is no axis limit for a lens with no cylinder, and still the turn is not harmless.",
            )
        )

    def hints(self, case: ToldCase) -> tuple[str, ...]:
        """Return what to ask of each."""
        return (
            "Ask of each: does it have a direction or a place, and does that go round with the lens?",
            "And what did the faces do to each other while the lens slid?",
        )


class NeverAgainstSlip(_Several):
    """What is never done against slip."""

    name = "never-against-slip"
    skill = "what-never-helps"
    slips = tuple(one.slip for one in against_slip().values())

    def _drawn_from(self, draws: Draws) -> tuple[str, tuple[Told, ...], tuple[Told, ...]]:
        known = against_slip().values()
        return "", tuple(one for one in known if one.belongs), tuple(one for one in known if not one.belongs)

    def prompt(self, case: ToldCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Lenses with a slick coat keep turning on their blocks, and everybody in an invented lens room "
            "has an idea.",
            "Which of these ideas are never carried out? Pick all of them.",
        )

    def solution(self, case: ToldCase) -> Solution:
        """Return each with its reason."""
        return Solution(
            words=(
                *self._reasons(case, belongs="never", other="this helps"),
                "This is common practice; the makers of lens, pad and machine have the last word.",
            )
        )

    def hints(self, case: ToldCase) -> tuple[str, ...]:
        """Return what to ask of each."""
        return (
            "Ask of each: could it harm the lens, the machine or a hand?",
            "Ask also: does it do away with the cause, or only cover it?",
        )
