"""What two remedies do together, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.gains import combined_margin, gain
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_STEP = "putting two gains together"
_ADDED = Slip(
    name="gains-added",
    step=_STEP,
    words="You added what each remedy adds to the margin. A margin is a ratio: what holds more and what "
    "turns less multiply it, one after the other.",
)
_GREATER = Slip(
    name="only-the-greater-counted",
    step=_STEP,
    words="You took the better of the two alone. They act on different sides of the ratio, so each gives its "
    "whole gain.",
)
_MARGINS = Slip(
    name="margins-multiplied",
    step="what a gain is",
    words="You multiplied the two margins. Each of them holds the margin as it was already; what multiplies "
    "is the gain, the new margin over the old.",
)
# What raises the hold, and what lowers the torque, with the range of gains that occur.
_HOLDS = (("a film", 1.3, 1.9), ("wiping the lens", 1.2, 2.1), ("a fresh pad", 1.1, 1.4))
_TURNS = (
    ("cribbing on another hold", 1.6, 2.9),
    ("dressing the wheel", 1.4, 2.5),
    ("bites half as deep", 1.7, 2.0),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class GainsCase:
    """A margin, and the margin with each of two remedies alone.

    margin: as it is.
    holds, turns: the remedies in words, one for what holds and one for what turns.
    with_hold, with_turn: the margins with one of them.
    """

    margin: float
    holds: str
    turns: str
    with_hold: float
    with_turn: float


class GainsMultiply(Maker[GainsCase]):
    """Work the margin with two remedies from the margins with each alone."""

    name = "gains-multiply"
    lesson = "12"
    skill = "remedies-together"
    slips = (_ADDED, _GREATER, _MARGINS)

    def draw(self, draws: Draws) -> GainsCase:
        """Return a margin near 1, and two remedies."""
        margin = draws.step(0.6, 1.4, 0.01)
        (holds, *hold), (turns, *turn) = draws.one_of(_HOLDS), draws.one_of(_TURNS)
        return GainsCase(
            margin=margin,
            holds=holds,
            turns=turns,
            with_hold=round(margin * draws.step(*hold, 0.05), 2),
            with_turn=round(margin * draws.step(*turn, 0.05), 2),
        )

    def kind(self, case: GainsCase) -> AnswerKind:
        """Return a pure number to a twentieth."""
        return NumberAnswer(unit="", tolerance=0.05, digits=2)

    def answer(self, case: GainsCase, slips: Set[str] = NONE) -> object:
        """Return the margin with both, or what is taken for it."""
        first, second = case.with_hold, case.with_turn
        if _ADDED.name in slips:
            return first + second - case.margin
        if _GREATER.name in slips:
            return max(first, second)
        if _MARGINS.name in slips:
            return combined_margin(1.0, first, second)
        return combined_margin(case.margin, first, second)

    def pairs(self, case: GainsCase, kind: AnswerKind, known: tuple[object, ...]) -> tuple:
        """Return nothing: each slip takes the place of the whole way."""
        return ()

    def prompt(self, case: GainsCase) -> tuple[str, ...]:
        """Return the remedies and what is asked."""
        return (
            f"An invented job has too small a margin. Two things are considered: {case.holds}, which raises "
            f"what holds, and {case.turns}, which lowers what turns. The table has the margin with each "
            "alone.",
            "What margin is to be expected with both together? Give a number without a unit, to 0.05.",
        )

    def given(self, case: GainsCase) -> tuple[Term, ...]:
        """Return the three margins."""
        return (
            _margin("S", case.margin, "margin as it is"),
            _margin("S_h", case.with_hold, f"margin with {case.holds} alone"),
            _margin("S_t", case.with_turn, f"margin with {case.turns} alone"),
        )

    def solution(self, case: GainsCase) -> Solution:
        """Return both gains, and the margin they give together."""
        before, hold, turn = self.given(case)
        first, second = (
            Working(
                what=f"gain of {words}",
                symbol=symbol,
                formula=f"{term.symbol} / S",
                terms=(term, before),
                value=gain(margin=case.margin, changed=term.value),
                digits=3,
            )
            for words, symbol, term in ((case.holds, "g_h", hold), (case.turns, "g_t", turn))
        )
        both = Working(
            what="margin with both",
            symbol="S_both",
            formula="S * g_h * g_t",
            terms=(before, first.as_term(), second.as_term()),
            value=self.answer(case),
        )
        return Solution(
            words=(
                "Margin is what holds over what turns. One remedy multiplies what stands above the line, the "
                "other divides what stands below it, so the gains multiply.",
                "Two remedies that both raise what holds do not multiply: front and back add up, and the "
                "weakest joint of the front governs.",
            ),
            workings=(first, second, both),
        )

    def hints(self, case: GainsCase) -> tuple[str, ...]:
        """Return what a gain is."""
        return (
            "By what does each remedy alone multiply the margin?",
            "Write the margin as a fraction. On which side of the line does each remedy act?",
        )


def _margin(symbol: str, value: float, meaning: str) -> Term:
    return Term(symbol=symbol, value=value, meaning=meaning)
