"""The order of the morning check, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution

_TABLE = read_table("lablib.questions.bench_care", "morning.toml")
_STEPS: dict[str, str] = _TABLE["step"]
_EARLIER = tuple(
    (
        Slip(name=name, step=row["step"], words=row["words"]),
        Earlier(first=row["early"], second=row["late"]),
    )
    for name, row in _TABLE["slip"].items()
)
_CORE = ("cut", "read", "set", "again", "job")
# Some look at the machine first, some at the focimeter: never both in one question.
_ONE_OF, _MORE = ("still", "zero"), ("log", "write")


@dataclass(frozen=True, slots=True, kw_only=True)
class MorningCase:
    """Steps of a morning.

    shown: their keys, in the order shown at first.
    """

    shown: tuple[str, ...]


class MorningCheck(Maker[MorningCase]):
    """Put the steps of the morning check in order."""

    name = "morning-check"
    lesson = "15"
    skill = "order-of-the-morning-check"
    slips = tuple(slip for slip, _ in _EARLIER)

    def draw(self, draws: Draws) -> MorningCase:
        """Return the main steps and two more, never in their order at first."""
        shown = draws.shuffled((*_CORE, draws.one_of(_ONE_OF), draws.one_of(_MORE)))
        return MorningCase(shown=(*shown[1:], shown[0]) if shown == _in_order(set(shown)) else shown)

    def kind(self, case: MorningCase) -> OrderAnswer:
        """Return the steps as they are shown."""
        return OrderAnswer(options=tuple(Option(key=key, words=_STEPS[key]) for key in case.shown))

    def answer(self, case: MorningCase, slips: Set[str] = NONE) -> object:
        """Return the order of the check, or which two steps a slip exchanges."""
        for slip, wrong in _EARLIER:
            if slip.name in slips:
                return wrong
        return _in_order(set(case.shown))

    def slips_in(self, case: MorningCase) -> tuple[Slip, ...]:
        """Return the slips whose two steps are both shown."""
        return tuple(slip for slip, wrong in _EARLIER if {wrong.first, wrong.second} <= set(case.shown))

    def pairs(self, case: MorningCase, kind: OrderAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each exchange is seen by itself."""
        return ()

    def prompt(self, case: MorningCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "A morning at an invented bench, on which the test lens comes out too large. Some steps are "
            "left out, but they are done in their turn.",
            "Put these steps in the order in which they are done, the first on top.",
        )

    def solution(self, case: MorningCase) -> Solution:
        """Return the order and what decides it."""
        order = "; ".join(_STEPS[key][0].lower() + _STEPS[key][1:] for key in self.answer(case))
        return Solution(
            words=(
                f"In order: {order}.",
                "What you judge by comes first: a sound machine and a true instrument. Then one lens to set "
                "by and one to prove it. The first job comes last, because every lens of the day would be "
                "off by as much.",
            )
        )

    def hints(self, case: MorningCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which steps come before any lens is cut?",
            "What does a reading need before it can be trusted, and a setting before it can be used?",
        )


def _in_order(keys: set[str]) -> tuple[str, ...]:
    return tuple(key for key in _STEPS if key in keys)
