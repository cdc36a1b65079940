"""A question about optical centres that stand wider or narrower than the wearer's pupils."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.eye import Eye
from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.prism_pair import PrismPair, inwards_of_centre_mm, prism_of_centres
from lablib.optics.prism_pair_workings import centres_workings
from lablib.questions.answers.prism import PrismAnswer
from lablib.questions.prism.pictures import centres_drawing
from lablib.questions.prism.terms import CENTIMETRES, MM_PER_CM, draw_sphere
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

_OFF_MM = (-6.0, -4.0, -3.0, -2.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class CentresCase:
    """A pair of equal spheres whose centres do not stand where the pupils are.

    sphere_d: power of both lenses [D].
    centres_mm: from optical centre to optical centre [mm]; pd_mm: from pupil to pupil [mm].
    """

    sphere_d: float
    centres_mm: float
    pd_mm: float

    @property
    def _way(self) -> dict[str, float]:
        half_centres, half_pd = self.centres_mm / 2.0, self.pd_mm / 2.0
        return {
            "right_centre_mm": half_centres,
            "left_centre_mm": half_centres,
            "right_pd_mm": half_pd,
            "left_pd_mm": half_pd,
        }

    @property
    def pair(self) -> PrismPair:
        """The prism of both eyes."""
        lens = Prescription(sphere_d=self.sphere_d)
        return prism_of_centres(lens, lens, **self._way)

    @property
    def workings(self) -> tuple[Working, ...]:
        """Each eye's share of both distances, then its prism, then both together."""
        lens = Prescription(sphere_d=self.sphere_d)
        steps = centres_workings(lens, lens, **self._way)
        wanted = [step for step in steps if not step.symbol.startswith("P_up")]
        return (*(self._half(eye, *one) for eye in Eye for one in self._halves), *wanted)

    @property
    def _halves(self) -> tuple[tuple[str, Term, str], ...]:
        centres, pupils = self.distances
        return (
            ("c", centres, "middle of the bridge to the optical centre"),
            ("PD", pupils, "middle of the bridge to the pupil"),
        )

    def _half(self, eye: Eye, symbol: str, whole: Term, what: str) -> Working:
        return Working(
            what=f"{eye} eye: {what}",
            symbol=f"{symbol}_{eye.name[0]}",
            formula=f"{whole.symbol} / 2",
            terms=(whole,),
            value=whole.value / 2.0,
            unit="mm",
            digits=1,
        )

    @property
    def distances(self) -> tuple[Term, Term]:
        """Both distances as they are told."""
        return (
            Term(
                symbol="C",
                value=self.centres_mm,
                unit="mm",
                digits=0,
                meaning="from optical centre to optical centre, as dotted",
            ),
            Term(symbol="PD_both", value=self.pd_mm, unit="mm", digits=0, meaning="from pupil to pupil"),
        )


class CentresTooWide(Maker[CentresCase]):
    """What optical centres wider or narrower than the pupils put before both eyes."""

    name = "centres-too-wide"
    lesson = "06"
    skill = "centres-off-the-pupils"
    slips = (
        Slip(
            name="base-of-the-other-sign",
            step="the direction of the base",
            words="You gave the opposite base. Where the centres lie too wide, the eyes look through points "
            "inwards of them: base in through minus lenses, base out through plus lenses. Where they lie too "
            "narrow, it is the other way round.",
        ),
        Slip(
            name="one-eye-alone",
            step="each eye's share of the difference",
            words="You gave the prism of one eye. Asked is what both get together; sideways the same word "
            "adds.",
        ),
        Slip(
            name="whole-difference-in-each-eye",
            step="each eye's share of the difference",
            words="You took the whole difference for each eye. Each lens is off by half of it.",
        ),
        CENTIMETRES,
    )

    def draw(self, draws: Draws) -> CentresCase:
        """Return a pair whose centres are off by a few millimetres, not 10."""
        pd = draws.step(58.0, 68.0, 1.0)
        return CentresCase(
            sphere_d=draw_sphere(draws, 1.5, 7.0),
            centres_mm=pd + draws.one_of(_OFF_MM),
            pd_mm=pd,
        )

    def kind(self, case: CentresCase) -> PrismAnswer:
        """Return the kind: an amount with its base; in and out are the same words for both eyes."""
        return PrismAnswer(eye=Eye.RIGHT, tolerance_prism_d=0.05)

    def answer(self, case: CentresCase, slips: Set[str] = NONE) -> tuple[float, float]:
        """Return base in of both eyes together, and nothing up or down."""
        if "base-of-the-other-sign" in slips:
            case = replace(case, sphere_d=-case.sphere_d)
        if "whole-difference-in-each-eye" in slips:
            case = replace(case, centres_mm=2.0 * case.centres_mm - case.pd_mm)
        pair = case.pair
        inwards = pair.right_in_prism_d if "one-eye-alone" in slips else pair.between[0]
        return inwards * (MM_PER_CM if CENTIMETRES.name in slips else 1.0), 0.0

    def prompt(self, case: CentresCase) -> tuple[str, ...]:
        """Return the pair and what is asked."""
        return (
            f"An invented pair, both lenses {written_power(case.sphere_d)} D, no prism ordered. The "
            "distances show how it was made and how it is worn; both eyes stand alike.",
            "Which prism do both eyes get together? Give the amount to 0.01 and the base, as in 1.50 base "
            "in.",
        )

    def given(self, case: CentresCase) -> tuple[Term, ...]:
        """Return both distances."""
        return case.distances

    def drawing(self, case: CentresCase) -> Drawing:
        """Return the pair, its centres and where the eyes look through."""
        half = case.centres_mm / 2.0
        return centres_drawing(
            Prescription(sphere_d=case.sphere_d),
            centre_mm=half,
            in_mm=inwards_of_centre_mm(centre_mm=half, pd_mm=case.pd_mm / 2.0),
            most_in_mm=max(_OFF_MM) / 2.0,
        )

    def solution(self, case: CentresCase) -> Solution:
        """Return where the eyes look through, which base that gives, and both together."""
        wider = case.centres_mm > case.pd_mm
        centres = "wider" if wider else "narrower"
        kind, word = (
            ("plus" if case.sphere_d > 0.0 else "minus"),
            ("in" if case.pair.right_in_prism_d > 0.0 else "out"),
        )
        return Solution(
            words=(
                f"The centres stand {centres} than the pupils, so each eye looks through a point "
                f"{'inwards' if wider else 'outwards'} of its centre.",
                f"A {kind} lens has its base {'towards' if case.sphere_d > 0.0 else 'away from'} its centre: "
                f"before both eyes the base is {word}. Sideways, the same word in both eyes adds up.",
            ),
            workings=case.workings,
        )

    def hints(self, case: CentresCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "On which side of its optical centre does each eye look through its lens?",
            "How much of the difference between the two distances belongs to each eye?",
            "In and out are named from the nose. Do base in and base in help or cancel each other?",
        )
