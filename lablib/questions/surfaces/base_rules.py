"""A question about the front curve: two rules of thumb that do not agree."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.base_curve import bhootra_front_curve_d, front_curves, stronger_meridian_d
from lablib.optics.base_curve_workings import bhootra_front_curve_workings
from lablib.optics.form_workings import vogel_front_curve_workings
from lablib.optics.prescription import Prescription
from lablib.optics.terms import power_term, sphere_and_cylinder
from lablib.optics.thick_lens import vogel_front_curve_d
from lablib.questions.answers.units import DIOPTRE
from lablib.questions.front_curve import vogel_for_the_other_sign_d
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

_POWER = "the power the rule starts from"
_OTHER_RULE = Slip(
    name="the-other-rule",
    step="which of the two rules is asked",
    words="You worked out the other rule. The two do not agree, so say which one you use.",
)
_SPHERE = Slip(
    name="sphere-for-equivalent",
    step=_POWER,
    words="You started from the sphere. The first rule starts from the spherical equivalent, sphere and half "
    "the cylinder.",
)
_OTHER_SIGN = Slip(
    name="share-of-the-other-sign",
    step="how much of the power counts",
    words="You took the share for the other sign. In the first rule a plus lens takes all of its equivalent "
    "and a minus lens half of it.",
)
_WEAKER = Slip(
    name="weaker-meridian",
    step=_POWER,
    words="You started from the weaker meridian. The second rule takes the stronger one, whatever form the "
    "lens is written in.",
)
_EQUIVALENT = Slip(
    name="equivalent-for-stronger-meridian",
    step=_POWER,
    words="You started from the spherical equivalent. The second rule takes the stronger of the two "
    "meridians.",
)
_ASKED = {True: "first", False: "second"}


@dataclass(frozen=True, slots=True, kw_only=True)
class RulesCase:
    """A lens, and which of the two rules is asked.

    rx: the lens, of one sign in both meridians; is_first: whether the first rule is asked.
    """

    rx: Prescription
    is_first: bool

    @property
    def weaker_d(self) -> float:
        """The power of the weaker meridian [D]."""
        return 2.0 * self.rx.spherical_equivalent_d - stronger_meridian_d(self.rx)


class BaseCurveTwoRules(Maker[RulesCase]):
    """The front curve by one of two rules that disagree."""

    name = "base-curve-two-rules"
    lesson = "03"
    skill = "front-curve-by-rule"
    slips = (_OTHER_RULE, _SPHERE, _OTHER_SIGN, _WEAKER, _EQUIVALENT)

    def draw(self, draws: Draws) -> RulesCase:
        """Return a toric lens of one sign; a minus one with a minus cylinder, or slips would coincide."""
        weaker, cylinder = draws.step(1.0, 4.0, 0.25), draws.step(1.0, 2.5, 0.25)
        sign = draws.one_of((1.0, -1.0))
        rx = Prescription(
            sphere_d=sign * weaker, cylinder_d=sign * cylinder, axis_deg=draws.step(5.0, 180.0, 5.0)
        )
        if sign > 0.0 and draws.whole(2):
            rx = rx.transposed()
        return RulesCase(rx=rx, is_first=draws.whole(2) == 0)

    def kind(self, case: RulesCase) -> NumberAnswer:
        """Return the kind: a signed power."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.06, digits=2, signed=True)

    def slips_in(self, case: RulesCase) -> tuple[Slip, ...]:
        """Return the slips of the rule that is asked; on a minus lens one of them is the other rule."""
        if case.is_first:
            return self.slips[:3]
        plus = case.rx.spherical_equivalent_d > 0.0
        return (_OTHER_RULE, _WEAKER, _EQUIVALENT) if plus else (_OTHER_RULE, _WEAKER)

    def answer(self, case: RulesCase, slips: Set[str] = NONE) -> float:
        """Return the curve by the rule that is asked."""
        if case.is_first == (_OTHER_RULE.name in slips):
            return self._second(case, slips)
        power = case.rx.sphere_d if _SPHERE.name in slips else case.rx.spherical_equivalent_d
        return vogel_for_the_other_sign_d(power) if _OTHER_SIGN.name in slips else vogel_front_curve_d(power)

    def _second(self, case: RulesCase, slips: Set[str]) -> float:
        powers = {_WEAKER.name: case.weaker_d, _EQUIVALENT.name: case.rx.spherical_equivalent_d}
        wrong = next((powers[name] for name in powers if name in slips), None)
        return bhootra_front_curve_d(case.rx if wrong is None else Prescription(sphere_d=wrong))

    def prompt(self, case: RulesCase) -> tuple[str, ...]:
        """Return both rules and which is asked."""
        return (
            "Two rules of thumb for the front curve. First rule: a plus lens takes its spherical equivalent "
            "plus 6, a minus lens half of it plus 6. Second rule: half the power of the stronger meridian, "
            "plus 6.",
            f"An invented lens is {case.rx}. Which front curve does the {_ASKED[case.is_first]} rule give? "
            "Answer in D with its sign, to 0.01 D.",
        )

    def given(self, case: RulesCase) -> tuple[Term, ...]:
        """Return sphere and cylinder."""
        return sphere_and_cylinder(case.rx)

    def solution(self, case: RulesCase) -> Solution:
        """Return the rule that is asked, and what the other gives."""
        curves = front_curves(case.rx)
        workings = vogel_front_curve_workings if case.is_first else bhootra_front_curve_workings
        return Solution(
            words=(
                f"The first rule gives {_curve(curves.vogel_d)} D, the second {_curve(curves.bhootra_d)} D.",
                "The first is Vogel's rule, told from memory. The second is inferred from two values in "
                "Bhootra, Ophthalmic Lenses, p. 25. Where the lens maker has a chart of curves, the chart "
                "goes before both.",
            ),
            workings=workings(case.rx),
        )

    def hints(self, case: RulesCase) -> tuple[str, ...]:
        """Return hints."""
        start = (
            "What is the spherical equivalent of this lens, and is it plus or minus?"
            if case.is_first
            else "Write down the power along the axis and the power across it. Which is the stronger?"
        )
        return ("Read once more which rule is asked.", start)


def _curve(power_d: float) -> str:
    """A curve with its sign, in full: a tie printed to two decimals would look like a slip in the last."""
    sign = "+" if power_d > 0.0 else ""
    return f"{sign}{power_term('F_1', power_d, 'front curve').printed}"
