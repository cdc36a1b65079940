"""What a lens leaves over whose cylinder has turned, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.inspection.axis import axis_limit_deg, standard_name
from lablib.optics.prescription import Prescription, residual_when_turned
from lablib.questions.answers.units import DIOPTRE
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_STEP = "from the turn to what is left over"
_SHARE = Slip(
    name="turn-as-a-share-of-90",
    step=_STEP,
    words="You took the turn as a share of 90 degrees. The loss does not grow evenly: the first degrees cost "
    "the most.",
)
_SINGLE = Slip(
    name="not-doubled",
    step=_STEP,
    words="You took the cylinder times the sine of the turn. The turned cylinder is too much on one side and "
    "too little on the other: twice that is left over.",
)
_WHOLE = Slip(
    name="whole-cylinder-lost",
    step=_STEP,
    words="You took the cylinder as lost altogether. That is so only at a turn of 30 degrees; a smaller turn "
    "leaves less over, a greater one more.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOverCase:
    """A lens whose axis turned.

    order: as ordered; turn_deg: how far it turned [degrees].
    """

    order: Prescription
    turn_deg: float


class CylinderLeftOver(Maker[LeftOverCase]):
    """Work the cylinder that a turned lens leaves over."""

    name = "cylinder-left-over"
    lesson = "12"
    skill = "what-a-turn-does"
    slips = (_SHARE, _SINGLE, _WHOLE)

    def draw(self, draws: Draws) -> LeftOverCase:
        """Return a minus lens with a cylinder, and a turn."""
        order = Prescription(
            sphere_d=-draws.step(1.0, 7.0, 0.25),
            cylinder_d=-draws.step(0.75, 3.0, 0.25),
            axis_deg=draws.step(5.0, 180.0, 5.0),
        )
        return LeftOverCase(order=order, turn_deg=draws.step(4.0, 24.0, 1.0))

    def kind(self, case: LeftOverCase) -> AnswerKind:
        """Return dioptres to two decimals."""
        return NumberAnswer(unit="D", tolerance=0.01, digits=2, also=DIOPTRE)

    def answer(self, case: LeftOverCase, slips: Set[str] = NONE) -> object:
        """Return the size of the cylinder left over, or what is taken for it."""
        left = abs(residual_when_turned(case.order, case.turn_deg).cylinder_d)
        ordered = abs(case.order.cylinder_d)
        if _SHARE.name in slips:
            return ordered * case.turn_deg / 90.0
        if _SINGLE.name in slips:
            return left / 2.0
        return ordered if _WHOLE.name in slips else left

    def prompt(self, case: LeftOverCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"A lens was ordered as {case.order}. It turned on its block, and the outline came out true: in "
            f"the frame its axis is {case.turn_deg:g} degrees off. The eye still needs what was ordered.",
            "How large is the cylinder that is left over, between what the eye needs and what the lens "
            "gives? Give its size without a sign, to 0.01 D.",
        )

    def given(self, case: LeftOverCase) -> tuple[Term, ...]:
        """Return the cylinder's size and the turn."""
        return (
            Term(symbol="C", value=abs(case.order.cylinder_d), meaning="size of the cylinder in dioptres"),
            Term(
                symbol="turn",
                value=case.turn_deg,
                unit="degrees",
                digits=0,
                meaning="how far the axis is off",
            ),
        )

    def solution(self, case: LeftOverCase) -> Solution:
        """Return the crossed cylinder of the turn, and what the tolerance says."""
        left = Working(
            what="size of the cylinder left over",
            symbol="C_left",
            formula="2 * C * sin(turn)",
            terms=self.given(case),
            value=self.answer(case),
            unit="D",
            source="IACLE Contact Lens Course Module 3, Appendix B, p. 127",
        )
        limit = axis_limit_deg(case.order.cylinder_d)
        return Solution(
            words=(
                "The cylinder that is needed and the one that is there cross at the angle of the turn. "
                "Together they make a crossed cylinder of twice the cylinder times the sine of the turn.",
                f"By {standard_name()} an axis of this cylinder may be {limit:g} degrees off, and the aim "
                "is none.",
            ),
            workings=(left,),
        )

    def hints(self, case: LeftOverCase) -> tuple[str, ...]:
        """Return two cases that can be told without reckoning."""
        return (
            "Think of the ends first. With no turn nothing is left over; with a turn of 90 degrees, twice "
            "the cylinder.",
            "Between the two it goes with a sine.",
        )
