"""A question about toric transposition: a lens written with its cylinder on a given base curve."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.optical_cross import OpticalCross
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.terms import axis_term, power_term, sphere_and_cylinder
from lablib.optics.toric_transposition import toric_form
from lablib.optics.toric_workings import toric_form_workings
from lablib.questions.answers.units import DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_NOT_TURNED = Slip(
    name="form-not-turned",
    step="the form whose cylinder has the sign of the base curve",
    words="You left the lens in the form it came in. First write it so that the cylinder has the sign of the "
    "base curve: the cross curve is always the steeper of the two.",
)
_BASE_ADDED = Slip(
    name="base-curve-added",
    step="what the other surface has to make up",
    words="You added the base curve to the sphere. The two surfaces together make the sphere, so take the "
    "base curve off it.",
)
_CYLINDER_ALONE = Slip(
    name="cylinder-for-cross-curve",
    step="what the cross curve is counted from",
    words="You gave the cylinder as the cross curve. The cross curve is the base curve and the cylinder "
    "together.",
)
_SPHERE, _CROSS = "sphere", "cross"


@dataclass(frozen=True, slots=True, kw_only=True)
class BaseCase:
    """A lens and the base curve its cylinder is put on.

    rx: in either form; base_d: base curve [D], plus on the front, minus on the back.
    part: which curve is asked, "sphere" or "cross".
    """

    rx: Prescription
    base_d: float
    part: str

    @property
    def is_turned(self) -> bool:
        """Whether the lens has to be written in the other form first."""
        return self.rx.cylinder_d * self.base_d < 0.0

    @property
    def form(self) -> Prescription:
        """The lens in the form whose cylinder has the sign of the base curve."""
        return self.rx.in_form("plus" if self.base_d > 0.0 else "minus")

    @property
    def other_side(self) -> str:
        """The side the sphere curve is on."""
        return "back" if self.base_d > 0.0 else "front"


class ToricBase(Maker[BaseCase]):
    """The cross curve or the sphere curve of a lens on a base curve."""

    name = "toric-base"
    lesson = "03"
    skill = "toric-transposition"
    slips = (_NOT_TURNED, _BASE_ADDED, _CYLINDER_ALONE)

    def draw(self, draws: Draws) -> BaseCase:
        """Return a lens, most often in the form that has to be turned first."""
        sign = draws.one_of((1.0, -1.0))
        form = Prescription(
            sphere_d=draws.step(-4.0, 4.0, 0.25),
            cylinder_d=draws.step(0.75, 3.0, 0.25) * sign,
            axis_deg=draws.step(5.0, 180.0, 5.0),
        )
        return BaseCase(
            rx=form.transposed() if draws.whole(4) else form,
            base_d=sign * draws.step(4.0, 7.0, 0.25),
            part=draws.one_of((_SPHERE, _CROSS)),
        )

    def kind(self, case: BaseCase) -> NumberAnswer:
        """Return the kind: a signed power."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.06, digits=2, signed=True)

    def slips_in(self, case: BaseCase) -> tuple[Slip, ...]:
        """Return the slips that can be made on the way to the curve that is asked."""
        own = _BASE_ADDED if case.part == _SPHERE else _CYLINDER_ALONE
        return (_NOT_TURNED, own) if case.is_turned else (own,)

    def answer(self, case: BaseCase, slips: Set[str] = NONE) -> float:
        """Return the curve. Who starts from the other form puts its parts into the same sums."""
        if not slips:
            toric = toric_form(case.rx, base_curve_d=case.base_d)
            return toric.sphere_curve_d if case.part == _SPHERE else toric.cross_d
        lens = case.rx if _NOT_TURNED.name in slips else case.form
        if case.part == _SPHERE:
            return lens.sphere_d + (case.base_d if _BASE_ADDED.name in slips else -case.base_d)
        return lens.cylinder_d + (0.0 if _CYLINDER_ALONE.name in slips else case.base_d)

    def prompt(self, case: BaseCase) -> tuple[str, ...]:
        """Return what is asked."""
        side = "front" if case.base_d > 0.0 else "back"
        asked = (
            f"Which sphere curve goes on the {case.other_side}?"
            if case.part == _SPHERE
            else f"Which cross curve stands across the base curve on the {side}?"
        )
        return (
            f"A thin invented lens of {case.rx} is made with its cylinder on the {side}, on a base curve of "
            f"{written_power(case.base_d)} D.",
            f"{asked} Answer in D with its sign, to 0.01 D.",
        )

    def given(self, case: BaseCase) -> tuple[Term, ...]:
        """Return the parts of the lens and the base curve."""
        return (*sphere_and_cylinder(case.rx), axis_term(case.rx), power_term("B", case.base_d, "base curve"))

    def solution(self, case: BaseCase) -> Solution:
        """Return the steps as far as the curve that is asked."""
        steps = toric_form_workings(case.rx, base_curve_d=case.base_d)
        *turning, sphere_curve, cross_curve, _ = steps
        toric = toric_form(case.rx, base_curve_d=case.base_d)
        first = "First write the lens in the other form. " if case.is_turned else ""
        cross = OpticalCross.of(case.rx).written()
        return Solution(
            words=(
                f"{first}The base curve is the flatter curve of the toric surface and stands on the axis. "
                "The sphere curve is the sphere less the base curve; the cross curve is the base curve and "
                "the cylinder.",
                f"Written out: {toric.written()}. Check with the optical cross of the lens, {cross}: both "
                "surfaces together must give it.",
            ),
            workings=(*turning, sphere_curve if case.part == _SPHERE else cross_curve),
        )

    def hints(self, case: BaseCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Has the cylinder the sign of the base curve? If not, which form has?",
            "The surfaces of a thin lens add up. What must be there so that the sphere comes out?"
            if case.part == _SPHERE
            else "The two curves of the toric surface differ by the cylinder.",
        )
