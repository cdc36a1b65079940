"""A question about the vertical imbalance of bifocals at near."""

from collections.abc import Set

from lablib.optics.near_imbalance import slab_off
from lablib.optics.prescription import Prescription
from lablib.questions.answers.units import PRISM_DIOPTRE
from lablib.questions.multifocals.bifocal_pair import BifocalPair, draw_pair
from lablib.questions.prism.terms import CENTIMETRES, MM_PER_CM
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term


class NearImbalanceBifocal(Maker[BifocalPair]):
    """The vertical imbalance of two bifocals at the reading level."""

    name = "near-imbalance-bifocal"
    lesson = "08"
    skill = "vertical-imbalance-at-near"
    slips = (
        Slip(
            name="measured-from-the-top",
            step="the point the level counts from",
            words="You measured from the top of the segment. The imbalance comes from the distance powers, "
            "so it counts from the distance centre; the top is higher than the level by less.",
        ),
        Slip(
            name="top-for-reading-level",
            step="the point the level counts from",
            words="You took the level of the tops. The wearer reads lower than that.",
        ),
        Slip(
            name="bases-added",
            step="adding or taking away",
            words="You added two bases that point the same way. What both eyes have alike disturbs neither: "
            "take the smaller from the larger.",
        ),
        CENTIMETRES,
    )

    def draw(self, draws: Draws) -> BifocalPair:
        """Return a pair that reads elsewhere than 10 mm down, where the prism has the size of the power."""
        return draws.until("a reading level", draw_pair, lambda pair: pair.drop_mm != MM_PER_CM)

    def kind(self, case: BifocalPair) -> NumberAnswer:
        """Return the kind: an amount of prism."""
        return NumberAnswer(unit="prism dioptres", also=PRISM_DIOPTRE, tolerance=0.05, digits=2)

    def answer(self, case: BifocalPair, slips: Set[str] = NONE) -> float:
        """Return the imbalance; two bases added are those of one lens with the other sign."""
        drop = case.drop_mm
        if "measured-from-the-top" in slips:
            drop = case.reading_mm
        if "top-for-reading-level" in slips:
            drop = case.top_mm
        right, left = case.lenses
        if "bases-added" in slips:
            left = Prescription(sphere_d=-left.sphere_d)
        factor = MM_PER_CM if CENTIMETRES.name in slips else 1.0
        return factor * slab_off(right, left, drop_mm=drop).amount_prism_d

    def prompt(self, case: BifocalPair) -> tuple[str, ...]:
        """Return the pair and what is asked."""
        return (
            "An invented pair of flat tops, equal segments at one height. The distance powers differ.",
            "How large is the vertical imbalance between the eyes where the wearer reads? Answer in prism "
            "dioptres, to 0.01.",
        )

    def given(self, case: BifocalPair) -> tuple[Term, ...]:
        """Return both spheres and both levels."""
        return case.given

    def solution(self, case: BifocalPair) -> Solution:
        """Return the level, each lens, and the difference."""
        return Solution(
            words=(
                "Equal segments at one height give both eyes the same prism and change nothing between them. "
                "What is left are the distance powers, and their prism counts from the distance centres.",
                "Both lenses have the same sign, so both bases point the same way: subtract.",
            ),
            workings=case.workings,
        )

    def hints(self, case: BifocalPair) -> tuple[str, ...]:
        """Return hints."""
        return (
            "The additions are equal. Do the segments put anything between the eyes?",
            "Prentice's rule for the distance powers: from which point does the distance to the reading "
            "level count?",
        )
