"""The order in which one lens is blocked, cut and taken off its block, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution

_TABLE = read_table("lablib.questions.blocking", "blocking_order.toml")
_STEPS: dict[str, str] = _TABLE["step"]
_EARLIER = tuple(
    (
        Slip(name=name, step=row["step"], words=row["words"]),
        Earlier(first=row["early"], second=row["late"]),
    )
    for name, row in _TABLE["slip"].items()
)
_CORE = ("inspect", "press", "scribe", "cut", "look")
_MORE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderCase:
    """Steps of blocking.

    shown: their keys, in the order shown at first.
    """

    shown: tuple[str, ...]


class BlockingOrder(Maker[OrderCase]):
    """Put the steps of blocking in order."""

    name = "blocking-steps"
    lesson = "10"
    skill = "order-of-blocking"
    slips = tuple(slip for slip, _ in _EARLIER)

    def draw(self, draws: Draws) -> OrderCase:
        """Return the main steps and two more, never in their order at first."""
        rest = [key for key in _STEPS if key not in _CORE]
        shown = draws.shuffled((*_CORE, *draws.some(rest, _MORE)))
        return OrderCase(shown=(*shown[1:], shown[0]) if shown == _in_order(set(shown)) else shown)

    def kind(self, case: OrderCase) -> OrderAnswer:
        """Return the steps as they are shown."""
        return OrderAnswer(options=tuple(Option(key=key, words=_STEPS[key]) for key in case.shown))

    def answer(self, case: OrderCase, slips: Set[str] = NONE) -> object:
        """Return the order of the bench, or which two steps a slip exchanges."""
        for slip, wrong in _EARLIER:
            if slip.name in slips:
                return wrong
        return _in_order(set(case.shown))

    def slips_in(self, case: OrderCase) -> tuple[Slip, ...]:
        """Return the slips whose two steps are both shown."""
        return tuple(slip for slip, wrong in _EARLIER if {wrong.first, wrong.second} <= set(case.shown))

    def pairs(self, case: OrderCase, kind: OrderAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each exchange is seen by itself."""
        return ()

    def prompt(self, case: OrderCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Here are some steps of one lens with a slick coat, mixed up, from the uncut lens on. The others "
            "are left out, but they are done in their turn.",
            "Put them in the order in which they are done, the first on top.",
        )

    def solution(self, case: OrderCase) -> Solution:
        """Return the order and what decides it."""
        order = "; ".join(_STEPS[key][0].lower() + _STEPS[key][1:] for key in self.answer(case))
        return Solution(
            words=(
                f"In order: {order}.",
                "Whatever is between block and lens goes on clean and in its turn, and nothing that grips "
                "comes off before the last check.",
                "The line over block and lens is the one witness of a turn: scribed before the cut, read "
                "before the block comes off.",
            )
        )

    def hints(self, case: OrderCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Build the stack in your mind from the lens to the block. What lies nearer the lens goes on "
            "first.",
            "Ask of each check: until when can what it looks for still be seen?",
        )


def _in_order(keys: Set[str]) -> tuple[str, ...]:
    return tuple(key for key in _STEPS if key in keys)
