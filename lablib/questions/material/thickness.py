"""A question about safety lenses: how thick they are at least."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.impact import impact_cautions, least_safety_thickness_mm, safety_levels
from lablib.optics.prescription import Prescription
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution

_DRESS = "dress"
_BASIC, _RATED = tuple(safety_levels())
# Powers on both sides of where the rule for plus lenses begins.
_MINUS, _PLUS = 0.0, 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ThicknessCase:
    """A safety lens.

    level: as in `safety_levels`; prescription: its power.
    """

    level: str
    prescription: Prescription

    @property
    def most_plus_d(self) -> float:
        """Power of the most plus meridian [D]."""
        rx = self.prescription
        return max(rx.sphere_d, rx.sphere_d + rx.cylinder_d)

    @property
    def least_mm(self) -> float:
        """How thick it is at least [mm]."""
        return least_safety_thickness_mm(self.level, most_plus_d=self.most_plus_d)


class SafetyThickness(Maker[ThicknessCase]):
    """The least thickness of a safety lens, by level and power."""

    name = "safety-thickness"
    lesson = "04"
    skill = "safety-thickness"
    slips = (
        Slip(
            name="levels-exchanged",
            step="which level is ordered",
            words="You took the figure of the other level. An impact-rated lens has passed a harder test of "
            "its material, and may be thinner than a basic one.",
        ),
        Slip(
            name="plus-rule-left-out",
            step="what changes from +3.00 D on",
            words="You took the figure for weaker lenses. From +3.00 D on a basic lens may be thinner, and "
            "the most plus meridian counts.",
        ),
        Slip(
            name="plus-rule-misused",
            step="what changes from +3.00 D on",
            words="You took the figure of strong plus lenses. It holds for basic lenses with +3.00 D or more "
            "in the most plus meridian, and for no others.",
        ),
        Slip(
            name="dress-test-for-safety",
            step="whether it is a dress lens or a safety lens",
            words="You took the rule of dress lenses. They have a drop ball test and no least thickness "
            "here; a safety lens has both a thickness and a marking.",
        ),
    )

    def draw(self, draws: Draws) -> ThicknessCase:
        """Return a level, and a power on either side of where the rule for plus lenses begins."""
        strong = draws.whole(2) == 0
        sphere = draws.step(2.0, 5.5, 0.25) if strong else draws.step(-6.0, 1.5, 0.25)
        cylinder = draws.step(0.5, 2.0, 0.25) * draws.one_of((1.0, -1.0))
        return ThicknessCase(
            level=draws.one_of((_BASIC, _BASIC, _RATED)),
            prescription=Prescription(
                sphere_d=sphere, cylinder_d=cylinder, axis_deg=draws.step(5.0, 180.0, 5.0)
            ),
        )

    def kind(self, case: ThicknessCase) -> ChoiceAnswer:
        """Return the figures of the table, and no figure at all."""
        return ChoiceAnswer(
            options=(
                *(Option(key=_key(one), words=f"{one:.1f} mm") for one in _figures()),
                Option(key=_DRESS, words="any thickness that passes the drop ball test of dress lenses"),
            )
        )

    def answer(self, case: ThicknessCase, slips: Set[str] = NONE) -> str:
        """Return the figure of level and power, or the one a slip leads to."""
        if "dress-test-for-safety" in slips:
            return _DRESS
        level, power = case.level, case.most_plus_d
        if "levels-exchanged" in slips:
            level, power = (_BASIC if level == _RATED else _RATED), _MINUS
        if "plus-rule-left-out" in slips:
            power = _MINUS
        if "plus-rule-misused" in slips:
            level, power = _BASIC, _PLUS
        return _key(least_safety_thickness_mm(level, most_plus_d=power))

    def slips_in(self, case: ThicknessCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        has_plus_rule = self.answer(case) == self.answer(case, {"plus-rule-misused"})
        other = "plus-rule-misused" if has_plus_rule else "plus-rule-left-out"
        return tuple(slip for slip in self.slips if slip.name != other)

    def pairs(
        self, case: ThicknessCase, kind: ChoiceAnswer, known: tuple[object, ...]
    ) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: ThicknessCase) -> tuple[str, ...]:
        """Return the order, the source asked about, and the caution."""
        return (
            f"An invented order for a complete, marked safety pair, lenses of the level "
            f'"{safety_levels()[case.level]}". Prescription: {case.prescription}.',
            "Local law and the edition in force decide. Asked is the table of the lesson: ANSI Z87.1-2020 as "
            "quoted in an insurer's manual.",
            "How thick must the thinnest place of this lens be at least?",
        )

    def solution(self, case: ThicknessCase) -> Solution:
        """Return the table, what counts in it, and the cautions."""
        return Solution(
            words=(
                f"Basic 3.0 mm; basic with +3.00 D or more 2.5 mm; impact rated 2.0 mm, whatever the power. "
                f"The most plus meridian here is {case.most_plus_d:+.2f} D and the level is "
                f"{safety_levels()[case.level]}: {case.least_mm:.1f} mm.",
                *impact_cautions()[:2],
            )
        )

    def hints(self, case: ThicknessCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which level is ordered? And does the power matter at that level?",
            "Work out the power of both principal meridians. The one that is most plus counts.",
        )


def _figures() -> tuple[float, ...]:
    """The figures of the table, the least first."""
    found = {
        least_safety_thickness_mm(level, most_plus_d=power)
        for level in safety_levels()
        for power in (_MINUS, _PLUS)
    }
    return tuple(sorted(found))


def _key(thickness_mm: float) -> str:
    return f"{thickness_mm:.1f}-mm"
