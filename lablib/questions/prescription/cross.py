"""Questions on the optical cross, both ways: a lens from its cross, a power of the cross from the lens."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.cross_workings import cross_prescription_workings, cross_workings
from lablib.optics.optical_cross import OpticalCross
from lablib.optics.prescription import Prescription
from lablib.optics.terms import axis_term, sphere_and_cylinder
from lablib.questions.answers.prescription import OTHER_FORM, PrescriptionAnswer
from lablib.questions.answers.units import DIOPTRE
from lablib.questions.prescription.lenses import cross_of_a_lens, toric_lens
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

SPHERE_ACROSS = Slip(
    name="sphere-at-right-angles",
    step="which power stands on the axis",
    words="You put the sphere at right angles to the axis. A cylinder has no power along its own axis, so "
    "the sphere alone stands there.",
)
_AXIS_ACROSS = replace(
    SPHERE_ACROSS,
    words="You gave the meridian of the other power as the axis. The axis is the meridian on which the "
    "sphere stands.",
)
SECOND_AS_CYLINDER = Slip(
    name="power-for-cylinder",
    step="the cylinder",
    words="You wrote the second power as the cylinder. The cylinder is what must be added to the sphere to "
    "come to the second power.",
)
_TURNED = Slip(
    name="cylinder-turned-round",
    step="the cylinder",
    words="You took the second power from the sphere. Go the other way, from the sphere to the second power.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossCase:
    """A cross, and the form its lens is to be written in.

    cross: the cross; form: "minus" or "plus".
    """

    cross: OpticalCross
    form: str


class CrossToPrescription(Maker[CrossCase]):
    """The prescription of a lens that is given as an optical cross."""

    name = "cross-to-prescription"
    lesson = "02"
    skill = "prescription-from-a-cross"
    slips = (_AXIS_ACROSS, SECOND_AS_CYLINDER, _TURNED, OTHER_FORM)

    def draw(self, draws: Draws) -> CrossCase:
        """Return a cross with two different powers, and a form."""
        return CrossCase(cross=cross_of_a_lens(draws), form=draws.one_of(("minus", "plus")))

    def kind(self, case: CrossCase) -> PrescriptionAnswer:
        """Return a prescription in the form asked for."""
        return PrescriptionAnswer(form=case.form)

    def answer(self, case: CrossCase, slips: Set[str] = NONE) -> Prescription:
        """Return the lens, or what a wrong cylinder or a wrong axis makes of it."""
        if OTHER_FORM.name in slips:
            return case.cross.prescription(case.form).transposed()
        lens = case.cross.prescription(case.form)
        other = lens.transposed()
        parts = {}
        if SECOND_AS_CYLINDER.name in slips:
            parts["cylinder_d"] = other.sphere_d
        if _TURNED.name in slips:
            parts["cylinder_d"] = other.cylinder_d
        if _AXIS_ACROSS.name in slips:
            parts["axis_deg"] = other.axis_deg
        return replace(lens, **parts)

    def prompt(self, case: CrossCase) -> tuple[str, ...]:
        """Return the cross, and the form to write its lens in."""
        return (
            f"An optical cross shows {case.cross.written()}.",
            f"Write the lens with a {case.form} cylinder. Give both powers with their signs and two "
            "decimals, the axis in whole degrees.",
        )

    def solution(self, case: CrossCase) -> Solution:
        """Return how to choose the sphere, and the three steps."""
        more = "more" if case.form == "minus" else "less"
        return Solution(
            words=(
                f"A {case.form} cylinder leads from the sphere towards {case.form}, so the sphere is the "
                f"power that is {more} plus. Its meridian is the axis.",
                f"Written out: {self.answer(case)}.",
            ),
            workings=cross_prescription_workings(case.cross, form=case.form),
        )

    def hints(self, case: CrossCase) -> tuple[str, ...]:
        """Return hints from the sphere to the axis."""
        return (
            f"From the sphere you must get to the other power with a {case.form} cylinder. Which of the two "
            "can be the sphere?",
            "The cylinder is the way from the sphere to the other power, with its sign.",
            "The axis is the meridian on which the sphere stands.",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OnCrossCase:
    """A lens, and which meridian of its cross is asked about.

    rx: the lens; across: whether it is the one at right angles to the axis.
    """

    rx: Prescription
    across: bool

    @property
    def meridian_deg(self) -> float:
        """The meridian asked about [degrees]."""
        cross = OpticalCross.of(self.rx)
        return cross.second_meridian_deg if self.across else cross.first_meridian_deg


class PowerOnTheCross(Maker[OnCrossCase]):
    """The power on one of the two meridians of the cross of a lens."""

    name = "power-on-the-cross"
    lesson = "02"
    skill = "optical-cross"
    slips = (
        SPHERE_ACROSS,
        Slip(
            name="cylinder-as-a-power",
            step="the power across the axis",
            words="You put the cylinder itself on the cross. Across the axis stands sphere and cylinder "
            "together.",
        ),
        Slip(
            name="subtracts-cylinder",
            step="the power across the axis",
            words="You took the cylinder off the sphere. Across the axis stands their sum, signs and all.",
        ),
    )

    def draw(self, draws: Draws) -> OnCrossCase:
        """Return a lens in either form, and one of its two meridians, more often the one across."""
        return OnCrossCase(rx=toric_lens(draws), across=draws.one_of((True, True, False)))

    def kind(self, case: OnCrossCase) -> NumberAnswer:
        """Return the kind: a signed power."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.01, digits=2, signed=True)

    def answer(self, case: OnCrossCase, slips: Set[str] = NONE) -> float:
        """Return the power, or the one of a lens whose cylinder was taken wrongly."""
        rx = case.rx
        if "cylinder-as-a-power" in slips:
            rx = replace(rx, sphere_d=0.0)
        if "subtracts-cylinder" in slips:
            rx = replace(rx, cylinder_d=-rx.cylinder_d)
        cross = OpticalCross.of(rx)
        across = case.across != (SPHERE_ACROSS.name in slips)
        return cross.second_d if across else cross.first_d

    def slips_in(self, case: OnCrossCase) -> tuple[Slip, ...]:
        """Return the slips; where the sphere alone is right, no sum can be wrong."""
        return self.slips if case.across else (SPHERE_ACROSS,)

    def prompt(self, case: OnCrossCase) -> tuple[str, ...]:
        """Return the lens and the meridian."""
        return (
            f"A lens is written {case.rx}. You draw its optical cross.",
            f"Which power stands on the meridian {case.meridian_deg:03.0f}? Answer in D with its sign, to "
            "0.01 D.",
        )

    def given(self, case: OnCrossCase) -> tuple[Term, ...]:
        """Return the parts of the lens."""
        return (*sphere_and_cylinder(case.rx), axis_term(case.rx))

    def solution(self, case: OnCrossCase) -> Solution:
        """Return the rule of the cross, and the steps as far as they are needed."""
        steps = cross_workings(case.rx)
        return Solution(
            words=(
                "A cylinder has no power along its own axis. So the sphere stands on the axis, and sphere "
                "and cylinder together stand at right angles to it.",
            ),
            workings=steps if case.across else steps[:1],
        )

    def hints(self, case: OnCrossCase) -> tuple[str, ...]:
        """Return hints from the meridian to the power."""
        return (
            "Is this meridian the axis of the lens, or the one at right angles to it?",
            "What does a cylinder do along its own axis?",
        )
