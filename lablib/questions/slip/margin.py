"""The margin of a cut of several turns, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.margin import margin_of
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_TURNED_OVER = Slip(
    name="margin-turned-over",
    step="what is divided by what",
    words="You divided what turns by what holds. Margin is what holds over what turns.",
)
_UNLOADED = Slip(
    name="sideways-load-forgotten",
    step="which hold counts under the wheel",
    words="You took the hold with no sideways load. The wheel pushes the lens sideways while it turns it, "
    "and that takes a little off: the lesser hold counts.",
)
_MEAN = Slip(
    name="mean-for-least",
    step="which turn counts",
    words="You took the mean over the turns. A lens that slips in one turn has slipped: the least margin "
    "is the margin of the cut.",
)
_FIRST = Slip(
    name="first-turn-taken",
    step="which turn counts",
    words="You took the first turn. It is often the worst, and not always: look for the least margin.",
)
_TURNS = (1, 2, 3)


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnsCase:
    """What holds and what turns at the worst place of each turn.

    unloaded_nm: torque held with no sideways load [N m].
    holds_nm, turns_nm: torque held under the wheel and cutting torque, turn by turn [N m].
    """

    unloaded_nm: float
    holds_nm: tuple[float, ...]
    turns_nm: tuple[float, ...]

    @property
    def margins(self) -> tuple[float, ...]:
        """The margin of each turn."""
        return tuple(
            margin_of(holds=holds, turns=turns)
            for holds, turns in zip(self.holds_nm, self.turns_nm, strict=True)
        )

    @property
    def least(self) -> int:
        """Which turn has the least margin, from 0."""
        return min(range(len(self.margins)), key=lambda turn: round(self.margins[turn], 9))


class CutMargin(Maker[TurnsCase]):
    """Work the margin of a cut from what holds and what turns in each of its turns."""

    name = "cut-margin"
    lesson = "12"
    skill = "margin-of-a-cut"
    slips = (_TURNED_OVER, _UNLOADED, _MEAN, _FIRST)

    def draw(self, draws: Draws) -> TurnsCase:
        """Return three turns, the worst of them any."""
        unloaded = draws.step(0.6, 1.6, 0.01)
        worst = draws.step(0.5, 1.3, 0.01)
        where = draws.one_of((0, 1, 1, 2))
        return TurnsCase(
            unloaded_nm=unloaded,
            holds_nm=tuple(round(unloaded - draws.step(0.03, 0.09, 0.01), 2) for _ in _TURNS),
            turns_nm=tuple(
                worst if turn == where else round(worst - draws.step(0.06, 0.3, 0.01), 2)
                for turn in range(len(_TURNS))
            ),
        )

    def kind(self, case: TurnsCase) -> AnswerKind:
        """Return a pure number to two decimals."""
        return NumberAnswer(unit="", tolerance=0.01, digits=2)

    def answer(self, case: TurnsCase, slips: Set[str] = NONE) -> object:
        """Return the least margin of all turns, or what is taken for it."""
        holds = (case.unloaded_nm,) * len(_TURNS) if _UNLOADED.name in slips else case.holds_nm
        pairs = list(zip(holds, case.turns_nm, strict=True))
        if _TURNED_OVER.name in slips:
            pairs = [(turns, holds) for holds, turns in pairs]
        margins = [margin_of(holds=above, turns=below) for above, below in pairs]
        if _MEAN.name in slips:
            return sum(margins) / len(margins)
        return margins[0 if _FIRST.name in slips else case.least]

    def slips_in(self, case: TurnsCase) -> tuple[Slip, ...]:
        """Return the slips, without the first turn where that is the worst."""
        return tuple(slip for slip in self.slips if slip is not _FIRST or case.least)

    def prompt(self, case: TurnsCase) -> tuple[str, ...]:
        """Return where the torques come from, and what is asked."""
        return (
            "An invented cut has three turns. For the worst place of each the table has what holds the lens "
            "under the wheel, sideways load counted, and what turns it, peaks counted. It also has what "
            "would hold with no sideways load.",
            "What is the margin of this cut? Give a number without a unit, to 0.01.",
        )

    def given(self, case: TurnsCase) -> tuple[Term, ...]:
        """Return all torques."""
        unloaded = _torque("T_0", case.unloaded_nm, "held with no sideways load")
        return (unloaded, *(term for turn in range(len(_TURNS)) for term in _turn_terms(case, turn)))

    def solution(self, case: TurnsCase) -> Solution:
        """Return the margin of each turn, and the least of them."""
        each = [
            Working(
                what=f"margin of turn {turn + 1}",
                symbol=f"S_{turn + 1}",
                formula=f"T_{turn + 1} / M_{turn + 1}",
                terms=_turn_terms(case, turn),
                value=case.margins[turn],
                digits=3,
            )
            for turn in range(len(_TURNS))
        ]
        least = Working(
            what="margin of the cut: the least over its turns",
            symbol="S",
            formula=f"min({', '.join(one.symbol for one in each)})",
            terms=tuple(one.as_term() for one in each),
            value=self.answer(case),
            digits=3,
        )
        return Solution(
            words=(
                "Margin is what holds over what turns. What holds under the wheel is less than what holds "
                "with no sideways load, because the same joints carry both.",
                "The cut is as safe as its worst place in its worst turn.",
            ),
            workings=(*each, least),
        )

    def hints(self, case: TurnsCase) -> tuple[str, ...]:
        """Return what margin means, and which numbers count."""
        return (
            "Say in words what margin is: which of the two is on top?",
            "Is every number in the list needed? Under the wheel the lens is pushed sideways as well.",
            "Work the margin of each turn. Which of the three decides whether the lens turns?",
        )


def _torque(symbol: str, torque_nm: float, meaning: str) -> Term:
    return Term(symbol=symbol, value=torque_nm, unit="N m", meaning=meaning)


def _turn_terms(case: TurnsCase, turn: int) -> tuple[Term, Term]:
    number = turn + 1
    return (
        _torque(f"T_{number}", case.holds_nm[turn], f"held under the wheel, turn {number}"),
        _torque(f"M_{number}", case.turns_nm[turn], f"cutting torque, turn {number}"),
    )
