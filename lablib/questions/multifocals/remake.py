"""A question about a pair of progressives of which one lens is made anew."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

from lablib.datafile import read_table
from lablib.optics.eye import EYES, Eye
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Option, SeveralAnswer, WrongPick
from lablib.study.question import Mistake, Slip, Solution

_OFFERED = 5
_FEWEST = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Trait:
    """Something two lenses of a pair may have in common.

    key: its stable name; words: what it is; reason: why it matters, or why it does not.
    is_alike: whether a remade lens must have it as the kept one.
    """

    key: str
    words: str
    reason: str
    is_alike: bool

    @property
    def slip(self) -> Slip:
        """The mistake that can be made with it: to leave it out, or to pick it."""
        done = self.words[0].lower() + self.words[1:]
        if self.is_alike:
            return Slip(
                name=f"{self.key}-left-out",
                step="what both eyes look through at once",
                words=f"You left this out: {done}. {self.reason}",
            )
        return Slip(
            name=f"{self.key}-copied",
            step="what belongs to one eye alone",
            words=f"You picked this: {done}. {self.reason}",
        )


@cache
def traits() -> tuple[Trait, ...]:
    """Return everything that may be offered, what must be alike first."""
    table = read_table("lablib.questions.multifocals", "remake.toml")
    return tuple(
        Trait(key=key, is_alike=kind == "alike", **row)
        for kind in ("alike", "unlike")
        for key, row in table[kind].items()
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RemakeCase:
    """A lens to be remade.

    eye: its eye; offered: what may have to be alike, in the order shown.
    """

    eye: Eye
    offered: tuple[Trait, ...]


class RemakeOne(Maker[RemakeCase]):
    """What a remade progressive must have in common with the lens that is kept."""

    name = "remake-one"
    lesson = "08"
    skill = "remake-one-of-a-pair"
    slips = tuple(trait.slip for trait in traits())

    def draw(self, draws: Draws) -> RemakeCase:
        """Return an eye, and two or three traits that must be alike among five."""
        count = _FEWEST + draws.whole(2)
        alike = draws.some([one for one in traits() if one.is_alike], count)
        unlike = draws.some([one for one in traits() if not one.is_alike], _OFFERED - count)
        return RemakeCase(eye=draws.one_of(EYES), offered=draws.shuffled((*alike, *unlike)))

    def kind(self, case: RemakeCase) -> SeveralAnswer:
        """Return what is offered."""
        return SeveralAnswer(options=tuple(Option(key=one.key, words=one.words) for one in case.offered))

    def answer(self, case: RemakeCase, slips: Set[str] = NONE) -> object:
        """Return what must be alike, or the one trait that a slip is about."""
        for one in case.offered:
            if one.slip.name in slips:
                return WrongPick(key=one.key, picked=not one.is_alike)
        return frozenset(one.key for one in case.offered if one.is_alike)

    def slips_in(self, case: RemakeCase) -> tuple[Slip, ...]:
        """Return the slips about what is offered."""
        return tuple(one.slip for one in traits() if one in case.offered)

    def pairs(self, case: RemakeCase, kind: SeveralAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each trait is seen by itself."""
        return ()

    def prompt(self, case: RemakeCase) -> tuple[str, ...]:
        """Return the job and what is asked."""
        return (
            f"An invented pair of progressives. The {case.eye} lens was spoiled and is made anew; the "
            f"{case.eye.other} lens is kept.",
            "What must the new lens have as the kept lens has it? Pick all that apply.",
        )

    def solution(self, case: RemakeCase) -> Solution:
        """Return each trait with its reason, those that must be alike first."""
        ordered = sorted(case.offered, key=lambda one: not one.is_alike)
        return Solution(
            words=tuple(f"{one.words}: {'yes' if one.is_alike else 'no'}. {one.reason}" for one in ordered)
        )

    def hints(self, case: RemakeCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Ask of each: do both eyes look through it at once, or does it belong to one eye alone?",
            "Where would a difference be seen, by the wearer or by those who face the wearer?",
        )
