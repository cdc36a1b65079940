"""A question read off a drawing of the pair: a boxing number."""

from collections.abc import Set

from lablib.optics.eye import EYES, Eye
from lablib.questions.layout.ruled import ZERO_STEP, RuledCase, reading_term, ruled_frame
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Working

_A, _DBL, _CENTRES = "A", "DBL", "centres"
_ASKED = {
    _A: "How wide is the {eye} lens by the boxing system, its A?",
    _DBL: "How far apart are the two lenses by the boxing system, DBL?",
    _CENTRES: "How far apart are the two boxed centres?",
}
_PLACES = "the two places between which the number is taken"
_SLIPS_OF = {
    _A: ("bridge-taken-in", "whole-front"),
    _DBL: ("centres-for-lenses", "half-the-bridge"),
    _CENTRES: ("one-width-for-centres", "lenses-for-centres"),
}


class ReadTheBox(Maker[RuledCase]):
    """A boxing number read off a drawing of the pair."""

    name = "read-the-box"
    lesson = "05"
    skill = "boxing"
    slips = (
        Slip(
            name="ruler-not-at-zero",
            step=ZERO_STEP,
            words="You gave what the ruler shows at the far end. It does not begin at the near end: take one "
            "reading from the other.",
        ),
        Slip(
            name="bridge-taken-in",
            step=_PLACES,
            words="You measured from one side of a lens to the same side of the other, so that the bridge is "
            "in it. A is one box alone.",
        ),
        Slip(
            name="whole-front",
            step=_PLACES,
            words="You measured the whole front, both lenses and the bridge. A is one box alone.",
        ),
        Slip(
            name="centres-for-lenses",
            step=_PLACES,
            words="You measured from boxed centre to boxed centre. DBL runs from box to box, over the bridge "
            "alone.",
        ),
        Slip(
            name="half-the-bridge",
            step=_PLACES,
            words="You measured from the middle of the bridge to one lens. DBL runs from lens to lens.",
        ),
        Slip(
            name="one-width-for-centres",
            step=_PLACES,
            words="You gave the width of one box. From boxed centre to boxed centre the bridge lies in "
            "between.",
        ),
        Slip(
            name="lenses-for-centres",
            step=_PLACES,
            words="You measured from lens to lens. From boxed centre to boxed centre half a box is added on "
            "either side.",
        ),
    )

    def draw(self, draws: Draws) -> RuledCase:
        """Return a frame whose widest line seldom is its midline."""
        frame, start = ruled_frame(draws)
        return RuledCase(
            frame=frame,
            eye=draws.one_of(EYES),
            asked=draws.one_of((_A, _A, _DBL, _CENTRES)),
            start_mm=start,
        )

    def kind(self, case: RuledCase) -> NumberAnswer:
        """Return the kind: a length read off to half a millimetre."""
        return NumberAnswer(unit="mm", tolerance=0.5, digits=1)

    def slips_in(self, case: RuledCase) -> tuple[Slip, ...]:
        """Return the slips that fit what is asked."""
        names = ("ruler-not-at-zero", *_SLIPS_OF[case.asked])
        return tuple(slip for slip in self.slips if slip.name in names)

    def _ends(self, case: RuledCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """The two places between which a number is taken, the observer's left one first."""
        half, end = case.frame.dbl_mm / 2.0, case.frame.dbl_mm / 2.0 + case.frame.a_mm
        left, right = case.centre_mm(Eye.RIGHT), case.centre_mm(Eye.LEFT)
        own = (-end, -half) if case.eye is Eye.RIGHT else (half, end)
        ends = {_A: own, _DBL: (-half, half), _CENTRES: (left, right)}[case.asked]
        wrong = {
            "bridge-taken-in": (-end, half) if case.eye is Eye.RIGHT else (-half, end),
            "whole-front": (-end, end),
            "centres-for-lenses": (left, right),
            "half-the-bridge": (0.0, half),
            "one-width-for-centres": own,
            "lenses-for-centres": (-half, half),
        }
        return next((places for name, places in wrong.items() if name in slips), ends)

    def answer(self, case: RuledCase, slips: Set[str] = NONE) -> float:
        """Return one reading less the other, or the far one alone."""
        near, far = (case.reading_mm(place) for place in self._ends(case, slips))
        return far if "ruler-not-at-zero" in slips else far - near

    def prompt(self, case: RuledCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "An invented frame lies over a ruler, seen by somebody who faces the wearer. Thin lines lead "
            "from the sides of both boxes down to the ruler.",
            f"{_ASKED[case.asked].format(eye=case.eye)} Read it off, in mm, to 0.5 mm.",
        )

    def solution(self, case: RuledCase) -> Solution:
        """Return both readings, and what lies between them."""
        near, far = self._ends(case)
        words = {
            _A: ("one side of the box", "its other side"),
            _DBL: ("the nasal side of the right lens", "the nasal side of the left lens"),
            _CENTRES: ("the right lens's boxed centre", "the left lens's boxed centre"),
        }[case.asked]
        return Solution(
            words=(
                "The box touches the outline at its widest and its highest places, wherever those are. Its "
                "sides count, not the midline and not the bridge's own edges.",
                "Where a ruler does not begin at zero, the length is one reading taken from the other.",
            ),
            workings=(
                Working(
                    what="the length asked for",
                    symbol="L",
                    formula="m_2 - m_1",
                    terms=(
                        reading_term("m_1", case.reading_mm(near), words[0]),
                        reading_term("m_2", case.reading_mm(far), words[1]),
                    ),
                    value=self.answer(case),
                    unit="mm",
                    digits=1,
                ),
            ),
        )

    def hints(self, case: RuledCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Between which two of the thin lines does this number lie?",
            "Does the ruler begin where the number begins? If not, what has to be taken off?",
        )

    def drawing(self, case: RuledCase) -> Drawing:
        """Return the rims above their ruler; an answer is drawn from the near end."""
        return case.picture(from_mm=self._ends(case)[0], way="right")
