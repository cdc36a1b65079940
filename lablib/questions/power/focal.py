"""A question about the focal length of a power."""

from collections.abc import Set

from lablib.optics.terms import power_term
from lablib.optics.vergence import focal_length_mm
from lablib.optics.vergence_workings import focal_length_working
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_METRES = Slip(
    name="metres-for-centimetres",
    step="the unit of the length",
    words="You gave metres and called them centimetres. 1 / F is in metres; one metre is 100 cm.",
)
_NOT_TURNED = Slip(
    name="power-for-its-reciprocal",
    step="turning a power into a length",
    words="You gave the power itself as a length. The focal length is one over the power: the stronger the "
    "lens, the shorter it is.",
)
_SIGN_LOST = Slip(
    name="minus-focus-put-behind",
    step="the sign of the length",
    words="You gave a minus lens a plus focal length. It does not bring light together: its focus lies in "
    "front of it, and its length is minus.",
)
_CM_PER_M, _MM_PER_CM = 100.0, 10.0


class FocalLength(Maker[float]):
    """The focal length of a lens, in centimetres; the case is its power [D]."""

    name = "focal-length"
    lesson = "03"
    skill = "focal-length"
    slips = (_METRES, _NOT_TURNED, _SIGN_LOST)

    def draw(self, draws: Draws) -> float:
        """Return a power whose focus lies between a hand's breadth and a metre away."""
        return draws.step(1.0, 12.0, 0.25) * draws.one_of((-1.0, 1.0))

    def kind(self, case: float) -> NumberAnswer:
        """Return the kind: a length with its sign."""
        return NumberAnswer(unit="cm", tolerance=0.1, digits=1, signed=True)

    def answer(self, case: float, slips: Set[str] = NONE) -> float:
        """Return the focal length. Who does not turn the power over keeps its number."""
        length = case if _NOT_TURNED.name in slips else focal_length_mm(case) / _MM_PER_CM
        if _METRES.name in slips:
            length /= _CM_PER_M
        return abs(length) if _SIGN_LOST.name in slips else length

    def slips_in(self, case: float) -> tuple[Slip, ...]:
        """Return all slips, for a plus lens without the one about its sign."""
        return self.slips if case < 0.0 else self.slips[:-1]

    def prompt(self, case: float) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented lens has a power of {case:+.2f} D. Light from far off falls on it.",
            "How long is its focal length? Answer in cm with its sign, plus where the focus lies behind the "
            "lens and minus where it lies in front, to 0.1 cm.",
        )

    def given(self, case: float) -> tuple[Term, ...]:
        """Return the power."""
        return (power_term("F", case, "power"),)

    def solution(self, case: float) -> Solution:
        """Return the one division."""
        return Solution(
            words=(
                "A dioptre is one over a metre. So the focal length in metres is 1 / F, and in centimetres "
                "100 / F. It keeps the sign of the power.",
                "Check the size: 1 D has 100 cm, and twice the power has half the length.",
            ),
            workings=(focal_length_working(case),),
        )

    def hints(self, case: float) -> tuple[str, ...]:
        """Return hints."""
        return (
            "A lens of 1 D has a focal length of one metre. Is this lens stronger or weaker than that?",
            "Divide 100 by the power to get centimetres, and keep the sign.",
        )
