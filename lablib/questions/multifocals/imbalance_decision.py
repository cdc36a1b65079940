"""A decision about a bifocal pair: whether its imbalance at near is raised."""

from collections.abc import Set

from lablib.optics.power import written_power
from lablib.optics.practice import usual
from lablib.questions.multifocals.bifocal_pair import BifocalPair, draw_pair
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

# The decision must not hang on less than this.
_CLEAR_PRISM_D = 0.25
_MAKE, _ASK, _SLAB, _OTHER = "make", "ask", "slab-off", "other-lens"


class NearImbalanceDecision(Maker[BifocalPair]):
    """Whether the imbalance of a bifocal pair is raised before it is made."""

    name = "near-imbalance-decision"
    lesson = "08"
    skill = "raise-near-imbalance"
    slips = (
        Slip(
            name="imbalance-missed",
            step="the imbalance at the reading level",
            words="You had it made. Where the wearer reads, the powers put more between the eyes than this "
            "lab lets pass without asking.",
        ),
        Slip(
            name="measured-from-the-top",
            step="the point the level counts from",
            words="You had it made. Measured from the tops the imbalance seems small; it counts from the "
            "distance centres, and there it is more than this lab lets pass.",
        ),
        Slip(
            name="asks-without-need",
            step="the imbalance at the reading level",
            words="You held the job. The imbalance at the reading level is less than this lab asks about.",
        ),
        Slip(
            name="slab-off-invented",
            step="who decides on slab-off",
            words="You had slab-off ground that nobody ordered. Whether it is made, and how much, the "
            "prescriber decides.",
        ),
        Slip(
            name="slab-off-on-the-wrong-lens",
            step="who decides on slab-off",
            words="You had slab-off ground that nobody ordered, and on the wrong lens. If it is ordered, it "
            "goes on the lens with the most minus or least plus.",
        ),
    )

    def draw(self, draws: Draws) -> BifocalPair:
        """Return a pair, in half of the cases with an imbalance that is raised; never one that is near it."""
        is_large = draws.whole(2) == 0
        return draws.until("a pair to decide on", draw_pair, lambda pair: _is_clear(pair, is_large))

    def kind(self, case: BifocalPair) -> ChoiceAnswer:
        """Return the kind: four things to do."""
        eye = case.imbalance(case.drop_mm).eye
        slabs = {eye: _SLAB, eye.other: _OTHER}
        return ChoiceAnswer(
            options=(
                Option(key=_MAKE, words="Make it as ordered."),
                Option(key=_ASK, words="Hold it, and ask the prescriber about the imbalance at near."),
                *(
                    Option(key=slabs[one], words=f"Make it with slab-off, base up, on the {one} lens.")
                    for one in type(eye)
                ),
            )
        )

    def slips_in(self, case: BifocalPair) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        if self.answer(case) == _MAKE:
            wrong = "asks-without-need"
        else:
            wrong = "measured-from-the-top" if not _is_raised(case, case.reading_mm) else "imbalance-missed"
        names = {wrong, "slab-off-invented", "slab-off-on-the-wrong-lens"}
        return tuple(slip for slip in self.slips if slip.name in names)

    def answer(self, case: BifocalPair, slips: Set[str] = NONE) -> str:
        """Return the decision, or the one a slip leads to."""
        if "slab-off-invented" in slips:
            return _SLAB
        if "slab-off-on-the-wrong-lens" in slips:
            return _OTHER
        is_raised = _is_raised(case, case.drop_mm)
        if slips & {"imbalance-missed", "measured-from-the-top", "asks-without-need"}:
            is_raised = not is_raised
        return _ASK if is_raised else _MAKE

    def pairs(self, case: BifocalPair, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: BifocalPair) -> tuple[str, ...]:
        """Return the pair, the lab's rule, and what is asked."""
        return (
            f"An invented order for flat tops: right {written_power(case.right_d)} D, left "
            f"{written_power(case.left_d)} D, add {written_power(case.addition_d)} D in both, the tops "
            "level. The ticket says nothing about imbalance.",
            f"This lab asks the prescriber from {usual('near_imbalance_raised'):g} prism dioptres on.",
            "What do you do?",
        )

    def given(self, case: BifocalPair) -> tuple[Term, ...]:
        """Return both spheres and both levels."""
        return case.given

    def solution(self, case: BifocalPair) -> Solution:
        """Return the amount and what follows from it."""
        found = case.imbalance(case.drop_mm)
        decision = (
            "That is enough to ask about. What the prescriber answers is recorded and made. If slab-off is "
            f"ordered, it goes base up on the {found.eye} lens, which has the most minus or least plus."
            if self.answer(case) == _ASK
            else "That is less than this lab asks about, and the pair is made as ordered."
        )
        return Solution(
            words=(
                "The level counts from the distance centres, because the imbalance comes from the distance "
                f"powers. Here it is {found.amount_prism_d:.2f} prism dioptres.",
                decision,
            ),
            workings=case.workings,
        )

    def hints(self, case: BifocalPair) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Work out how far below the distance centres the wearer reads.",
            "Prentice's rule for each lens there. How much is left between the eyes?",
            "Who decides whether anything is done about it?",
        )


def _is_raised(case: BifocalPair, drop_mm: float) -> bool:
    # Compared rounded, so that the last bit of a machine decides nothing.
    return round(case.imbalance(drop_mm).amount_prism_d, 6) >= usual("near_imbalance_raised")


def _is_clear(case: BifocalPair, is_large: bool) -> bool:
    amount = case.imbalance(case.drop_mm).amount_prism_d
    away = abs(amount - usual("near_imbalance_raised"))
    return away > _CLEAR_PRISM_D and _is_raised(case, case.drop_mm) == is_large
