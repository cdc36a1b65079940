"""A question about the back vertex power of a thick lens from its two surfaces."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.material import material
from lablib.optics.terms import distance_term, in_full, power_term
from lablib.optics.thick_lens import back_vertex_power_d, front_vertex_power_d
from lablib.optics.thick_lens_workings import back_vertex_power_workings
from lablib.questions.answers.units import DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_ADDED = Slip(
    name="surfaces-simply-added",
    step="what the thickness does",
    words="You added the surfaces. In a thick lens the light has come nearer to its focus before it reaches "
    "the back, so the front counts for more there.",
)
_FRONT_VERTEX = Slip(
    name="front-vertex-for-back",
    step="the surface the power is measured from",
    words="You gave the front vertex power. With the back on the stop the power is measured from the back: "
    "the front surface is the one that is carried through the lens.",
)
_INDEX = Slip(
    name="index-left-out",
    step="the thickness divided by the index",
    words="You left the index out. Light in the lens spreads and closes less than in air, as if the lens "
    "were thinner: thickness over index.",
)
_MM_PER_M = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ThickCase:
    """A thick meniscus.

    front_d, back_d: surface powers [D]; thickness_mm: centre thickness [mm]; index: of the lens.
    """

    front_d: float
    back_d: float
    thickness_mm: float
    index: float


class BackVertexPower(Maker[ThickCase]):
    """The back vertex power of a thick plus lens."""

    name = "back-vertex-power"
    lesson = "03"
    skill = "back-vertex-power"
    slips = (_ADDED, _FRONT_VERTEX, _INDEX)

    def draw(self, draws: Draws) -> ThickCase:
        """Return a plus lens thick and bent enough for every slip to show."""
        names = ("crown-glass-1.523", "hard-resin-1.50", "polycarbonate-1.59", "thiourethane-1.60")
        return ThickCase(
            front_d=draws.step(8.0, 12.0, 0.25),
            back_d=-draws.step(3.5, 6.0, 0.25),
            thickness_mm=draws.step(5.0, 8.0, 0.5),
            index=material(draws.one_of(names)).index,
        )

    def kind(self, case: ThickCase) -> NumberAnswer:
        """Return the kind: a signed power, fine enough to tell a thick lens from a thin one."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.02, digits=2, signed=True)

    def answer(self, case: ThickCase, slips: Set[str] = NONE) -> float:
        """Return the power. A thin lens has no thickness; without the index, light goes as in air."""
        thickness = 0.0 if _ADDED.name in slips else case.thickness_mm
        index = 1.0 if _INDEX.name in slips else case.index
        power = front_vertex_power_d if _FRONT_VERTEX.name in slips else back_vertex_power_d
        return power(case.front_d, case.back_d, thickness, index)

    def prompt(self, case: ThickCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented lens of index {case.index:.3f} has a front surface of {case.front_d:+.2f} D and a "
            f"back surface of {case.back_d:+.2f} D. Its centre is {case.thickness_mm:g} mm thick.",
            "What is its back vertex power? Answer in D with its sign, to 0.01 D.",
        )

    def given(self, case: ThickCase) -> tuple[Term, ...]:
        """Return surfaces, thickness and index."""
        return (
            power_term("F_1", case.front_d, "front surface power"),
            power_term("F_2", case.back_d, "back surface power"),
            distance_term("t", case.thickness_mm, "centre thickness"),
            in_full("n", case.index, "", least_digits=3, meaning="index"),
        )

    def solution(self, case: ThickCase) -> Solution:
        """Return the two steps."""
        return Solution(
            words=(
                "The front surface sends light towards a focus. On its way through the lens the light comes "
                "closer to it, so at the back its vergence is higher than the front surface's own power.",
                "To that the back surface adds its power. Compare with the plain sum: the difference is what "
                "the thickness does.",
            ),
            workings=back_vertex_power_workings(
                case.front_d, case.back_d, thickness_mm=case.thickness_mm, index=case.index
            ),
        )

    def hints(self, case: ThickCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Add the two surfaces first. In a thick plus lens, is the true power more or less than that?",
            "Carry the front surface through the lens to the back; then add the back surface.",
            "The thickness goes in as metres, divided by the index.",
        )
