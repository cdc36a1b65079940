"""A question about thinning prism on top of a prescribed prism."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.practice import usual
from lablib.optics.prism_pair import thinning_prism
from lablib.optics.prism_pair_workings import thinning_prism_working
from lablib.optics.terms import prism_step, prism_term
from lablib.questions.answers.prism import PrismAnswer
from lablib.questions.prism.terms import UPRIGHT, along
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution
from lablib.working import Working

# A thinned lens with less than this is not asked about: its base could be either.
_LEAST_PRISM_D = 0.2


@dataclass(frozen=True, slots=True, kw_only=True)
class ThinningCase:
    """A lens of a thinned pair of progressives that has a prescribed prism as well.

    eye: the eye; addition_d: of both lenses [D].
    base: "up" or "down"; amount_prism_d: of the prescribed prism [prism D].
    """

    eye: Eye
    addition_d: float
    base: str
    amount_prism_d: float

    @property
    def prescribed_up_prism_d(self) -> float:
        """The prescribed prism base up [prism D]."""
        return along(self.base, self.amount_prism_d)[1]

    def total_up_prism_d(self, *, share: float | None = None) -> float:
        """Return the prism base up at the prism reference point [prism D].

        share: of the addition that is taken for thinning; None for the usual one.
        """
        return self.prescribed_up_prism_d + thinning_prism(self.addition_d, share=share).right_up_prism_d

    @property
    def workings(self) -> tuple[Working, Working]:
        """The thinning prism, then both together."""
        thinning = thinning_prism_working(self.addition_d)
        prescribed = prism_term(
            "P_rx", self.prescribed_up_prism_d, "prescribed, base up (minus is base down)"
        )
        whole = prism_step(
            "at the prism reference point, base up (minus is base down)",
            "P_up",
            "P_rx - P",
            (prescribed, thinning.as_term()),
            self.total_up_prism_d(),
        )
        return thinning, whole


class ThinningPrism(Maker[ThinningCase]):
    """What a thinned progressive with a prescribed prism shows at its prism reference point."""

    name = "thinning-prism"
    lesson = "06"
    skill = "thinning-prism"
    slips = (
        Slip(
            name="thinning-forgotten",
            step="the thinning prism",
            words="You gave the prescribed prism alone. The lens shows what thinning adds as well, in both "
            "lenses of the pair alike.",
        ),
        Slip(
            name="shared-between-the-eyes",
            step="the thinning prism",
            words="You gave each lens half of it. Thinning prism is not shared: each lens has all of it, "
            "base down.",
        ),
        Slip(
            name="whole-addition",
            step="the thinning prism",
            words="You took as much prism as addition. Two thirds of the addition is usual.",
        ),
        Slip(
            name="thinning-base-up",
            step="the base of the thinning prism",
            words="You took the thinning prism base up. A progressive is thin at its bottom, so base down "
            "evens the edges out.",
        ),
    )

    def draw(self, draws: Draws) -> ThinningCase:
        """Return a lens whose base is clear."""
        return draws.until("a thinned lens", _draw_case, _has_a_clear_base)

    def kind(self, case: ThinningCase) -> PrismAnswer:
        """Return the kind: an amount with its base."""
        return PrismAnswer(eye=case.eye, tolerance_prism_d=0.05)

    def answer(self, case: ThinningCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """Return the prism at the reference point; the slips take another share of the addition."""
        share = usual("thinning_share")
        if "thinning-forgotten" in slips:
            share = 0.0
        if "shared-between-the-eyes" in slips:
            share = share / 2.0
        if "whole-addition" in slips:
            share = 1.0
        total = case.total_up_prism_d(share=share)
        if "thinning-base-up" in slips:
            total = 2.0 * case.prescribed_up_prism_d - total
        return 0.0, total

    def prompt(self, case: ThinningCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"An invented pair of progressives with an addition of {case.addition_d:.2f} D is thinned by the "
            f"usual share of two thirds. For the {case.eye} eye {case.amount_prism_d:.2f} base {case.base} "
            "is prescribed besides.",
            f"Which prism must the {case.eye} lens show at its prism reference point? Give the amount to "
            "0.01 and the base, as in 1.50 base up.",
        )

    def solution(self, case: ThinningCase) -> Solution:
        """Return where thinning prism comes from, and both together."""
        return Solution(
            words=(
                "A progressive curves more towards its bottom. Without prism it would run thin there while "
                "its top stayed thick. Base down, the same in both lenses, evens the two out and makes the "
                "lens thinner.",
                "It comes on top of what is prescribed: the same base adds, the opposite base takes away. "
                f"Here: {self.kind(case).written(self.answer(case))}.",
            ),
            workings=case.workings,
        )

    def hints(self, case: ThinningCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which way lies the base of thinning prism, and how much of it does each lens have?",
            "Thinning prism = two thirds of the addition, base down. Then put it together with the "
            "prescribed prism.",
        )


def _draw_case(draws: Draws) -> ThinningCase:
    return ThinningCase(
        eye=draws.one_of(EYES),
        addition_d=draws.step(1.0, 3.0, 0.25),
        base=draws.one_of(UPRIGHT),
        amount_prism_d=draws.step(0.5, 3.0, 0.5),
    )


def _has_a_clear_base(case: ThinningCase) -> bool:
    return abs(round(case.total_up_prism_d(), 6)) >= _LEAST_PRISM_D
