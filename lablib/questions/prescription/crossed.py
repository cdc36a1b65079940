"""A question on two plano cylinders put together with their axes at right angles."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.cross_workings import cross_prescription_workings
from lablib.optics.optical_cross import OpticalCross, crossed_cylinders
from lablib.optics.prescription import Prescription
from lablib.questions.answers.prescription import OTHER_FORM, PrescriptionAnswer
from lablib.questions.prescription.lenses import cross_of_a_lens
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution

_ON_AXIS = Slip(
    name="power-on-its-own-axis",
    step="where each cylinder has its power",
    words="You let each cylinder work along its own axis. It has no power there; all of it lies at right "
    "angles.",
)
_AS_IT_STANDS = Slip(
    name="second-cylinder-as-it-stands",
    step="the cylinder",
    words="You wrote one of the two cylinders as the cylinder of the lens. The cylinder is the difference of "
    "the two powers, from the sphere to the other.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossedCase:
    """Two crossed cylinders, by the cross they make, and the form to write their lens in.

    cross: the cross; form: "minus" or "plus".
    """

    cross: OpticalCross
    form: str


class CrossedCylinders(Maker[CrossedCase]):
    """The one lens that does what two plano cylinders at right angles do."""

    name = "crossed-cylinders"
    lesson = "02"
    skill = "crossed-cylinders"
    slips = (_ON_AXIS, _AS_IT_STANDS, OTHER_FORM)

    def draw(self, draws: Draws) -> CrossedCase:
        """Return two cylinders of different power, and a form."""
        return CrossedCase(cross=cross_of_a_lens(draws), form=draws.one_of(("minus", "plus")))

    def kind(self, case: CrossedCase) -> PrescriptionAnswer:
        """Return a prescription in the form asked for."""
        return PrescriptionAnswer(form=case.form)

    def answer(self, case: CrossedCase, slips: Set[str] = NONE) -> Prescription:
        """Return the lens, or what comes of wrong axes or a wrong cylinder."""
        first, second = case.cross.cylinders()
        axes = (first.axis_deg, second.axis_deg)
        if _ON_AXIS.name in slips:
            axes = axes[::-1]
        lens = crossed_cylinders(
            first_d=first.cylinder_d,
            first_axis_deg=axes[0],
            second_d=second.cylinder_d,
            second_axis_deg=axes[1],
        ).in_form(case.form)
        if OTHER_FORM.name in slips:
            return lens.transposed()
        if _AS_IT_STANDS.name in slips:
            return replace(lens, cylinder_d=lens.transposed().sphere_d)
        return lens

    def prompt(self, case: CrossedCase) -> tuple[str, ...]:
        """Return the two cylinders, and the form to write their lens in."""
        first, second = case.cross.cylinders()
        return (
            f"Two cylinders are laid on each other: {first} and {second}.",
            f"Write the one lens that does the same, with a {case.form} cylinder. Give both powers with "
            "their signs and two decimals, the axis in whole degrees.",
        )

    def solution(self, case: CrossedCase) -> Solution:
        """Return the way over the cross."""
        return Solution(
            words=(
                "A cylinder works at right angles to its axis. So each puts its power on the axis of the "
                f"other: the cross is {case.cross.written()}.",
                "From there it goes on as with any cross: sphere, cylinder, axis.",
                f"Written out: {self.answer(case)}.",
            ),
            workings=cross_prescription_workings(case.cross, form=case.form),
        )

    def hints(self, case: CrossedCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the cross. On which meridian does the first cylinder have its power?",
            "Each power stands on the axis of the other cylinder. Now write the lens of this cross.",
        )
