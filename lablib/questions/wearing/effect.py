"""A question about a tilted sphere in numbers: the prescription it amounts to."""

from collections.abc import Set
from dataclasses import replace

from lablib.optics.prescription import Prescription
from lablib.optics.tilt import tilt_effect
from lablib.optics.tilt_workings import tilt_effect_workings
from lablib.questions.answers.prescription import PrescriptionAnswer
from lablib.questions.wearing.case import TiltedSphere, draw_tilted_sphere
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution
from lablib.working import Term

# Fine enough to see the sphere change, and coarse enough for either of the two published forms.
TOLERANCE_D = 0.02


class TiltEffect(Maker[TiltedSphere]):
    """What a tilted sphere does, as a prescription."""

    name = "tilt-effect"
    lesson = "09"
    skill = "effect-of-a-tilt"
    slips = (
        Slip(
            name="cylinder-of-tilt-forgotten",
            step="the cylinder of the tilt",
            words="You gave the new sphere alone. A tilt also makes a cylinder: the sphere times the square "
            "of the tangent.",
        ),
        Slip(
            name="axis-of-the-other-tilt",
            step="the axis of the cylinder",
            words="You put the cylinder on the axis of the other tilt. It lies along the line the lens is "
            "turned about: 180 for pantoscopic tilt, 90 for wrap.",
        ),
        Slip(
            name="sphere-kept",
            step="the sphere with the tilt",
            words="You kept the sphere. It grows too, by the square of the sine over twice the index.",
        ),
        Slip(
            name="sine-for-half-sine",
            step="the sphere with the tilt",
            words="You left out the 2 beside the index. The sphere grows by the square of the sine over "
            "twice the index.",
        ),
    )

    def draw(self, draws: Draws) -> TiltedSphere:
        """Return a strong sphere, tilted or wrapped."""
        return draw_tilted_sphere(draws)

    def kind(self, case: TiltedSphere) -> PrescriptionAnswer:
        """Return the kind: a prescription in either form."""
        return PrescriptionAnswer(form="either", tolerance_d=TOLERANCE_D)

    def answer(self, case: TiltedSphere, slips: Set[str] = NONE) -> Prescription:
        """Return the effect, in the form whose cylinder has the sphere's own sign."""
        turned = case.turned(is_wrap=case.is_wrap != ("axis-of-the-other-tilt" in slips))
        effect = tilt_effect(case.rx, tilt=turned, index=case.index).in_form(case.own_form)
        if "sphere-kept" in slips:
            effect = replace(effect, sphere_d=case.power_d)
        if "sine-for-half-sine" in slips:
            # Twice the growth is what the formula without its 2 gives.
            effect = replace(effect, sphere_d=2.0 * effect.sphere_d - case.power_d)
        return replace(effect, cylinder_d=0.0) if "cylinder-of-tilt-forgotten" in slips else effect

    def prompt(self, case: TiltedSphere) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.rx}, index {case.index:g}, is worn with {case.words}. The wearer looks "
            "straight ahead through its optical centre.",
            "Write what the lens does for the eye, as a prescription. Give both powers with their signs, to "
            "0.01 D, and the axis in whole degrees.",
        )

    def given(self, case: TiltedSphere) -> tuple[Term, ...]:
        """Return sphere, angle and index."""
        return case.terms

    def solution(self, case: TiltedSphere) -> Solution:
        """Return the two changes and the axis."""
        line = "090, the vertical" if case.is_wrap else "180, the horizontal"
        return Solution(
            words=(
                "The sphere grows by the square of the sine over twice the index. The cylinder is that new "
                "sphere times the square of the tangent. Another published form takes the original sphere; "
                "the two differ by less than this answer's tolerance.",
                f"The axis is the line the lens is turned about: {line}.",
                f"Written out: {self.answer(case)}.",
            ),
            workings=tilt_effect_workings(case.power_d, tilt=case.tilt, index=case.index),
        )

    def hints(self, case: TiltedSphere) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Two things change: the sphere a little, and a cylinder comes in addition.",
            "Sphere: S times 1 + sin^2 / 2n. Cylinder: the new sphere times tan^2, with the sphere's sign.",
        )
