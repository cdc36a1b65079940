"""A question about an addition read on the focimeter: which side of the lens lies on the stop."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.addition_reading import addition_read_d
from lablib.optics.terms import power_step
from lablib.optics.thick_lens import back_vertex_power_d, front_vertex_power_d
from lablib.questions.answers.units import DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_INDICES = (1.5, 1.523, 1.592)


@dataclass(frozen=True, slots=True, kw_only=True)
class SideCase:
    """A strong plus bifocal with its segment on the front.

    front_d, back_d: surface powers of the distance part [D].
    thickness_mm: [mm]; index: of the lens; addition_d: of its segment [D].
    """

    front_d: float
    back_d: float
    thickness_mm: float
    index: float
    addition_d: float

    @property
    def lens(self) -> dict[str, float]:
        """The distance part, as the optics take it."""
        return {
            "front_d": self.front_d,
            "back_d": self.back_d,
            "thickness_mm": self.thickness_mm,
            "index": self.index,
        }

    @property
    def readings(self) -> tuple[Term, Term, Term, Term]:
        """What the focimeter shows, front on the stop and then back: near and distance part."""
        near = self.lens | {"front_d": self.front_d + self.addition_d}
        return tuple(
            Term(symbol=symbol, value=round(power(**part), 2), unit="D", digits=2, meaning=meaning)
            for symbol, power, part, meaning in (
                ("V_fn", front_vertex_power_d, near, "front on the stop, through the segment"),
                ("V_ff", front_vertex_power_d, self.lens, "front on the stop, through the distance part"),
                ("V_bn", back_vertex_power_d, near, "back on the stop, through the segment"),
                ("V_bf", back_vertex_power_d, self.lens, "back on the stop, through the distance part"),
            )
        )


class AdditionSide(Maker[SideCase]):
    """The addition of a strong plus bifocal, from four readings."""

    name = "addition-side"
    lesson = "08"
    skill = "addition-on-the-focimeter"
    slips = (
        Slip(
            name="read-from-the-back",
            step="which side lies on the stop for the addition",
            words="You took the readings with the back on the stop. The segment is on the front, and through "
            "a thick plus lens the addition then seems too strong.",
        ),
        Slip(
            name="sides-mixed",
            step="which side lies on the stop for the addition",
            words="You took the near part from the front and the distance part from the back. Both readings "
            "of an addition are taken with the same side on the stop.",
        ),
        Slip(
            name="near-reading-for-addition",
            step="what an addition is",
            words="You gave the power through the segment. The addition is what it has more than the "
            "distance part.",
        ),
    )

    def draw(self, draws: Draws) -> SideCase:
        """Return a lens so strong that the side on the stop matters."""
        return SideCase(
            front_d=draws.step(9.0, 13.0, 0.5),
            back_d=-draws.step(2.0, 5.0, 0.5),
            thickness_mm=draws.step(6.0, 9.0, 0.5),
            index=draws.one_of(_INDICES),
            addition_d=draws.step(1.5, 3.0, 0.25),
        )

    def kind(self, case: SideCase) -> NumberAnswer:
        """Return the kind: a power, read to a few hundredths."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.03, digits=2, signed=True)

    def answer(self, case: SideCase, slips: Set[str] = NONE) -> float:
        """Return the addition; the wrong ones are differences of other readings, or none."""
        front_near, _, back_near, back_far = (reading.value for reading in case.readings)
        if "near-reading-for-addition" in slips:
            return back_near if "read-from-the-back" in slips else front_near
        if "read-from-the-back" in slips:
            return back_near - back_far
        if "sides-mixed" in slips:
            return front_near - back_far
        return addition_read_d(case.addition_d, **case.lens)

    def prompt(self, case: SideCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            "An invented bifocal, strong plus, its segment on the front surface. Somebody has read it four "
            "times on the focimeter.",
            "What is its addition? Answer in D with its sign, to 0.01 D.",
        )

    def given(self, case: SideCase) -> tuple[Term, ...]:
        """Return the four readings."""
        return case.readings

    def solution(self, case: SideCase) -> Solution:
        """Return the difference of the front readings, and what the others would have shown."""
        near, far, *_ = case.readings
        from_back = self.answer(case, {"read-from-the-back"})
        return Solution(
            words=(
                "An addition is read with that side on the stop which carries it: here the front. The back "
                "surface then adds the same to both readings and drops out.",
                "From the back the front surface counts after the light has crossed the lens, and the "
                f"stronger part gains more: {from_back:+.2f} D would be read.",
            ),
            workings=(
                power_step(
                    "addition, front on the stop",
                    "Add",
                    "V_fn - V_ff",
                    (near, far),
                    self.answer(case),
                    source="common practice",
                ),
            ),
        )

    def hints(self, case: SideCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "On which surface does this lens carry its addition?",
            "Which two readings were taken with that surface on the stop?",
        )
