"""A question about a prism that is shared between the eyes."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.prism_pair import split
from lablib.optics.prism_pair_workings import split_workings
from lablib.questions.answers.prism import PrismAnswer
from lablib.questions.prism.terms import OPPOSITE, SIDEWAYS, WAYS, along
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution

_DOUBLE = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SplitCase:
    """A prism ordered before one eye that is to be shared equally.

    eye: the eye it was ordered for; the other one is asked about.
    base: "in", "out", "up" or "down"; amount_prism_d: how much [prism D].
    """

    eye: Eye
    base: str
    amount_prism_d: float

    @property
    def whole(self) -> dict[str, float]:
        """The whole between the eyes, as `split` takes it [prism D]."""
        inwards, upwards = along(self.base, self.amount_prism_d)
        # Base up of the right eye over the left: before the left eye it counts the other way.
        return {"in_prism_d": inwards, "up_prism_d": self.eye.nasal_sign * upwards + 0.0}

    @property
    def asked(self) -> tuple[float, float]:
        """Base in and base up of the eye asked about [prism D]."""
        pair = split(**self.whole)
        return pair.left if self.eye is Eye.RIGHT else pair.right


class Split(Maker[SplitCase]):
    """What the other eye gets when a prism is split equally."""

    name = "split"
    lesson = "06"
    skill = "splitting-prism"
    slips = (
        Slip(
            name="up-in-both-eyes",
            step="the word of the other eye",
            words="You gave both eyes the same word. Up and down in both eyes alike cancel: split upright, "
            "one eye has base up and the other base down.",
        ),
        Slip(
            name="in-and-out",
            step="the word of the other eye",
            words="You gave the eyes opposite words. Sideways that cancels, for base in and base out then "
            "lie on one side of the wearer: split sideways, both eyes have the same word.",
        ),
        Slip(
            name="full-amount-in-each-eye",
            step="the amount of each eye",
            words="You gave each eye the full amount. Between the eyes that makes twice what was ordered.",
        ),
    )

    def draw(self, draws: Draws) -> SplitCase:
        """Return an order in half prism dioptres."""
        return SplitCase(
            eye=draws.one_of(EYES),
            base=draws.one_of(tuple(WAYS)),
            amount_prism_d=draws.step(1.0, 8.0, 0.5),
        )

    def kind(self, case: SplitCase) -> PrismAnswer:
        """Return the kind: an amount with its base."""
        return PrismAnswer(eye=case.eye.other, tolerance_prism_d=0.02)

    def slips_in(self, case: SplitCase) -> tuple[Slip, ...]:
        """Return the slips of this direction."""
        never = "up-in-both-eyes" if case.base in SIDEWAYS else "in-and-out"
        return tuple(slip for slip in self.slips if slip.name != never)

    def answer(self, case: SplitCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """Return the prism of the other eye; the wrong word turns it round."""
        share = _DOUBLE if "full-amount-in-each-eye" in slips else 1.0
        if slips & {"up-in-both-eyes", "in-and-out"}:
            share = -share
        inwards, upwards = case.asked
        return share * inwards + 0.0, share * upwards + 0.0

    def prompt(self, case: SplitCase) -> tuple[str, ...]:
        """Return the order and what is asked."""
        other = case.eye.other
        return (
            f"An invented order: {case.amount_prism_d:.2f} base {case.base} before the {case.eye} eye, none "
            f"before the {other}. To make the lenses alike, the prescriber agrees to have it split equally "
            "between the eyes.",
            f"What does the {other} lens get? Give amount and base, as in 1.50 base in.",
        )

    def solution(self, case: SplitCase) -> Solution:
        """Return why the word is what it is, and both shares."""
        if case.base in SIDEWAYS:
            why = (
                "Sideways the same word goes to both eyes. In and out are named from the nose, so base in "
                "before both is two bases that face each other: each helps the other."
            )
        else:
            why = (
                "Up and down, the eyes get opposite words. What counts is how much higher one image stands "
                "than the other, and base up before one eye does the same as base down before the other."
            )
            if case.eye is Eye.LEFT:
                why += (
                    f" The steps count the right eye over the left, so base {case.base} before the left eye "
                    f"stands there as base {OPPOSITE[case.base]}."
                )
        gets = (
            f"Each eye gets half: {self.kind(case).written(self.answer(case))} for the {case.eye.other} eye."
        )
        return Solution(words=(why, gets), workings=split_workings(**case.whole))

    def hints(self, case: SplitCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which prism before the other eye has the same effect as the one that was ordered?",
            "Up and down are the same way for both eyes. In and out are opposite ways: the nose is between.",
        )
