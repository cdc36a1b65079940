"""Questions on single vision lenses made from distance power and addition: for near, and in between."""

from abc import abstractmethod
from collections.abc import Callable, Mapping, Set
from dataclasses import replace
from types import MappingProxyType
from typing import ClassVar

from lablib.optics.near_power import intermediate_lens, near_lens
from lablib.optics.near_workings import intermediate_lens_working, near_lens_working
from lablib.optics.prescription import Prescription
from lablib.optics.terms import axis_term, power_term, sphere_and_cylinder
from lablib.questions.answers.prescription import PrescriptionAnswer
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_SHARE = "the share of the addition"
_LEFT_OUT = Slip(
    name="addition-left-out",
    step=_SHARE,
    words="You left the addition out. That is the lens for distance.",
)
_TO_CYLINDER = Slip(
    name="addition-to-the-cylinder",
    step="the cylinder",
    words="You added to the cylinder as well. The addition is the same on every meridian, so it goes to the "
    "sphere alone.",
)
_HALF = Slip(
    name="addition-halved",
    step=_SHARE,
    words="You added half of the addition. That is a lens for the middle distance; for near it counts in "
    "full.",
)
_ALONE = Slip(
    name="addition-as-the-sphere",
    step=_SHARE,
    words="You took the addition for the sphere of the lens. It is what is added to the sphere for distance.",
)
_TAKEN_OFF = Slip(
    name="sizes-added",
    step=_SHARE,
    words="You added the sizes and kept the minus. An addition is plus: it makes a minus sphere weaker.",
)
_WHOLE = Slip(
    name="whole-addition",
    step=_SHARE,
    words="You added the whole addition. That is the lens for near; for the middle distance half is asked "
    "for.",
)
_HALF_OF_ALL = Slip(
    name="halves-the-near-lens",
    step=_SHARE,
    words="You halved sphere and addition together. Only the addition is halved; the sphere counts in full.",
)


# Slips that cannot be made on every order, with the orders on which they can.
_CAN: Mapping[str, Callable[[Prescription], bool]] = MappingProxyType(
    {
        _TO_CYLINDER.name: lambda case: case.cylinder_d != 0.0,
        _TAKEN_OFF.name: lambda case: case.sphere_d < 0.0,
    }
)


class _FromAddition(Maker[Prescription]):
    """What both questions share: the case is the order for distance with its addition."""

    lesson = "02"
    # Of the additions that are drawn [D]: what is asked of them is to come out in quarters.
    addition_step_d: ClassVar[float]

    def draw(self, draws: Draws) -> Prescription:
        """Return an order with an addition; one lens in four is a sphere."""
        toric, is_sphere = draws.until("an order with an addition", self._draw_toric, _keeps_its_parts)
        return replace(toric, cylinder_d=0.0) if is_sphere else toric

    def _draw_toric(self, draws: Draws) -> tuple[Prescription, bool]:
        """A toric order, and whether its cylinder is to be left out."""
        sphere = draws.step(-4.0, 4.0, 0.25)
        cylinder = draws.step(0.25, 2.0, 0.25) * draws.one_of((-1.0, -1.0, -1.0, 1.0))
        addition = draws.step(1.0, 3.0, self.addition_step_d)
        is_sphere, axis = draws.whole(4) == 0, draws.step(5.0, 180.0, 5.0)
        order = Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=axis, addition_d=addition)
        return order, is_sphere

    def kind(self, case: Prescription) -> PrescriptionAnswer:
        """Return a prescription in any writing, without an addition."""
        return PrescriptionAnswer(form="either")

    def slips_in(self, case: Prescription) -> tuple[Slip, ...]:
        """Return the slips: only a cylinder that is there is added to, only a minus sphere hides the sign."""
        impossible = {name for name, can in _CAN.items() if not can(case)}
        return tuple(slip for slip in self.slips if slip.name not in impossible)

    def given(self, case: Prescription) -> tuple[Term, ...]:
        """Return sphere and addition, and the cylinder where there is one."""
        sphere, cylinder = sphere_and_cylinder(case)
        addition = power_term("Add", case.addition_d, "addition")
        return (sphere, cylinder, axis_term(case), addition) if case.cylinder_d else (sphere, addition)

    def solution(self, case: Prescription) -> Solution:
        """Return why the sphere alone changes, and the step."""
        return Solution(
            words=(
                "An addition is plus power on every meridian alike. So it goes to the sphere, and cylinder "
                "and axis stay as they are.",
                f"Written out: {self.answer(case)}.",
            ),
            workings=(self.working(case),),
        )

    @abstractmethod
    def working(self, case: Prescription) -> Working:
        """Return the one step."""


class NearLens(_FromAddition):
    """The single vision lens for near."""

    name = "near-lens"
    skill = "lens-for-near"
    addition_step_d = 0.25
    slips = (_LEFT_OUT, _TO_CYLINDER, _HALF, _ALONE, _TAKEN_OFF)

    def answer(self, case: Prescription, slips: Set[str] = NONE) -> Prescription:
        """Return the lens, or what a wrong share of the addition or a changed cylinder makes of it."""
        lens = near_lens(case)
        if _LEFT_OUT.name in slips:
            lens = intermediate_lens(case, share=0.0)
        if _HALF.name in slips:
            lens = intermediate_lens(case, share=0.5)
        if _ALONE.name in slips:
            lens = near_lens(replace(case, sphere_d=0.0))
        if _TAKEN_OFF.name in slips:
            lens = replace(lens, sphere_d=case.sphere_d - case.addition_d)
        return _added_to_cylinder(lens, case.addition_d) if _TO_CYLINDER.name in slips else lens

    def prompt(self, case: Prescription) -> tuple[str, ...]:
        """Return the order."""
        return (
            f"An order reads {case}. A reading pair is wanted, single vision.",
            "Write the lens to make for near, with signs and two decimals.",
        )

    def working(self, case: Prescription) -> Working:
        """Return the sphere for near."""
        return near_lens_working(case)

    def hints(self, case: Prescription) -> tuple[str, ...]:
        """Return hints."""
        return (
            "For near the lens must have more plus, by the whole addition.",
            "Is the addition a power on one meridian, or on all? So which part of the lens takes it up?",
        )


class IntermediateLens(_FromAddition):
    """The single vision lens for the middle distance, with half of the addition."""

    name = "intermediate-lens"
    skill = "lens-for-the-middle-distance"
    addition_step_d = 0.5
    slips = (_LEFT_OUT, _TO_CYLINDER, _WHOLE, _HALF_OF_ALL)

    def answer(self, case: Prescription, slips: Set[str] = NONE) -> Prescription:
        """Return the lens, or what a wrong share of the addition or a changed cylinder makes of it."""
        lens = intermediate_lens(case, share=0.5)
        if _LEFT_OUT.name in slips:
            lens = intermediate_lens(case, share=0.0)
        if _WHOLE.name in slips:
            lens = near_lens(case)
        if _HALF_OF_ALL.name in slips:
            lens = replace(lens, sphere_d=near_lens(case).sphere_d / 2.0)
        return _added_to_cylinder(lens, case.addition_d / 2.0) if _TO_CYLINDER.name in slips else lens

    def prompt(self, case: Prescription) -> tuple[str, ...]:
        """Return the order, with the share that is wanted."""
        return (
            f"An order reads {case}. A pair for the screen is wanted, single vision; the prescriber orders "
            "half of the addition for it.",
            "Write the lens to make for the middle distance, with signs and two decimals.",
        )

    def working(self, case: Prescription) -> Working:
        """Return the sphere for the middle distance."""
        return intermediate_lens_working(case, share=0.5)

    def hints(self, case: Prescription) -> tuple[str, ...]:
        """Return hints."""
        return (
            "A screen stands between far and near, so the lens takes part of the addition.",
            "Take that part of the addition first. Then add it to the sphere, and to nothing else.",
        )


def _keeps_its_parts(drawn: tuple[Prescription, bool]) -> bool:
    """Whether no sphere of a right or wrong lens is plano, and no cylinder of a wrong one is lost."""
    order, _ = drawn
    spheres = (order.sphere_d, near_lens(order).sphere_d, intermediate_lens(order, share=0.5).sphere_d)
    cylinders = (order.cylinder_d + share * order.addition_d for share in (0.5, 1.0))
    return all((*spheres, *cylinders))


def _added_to_cylinder(lens: Prescription, part_d: float) -> Prescription:
    return replace(lens, cylinder_d=lens.cylinder_d + part_d)
