"""Questions about height: where it puts the optical centre, and what adjusting the frame does to it."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import decentration_mm
from lablib.optics.layout_workings import decentration_workings
from lablib.optics.wearer_distances import height_after_adjusting_mm
from lablib.optics.wearer_workings import height_after_adjusting_working
from lablib.questions.layout.frames import draw_frame, outline_drawing
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_SHAPES = (OutlineShape(), OutlineShape.superellipse(3.2), OutlineShape.named("panto"))
# Above and below the midline, never so near to it that a sign could be missed.
_UP_MM = (-4.0, -3.0, -2.5, -2.0, -1.5, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0)
_MOVED_MM = (1.5, 2.0, 2.5, 3.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightCase:
    """A frame on a wearer.

    frame: the frame; eye: the one asked about.
    pd_mm: its monocular distance [mm].
    height_mm: of the pupil above the lowest tangent [mm].
    """

    frame: Frame
    eye: Eye
    pd_mm: float
    height_mm: float

    @property
    def up_mm(self) -> float:
        """The optical centre above the midline [mm]."""
        return decentration_mm(self.frame, monocular_pd_mm=self.pd_mm, height_mm=self.height_mm)[1]


class CentrationHeight(Maker[HeightCase]):
    """How far above or below the midline a height puts the optical centre."""

    name = "centration-height"
    lesson = "05"
    skill = "height"
    slips = (
        Slip(
            name="whole-b-taken-off",
            step="how far the midline lies above the lowest tangent",
            words="You took off all of B. The midline lies half of B above the lowest tangent.",
        ),
        Slip(
            name="counted-from-the-top",
            step="what the height counts from",
            words="You counted the height downwards, or exchanged the sign. It counts up from the lowest "
            "tangent; what it has more than half of B lies above the midline.",
        ),
        Slip(
            name="height-itself",
            step="from the lowest tangent to the midline",
            words="You gave the height itself. It counts from the lowest tangent; here the midline is asked.",
        ),
    )

    def draw(self, draws: Draws) -> HeightCase:
        """Return a frame and a height, the optical centre above the midline more often than below."""
        frame = draw_frame(draws, _SHAPES)
        return HeightCase(
            frame=frame,
            eye=draws.one_of(EYES),
            pd_mm=draws.step(29.0, 34.0, 0.5),
            height_mm=frame.b_mm / 2.0 + draws.one_of(_UP_MM),
        )

    def kind(self, case: HeightCase) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: HeightCase, slips: Set[str] = NONE) -> float:
        """Return how far up. The wrong steps are sums of their own, on the numbers as given."""
        up, half_b = case.up_mm, case.frame.b_mm / 2.0
        if "height-itself" in slips:
            up += half_b
        if "whole-b-taken-off" in slips:
            up -= half_b
        return -up if "counted-from-the-top" in slips else up

    def prompt(self, case: HeightCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The frame of an invented pair was adjusted, then the pupil of the {case.eye} eye was marked on "
            "the lens in it, and its height measured from the lowest tangent.",
            "How far above the horizontal midline of the box does the optical centre lie? Write below as "
            "minus. Answer in mm, to 0.1 mm.",
        )

    def given(self, case: HeightCase) -> tuple[Term, ...]:
        """Return B and the height."""
        return (
            Term(symbol="B", value=case.frame.b_mm, unit="mm", digits=0, meaning="boxed height"),
            Term(
                symbol="h",
                value=case.height_mm,
                unit="mm",
                digits=1,
                meaning="height of the pupil above the lowest tangent",
            ),
        )

    def solution(self, case: HeightCase) -> Solution:
        """Return the way: what the height has more than half of B."""
        side = "above" if case.up_mm > 0.0 else "below"
        return Solution(
            words=(
                "The lowest tangent and the horizontal midline lie half of B apart. What the height has more "
                f"is above the midline, what it has less is below. Here it is {side}.",
            ),
            workings=decentration_workings(case.frame, monocular_pd_mm=case.pd_mm, height_mm=case.height_mm)[
                1:
            ],
        )

    def hints(self, case: HeightCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the box, its midline and its lowest tangent. How far apart are the two lines?",
            "Both the midline and the pupil are counted up from the lowest tangent. Which of them is higher?",
        )

    def drawing(self, case: HeightCase) -> Drawing:
        """Return the lens in its box, beside a ruler that counts from the midline."""
        return outline_drawing(
            "level",
            case.frame.outline(case.eye),
            centre_x_mm=0.0,
            centre_y_mm=0.0,
            half_b_mm=case.frame.b_mm / 2.0,
            eye=case.eye.value,
            measured_from="midline",
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedCase:
    """A height that was measured too early.

    eye: whose; height_mm: as it was measured [mm]; raised_mm: how far up the frame was moved then [mm].
    """

    eye: Eye
    height_mm: float
    raised_mm: float


class HeightAfterAdjusting(Maker[MovedCase]):
    """What is left of a height after the frame was moved on the face."""

    name = "height-after-adjusting"
    lesson = "05"
    skill = "height"
    slips = (
        Slip(
            name="moved-the-wrong-way",
            step="which way the height changes",
            words="You let the height change with the frame. The eye stays where it is: when the frame goes "
            "up, its lowest tangent comes nearer to the pupil.",
        ),
        Slip(
            name="height-kept",
            step="what adjusting does to a height",
            words="You kept the old height. It was measured from a tangent that has moved since.",
        ),
        Slip(
            name="half-of-the-move",
            step="how much of the move counts",
            words="You took half of the move. The tangent moves with the frame, by all of it.",
        ),
    )

    def draw(self, draws: Draws) -> MovedCase:
        """Return a height and a move."""
        return MovedCase(
            eye=draws.one_of(EYES),
            height_mm=draws.step(17.0, 25.0, 0.5),
            raised_mm=draws.one_of(_MOVED_MM) * draws.one_of((1.0, -1.0)),
        )

    def kind(self, case: MovedCase) -> NumberAnswer:
        """Return the kind: a height."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: MovedCase, slips: Set[str] = NONE) -> float:
        """Return the height in the adjusted frame."""
        raised = 0.0 if "height-kept" in slips else case.raised_mm
        if "half-of-the-move" in slips:
            raised /= 2.0
        sign = -1.0 if "moved-the-wrong-way" in slips else 1.0
        return height_after_adjusting_mm(case.height_mm, raised_mm=sign * raised)

    def prompt(self, case: MovedCase) -> tuple[str, ...]:
        """Return what is asked."""
        way = "up" if case.raised_mm > 0.0 else "down"
        return (
            f"An invented wearer: the height of the {case.eye} pupil was taken first, and only then were the "
            f"nose pads set. The frame has moved {way} on the face since, and nothing else has changed.",
            "How high above the lowest tangent does the pupil lie now? Answer in mm, to 0.1 mm.",
        )

    def given(self, case: MovedCase) -> tuple[Term, ...]:
        """Return the height as measured and the move."""
        step = height_after_adjusting_working(case.height_mm, raised_mm=case.raised_mm)
        return step.terms

    def solution(self, case: MovedCase) -> Solution:
        """Return the way, and why nobody should need it."""
        return Solution(
            words=(
                "The pupil stays, the frame moves, and the lowest tangent with it. A frame that goes up "
                "leaves the pupil lower in its rim.",
                "Better measure again. A frame that moves on the nose also leans otherwise: adjust it first, "
                "then take heights.",
            ),
            workings=(height_after_adjusting_working(case.height_mm, raised_mm=case.raised_mm),),
        )

    def hints(self, case: MovedCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What stayed where it was, the eye or the rim?",
            "Draw the pupil and the lowest tangent twice, before and after. Is the way between them longer "
            "or shorter now?",
        )
