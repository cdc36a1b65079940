"""Two monocular distances and their total, as a question: which one belongs to which lens."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame
from lablib.study.answer import AnswerKind
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working, plain

_WHICH_STEP = "which of the distances is for one eye"
_HALVED = Slip(
    name="total-halved",
    step=_WHICH_STEP,
    words="You halved the total. Two monocular distances are given: each eye has its own, and they differ.",
)
_TOTAL = Slip(
    name="total-for-one-eye",
    step=_WHICH_STEP,
    words="You gave the total of both eyes. It runs from pupil to pupil; one eye's distance runs from the "
    "middle of the bridge.",
)
_EXCHANGED = Slip(
    name="eyes-exchanged",
    step="which lens belongs to which eye",
    words="You gave the distance of the other eye. Drawings face the wearer: the wearer's right eye is on "
    "your left.",
)
# How the lens is asked for, or how the distances are written. One of the two is always by place on the
# drawing and the other by eye, or there would be nothing to exchange.
_BY_PLACE, _NOTED_BY_PLACE = "by place", "noted by place"
_TICKETED = (
    "A ticket gives the distance from the middle of the bridge to each pupil, and both together. The drawing "
    "shows the frame as it is seen by a person who faces the wearer."
)
_SKETCHED = (
    "Somebody sketched a frame as it is seen by a person who faces the wearer. Under each lens stands the "
    "distance from the middle of the bridge to the pupil, under the bridge both together."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DistanceCase:
    """A wearer's two distances, and the frame on the drawing.

    frame: the frame.
    right_pd_mm, left_pd_mm: monocular distances [mm].
    eye: whose distance is asked.
    way: "by place" where the lens is asked for by its place on the drawing and the distances are noted by
        eye; "noted by place" the other way round.
    """

    frame: Frame
    right_pd_mm: float
    left_pd_mm: float
    eye: Eye
    way: str

    def distance_mm(self, eye: Eye) -> float:
        """Return the monocular distance of an eye [mm].

        eye: whose.
        """
        return self.right_pd_mm if eye is Eye.RIGHT else self.left_pd_mm

    @property
    def total_mm(self) -> float:
        """Both distances together [mm]."""
        return self.right_pd_mm + self.left_pd_mm


def place_on_drawing(eye: Eye) -> str:
    """Return the side of a drawing on which an eye's lens lies, "left" or "right".

    eye: whose lens; its nose lies towards the other side.
    """
    return "left" if eye.nasal_sign > 0 else "right"


def _terms(case: DistanceCase) -> dict[Eye, Term]:
    """The two distances as they are written, by eye."""
    found = {}
    for eye in Eye:
        place = place_on_drawing(eye)
        by_place = case.way == _NOTED_BY_PLACE
        found[eye] = Term(
            symbol=f"d_{place}" if by_place else f"PD_{eye.name[0]}",
            value=case.distance_mm(eye),
            unit="mm",
            digits=1,
            meaning=f"noted under the lens on the {place}" if by_place else f"the wearer's {eye} eye",
        )
    return found


def _off(case: DistanceCase) -> str:
    """How far off half of the total lies, in halves or quarters of a millimetre."""
    off = abs(case.total_mm / 2.0 - case.distance_mm(case.eye))
    return plain(off, 1 if off == round(off, 1) else 2)


class TwoDistances(Maker[DistanceCase]):
    """Take the right one of two monocular distances."""

    name = "two-distances"
    lesson = "01"
    skill = "each-eye-its-distance"
    slips = (_HALVED, _TOTAL, _EXCHANGED)

    def draw(self, draws: Draws) -> DistanceCase:
        """Return a face that is uneven by 1 to 4 mm."""
        shorter_mm = draws.step(27.0, 32.5, 0.5)
        longer_mm = shorter_mm + draws.step(1.0, 4.0, 0.5)
        distances = dict(zip(draws.shuffled(EYES), (shorter_mm, longer_mm), strict=True))
        return DistanceCase(
            frame=Frame(
                a_mm=draws.step(48.0, 56.0, 1.0),
                b_mm=draws.step(32.0, 42.0, 1.0),
                dbl_mm=draws.step(15.0, 20.0, 1.0),
            ),
            right_pd_mm=distances[Eye.RIGHT],
            left_pd_mm=distances[Eye.LEFT],
            eye=draws.one_of(EYES),
            way=draws.one_of((_BY_PLACE, _BY_PLACE, _NOTED_BY_PLACE)),
        )

    def kind(self, case: DistanceCase) -> AnswerKind:
        """Return a distance to a tenth of a millimetre."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=1)

    def answer(self, case: DistanceCase, slips: Set[str] = NONE) -> object:
        """Return the distance of the eye, or what is taken for it."""
        if _TOTAL.name in slips:
            return case.total_mm
        if _HALVED.name in slips:
            return case.total_mm / 2.0
        return case.distance_mm(case.eye.other if _EXCHANGED.name in slips else case.eye)

    def prompt(self, case: DistanceCase) -> tuple[str, ...]:
        """Return how the distances are written and which is asked."""
        asked = f"the wearer's {case.eye} eye"
        if case.way == _BY_PLACE:
            asked = f"the lens on the {place_on_drawing(case.eye)} of the drawing"
        written = _SKETCHED if case.way == _NOTED_BY_PLACE else _TICKETED
        return (written, f"Which distance is for {asked}? Give it in mm, to 0.1 mm.")

    def given(self, case: DistanceCase) -> tuple[Term, ...]:
        """Return both distances and their total, as they are written."""
        terms = _terms(case)
        noted = case.way == _NOTED_BY_PLACE
        first, second = sorted(Eye, key=place_on_drawing)
        total = Term(
            symbol="d_both" if noted else "PD_both",
            value=case.total_mm,
            unit="mm",
            digits=1,
            meaning="noted under the bridge" if noted else "both eyes together",
        )
        return terms[first], terms[second], total

    def solution(self, case: DistanceCase) -> Solution:
        """Return which distance it is and why."""
        place, term = place_on_drawing(case.eye), _terms(case)[case.eye]
        taken = Working(
            what=f"distance for the wearer's {case.eye} eye",
            symbol="PD",
            formula=term.symbol,
            terms=(term,),
            value=case.distance_mm(case.eye),
            unit="mm",
            digits=1,
        )
        return Solution(
            words=(
                f"Drawings face the wearer. The lens on their {place} is the one for the wearer's {case.eye} "
                "eye.",
                f"Each eye has its own distance. Half of the total would put this centre {_off(case)} mm "
                "off, and the other one as much.",
            ),
            workings=(taken,),
        )

    def hints(self, case: DistanceCase) -> tuple[str, ...]:
        """Return what to think of first."""
        return (
            "Faces are seldom even. Is there a distance that belongs to this one eye alone?",
            "A drawing faces the wearer, as you face a person who stands before you. On which side of you is "
            "that person's right hand?",
        )

    def drawing(self, case: DistanceCase) -> Drawing | None:
        """Return the frame without the names of the eyes, which come with the answer.

        None where the distances are noted on a sketch: a wrong answer drawn at the right lens gives it away.
        """
        if case.way == _NOTED_BY_PLACE:
            return None
        return Drawing(
            name="pair",
            values={
                "a_mm": case.frame.a_mm,
                "b_mm": case.frame.b_mm,
                "dbl_mm": case.frame.dbl_mm,
                "right_pd_mm": 0.0,
                "left_pd_mm": 0.0,
                "eye": case.eye.value,
                "measured_from": "bridge",
                "show_eyes": False,
                "shade": False,
            },
        )
