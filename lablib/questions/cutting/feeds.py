"""Ways of feeding, as a question: what grows when a lens is harder to cut, the torque or the time."""

from collections.abc import Mapping, Set
from dataclasses import dataclass, replace

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

TORQUE, TIME, BOTH, NOTHING = "torque", "time", "both", "nothing"
_OPTIONS = {
    TORQUE: "the greatest torque; the number of turns stays",
    TIME: "the number of turns, and so the time; the greatest torque does not",
    BOTH: "both, the greatest torque and the number of turns",
    NOTHING: "neither of them",
}


def table() -> Mapping:
    """Return feeds, changes and slips as plain dictionaries; the caller must not change them."""
    return read_table("lablib.questions.cutting", "feeds.toml")


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedCase:
    """A way of feeding and a change.

    feed, change: names of the table; shown: keys of the options.
    """

    feed: str
    change: str
    shown: tuple[str, ...]


class FeedModes(Maker[FeedCase]):
    """Say what grows when a machine that feeds so has more to do."""

    name = "feed-modes"
    lesson = "11"
    skill = "ways-of-feeding"
    slips = tuple(Slip(name=name, **row) for name, row in table()["slip"].items())

    def draw(self, draws: Draws) -> FeedCase:
        """Return a feed and a change."""
        return FeedCase(
            feed=draws.one_of(tuple(table()["feed"])),
            change=draws.one_of(tuple(table()["change"])),
            shown=draws.shuffled(tuple(_OPTIONS)),
        )

    def kind(self, case: FeedCase) -> ChoiceAnswer:
        """Return what may grow."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=_OPTIONS[key]) for key in case.shown))

    def answer(self, case: FeedCase, slips: Set[str] = NONE) -> str:
        """Return what grows; a slip is named after what it says."""
        said = next(iter(slips), None)
        return table()["change"][case.change][case.feed] if said is None else said.partition("-")[0]

    def slips_in(self, case: FeedCase) -> tuple[Slip, ...]:
        """Return the three wrong ones, with what this feed does."""
        right, reason = self.answer(case), table()["feed"][case.feed]["reason"]
        return tuple(
            replace(slip, words=f"{slip.words} {reason}")
            for slip in self.slips
            if not slip.name.startswith(f"{right}-")
        )

    def pairs(self, case: FeedCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: FeedCase) -> tuple[str, ...]:
        """Return the machine, the change and what is asked."""
        return (
            f"An invented machine {table()['feed'][case.feed]['words']}. The lenses are round and blocked at "
            f"their middle. Now {table()['change'][case.change]['words']}; nothing else changes.",
            "What grows?",
        )

    def solution(self, case: FeedCase) -> Solution:
        """Return what grows, and why."""
        return Solution(
            words=(
                f"What grows: {_OPTIONS[self.answer(case)]}.",
                table()["feed"][case.feed]["reason"],
                "A lens that slips is relieved by depth control, since the wheel finds nothing in its way. "
                "Under a constant head force it is not: it stops under the wheel and is ground on one side.",
            )
        )

    def hints(self, case: FeedCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What does this machine keep to: the bite, the force or the torque?",
            "What it keeps to cannot grow. Then from where does the work come? And has the arm changed?",
        )
