"""The turn with the greatest torque, as a question: of a minus lens the first, of a plus lens look."""

from collections.abc import Set
from dataclasses import dataclass
from functools import cache

import numpy as np

from lablib.bench.cutting import cut
from lablib.bench.faces import sphere_sag_mm
from lablib.bench.machine import lens_material
from lablib.bench.plan import UncutLens, job_plan
from lablib.questions.bench_stack.words import BENCH, NEWTON_METRES, NMM_PER_NM
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_MATERIAL = "thiourethane-1.60"
# A round lens is the same in every direction; fewer than these the bench does not take.
_POINTS = 8
_BITE_MM, _STOCK_MM = 2.0, 0.5
# A turn asked for stands out by so much.
_CLEARLY = 1.08
_STEP = "how thickness and arm go together"
_FIRST = Slip(
    name="first-turn-always",
    step=_STEP,
    words="You took the first turn, as with a minus lens. A plus lens is thin at the rim of its blank, and "
    "there is little to push through.",
)
_MIDDLE = Slip(
    name="middle-turn-taken",
    step=_STEP,
    words="You took a turn in the middle, as with many plus lenses. A minus lens is thickest where its arm "
    "is longest, and both get less from turn to turn.",
)
_LAST = Slip(
    name="finished-size-taken",
    step=_STEP,
    words="You took the last roughing turn, at the finished size. There the arm is shortest, and it counts "
    "more than once: a shorter arm also meets less material in each turn.",
)
_FINISHING = Slip(
    name="finishing-wheel-taken",
    step="how deep each turn bites",
    words="You took the finishing turn. Finer grit takes more force for its chips, but there is only the "
    "last half of a millimetre to take.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PeakCase:
    """A round lens, blocked at its middle.

    turns: of roughing; radius_mm: of the finished lens [mm]; centre_mm: its centre thickness [mm].
    front_mm, back_mm: radii of curvature, centres on the eye's side [mm].
    shown: turns to pick from, in the order shown.
    """

    turns: int
    radius_mm: float
    centre_mm: float
    front_mm: float
    back_mm: float
    shown: tuple[int, ...] = ()

    @property
    def is_plus(self) -> bool:
        """Whether it is thinnest at its rim."""
        return self.front_mm < self.back_mm

    @property
    def rims_mm(self) -> tuple[float, ...]:
        """Distance of the rim from the chuck axis after every turn [mm]."""
        rough = [
            self.radius_mm + _STOCK_MM + _BITE_MM * (self.turns - turn) for turn in range(1, self.turns + 1)
        ]
        return *rough, self.radius_mm

    def thickness_mm(self, away_mm: float | np.ndarray) -> float | np.ndarray:
        """Return the thickness at a distance from the middle [mm].

        away_mm: [mm].
        """
        back, front = sphere_sag_mm(1.0 / self.back_mm, away_mm), sphere_sag_mm(1.0 / self.front_mm, away_mm)
        return self.centre_mm + back - front


def torques_nmm(case: PeakCase) -> tuple[float, ...]:
    """Return the cutting torque of every turn [N mm].

    case: the lens.
    """
    return _torques(case.turns, case.radius_mm, case.centre_mm, case.front_mm, case.back_mm)


@cache
def _torques(
    turns: int, radius_mm: float, centre_mm: float, front_mm: float, back_mm: float
) -> tuple[float, ...]:
    case = PeakCase(turns=turns, radius_mm=radius_mm, centre_mm=centre_mm, front_mm=front_mm, back_mm=back_mm)
    lens = UncutLens(
        outline_mm=np.full(_POINTS, radius_mm),
        blank_diameter_mm=2.0 * (radius_mm + _STOCK_MM + _BITE_MM * turns),
        blank_x_mm=0.0,
        blank_y_mm=0.0,
        thickness_mm=lambda x, y: case.thickness_mm(np.hypot(x, y)),
        centre_thickness_mm=centre_mm,
    )
    plan = job_plan(lens, depth_mm=_BITE_MM, stock_mm=_STOCK_MM, finishing_mm=1.0, crib_mm=None)
    cutting = cut(
        lens, plan, material=lens_material(_MATERIAL), bench=BENCH, wheel="sharp", wheel_sense="against"
    )
    return tuple(float(torque) for torque in cutting.torque_nmm[:, 0])


class WhereThePeakIs(Maker[PeakCase]):
    """Say in which turn the torque is greatest."""

    name = "where-the-peak-is"
    lesson = "11"
    skill = "torque-peak"
    slips = (_FIRST, _MIDDLE, _LAST, _FINISHING)

    def draw(self, draws: Draws) -> PeakCase:
        """Return a minus or a plus lens whose greatest turn stands out."""
        plus = draws.whole(2) == 0
        found = draws.until("a round lens", _plus if plus else _minus, _fits)
        last = found.turns
        middle = _greatest(found) if plus else (last + 1) // 2
        shown = draws.shuffled((1, middle, last, last + 1))
        return PeakCase(
            turns=last,
            radius_mm=found.radius_mm,
            centre_mm=found.centre_mm,
            front_mm=found.front_mm,
            back_mm=found.back_mm,
            shown=shown,
        )

    def kind(self, case: PeakCase) -> ChoiceAnswer:
        """Return four turns."""
        return ChoiceAnswer(
            options=tuple(Option(key=str(turn), words=_turn_words(case, turn)) for turn in case.shown)
        )

    def slips_in(self, case: PeakCase) -> tuple[Slip, ...]:
        """Return the three that lead to a wrong turn."""
        return tuple(slip for slip in self.slips if slip is not (_MIDDLE if case.is_plus else _FIRST))

    def answer(self, case: PeakCase, slips: Set[str] = NONE) -> str:
        """Return the turn with the greatest torque, or the one that a slip leads to."""
        wrong = {
            _FIRST.name: 1,
            _MIDDLE.name: (case.turns + 1) // 2,
            _LAST.name: case.turns,
            _FINISHING.name: case.turns + 1,
        }
        return str(next((wrong[name] for name in slips), _greatest(case)))

    def pairs(self, case: PeakCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: PeakCase) -> tuple[str, ...]:
        """Return the lens, turn by turn."""
        rims = ", ".join(f"{rim:g}" for rim in case.rims_mm)
        thick = ", ".join(f"{case.thickness_mm(rim):.1f}" for rim in case.rims_mm)
        return (
            f"An invented {'plus' if case.is_plus else 'minus'} lens is round and blocked at its middle. It "
            f"is roughed in {case.turns} turns of 2 mm each, and one finishing turn takes the last 0.5 mm.",
            f"After these turns, one after the other, its rim is {rims} mm from the chuck axis.",
            f"There it is {thick} mm thick.",
            "In which of these turns is the cutting torque greatest?",
        )

    def solution(self, case: PeakCase) -> Solution:
        """Return the torque of the turns offered."""
        torques = torques_nmm(case)
        listed = ", ".join(
            f"{torques[turn - 1] / NMM_PER_NM:.2f} in turn {turn}" for turn in sorted(case.shown)
        )
        why = (
            "This lens is thin at the rim of its blank and gets thicker inwards, while rim and arm get "
            "shorter. In between the product is greatest: of a plus lens one has to look."
            if case.is_plus
            else "This lens is thickest at the rim of its blank, and there the arm is longest too: the first "
            "turn asks most, and every later one less."
        )
        return Solution(
            words=(
                "Torque goes with thickness times bite, times the way round the rim, times the arm: for "
                "equal bites with thickness times radius squared. Rubbing adds what goes with thickness and "
                "radius.",
                why,
                f"Worked out with a sharp wheel, in {NEWTON_METRES}: {listed}.",
            )
        )

    def hints(self, case: PeakCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What does the wheel have to push through in each turn, and how far from the axis does it push?",
            "Compare thickness times radius squared for the turns offered. Mind what the last one bites.",
        )


def _turn_words(case: PeakCase, turn: int) -> str:
    return f"turn {turn}, finishing" if turn > case.turns else f"turn {turn}"


def _greatest(case: PeakCase) -> int:
    torques = torques_nmm(case)
    return torques.index(max(torques)) + 1


def _shape(draws: Draws) -> dict:
    return {"turns": 5 + draws.whole(3), "radius_mm": draws.step(20.0, 24.0, 0.5)}


def _minus(draws: Draws) -> PeakCase:
    return PeakCase(
        **_shape(draws),
        centre_mm=draws.step(1.2, 2.0, 0.1),
        front_mm=draws.step(200.0, 400.0, 50.0),
        back_mm=draws.step(80.0, 120.0, 5.0),
    )


def _plus(draws: Draws) -> PeakCase:
    return PeakCase(
        **_shape(draws),
        centre_mm=draws.step(5.0, 8.0, 0.1),
        front_mm=draws.step(70.0, 95.0, 5.0),
        back_mm=draws.step(300.0, 600.0, 50.0),
    )


def _fits(case: PeakCase) -> bool:
    """A rim that is there, and a greatest turn that stands out, of a plus lens not at an end."""
    if not 1.0 <= case.thickness_mm(case.radius_mm + _STOCK_MM + _BITE_MM * case.turns) <= 10.0:
        return False
    torques, turn = torques_nmm(case), _greatest(case)
    offered = {1, case.turns, case.turns + 1} - {turn}
    stands_out = all(torques[turn - 1] > _CLEARLY * torques[other - 1] for other in offered)
    return stands_out and (1 < turn < case.turns if case.is_plus else turn == 1)
