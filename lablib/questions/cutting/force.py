"""The force of the wheel, as a question: chips, rubbing, and the condition of the wheel."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.bench.cutting import tangential_force_n
from lablib.bench.machine import Bench, lens_material, material_names
from lablib.optics.material import material
from lablib.optics.terms import distance_term, in_full
from lablib.questions.bench_stack.words import BENCH
from lablib.questions.cutting.wheel import speed_working
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

SOURCE = "power balance, S. Malkin and C. Guo, Grinding Technology; rubbing added"
PLASTICS = tuple(name for name in material_names() if lens_material(name).wheel_kind == "plastics")
_STATES = {"sharp": "a sharp", "used": "a used", "loaded": "a loaded", "glazed": "a glazed"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ForceCase:
    """A place under the wheel.

    material: name; removal_mm3_per_s: Q [mm3/s]; thickness_mm: w [mm]; wheel: its condition.
    diameter_mm, speed_rpm: of the wheel [mm, rpm]; before_rpm: its speed before a change [rpm].
    """

    material: str
    removal_mm3_per_s: float
    thickness_mm: float
    wheel: str = "sharp"
    diameter_mm: float = 100.0
    speed_rpm: float = 3000.0
    before_rpm: float = 3000.0

    def bench(self, speed_rpm: float) -> Bench:
        """Return the machine at a wheel speed.

        speed_rpm: [rpm].
        """
        return replace(BENCH, wheel_diameter_mm=self.diameter_mm, wheel_speed_rpm=speed_rpm)


def named(material_name: str) -> str:
    """Return a material as a sentence has it.

    material_name: in the tables.
    """
    return material(material_name).words


def force_n(
    case: ForceCase, *, factor: float, removal: float, thickness: float, speed_rpm: float | None = None
) -> float:
    """Return the tangential force of a case with some of its figures changed [N].

    factor: of the wheel; removal: [mm3/s]; thickness: [mm].
    speed_rpm: of the wheel, None for the case's [rpm].
    """
    bench = case.bench(case.speed_rpm if speed_rpm is None else speed_rpm)
    cuts = lens_material(case.material)
    return float(tangential_force_n(removal, thickness, factor, material=cuts, bench=bench))


def common_terms(case: ForceCase) -> tuple[Term, ...]:
    """Return what is given in both questions.

    case: the place under the wheel.
    """
    energy = lens_material(case.material).specific_energy_j_per_mm3
    return (
        in_full("u", energy, "J/mm3", meaning="specific cutting energy of the material"),
        in_full("Q", case.removal_mm3_per_s, "mm3/s", least_digits=0, meaning="removal rate"),
        distance_term("w", case.thickness_mm, "thickness of the edge there"),
        in_full("f", BENCH.rubbing_n_per_mm, "N/mm", meaning="rubbing force per thickness"),
    )


_CHIPS_STEP = "the force that makes chips"
RUB_STEP = "the force that rubs"
_WHEEL_STEP = "the condition of the wheel"
NO_RUB = Slip(
    name="rubbing-left-out",
    step=RUB_STEP,
    words="You left the rubbing out. Grains that make no chips drag along the edge too, the more the thicker "
    "it is.",
)
_NO_FACTOR = Slip(
    name="wheel-factor-left-out",
    step=_WHEEL_STEP,
    words="You took the wheel as sharp. A wheel that is used, loaded or glazed pushes harder for the same "
    "chips.",
)
_CHIPS_ONLY = Slip(
    name="factor-on-chips-alone",
    step=_WHEEL_STEP,
    words="You multiplied the chips alone by the wheel's factor. A dull wheel rubs harder too: the factor is "
    "on the whole force.",
)
_RADIUS = Slip(
    name="radius-for-diameter",
    step=_CHIPS_STEP,
    words="You took the radius of the wheel for its diameter, and so half of its rim speed.",
)


class CuttingForce(Maker[ForceCase]):
    """Work out the tangential force at one place."""

    name = "cutting-force"
    lesson = "11"
    skill = "cutting-force"
    slips = (NO_RUB, _NO_FACTOR, _CHIPS_ONLY, _RADIUS)

    def draw(self, draws: Draws) -> ForceCase:
        """Return a place in a plastic lens, at a force the motor gives."""
        return ForceCase(
            material=draws.one_of(PLASTICS),
            removal_mm3_per_s=draws.step(100.0, 320.0, 10.0),
            thickness_mm=draws.step(2.5, 8.0, 0.1),
            wheel=draws.one_of(tuple(_STATES)),
            diameter_mm=draws.step(80.0, 120.0, 5.0),
            speed_rpm=draws.step(2500.0, 4000.0, 250.0),
        )

    def kind(self, case: ForceCase) -> NumberAnswer:
        """Return a force to 0.01 N."""
        return NumberAnswer(unit="N", tolerance=0.03, digits=2)

    def slips_in(self, case: ForceCase) -> tuple[Slip, ...]:
        """Return all slips; with a sharp wheel its factor is 1."""
        of_the_wheel = (_NO_FACTOR, _CHIPS_ONLY)
        return tuple(slip for slip in self.slips if case.wheel != "sharp" or slip not in of_the_wheel)

    def answer(self, case: ForceCase, slips: Set[str] = NONE) -> float:
        """Return the force; on chips alone, rubbing is added with a sharp wheel."""
        factor = 1.0 if _NO_FACTOR.name in slips else BENCH.wheels[case.wheel]
        removal = case.removal_mm3_per_s * (2.0 if _RADIUS.name in slips else 1.0)
        chips = force_n(case, factor=factor, removal=removal, thickness=0.0)
        if NO_RUB.name in slips:
            return chips
        if _CHIPS_ONLY.name in slips:
            return chips + force_n(case, factor=1.0, removal=0.0, thickness=case.thickness_mm)
        return force_n(case, factor=factor, removal=removal, thickness=case.thickness_mm)

    def prompt(self, case: ForceCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"At one place of an invented lens of {named(case.material)}, {_STATES[case.wheel]} wheel takes "
            "off what is given. With the speed v_s of the wheel's rim, the mean tangential force is F_t = k "
            "(u Q / v_s + f w).",
            "What is F_t? Give it in N, to 0.01 N.",
        )

    def given(self, case: ForceCase) -> tuple[Term, ...]:
        """Return what the formula takes."""
        return (
            in_full("k", BENCH.wheels[case.wheel], "", least_digits=1, meaning="factor of the wheel"),
            *common_terms(case),
            distance_term("D", case.diameter_mm, "diameter of the wheel"),
            in_full("n", case.speed_rpm, "rpm", least_digits=0, meaning="speed of the wheel"),
        )

    def solution(self, case: ForceCase) -> Solution:
        """Return the speed of the wheel's rim, and the force."""
        given = {term.symbol: term for term in self.given(case)}
        speed = speed_working(given["D"], given["n"], case.bench(case.speed_rpm).surface_speed_m_per_s)
        force = Working(
            what="mean tangential force",
            symbol="F_t",
            formula="k * (u * Q / v_s + f * w)",
            terms=(*(given[name] for name in "kuQ"), speed.as_term(), *(given[name] for name in "fw")),
            value=self.answer(case),
            unit="N",
            source=SOURCE,
        )
        return Solution(
            words=(
                "Chips cost power, u times Q; power over speed is force. Rubbing comes on top, and it stays "
                "when the bite gets smaller. The wheel's condition multiplies all of it.",
            ),
            workings=(speed, force),
        )

    def hints(self, case: ForceCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "The wheel does two things to the edge. What does each of them take?",
            "Work out the bracket first: J/s over m/s is N, and N/mm times mm is N.",
        )
