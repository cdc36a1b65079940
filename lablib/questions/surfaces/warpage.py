"""A question about warpage: one surface, read in two meridians before and after it went into its rim."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.lens_measure import warpage_d
from lablib.optics.lens_measure_workings import warpage_working
from lablib.optics.terms import power_term
from lablib.questions.answers.units import DIOPTRE
from lablib.questions.practice import usual
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_COMPARED = "which two readings are compared"
_MEAN = Slip(
    name="mean-for-difference",
    step="what is made of the two readings",
    words="You gave the mean of the two readings. It says how strong the curve is; warpage is how far its "
    "two meridians are apart.",
)
_AGAINST_ORDER = Slip(
    name="against-the-first-reading",
    step=_COMPARED,
    words="You compared with the reading before mounting. That is how far one meridian was bent; warpage is "
    "the difference between the two meridians now.",
)
_LIMIT_D = usual("warpage_limit")


@dataclass(frozen=True, slots=True, kw_only=True)
class WarpageCase:
    """Readings on a front that was a sphere.

    before_d: before mounting, in every meridian [D].
    along_d, across_d: in the rim, along 180 and along 90 [D].
    """

    before_d: float
    along_d: float
    across_d: float


class Warpage(Maker[WarpageCase]):
    """How far a rim has bent a front surface out of a sphere."""

    name = "warpage"
    lesson = "03"
    skill = "warpage"
    slips = (_MEAN, _AGAINST_ORDER)

    def draw(self, draws: Draws) -> WarpageCase:
        """Return a front that a rim has bent up in one meridian and down in the other."""
        before, sign = draws.step(3.0, 7.0, 0.25), draws.one_of((1.0, -1.0))
        return WarpageCase(
            before_d=before,
            along_d=before + sign * draws.step(0.25, 0.75, 0.25),
            across_d=before - sign * draws.step(0.25, 0.75, 0.25),
        )

    def kind(self, case: WarpageCase) -> NumberAnswer:
        """Return the kind: an amount."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.06, digits=2)

    def answer(self, case: WarpageCase, slips: Set[str] = NONE) -> float:
        """Return the warpage. Against the reading before mounting, the meridian that moved more is taken."""
        one, other = case.along_d, case.across_d
        if _AGAINST_ORDER.name in slips:
            one = max(one, other, key=lambda reading: abs(reading - case.before_d))
            other = case.before_d
        return (one + other) / 2.0 if _MEAN.name in slips else warpage_d(one, other)

    def prompt(self, case: WarpageCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The front of an invented lens reads {case.before_d:+.2f} D all round before it is mounted. In "
            f"its rim the same lens measure shows {case.along_d:+.2f} D along 180 and {case.across_d:+.2f} D "
            "along 90.",
            "How large is the warpage? Answer in D, without a sign, to 0.01 D.",
        )

    def given(self, case: WarpageCase) -> tuple[Term, ...]:
        """Return the three readings."""
        return (
            power_term("R0", case.before_d, "reading before mounting, in every meridian"),
            power_term("R1", case.along_d, "reading along one meridian"),
            power_term("R2", case.across_d, "reading at right angles to it"),
        )

    def solution(self, case: WarpageCase) -> Solution:
        """Return the difference, and what it is held against."""
        warped = round(self.answer(case), 2)
        verdict = "within it" if warped <= _LIMIT_D else "above it"
        return Solution(
            words=(
                "A sphere reads the same in every meridian. A rim that is too tight or has another curve "
                "bends it, and then two meridians differ. That difference is the warpage.",
                f"ANSI Z80.1-2015 allows {_LIMIT_D:.2f} D; {warped:.2f} D is {verdict}. Find out why all the "
                "same: a lens that sits under strain can crack later.",
            ),
            workings=(warpage_working(case.along_d, case.across_d),),
        )

    def hints(self, case: WarpageCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What would the two meridians of a sphere read?",
            "Only the two readings taken in the rim are compared.",
        )
