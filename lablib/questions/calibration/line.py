"""Friction and shear strength from readings that lie on one line, as questions."""

from abc import abstractmethod
from collections.abc import Set

from lablib.bench.contact import Annulus, r_eff_mm
from lablib.bench.grip_fit_workings import (
    ReadingsOnALine,
    across_term,
    friction_workings,
    reading_terms,
    shear_workings,
)
from lablib.bench.grip_line import friction_through_zero
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_LEVER, _AREA = "the lever of the block", "the block's W"
_ORIGIN = Slip(
    name="through-the-origin",
    step="where the line meets the torque axis",
    words="You laid the line through the origin. With no force at all the pad still sticks, and what sticks "
    "was counted as friction.",
)
_LEVER_DIAMETER = Slip(
    name="diameter-for-radius",
    step=_LEVER,
    words="You took the diameter of the block for its radius. The lever counts from the axis.",
)
_RIM = Slip(
    name="rim-for-mean-lever",
    step=_LEVER,
    words="You let all the friction act at the rim. It acts over the whole face, on a mean lever of two "
    "thirds of the radius.",
)
_W_DIAMETER = Slip(
    name="diameter-for-radius",
    step=_AREA,
    words="You took the diameter of the block for its radius. W goes with the third power, so that the "
    "result is eight times too small.",
)
_AREA_TIMES_RIM = Slip(
    name="area-times-radius",
    step=_AREA,
    words="You took area times radius for W. Most of the face lies nearer the axis: W is two thirds of that.",
)
_FRICTION_IN = Slip(
    name="friction-left-in",
    step="what sticks and what rubs",
    words="You divided the whole torque of the least force. A part of it is friction: carry the line on to "
    "no force first.",
)
_UNIT = Slip(
    name="newton-metres-for-millimetres",
    step="the unit of the torque",
    words="You made the torques a thousand times greater. They are in N mm already, and 1 MPa is 1 N/mm2.",
)
_ACROSS_MM, _FORCES_N = (18.0, 21.0, 24.0, 30.0), ((100.0, 200.0, 300.0, 400.0), (100.0, 150.0, 200.0, 250.0))


def _drawn(draws: Draws) -> ReadingsOnALine:
    """Readings on a line, the torques whole or half N mm."""
    across, forces = draws.one_of(_ACROSS_MM), draws.one_of(_FORCES_N)
    friction, sticks = draws.step(0.14, 0.42, 0.01), draws.step(70.0, 320.0, 1.0)
    lever = r_eff_mm(Annulus(radius_mm=across / 2.0))
    torques = tuple(round(sticks + friction * lever * force, 1) for force in forces)
    return ReadingsOnALine(across_mm=across, forces_n=forces, torques_nmm=torques)


class _FromLine(Maker[ReadingsOnALine]):
    """Asks for one of the two numbers of a line."""

    lesson = "31"

    def draw(self, draws: Draws) -> ReadingsOnALine:
        """Return four readings on a line, and the block."""
        return _drawn(draws)

    @property
    @abstractmethod
    def _asked(self) -> str:
        """What is asked for."""

    def prompt(self, case: ReadingsOnALine) -> tuple[str, ...]:
        """Return where the readings come from, and what is asked."""
        return (
            "In a guarded hand jig a round block is turned on one coat until it breaks loose. Each torque is "
            "the mean of two readings. The readings are invented, and they lie on one line.",
            self._asked,
        )

    def given(self, case: ReadingsOnALine) -> tuple[Term, ...]:
        """Return the block and all readings."""
        return (across_term(case), *reading_terms(case))


class GripFriction(_FromLine):
    """Find mu from the rise of a line."""

    name = "grip-friction-from-line"
    skill = "line-through-readings"
    slips = (_ORIGIN, _LEVER_DIAMETER, _RIM)
    _asked = "What is the friction mu of the pad on this coat? Give a number without a unit, to 0.01."

    def kind(self, case: ReadingsOnALine) -> AnswerKind:
        """Return a pure number to two decimals."""
        return NumberAnswer(unit="", tolerance=0.006, digits=2)

    def answer(self, case: ReadingsOnALine, slips: Set[str] = NONE) -> object:
        """Return mu, or what is taken for it."""
        through_zero = _ORIGIN.name in slips
        friction = friction_through_zero(case.fit) if through_zero else case.fit.friction.value
        # The lever stands below: one that is too long makes mu too small by as much.
        if _LEVER_DIAMETER.name in slips:
            return friction / 2.0
        return friction * 2.0 / 3.0 if _RIM.name in slips else friction

    def solution(self, case: ReadingsOnALine) -> Solution:
        """Return rise, lever and mu."""
        return Solution(
            words=(
                "What rises with the force is friction: mu times the mean lever for each newton. What is "
                "there without any force is the pad that sticks, and it does not belong to mu.",
            ),
            workings=friction_workings(case),
        )

    def hints(self, case: ReadingsOnALine) -> tuple[str, ...]:
        """Return how to see the line."""
        return (
            "Sketch torque over force. Does the line meet the corner of the axes?",
            "By how much does the torque rise from the first reading to the last, and the force?",
            "The rise for each newton is mu times the mean lever of the block.",
        )


class GripShear(_FromLine):
    """Find tau from where a line meets the torque axis."""

    name = "grip-shear-from-line"
    skill = "line-through-readings"
    slips = (_W_DIAMETER, _AREA_TIMES_RIM, _FRICTION_IN, _UNIT)
    _asked = "What is the shear strength tau of the pad on this coat in MPa? Give it to 0.001 MPa."

    def kind(self, case: ReadingsOnALine) -> AnswerKind:
        """Return megapascals to three decimals."""
        return NumberAnswer(unit="MPa", tolerance=0.001, digits=3)

    def answer(self, case: ReadingsOnALine, slips: Set[str] = NONE) -> object:
        """Return tau, or what is taken for it."""
        torque = case.torques_nmm[0] if _FRICTION_IN.name in slips else case.sticks_nmm
        turning = case.contact.w_mm3
        if _W_DIAMETER.name in slips:
            turning = Annulus(radius_mm=case.across_mm).w_mm3
        if _AREA_TIMES_RIM.name in slips:
            turning = case.contact.area_mm2 * case.across_mm / 2.0
        return (1000.0 if _UNIT.name in slips else 1.0) * torque / turning

    def solution(self, case: ReadingsOnALine) -> Solution:
        """Return rise, torque with no force, W and tau."""
        return Solution(
            words=(
                "The line is carried on to no force: what is left there is the pad that sticks. It sticks "
                "over the whole face, and W counts each part of the face with its lever.",
            ),
            workings=shear_workings(case),
        )

    def hints(self, case: ReadingsOnALine) -> tuple[str, ...]:
        """Return where to look."""
        return (
            "Where does the line meet the torque axis?",
            "W of a disc is two thirds of its area times its radius.",
            "1 MPa is 1 N/mm2. Stay in N and mm.",
        )
