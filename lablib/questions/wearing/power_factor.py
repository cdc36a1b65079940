"""A question about the power factor of spectacle magnification where the lens is worn."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.magnification import power_factor
from lablib.optics.magnification_workings import spectacle_magnification_workings
from lablib.optics.practice import usual
from lablib.optics.prescription import Prescription
from lablib.optics.terms import distance_term, power_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class FactorCase:
    """A lens that was tested at one distance and is worn at another.

    power_d: back vertex power as worn [D]; tested_mm, worn_mm: vertex distances [mm].
    """

    power_d: float
    tested_mm: float
    worn_mm: float


class PowerFactorWorn(Maker[FactorCase]):
    """The power factor, with the way to the entrance pupil."""

    name = "power-factor-worn"
    lesson = "09"
    skill = "power-factor"
    slips = (
        Slip(
            name="way-to-the-pupil-left-out",
            step="the distance to the entrance pupil",
            words="You counted to the cornea. The light has to pass the pupil, some millimetres behind it: "
            "add that way to the vertex distance.",
        ),
        Slip(
            name="tested-distance",
            step="which vertex distance counts",
            words="You took the distance at which the eye was tested. What the wearer sees hangs on where "
            "the lens is worn.",
        ),
        Slip(
            name="turned-over",
            step="the factor from distance and power",
            words="You gave 1 - a F. The factor is 1 over that: a plus lens magnifies, a minus lens makes "
            "smaller.",
        ),
    )

    def draw(self, draws: Draws) -> FactorCase:
        """Return a lens of some power, worn farther from the eye or nearer than tested."""
        tested = draws.step(11.0, 13.0, 1.0)
        return FactorCase(
            power_d=draws.step(4.0, 9.0, 0.25) * draws.one_of((-1.0, 1.0)),
            tested_mm=tested,
            worn_mm=tested + draws.one_of((-2.0, 2.0, 4.0, 5.0)),
        )

    def kind(self, case: FactorCase) -> NumberAnswer:
        """Return the kind: a factor."""
        return NumberAnswer(unit="", tolerance=0.0015, digits=3)

    def answer(self, case: FactorCase, slips: Set[str] = NONE) -> float:
        """Return the factor. The way to the pupil is left out by as much less vertex distance."""
        depth = usual("pupil_depth")
        vertex = case.tested_mm if "tested-distance" in slips else case.worn_mm
        vertex -= depth if "way-to-the-pupil-left-out" in slips else 0.0
        factor = power_factor(case.power_d, vertex_distance_mm=vertex, pupil_depth_mm=depth)
        return 1.0 / factor if "turned-over" in slips else factor

    def prompt(self, case: FactorCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.power_d:+.2f} D is worn {case.worn_mm:g} mm before the cornea of an invented "
            f"wearer. The eyes were tested at {case.tested_mm:g} mm, and the power was changed for that "
            "already.",
            "What is its power factor, the share of the magnification that comes from power and distance? "
            "Give it to 0.001.",
        )

    def given(self, case: FactorCase) -> tuple[Term, ...]:
        """Return power and distances."""
        return (
            power_term("S", case.power_d, "back vertex power as worn, a sphere"),
            distance_term("d_t", case.tested_mm, "vertex distance at the test"),
            distance_term("d", case.worn_mm, "vertex distance as worn"),
            distance_term("q", usual("pupil_depth"), "entrance pupil behind the cornea"),
        )

    def solution(self, case: FactorCase) -> Solution:
        """Return the way to the pupil and the factor."""
        return Solution(
            words=(
                "Power magnifies over the distance to the entrance pupil, which is the vertex distance and "
                "the way from the cornea on to the pupil.",
                "The farther away a lens sits, the more it does: a plus lens makes things larger, a minus "
                "lens smaller. Where one eye's lens is much stronger than the other's, that is felt.",
            ),
            workings=_workings(case),
        )

    def hints(self, case: FactorCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How far is it from the back of the lens to the entrance pupil?",
            "The factor is 1 / (1 - a F), with the distance in metres.",
        )


def _workings(case: FactorCase) -> tuple[Working, ...]:
    """The way to the pupil and the power factor; a flat front leaves the shape out."""
    steps = spectacle_magnification_workings(
        Prescription(sphere_d=case.power_d),
        front_curve_d=0.0,
        centre_thickness_mm=1.0,
        index=1.5,
        vertex_distance_mm=case.worn_mm,
        pupil_depth_mm=usual("pupil_depth"),
    )
    return tuple(step for step in steps if step.symbol in ("a", "M_power"))
