"""A question about spectacle magnification, worked by hand from its two factors."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.magnification import power_factor, shape_factor, spectacle_magnification
from lablib.optics.magnification_workings import spectacle_magnification_workings
from lablib.optics.practice import usual
from lablib.optics.prescription import Prescription
from lablib.optics.terms import distance_term, in_full, power_term
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_BOTH = "both factors"
_SHAPE = Slip(
    name="shape-factor-left-out",
    step=_BOTH,
    words="You left the shape factor out. A bulging front and a thick lens magnify by themselves, before "
    "any power counts.",
)
_POWER = Slip(
    name="power-factor-left-out",
    step=_BOTH,
    words="You left the power factor out. Power and the way to the pupil make the larger part of it.",
)
_TO_CORNEA = Slip(
    name="way-to-the-pupil-left-out",
    step="the distance to the entrance pupil",
    words="You counted to the cornea. The light has to pass the pupil, some millimetres behind it: add that "
    "way to the vertex distance.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MagnifiedCase:
    """A spherical lens before an eye.

    power_d: back vertex power [D]; front_d: front curve [D]; thickness_mm: centre thickness [mm].
    index: of the lens; vertex_mm: vertex distance [mm].
    """

    power_d: float
    front_d: float
    thickness_mm: float
    index: float
    vertex_mm: float

    @property
    def lens(self) -> dict[str, float]:
        """Front curve, thickness and index, as the shape factor takes them."""
        return {
            "front_curve_d": self.front_d,
            "centre_thickness_mm": self.thickness_mm,
            "index": self.index,
        }

    @property
    def whole(self) -> dict[str, object]:
        """All of it, as the magnification takes it."""
        return {
            "rx": Prescription(sphere_d=self.power_d),
            **self.lens,
            "vertex_distance_mm": self.vertex_mm,
            "pupil_depth_mm": usual("pupil_depth"),
        }


class Magnified(Maker[MagnifiedCase]):
    """How much larger or smaller the eye's image is with the lens."""

    name = "spectacle-magnification"
    lesson = "03"
    skill = "spectacle-magnification"
    slips = (_SHAPE, _POWER, _TO_CORNEA)

    def draw(self, draws: Draws) -> MagnifiedCase:
        """Return a plus lens with a bulging front, or a minus lens with a flat one."""
        plus = draws.whole(3) > 0
        power = draws.step(2.0, 6.0, 0.25) if plus else draws.step(-7.0, -3.0, 0.25)
        return MagnifiedCase(
            power_d=power,
            front_d=draws.step(6.0, 9.0, 0.5) if plus else draws.step(3.0, 5.0, 0.5),
            thickness_mm=draws.step(3.0, 6.0, 0.5) if plus else draws.step(2.0, 2.5, 0.5),
            index=draws.one_of((1.5, 1.592)),
            vertex_mm=draws.step(11.0, 15.0, 1.0),
        )

    def kind(self, case: MagnifiedCase) -> NumberAnswer:
        """Return the kind: a factor."""
        return NumberAnswer(unit="", tolerance=0.0015, digits=3)

    def answer(self, case: MagnifiedCase, slips: Set[str] = NONE) -> float:
        """Return the magnification. The way to the pupil is left out by as much less vertex distance."""
        if _POWER.name in slips:
            return shape_factor(**case.lens)
        depth = usual("pupil_depth")
        vertex = case.vertex_mm - (depth if _TO_CORNEA.name in slips else 0.0)
        if _SHAPE.name in slips:
            return power_factor(case.power_d, vertex_distance_mm=vertex, pupil_depth_mm=depth)
        along, _ = spectacle_magnification(**(case.whole | {"vertex_distance_mm": vertex}))
        return along.factor

    def prompt(self, case: MagnifiedCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.power_d:+.2f} D sits {case.vertex_mm:g} mm before the cornea of an invented "
            "wearer.",
            "How many times as large does it make the eye's image, shape and power together? Give the "
            "factor, above 1 for larger and below for smaller, to 0.001.",
        )

    def given(self, case: MagnifiedCase) -> tuple[Term, ...]:
        """Return lens and distances."""
        return (
            power_term("S", case.power_d, "back vertex power, a sphere"),
            power_term("F_1", case.front_d, "front curve"),
            distance_term("t", case.thickness_mm, "centre thickness"),
            in_full("n", case.index, "", least_digits=3, meaning="index"),
            distance_term("d", case.vertex_mm, "vertex distance"),
            distance_term("q", usual("pupil_depth"), "entrance pupil behind the cornea"),
        )

    def solution(self, case: MagnifiedCase) -> Solution:
        """Return both factors and their product."""
        return Solution(
            words=(
                "Two things magnify: the shape, from front curve, thickness and index, and the power at its "
                "distance from the entrance pupil. The two factors are multiplied.",
                "Above 1 the wearer sees things larger, below 1 smaller. Where a person has one strong and "
                "one weak lens, the two images differ in size.",
            ),
            workings=spectacle_magnification_workings(**case.whole)[:-1],
        )

    def hints(self, case: MagnifiedCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "There are two factors, one from the shape of the lens and one from its power.",
            "For the second, how far is it from the back of the lens to the entrance pupil?",
            "Thickness and distance go in as metres, because powers are per metre.",
        )
