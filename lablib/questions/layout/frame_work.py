"""The order of the work on frame and wearer before cutting, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.datafile import read_table
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import Earlier, Option, OrderAnswer
from lablib.study.question import Mistake, Slip, Solution

_TABLE = read_table("lablib.questions.layout", "frame_work.toml")
_WORK = {key: row["words"] for key, row in _TABLE["work"].items()}
# A slip, the step that came too early, and the one that belongs before it.
_EARLIER = tuple(
    (
        Slip(name=name, step=row["step"], words=row["words"]),
        Earlier(first=row["early"], second=row["late"]),
    )
    for name, row in _TABLE["slip"].items()
)
_ALWAYS, _OFTEN = ("damage", "adjust", "height", "trace"), ("ticket", "layout", "choose")


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkCase:
    """Some steps of the work on a frame.

    shown: their keys, in the order in which they are shown.
    """

    shown: tuple[str, ...]

    @property
    def in_order(self) -> tuple[str, ...]:
        """Their keys in the order in which they are done."""
        return tuple(key for key in _WORK if key in self.shown)


class FrameWorkOrder(Maker[WorkCase]):
    """Put the work on frame and wearer in order."""

    name = "frame-work-order"
    lesson = "05"
    skill = "order-of-frame-work"
    slips = tuple(slip for slip, _ in _EARLIER)

    def draw(self, draws: Draws) -> WorkCase:
        """Return five or six steps, never in their order at first."""
        shown = draws.shuffled((*_ALWAYS, *draws.some(_OFTEN, 1 + draws.whole(2))))
        if shown == WorkCase(shown=shown).in_order:
            shown = (*shown[1:], shown[0])
        return WorkCase(shown=shown)

    def kind(self, case: WorkCase) -> AnswerKind:
        """Return the steps as they are shown."""
        return OrderAnswer(options=tuple(Option(key=key, words=_WORK[key]) for key in case.shown))

    def answer(self, case: WorkCase, slips: Set[str] = NONE) -> object:
        """Return the order, or which two steps a slip exchanges."""
        wrong = next((earlier for slip, earlier in _EARLIER if slip.name in slips), None)
        return case.in_order if wrong is None else wrong

    def slips_in(self, case: WorkCase) -> tuple[Slip, ...]:
        """Return the slips whose two steps are both shown."""
        return tuple(slip for slip, wrong in _EARLIER if {wrong.first, wrong.second} <= set(case.shown))

    def pairs(self, case: WorkCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: each exchange is seen by itself."""
        return ()

    def prompt(self, case: WorkCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "A wearer brings a used frame, and lenses still sit in it. Here is some of what is done before a "
            "lens is cut, mixed up; the rest is done in its turn.",
            "Put it in the order in which it is done, the first on top.",
        )

    def solution(self, case: WorkCase) -> Solution:
        """Return the order and what decides it."""
        order = ", then ".join(_WORK[key][0].lower() + _WORK[key][1:] for key in case.in_order)
        return Solution(
            words=(
                f"In order: {order}.",
                "Damage is noted before the frame is touched. Then the frame is adjusted, because everything "
                "that is measured on the face, or traced, changes with it.",
                "Heights come while the wearer is there and lenses are in the rims, traces when the lenses "
                "are out. Both rims are traced: two are seldom quite alike.",
            )
        )

    def hints(self, case: WorkCase) -> tuple[str, ...]:
        """Return what to ask of each step."""
        return (
            "Ask of each step: what would be wrong if the frame were bent after it?",
            "For which of them must the wearer be there, and for which must the lenses be out?",
        )
