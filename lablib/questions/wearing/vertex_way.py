"""A question about vertex distance: which way a power has to change, without numbers."""

from collections.abc import Set

from lablib.optics.power_workings import vertex_distance_workings
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.terms import power_term
from lablib.questions.power.vertex import VertexCase
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_STRONGER, _WEAKER, _SAME = "stronger", "weaker", "as-written"


class VertexWay(Maker[VertexCase]):
    """Whether a lens is ordered stronger or weaker when it is worn at another distance."""

    name = "vertex-way"
    lesson = "09"
    skill = "way-of-the-vertex-change"
    slips = (
        Slip(
            name="wrong-way",
            step="which way the power changes",
            words="You changed it the other way. The focus has to stay where it is: a plus lens that comes "
            "nearer to the eye has less way to it and needs more power, a minus lens that comes nearer "
            "needs less.",
        ),
        Slip(
            name="left-as-written",
            step="whether the power changes",
            words="You left it as written. At this power a few millimetres are worth more than a quarter "
            "dioptre.",
        ),
    )

    def draw(self, draws: Draws) -> VertexCase:
        """Return a lens so strong that the move is worth a quarter dioptre or more."""

        def one(draws: Draws) -> VertexCase:
            rx = Prescription(sphere_d=draws.step(6.0, 14.0, 0.25) * draws.one_of((-1.0, 1.0)))
            tested = draws.step(11.0, 15.0, 1.0)
            return VertexCase(
                rx=rx, from_mm=tested, to_mm=tested + draws.one_of((-5.0, -4.0, -3.0, 3.0, 4.0, 5.0))
            )

        return draws.until(
            "a move that is worth a quarter dioptre", one, lambda case: abs(_change_d(case)) >= 0.25
        )

    def kind(self, case: VertexCase) -> ChoiceAnswer:
        """Return the kind: three ways to order."""
        return ChoiceAnswer(
            options=(
                Option(key=_STRONGER, words="A stronger lens: more plus for plus, more minus for minus."),
                Option(key=_WEAKER, words="A weaker lens: less plus for plus, less minus for minus."),
                Option(key=_SAME, words="The lens as it was tested."),
            )
        )

    def answer(self, case: VertexCase, slips: Set[str] = NONE) -> str:
        """Return which way the power changes; the wrong way takes the distances for one another."""
        if "left-as-written" in slips:
            return _SAME
        is_stronger = _change_d(case) > 0.0
        return _STRONGER if is_stronger != ("wrong-way" in slips) else _WEAKER

    def pairs(self, case: VertexCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: VertexCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"An invented wearer was tested with {case.rx} at {case.from_mm:g} mm from the cornea. The "
            f"frame holds the lens at {case.to_mm:g} mm. The prescriber agrees that the power is changed "
            "for it.",
            "What is ordered?",
        )

    def given(self, case: VertexCase) -> tuple[Term, ...]:
        """Return power and distances."""
        return (power_term("S", case.rx.sphere_d, "sphere"), *case.terms)

    def solution(self, case: VertexCase) -> Solution:
        """Return the way and the amount."""
        nearer = "nearer to the eye" if case.to_mm < case.from_mm else "farther from the eye"
        moved = at_vertex_distance(case.rx, from_mm=case.from_mm, to_mm=case.to_mm)
        return Solution(
            words=(
                f"The lens sits {nearer} than at the test. Its focus has to stay at the eye's far point, so "
                "its focal length changes by just that way.",
                "A plus lens has its focus behind it: nearer to the eye its focal length is shorter and its "
                "power greater. A minus lens has its focus in front: nearer to the eye its focal length is "
                "longer and its power less.",
                f"In numbers: {moved}.",
            ),
            workings=vertex_distance_workings(case.rx, from_mm=case.from_mm, to_mm=case.to_mm),
        )

    def hints(self, case: VertexCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw the focus of the lens, behind it for plus and in front of it for minus.",
            "The focus stays where it is and the lens moves. Does the focal length grow or shrink?",
        )


def _change_d(case: VertexCase) -> float:
    """How much stronger the lens has to be, in its own sign; minus for weaker [D]."""
    moved = at_vertex_distance(case.rx, from_mm=case.from_mm, to_mm=case.to_mm)
    return round(abs(moved.sphere_d) - abs(case.rx.sphere_d), 6)
