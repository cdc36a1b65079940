"""A question about colour: how wide the fringe is at a point of a lens."""

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
from lablib.study.question import Slip, Solution
from lablib.working import Term

_ABBES = (30.0, 31.0, 32.0, 33.0, 36.0, 42.0, 44.0, 58.0)


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
