"""How thick the scrap lens in the jig must be, as a question."""

from collections.abc import Set
from dataclasses import dataclass, replace
from functools import cache

from lablib.bench.jig import least_scrap_mm
from lablib.bench.machine import Bench
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_ROOT = Slip(
    name="root-not-taken",
    step="from stress to thickness",
    words="You gave the square of the thickness. Stress falls with the square, so take the root.",
)
_CHI = Slip(
    name="bending-share-left-out",
    step="how much of the plate's bending counts",
    words="You left out chi. Block and tip face each other over most of the lens, so only a share of the "
    "bending is left.",
)
_HALF = Slip(
    name="two-sides-counted",
    step="which force bends the lens",
    words="You counted the force twice, once for each side. It is one force: what presses from the front is "
    "held from behind.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrapCase:
    """A force in the jig.

    force_n: [N]; share: chi; stress_mpa: that the coat bears [MPa].
    """

    force_n: float
    share: float
    stress_mpa: float

    @property
    def bench(self) -> Bench:
        """The bench with these numbers."""
        return _bench(self.share, self.stress_mpa)


@cache
def _bench(share: float, stress_mpa: float) -> Bench:
    return replace(Bench(), bending_share=share, allowed_stress_mpa=stress_mpa)


class ScrapForForce(Maker[ScrapCase]):
    """Work how thick scrap must be for a force in the jig."""

    name = "scrap-for-a-force"
    lesson = "31"
    skill = "safe-jig"
    slips = (_ROOT, _CHI, _HALF)

    def draw(self, draws: Draws) -> ScrapCase:
        """Return a force, and what the lens bears."""
        return ScrapCase(
            force_n=draws.step(200.0, 400.0, 20.0),
            share=draws.one_of((0.15, 0.2, 0.25, 0.3)),
            stress_mpa=draws.step(20.0, 35.0, 5.0),
        )

    def kind(self, case: ScrapCase) -> AnswerKind:
        """Return millimetres to two decimals."""
        return NumberAnswer(unit="mm", tolerance=0.01, digits=2)

    def answer(self, case: ScrapCase, slips: Set[str] = NONE) -> object:
        """Return the least thickness, or what is taken for it."""
        force = 2.0 * case.force_n if _HALF.name in slips else case.force_n
        bench = _bench(1.0, case.stress_mpa) if _CHI.name in slips else case.bench
        least = least_scrap_mm(force, bench)
        return least**2 if _ROOT.name in slips else least

    def prompt(self, case: ScrapCase) -> tuple[str, ...]:
        """Return the jig and what is asked."""
        return (
            "A scrap lens stands in the guarded hand jig. By the workbook's model the stress in its coat is "
            "0.62 chi N / t^2, and above the stress given below the coat crazes; thin scrap can shatter.",
            "How thick must the scrap be in the middle, at the least? Give it to 0.01 mm.",
        )

    def given(self, case: ScrapCase) -> tuple[Term, ...]:
        """Return force, share and stress."""
        return (
            Term(symbol="N", value=case.force_n, unit="N", digits=0, meaning="force on the block"),
            Term(symbol="chi", value=case.share, digits=2, meaning="share of a plate's bending"),
            Term(
                symbol="sigma",
                value=case.stress_mpa,
                unit="MPa",
                digits=0,
                meaning="stress that the coat bears",
            ),
        )

    def solution(self, case: ScrapCase) -> Solution:
        """Return the thickness."""
        least = Working(
            what="least thickness of the scrap",
            symbol="t",
            formula="sqrt(0.62 * chi * N / sigma)",
            terms=self.given(case),
            value=self.answer(case),
            unit="mm",
            digits=3,
            source="bending of a thin plate (derived)",
        )
        return Solution(
            words=(
                "Put the stress equal to what the coat bears, and solve for the thickness.",
                "That is the least. Take scrap that is well above it, and leave the machine's clamp alone: "
                "it is never set beyond its own setting to reach a force.",
            ),
            workings=(least,),
        )

    def hints(self, case: ScrapCase) -> tuple[str, ...]:
        """Return how to turn the formula round."""
        return (
            "At the least thickness the stress is just what the coat bears.",
            "Solve for t^2 first. N/mm2 is MPa, so stay in N and mm.",
        )
