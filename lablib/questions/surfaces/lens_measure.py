"""A question about the lens measure: the power of a surface from what the dial shows."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.lens_measure import reading_of_power_d
from lablib.optics.lens_measure_workings import power_of_reading_workings
from lablib.optics.material import material
from lablib.optics.surface import LENS_MEASURE_INDEX, power_from_lens_measure_d
from lablib.optics.terms import in_full, power_term
from lablib.questions.answers.units import DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_RATIO = "the index the dial is engraved for"
_NOT_CONVERTED = Slip(
    name="not-converted",
    step=_RATIO,
    words="You gave the reading itself. The dial is engraved for index 1.530, and this lens has another.",
)
_TURNED_OVER = Slip(
    name="ratio-turned-over",
    step=_RATIO,
    words="You turned the ratio over. A higher index bends more, so the same curve has more power than the "
    "dial shows; a lower one, less.",
)
_WHOLE_INDEX = Slip(
    name="ratio-of-whole-indices",
    step=_RATIO,
    words="You took the ratio of the indices. What bends is the step from air to lens, so take 1 off each "
    "index first.",
)
# Materials whose index lies far enough from the dial's for a slip to show.
_MATERIALS = (
    "hard-resin-1.50",
    "polycarbonate-1.59",
    "thiourethane-1.60",
    "thiourethane-1.67",
    "episulfide-1.74",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureCase:
    """What the dial shows on a surface.

    reading_d: the reading [D], minus on a hollow surface; index: of the lens.
    """

    reading_d: float
    index: float


class LensMeasure(Maker[MeasureCase]):
    """The power of a surface from the reading of a lens measure."""

    name = "lens-measure"
    lesson = "03"
    skill = "lens-measure"
    slips = (_NOT_CONVERTED, _TURNED_OVER, _WHOLE_INDEX)

    def draw(self, draws: Draws) -> MeasureCase:
        """Return a reading on a bulging front or a hollow back."""
        sign = draws.one_of((1.0, -1.0))
        return MeasureCase(
            reading_d=sign * draws.step(4.0, 9.0, 0.25), index=material(draws.one_of(_MATERIALS)).index
        )

    def kind(self, case: MeasureCase) -> NumberAnswer:
        """Return the kind: a signed power."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.06, digits=2, signed=True)

    def slips_in(self, case: MeasureCase) -> tuple[Slip, ...]:
        """Return all slips, the ratio of whole indices only where it differs from the reading."""
        values = (self.answer(case, {slip.name}) for slip in (_NOT_CONVERTED, _WHOLE_INDEX))
        return self.slips if self.kind(case).apart(*values) else self.slips[:-1]

    def answer(self, case: MeasureCase, slips: Set[str] = NONE) -> float:
        """Return the surface power. Turned over, the ratio is the one that makes a reading of a power."""
        if _NOT_CONVERTED.name in slips:
            return case.reading_d
        if _TURNED_OVER.name in slips:
            return reading_of_power_d(case.reading_d, case.index)
        if _WHOLE_INDEX.name in slips:
            return case.reading_d * case.index / LENS_MEASURE_INDEX
        return power_from_lens_measure_d(case.reading_d, case.index)

    def prompt(self, case: MeasureCase) -> tuple[str, ...]:
        """Return what is asked."""
        side = "front" if case.reading_d > 0.0 else "back"
        return (
            f"A lens measure, held square on the {side} of an invented lens of index {case.index:.3f}, shows "
            f"{case.reading_d:+.2f} D. Its dial is engraved for index 1.530.",
            "What is the power of that surface? Answer in D with its sign, to 0.01 D.",
        )

    def given(self, case: MeasureCase) -> tuple[Term, ...]:
        """Return reading and both indices."""
        return (
            power_term("R", case.reading_d, "reading of the lens measure"),
            in_full("n", case.index, "", least_digits=3, meaning="index of the lens"),
            in_full("n_m", LENS_MEASURE_INDEX, "", least_digits=3, meaning="index the dial is engraved for"),
        )

    def solution(self, case: MeasureCase) -> Solution:
        """Return why the index counts, and the steps."""
        more = (
            "higher, so a dioptre on the dial is worth more than one"
            if case.index > 1.53
            else ("lower, so a dioptre on the dial is worth less than one")
        )
        return Solution(
            words=(
                "The pins feel a curve, not a power. The dial shows what that curve would have in index "
                f"1.530. The index of this lens is {more}.",
            ),
            workings=power_of_reading_workings(case.reading_d, case.index),
        )

    def hints(self, case: MeasureCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Is the index of the lens above 1.530 or below it? Will the power be more than the reading?",
            "A surface bends by index less 1. Compare that for the lens and for the dial.",
        )
