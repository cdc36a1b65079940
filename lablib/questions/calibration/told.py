"""What is done with readings from the jig, and what may be claimed after a calibration."""

from collections.abc import Set
from dataclasses import dataclass
from types import MappingProxyType

from lablib.datafile import read_table
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_WRONG_SHOWN, _OFFERED, _FEWEST = 3, 5, 2
_CLAMP = "clamp"


def table() -> dict:
    """Return the readings, actions and claims as plain dictionaries; the caller must not change it."""
    return read_table("lablib.questions.calibration", "told.toml")


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingsCase:
    """Readings on the bench.

    readings: their key in the table; keys: of the actions offered, in the order shown.
    """

    readings: str
    keys: tuple[str, ...]

    @property
    def row(self) -> dict:
        """What the table says of them."""
        return table()["readings"][self.readings]


class ReadingsVerdict(PickMaker[ReadingsCase]):
    """Say what is done with readings: fitted, or refused with the reason."""

    name = "what-of-these-readings"
    lesson = "31"
    skill = "fit-or-refuse"
    by_option = MappingProxyType(
        {
            key: Slip(name=f"chose-{key}", step="what these readings can bear", words=row["wrong"])
            for key, row in table()["action"].items()
            if any(key in readings["offered"] for readings in table()["readings"].values())
        }
    )
    slips = tuple(by_option.values())

    def draw(self, draws: Draws) -> ReadingsCase:
        """Return readings, what is done with them and three other things."""
        readings = draws.one_of(tuple(table()["readings"]))
        row = table()["readings"][readings]
        offered = (row["right"], *draws.some(row["offered"], _WRONG_SHOWN))
        return ReadingsCase(readings=readings, keys=draws.shuffled(offered))

    def options(self, case: ReadingsCase) -> tuple[Option, ...]:
        """Return what may be done."""
        return tuple(Option(key=key, words=table()["action"][key]["words"]) for key in case.keys)

    def right(self, case: ReadingsCase) -> str:
        """Return the key of what is done."""
        return case.row["right"]

    def prompt(self, case: ReadingsCase) -> tuple[str, ...]:
        """Return the readings, and what is asked."""
        return (f"{case.row['words']} These readings are invented.", "What do you do with them?")

    def solution(self, case: ReadingsCase) -> Solution:
        """Return what is done, and why."""
        return Solution(words=(table()["action"][case.row["right"]]["words"], case.row["reason"]))

    def hints(self, case: ReadingsCase) -> tuple[str, ...]:
        """Return what to look at."""
        return (
            "Look at four things: which coat, which torque, which forces, and whether it still rises.",
            "If one of them is not in order, ask which of these would heal just that.",
        )


def _claim(key: str, row: dict, *, may: bool) -> tuple[Slip, WrongPick]:
    did, ending = ("left out", "left-out") if may else ("claimed", "claimed")
    said = row["words"][0].lower() + row["words"][1:-1]
    slip = Slip(
        name=f"{key}-{ending}",
        step="what was measured and what was not",
        words=f"You {did} this: {said}. {row['reason']}",
    )
    return slip, WrongPick(key=key, picked=not may)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimsCase:
    """Claims on offer.

    keys: of the table, in the order shown.
    """

    keys: tuple[str, ...]


class WhatMayBeClaimed(Maker[ClaimsCase]):
    """Pick what may be claimed after a calibration of one coat."""

    name = "what-may-be-claimed"
    lesson = "31"
    skill = "what-a-fit-allows"
    _may, _not = table()["may"], table()["not"]
    _slips = MappingProxyType(
        {key: _claim(key, row, may=True) for key, row in _may.items()}
        | {key: _claim(key, row, may=False) for key, row in _not.items()}
    )
    slips = tuple(slip for slip, _ in _slips.values())

    def draw(self, draws: Draws) -> ClaimsCase:
        """Return two or three that may be claimed, among five."""
        count = _FEWEST + draws.whole(2)
        chosen = (*draws.some(tuple(self._may), count), *draws.some(tuple(self._not), _OFFERED - count))
        return ClaimsCase(keys=draws.shuffled(chosen))

    def _words(self, key: str) -> str:
        return (self._may | self._not)[key]["words"]

    def kind(self, case: ClaimsCase) -> SeveralAnswer:
        """Return the claims on offer."""
        return SeveralAnswer(options=tuple(Option(key=key, words=self._words(key)) for key in case.keys))

    def answer(self, case: ClaimsCase, slips: Set[str] = NONE) -> object:
        """Return what may be claimed, or the one pick that a slip is about."""
        for key in case.keys:
            slip, pick = self._slips[key]
            if slip.name in slips:
                return pick
        return frozenset(key for key in case.keys if key in self._may)

    def slips_in(self, case: ClaimsCase) -> tuple[Slip, ...]:
        """Return the slips about what is offered."""
        return tuple(slip for key, (slip, _) in self._slips.items() if key in case.keys)

    def pairs(self, case: ClaimsCase, kind: SeveralAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each pick is seen by itself."""
        return ()

    def prompt(self, case: ClaimsCase) -> tuple[str, ...]:
        """Return what was measured, and what is asked."""
        return (
            "Twelve break-loose readings were taken in the jig: fresh pads of one make, one coat, a round "
            "block, 100 to 400 N. They rise evenly, and mu and tau were fitted with their errors. Nothing "
            "else was measured.",
            "Which of these may be claimed now? Pick all of them.",
        )

    def solution(self, case: ClaimsCase) -> Solution:
        """Return each with its reason, those that may be claimed first."""
        ordered = sorted(case.keys, key=lambda key: key not in self._may)
        return Solution(words=tuple(self._reason(key) for key in ordered))

    def _reason(self, key: str) -> str:
        yes = "Yes" if key in self._may else "No"
        return f"{self._words(key)} {yes}. {(self._may | self._not)[key]['reason']}"

    def hints(self, case: ClaimsCase) -> tuple[str, ...]:
        """Return what to ask of each."""
        return (
            "Ask of each: was this varied in the jig, or only assumed?",
            "A claim needs readings of just that: that coat, that force, that pad.",
        )
