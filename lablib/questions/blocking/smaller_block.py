"""What a joint holds on a smaller block, as a question: adhesive by the cube, friction by the radius."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.contact import Annulus, r_eff_mm
from lablib.optics.terms import distance_term
from lablib.questions.bench_stack.words import NEWTON_METRES
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_STICKS_STEP = "how the part that sticks grows with the block"
_RUBS_STEP = "how the part that rubs grows with the block"
_AREA = Slip(
    name="sticking-by-the-area",
    step=_STICKS_STEP,
    words="You took the part that sticks by the area. It loses area and lever arm at once, so it goes with "
    "the cube of the radius.",
)
_RADIUS = Slip(
    name="sticking-by-the-radius",
    step=_STICKS_STEP,
    words="You took the part that sticks by the radius alone. A smaller block also has less area to stick "
    "with.",
)
_CUBED = Slip(
    name="rubbing-by-the-cube",
    step=_RUBS_STEP,
    words="You took the part that rubs by the cube too. Friction does not ask for area: the same clamp force "
    "only rubs on a shorter arm.",
)
_KEPT = Slip(
    name="rubbing-kept",
    step=_RUBS_STEP,
    words="You left the part that rubs as it was. Its force stays, but it acts on a shorter arm.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockCase:
    """A joint on one block, and a smaller block.

    sticks_nm, rubs_nm: torque of its adhesive and of its friction [N m].
    large_mm, small_mm: radii of the two round blocks [mm].
    """

    sticks_nm: float
    rubs_nm: float
    large_mm: float
    small_mm: float


class SmallerBlock(Maker[BlockCase]):
    """Say what one joint holds on a smaller round block."""

    name = "smaller-block"
    lesson = "10"
    skill = "size-of-the-block"
    slips = (_AREA, _RADIUS, _CUBED, _KEPT)

    def draw(self, draws: Draws) -> BlockCase:
        """Return a joint and two blocks."""
        large = draws.step(11.0, 14.0, 0.5)
        return BlockCase(
            sticks_nm=draws.step(0.3, 0.8, 0.02),
            rubs_nm=draws.step(0.4, 1.2, 0.02),
            large_mm=large,
            small_mm=large - draws.step(1.5, 3.5, 0.5),
        )

    def kind(self, case: BlockCase) -> NumberAnswer:
        """Return a torque to 0.01 N m."""
        return NumberAnswer(unit="N m", tolerance=0.01, digits=2)

    def answer(self, case: BlockCase, slips: Set[str] = NONE) -> float:
        """Return what the joint holds on the smaller block. The slips are powers of the ratio of radii."""
        ratio = case.small_mm / case.large_mm
        sticks, rubs = _sticking_share(case), _rubbing_share(case)
        if _AREA.name in slips:
            sticks = ratio**2
        if _RADIUS.name in slips:
            sticks = ratio
        if _CUBED.name in slips:
            rubs = ratio**3
        if _KEPT.name in slips:
            rubs = 1.0
        return case.sticks_nm * sticks + case.rubs_nm * rubs

    def prompt(self, case: BlockCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "In an invented bench's grip one joint holds by two things: its adhesive sticks, and under the "
            "clamp it rubs. Both torques were worked out for a large round block. Now a small round block is "
            "taken, with the same pad and the same clamp force.",
            f"How much torque does this joint hold on the small block, both parts together? Give it in "
            f"{NEWTON_METRES}, to 0.01 {NEWTON_METRES}.",
        )

    def given(self, case: BlockCase) -> tuple[Term, ...]:
        """Return both torques and both radii."""
        return (
            Term(symbol="T_s", value=case.sticks_nm, unit="N m", meaning="part that sticks, large block"),
            Term(symbol="T_r", value=case.rubs_nm, unit="N m", meaning="part that rubs, large block"),
            distance_term("a_1", case.large_mm, "radius of the large block"),
            distance_term("a_2", case.small_mm, "radius of the small block"),
        )

    def solution(self, case: BlockCase) -> Solution:
        """Return each part with its own power of the ratio."""
        sticking, rubbing, large, small = self.given(case)
        sticks = Working(
            what="part that sticks on the small block",
            symbol="S",
            formula="T_s * (a_2 / a_1)^3",
            terms=(sticking, small, large),
            value=case.sticks_nm * _sticking_share(case),
            unit="N m",
            digits=3,
        )
        rubs = Working(
            what="part that rubs on the small block",
            symbol="R",
            formula="T_r * a_2 / a_1",
            terms=(rubbing, small, large),
            value=case.rubs_nm * _rubbing_share(case),
            unit="N m",
            digits=3,
        )
        whole = Working(
            what="torque of the joint on the small block",
            symbol="T",
            formula="S + R",
            terms=(sticks.as_term(), rubs.as_term()),
            value=self.answer(case),
            unit="N m",
            digits=3,
        )
        return Solution(
            words=(
                "What sticks holds by area and by lever arm: two powers of the radius and one more make the "
                "cube. What rubs has the same force whatever the area, and a shorter arm: the radius once.",
                "So take the largest block that clears the finished outline.",
            ),
            workings=(sticks, rubs, whole),
        )

    def hints(self, case: BlockCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Take the two parts one at a time. Which of them asks how large the area is?",
            "Torque is force times arm. On the smaller block, what becomes of the force, and what of the "
            "arm?",
        )


def _sticking_share(case: BlockCase) -> float:
    small, large = (Annulus(radius_mm=radius).w_mm3 for radius in (case.small_mm, case.large_mm))
    return small / large


def _rubbing_share(case: BlockCase) -> float:
    small, large = (r_eff_mm(Annulus(radius_mm=radius)) for radius in (case.small_mm, case.large_mm))
    return small / large
