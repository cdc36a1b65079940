"""A question about the power of a toric lens along a meridian."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.power_workings import power_in_meridian_working
from lablib.optics.prescription import Prescription
from lablib.optics.terms import axis_term, direction_term, sphere_and_cylinder
from lablib.questions.answers.units import DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.marker import way_round
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_SHARE = "the share of the cylinder"
_COSINE = Slip(
    name="cosine-for-sine",
    step=_SHARE,
    words="You took the cosine for the sine. Along its axis a cylinder has no power, so its share starts "
    "from nothing there, as a sine does.",
)
_STRAIGHT = Slip(
    name="straight-line-share",
    step=_SHARE,
    words="You shared the cylinder out in a straight line, angle over 90. It goes with the square of the "
    "sine: slowly near the axis, fast in the middle.",
)
_WHOLE = Slip(
    name="whole-cylinder",
    step=_SHARE,
    words="You added the whole cylinder. It counts in full only at right angles to its axis.",
)
_RIGHT_ANGLE_DEG, _HALF_TURN_DEG = 90.0, 180.0
# Off the middle, where sine, cosine and a straight line coincide.
_TURNS_DEG = (15.0, 20.0, 25.0, 30.0, 60.0, 65.0, 70.0, 75.0)
# A power so small that its sign hardly matters is not asked for.
_LEAST_D = 0.25


@dataclass(frozen=True, slots=True, kw_only=True)
class MeridianCase:
    """A toric lens and a meridian of it.

    rx: the lens; meridian_deg: the meridian [degrees].
    """

    rx: Prescription
    meridian_deg: float

    @property
    def turn_deg(self) -> float:
        """The angle between axis and meridian, the short way [degrees]."""
        return way_round(self.meridian_deg, self.rx.axis_deg, whole=_HALF_TURN_DEG)


class PowerInMeridian(Maker[MeridianCase]):
    """The power of a toric lens along a meridian that is not one of its own."""

    name = "power-in-meridian"
    lesson = "03"
    skill = "power-in-a-meridian"
    slips = (_COSINE, _STRAIGHT, _WHOLE)

    def draw(self, draws: Draws) -> MeridianCase:
        """Return a lens whose axis lies well off the meridian, and whose power there has a clear sign."""
        return draws.until("a lens and a meridian", _draw_case, _is_clear)

    def kind(self, case: MeridianCase) -> NumberAnswer:
        """Return the kind: a signed power."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.06, digits=2, signed=True)

    def answer(self, case: MeridianCase, slips: Set[str] = NONE) -> float:
        """Return the power. The cosine is the sine a right angle further on."""
        rx = case.rx
        if _STRAIGHT.name in slips:
            return rx.sphere_d + rx.cylinder_d * case.turn_deg / _RIGHT_ANGLE_DEG
        if _WHOLE.name in slips:
            return rx.power_in_meridian_d(rx.axis_deg + _RIGHT_ANGLE_DEG)
        if _COSINE.name in slips:
            return rx.power_in_meridian_d(case.meridian_deg + _RIGHT_ANGLE_DEG)
        return rx.power_in_meridian_d(case.meridian_deg)

    def prompt(self, case: MeridianCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented lens: {case.rx}.",
            f"What is its power along the meridian {case.meridian_deg:g}? Answer in D with its sign, to "
            "0.01 D.",
        )

    def given(self, case: MeridianCase) -> tuple[Term, ...]:
        """Return the parts of the lens and the meridian."""
        meridian = direction_term("m", case.meridian_deg, "meridian")
        return (*sphere_and_cylinder(case.rx), axis_term(case.rx), meridian)

    def solution(self, case: MeridianCase) -> Solution:
        """Return the one step, and the range it must lie in."""
        low, high = sorted((case.rx.sphere_d, case.rx.sphere_d + case.rx.cylinder_d))
        return Solution(
            words=(
                "Along its axis a cylinder does nothing; at right angles to it, all it has. Between them its "
                "share is the square of the sine of the angle from the axis.",
                f"Check: the power must lie between {low:+.2f} and {high:+.2f} D. From the axis to this "
                f"meridian it is {case.turn_deg:g} degrees, so it lies nearer to "
                f"{'sphere and cylinder together' if case.turn_deg > 45.0 else 'the sphere'}.",
            ),
            workings=(power_in_meridian_working(case.rx, case.meridian_deg),),
        )

    def hints(self, case: MeridianCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How many degrees lie between the axis and the meridian?",
            "What is the power along the axis, and what across it? The answer lies between the two.",
            "The share of the cylinder is the square of the sine of the angle.",
        )


def _draw_case(draws: Draws) -> MeridianCase:
    sphere, cylinder = draws.step(-6.0, 6.0, 0.25), draws.step(1.5, 4.0, 0.25)
    rx = Prescription(
        sphere_d=sphere,
        cylinder_d=cylinder * draws.one_of((-1.0, -1.0, 1.0)),
        axis_deg=draws.step(5.0, 175.0, 5.0),
    )
    return MeridianCase(rx=rx, meridian_deg=draws.one_of((180.0, 180.0, 90.0, 60.0, 120.0)))


def _is_clear(case: MeridianCase) -> bool:
    power = round(abs(case.rx.power_in_meridian_d(case.meridian_deg)), 4)
    return case.rx.sphere_d != 0.0 and power > _LEAST_D and case.turn_deg in _TURNS_DEG
