"""A question of choice: how a line that is carelessly written, and can still be read, is written properly."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.prescription import Prescription
from lablib.optics.reading import read
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_PROPER = "proper"
_APART, _PLANO = "sign-apart", "cylinder-for-sphere"
_NOUGHT, _POINT = "nought-before-figure", "point-overlooked"
_DEGREE, _ZERO = "degree-for-nought", "axis-of-nought-dropped"


@dataclass(frozen=True, slots=True, kw_only=True)
class WritingCase:
    """A line, and which misreadings of it there are to choose from.

    line: as written; shown: names of the slips it tempts to, and the proper writing, in order.
    """

    line: str
    shown: tuple[str, ...]

    @property
    def rx(self) -> Prescription:
        """The lens the line means."""
        return read(self.line).prescription


class WriteItRight(Maker[WritingCase]):
    """Write a careless line properly, without misreading it."""

    name = "write-it-right"
    lesson = "02"
    skill = "write-a-prescription"
    slips = (
        Slip(
            name=_APART,
            step="the sign of the sphere",
            words="You took the minus for a dash. A sign that stands apart from its figure is still its "
            "sign.",
        ),
        Slip(
            name=_PLANO,
            step="the sphere",
            words="You took the cylinder for the sphere. The sphere is plano, and the figure after it is the "
            "cylinder.",
        ),
        Slip(
            name=_NOUGHT,
            step="the decimals of the cylinder",
            words="You put the nought before the figure. One decimal means tenths: the nought belongs behind "
            "it.",
        ),
        Slip(
            name=_POINT,
            step="the decimals of the cylinder",
            words="You overlooked the point. With no figure before it the power is less than a dioptre.",
        ),
        Slip(
            name=_DEGREE,
            step="the axis",
            words="You read the degree sign as a nought. That is ten times the axis.",
        ),
        Slip(
            name=_ZERO,
            step="the axis",
            words="You took an axis of 0 for no cylinder. It is the level axis, which is written 180.",
        ),
    )

    def draw(self, draws: Draws) -> WritingCase:
        """Return a line with a careless sphere, a careless cylinder and a careless axis."""
        sphere = f"- {draws.step(1.25, 5.75, 0.25):.2f}"
        whole, axis = 1 + draws.whole(2), 1 + draws.whole(9)
        parts = (
            draws.one_of(((_APART, sphere), (_PLANO, "pl"))),
            draws.one_of(((_NOUGHT, f"-{whole}.5"), (_POINT, "-.5"))),
            draws.one_of(((_DEGREE, f"x {axis}°"), (_ZERO, "x 0"))),
        )
        names, words = zip(*parts, strict=True)
        return WritingCase(line=" ".join(words), shown=draws.shuffled((_PROPER, *names)))

    def kind(self, case: WritingCase) -> ChoiceAnswer:
        """Return the proper writing and three misreadings, all properly written."""
        return ChoiceAnswer(
            options=tuple(Option(key=key, words=str(_misread(case.rx, key))) for key in case.shown)
        )

    def slips_in(self, case: WritingCase) -> tuple[Slip, ...]:
        """Return the slips that the line tempts to."""
        return tuple(slip for slip in self.slips if slip.name in case.shown)

    def answer(self, case: WritingCase, slips: Set[str] = NONE) -> str:
        """Return the proper writing, or what a slip reads."""
        return next(iter(slips), _PROPER)

    def pairs(self, case: WritingCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every misreading has its own slip."""
        return ()

    def prompt(self, case: WritingCase) -> tuple[str, ...]:
        """Return the line."""
        return (
            f'A line on an invented ticket reads "{case.line}". The prescriber says that it is meant so.',
            "How is it written properly?",
        )

    def solution(self, case: WritingCase) -> Solution:
        """Return the proper writing, and how it comes about."""
        return Solution(
            words=(
                f"Written properly: {case.rx}.",
                "Two decimals and a sign to each power, the sign next to its figure; plano in full; the axis "
                "in three figures without a degree sign, and 180 for an axis of 0.",
            )
        )

    def hints(self, case: WritingCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Take the three parts one by one: sphere, cylinder, axis. Say each aloud, as a power or an "
            "angle.",
            "Nothing in the line is too many. What does each figure count: dioptres, tenths or hundredths?",
        )


def _misread(rx: Prescription, key: str) -> Prescription:
    """Return the lens that somebody reads; what is done wrong is arithmetic with figures, not with powers."""
    if key == _APART:
        return replace(rx, sphere_d=-rx.sphere_d)
    if key == _PLANO:
        return Prescription(sphere_d=rx.cylinder_d)
    if key == _NOUGHT:
        whole = int(rx.cylinder_d)
        return replace(rx, cylinder_d=whole + 0.1 * (rx.cylinder_d - whole))
    if key == _POINT:
        return replace(rx, cylinder_d=10.0 * rx.cylinder_d)
    if key == _DEGREE:
        return replace(rx, axis_deg=10.0 * rx.axis_deg)
    return Prescription(sphere_d=rx.sphere_d) if key == _ZERO else rx
