"""Questions on writing a prescription: transposition, and the spherical equivalent."""

from abc import abstractmethod
from collections.abc import Set
from dataclasses import replace

from lablib.optics.power_workings import spherical_equivalent_working, transposition_workings
from lablib.optics.prescription import Prescription
from lablib.questions.answers.prescription import OTHER_FORM, PrescriptionAnswer
from lablib.questions.answers.prescription_line import Lens, Past180
from lablib.questions.answers.units import DIOPTRE
from lablib.questions.prescription.lenses import toric_lens
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working


class _LensQuestion(Maker[Prescription]):
    """What questions about one written lens share: the case is the lens as it is given."""

    lesson = "02"

    def draw(self, draws: Draws) -> Prescription:
        """Return a lens in quarter dioptres with an oblique axis."""
        return toric_lens(draws)

    @abstractmethod
    def workings(self, case: Prescription) -> tuple[Working, ...]:
        """Return the steps to the answer."""

    def given(self, case: Prescription) -> tuple[Term, ...]:
        """Return the parts of the lens, each once."""
        terms = {term.symbol: term for working in self.workings(case) for term in working.terms}
        return tuple(terms.values())


class Transpose(_LensQuestion):
    """A lens is written in the other cylinder form."""

    name = "transpose"
    skill = "transpose-a-lens"
    slips = (
        Slip(
            name="keeps-sphere",
            step="the sphere",
            words="You left the sphere as it was. In the other form it is the sum of sphere and cylinder.",
        ),
        Slip(
            name="subtracts-cylinder",
            step="the sphere",
            words="You took the cylinder off the sphere. The new sphere is their sum, signs and all.",
        ),
        Slip(
            name="keeps-sign",
            step="the sign of the cylinder",
            words="You left the sign of the cylinder as it was. In the other form it is the opposite one.",
        ),
        Slip(
            name="keeps-axis",
            step="the axis",
            words="You left the axis as it was. In the other form it lies at right angles, 90 degrees away.",
        ),
        Slip(
            name="axis-from-180",
            step="the axis",
            words="You took the axis from 180. That is its mirror image; the new axis lies 90 degrees away.",
        ),
        Slip(
            name="past-180",
            step="the axis",
            words="You added 90 and went past 180. Half a turn leaves an axis the same, so take 180 off.",
        ),
        OTHER_FORM,
    )

    def kind(self, case: Prescription) -> PrescriptionAnswer:
        """Return a prescription in the form the lens is not given in."""
        return PrescriptionAnswer(form=_other(case))

    def answer(self, case: Prescription, slips: Set[str] = NONE) -> Lens:
        """Return the lens in the other form, or what a slip in one of its three steps makes of it."""
        if OTHER_FORM.name in slips:
            return case
        other = case.transposed()
        parts = {}
        if "keeps-sphere" in slips:
            parts["sphere_d"] = case.sphere_d
        if "subtracts-cylinder" in slips:
            parts["sphere_d"] = case.sphere_d - case.cylinder_d
        if "keeps-sign" in slips:
            parts["cylinder_d"] = case.cylinder_d
        if "keeps-axis" in slips:
            parts["axis_deg"] = case.axis_deg
        if "axis-from-180" in slips:
            parts["axis_deg"] = 180.0 - case.axis_deg
        wrong = replace(other, **parts)
        return Past180(lens=wrong) if "past-180" in slips else wrong

    def slips_in(self, case: Prescription) -> tuple[Slip, ...]:
        """Return the slips; only an axis above 90 can go past 180."""
        return tuple(slip for slip in self.slips if slip.name != "past-180" or case.axis_deg > 90.0)

    def prompt(self, case: Prescription) -> tuple[str, ...]:
        """Return the written lens, and the form to write it in."""
        given = "plus" if _other(case) == "minus" else "minus"
        return (
            f"A lens is written with a {given} cylinder: {case}.",
            f"Write the same lens with a {_other(case)} cylinder. Give both powers with their signs and two "
            "decimals, the axis in whole degrees.",
        )

    def workings(self, case: Prescription) -> tuple[Working, ...]:
        """Return sphere, cylinder and axis in the other form."""
        return transposition_workings(case)

    def solution(self, case: Prescription) -> Solution:
        """Return the three steps, and what they are good for."""
        return Solution(
            words=(
                "The powers along the two principal meridians stay as they are. What changes is which of "
                "them is written as the sphere.",
                "The new sphere is the sum of sphere and cylinder. The cylinder changes its sign. The axis "
                "turns by 90 degrees; it is written above 0 and up to 180.",
                f"Written out: {self.answer(case)}.",
            ),
            workings=self.workings(case),
        )

    def hints(self, case: Prescription) -> tuple[str, ...]:
        """Return hints from the whole lens to its parts."""
        return (
            "The lens stays the same. Which power does it have along its axis, and which across it?",
            "What is across the axis becomes the sphere: sphere and cylinder together, with their signs.",
            "The cylinder changes its sign. The axis turns by 90 degrees; it stays above 0 and up to 180.",
        )


class TransposeUpright(Transpose):
    """A lens with its axis at 90 or 180 is written in the other form; its other power can be plano."""

    name = "transpose-at-90-or-180"
    # From 180, an axis at 90 stays where it is and one at 180 has none.
    slips = tuple(slip for slip in Transpose.slips if slip.name != "axis-from-180")

    def draw(self, draws: Draws) -> Prescription:
        """Return a lens in quarter dioptres; in one of three the two powers cancel."""
        return draws.until("a lens with a sphere", _draw_upright, lambda lens: lens.sphere_d != 0.0)


class SphericalEquivalent(_LensQuestion):
    """The power of a lens as if it were a sphere."""

    name = "spherical-equivalent"
    skill = "spherical-equivalent"
    slips = (
        Slip(
            name="whole-cylinder",
            step="the share of the cylinder",
            words="You added the whole cylinder. That gives the power across the axis; add half of it.",
        ),
        Slip(
            name="sphere-alone",
            step="the share of the cylinder",
            words="You gave the sphere alone. That is the power along the axis; add half the cylinder.",
        ),
    )

    def kind(self, case: Prescription) -> NumberAnswer:
        """Return a signed power; an eighth may be cut off or rounded to two decimals."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.01, digits=3, signed=True)

    def answer(self, case: Prescription, slips: Set[str] = NONE) -> float:
        """Return the spherical equivalent, or the power across or along the axis."""
        if "whole-cylinder" in slips:
            return case.transposed().sphere_d
        if "sphere-alone" in slips:
            return case.sphere_d
        return case.spherical_equivalent_d

    def prompt(self, case: Prescription) -> tuple[str, ...]:
        """Return the written lens and what is asked of it."""
        return (
            f"A lens is written {case}.",
            "What is its spherical equivalent, in dioptres with its sign, to 0.01 D?",
        )

    def workings(self, case: Prescription) -> tuple[Working, ...]:
        """Return the one step."""
        return (spherical_equivalent_working(case),)

    def solution(self, case: Prescription) -> Solution:
        """Return why half the cylinder counts, and the step."""
        return Solution(
            words=(
                "The cylinder adds nothing along its axis and all of its power across it. On average over "
                "all meridians it adds half.",
                "The axis plays no part.",
            ),
            workings=self.workings(case),
        )

    def hints(self, case: Prescription) -> tuple[str, ...]:
        """Return hints from the idea to the step."""
        return (
            "The equivalent lies in the middle between the powers of the two principal meridians.",
            "One of these powers is the sphere. The other is sphere and cylinder together.",
            "So how much of the cylinder is added to the sphere?",
        )


def _draw_upright(draws: Draws) -> Prescription:
    cylinder = draws.step(0.5, 3.0, 0.25) * draws.one_of((-1.0, 1.0))
    sphere, cancels = draws.step(-5.0, 5.0, 0.25), draws.whole(3) == 0
    return Prescription(
        sphere_d=-cylinder if cancels else sphere, cylinder_d=cylinder, axis_deg=draws.one_of((90.0, 180.0))
    )


def _other(lens: Prescription) -> str:
    """The form a lens is not written in."""
    return "minus" if lens.cylinder_d > 0.0 else "plus"
