"""Questions about lens form: the depth of a cap, a front curve by rule, and what its other modules ask."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.form_workings import vogel_front_curve_workings
from lablib.optics.prescription import Prescription
from lablib.optics.surface import LENS_MEASURE_INDEX, sagitta_approximate_mm, sagitta_mm, surface_power_d
from lablib.optics.surface_workings import sagitta_working
from lablib.optics.thick_lens import vogel_front_curve_d
from lablib.questions.answers.units import DIOPTRE
from lablib.questions.front_curve import vogel_for_the_other_sign_d
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

# The depth of a cap does not depend on the index its power is counted in; this is the lens measure's.
_INDEX = LENS_MEASURE_INDEX
# Sizes of the equivalent, plus and minus, for which the rule's curve lies from 1 to 10 D [D].
_PLUS_D, _MINUS_D = (1.75, 4.0), (2.0, 10.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class CapCase:
    """A cap of a sphere: radius and chord [mm]."""

    radius_mm: float
    chord_mm: float

    @property
    def radius(self) -> Term:
        """The radius as it is told."""
        return Term(symbol="r", value=self.radius_mm, unit="mm", digits=1, meaning="radius of the surface")

    @property
    def chord(self) -> Term:
        """The chord as it is told."""
        return Term(symbol="c", value=self.chord_mm, unit="mm", digits=0, meaning="chord, from rim to rim")


class Sagitta(Maker[CapCase]):
    """The depth of a spherical cap from its radius and chord."""

    name = "sagitta"
    lesson = "07"
    skill = "sagitta"
    slips = (
        Slip(
            name="diameter-for-half-diameter",
            step="what y stands for",
            words="You put the whole chord into the formula. y is half of it, from the axis to the rim.",
        ),
        Slip(
            name="short-formula",
            step="the formula for the sagitta",
            words="You used the short formula. It takes the cap for a parabola and comes out too shallow; "
            "the exact one is asked.",
        ),
        Slip(
            name="stopped-at-the-root",
            step="taking the root away from the radius",
            words="You stopped at the square root. That is the way from the centre of the sphere to the "
            "chord; the sagitta is what is left of the radius.",
        ),
    )

    def draw(self, draws: Draws) -> CapCase:
        """Return a cap steep enough for the short formula to show."""
        return CapCase(radius_mm=draws.step(60.0, 95.0, 0.5), chord_mm=draws.step(44.0, 58.0, 2.0))

    def kind(self, case: CapCase) -> NumberAnswer:
        """Return the kind: a depth."""
        return NumberAnswer(unit="mm", tolerance=0.02, digits=2)

    def answer(self, case: CapCase, slips: Set[str] = NONE) -> float:
        """Return the depth. Without the last step it is what the radius has more than the depth."""
        away = case.chord_mm if "diameter-for-half-diameter" in slips else case.chord_mm / 2.0
        if "short-formula" in slips:
            depth = sagitta_approximate_mm(surface_power_d(1.0 / case.radius_mm, _INDEX), _INDEX, away)
        else:
            depth = sagitta_mm(case.radius_mm, away)
        return case.radius_mm - depth if "stopped-at-the-root" in slips else depth

    def prompt(self, case: CapCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "A cap of a sphere, as a lens surface is, lies with its rim on a flat table and bulges upwards.",
            "How deep is it, from the table to its highest point? Use the exact sagitta. Answer in mm, to "
            "0.01 mm.",
        )

    def given(self, case: CapCase) -> tuple[Term, ...]:
        """Return radius and chord."""
        return case.radius, case.chord

    def solution(self, case: CapCase) -> Solution:
        """Return the way: half the chord, then the exact formula."""
        half = Working(
            what="half the chord",
            symbol="y",
            formula="c / 2",
            terms=(case.chord,),
            value=case.chord_mm / 2.0,
            unit="mm",
            digits=1,
        )
        return Solution(
            words=(
                "The centre of the sphere, the middle of the chord and its end make a right-angled triangle: "
                "r is its long side, y one short side. The other short side is what the cap leaves of the "
                "radius.",
            ),
            workings=(half, sagitta_working("sagitta", "s", case.radius, half.as_term())),
        )

    def hints(self, case: CapCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the whole circle, the chord, and a radius to one end of the chord. Look for a right angle.",
            "In s = r - sqrt(r^2 - y^2), y runs from the axis to the rim.",
        )

    def drawing(self, case: CapCase) -> Drawing:
        """Return the cap."""
        return Drawing(name="cap", values={"radius_mm": case.radius_mm, "chord_mm": case.chord_mm})


class FrontCurveRule(Maker[Prescription]):
    """The front curve that Vogel's rule of thumb gives."""

    name = "front-curve-rule"
    lesson = "07"
    skill = "front-curve"
    slips = (
        Slip(
            name="rule-of-the-other-sign",
            step="which half of the rule belongs to this sign",
            words="You used the rule for the other sign. A plus lens takes its whole equivalent plus 6, a "
            "minus lens half of it plus 6.",
        ),
        Slip(
            name="sphere-for-equivalent",
            step="the spherical equivalent",
            words="You started from the sphere. The rule starts from the equivalent: sphere plus half the "
            "cylinder.",
        ),
        Slip(
            name="whole-cylinder",
            step="the spherical equivalent",
            words="You added the whole cylinder to the sphere. Half of it belongs to the equivalent.",
        ),
    )

    def draw(self, draws: Draws) -> Prescription:
        """Return a toric prescription with one sign in both meridians, whose curve can be ground.

        The equivalent lies on a grid on which neither it nor the curve has more than two decimals.
        """
        is_plus, form = draws.whole(2) > 0, draws.one_of((1.0, -1.0))
        axis = draws.step(5.0, 180.0, 5.0)
        equivalent = draws.step(*_PLUS_D, 0.25) if is_plus else -draws.step(*_MINUS_D, 0.5)
        # Half of the cylinder, which the rule for minus halves once more, must show.
        cylinder = form * draws.step(0.5 if is_plus else 1.0, 3.0, 0.5)
        return Prescription(sphere_d=equivalent - cylinder / 2.0, cylinder_d=cylinder, axis_deg=axis)

    def kind(self, case: Prescription) -> NumberAnswer:
        """Return the kind: a surface power, which the trade writes without its sign."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.03, digits=2)

    def answer(self, case: Prescription, slips: Set[str] = NONE) -> float:
        """Return the front curve."""
        equivalent = case.spherical_equivalent_d
        if "sphere-for-equivalent" in slips:
            equivalent = case.sphere_d
        if "whole-cylinder" in slips:
            equivalent = case.transposed().sphere_d
        if "rule-of-the-other-sign" in slips:
            return vogel_for_the_other_sign_d(equivalent)
        return vogel_front_curve_d(equivalent)

    def prompt(self, case: Prescription) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented prescription: {case}.",
            "Which front curve does Vogel's rule of thumb give? Answer in D, to 0.01 D.",
        )

    def given(self, case: Prescription) -> tuple[Term, ...]:
        """Return sphere and cylinder."""
        return (
            Term(symbol="S", value=case.sphere_d, unit="D", digits=2, meaning="sphere"),
            Term(symbol="C", value=case.cylinder_d, unit="D", digits=2, meaning="cylinder"),
        )

    def solution(self, case: Prescription) -> Solution:
        """Return the way: the equivalent, then the half of the rule that belongs to its sign."""
        return Solution(
            words=(
                "The rule stands on the spherical equivalent. A plus lens takes the equivalent plus 6; a "
                "minus lens takes half of it plus 6, and so gets flatter only half as fast.",
                "It is a rule of thumb, told here from memory. Other rules give other curves, and what is in "
                "stock decides.",
            ),
            workings=vogel_front_curve_workings(case),
        )

    def hints(self, case: Prescription) -> tuple[str, ...]:
        """Return hints."""
        return (
            "The axis plays no part. What single power stands for sphere and cylinder together?",
            "The rule has one half for plus and one for minus. Both add 6 D at the end.",
        )
