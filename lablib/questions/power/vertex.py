"""A question about a sphere that is worn at another distance from the eye than it was tested at."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.power_workings import vertex_distance_workings
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.terms import distance_term, sphere_and_cylinder
from lablib.optics.vertex_rule import at_vertex_distance_by_rule, vertex_change_by_rule_d
from lablib.questions.answers.units import DIOPTRE
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term

WRONG_WAY = Slip(
    name="wrong-way",
    step="which way the power changes",
    words="You went the wrong way. Closer to the eye a minus lens needs less minus and a plus lens more "
    "plus; farther off it is the other way round.",
)
_MILLIMETRES = Slip(
    name="millimetres-for-metres",
    step="the distance in metres",
    words="You put millimetres into the formula. A dioptre is one over a metre, so the distance goes in as "
    "metres: divide it by 1000.",
)
_BY_RULE = Slip(
    name="rule-for-exact",
    step="the formula",
    words="You used the rule of thumb, distance times the square of the power. On a power this strong it "
    "parts from the exact one, which is asked.",
)
_CORNEA_MM = 0.0
_MM_PER_M = 1000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class VertexCase:
    """A lens tested at one distance from the cornea and worn at another.

    rx: as tested; from_mm, to_mm: tested and worn vertex distance [mm], 0 for a lens on the cornea.
    """

    rx: Prescription
    from_mm: float
    to_mm: float

    @property
    def words(self) -> str:
        """What happens to the lens, as a sentence."""
        tested = f"An invented wearer was tested with {self.rx} at {self.from_mm:g} mm from the cornea."
        if self.to_mm == _CORNEA_MM:
            return f"{tested} The lens is to be a contact lens, on the cornea."
        return f"{tested} The new frame holds the lens at {self.to_mm:g} mm."

    @property
    def terms(self) -> tuple[Term, Term]:
        """Both distances as they are told."""
        return (
            distance_term("d1", self.from_mm, "tested vertex distance"),
            distance_term("d2", self.to_mm, "worn vertex distance"),
        )


class VertexSphere(Maker[VertexCase]):
    """The sphere that does the same at another vertex distance."""

    name = "vertex-sphere"
    lesson = "03"
    skill = "vertex-distance"
    slips = (WRONG_WAY, _MILLIMETRES, _BY_RULE)

    def draw(self, draws: Draws) -> VertexCase:
        """Return a strong sphere that goes to the cornea, or some millimetres nearer or farther."""
        power = draws.step(6.0, 15.0, 0.25) * draws.one_of((-1.0, 1.0))
        pairs = ((12.0, 0.0), (13.0, 0.0), (14.0, 0.0), (14.0, 9.0), (14.0, 10.0), (15.0, 10.0), (10.0, 14.0))
        from_mm, to_mm = draws.one_of(pairs)
        return VertexCase(rx=Prescription(sphere_d=power), from_mm=from_mm, to_mm=to_mm)

    def kind(self, case: VertexCase) -> NumberAnswer:
        """Return the kind: a signed power."""
        return NumberAnswer(unit="D", also=DIOPTRE, tolerance=0.06, digits=2, signed=True)

    def slips_in(self, case: VertexCase) -> tuple[Slip, ...]:
        """Return all slips, the rule of thumb only where it parts from the exact power."""
        apart = self.kind(case).apart(self.answer(case), self.answer(case, {_BY_RULE.name}))
        return self.slips if apart else self.slips[:-1]

    def answer(self, case: VertexCase, slips: Set[str] = NONE) -> float:
        """Return the sphere as worn. Millimetres go in as so many metres."""
        ends = (case.to_mm, case.from_mm) if WRONG_WAY.name in slips else (case.from_mm, case.to_mm)
        power, by_rule = case.rx.sphere_d, _BY_RULE.name in slips
        if _MILLIMETRES.name in slips:
            closer = ends[0] - ends[1]
            if by_rule:
                return power + vertex_change_by_rule_d(power, closer_mm=closer * _MM_PER_M)
            return power / (1.0 - closer * power)
        move = at_vertex_distance_by_rule if by_rule else at_vertex_distance
        return move(case.rx, from_mm=ends[0], to_mm=ends[1]).sphere_d

    def prompt(self, case: VertexCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            case.words,
            "Which sphere has the same effect there, exactly? Answer in D with its sign, to 0.01 D.",
        )

    def given(self, case: VertexCase) -> tuple[Term, ...]:
        """Return sphere and distances."""
        return (sphere_and_cylinder(case.rx)[0], *case.terms)

    def solution(self, case: VertexCase) -> Solution:
        """Return why the power changes, and the step."""
        return Solution(
            words=(
                "The focus of the lens has to stay where it is, seen from the eye. The lens moves, so the "
                "way from the lens to the focus changes, and with it the power.",
                "Closer to the eye, a plus lens comes nearer to its focus, so it needs more plus. A minus "
                "lens gets farther from its focus, which lies in front, so it needs less minus.",
                "The prescriber is asked before a power is changed; the bench works it out and keeps the "
                "answer with the job.",
            ),
            workings=vertex_distance_workings(case.rx, from_mm=case.from_mm, to_mm=case.to_mm),
        )

    def hints(self, case: VertexCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Where is the focus of the lens? Does the lens get nearer to it or farther from it?",
            "Nearer to its focus a lens must be stronger, farther from it weaker. Which is it here?",
            "In F / (1 - d F) the distance stands in metres; it is tested less worn distance.",
        )
