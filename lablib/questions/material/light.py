"""Questions about reflections: of one surface, and of an uncoated lens."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.material_workings import surface_reflectance_working, transmittance_workings
from lablib.optics.reflection import surface_reflectance, transmittance, transmittance_at_once
from lablib.optics.terms import in_full
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term


@dataclass(frozen=True, slots=True, kw_only=True)
class LightCase:
    """A clear uncoated lens.

    index: of its material.
    """

    index: float


def _draw(draws: Draws) -> LightCase:
    return LightCase(index=draws.step(1.49, 1.76, 0.002))


def _given(case: LightCase) -> tuple[Term, ...]:
    return (in_full("n", case.index, "", least_digits=3, meaning="index"),)


class SurfaceReflectance(Maker[LightCase]):
    """How much light one uncoated surface throws back."""

    name = "surface-reflectance"
    lesson = "04"
    skill = "reflections"
    slips = (
        Slip(
            name="not-squared",
            step="squaring the ratio",
            words="You did not square the ratio. It tells how high the reflected wave is; how bright it is "
            "goes with the square.",
        ),
        Slip(
            name="not-divided",
            step="what the step of the index is divided by",
            words="You squared index less 1 alone. It is divided by index plus 1 first.",
        ),
        Slip(
            name="both-surfaces",
            step="how many surfaces are asked about",
            words="You gave two surfaces. One is asked about.",
        ),
    )

    def draw(self, draws: Draws) -> LightCase:
        """Return an index."""
        return _draw(draws)

    def kind(self, case: LightCase) -> NumberAnswer:
        """Return the kind: per cent."""
        return NumberAnswer(unit="%", tolerance=0.02, digits=2)

    def answer(self, case: LightCase, slips: Set[str] = NONE) -> float:
        """Return the reflectance; the ratio itself is its root."""
        share = surface_reflectance(case.index)
        if "not-divided" in slips:
            share *= (case.index + 1.0) ** 2
        if "not-squared" in slips:
            share **= 0.5
        return 100.0 * share * (2.0 if "both-surfaces" in slips else 1.0)

    def prompt(self, case: LightCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"Light falls square on the front of an invented uncoated lens of index {case.index:.3f}.",
            "How much of it does this one surface throw back? Answer in %, to 0.01 %.",
        )

    def given(self, case: LightCase) -> tuple[Term, ...]:
        """Return the index."""
        return _given(case)

    def solution(self, case: LightCase) -> Solution:
        """Return the formula and what it means."""
        return Solution(
            words=(
                "The greater the step of the index, the more is thrown back: index less 1 over index plus 1, "
                "squared. A lens of a high index shines more, and gains more by an anti-reflection coat.",
            ),
            workings=(surface_reflectance_working(case.index),),
        )

    def hints(self, case: LightCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What is the difference between the index of the lens and that of air, and what is their sum?",
            "Divide the one by the other, and square what comes out. A lens throws back a few per cent, not "
            "tens of them.",
        )


class TransmittedLight(Maker[LightCase]):
    """How much light an uncoated lens lets through."""

    name = "transmitted-light"
    lesson = "04"
    skill = "reflections"
    slips = (
        Slip(
            name="one-surface-only",
            step="how many surfaces the light meets",
            words="You took off the reflection of the front alone. The back throws light back as well.",
        ),
        Slip(
            name="reflections-added",
            step="what is left for the back surface",
            words="You took both reflections off the whole light. The back meets only what the front let "
            "through, and some of what it throws back is thrown forward again.",
        ),
        Slip(
            name="at-once-only",
            step="the light thrown back and forth inside",
            words="You counted only the light that passes at once. A little is thrown back inside, meets the "
            "front and is thrown forward again; the question counts it.",
        ),
    )

    def draw(self, draws: Draws) -> LightCase:
        """Return an index."""
        return _draw(draws)

    def kind(self, case: LightCase) -> NumberAnswer:
        """Return the kind: per cent."""
        return NumberAnswer(unit="%", tolerance=0.05, digits=2)

    def answer(self, case: LightCase, slips: Set[str] = NONE) -> float:
        """Return what passes; one surface takes off its share, or twice its share where both are added."""
        share = surface_reflectance(case.index)
        if "one-surface-only" in slips:
            return 100.0 * (1.0 - share)
        if "reflections-added" in slips:
            return 100.0 * (1.0 - 2.0 * share)
        through = transmittance_at_once if "at-once-only" in slips else transmittance
        return 100.0 * through(case.index)

    def prompt(self, case: LightCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"Light falls square on an invented clear lens of index {case.index:.3f}, uncoated on both "
            "sides.",
            "How much of it comes out at the back, all that is thrown back and forth between the surfaces "
            "counted? Answer in %, to 0.01 %.",
        )

    def given(self, case: LightCase) -> tuple[Term, ...]:
        """Return the index."""
        return _given(case)

    def solution(self, case: LightCase) -> Solution:
        """Return why it is more than what passes at once, and the steps."""
        return Solution(
            words=(
                "Each surface throws the same share back. What the back throws back meets the front from "
                "inside, and a part of it is thrown forward again, and so on.",
                "All these parts together make 1 less the share over 1 plus the share. What passes at once, "
                "the square of 1 less the share, is a little less.",
            ),
            workings=transmittance_workings(case.index),
        )

    def hints(self, case: LightCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First find what one surface throws back. How many surfaces does the light meet?",
            "With the share R of one surface, all the light that gets through is 1 less R, divided by 1 plus "
            "R.",
        )
