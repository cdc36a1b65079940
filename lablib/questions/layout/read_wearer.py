"""A question read off a drawing of the pair as worn: a monocular distance."""

from collections.abc import Set

from lablib.optics.eye import EYES, Eye
from lablib.questions.layout.ruled import ZERO_STEP, RuledCase, reading_term, ruled_frame
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Working

_FAR, _NEAR = "far", "at a page"
# How uneven a face is: so much that half of both can be told from either [mm].
_APART_MM = (2.5, 3.0, 3.5, 4.0)


class ReadTheWearer(Maker[RuledCase]):
    """A monocular distance read off a drawing of the pair as worn."""

    name = "read-the-wearer"
    lesson = "05"
    skill = "distances-measured"
    slips = (
        Slip(
            name="half-of-both-pupils",
            step="the choice of this eye's own distance",
            words="You halved the distance from pupil to pupil. This face is uneven: measure from the middle "
            "of the bridge.",
        ),
        Slip(
            name="pupil-to-pupil",
            step="where the distance begins",
            words="You measured from pupil to pupil. A monocular distance begins at the middle of the "
            "bridge.",
        ),
        Slip(
            name="the-other-pupil",
            step="the choice of this eye's own distance",
            words="You measured to the other pupil. Somebody who faces the wearer has the right eye at the "
            "left.",
        ),
        Slip(
            name="from-the-boxed-centre",
            step="where the distance begins",
            words="You measured from the boxed centre to the pupil. That is decentration; the distance "
            "begins at the middle of the bridge.",
        ),
        Slip(
            name="reading-at-the-pupil",
            step=ZERO_STEP,
            words="You gave what the ruler shows at the pupil. The middle of the bridge is not at its zero: "
            "take one reading from the other.",
        ),
    )

    def draw(self, draws: Draws) -> RuledCase:
        """Return a face that is uneven enough to be seen."""
        frame, start = ruled_frame(draws)
        asked = draws.one_of((_FAR, _FAR, _NEAR))
        smaller = draws.step(27.0, 32.0, 0.5) - (2.0 if asked == _NEAR else 0.0)
        right, left = draws.shuffled((smaller, smaller + draws.one_of(_APART_MM)))
        return RuledCase(
            frame=frame,
            eye=draws.one_of(EYES),
            asked=asked,
            start_mm=start,
            right_pd_mm=right,
            left_pd_mm=left,
        )

    def kind(self, case: RuledCase) -> NumberAnswer:
        """Return the kind: a distance read off to half a millimetre."""
        return NumberAnswer(unit="mm", tolerance=0.5, digits=1)

    def answer(self, case: RuledCase, slips: Set[str] = NONE) -> float:
        """Return how far the pupil lies from the middle of the bridge, or what is taken for it."""
        eye = case.eye.other if "the-other-pupil" in slips else case.eye
        pupil, start = case.pupil_mm(eye), 0.0
        if "from-the-boxed-centre" in slips:
            start = case.centre_mm(eye)
        if "pupil-to-pupil" in slips:
            start = case.pupil_mm(eye.other)
        if "reading-at-the-pupil" in slips:
            return case.reading_mm(pupil)
        if "half-of-both-pupils" in slips:
            return abs(pupil - case.pupil_mm(eye.other)) / 2.0
        return abs(pupil - start)

    def prompt(self, case: RuledCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented wearer looks {case.asked}, the frame adjusted on the face. Both pupils are marked "
            "on the lenses, and a ruler lies below. You face the wearer.",
            f"How large is the monocular distance of the {case.eye} eye? Read it off, in mm, to 0.5 mm.",
        )

    def solution(self, case: RuledCase) -> Solution:
        """Return both readings, and what lies between them."""
        bridge, pupil = case.reading_mm(0.0), case.reading_mm(case.pupil_mm(case.eye))
        return Solution(
            words=(
                "A monocular distance runs from the middle of the bridge to the pupil. Each eye has its own; "
                "half of both would put both centres off.",
            ),
            workings=(
                Working(
                    what=f"monocular distance of the {case.eye} eye",
                    symbol="PD",
                    formula="abs(m_p - m_b)",
                    terms=(
                        reading_term("m_p", pupil, "the pupil"),
                        reading_term("m_b", bridge, "the middle of the bridge"),
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
            "Where does a monocular distance begin, and at which of the two pupils does this one end?",
            "Take both readings off the ruler. One of them is not zero.",
        )

    def drawing(self, case: RuledCase) -> Drawing:
        """Return the rims with both pupils; an answer is drawn from the middle of the bridge."""
        return case.picture(from_mm=0.0, way="left" if case.eye is Eye.RIGHT else "right")
