"""A question of choice: which of four writings is the same lens."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.optical_cross import OpticalCross
from lablib.optics.prescription import Prescription
from lablib.questions.prescription.cross import SPHERE_ACROSS, OnCrossCase, PowerOnTheCross
from lablib.questions.prescription.lenses import toric_lens
from lablib.questions.prescription.writing import Transpose
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_SAME, _SHOWN = "same", 4
_IN_FORM = (
    Slip(
        name="keeps-sphere",
        step="the sphere",
        words="You took a writing that keeps the sphere and turns the cylinder round. Work out its power "
        "across the axis: it is another lens.",
    ),
    Slip(
        name="subtracts-cylinder",
        step="the sphere",
        words="You took a writing whose sphere is the first less its cylinder. The new sphere is their sum, "
        "signs and all.",
    ),
    Slip(
        name="keeps-sign",
        step="the sign of the cylinder",
        words="You took a writing whose cylinder has kept its sign. With the other sphere it has to be "
        "turned.",
    ),
    Slip(
        name="keeps-axis",
        step="the axis",
        words="You took a writing that keeps the axis. In the other form it lies 90 degrees away.",
    ),
    Slip(
        name="axis-from-180",
        step="the axis",
        words="You took a writing with the axis taken from 180. That is its mirror image; the new axis lies "
        "90 degrees away.",
    ),
)
_ON_CROSS = (
    Slip(
        name="sphere-at-right-angles",
        step="which power stands on the axis",
        words="You took a cross with the sphere at right angles to the axis. The sphere stands on the axis, "
        "where the cylinder has no power.",
    ),
    Slip(
        name="cylinder-as-a-power",
        step="the power across the axis",
        words="You took a cross that shows the cylinder as a power of its own. Across the axis stands sphere "
        "and cylinder together.",
    ),
    Slip(
        name="cylinder-off-on-the-cross",
        step="the power across the axis",
        words="You took a cross with the cylinder taken off the sphere. Across the axis stands their sum.",
    ),
)
# What the maker of the single question calls it, where the name here is another.
_ELSEWHERE = {"cylinder-off-on-the-cross": "subtracts-cylinder"}
_TRANSPOSE, _ON_THE_CROSS = Transpose(), PowerOnTheCross()


@dataclass(frozen=True, slots=True, kw_only=True)
class SameCase:
    """A lens, and the writings to choose from.

    rx: the lens as it is given.
    on_cross: whether the writings are crosses; else they are prescriptions in the other form.
    shown: in their order, the names of the slips, and the right one.
    """

    rx: Prescription
    on_cross: bool
    shown: tuple[str, ...]


class SameLens(Maker[SameCase]):
    """Which of four writings is the same lens as a given one."""

    name = "same-lens"
    lesson = "02"
    skill = "equal-writings"
    slips = (*_IN_FORM, *_ON_CROSS)

    def draw(self, draws: Draws) -> SameCase:
        """Return a lens with one writing of it and three of other lenses."""
        return draws.until("four writings", _draw_writings, _are_all_different)

    def kind(self, case: SameCase) -> ChoiceAnswer:
        """Return the writings."""
        return ChoiceAnswer(options=tuple(Option(key=key, words=_written(case, key)) for key in case.shown))

    def slips_in(self, case: SameCase) -> tuple[Slip, ...]:
        """Return the slips of the wrong writings shown."""
        return tuple(slip for slip in self.slips if slip.name in case.shown)

    def answer(self, case: SameCase, slips: Set[str] = NONE) -> str:
        """Return the writing that is the same lens, or the one a slip takes."""
        return next(iter(slips), _SAME)

    def pairs(self, case: SameCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong writing has its own slip."""
        return ()

    def prompt(self, case: SameCase) -> tuple[str, ...]:
        """Return the lens."""
        what = "optical cross" if case.on_cross else "writing"
        return (f"A lens is written {case.rx}.", f"Which {what} is the same lens?")

    def solution(self, case: SameCase) -> Solution:
        """Return the test that settles it, and the lens in its other writings."""
        return Solution(
            words=(
                "Two writings are the same lens when they have the same powers on the same two meridians.",
                f"This one has {OpticalCross.of(case.rx).written()}. In the other form it is "
                f"{case.rx.transposed()}.",
            ),
        )

    def hints(self, case: SameCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Work out the power along the axis and across it, with their meridians.",
            "Then ask of each writing: has it the same two powers on the same two meridians?",
        )


def _draw_writings(draws: Draws) -> SameCase:
    rx, on_cross = toric_lens(draws), draws.one_of((True, False, False))
    wrong = draws.some([slip.name for slip in (_ON_CROSS if on_cross else _IN_FORM)], _SHOWN - 1)
    return SameCase(rx=rx, on_cross=on_cross, shown=draws.shuffled((_SAME, *wrong)))


def _are_all_different(case: SameCase) -> bool:
    return len({_written(case, key) for key in case.shown}) == _SHOWN


def _written(case: SameCase, key: str) -> str:
    """Return a writing: the right one, or one with a step done wrong."""
    made = {_ELSEWHERE.get(key, key)} - {_SAME}
    if not case.on_cross:
        return str(_TRANSPOSE.answer(case.rx, made))
    axis, across = (OnCrossCase(rx=case.rx, across=which) for which in (False, True))
    return OpticalCross(
        # A wrong sum is wrong across the axis alone.
        first_d=_ON_THE_CROSS.answer(axis, made & {SPHERE_ACROSS.name}),
        first_meridian_deg=axis.meridian_deg,
        second_d=_ON_THE_CROSS.answer(across, made),
        second_meridian_deg=across.meridian_deg,
    ).written()
