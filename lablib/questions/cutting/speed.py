"""Another wheel speed, as a question: the same chips from a slower rim take more force."""

from collections.abc import Set

from lablib.optics.terms import distance_term, in_full
from lablib.questions.cutting.force import (
    NO_RUB,
    PLASTICS,
    RUB_STEP,
    SOURCE,
    ForceCase,
    common_terms,
    force_n,
    named,
)
from lablib.questions.cutting.wheel import speed_working
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_SPEED_STEP = "what another wheel speed does to the chips"
_GENTLER = Slip(
    name="slower-taken-as-gentler",
    step=_SPEED_STEP,
    words="You let the force of the chips change with the speed. It goes the other way: the same chips take "
    "the same power, and power over a lower speed is more force.",
)
_SAME = Slip(
    name="speed-taken-as-nothing",
    step=_SPEED_STEP,
    words="You gave the force before the change. The chips take the same power, but at another speed that is "
    "another force.",
)
_ALL = Slip(
    name="rubbing-scaled-too",
    step=RUB_STEP,
    words="You changed rubbing with the chips. Rubbing goes with the thickness of the edge alone.",
)
_CHANGES = ((4000.0, 2000.0), (6000.0, 3000.0), (5000.0, 2500.0), (3000.0, 2000.0), (2000.0, 4000.0))


class HalfWheelSpeed(Maker[ForceCase]):
    """Say what another wheel speed makes of the force."""

    name = "half-wheel-speed"
    lesson = "11"
    skill = "cutting-force"
    slips = (_GENTLER, _SAME, _ALL, NO_RUB)

    def draw(self, draws: Draws) -> ForceCase:
        """Return a place, and a wheel that is slowed or made faster."""
        before, after = draws.one_of(_CHANGES)
        return ForceCase(
            material=draws.one_of(PLASTICS),
            removal_mm3_per_s=draws.step(80.0, 240.0, 10.0),
            thickness_mm=draws.step(2.5, 8.0, 0.1),
            diameter_mm=draws.step(70.0, 120.0, 5.0),
            speed_rpm=after,
            before_rpm=before,
        )

    def kind(self, case: ForceCase) -> NumberAnswer:
        """Return a force to 0.1 N."""
        return NumberAnswer(unit="N", tolerance=0.1, digits=1)

    def answer(self, case: ForceCase, slips: Set[str] = NONE) -> float:
        """Return the force at the new speed, or at a speed that a slip puts in its place."""
        share = case.speed_rpm / case.before_rpm
        removal, speed = case.removal_mm3_per_s, case.speed_rpm
        if _GENTLER.name in slips:
            removal, speed = removal * share, case.before_rpm
        if _SAME.name in slips:
            removal, speed = case.removal_mm3_per_s, case.before_rpm
        if NO_RUB.name in slips:
            return force_n(case, factor=1.0, removal=removal, thickness=0.0, speed_rpm=speed)
        thickness = case.thickness_mm
        if _ALL.name in slips:
            # The whole force scaled as the chips are.
            was = force_n(
                case,
                factor=1.0,
                removal=case.removal_mm3_per_s,
                thickness=thickness,
                speed_rpm=case.before_rpm,
            )
            scaled = {_GENTLER.name: share, _SAME.name: 1.0}
            return was * next((scaled[name] for name in scaled if name in slips), 1.0 / share)
        return force_n(case, factor=1.0, removal=removal, thickness=thickness, speed_rpm=speed)

    def prompt(self, case: ForceCase) -> tuple[str, ...]:
        """Return what is asked."""
        changed = "slowed down" if case.speed_rpm < case.before_rpm else "made faster"
        return (
            f"An invented lens of {named(case.material)} is cut on a sharp wheel. The wheel is {changed} "
            "from n_1 to n_2; bite and lens speed stay, so that just as much comes off in a second. The mean "
            "tangential force is F_t = u Q / v_s + f w, with the speed v_s of the wheel's rim.",
            "What is F_t at n_2? Give it in N, to 0.1 N.",
        )

    def given(self, case: ForceCase) -> tuple[Term, ...]:
        """Return the place, the wheel and both speeds."""
        return (
            *common_terms(case),
            distance_term("D", case.diameter_mm, "diameter of the wheel"),
            in_full("n_1", case.before_rpm, "rpm", least_digits=0, meaning="wheel speed before"),
            in_full("n_2", case.speed_rpm, "rpm", least_digits=0, meaning="wheel speed after"),
        )

    def solution(self, case: ForceCase) -> Solution:
        """Return the new rim speed, and the force."""
        given = {term.symbol: term for term in self.given(case)}
        speed = speed_working(given["D"], given["n_2"], case.bench(case.speed_rpm).surface_speed_m_per_s)
        force = Working(
            what="mean tangential force at the new speed",
            symbol="F_t",
            formula="u * Q / v_s + f * w",
            terms=(*(given[name] for name in "uQ"), speed.as_term(), *(given[name] for name in "fw")),
            value=self.answer(case),
            unit="N",
            source=SOURCE,
        )
        return Solution(
            words=(
                "The same chips in a second take the same power, whatever the wheel's speed. Power is force "
                "times speed: a slower rim pushes harder, a faster one less. Rubbing does not change.",
                "A slower wheel is not gentler. A slower lens is, because then less comes off in a second.",
            ),
            workings=(speed, force),
        )

    def hints(self, case: ForceCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which of the two parts of the force knows anything of the wheel's speed?",
            "Work out v_s at the new speed, from the diameter and the turns in a second.",
        )
