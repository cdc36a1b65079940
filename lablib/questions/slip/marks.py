"""How far a lens turned, from two marks 34 mm apart and from the top of a segment, as questions."""

import math
from collections.abc import Set
from dataclasses import dataclass

from lablib.inspection.marks import MARKS_APART_MM, read_turn, top_apart_mm, turn_deg
from lablib.inspection.marks_workings import (
    apart_term,
    rise_term,
    small_angle_working,
    top_apart_working,
    turn_working,
)
from lablib.optics.segment import Segment, segment
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, plain

_HALF = Slip(
    name="half-the-distance",
    step="over which distance the marks rise",
    words="You put the rise over half the distance. From one mark to the other the lens rises over the whole "
    "of it.",
)
_MILLIMETRES = Slip(
    name="millimetres-for-degrees",
    step="turning a rise into an angle",
    words="You gave the rise itself. Millimetres are not degrees: the same rise is a large angle between "
    "near marks and a small one between distant marks.",
)
_PER_CENT = Slip(
    name="slope-in-per-cent",
    step="turning a rise into an angle",
    words="You gave the slope in per cent, the rise over the distance times 100. An angle in degrees is its "
    "arc sine.",
)
_RADIANS = Slip(
    name="radians-for-degrees",
    step="turning a rise into an angle",
    words="You gave the ratio itself, or its arc sine in radians. Set the calculator to degrees, or multiply "
    "radians by 57.3.",
)
_KIND = NumberAnswer(unit="degrees", tolerance=0.1, digits=1, also=("deg", "°"))


def _turned(rise_mm: float, apart_mm: float, slips: Set[str]) -> float:
    """Return the turn by two marks, or what is taken for it."""
    apart = apart_mm / 2.0 if _HALF.name in slips else apart_mm
    if _MILLIMETRES.name in slips:
        return rise_mm
    if _RADIANS.name in slips:
        return math.radians(turn_deg(rise_mm, apart_mm=apart))
    # The wrong step is arithmetic of its own.
    return 100.0 * rise_mm / apart if _PER_CENT.name in slips else turn_deg(rise_mm, apart_mm=apart)


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksCase:
    """Two engravings on a lens that turned.

    left_up_mm, right_up_mm: their heights above the edge of the block [mm].
    """

    left_up_mm: float
    right_up_mm: float

    @property
    def rise_mm(self) -> float:
        """How much higher one lies than the other [mm]."""
        return round(abs(self.right_up_mm - self.left_up_mm), 2)


class TurnFromMarks(Maker[MarksCase]):
    """Work the turn from the heights of two marks 34 mm apart."""

    name = "turn-from-marks"
    lesson = "12"
    skill = "angle-from-marks"
    slips = (_HALF, _MILLIMETRES, _PER_CENT, _RADIANS)

    def draw(self, draws: Draws) -> MarksCase:
        """Return two heights that differ."""
        left, rise = draws.step(8.0, 14.0, 0.5), draws.step(0.8, 5.0, 0.1) * draws.one_of((-1.0, 1.0))
        return MarksCase(left_up_mm=left, right_up_mm=round(left + rise, 1))

    def kind(self, case: MarksCase) -> AnswerKind:
        """Return degrees to one decimal."""
        return _KIND

    def answer(self, case: MarksCase, slips: Set[str] = NONE) -> object:
        """Return the turn without its direction, or what is taken for it."""
        return _turned(case.rise_mm, MARKS_APART_MM, slips)

    def prompt(self, case: MarksCase) -> tuple[str, ...]:
        """Return where the marks stand, and what is asked."""
        higher, side = (
            ("right", "anticlockwise") if case.right_up_mm > case.left_up_mm else ("left", "clockwise")
        )
        return (
            "A progressive comes off the machine, still on its block. Its two engravings were level with the "
            f"block's line before the cut. Now the one at your {higher} lies higher: the lens has turned "
            f"{side}, as you look at it.",
            "By how many degrees? Leave the direction out, and give the angle to 0.1 degrees.",
        )

    def given(self, case: MarksCase) -> tuple[Term, ...]:
        """Return how much higher it lies, and how far apart they are."""
        return (
            _rise(case.rise_mm),
            apart_term(MARKS_APART_MM, "distance of the engravings on the lens"),
        )

    def solution(self, case: MarksCase) -> Solution:
        """Return the turn, with the rule for small angles beside it."""
        reading = read_turn(case.rise_mm)
        return Solution(
            words=(
                "The distance of the two marks is fixed on the lens and turns with it: it is the long side "
                "of the triangle, and the rise is the side opposite the angle.",
                "In the head: at 34 mm each millimetre of rise is a little less than 1.7 degrees.",
                f"A rise is read to about a quarter of a millimetre, so the turn lies between "
                f"{plain(reading.low_deg, 1)} and {plain(reading.high_deg, 1)} degrees.",
            ),
            workings=(small_angle_working(case.rise_mm), turn_working(case.rise_mm)),
        )

    def hints(self, case: MarksCase) -> tuple[str, ...]:
        """Return the triangle."""
        return (
            "Draw the triangle: from one mark to the other, straight up, and level back.",
            "You know the side opposite the angle, and the long side. Which function of the angle is their "
            "ratio?",
        )


def _rise(rise_mm: float) -> Term:
    return Term(
        symbol="e",
        value=rise_mm,
        unit="mm",
        digits=2,
        meaning=rise_term(rise_mm).meaning,
    )


_WIDTH = Slip(
    name="width-for-corners",
    step="how far apart the corners lie",
    words="You took the width of the segment. It is that wide only at the level of its centre: at the top "
    "the disc is cut off, and the corners lie nearer to each other.",
)
_SEGMENTS = ("flat-top-25", "flat-top-28", "flat-top-35")


@dataclass(frozen=True, slots=True, kw_only=True)
class TopCase:
    """A flat top on a lens that turned.

    segment: its segment; rise_mm: how much higher one corner lies than the other [mm].
    """

    segment: Segment
    rise_mm: float

    @property
    def sizes(self) -> dict[str, float]:
        """Width and depth of its centre [mm], as the functions of marks take them."""
        return {
            "width_mm": self.segment.width_mm,
            "centre_below_top_mm": self.segment.centre_below_top_mm,
        }


class SegmentTopTurned(Maker[TopCase]):
    """Work the turn from the corners of a straight segment top."""

    name = "segment-top-turned"
    lesson = "12"
    skill = "angle-from-marks"
    slips = (_WIDTH, _HALF, _MILLIMETRES, _PER_CENT, _RADIANS)

    def draw(self, draws: Draws) -> TopCase:
        """Return a usual segment whose top lies askew."""
        return TopCase(segment=segment(draws.one_of(_SEGMENTS)), rise_mm=draws.step(2.5, 6.0, 0.1))

    def kind(self, case: TopCase) -> AnswerKind:
        """Return degrees to one decimal."""
        return _KIND

    def answer(self, case: TopCase, slips: Set[str] = NONE) -> object:
        """Return the turn, or what is taken for it."""
        apart = case.segment.width_mm if _WIDTH.name in slips else top_apart_mm(**case.sizes)
        return _turned(case.rise_mm, apart, slips)

    def prompt(self, case: TopCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"A bifocal with a {case.segment.words} segment comes off the machine, still on its block. The "
            "top of its segment was level with the block's line before the cut; now one of its corners lies "
            "higher than the other. The segment is a disc whose upper part is cut off straight.",
            "By how many degrees has the lens turned? Give the angle to 0.1 degrees.",
        )

    def given(self, case: TopCase) -> tuple[Term, ...]:
        """Return the segment's sizes, and the rise."""
        return (*top_apart_working(**case.sizes).terms, _rise(case.rise_mm))

    def solution(self, case: TopCase) -> Solution:
        """Return the corners, and the turn."""
        apart = top_apart_working(**case.sizes)
        return Solution(
            words=(
                "The corners lie where the straight top meets the disc: nearer to each other than the "
                "segment is wide. That distance is fixed on the lens, and the rise over it is the sine of "
                "the turn.",
                "A round segment has no corners. It hides a turn, and its centre has moved all the same.",
            ),
            workings=(apart, turn_working(case.rise_mm, apart_mm=apart.value, apart=apart.as_term())),
        )

    def hints(self, case: TopCase) -> tuple[str, ...]:
        """Return the two triangles."""
        return (
            "At which level is the segment as wide as its name says? Is that where its top is?",
            "From the segment's centre to a corner is half its width: that is the long side of a triangle.",
            "Once you have the distance of the corners, the rise over it is the sine of the turn.",
        )
