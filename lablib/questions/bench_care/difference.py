"""Twelve against eight, as a question: what a difference between two counts shows."""

from dataclasses import dataclass
from functools import cache

from lablib.bench.trials import two_ways_p
from lablib.questions.slip.picking import PickMaker
from lablib.study.draws import Draws
from lablib.study.picked import Option
from lablib.study.question import Slip, Solution

# Above the first a difference shows nothing, below the second something; what lies between is not asked.
_OPEN, _SHOWN = 0.2, 0.01
_STEP = "what a difference between two counts shows"
_PROOF = Slip(
    name="difference-read-as-proof",
    step=_STEP,
    words="You read a difference as proof. Chance alone makes one as large quite often, without any "
    "difference between the two ways.",
)
_DOUBT = Slip(
    name="proof-not-believed",
    step=_STEP,
    words="You kept it open. Chance alone hardly ever makes a difference as large as this one, so there is "
    "something behind it.",
)
_ALIKE = Slip(
    name="read-as-alike",
    step=_STEP,
    words="You said that both ways are alike. Counts never show that: what is not shown may be there all the "
    "same.",
)
_TURNED = Slip(
    name="chance-turned-round",
    step="whose chance the figure is",
    words="You turned the figure round. It says how often chance makes such a difference where there is "
    "none. It does not say how likely it is that there is one.",
)
_KEYS = ("shown", "open", "alike", "turned")


@dataclass(frozen=True, slots=True, kw_only=True)
class DifferenceCase:
    """Lenses cut in two ways, as many in each.

    of: lenses each way; old, new: spoiled; keys: of the options in the order shown.
    """

    of: int
    old: int
    new: int
    keys: tuple[str, ...]

    @property
    def chance(self) -> float:
        """How often chance alone makes as large a difference."""
        return _chance(self.old, self.new, self.of)


@cache
def _chance(old: int, new: int, of: int) -> float:
    return two_ways_p(old, of, new, of)


class DifferenceShown(PickMaker[DifferenceCase]):
    """Say what a difference between two counts shows."""

    name = "difference-shown"
    lesson = "15"
    skill = "difference-and-chance"
    slips = (_PROOF, _DOUBT, _ALIKE, _TURNED)

    def draw(self, draws: Draws) -> DifferenceCase:
        """Return a difference that shows nothing, or one that shows something, as often."""
        draw, fits = draws.one_of(((_small, _shows_nothing), (_large, _shows_something)))
        return draws.until("a difference", draw, fits)

    def options(self, case: DifferenceCase) -> tuple[Option, ...]:
        """Return what might be said."""
        sure = f"{100.0 * (1.0 - case.chance):.0f}" if case.chance > _OPEN else "more than 99"
        words = {
            "shown": "The new way spoils fewer lenses.",
            "open": "Nothing is shown: the new way may be better or not.",
            "alike": "Both ways are alike.",
            "turned": f"The new way is better with a chance of {sure} in 100.",
        }
        return tuple(Option(key=key, words=words[key]) for key in case.keys)

    def right(self, case: DifferenceCase) -> str:
        """Return the key of what may be said."""
        return "open" if case.chance > _OPEN else "shown"

    def slip_of(self, case: DifferenceCase, key: str) -> Slip:
        """Return the slip that leads to a wrong option."""
        return {"shown": _PROOF, "open": _DOUBT, "alike": _ALIKE, "turned": _TURNED}[key]

    def prompt(self, case: DifferenceCase) -> tuple[str, ...]:
        """Return both counts, what chance does, and what is asked."""
        return (
            f"An invented lens room cuts {case.of} lenses the old way and {case.of} a new way, lens by lens "
            f"in turn. The old way spoils {case.old}, the new way {case.new}.",
            "If both ways were alike, chance alone would make a difference at least as large in "
            f"{1000.0 * case.chance:.0f} of 1,000 such trials.",
            "What may be said?",
        )

    def solution(self, case: DifferenceCase) -> Solution:
        """Return why."""
        return Solution(
            words=(
                (
                    "A difference that chance makes that often is no proof. It is no proof that both are "
                    "alike either: the trial is too small to tell."
                    if case.chance > _OPEN
                    else "Chance alone hardly ever makes so large a difference: something is behind it. "
                    "Whether it was the new way or what went with it, only a fair trial tells."
                ),
                "The figure is the chance of the counts where there is no difference. It is never the chance "
                "that one way is better.",
            )
        )

    def hints(self, case: DifferenceCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Would such a difference surprise you where both ways are alike?",
            "What was not shown: is that the same as shown not to be?",
        )


def _small(draws: Draws) -> DifferenceCase:
    old = 9 + draws.whole(10)
    return _case(draws, old, old - 2 - draws.whole(4))


def _large(draws: Draws) -> DifferenceCase:
    return _case(draws, 18 + draws.whole(8), 2 + draws.whole(4))


def _case(draws: Draws, old: int, new: int) -> DifferenceCase:
    return DifferenceCase(
        of=int(draws.step(150.0, 300.0, 50.0)), old=old, new=new, keys=draws.shuffled(_KEYS)
    )


def _shows_nothing(case: DifferenceCase) -> bool:
    return case.chance > _OPEN


def _shows_something(case: DifferenceCase) -> bool:
    # Below half of one in a thousand the prompt would say that chance never does it.
    return 0.0005 < case.chance < _SHOWN
