"""A question about a frame trace: what its numbers say about the rim."""

from collections.abc import Set
from dataclasses import dataclass
from functools import lru_cache

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.trace import STEPS, trace_of
from lablib.questions.layout.frames import draw_frame
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_SHAPES = (OutlineShape(), OutlineShape.superellipse(3.0), OutlineShape.named("round"))
_A, _B, _NASAL, _TEMPORAL = "A", "B", "nasal", "temporal"
_EIGHT, _TRACED = 8, 72
# Which of the eight radii point to the observer's right, up, to the left and down.
_RIGHT, _UP, _LEFT, _DOWN = 0, 2, 4, 6
_WORDS = ("to the observer's right", "upper right", "up", "upper left", "to the observer's left")
_WORDS = (*_WORDS, "lower left", "down", "lower right")
_ASKED = {
    _A: "The box touches this rim at the first and the fifth radius. How wide is it, its A?",
    _B: "The box touches this rim at the third and the seventh radius. How high is it, its B?",
    _NASAL: "How far from the tracer's origin does the rim lie on the side of the nose?",
    _TEMPORAL: "How far from the tracer's origin does the rim lie on the side of the temple?",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TraceCase:
    """A rim that was traced off its boxed centre.

    frame: the frame; eye: whose rim; asked: what is asked.
    aside_mm: the tracer's origin from the boxed centre, to the observer's right, or up where B is asked [mm].
    """

    frame: Frame
    eye: Eye
    asked: str
    aside_mm: float

    @property
    def radii(self) -> tuple[int, ...]:
        """Eight radii of the trace, one every 45 degrees from the first [0.01 mm]."""
        return _radii(self.frame, self.eye, self.asked == _B, self.aside_mm)

    @property
    def used(self) -> tuple[int, ...]:
        """Which of the eight radii the answer is made of."""
        if self.asked in (_A, _B):
            return (_RIGHT, _LEFT) if self.asked == _A else (_UP, _DOWN)
        to_right = (self.asked == _NASAL) == (self.eye is Eye.RIGHT)
        return (_RIGHT,) if to_right else (_LEFT,)


@lru_cache(maxsize=64)
def _radii(frame: Frame, eye: Eye, is_up: bool, aside_mm: float) -> tuple[int, ...]:
    """Kept, because each slip is worked out from them anew."""
    origin = (0.0, aside_mm) if is_up else (aside_mm, 0.0)
    whole = trace_of(frame.outline(eye), eye, radii=_TRACED, origin_mm=origin)
    return whole.radii[:: _TRACED // _EIGHT]


class ReadATrace(Maker[TraceCase]):
    """A size of a rim, from the radii of its trace."""

    name = "read-a-trace"
    lesson = "05"
    skill = "traces"
    slips = (
        Slip(
            name="tenths-for-hundredths",
            step="the unit of a radius",
            words="You read the radii in tenths of a millimetre. They are hundredths: 2500 is 25 mm.",
        ),
        Slip(
            name="one-radius-doubled",
            step="what lies across the origin",
            words="You doubled one radius. The tracer's origin is not the boxed centre: take the radius on "
            "the other side.",
        ),
        Slip(
            name="one-radius-alone",
            step="what lies across the origin",
            words="You gave one radius alone. A width runs from rim to rim, through the origin.",
        ),
        Slip(
            name="width-and-height-exchanged",
            step="which radius points where",
            words="You took the radii across the other way. The first points to the observer's right, the "
            "third up.",
        ),
        Slip(
            name="nose-and-temple-exchanged",
            step="which radius points where",
            words="You took the other side. The first radius points to the observer's right: to the nose of "
            "a right eye, to the temple of a left one.",
        ),
    )

    def draw(self, draws: Draws) -> TraceCase:
        """Return a rim whose origin lies aside by more than anybody would overlook."""
        return TraceCase(
            frame=draw_frame(draws, _SHAPES),
            eye=draws.one_of(EYES),
            asked=draws.one_of((_A, _B, _NASAL, _TEMPORAL)),
            aside_mm=draws.one_of((-2.0, -1.6, -1.2, 1.2, 1.6, 2.0)),
        )

    def kind(self, case: TraceCase) -> NumberAnswer:
        """Return the kind: a length."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=2)

    def slips_in(self, case: TraceCase) -> tuple[Slip, ...]:
        """Return the slips that fit what is asked."""
        across = ("one-radius-doubled", "one-radius-alone", "width-and-height-exchanged")
        names = (
            across if case.asked in (_A, _B) else ("nose-and-temple-exchanged", "width-and-height-exchanged")
        )
        return tuple(slip for slip in self.slips if slip.name in ("tenths-for-hundredths", *names))

    def answer(self, case: TraceCase, slips: Set[str] = NONE) -> float:
        """Return the sum of the radii that count [mm]. A slip takes others, or counts them otherwise."""
        used = case.used
        if "nose-and-temple-exchanged" in slips:
            used = tuple((one + _EIGHT // 2) % _EIGHT for one in used)
        if "width-and-height-exchanged" in slips:
            used = tuple((one + _UP) % _EIGHT for one in used)
        if "one-radius-doubled" in slips:
            used = (used[0], used[0])
        if "one-radius-alone" in slips:
            used = used[:1]
        steps = STEPS / 10 if "tenths-for-hundredths" in slips else STEPS
        return sum(case.radii[one] for one in used) / steps

    def prompt(self, case: TraceCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A tracer has read the {case.eye} rim of an invented frame. Of its trace, radii in hundredths "
            "of a millimetre at equal angles, every radius that falls on a multiple of 45 degrees is shown.",
            "The first points to the right of somebody who faces the wearer, the next follow anticlockwise.",
            f"{_ASKED[case.asked]} Answer in mm, to 0.1 mm.",
        )

    def given(self, case: TraceCase) -> tuple[Term, ...]:
        """Return the eight radii in their order."""
        return tuple(
            Term(symbol=f"R_{place}", value=float(radius), digits=0, meaning=_place_words(place))
            for place, radius in enumerate(case.radii, start=1)
        )

    def solution(self, case: TraceCase) -> Solution:
        """Return which radii count, and their sum."""
        terms = tuple(self.given(case)[one] for one in case.used)
        formula = " + ".join(term.symbol for term in terms)
        words = (
            "The origin of a tracer lies somewhere inside the rim, seldom at the boxed centre. A width or a "
            "height is the sum of the two radii that lie across the origin."
            if len(terms) > 1
            else "The nose of a right eye lies to the right of somebody who faces the wearer, that of a left "
            "eye to the left."
        )
        return Solution(
            words=(
                words,
                "A radius of 2500 is 25.00 mm: hundredths of a millimetre, as the standard has them.",
            ),
            workings=(
                Working(
                    what={_A: "width", _B: "height"}.get(case.asked, f"from the origin, {case.asked}"),
                    symbol="L",
                    formula=f"({formula}) / 100" if len(terms) > 1 else f"{formula} / 100",
                    terms=terms,
                    value=self.answer(case),
                    unit="mm",
                    source="ISO 16284, from memory",
                ),
            ),
        )

    def hints(self, case: TraceCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw a cross and write the numbers of the radii at its ends, the first to the right, then "
            "anticlockwise.",
            "How many of the radii does this length run along? And how much is a hundredth of a millimetre?",
        )


def _place_words(place: int) -> str:
    return f"radius at {45 * (place - 1)} degrees, {_WORDS[place - 1]}, in hundredths of a millimetre"
