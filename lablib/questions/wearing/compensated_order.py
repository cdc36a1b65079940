"""A question about a compensated lens: what to order so that, tilted, it does what was prescribed."""

from collections.abc import Set
from dataclasses import replace

from lablib.optics.prescription import Prescription
from lablib.optics.tilt import compensated, tilt_effect
from lablib.optics.tilt_workings import compensated_workings
from lablib.questions.answers.prescription import PrescriptionAnswer
from lablib.questions.wearing.case import TiltedSphere, draw_tilted_sphere
from lablib.questions.wearing.effect import TOLERANCE_D
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution
from lablib.working import Term

_WAY = "which way the tilt is made up for"


class CompensatedOrder(Maker[TiltedSphere]):
    """The order that gives the wearer what was prescribed."""

    name = "compensated-order"
    lesson = "09"
    skill = "compensated-order"
    slips = (
        Slip(
            name="orders-the-effect",
            step=_WAY,
            words="You ordered what the tilt does. Made like that, the lens would do it twice: order less of "
            "both, so that the tilt brings the rest.",
        ),
        Slip(
            name="orders-as-prescribed",
            step=_WAY,
            words="You ordered the prescription as it stands. Tilted, the lens would be too strong and have "
            "a cylinder nobody prescribed.",
        ),
        Slip(
            name="cylinder-left-out",
            step="the cylinder to order",
            words="You made up for the sphere alone. The tilt also makes a cylinder, and the order takes it "
            "away.",
        ),
        Slip(
            name="sign-of-the-cylinder-kept",
            step="the cylinder to order",
            words="You gave the cylinder the sign the tilt gives it. To take it away, the order has the "
            "other sign on the same axis.",
        ),
    )

    def draw(self, draws: Draws) -> TiltedSphere:
        """Return a strong sphere, tilted or wrapped."""
        return draw_tilted_sphere(draws)

    def kind(self, case: TiltedSphere) -> PrescriptionAnswer:
        """Return the kind: a prescription in either form."""
        return PrescriptionAnswer(form="either", tolerance_d=TOLERANCE_D)

    def answer(self, case: TiltedSphere, slips: Set[str] = NONE) -> Prescription:
        """Return the order, in the form whose axis is the line of the tilt."""
        if "orders-the-effect" in slips:
            order = tilt_effect(case.rx, tilt=case.tilt, index=case.index).in_form(case.own_form)
        elif "orders-as-prescribed" in slips:
            return case.rx
        else:
            order = compensated(case.rx, tilt=case.tilt, index=case.index).in_form(case.other_form)
        if "sign-of-the-cylinder-kept" in slips:
            order = replace(order, cylinder_d=-order.cylinder_d)
        return replace(order, cylinder_d=0.0) if "cylinder-left-out" in slips else order

    def prompt(self, case: TiltedSphere) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The eye is to have {case.rx}. The lens, index {case.index:g}, will be worn with {case.words}, "
            "and the wearer looks straight ahead through its optical centre. Whether an order is "
            "compensated is agreed with the prescriber.",
            "Write the lens to order so that the wearer gets what was prescribed. Give both powers with "
            "their signs, to 0.01 D, and the axis in whole degrees.",
        )

    def given(self, case: TiltedSphere) -> tuple[Term, ...]:
        """Return sphere, angle and index."""
        return case.terms

    def solution(self, case: TiltedSphere) -> Solution:
        """Return the inverse, and what the effect would be instead."""
        order = self.answer(case)
        effect = tilt_effect(case.rx, tilt=case.tilt, index=case.index).in_form(case.own_form)
        return Solution(
            words=(
                "What the tilt multiplies by, the order is divided by. Along the line of the tilt that is "
                "the factor of the sphere alone, across it the square of the tangent comes in addition.",
                f"The difference of the two is a cylinder of the other sign. Written out: {order}, which is "
                f"also {order.transposed()}.",
                f"Ordered as {case.rx}, the lens would do what {effect} does.",
            ),
            workings=compensated_workings(case.power_d, tilt=case.tilt, index=case.index),
        )

    def hints(self, case: TiltedSphere) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Does the tilt make the lens act stronger or weaker? Then which of the two has to be ordered?",
            "Divide along the line of the tilt by 1 + sin^2 / 2n, and across it by 1 + tan^2 as well.",
        )
