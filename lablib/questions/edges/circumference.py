"""Width and circumference of a lens that is cut larger or smaller all round, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.edges_workings import circumference_working, width_working
from lablib.bench.size import circumference_change_mm, width_change_mm
from lablib.optics.terms import in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_STEP = "what one millimetre of width is worth round the edge"
_SAME = Slip(
    name="change-taken-over",
    step=_STEP,
    words="You gave the same change for width and circumference. Round the edge a change counts pi times as "
    "much as across.",
)
_RADIUS = Slip(
    name="radius-for-width",
    step="whether one side or both sides move",
    words="You counted with 2 pi. That belongs to what comes off one side; the width loses it at both ends.",
)
_TURNED = Slip(
    name="pi-the-wrong-way",
    step=_STEP,
    words="You turned the factor over. The way round is the longer one, so its change is the greater.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeCase:
    """A lens and by how much it changes.

    change_mm: of the circumference, or of the width [mm].
    asks_width: whether the circumference is given and the width asked, or the other way round.
    grows: whether the next lens is cut larger, or smaller.
    """

    change_mm: float
    asks_width: bool
    grows: bool


class SizeByCircumference(Maker[SizeCase]):
    """Turn a change of circumference into one of width, and back."""

    name = "size-by-circumference"
    lesson = "13"
    skill = "size-by-circumference"
    slips = (_SAME, _RADIUS, _TURNED)

    def draw(self, draws: Draws) -> SizeCase:
        """Return a change round the edge, more often than one of width."""
        asks_width = draws.whole(3) > 0
        change = draws.step(0.3, 2.0, 0.05) if asks_width else draws.step(0.1, 0.6, 0.05)
        return SizeCase(change_mm=change, asks_width=asks_width, grows=draws.whole(2) == 0)

    def kind(self, case: SizeCase) -> NumberAnswer:
        """Return a length to 0.01 mm."""
        return NumberAnswer(unit="mm", tolerance=0.01, digits=2)

    def answer(self, case: SizeCase, slips: Set[str] = NONE) -> float:
        """Return the change; counted from one side it is that of a width half as large, or twice."""
        asks_width = case.asks_width != (_TURNED.name in slips)
        if _SAME.name in slips:
            value = case.change_mm
        else:
            value = (width_change_mm if asks_width else circumference_change_mm)(case.change_mm)
        if _RADIUS.name in slips:
            return value / 2.0 if case.asks_width else value * 2.0
        return value

    def prompt(self, case: SizeCase) -> tuple[str, ...]:
        """Return what is asked."""
        more, wider = ("longer", "wider") if case.grows else ("shorter", "narrower")
        if case.asks_width:
            return (
                f"A lens of an invented job was measured round its edge. The next one has to come out "
                f"{case.change_mm:.2f} mm {more} round, with the same change all round.",
                f"By how much is the next one {wider}? Give the change of its width in mm, to 0.01 mm.",
            )
        return (
            "The size setting of an edger counts the width of a lens. For the next lens of an invented job "
            f"it is set {case.change_mm:.2f} mm {wider}.",
            f"By how much does its circumference come out {more}? Give the change in mm, to 0.01 mm.",
        )

    def given(self, case: SizeCase) -> tuple[Term, ...]:
        """Return the change."""
        symbol, what = ("dC", "change of circumference") if case.asks_width else ("dA", "change of width")
        return (in_full(symbol, case.change_mm, "mm", meaning=what),)

    def solution(self, case: SizeCase) -> Solution:
        """Return the step, and why the shape does not matter."""
        step = (width_working if case.asks_width else circumference_working)(case.change_mm)
        return Solution(
            words=(
                "With the same off all round, any outline without bays loses 2 pi for each millimetre off "
                "one side, as a circle does. The width loses 2 mm meanwhile. So it is pi for each millimetre "
                "of width, whatever the shape.",
            ),
            workings=(step,),
        )

    def hints(self, case: SizeCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Take a round lens first: how does its circumference follow from its width?",
            "The same factor holds for every outline that is cut smaller or larger all round.",
        )
