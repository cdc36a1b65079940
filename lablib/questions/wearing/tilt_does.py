"""A question about what tilt or wrap does to a sphere: sign and axis, without numbers."""

from collections.abc import Set

from lablib.optics.tilt import tilt_effect
from lablib.optics.tilt_workings import tilt_effect_workings
from lablib.questions.wearing.case import TiltedSphere, draw_tilted_sphere
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_RIGHT = "stronger-with-cylinder"
_WRONG = ("axis-of-the-other-tilt", "cylinder-forgotten", "taken-as-weaker", "cylinder-of-the-other-sign")


class TiltDoes(Maker[TiltedSphere]):
    """Which way a tilt changes sphere and cylinder, and about which axis."""

    name = "tilt-does"
    lesson = "09"
    skill = "sign-and-axis-of-a-tilt"
    slips = (
        Slip(
            name="axis-of-the-other-tilt",
            step="the axis of the cylinder",
            words="You took the axis of the other tilt. The axis is the line about which the lens is "
            "turned: 180 for pantoscopic tilt, 90 for wrap.",
        ),
        Slip(
            name="cylinder-forgotten",
            step="the cylinder of the tilt",
            words="You left the cylinder out. Across the line of the tilt the power grows more than along "
            "it, and the difference is a cylinder.",
        ),
        Slip(
            name="taken-as-weaker",
            step="which way the sphere changes",
            words="You made the sphere weaker. A tilted lens acts stronger in every meridian.",
        ),
        Slip(
            name="cylinder-of-the-other-sign",
            step="the sign of the cylinder",
            words="You gave the cylinder the other sign. Across the line of the tilt the power grows, so "
            "the cylinder has the sign of the sphere. The other sign is what an order needs to make up for "
            "it.",
        ),
    )

    def draw(self, draws: Draws) -> TiltedSphere:
        """Return a strong sphere, tilted or wrapped."""
        return draw_tilted_sphere(draws)

    def kind(self, case: TiltedSphere) -> ChoiceAnswer:
        """Return the kind: five ways, in an order that hangs on the lens."""
        own, other = ("minus", "plus") if case.power_d < 0.0 else ("plus", "minus")
        line, wrong = (90, 180) if case.is_wrap else (180, 90)
        words = {
            _RIGHT: f"A stronger sphere and a {own} cylinder, axis {line:03d}.",
            "axis-of-the-other-tilt": f"A stronger sphere and a {own} cylinder, axis {wrong:03d}.",
            "cylinder-forgotten": "A stronger sphere and no cylinder.",
            "taken-as-weaker": f"A weaker sphere and a {own} cylinder, axis {line:03d}.",
            "cylinder-of-the-other-sign": f"A stronger sphere and a {other} cylinder, axis {line:03d}.",
        }
        # Sorted by the words, so that the right one does not always stand first.
        return ChoiceAnswer(
            options=tuple(Option(key=key, words=words[key]) for key in sorted(words, key=words.get))
        )

    def answer(self, case: TiltedSphere, slips: Set[str] = NONE) -> str:
        """Return what the tilt does, or the option of a slip."""
        return next((name for name in _WRONG if name in slips), _RIGHT)

    def pairs(self, case: TiltedSphere, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: TiltedSphere) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.rx} is worn with {case.words}. The wearer looks straight ahead through its "
            "optical centre.",
            "What does the lens do for the eye, compared with the same lens held square?",
        )

    def given(self, case: TiltedSphere) -> tuple[Term, ...]:
        """Return sphere, angle and index."""
        return case.terms

    def solution(self, case: TiltedSphere) -> Solution:
        """Return why, and the numbers of this lens."""
        effect = tilt_effect(case.rx, tilt=case.tilt, index=case.index).in_form(case.own_form)
        return Solution(
            words=(
                "Light meets a tilted surface slantwise and is bent more. So the sphere grows a little in "
                "every meridian, and once more across the line of the tilt. That second growth is a "
                "cylinder of the sphere's own sign, its axis along the line of the tilt.",
                f"In numbers this lens does what {effect} would.",
            ),
            workings=tilt_effect_workings(case.power_d, tilt=case.tilt, index=case.index),
        )

    def hints(self, case: TiltedSphere) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Is light that meets a surface slantwise bent more or less?",
            "About which line is the lens turned? Along that line little changes, across it most.",
        )
