"""How far a bevel on the rim's curve wanders along the edge of a lens of another curve, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.bevel import bevel_wander_mm
from lablib.bench.edges import edge_default
from lablib.bench.edges_workings import wander_workings
from lablib.bench.faces import ENGRAVED_INDEX
from lablib.optics.terms import distance_term, in_full, power_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, plain

_WHERE_STEP = "between which two places the bevel is followed"
_RADIUS_STEP = "the radius that belongs to a curve"
_SAG_STEP = "which sagittae are worked out"
_MIDDLE = Slip(
    name="counted-from-the-middle",
    step=_WHERE_STEP,
    words="You counted from the middle of the lens. There is no bevel there: it runs between the nearest and "
    "the farthest place of the outline, and only what comes on between them moves it along the edge.",
)
_NO_INDEX = Slip(
    name="index-left-out",
    step=_RADIUS_STEP,
    words="You took 1000 over the curve for the radius. Lens measures are engraved for index 1.530, so 530 "
    "is divided by the curve.",
)
_CURVES = Slip(
    name="curves-subtracted-first",
    step=_SAG_STEP,
    words="You took one curve from the other and worked out one sagitta. Sagittae do not grow in step with "
    "curves: each surface has its own, and then they are subtracted.",
)
_RIM_ALONE = Slip(
    name="rim-alone",
    step=_SAG_STEP,
    words="You followed the rim alone. The front of the lens falls off too, and the bevel moves along the "
    "edge only by the difference.",
)
_LEAST_APART_D = 2.5


@dataclass(frozen=True, slots=True, kw_only=True)
class WanderCase:
    """A lens in a rim of a steeper curve.

    front_d, rim_d: their curves, for index 1.530 [D].
    far_mm, near_mm: farthest and nearest place of the outline, from its middle [mm].
    """

    front_d: float
    rim_d: float
    far_mm: float
    near_mm: float


class BevelWander(Maker[WanderCase]):
    """Say how far a bevel wanders that follows a rim of another curve."""

    name = "bevel-wander"
    lesson = "13"
    skill = "bevel-curve"
    slips = (_MIDDLE, _NO_INDEX, _CURVES, _RIM_ALONE)

    def draw(self, draws: Draws) -> WanderCase:
        """Return a lens and a wrapped rim."""
        front, rim = draws.until(
            "two curves",
            lambda draws: (draws.step(2.0, 5.5, 0.25), draws.step(6.0, 8.5, 0.25)),
            lambda both: both[1] - both[0] >= _LEAST_APART_D,
        )
        return WanderCase(
            front_d=front,
            rim_d=rim,
            far_mm=draws.step(25.0, 30.0, 0.5),
            near_mm=draws.step(15.0, 20.0, 0.5),
        )

    def kind(self, case: WanderCase) -> NumberAnswer:
        """Return a length to 0.01 mm."""
        return NumberAnswer(unit="mm", tolerance=0.02, digits=2)

    def answer(self, case: WanderCase, slips: Set[str] = NONE) -> float:
        """Return the wander."""
        front, rim = case.front_d, case.rim_d
        if _CURVES.name in slips:
            front, rim = 0.0, rim - front
        if _RIM_ALONE.name in slips:
            front = 0.0
        # Without the index a curve stands for a radius 1 / 0.53 times as long.
        share = ENGRAVED_INDEX - 1.0 if _NO_INDEX.name in slips else 1.0
        return bevel_wander_mm(
            lens_curve_d=share * front,
            rim_curve_d=share * rim,
            away_mm=case.far_mm,
            from_mm=0.0 if _MIDDLE.name in slips else case.near_mm,
        )

    def prompt(self, case: WanderCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The front of an invented lens shows {case.front_d:+.2f} D on a lens measure, the lens that "
            f"filled the rim before shows {case.rim_d:+.2f} D. Both are taken as spheres about the middle of "
            "the outline, and the measure is engraved for index 1.530.",
            f"The nearest place of the outline is {case.near_mm:g} mm from the middle, the farthest "
            f"{case.far_mm:g} mm. The bevel follows the curve of the rim.",
            "How much farther from the front does the bevel lie at the farthest place than at the nearest? "
            "Use exact sagittae. Give it in mm, to 0.01 mm.",
        )

    def given(self, case: WanderCase) -> tuple[Term, ...]:
        """Return both curves, their index and both places."""
        return (
            power_term("F_f", case.front_d, "curve of the lens front"),
            power_term("F_r", case.rim_d, "curve of the rim"),
            in_full("n", ENGRAVED_INDEX, "", least_digits=3, meaning="index the curves are engraved for"),
            distance_term("y_near", case.near_mm, "distance of the nearest place"),
            distance_term("y_far", case.far_mm, "distance of the farthest place"),
        )

    def solution(self, case: WanderCase) -> Solution:
        """Return the steps, and the edge that such a bevel needs."""
        side = edge_default("bevel_side_mm")
        needed = plain(self.answer(case) + 2.0 * side, 1)
        return Solution(
            words=(
                "At each place, how much deeper does the rim lie than the front? The bevel moves back along "
                "the edge by what that grows from the nearest place to the farthest.",
                f"With {side:g} mm either side of its tip such a bevel needs about {needed} mm of edge at "
                "the farthest place. A thinner edge cannot follow this rim: a front nearer the rim's curve, "
                "or another frame.",
            ),
            workings=wander_workings(
                lens_curve_d=case.front_d, rim_curve_d=case.rim_d, away_mm=case.far_mm, from_mm=case.near_mm
            ),
        )

    def hints(self, case: WanderCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Sketch the edge of the lens and the rim behind it. Where do they part, and by how much?",
            "Radius = 530 over the curve. Then four exact sagittae: rim and front, at both places.",
            "Subtract front from rim at each place. Then take one difference from the other.",
        )
