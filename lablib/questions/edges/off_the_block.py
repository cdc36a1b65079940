"""The way from the cut lens on its block to the finished pair, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution

_TABLE = read_table("lablib.questions.edges", "off_the_block.toml")
_STEPS: dict[str, str] = _TABLE["step"]
_EARLIER = tuple(
    (
        Slip(name=name, step=row["step"], words=row["words"]),
        Earlier(first=row["early"], second=row["late"]),
    )
    for name, row in _TABLE["slip"].items()
)
_CORE = ("look", "deblock", "clean", "insert", "strain")
_MORE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderCase:
    """Steps to the finished pair.

    shown: their keys, in the order shown at first.
    """

    shown: tuple[str, ...]


class OffTheBlock(Maker[OrderCase]):
    """Put the steps from the block to the frame in order."""

    name = "off-the-block"
    lesson = "13"
    skill = "order-of-mounting"
    slips = tuple(slip for slip, _ in _EARLIER)

    def draw(self, draws: Draws) -> OrderCase:
        """Return the main steps and two more, never in their order at first."""
        rest = [key for key in _STEPS if key not in _CORE]
        more = draws.until("two steps", lambda draws: draws.some(rest, _MORE), _one_order)
        shown = draws.shuffled((*_CORE, *more))
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
            "A lens with a coat is cut and still sits on its block. Here are some of the steps from there to "
            "the finished pair, mixed up. The others are left out, but they are done in their turn.",
            "Put them in the order in which they are done, the first on top.",
        )

    def solution(self, case: OrderCase) -> Solution:
        """Return the order and what decides it."""
        order = "; ".join(_STEPS[key][0].lower() + _STEPS[key][1:] for key in self.answer(case))
        return Solution(
            words=(
                f"In order: {order}.",
                "What is read on the block cannot be read later. What makes swarf comes before what cleans, "
                "and what heats comes before the coated lens.",
                "Strain and a lens that turned in its rim show only once the rim is closed. Lens and frame "
                "makers may ask for another way; theirs goes first.",
            )
        )

    def hints(self, case: OrderCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Ask of each check: from when on can what it looks for be seen, and until when?",
            "Ask of each step that works on lens or frame: what would it spoil that is done already?",
        )


def _in_order(keys: Set[str]) -> tuple[str, ...]:
    return tuple(key for key in _STEPS if key in keys)


def _one_order(more: tuple[str, ...]) -> bool:
    """Whether two steps leave one order: some peel the film before the wheel, some leave it on for it."""
    return not {"peel", "chamfer"} <= set(more)
