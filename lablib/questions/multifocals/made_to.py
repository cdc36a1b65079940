"""Questions about what the engravings of a finished progressive tell: the distance and the height it has."""

from abc import abstractmethod
from collections.abc import Set
from typing import ClassVar

from lablib.optics.progressive_layout import MadeTo, ProgressiveLayout, engravings_of, made_to
from lablib.optics.progressive_workings import made_to_workings
from lablib.questions.multifocals.case import millimetres
from lablib.questions.multifocals.levels import level_drawing
from lablib.questions.multifocals.progressive_case import below_cross_term, draw_layout, place_of
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working


class _MadeTo(Maker[ProgressiveLayout]):
    """What both questions share: a finished lens with its engravings found."""

    lesson = "08"
    skill = "engravings-tell"
    last: ClassVar[str]

    def draw(self, draws: Draws) -> ProgressiveLayout:
        """Return a finished progressive."""
        return draw_layout(draws)

    def kind(self, case: ProgressiveLayout) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def prompt(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return the finished lens and what is asked."""
        return (
            f"The {case.eye} lens of an invented pair of progressives, finished and in its frame. Its "
            "engravings were found, level with one another, and measured from the boxed centre.",
            self.asked(),
        )

    @abstractmethod
    def asked(self) -> str:
        """Return what is asked, with unit and how exact."""

    def told(self, case: ProgressiveLayout) -> MadeTo:
        """Return distance and height of a finished lens."""
        return made_to(case.frame, eye=case.eye, design=case.design, engravings=engravings_of(case))

    def steps(self, case: ProgressiveLayout) -> tuple[Working, ...]:
        """Return the steps that lead to what is asked, and no other."""
        found = engravings_of(case)
        steps = made_to_workings(case.frame, eye=case.eye, design=case.design, engravings=found)
        wanted = {self.last, "m_in" if self.last == "PD" else "m_up"}
        return tuple(step for step in steps if step.symbol in wanted)

    def drawing(self, case: ProgressiveLayout) -> Drawing | None:
        """Return no picture, unless a subclass has one."""
        return None


class MadeToDistance(_MadeTo):
    """The monocular distance a finished progressive was made to."""

    name = "made-to-distance"
    last = "PD"
    slips = (
        Slip(
            name="nasal-engraving-for-the-middle",
            step="the point that stands before the pupil",
            words="You used the nasal engraving. The cross stands midway between the two.",
        ),
        Slip(
            name="decentration-for-the-distance",
            step="the point the distance counts from",
            words="You gave how far in the middle lies from the boxed centre. The distance counts from the "
            "middle of the bridge.",
        ),
        Slip(
            name="added-to-the-frame",
            step="which way inwards is",
            words="You added the way inwards to half of A and DBL. Inwards is towards the nose, so the "
            "distance from the bridge gets smaller.",
        ),
    )

    def asked(self) -> str:
        """Return what is asked."""
        return "What monocular distance was the lens made to? Answer in mm, to 0.1 mm."

    def answer(self, case: ProgressiveLayout, slips: Set[str] = NONE) -> float:
        """Return the distance, or what another point or another zero gives."""
        found, boxed = engravings_of(case), case.frame.bridge_to_boxed_centre_mm
        distance = self.told(case).monocular_pd_mm
        if "nasal-engraving-for-the-middle" in slips:
            distance = boxed - found.nasal_mm[0]
        inward = boxed - distance
        if "decentration-for-the-distance" in slips:
            return inward
        return boxed + inward if "added-to-the-frame" in slips else distance

    def slips_in(self, case: ProgressiveLayout) -> tuple[Slip, ...]:
        """Return the slips that change something: nothing is added for a cross at the boxed centre."""
        if engravings_of(case).middle_mm[0] == 0.0:
            return self.slips[:-1]
        return self.slips

    def given(self, case: ProgressiveLayout) -> tuple[Term, ...]:
        """Return the frame and both engravings across."""
        found = engravings_of(case)
        return (
            millimetres("A", case.frame.a_mm, "boxed width"),
            millimetres("DBL", case.frame.dbl_mm, "distance between lenses"),
            millimetres("n_in", found.nasal_mm[0], "nasal engraving inwards of the boxed centre"),
            millimetres(
                "t_in",
                found.temporal_mm[0],
                "temporal engraving inwards of the boxed centre (minus: outwards)",
            ),
        )

    def solution(self, case: ProgressiveLayout) -> Solution:
        """Return the middle first, then the way to the bridge."""
        return Solution(
            words=(
                "The prism reference point lies midway between the engravings, and the cross straight above "
                "it. So the middle of both shows how far in the cross lies. What is left of half of A and "
                "DBL is the distance from the middle of the bridge.",
            ),
            workings=self.steps(case),
        )

    def hints(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Where does the fitting cross lie between the two engravings?",
            "How far from the middle of the bridge is the boxed centre, and is the cross nearer or farther?",
        )


class MadeToHeight(_MadeTo):
    """The height a finished progressive was made to."""

    name = "made-to-height"
    last = "h"
    slips = (
        Slip(
            name="engravings-for-the-cross",
            step="the way from the engravings to the cross",
            words="You gave the height of the engravings. The cross lies above them by what the chart says.",
        ),
        Slip(
            name="cross-below-the-engravings",
            step="the way from the engravings to the cross",
            words="You went down from the engravings to the cross. On this chart they lie below it.",
        ),
        Slip(
            name="from-the-midline",
            step="the line the height counts from",
            words="You counted from the midline. A fitting height counts from the lowest tangent, half of B "
            "lower.",
        ),
        Slip(
            name="whole-b",
            step="the line the height counts from",
            words="You added the whole of B. The midline lies half of B above the lowest tangent.",
        ),
    )

    def asked(self) -> str:
        """Return what is asked."""
        return "What height above the lowest tangent was its fitting cross made to? Answer in mm, to 0.1 mm."

    def answer(self, case: ProgressiveLayout, slips: Set[str] = NONE) -> float:
        """Return the height; what is left out or counted twice is the chart's distance, or half of B."""
        height, below = self.told(case).height_mm, case.design.engraving_below_cross_mm
        below_times = ("engravings-for-the-cross" in slips) + 2 * ("cross-below-the-engravings" in slips)
        half_b_times = ("whole-b" in slips) - ("from-the-midline" in slips)
        return height - below_times * below + half_b_times * case.frame.b_mm / 2.0

    def given(self, case: ProgressiveLayout) -> tuple[Term, ...]:
        """Return B, both engravings, and the chart's distance."""
        found = engravings_of(case)
        meaning = "engraving above the midline (minus: below)"
        return (
            millimetres("B", case.frame.b_mm, "boxed height"),
            millimetres("n_up", found.nasal_mm[1], f"nasal {meaning}"),
            millimetres("t_up", found.temporal_mm[1], f"temporal {meaning}"),
            below_cross_term(case.design),
        )

    def solution(self, case: ProgressiveLayout) -> Solution:
        """Return the way up from the engravings, and from the midline to the lowest tangent."""
        return Solution(
            words=(
                "Up from the level of the engravings to the cross, by the chart. Then from the midline to "
                "the lowest tangent: half of B more.",
            ),
            workings=self.steps(case),
        )

    def hints(self, case: ProgressiveLayout) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which of the marks lies higher, the cross or the engravings, and by how much?",
            "Which line does a fitting height count from, and how far below the midline is it?",
        )

    def drawing(self, case: ProgressiveLayout) -> Drawing:
        """Return the lens in its box."""
        return level_drawing(place_of(case), measured_from="lowest tangent")
