"""How long a cut takes at least, as a question: whole turns, and the finishing turn among them."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.cut_time import least_seconds
from lablib.bench.plan import turns_for
from lablib.optics.terms import distance_term, in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_TURNS_STEP = "how many turns the lens makes"
_SPEED_STEP = "how long one turn takes"
_NO_FINISH = Slip(
    name="finishing-turns-forgotten",
    step=_TURNS_STEP,
    words="You left the finishing wheel out. It takes what roughing has left, in turns of its own.",
)
_PARTS = Slip(
    name="part-of-a-turn",
    step=_TURNS_STEP,
    words="You counted a part of a turn. What is left for the last bite is thin at most places, but the lens "
    "goes once round all the same.",
)
_RPM = Slip(
    name="turns-a-minute-as-seconds",
    step=_SPEED_STEP,
    words="You took the lens speed for the seconds of a turn. It says how many turns there are in 60 "
    "seconds.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeCase:
    """A cut with depth control.

    away_mm: the most that stands outside the outline [mm]; stock_mm: left for finishing [mm].
    bite_mm, fine_mm: depth of a roughing and of a finishing bite [mm]; lens_rpm: lens speed [rpm].
    """

    away_mm: float
    stock_mm: float
    bite_mm: float
    fine_mm: float
    lens_rpm: float


class CutTimeAtLeast(Maker[TimeCase]):
    """Say how long a cut takes at least."""

    name = "cut-time"
    lesson = "11"
    skill = "time-of-a-cut"
    slips = (_NO_FINISH, _PARTS, _RPM)

    def draw(self, draws: Draws) -> TimeCase:
        """Return a cut whose last roughing bite is a part of one."""
        return TimeCase(
            away_mm=draws.step(12.0, 24.0, 0.1),
            stock_mm=draws.one_of((0.4, 0.5, 0.6, 0.8)),
            bite_mm=draws.one_of((1.0, 1.5, 2.0, 2.5)),
            fine_mm=draws.one_of((0.25, 0.4, 0.5, 1.0)),
            lens_rpm=draws.one_of((5.0, 6.0, 8.0, 10.0, 12.0)),
        )

    def kind(self, case: TimeCase) -> NumberAnswer:
        """Return a time to 1 s."""
        return NumberAnswer(unit="s", tolerance=1.0, digits=0)

    def answer(self, case: TimeCase, slips: Set[str] = NONE) -> float:
        """Return the least time; a slip changes the number of turns or how long one takes."""
        rough, fine = self._turns(case)
        turns: float = rough + (0 if _NO_FINISH.name in slips else fine)
        if _PARTS.name in slips:
            turns += (case.away_mm - case.stock_mm) / case.bite_mm - rough
        if _RPM.name in slips:
            return turns * case.lens_rpm
        return turns * least_seconds(1, case.lens_rpm)

    def _turns(self, case: TimeCase) -> tuple[int, int]:
        return turns_for(case.away_mm - case.stock_mm, case.bite_mm), turns_for(case.stock_mm, case.fine_mm)

    def prompt(self, case: TimeCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "An invented machine cuts with depth control. Roughing bites a_r deep in every turn of the lens "
            "until only the stock b stands outside the outline; finishing bites a_f deep. At the farthest "
            "place the blank stands e outside the outline. The lens turns at n, and the controller never "
            "slows it.",
            "How long is the lens under the wheel? Give it in s, to 1 s.",
        )

    def given(self, case: TimeCase) -> tuple[Term, ...]:
        """Return what is to come off, bites and lens speed."""
        return (
            distance_term("e", case.away_mm, "the most that stands outside the outline"),
            distance_term("b", case.stock_mm, "stock left for finishing"),
            distance_term("a_r", case.bite_mm, "depth of a roughing bite"),
            distance_term("a_f", case.fine_mm, "depth of a finishing bite"),
            in_full("n", case.lens_rpm, "rpm", least_digits=0, meaning="lens speed"),
        )

    def solution(self, case: TimeCase) -> Solution:
        """Return how many bites there are, rounded up, and the time."""
        given = {term.symbol: term for term in self.given(case)}
        rough, fine = self._turns(case)
        bites = _bites(
            "roughing", "q_r", "(e - b) / a_r", given, (case.away_mm - case.stock_mm) / case.bite_mm
        )
        fine_bites = _bites("finishing", "q_f", "b / a_f", given, case.stock_mm / case.fine_mm)
        time = Working(
            what="time under the wheel",
            symbol="s",
            formula="(N_r + N_f) * 60 / n",
            terms=(
                _whole("N_r", rough, "roughing turns: q_r rounded up to a whole turn"),
                _whole("N_f", fine, "finishing turns: q_f rounded up to a whole turn"),
                given["n"],
            ),
            value=self.answer(case),
            unit="s",
            digits=1,
        )
        return Solution(
            words=(
                "The last bite of each wheel is thin, but the lens has to go once round for it: bites are "
                "rounded up to whole turns. Finishing comes on top.",
                "A real cut takes longer, because the controller slows the lens where the contact runs fast, "
                "and because of the way to the wheel and from it.",
            ),
            workings=(bites, fine_bites, time),
        )

    def hints(self, case: TimeCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Count whole turns: first those of the roughing wheel, then those of the finishing wheel.",
            "How many seconds does one turn take at this lens speed?",
        )


def _bites(what: str, symbol: str, formula: str, given: dict[str, Term], value: float) -> Working:
    return Working(
        what=f"bites of {what}",
        symbol=symbol,
        formula=formula,
        terms=tuple(term for name, term in given.items() if name in formula),
        value=value,
        digits=2,
    )


def _whole(symbol: str, value: int, meaning: str) -> Term:
    return Term(symbol=symbol, value=float(value), digits=0, meaning=meaning)
