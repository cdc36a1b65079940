"""Hazards of the edger and what guards against them, as a question."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_OPTIONS = 5
_FEWEST = 2
_LEFT_OUT = "-left-out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """Something people do about a hazard of the edger.

    key: its stable name.
    words: what is done.
    guards: whether it guards; else it is a bad idea.
    hazards: keys of the hazards for which it is offered.
    reason: why it guards, or why it does not.
    """

    key: str
    words: str
    guards: bool
    hazards: tuple[str, ...]
    reason: str

    @property
    def slip(self) -> Slip:
        """The mistake that can be made with it: to leave it out, or to pick it."""
        done = self.words[0].lower() + self.words[1:]
        if self.guards:
            return Slip(
                name=f"{self.key}{_LEFT_OUT}",
                step="what keeps this hazard away",
                words=f"You left this out: {done}. {self.reason}",
            )
        return Slip(
            name=self.key,
            step="whether it takes you away from the hazard, or nearer to it",
            words=f"You picked this: {done}. {self.reason}",
        )

    @property
    def mistake(self) -> WrongPick:
        """How the mistake shows among the picks."""
        return WrongPick(key=self.key, picked=not self.guards)


def _table() -> dict:
    return read_table("lablib.questions.start_here", "hazards.toml")


def hazards() -> dict[str, str]:
    """Return the hazards by key, in words."""
    return {key: row["words"] for key, row in _table()["hazard"].items()}


@cache
def measures() -> dict[str, Measure]:
    """Return guards and bad ideas by key."""
    found = {}
    for guards, kind, where in ((True, "guard", "against"), (False, "bad", "tempts")):
        for key, row in _table()[kind].items():
            found[key] = Measure(
                key=key,
                words=row["words"],
                guards=guards,
                hazards=tuple(row[where]),
                reason=row["reason"],
            )
    return found


def most_dangerous_first() -> tuple[Measure, ...]:
    """Return guards and bad ideas in the order in which mistakes with them are told."""
    first = _table()["told_first"]
    others = sorted((one for key, one in measures().items() if key not in first), key=lambda one: one.guards)
    return (*(measures()[key] for key in first), *others)


@dataclass(frozen=True, slots=True, kw_only=True)
class HazardCase:
    """One hazard and what is offered against it.

    hazard: its key; offered: keys of measures, in the order shown.
    """

    hazard: str
    offered: tuple[str, ...]

    @property
    def measures(self) -> tuple[Measure, ...]:
        """What is offered."""
        return tuple(measures()[key] for key in self.offered)


class HazardsAndGuards(Maker[HazardCase]):
    """Tell what guards against one hazard from what makes it worse."""

    name = "hazards-and-guards"
    lesson = "01"
    skill = "guards-against-hazards"
    slips = tuple(measure.slip for measure in most_dangerous_first())

    def draw(self, draws: Draws) -> HazardCase:
        """Return a hazard with two or three guards and as many bad ideas as make five."""
        hazard = draws.one_of(tuple(hazards()))
        known = [one for one in measures().values() if hazard in one.hazards]
        count = _FEWEST + draws.whole(2)
        good = draws.some([one.key for one in known if one.guards], count)
        bad = draws.some([one.key for one in known if not one.guards], _OPTIONS - count)
        return HazardCase(hazard=hazard, offered=draws.shuffled((*good, *bad)))

    def kind(self, case: HazardCase) -> AnswerKind:
        """Return what is offered."""
        return SeveralAnswer(options=tuple(Option(key=one.key, words=one.words) for one in case.measures))

    def answer(self, case: HazardCase, slips: Set[str] = NONE) -> object:
        """Return what guards, or the one measure that a slip is about."""
        for one in case.measures:
            if one.slip.name in slips:
                return one.mistake
        return frozenset(one.key for one in case.measures if one.guards)

    def slips_in(self, case: HazardCase) -> tuple[Slip, ...]:
        """Return the slips about what is offered, the most dangerous first."""
        return tuple(slip for slip in self.slips if slip in {one.slip for one in case.measures})

    def pairs(self, case: HazardCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each measure is seen by itself."""
        return ()

    def prompt(self, case: HazardCase) -> tuple[str, ...]:
        """Return the hazard, the caution, and what is asked."""
        return (
            f"A hazard of the edger: {hazards()[case.hazard]}",
            "In your lens room the local rules and the machine's manual come first; what is asked here is "
            "common practice.",
            "Which of these guard against this hazard? Pick all that do.",
        )

    def solution(self, case: HazardCase) -> Solution:
        """Return each measure with its reason, those that guard first."""
        good = [one for one in case.measures if one.guards]
        bad = [one for one in case.measures if not one.guards]
        return Solution(
            words=(
                *(f"{one.words}: yes. {one.reason}" for one in good),
                *(f"{one.words}: no. {one.reason}" for one in bad),
            )
        )

    def hints(self, case: HazardCase) -> tuple[str, ...]:
        """Return what to ask of each measure."""
        return (
            "Ask of each measure: does it keep you away from the hazard, or does it bring a hand, a sleeve "
            "or an eye nearer to it?",
            "Ask as well what happens on a bad day: when you are in a hurry, when the lens breaks, when the "
            "wheel catches what touches it.",
        )
