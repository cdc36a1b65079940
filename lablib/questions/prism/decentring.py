"""A question about where the optical centre must lie to give a prism that was ordered."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.prism import decentration_for
from lablib.optics.prism_workings import decentration_workings
from lablib.questions.prism.pictures import centre_drawing
from lablib.questions.prism.terms import MM_PER_CM, SIDEWAYS, WAYS, along, draw_sphere
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

_LEAST_MM, _MOST_MM = 2.0, 12.0
_MOST_PRISM_D = 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DecentringCase:
    """A spherical lens and the prism it shall give by decentration.

    eye: the eye; sphere_d: the power of its lens [D].
    base: "in", "out", "up" or "down"; amount_prism_d: how much [prism D].
    """

    eye: Eye
    sphere_d: float
    base: str
    amount_prism_d: float

    @property
    def is_sideways(self) -> bool:
        """Whether the base is in or out."""
        return self.base in SIDEWAYS

    @property
    def wanted(self) -> tuple[float, float]:
        """The prism base in and base up [prism D]."""
        return along(self.base, self.amount_prism_d)

    @property
    def away_mm(self) -> float:
        """Where the optical centre must lie, inwards or upwards [mm]."""
        both = decentration_for(
            Prescription(sphere_d=self.sphere_d),
            eye=self.eye,
            in_prism_d=self.wanted[0],
            up_prism_d=self.wanted[1],
        )
        return both[0] if self.is_sideways else both[1]

    @property
    def working(self) -> Working:
        """The one step."""
        steps = decentration_workings(
            Prescription(sphere_d=self.sphere_d),
            eye=self.eye,
            in_prism_d=self.wanted[0],
            up_prism_d=self.wanted[1],
        )
        return steps[0] if self.is_sideways else steps[1]


class DecentrationForAPrism(Maker[DecentringCase]):
    """Where the optical centre of a spherical lens must lie for a prism."""

    name = "decentration-for-a-prism"
    lesson = "06"
    skill = "decentration-for-a-prism"
    slips = (
        Slip(
            name="other-way",
            step="the side the optical centre moves to",
            words="You moved the centre to the other side. A plus lens has its base towards its centre, so "
            "its centre moves the way the base is wanted; that of a minus lens moves the opposite way.",
        ),
        Slip(
            name="left-in-centimetres",
            step="the unit of the distance",
            words="You left the distance in centimetres. Prism divided by power gives centimetres: times "
            "ten.",
        ),
        Slip(
            name="rule-turned-over",
            step="which number is divided by which",
            words="You divided the power by the prism. A stronger lens needs less decentration, so divide by "
            "the power.",
        ),
        Slip(
            name="multiplied",
            step="which number is divided by which",
            words="You multiplied the prism by the power, as if the prism were the distance. Distance times "
            "power gives prism, so divide the prism by the power.",
        ),
    )

    def draw(self, draws: Draws) -> DecentringCase:
        """Return a prism that a decentration of a few millimetres gives."""
        return draws.until("a prism by decentration", _draw_case, _can_be_decentred)

    def kind(self, case: DecentringCase) -> NumberAnswer:
        """Return the kind: a distance to a tenth of a millimetre."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=1)

    def answer(self, case: DecentringCase, slips: Set[str] = NONE) -> float:
        """Return the distance. The wrong steps are sums of their own: the rule turned over, or multiplied."""
        away = case.away_mm
        wanted = case.wanted[0] if case.is_sideways else case.wanted[1]
        if "rule-turned-over" in slips:
            away = MM_PER_CM * case.sphere_d / wanted
        if "multiplied" in slips:
            away = case.sphere_d * wanted / MM_PER_CM
        if "left-in-centimetres" in slips:
            away = away / MM_PER_CM
        return -away if "other-way" in slips else away

    def prompt(self, case: DecentringCase) -> tuple[str, ...]:
        """Return the order and what is asked."""
        way, minus = ("in", "out") if case.is_sideways else ("up", "down")
        return (
            f"An invented order: {case.eye} eye, sphere {written_power(case.sphere_d)} D, with "
            f"{case.amount_prism_d:.2f} prism dioptres base {case.base}, to be had by decentration.",
            f"How far {way} from the pupil must the optical centre lie? Write {minus} as minus. Answer in "
            "mm, to 0.1 mm.",
        )

    def given(self, case: DecentringCase) -> tuple[Term, ...]:
        """Return nothing: prism and power stand in the prompt, and their signs are part of the question."""
        return ()

    def drawing(self, case: DecentringCase) -> Drawing:
        """Return the lens with the ordered base before the pupil."""
        return centre_drawing(case.eye, case.wanted, is_sideways=case.is_sideways, most_prism_d=_MOST_PRISM_D)

    def solution(self, case: DecentringCase) -> Solution:
        """Return which way and how far."""
        way = "the way the base is wanted" if case.sphere_d > 0.0 else "against the wanted base"
        kind = "plus" if case.sphere_d > 0.0 else "minus"
        return Solution(
            words=(
                "Prentice's rule the other way round: distance in centimetres = prism / power.",
                f"The base of a {kind} lens lies {'towards' if case.sphere_d > 0.0 else 'away from'} its "
                f"centre, so the centre moves {way}. With base in and up as plus and the sign of the power, "
                "the sign comes out by itself.",
            ),
            workings=(case.working,),
        )

    def hints(self, case: DecentringCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Sketch the lens cut in two. Where is it thick, and where must the thick side lie before the "
            "pupil?",
            "Prism = power times distance in centimetres. Solve it for the distance, then turn centimetres "
            "into millimetres.",
        )


def _draw_case(draws: Draws) -> DecentringCase:
    return DecentringCase(
        eye=draws.one_of(EYES),
        sphere_d=draw_sphere(draws, 2.0, 8.0),
        base=draws.one_of(tuple(WAYS)),
        amount_prism_d=draws.step(0.5, _MOST_PRISM_D, 0.25),
    )


def _can_be_decentred(case: DecentringCase) -> bool:
    return _LEAST_MM <= round(abs(case.away_mm), 6) <= _MOST_MM
