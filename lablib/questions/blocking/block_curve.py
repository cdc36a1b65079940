"""The gap between a block and a lens front of another curve, as a question."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.curve_match import rim_gap_mm
from lablib.bench.faces import ENGRAVED_INDEX
from lablib.bench.grip_workings import gap_workings
from lablib.optics.terms import distance_term, in_full, power_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_REACH_STEP = "which distance goes into a sagitta"
_RADIUS_STEP = "the radius that belongs to a curve"
_WHICH_STEP = "what is done with the two sagittae"
_DIAMETER = Slip(
    name="diameter-for-radius",
    step=_REACH_STEP,
    words="You put in the width of the block. A sagitta is counted from the middle, so half the width goes "
    "in.",
)
_NO_INDEX = Slip(
    name="index-left-out",
    step=_RADIUS_STEP,
    words="You took 1000 over the curve for the radius. The curves are engraved for index 1.530, so 530 is "
    "divided by the curve.",
)
_ADDED = Slip(
    name="sagittae-added",
    step=_WHICH_STEP,
    words="You added the sagittae. Both surfaces bulge the same way, so only their difference parts them.",
)
_ONE_ALONE = Slip(
    name="one-sagitta-alone",
    step=_WHICH_STEP,
    words="You gave the sagitta of the block. On a flat lens that would be the gap; this front has a curve "
    "too.",
)
_LEAST_APART_D = 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class GapCase:
    """A block on a front.

    block_d, front_d: their curves, for index 1.530 [D]; width_mm: of the block [mm].
    """

    block_d: float
    front_d: float
    width_mm: float


class BlockCurveGap(Maker[GapCase]):
    """Say by how much block and front part, and know where the gap lies."""

    name = "block-curve-gap"
    lesson = "10"
    skill = "block-curve"
    slips = (_DIAMETER, _NO_INDEX, _ADDED, _ONE_ALONE)

    def draw(self, draws: Draws) -> GapCase:
        """Return two curves well apart, and a block's width."""
        block, front = draws.until(
            "two curves",
            lambda draws: (draws.step(1.0, 8.0, 0.5), draws.step(0.5, 8.0, 0.25)),
            lambda both: abs(both[0] - both[1]) >= _LEAST_APART_D,
        )
        return GapCase(block_d=block, front_d=front, width_mm=draws.step(20.0, 28.0, 1.0))

    def kind(self, case: GapCase) -> NumberAnswer:
        """Return a length to 0.01 mm."""
        return NumberAnswer(unit="mm", tolerance=0.01, digits=2)

    def answer(self, case: GapCase, slips: Set[str] = NONE) -> float:
        """Return the gap, whichever way round."""
        away = case.width_mm if _DIAMETER.name in slips else case.width_mm / 2.0
        # Without the index a curve stands for a radius 1 / 0.53 times as long.
        share = ENGRAVED_INDEX - 1.0 if _NO_INDEX.name in slips else 1.0
        block, front = share * case.block_d, share * case.front_d
        if _ADDED.name in slips:
            front = -front
        if _ONE_ALONE.name in slips:
            front = 0.0
        return abs(rim_gap_mm(block_curve_d=block, front_curve_d=front, away_mm=away))

    def prompt(self, case: GapCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A round block, {case.width_mm:g} mm wide, has the curve {case.block_d:.2f} D. The front of an "
            f"invented lens shows {case.front_d:+.2f} D on a lens measure. Both are engraved for index "
            "1.530. Where the two surfaces touch they leave a gap elsewhere, as long as the pad is not "
            "pressed.",
            "How large is the gap, where it is largest? Give it in mm, to 0.01 mm.",
        )

    def given(self, case: GapCase) -> tuple[Term, ...]:
        """Return both curves, the index they are engraved for and the block's width."""
        return (
            power_term("F_b", case.block_d, "curve of the block"),
            power_term("F_f", case.front_d, "curve of the lens front"),
            in_full("n", ENGRAVED_INDEX, "", least_digits=3, meaning="index the curves are engraved for"),
            distance_term("w", case.width_mm, "width of the block"),
        )

    def solution(self, case: GapCase) -> Solution:
        """Return radii, sagittae and their difference, the greater first, and where the gap lies."""
        steps = gap_workings(
            block_curve_d=case.block_d, front_curve_d=case.front_d, away_mm=case.width_mm / 2.0
        )
        return Solution(words=(_where(case),), workings=_as_size(steps))

    def hints(self, case: GapCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How far does each of the two surfaces fall off between its middle and the rim of the block?",
            "Radius first: 530 over the curve. Then the exact sagitta of each, at half the block's width.",
        )


def _as_size(steps: tuple[Working, ...]) -> tuple[Working, ...]:
    """The gap as a size, whichever surface is the steeper."""
    *first, gap = steps
    if gap.value > 0.0:
        return steps
    return *first, replace(gap, formula="s_f - s_b", value=-gap.value)


def _where(case: GapCase) -> str:
    if case.block_d > case.front_d:
        return (
            "The block is the steeper one: it bears on its rim and leaves the gap in the middle. Under the "
            "clamp it bends the lens over the back tip. Take a block nearer the curve of the front."
        )
    return (
        "The block is the flatter one: it bears in the middle and leaves the gap at its rim, where the pad "
        "would hold most torque. Take a block nearer the curve of the front."
    )
