"""The prism that a turn gives to a lens with no cylinder, as a question."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.inspection.marks import where_turned_to
from lablib.optics.eye import Eye
from lablib.optics.prescription import Prescription
from lablib.optics.prism import prism_at
from lablib.questions.answers.units import PRISM_DIOPTRE
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_PRISM_STEP = "from the height of the centre to a prism"
_HARMLESS = Slip(
    name="sphere-thought-harmless",
    step=_PRISM_STEP,
    words="You gave no prism. A sphere has no axis that a turn could spoil, but its centre goes round the "
    "chuck axis and comes to lie too high or too low.",
)
_MILLIMETRES = Slip(
    name="centimetres-forgotten",
    step=_PRISM_STEP,
    words="You multiplied millimetres by dioptres. The rule of prism wants centimetres: divide by 10.",
)
_WHOLE_WAY = Slip(
    name="distance-for-height",
    step="how far up or down the centre has come",
    words="You took the whole distance of the centre from the chuck axis as its height. It has come up or "
    "down only by that distance times the sine of the turn.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TurnedSphereCase:
    """A lens with no cylinder that turned.

    power_d: of the lens [D]; away_mm: of its optical centre from the chuck axis, level with it [mm].
    turn_deg: how far it turned [degrees].
    """

    power_d: float
    away_mm: float
    turn_deg: float

    @property
    def height_mm(self) -> float:
        """How far the centre has come up or down [mm]."""
        return where_turned_to(self.away_mm, 0.0, self.turn_deg)[1]


class TurnedSpherePrism(Maker[TurnedSphereCase]):
    """Work the vertical prism that a turn gives to a lens with no cylinder."""

    name = "turned-sphere-prism"
    lesson = "12"
    skill = "what-a-turn-does"
    slips = (_HARMLESS, _MILLIMETRES, _WHOLE_WAY)

    def draw(self, draws: Draws) -> TurnedSphereCase:
        """Return a strong sphere, decentred on its block, and a turn."""
        return TurnedSphereCase(
            power_d=draws.step(3.0, 9.0, 0.25) * draws.one_of((-1.0, -1.0, 1.0)),
            away_mm=draws.step(2.0, 5.0, 0.5),
            turn_deg=draws.step(8.0, 30.0, 1.0),
        )

    def kind(self, case: TurnedSphereCase) -> AnswerKind:
        """Return prism dioptres to two decimals."""
        return NumberAnswer(unit="prism dioptres", tolerance=0.02, digits=2, also=PRISM_DIOPTRE)

    def answer(self, case: TurnedSphereCase, slips: Set[str] = NONE) -> object:
        """Return the size of the prism where the centre ought to lie, or what is taken for it."""
        if _HARMLESS.name in slips:
            return 0.0
        away = case.away_mm if _WHOLE_WAY.name in slips else case.height_mm
        rx = Prescription(sphere_d=case.power_d)
        _, up = prism_at(rx, eye=Eye.RIGHT, in_mm=0.0, up_mm=away)
        return abs(up) * (10.0 if _MILLIMETRES.name in slips else 1.0)

    def prompt(self, case: TurnedSphereCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"An invented lens of {Prescription(sphere_d=case.power_d)} was blocked at the boxed centre. Its "
            f"optical centre lay {case.away_mm:g} mm beside the chuck axis, level with it. It turned on its "
            f"block by {case.turn_deg:g} degrees, and the outline came out true.",
            "How much vertical prism does the wearer get where the optical centre ought to lie? Give its "
            "size, without the base, to 0.01 prism dioptres.",
        )

    def given(self, case: TurnedSphereCase) -> tuple[Term, ...]:
        """Return power, distance and turn."""
        return (
            Term(symbol="F", value=abs(case.power_d), meaning="size of the power in dioptres"),
            Term(symbol="a", value=case.away_mm, unit="mm", digits=1, meaning="centre from the chuck axis"),
            Term(
                symbol="turn",
                value=case.turn_deg,
                unit="degrees",
                digits=0,
                meaning="how far the lens turned",
            ),
        )

    def solution(self, case: TurnedSphereCase) -> Solution:
        """Return the height of the centre, and its prism."""
        power, away, turn = self.given(case)
        height = Working(
            what="how far the centre has come up or down",
            symbol="c",
            formula="a * sin(turn)",
            terms=(away, turn),
            value=case.height_mm,
            unit="mm",
            digits=3,
        )
        prism = Working(
            what="vertical prism, by the rule that wants centimetres",
            symbol="P",
            formula="c * F / 10",
            terms=(height.as_term(), power),
            value=self.answer(case),
            unit="prism dioptres",
        )
        return Solution(
            words=(
                "The lens turns about the chuck axis, and every other point of it goes round. The centre "
                "comes to lie too high or too low, and the wearer looks through a prism that nobody ordered.",
                "On a block at the optical centre the centre would have stayed where it was. The coat would "
                "be rubbed all the same.",
            ),
            workings=(height, prism),
        )

    def hints(self, case: TurnedSphereCase) -> tuple[str, ...]:
        """Return what goes round, and the rule."""
        return (
            "Draw the chuck axis and the centre beside it, and turn the line between them.",
            "How high has the end of that line come? Then it is the rule for prism at a point.",
        )
