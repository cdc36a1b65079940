"""The margin of a cribbed job, as a question: cribbing is a cut with a torque of its own."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.margin import margin_of
from lablib.optics.terms import in_full
from lablib.questions.bench_stack.words import NEWTON_METRES
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_CUTS_STEP = "which cuts this hold has to bear"
_RATIO_STEP = "what is divided by what"
_LEAST_STEP = "which of several margins counts"
_FREE = Slip(
    name="crib-taken-as-free",
    step=_CUTS_STEP,
    words="You took the cut after cribbing alone. On this block the cribbing came out of the uncut blank, "
    "and its first turn is the hardest of all.",
)
_COUNTED = Slip(
    name="crib-counted-here",
    step=_CUTS_STEP,
    words="You counted the cribbing against this block. It was done on another hold, before the lens came on "
    "this one.",
)
_TURNED = Slip(
    name="margin-turned-over",
    step=_RATIO_STEP,
    words="You divided the torque of the cut by what holds. A margin is what holds over what turns.",
)
_MEAN = Slip(
    name="mean-of-both-cuts",
    step=_LEAST_STEP,
    words="You took the mean of the two margins. A lens turns at the worst place of the worst cut; no later "
    "turn makes up for it.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CribCase:
    """A job that is cribbed.

    holds_nm: torque held [N m].
    crib_nm, cut_nm: greatest torque of the cribbing and of the cut after it [N m].
    is_here: whether the cribbing is done on this block.
    """

    holds_nm: float
    crib_nm: float
    cut_nm: float
    is_here: bool


class CribIsACut(Maker[CribCase]):
    """Give the margin of a cribbed job on its block."""

    name = "crib-is-a-cut"
    lesson = "11"
    skill = "margin-of-a-crib"
    slips = (_FREE, _COUNTED, _TURNED, _MEAN)

    def draw(self, draws: Draws) -> CribCase:
        """Return a hold and both torques, two of three times cribbed on the same block."""
        return CribCase(
            holds_nm=draws.step(0.6, 1.3, 0.02),
            crib_nm=draws.step(0.7, 1.3, 0.02),
            cut_nm=draws.step(0.26, 0.5, 0.02),
            is_here=draws.whole(3) > 0,
        )

    def kind(self, case: CribCase) -> NumberAnswer:
        """Return a margin to 0.01."""
        return NumberAnswer(unit="", tolerance=0.015, digits=2)

    def slips_in(self, case: CribCase) -> tuple[Slip, ...]:
        """Return the slips that can be made with this hold."""
        left_out = (_COUNTED,) if case.is_here else (_FREE,)
        return tuple(slip for slip in self.slips if slip not in left_out)

    def answer(self, case: CribCase, slips: Set[str] = NONE) -> float:
        """Return the least margin on this block; the mean is of the two margins."""
        with_crib = case.is_here != bool(slips & {_FREE.name, _COUNTED.name})
        torques = (case.crib_nm, case.cut_nm)
        if _MEAN.name in slips:
            margins = [self._margin(case, torque, slips) for torque in torques]
            return sum(margins) / len(margins)
        return self._margin(case, max(torques) if with_crib else case.cut_nm, slips)

    def _margin(self, case: CribCase, turns_nm: float, slips: Set[str]) -> float:
        margin = margin_of(holds=case.holds_nm, turns=turns_nm)
        return 1.0 / margin if _TURNED.name in slips else margin

    def prompt(self, case: CribCase) -> tuple[str, ...]:
        """Return the job and what is asked."""
        done = (
            "The lens is on its block; on the same block and machine, with the same bites, it is first "
            "cribbed out of its round blank, and then cut."
            if case.is_here
            else "The lens was cribbed by a generator, on a hold of its own. Then it was blocked as told "
            "here, and is cut."
        )
        return (
            f"An invented job. {done} At the places that decide, block and tip hold T, whichever cut it is. "
            "The greatest torque of cribbing and that of the cut after it are given.",
            "What is the margin of the work on this block? Give it to 0.01.",
        )

    def given(self, case: CribCase) -> tuple[Term, ...]:
        """Return hold and torques."""
        return (
            in_full("T", case.holds_nm, NEWTON_METRES, meaning="torque held, sideways load counted"),
            in_full("M_crib", case.crib_nm, NEWTON_METRES, meaning="greatest torque of cribbing"),
            in_full("M_cut", case.cut_nm, NEWTON_METRES, meaning="greatest torque of the cut after it"),
        )

    def solution(self, case: CribCase) -> Solution:
        """Return the margin by the harder of the cuts that count."""
        holds, crib, after = self.given(case)
        margin = Working(
            what="margin of the work on this block",
            symbol="S",
            formula="T / max(M_crib, M_cut)" if case.is_here else "T / M_cut",
            terms=(holds, crib, after) if case.is_here else (holds, after),
            value=self.answer(case),
            digits=3,
        )
        why = (
            "Cribbing is a cut: it begins at the uncut rim, where arm and thickness are greatest. On the "
            "same block with the same bites its margin is that of the uncut blank."
            if case.is_here
            else "The hard turns were taken on another hold. What this block has to bear is the cut from the "
            "cribbed rim."
        )
        return Solution(
            words=(
                why,
                "So cribbing helps if it is done before blocking, on another hold, or in smaller bites.",
            ),
            workings=(margin,),
        )

    def hints(self, case: CribCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Write down every cut that is made while the lens sits on this block.",
            "Which of them asks most? The margin is what holds over that.",
        )
