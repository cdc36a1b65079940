"""A question about index: how much thinner a lens gets by the rule of thumb."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.index_effect import saving_by_rule
from lablib.optics.material_workings import saving_working
from lablib.optics.terms import in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term


@dataclass(frozen=True, slots=True, kw_only=True)
class SavingCase:
    """Two indices.

    low, high: the index of the thicker lens and of the thinner one.
    """

    low: float
    high: float


class IndexSaving(Maker[SavingCase]):
    """How much a higher index saves, by the rule of thumb."""

    name = "index-saving"
    lesson = "04"
    skill = "index-saving"
    slips = (
        Slip(
            name="ratio-of-indices",
            step="what of an index bends light",
            words="You took the ratio of the indices. What bends is the step from air to lens, so take 1 off "
            "each index first.",
        ),
        Slip(
            name="share-that-is-left",
            step="whether the saved share is asked or the one that is left",
            words="You gave how much is left. What is saved is the rest up to 100 %.",
        ),
        Slip(
            name="counted-on-the-thinner-lens",
            step="which of the two lenses the share is counted on",
            words="You gave how much thicker the first lens is than the second. A saving is counted on the "
            "lens you start from, the thicker one.",
        ),
    )

    def draw(self, draws: Draws) -> SavingCase:
        """Return a low index and a higher one, in the range of lens materials."""
        return SavingCase(low=draws.step(1.498, 1.53, 0.002), high=draws.step(1.586, 1.74, 0.002))

    def kind(self, case: SavingCase) -> NumberAnswer:
        """Return the kind: per cent."""
        return NumberAnswer(unit="%", tolerance=0.15, digits=1)

    def answer(self, case: SavingCase, slips: Set[str] = NONE) -> float:
        """Return the saving; the ratio of whole indices is what it would be if each were 1 more."""
        saved = saving_by_rule(case.low, case.high)
        if "ratio-of-indices" in slips:
            saved = 1.0 - case.low / case.high
        left = 1.0 - saved
        if "counted-on-the-thinner-lens" in slips:
            return 100.0 / left if "share-that-is-left" in slips else 100.0 * (1.0 / left - 1.0)
        return 100.0 * (left if "share-that-is-left" in slips else saved)

    def prompt(self, case: SavingCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of index {case.low:.3f} is to be made in an invented material of index {case.high:.3f}, "
            "with the same power, in the same frame.",
            "By how much does the rule of thumb say that it gets thinner? Answer in %, to 0.1 %.",
        )

    def given(self, case: SavingCase) -> tuple[Term, ...]:
        """Return both indices."""
        return (
            in_full("n1", case.low, "", least_digits=3, meaning="index of the lens as it is"),
            in_full("n2", case.high, "", least_digits=3, meaning="index of the new one"),
        )

    def solution(self, case: SavingCase) -> Solution:
        """Return why 1 is taken off, and the step."""
        return Solution(
            words=(
                "A surface bends by index less 1. The higher that is, the flatter the curves that give the "
                "same power, and with the curves goes what the lens is thicker at one place than at another.",
                "It is a rule. The thinnest place keeps its thickness, so of the whole usually less is "
                "saved; the panel of the lesson shows the exact lenses beside it.",
            ),
            workings=(saving_working(case.low, case.high),),
        )

    def hints(self, case: SavingCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Air has the index 1. What is left of each index when air is taken off?",
            "The curves go with 1 over that. Compare the two, and count the saving on the lens you have.",
        )
