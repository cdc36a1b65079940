"""Questions about colour: how wide the fringe is at a point, and which material shows most of it."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.chromatic import fringe_at, fringe_prism_d
from lablib.optics.eye import Eye
from lablib.optics.material_workings import fringe_working
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.terms import distance_term, in_full, power_term, prism_step
from lablib.questions.answers.units import PRISM_DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_ABBES = (30.0, 31.0, 32.0, 33.0, 36.0, 42.0, 44.0, 58.0)
_LETTERS = ("A", "B", "C")
_SAME = "same"


@dataclass(frozen=True, slots=True, kw_only=True)
class FringeCase:
    """A point below the centre of a spherical lens.

    power_d: [D]; below_mm: the point [mm]; abbe: Abbe number.
    """

    power_d: float
    below_mm: float
    abbe: float


class ColourFringe(Maker[FringeCase]):
    """The transverse chromatic aberration at a point of a lens."""

    name = "colour-fringe"
    lesson = "04"
    skill = "colour-fringe"
    slips = (
        Slip(
            name="power-for-prism",
            step="the prism at the point",
            words="You divided the power by the Abbe number. Colour comes from prism, and that grows with "
            "the distance from the optical centre.",
        ),
        Slip(
            name="centimetres-forgotten",
            step="the prism at the point",
            words="You put millimetres into the prism. A prism dioptre counts centimetres, so divide by 10.",
        ),
        Slip(
            name="abbe-number-left-out",
            step="what the material makes of the prism",
            words="You gave the prism. The fringe is the prism divided by the Abbe number.",
        ),
    )

    def draw(self, draws: Draws) -> FringeCase:
        """Return a lens and a point where prism and power differ clearly."""
        below = draws.one_of((*range(4, 7), *range(14, 21)))
        return FringeCase(
            power_d=draws.one_of((1.0, -1.0)) * draws.step(3.5, 9.0, 0.25),
            below_mm=float(below),
            abbe=draws.one_of(_ABBES),
        )

    def kind(self, case: FringeCase) -> NumberAnswer:
        """Return the kind: prism dioptres with two decimals."""
        return NumberAnswer(unit="prism dioptres", also=PRISM_DIOPTRE, tolerance=0.006, digits=2)

    def answer(self, case: FringeCase, slips: Set[str] = NONE) -> float:
        """Return the fringe; a prism taken wrongly is divided by the same number."""
        fringe = fringe_at(
            Prescription(sphere_d=case.power_d),
            eye=Eye.RIGHT,
            in_mm=0.0,
            up_mm=-case.below_mm,
            abbe=case.abbe,
        )
        prism = fringe.prism_prism_d
        if "power-for-prism" in slips:
            prism = abs(case.power_d)
        elif "centimetres-forgotten" in slips:
            prism = abs(case.power_d) * case.below_mm
        return prism if "abbe-number-left-out" in slips else fringe_prism_d(prism, case.abbe)

    def prompt(self, case: FringeCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The wearer of an invented {written_power(case.power_d)} D lens, of a material with Abbe number "
            f"{case.abbe:g}, looks through a point {case.below_mm:g} mm below its optical centre.",
            "How large is the fringe there, the transverse chromatic aberration? Answer in prism dioptres, "
            "to 0.01 prism dioptre.",
        )

    def given(self, case: FringeCase) -> tuple[Term, ...]:
        """Return power, distance and Abbe number."""
        return (
            power_term("F", case.power_d, "power of the lens"),
            distance_term("c", case.below_mm, "distance from the optical centre"),
            in_full("V", case.abbe, "", least_digits=0, meaning="Abbe number"),
        )

    def solution(self, case: FringeCase) -> Solution:
        """Return where colour comes from, and two steps."""
        prism = self.answer(case, {"abbe-number-left-out"})
        return Solution(
            words=(
                "A lens splits light where it bends it: where there is prism. At the optical centre there is "
                "none, and no fringe however strong the lens is.",
                "First the prism at the point, by Prentice's rule. The Abbe number says which part of it "
                "becomes colour.",
            ),
            workings=(
                prism_step(
                    "prism at the point",
                    "P",
                    "abs(F) * c / 10",
                    (
                        power_term("F", case.power_d, "power of the lens"),
                        distance_term("c", case.below_mm, "distance from the optical centre"),
                    ),
                    prism,
                    source="Prentice's rule",
                ),
                fringe_working(prism, case.abbe),
            ),
        )

    def hints(self, case: FringeCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Would there be any colour at the optical centre itself? What grows from there on?",
            "Work out the prism at the point first, with the distance in centimetres.",
        )


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
