"""The speed of the wheel's rim, as a question."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.cutting_workings import PI as BARE_PI
from lablib.optics.terms import distance_term, in_full
from lablib.questions.bench_stack.words import BENCH
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

PI = replace(BARE_PI, meaning="way round a circle for each of its diameter")
_WAY_STEP = "how far the rim goes in one turn"
_TIME_STEP = "how many turns there are in a second"
_UNIT_STEP = "metres and millimetres"
_RADIUS = Slip(
    name="radius-for-diameter",
    step=_WAY_STEP,
    words="You took the radius for the diameter. One turn of the rim is pi times the diameter.",
)
_NO_PI = Slip(
    name="pi-left-out",
    step=_WAY_STEP,
    words="You left pi out. In one turn the rim goes round its whole circle, not once across it.",
)
_MINUTE = Slip(
    name="minutes-for-seconds",
    step=_TIME_STEP,
    words="You left the 60 out: the speed of a wheel is given in turns a minute, and that of its rim is "
    "asked in metres a second.",
)
_MILLIMETRES = Slip(
    name="millimetres-for-metres",
    step=_UNIT_STEP,
    words="You gave millimetres a second. A thousand of them are one metre.",
)


def speed_working(diameter: Term, turns: Term, value: float) -> Working:
    """Return the step from diameter and wheel speed to the speed of the rim.

    diameter: D [mm]; turns: the wheel's speed [rpm]; value: the rim's, from the bench [m/s].
    """
    return Working(
        what="speed of the wheel's rim",
        symbol="v_s",
        formula=f"pi * {diameter.symbol} * {turns.symbol} / 60000",
        terms=(PI, diameter, turns),
        value=value,
        unit="m/s",
        digits=3,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class WheelCase:
    """A wheel: diameter_mm [mm], speed_rpm [rpm]."""

    diameter_mm: float
    speed_rpm: float


class WheelRimSpeed(Maker[WheelCase]):
    """Work out the speed of the wheel's rim."""

    name = "wheel-rim-speed"
    lesson = "11"
    skill = "wheel-speed"
    slips = (_RADIUS, _NO_PI, _MINUTE, _MILLIMETRES)

    def draw(self, draws: Draws) -> WheelCase:
        """Return a wheel."""
        return WheelCase(diameter_mm=draws.step(70.0, 140.0, 5.0), speed_rpm=draws.step(2200.0, 5600.0, 50.0))

    def kind(self, case: WheelCase) -> NumberAnswer:
        """Return a speed to 0.1 m/s."""
        return NumberAnswer(unit="m/s", tolerance=0.1, digits=1)

    def answer(self, case: WheelCase, slips: Set[str] = NONE) -> float:
        """Return the speed of the rim; a slip leaves one factor out, or halves it."""
        bench = replace(BENCH, wheel_diameter_mm=case.diameter_mm, wheel_speed_rpm=case.speed_rpm)
        left_out = {
            _RADIUS.name: 0.5,
            _NO_PI.name: 1.0 / PI.value,
            _MINUTE.name: 60.0,
            _MILLIMETRES.name: 1000.0,
        }
        speed = bench.surface_speed_m_per_s
        for name, factor in left_out.items():
            speed *= factor if name in slips else 1.0
        return speed

    def prompt(self, case: WheelCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "The roughing wheel of an invented machine has the diameter and the speed that are given.",
            "How fast does its rim run? Give it in m/s, to 0.1 m/s.",
        )

    def given(self, case: WheelCase) -> tuple[Term, ...]:
        """Return diameter and speed."""
        return (
            distance_term("D", case.diameter_mm, "diameter of the wheel"),
            in_full("n", case.speed_rpm, "rpm", least_digits=0, meaning="speed of the wheel"),
        )

    def solution(self, case: WheelCase) -> Solution:
        """Return the speed in one step."""
        return Solution(
            words=(
                "In one turn the rim goes pi times its diameter. There are n / 60 turns in a second, and a "
                "thousand millimetres in a metre: together 60000.",
            ),
            workings=(speed_working(*self.given(case), self.answer(case)),),
        )

    def hints(self, case: WheelCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How far does a point of the rim go while the wheel turns once?",
            "How often does that happen in one second, and how many metres are that?",
        )
