"""A question about what two prisms leave between the eyes."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.prism_pair import PrismPair
from lablib.optics.prism_pair_workings import between_workings
from lablib.optics.terms import prism_step
from lablib.questions.answers.units import PRISM_DIOPTRE
from lablib.questions.prism.terms import OPPOSITE, SIDEWAYS, WAYS, along
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoPrismsCase:
    """A prism before each eye, both along one direction.

    right_base, left_base: their bases; right_prism_d, left_prism_d: their amounts [prism D].
    """

    right_base: str
    right_prism_d: float
    left_base: str
    left_prism_d: float

    @property
    def is_sideways(self) -> bool:
        """Whether the bases are in or out."""
        return self.right_base in SIDEWAYS

    def pair(self, *, left_turned: bool = False) -> PrismPair:
        """Return the prism of both eyes.

        left_turned: whether the left one is taken with the opposite base.
        """
        left_base = OPPOSITE[self.left_base] if left_turned else self.left_base
        right, left = along(self.right_base, self.right_prism_d), along(left_base, self.left_prism_d)
        return PrismPair(
            right_in_prism_d=right[0],
            right_up_prism_d=right[1],
            left_in_prism_d=left[0],
            left_up_prism_d=left[1],
        )

    def between(self, *, left_turned: bool = False) -> float:
        """Return how much prism there is between the eyes [prism D].

        left_turned: as in `pair`.
        """
        inwards, upwards = self.pair(left_turned=left_turned).between
        return abs(inwards if self.is_sideways else upwards)

    @property
    def workings(self) -> tuple[Working, Working]:
        """The sum or the difference, and its size."""
        sideways, upright = between_workings(self.pair())
        step = sideways if self.is_sideways else upright
        size = prism_step(
            "prism between the eyes", "P", f"abs({step.symbol})", (step.as_term(),), self.between()
        )
        return step, size


class BetweenTheEyes(Maker[TwoPrismsCase]):
    """How much prism two readings leave between the eyes, and how much they have alike."""

    name = "between-the-eyes"
    lesson = "06"
    skill = "prism-between-the-eyes"
    slips = (
        Slip(
            name="alike-upright-added",
            step="adding or taking away",
            words="You added. Both bases point the same way, up or down, and move both images alike: only "
            "the difference is left between the eyes.",
        ),
        Slip(
            name="opposite-upright-subtracted",
            step="adding or taking away",
            words="You subtracted. One base is up and the other down, so one image goes down and the other "
            "up: add.",
        ),
        Slip(
            name="same-word-sideways-subtracted",
            step="adding or taking away",
            words="You subtracted. In and out are named from the nose: the same word in both eyes turns the "
            "eyes against each other, and adds.",
        ),
        Slip(
            name="in-and-out-added",
            step="adding or taking away",
            words="You added. Base in before one eye and base out before the other point to the same side of "
            "the wearer: only the difference is left between the eyes.",
        ),
        Slip(
            name="one-eye-alone",
            step="the part of each eye",
            words="You gave the prism of one eye. Between the eyes both count.",
        ),
    )

    def draw(self, draws: Draws) -> TwoPrismsCase:
        """Return two prisms, of one amount in half of the questions."""
        right_base = draws.one_of(tuple(WAYS))
        right = draws.step(0.5, 3.0, 0.25)
        return TwoPrismsCase(
            right_base=right_base,
            right_prism_d=right,
            left_base=draws.one_of((right_base, OPPOSITE[right_base])),
            left_prism_d=right if draws.whole(2) == 0 else draws.step(0.5, 3.0, 0.25),
        )

    def kind(self, case: TwoPrismsCase) -> NumberAnswer:
        """Return the kind: an amount."""
        return NumberAnswer(unit="prism dioptres", also=PRISM_DIOPTRE, tolerance=0.05, digits=2)

    def slips_in(self, case: TwoPrismsCase) -> tuple[Slip, ...]:
        """Return the slip of these two words, and that of one eye alone."""
        return tuple(slip for slip in self.slips if slip.name in (_turning(case), "one-eye-alone"))

    def answer(self, case: TwoPrismsCase, slips: Set[str] = NONE) -> float:
        """Return the amount; whoever adds for subtracts reads one base turned round."""
        if "one-eye-alone" in slips:
            return max(case.right_prism_d, case.left_prism_d)
        return case.between(left_turned=_turning(case) in slips)

    def prompt(self, case: TwoPrismsCase) -> tuple[str, ...]:
        """Return both readings and what is asked."""
        return (
            f"Two lenses of an invented pair, read at the pupils: right {case.right_prism_d:.2f} base "
            f"{case.right_base}, left {case.left_prism_d:.2f} base {case.left_base}.",
            "How much prism is there between the eyes? Answer in prism dioptres, to 0.01.",
        )

    def solution(self, case: TwoPrismsCase) -> Solution:
        """Return the rule for this direction, and what the rest does."""
        rule = (
            "Sideways, the same word adds and opposite words subtract."
            if case.is_sideways
            else "Up and down, opposite words add and the same word subtracts."
        )
        return Solution(
            words=(
                rule,
                "What both eyes have the same way in space, as yoked and thinning prism, moves all that is "
                "seen a little and asks nothing of the two eyes against each other.",
            ),
            workings=case.workings,
        )

    def hints(self, case: TwoPrismsCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw both lenses facing the wearer, with an arrow to each base.",
            "Do the arrows point the same way? Then their difference is left between the eyes, else their "
            "sum.",
        )


def _turning(case: TwoPrismsCase) -> str:
    """The name of the slip in adding or taking away that these two words invite."""
    alike = case.right_base == case.left_base
    if case.is_sideways:
        return "same-word-sideways-subtracted" if alike else "in-and-out-added"
    return "alike-upright-added" if alike else "opposite-upright-subtracted"
