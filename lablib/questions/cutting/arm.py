"""The arm of a light cut, as a question: on an ellipse it is the way to the tangent, not to the contact."""

import math
from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.geometry import ellipse_support_mm
from lablib.optics.terms import direction_term, distance_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_STEP = "from where to where an arm is measured"
_CONTACT = Slip(
    name="way-to-the-contact",
    step=_STEP,
    words="You gave the distance to the contact itself. The force runs along the tangent there, and an arm "
    "is measured square to the line of the force.",
)
_HALF_WIDTH = Slip(
    name="half-width-taken",
    step=_STEP,
    words="You took half of the width. That is the arm only where the normal lies level.",
)
_DIRECTION = Slip(
    name="normal-for-direction",
    step=_STEP,
    words="You measured to the rim in the direction of the normal. On an oval the contact lies elsewhere, "
    "and the arm goes to its tangent.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ArmCase:
    """An oval and where it is touched.

    half_width_mm, half_height_mm: [mm]; normal_deg: direction of the normal there [degrees].
    """

    half_width_mm: float
    half_height_mm: float
    normal_deg: float


class LightCutArm(Maker[ArmCase]):
    """Find the arm of the tangential force of a light cut."""

    name = "light-cut-arm"
    lesson = "11"
    skill = "lever-arm"
    slips = (_CONTACT, _HALF_WIDTH, _DIRECTION)

    def draw(self, draws: Draws) -> ArmCase:
        """Return an oval that is clearly wider than high, touched at a slant."""
        return ArmCase(
            half_width_mm=draws.step(23.0, 28.0, 0.5),
            half_height_mm=draws.step(14.0, 19.0, 0.5),
            normal_deg=draws.step(30.0, 60.0, 5.0),
        )

    def kind(self, case: ArmCase) -> NumberAnswer:
        """Return an arm to 0.1 mm."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=1)

    def answer(self, case: ArmCase, slips: Set[str] = NONE) -> float:
        """Return the arm, or what a slip takes for it."""
        a, b, normal = case.half_width_mm, case.half_height_mm, math.radians(case.normal_deg)
        arm = ellipse_support_mm(a, b, case.normal_deg)
        if _HALF_WIDTH.name in slips:
            return a
        if _CONTACT.name in slips:
            # The contact stands at (a^2 cos, b^2 sin) / h.
            return ellipse_support_mm(a * a, b * b, case.normal_deg) / arm
        if _DIRECTION.name in slips:
            return a * b / math.hypot(b * math.cos(normal), a * math.sin(normal))
        return arm

    def prompt(self, case: ArmCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "An invented lens is an ellipse and is blocked at its middle. In its last turns the bite is so "
            "light that the wheel touches it in one point. There the normal, the line square to the rim, "
            "points in the direction psi, counted from level.",
            "The tangent of an ellipse with half width a and half height b passes its middle at the distance "
            "h, with h^2 = a^2 cos^2 psi + b^2 sin^2 psi.",
            "On which arm does the tangential force of the wheel turn the lens? Give it in mm, to 0.1 mm.",
        )

    def given(self, case: ArmCase) -> tuple[Term, ...]:
        """Return the oval and the direction."""
        return (
            distance_term("a", case.half_width_mm, "half of the width"),
            distance_term("b", case.half_height_mm, "half of the height"),
            direction_term("psi", case.normal_deg, "direction of the normal at the contact"),
        )

    def solution(self, case: ArmCase) -> Solution:
        """Return the arm in one step."""
        arm = Working(
            what="arm of the tangential force",
            symbol="h",
            formula="sqrt((a * cos(psi))^2 + (b * sin(psi))^2)",
            terms=self.given(case),
            value=self.answer(case),
            unit="mm",
            source="support function of an ellipse (derived)",
        )
        return Solution(
            words=(
                "The wheel drags along the tangent. What turns the lens is that force times the distance at "
                "which its line passes the chuck axis, and that is shorter than the way to the contact.",
                "A deeper bite touches along an arc, and then the normal force has an arm that counts as "
                "well.",
            ),
            workings=(arm,),
        )

    def hints(self, case: ArmCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the oval, the contact and the line along which the wheel drags.",
            "How far does that line pass from the middle? Put the numbers into h.",
        )
