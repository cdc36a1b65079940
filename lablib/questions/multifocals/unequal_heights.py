"""A decision about segment heights that differ between the eyes."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import Eye
from lablib.optics.frame import Frame
from lablib.optics.multifocal_pair import TwoHeights
from lablib.optics.practice import usual
from lablib.questions.multifocals.case import draw_framed_eye, millimetres
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_MAKE, _HOLD = "make", "hold"
_AVERAGE, _LOWER = "average", "lower-one"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightsCase:
    """A pair of bifocals with a segment height for each eye.

    frame: the frame; heights: of the tops.
    """

    frame: Frame
    heights: TwoHeights


class UnequalHeights(Maker[HeightsCase]):
    """What is done with segment heights that differ."""

    name = "unequal-heights"
    lesson = "08"
    skill = "unequal-heights"
    slips = (
        Slip(
            name="makes-without-asking",
            step="heights compared between the eyes",
            words="You made it as written. Heights so far apart are asked about first: often the frame sat "
            "askew when they were taken.",
        ),
        Slip(
            name="asks-without-need",
            step="heights compared between the eyes",
            words="You held it. The heights are alike, or differ by no more than this lab lets pass.",
        ),
        Slip(
            name="averages-the-heights",
            step="who changes a measured height",
            words="You averaged the heights. Then neither top stands where it was measured; a measured "
            "height is not ours to change.",
        ),
        Slip(
            name="lowers-the-higher",
            step="who changes a measured height",
            words="You set both tops to the lower height. A measured height is not ours to change.",
        ),
    )

    def draw(self, draws: Draws) -> HeightsCase:
        """Return heights that differ by half a millimetre to three."""
        place = draw_framed_eye(draws)
        right = place.frame.b_mm / 2.0 + draws.one_of((-4.0, -3.0, -2.0))
        apart = draws.one_of((-3.0, -2.5, -2.0, -1.0, -0.5, 0.5, 1.0, 2.0, 2.5, 3.0))
        return HeightsCase(frame=place.frame, heights=TwoHeights(right_mm=right, left_mm=right + apart))

    def kind(self, case: HeightsCase) -> ChoiceAnswer:
        """Return the kind: four things to do."""
        return ChoiceAnswer(
            options=(
                Option(key=_MAKE, words="Make it with the heights as written."),
                Option(key=_AVERAGE, words="Make both tops to the average of the two heights."),
                Option(key=_LOWER, words="Make both tops to the lower of the two heights."),
                Option(key=_HOLD, words="Hold it, and ask whether the heights are meant to differ."),
            )
        )

    def slips_in(self, case: HeightsCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        never = "asks-without-need" if case.heights.is_asked else "makes-without-asking"
        return tuple(slip for slip in self.slips if slip.name != never)

    def answer(self, case: HeightsCase, slips: Set[str] = NONE) -> str:
        """Return the decision, or the one a slip leads to."""
        if "averages-the-heights" in slips:
            return _AVERAGE
        if "lowers-the-higher" in slips:
            return _LOWER
        is_asked = case.heights.is_asked
        if slips & {"makes-without-asking", "asks-without-need"}:
            is_asked = not is_asked
        return _HOLD if is_asked else _MAKE

    def pairs(self, case: HeightsCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: HeightsCase) -> tuple[str, ...]:
        """Return the order, the lab's rule, and what is asked."""
        return (
            "An invented order for flat tops, equal segments in both eyes. The ticket has a height for each "
            "eye and no note.",
            f"This lab asks where the heights differ by more than {usual('heights_apart'):g} mm.",
            "What do you do?",
        )

    def given(self, case: HeightsCase) -> tuple[Term, ...]:
        """Return B and both heights."""
        return (
            millimetres("B", case.frame.b_mm, "boxed height"),
            millimetres("h_R", case.heights.right_mm, "segment height, right eye"),
            millimetres("h_L", case.heights.left_mm, "segment height, left eye"),
        )

    def solution(self, case: HeightsCase) -> Solution:
        """Return the difference, what is seen of it, and what follows."""
        apart, higher = abs(case.heights.right_over_left_mm), case.heights.higher
        lower = (higher or Eye.LEFT).other
        seen = (
            f"The {higher} top lies {apart:g} mm higher than the {lower} one. Looking down, the {higher} eye "
            "meets its image jump first, and in the strip between the tops only one eye looks through its "
            "segment."
        )
        follows = (
            "Eyes can stand at different heights, and then it is meant. As often the frame sat askew. The "
            "answer is asked for before anything is cut, and written on the ticket."
            if case.heights.is_asked
            else "That is no more than this lab lets pass, and the heights are made as written."
        )
        return Solution(words=(seen, follows))

    def hints(self, case: HeightsCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How far apart are the two heights?",
            "Who measured them, and who may change them?",
        )
