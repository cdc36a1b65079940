"""A question about colour: which of three materials shows most of it."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.chromatic import fringe_at, fringe_prism_d
from lablib.optics.eye import Eye
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_LETTERS = ("A", "B", "C")
_SAME = "same"


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourCase:
    """One lens in three invented materials.

    power_d: [D]; below_mm: the point looked through [mm].
    indices, abbes: of materials A, B and C.
    """

    power_d: float
    below_mm: float
    indices: tuple[float, float, float]
    abbes: tuple[float, float, float]

    @property
    def prism_prism_d(self) -> float:
        """Prism at the point, the same in all three [prism D]."""
        lens = Prescription(sphere_d=self.power_d)
        return fringe_at(lens, eye=Eye.RIGHT, in_mm=0.0, up_mm=-self.below_mm, abbe=30.0).prism_prism_d

    @property
    def fringes_prism_d(self) -> tuple[float, ...]:
        """Fringe in each of the three [prism D]."""
        return tuple(fringe_prism_d(self.prism_prism_d, abbe) for abbe in self.abbes)


class MostColour(Maker[ColourCase]):
    """Which of three materials shows most colour."""

    name = "most-colour"
    lesson = "04"
    skill = "abbe-number"
    slips = (
        Slip(
            name="abbe-number-turned-over",
            step="what a high Abbe number means",
            words="You took the highest Abbe number for the most colour. It stands below the line: the "
            "higher it is, the less the colours come apart.",
        ),
        Slip(
            name="index-for-colour",
            step="what makes the colours come apart",
            words="You took the highest index for the most colour. How far colours come apart is told by the "
            "Abbe number alone; a high index often goes with a low one, but not here.",
        ),
        Slip(
            name="power-alone",
            step="what makes the colours come apart",
            words="You took all three for alike. The prism is the same in them, but each material splits it "
            "by its own Abbe number.",
        ),
    )

    def draw(self, draws: Draws) -> ColourCase:
        """Return three materials of which the highest index has a middling Abbe number."""
        low, middle = draws.step(29.0, 34.0, 1.0), draws.step(40.0, 46.0, 1.0)
        abbes = (low, middle, draws.step(53.0, 60.0, 1.0))
        indices = (draws.step(1.56, 1.6, 0.005), draws.step(1.62, 1.72, 0.005), draws.step(1.49, 1.54, 0.005))
        places = draws.shuffled((0, 1, 2))
        return ColourCase(
            power_d=draws.one_of((1.0, -1.0)) * draws.step(3.0, 8.0, 0.25),
            below_mm=draws.step(6.0, 15.0, 1.0),
            indices=tuple(indices[at] for at in places),
            abbes=tuple(abbes[at] for at in places),
        )

    def kind(self, case: ColourCase) -> ChoiceAnswer:
        """Return the three materials, and that they are alike."""
        lines = zip(_LETTERS, case.indices, case.abbes, strict=True)
        return ChoiceAnswer(
            options=(
                *(
                    Option(key=letter, words=f"{letter}: index {index:.3f}, Abbe number {abbe:g}")
                    for letter, index, abbe in lines
                ),
                Option(key=_SAME, words="all three alike, because power and point are the same"),
            )
        )

    def answer(self, case: ColourCase, slips: Set[str] = NONE) -> str:
        """Return the material with the widest fringe, or the one a slip leads to."""
        if "power-alone" in slips:
            return _SAME
        if "abbe-number-turned-over" in slips:
            return _LETTERS[case.abbes.index(max(case.abbes))]
        if "index-for-colour" in slips:
            return _LETTERS[case.indices.index(max(case.indices))]
        return _LETTERS[case.fringes_prism_d.index(max(case.fringes_prism_d))]

    def pairs(self, case: ColourCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: ColourCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The same {written_power(case.power_d)} D lens can be had in three invented materials. The "
            f"wearer looks through a point {case.below_mm:g} mm below the optical centre.",
            "In which of them is most colour seen there?",
        )

    def solution(self, case: ColourCase) -> Solution:
        """Return the fringe of each."""
        fringes = ", ".join(
            f"{letter} {fringe:.2f}" for letter, fringe in zip(_LETTERS, case.fringes_prism_d, strict=True)
        )
        return Solution(
            words=(
                f"The prism at the point is {case.prism_prism_d:.2f} prism dioptres in all three. Divided by "
                f"the Abbe number that leaves: {fringes} prism dioptre.",
                "The lowest Abbe number shows most colour. The index has no part in it.",
            )
        )

    def hints(self, case: ColourCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "The prism at the point is the same in all three. What turns prism into colour?",
            "The fringe is the prism divided by the Abbe number. Which of the three makes it largest?",
        )
