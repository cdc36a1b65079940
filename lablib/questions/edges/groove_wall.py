"""What a groove for a cord leaves of an edge, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.edges import edge_default
from lablib.bench.edges_workings import wall_workings
from lablib.bench.groove import Groove
from lablib.optics.terms import distance_term, in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, plain

_WIDTH_STEP = "what the groove takes on this side"
_NO_WIDTH = Slip(
    name="groove-without-width",
    step=_WIDTH_STEP,
    words="You took the middle of the groove for its side. Half of its width comes off this wall too.",
)
_WHOLE = Slip(
    name="whole-width-off-one-wall",
    step=_WIDTH_STEP,
    words="You took the whole width of the groove off this wall. It reaches only half of it to either side "
    "of its middle.",
)
_OTHER = Slip(
    name="wall-in-front",
    step="which wall is asked for",
    words="You gave the wall in front of the groove. The one behind it was asked for.",
)
_BOTH = Slip(
    name="both-walls",
    step="which wall is asked for",
    words="You gave what is left in front and behind together. Each wall has to hold for itself.",
)
# A thinner wall than this is no wall [mm].
_LEAST_MM = 0.25


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveCase:
    """A groove at the thinnest place of an edge.

    edge_mm: thickness there; width_mm: of the groove; middle_mm: from the front to its middle [mm].
    """

    edge_mm: float
    width_mm: float
    middle_mm: float

    @property
    def groove(self) -> Groove:
        """The groove."""
        return Groove(edge_mm=self.edge_mm, width_mm=self.width_mm, middle_mm=self.middle_mm)


class WallBesideAGroove(Maker[GrooveCase]):
    """Say what is left behind a groove, and whether it is enough."""

    name = "wall-beside-a-groove"
    lesson = "13"
    skill = "groove-walls"
    slips = (_NO_WIDTH, _WHOLE, _OTHER, _BOTH)

    def draw(self, draws: Draws) -> GrooveCase:
        """Return a groove in front of, in or behind the middle, with something left on either side."""
        return draws.until(
            "a groove",
            lambda draws: GrooveCase(
                edge_mm=draws.step(1.6, 3.6, 0.1),
                width_mm=draws.step(0.5, 0.8, 0.1),
                middle_mm=draws.step(0.8, 2.4, 0.1),
            ),
            _leaves_something,
        )

    def kind(self, case: GrooveCase) -> NumberAnswer:
        """Return a thickness to 0.05 mm."""
        return NumberAnswer(unit="mm", tolerance=0.03, digits=2)

    def answer(self, case: GrooveCase, slips: Set[str] = NONE) -> float:
        """Return the wall behind; with two slips the width is counted as the one, the wall as the other."""
        groove = case.groove
        wall = groove.back_wall_mm
        if _OTHER.name in slips:
            wall = groove.front_wall_mm
        if _BOTH.name in slips:
            wall = groove.front_wall_mm + groove.back_wall_mm
        # Half a width too little or too much is taken off.
        if _NO_WIDTH.name in slips:
            return wall + case.width_mm / 2.0
        return wall - case.width_mm / 2.0 if _WHOLE.name in slips else wall

    def prompt(self, case: GrooveCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "A lens of an invented job is held by a cord. Where its edge is thinnest it is "
            f"{case.edge_mm:.1f} mm thick. The groove is {case.width_mm:.1f} mm wide, and its middle lies "
            f"{case.middle_mm:.1f} mm behind the front.",
            "How thick is the wall that is left behind the groove, at the back of the lens? Give it in mm, "
            "to 0.05 mm.",
        )

    def given(self, case: GrooveCase) -> tuple[Term, ...]:
        """Return edge, width and place of the groove."""
        return (
            distance_term("e", case.edge_mm, "thickness of the edge"),
            distance_term("b", case.width_mm, "width of the groove"),
            in_full("m", case.middle_mm, "mm", least_digits=1, meaning="front to the groove's middle"),
        )

    def solution(self, case: GrooveCase) -> Solution:
        """Return both walls, and whether they are enough."""
        needed = edge_default("groove_wall_mm")
        groove = case.groove
        if groove.holds:
            verdict = f"Both walls have {needed:g} mm or more: this groove can be cut."
        elif groove.front_wall_mm + groove.back_wall_mm >= 2.0 * needed:
            verdict = (
                f"One wall has less than {needed:g} mm and breaks out under the cord. There is room enough: "
                "move the groove towards the other face."
            )
        else:
            least = plain(case.width_mm + 2.0 * needed, 1)
            verdict = (
                f"With {needed:g} mm needed on either side, this groove asks for {least} mm of edge. Moving "
                "it does not help: order the lens with a thicker edge."
            )
        return Solution(words=(verdict,), workings=wall_workings(groove))

    def hints(self, case: GrooveCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the edge as a line from front to back and mark the groove's middle on it.",
            "How far does the groove reach from its middle towards either face?",
        )


def _leaves_something(case: GrooveCase) -> bool:
    """Whether both walls are there, and the one behind is thicker than the groove is wide."""
    inside = case.middle_mm < case.edge_mm
    return inside and case.groove.least_wall_mm > _LEAST_MM and case.groove.back_wall_mm > case.width_mm
