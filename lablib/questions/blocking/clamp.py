"""The clamp force a lens bears, as a question: by the square of the thinnest place under the tip."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.bench.holding import clamp_cap_n
from lablib.optics.terms import distance_term, in_full
from lablib.questions.bench_stack.words import BENCH
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_PLACE_STEP = "which thickness under the tip counts"
_POWER_STEP = "how the force goes with thickness"
_BEND_STEP = "how much of a plate's bending a clamped lens has"
_THICK = Slip(
    name="thicker-place-taken",
    step=_PLACE_STEP,
    words="You took the thicker of the two places. The lens gives where it is thinnest under the tip.",
)
_NOT_SQUARED = Slip(
    name="thickness-not-squared",
    step=_POWER_STEP,
    words="You took the thickness once. A plate half as thick bears a quarter of the force.",
)
_WHOLE_PLATE = Slip(
    name="bending-share-left-out",
    step=_BEND_STEP,
    words="You left the share of bending out, as if the lens lay on its rim alone. Block and tip support it "
    "nearly opposite each other.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClampCase:
    """A lens between block and tip.

    centre_mm: thickness on the chuck axis [mm]; rim_mm: at the rim of the tip [mm].
    """

    centre_mm: float
    rim_mm: float

    @property
    def thinnest_mm(self) -> float:
        """The thinner of the two [mm]."""
        return min(self.centre_mm, self.rim_mm)


class ClampCap(Maker[ClampCase]):
    """Say what clamp force a lens bears."""

    name = "clamp-cap"
    lesson = "10"
    skill = "clamp-force"
    slips = (_THICK, _NOT_SQUARED, _WHOLE_PLATE)

    def draw(self, draws: Draws) -> ClampCase:
        """Return a minus lens, thinnest in the middle, or a plus lens, thinnest at the tip's rim."""
        # A thicker place than this would bear more than any chuck gives.
        thin = draws.step(0.7, 1.2, 0.05)
        thick = thin + draws.step(0.15, 0.35, 0.05)
        return draws.one_of(
            (
                ClampCase(centre_mm=thin, rim_mm=round(thick, 2)),
                ClampCase(centre_mm=round(thick, 2), rim_mm=thin),
            )
        )

    def kind(self, case: ClampCase) -> NumberAnswer:
        """Return a force to 1 N."""
        return NumberAnswer(unit="N", tolerance=1.0, digits=0)

    def answer(self, case: ClampCase, slips: Set[str] = NONE) -> float:
        """Return the greatest clamp force. Not squared, it is the force at 1 mm times the thickness."""
        thickness = max(case.centre_mm, case.rim_mm) if _THICK.name in slips else case.thinnest_mm
        chi = 1.0 if _WHOLE_PLATE.name in slips else BENCH.bending_share
        if _NOT_SQUARED.name in slips:
            return thickness * clamp_cap_n(1.0, BENCH, bending_share=chi)
        return clamp_cap_n(thickness, BENCH, bending_share=chi)

    def prompt(self, case: ClampCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "An invented lens sits between block and back tip. Its thickness was measured on the chuck "
            "axis and at the rim of the tip. A clamped lens of thickness t bears N = sigma_a t^2 / (c_p "
            "chi) before its coat crazes.",
            "What is the greatest clamp force this lens bears? Give it in N, to 1 N.",
        )

    def given(self, case: ClampCase) -> tuple[Term, ...]:
        """Return both thicknesses and what the formula takes."""
        return (
            distance_term("t_a", case.centre_mm, "thickness on the chuck axis"),
            distance_term("t_r", case.rim_mm, "thickness at the rim of the tip"),
            in_full("sigma_a", BENCH.allowed_stress_mpa, "MPa", least_digits=1, meaning="stress borne"),
            in_full("c_p", BENCH.plate_factor, "", meaning="bending of a plate"),
            in_full("chi", BENCH.bending_share, "", meaning="share of it in a clamped lens"),
        )

    def solution(self, case: ClampCase) -> Solution:
        """Return the thinnest place and what it bears."""
        bears = Working(
            what="clamp force this lens bears, by its thinnest place under the tip",
            symbol="N_max",
            formula="sigma_a * min(t_a, t_r)^2 / (c_p * chi)",
            terms=self.given(case),
            value=self.answer(case),
            unit="N",
            digits=1,
            source="bending of a thin plate under a central load (derived)",
        )
        return Solution(
            words=(
                "Bending goes with force over thickness squared, and the thinnest place gives first. Of a "
                "minus lens that is the middle, of a plus lens the rim of the tip.",
                "That is a limit and no aim: set what the machine's maker says, and never more than the lens "
                "bears. A lens that turns is not cured by more clamp force.",
            ),
            workings=(bears,),
        )

    def hints(self, case: ClampCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Where under the tip is this lens weakest?",
            "Put that thickness into the formula, and mind its power.",
        )
