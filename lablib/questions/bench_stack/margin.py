"""The margin of a job, as a question: what holds over what turns."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.margin import margin_of
from lablib.questions.bench_stack.words import NMM_PER_NM
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working, plain

_RATIO_STEP = "what is divided by what"
_TURNED_OVER = Slip(
    name="margin-turned-over",
    step=_RATIO_STEP,
    words="You divided what turns by what holds. Margin is what holds over what turns, so that more hold "
    "gives a larger margin.",
)
_DIFFERENCE = Slip(
    name="difference-for-ratio",
    step=_RATIO_STEP,
    words="You took one from the other. Margin is a ratio: it says how many times what turns goes into what "
    "holds.",
)
_UNITS = Slip(
    name="units-mixed",
    step="both torques in one unit",
    words="You put N m against N mm. 1 N m is 1000 N mm: bring both to one unit first.",
)
_UNLOADED = Slip(
    name="sideways-load-forgotten",
    step="which hold counts under the wheel",
    words="You took the hold without the sideways load. The wheel pushes the lens sideways as well, and that "
    "takes a little off.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MarginCase:
    """What holds and what turns, at the worst place of a cut.

    hold_nmm, turning_nmm: torque held and cutting torque, both whole tens [N mm].
    unloaded_nmm: torque held with no sideways load; None where it is not told [N mm].
    hold_in_nmm, turning_in_nmm: whether each is told in N mm; else in N m.
    """

    hold_nmm: float
    turning_nmm: float
    unloaded_nmm: float | None
    hold_in_nmm: bool
    turning_in_nmm: bool

    @property
    def is_mixed(self) -> bool:
        """Whether the two are told in different units."""
        return self.hold_in_nmm != self.turning_in_nmm


def _term(symbol: str, torque_nmm: float, in_nmm: bool, meaning: str) -> Term:
    if in_nmm:
        return Term(symbol=symbol, value=torque_nmm, unit="N mm", digits=0, meaning=meaning)
    return Term(symbol=symbol, value=torque_nmm / NMM_PER_NM, unit="N m", digits=2, meaning=meaning)


def _hold_term(case: MarginCase) -> Term:
    meaning = "torque still held under the sideways load" if case.unloaded_nmm else "torque held"
    return _term("T_hold", case.hold_nmm, case.hold_in_nmm, meaning)


def _turning_term(case: MarginCase) -> Term:
    return _term("M_cut", case.turning_nmm, case.turning_in_nmm, "cutting torque, peaks included")


def _unloaded_term(case: MarginCase) -> tuple[Term, ...]:
    if case.unloaded_nmm is None:
        return ()
    return (_term("T_0", case.unloaded_nmm, case.hold_in_nmm, "torque held with no sideways load"),)


class MarginOfAJob(Maker[MarginCase]):
    """Work the margin from what holds and what turns."""

    name = "margin-of-a-job"
    lesson = "01"
    skill = "margin-from-torques"
    slips = (_TURNED_OVER, _DIFFERENCE, _UNITS, _UNLOADED)

    def draw(self, draws: Draws) -> MarginCase:
        """Return two torques, in every second case in different units."""
        hold = draws.step(450.0, 1900.0, 10.0)
        turning = draws.step(300.0, 1300.0, 10.0)
        lost = draws.step(30.0, 90.0, 10.0)
        first, second = draws.one_of(((False, False), (False, False), (False, True), (True, False)))
        return MarginCase(
            hold_nmm=hold,
            turning_nmm=turning,
            unloaded_nmm=draws.one_of((None, hold + lost)),
            hold_in_nmm=first,
            turning_in_nmm=second,
        )

    def kind(self, case: MarginCase) -> AnswerKind:
        """Return a pure number to two decimals."""
        return NumberAnswer(unit="", tolerance=0.01, digits=2)

    def answer(self, case: MarginCase, slips: Set[str] = NONE) -> object:
        """Return the margin, or what is taken for it."""
        mixed = _UNITS.name in slips
        hold = case.unloaded_nmm if _UNLOADED.name in slips else case.hold_nmm
        # Mixed, each keeps the number it was told with; else both are in N m.
        hold /= 1.0 if mixed and case.hold_in_nmm else NMM_PER_NM
        turning = case.turning_nmm / (1.0 if mixed and case.turning_in_nmm else NMM_PER_NM)
        if _DIFFERENCE.name in slips:
            return hold - turning
        if _TURNED_OVER.name in slips:
            hold, turning = turning, hold
        return margin_of(holds=hold, turns=turning)

    def slips_in(self, case: MarginCase) -> tuple[Slip, ...]:
        """Return the slips that the numbers told leave room for."""
        room = {_UNITS: case.is_mixed, _UNLOADED: case.unloaded_nmm is not None}
        return tuple(slip for slip in self.slips if room.get(slip, True))

    def prompt(self, case: MarginCase) -> tuple[str, ...]:
        """Return where the torques come from and what is asked."""
        return (
            "At the worst place of the worst turn of a cut the panel shows what holds the lens on its block "
            "and what turns it. The job is invented.",
            "What is the margin of this job? Give a number without a unit, to 0.01.",
        )

    def given(self, case: MarginCase) -> tuple[Term, ...]:
        """Return the torques as they are told."""
        return (*_unloaded_term(case), _hold_term(case), _turning_term(case))

    def solution(self, case: MarginCase) -> Solution:
        """Return both torques in one unit, and the margin."""
        hold, turning = _hold_term(case), _turning_term(case)
        steps = []
        if case.hold_in_nmm:
            steps.append(_in_nm("torque held in N m", "T_m", hold, case.hold_nmm))
            hold = steps[0].as_term()
        if case.turning_in_nmm:
            steps.append(_in_nm("cutting torque in N m", "M_m", turning, case.turning_nmm))
            turning = steps[-1].as_term()
        value = self.answer(case)
        margin = Working(
            what="margin",
            symbol="S",
            formula=f"{hold.symbol} / {turning.symbol}",
            terms=(hold, turning),
            value=value,
        )
        sideways = (
            "The hold that counts is the one under the wheel, with the sideways load taken off already."
        )
        return Solution(
            words=(
                "Margin is what holds over what turns, both in one unit.",
                *((sideways,) if case.unloaded_nmm is not None else ()),
                _verdict(value),
            ),
            workings=(*steps, margin),
        )

    def hints(self, case: MarginCase) -> tuple[str, ...]:
        """Return what margin means, and what to do before dividing."""
        return (
            "Say in words what margin is. Which of the two is on top, so that more hold gives more margin?",
            "Look at the units before you divide, and at what each number already counts.",
        )


def _in_nm(what: str, symbol: str, told: Term, torque_nmm: float) -> Working:
    return Working(
        what=what,
        symbol=symbol,
        formula=f"{told.symbol} / 1000",
        terms=(told,),
        value=torque_nmm / NMM_PER_NM,
        unit="N m",
    )


def _verdict(margin: float) -> str:
    shown = plain(margin, 2)
    if margin < 1.0:
        return f"{shown} is below 1: the estimate says that the lens turns on its block."
    return (
        f"{shown} is above 1: the estimate says that it holds. It is an estimate and no promise until the "
        "bench has been calibrated."
    )
