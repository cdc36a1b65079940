"""A question about the image jump at the top of a segment."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.power import written_power
from lablib.optics.segment import Segment, segment, segment_names
from lablib.optics.segment_prism import image_jump_prism_d
from lablib.optics.segment_workings import image_jump_working
from lablib.questions.answers.units import PRISM_DIOPTRE
from lablib.questions.multifocals.case import millimetres
from lablib.questions.prism.terms import CENTIMETRES, MM_PER_CM, draw_sphere
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class JumpCase:
    """A bifocal.

    segment: its segment; sphere_d: power for distance [D]; addition_d: addition [D].
    """

    segment: Segment
    sphere_d: float
    addition_d: float

    @property
    def working(self) -> Working:
        """The one step."""
        return image_jump_working(self.addition_d, centre_below_top_mm=self.segment.centre_below_top_mm)


class ImageJump(Maker[JumpCase]):
    """The prism that begins at the top of a segment."""

    name = "image-jump"
    lesson = "08"
    skill = "image-jump"
    slips = (
        Slip(
            name="depth-for-centre",
            step="the distance that counts",
            words="You used the depth of the segment. The jump depends on how far below its top the segment "
            "has its optical centre.",
        ),
        CENTIMETRES,
        Slip(
            name="distance-power-for-addition",
            step="the power that begins at the top",
            words="You used the power for distance. It is there above the top and below it alike; what "
            "begins at the top is the addition.",
        ),
        Slip(
            name="near-power-for-addition",
            step="the power that begins at the top",
            words="You used the whole power for near. The distance power is there above the top already; "
            "only the addition is new.",
        ),
    )

    def draw(self, draws: Draws) -> JumpCase:
        """Return a bifocal of a usual size."""
        return JumpCase(
            segment=segment(draws.one_of(segment_names())),
            sphere_d=draw_sphere(draws, 0.75, 5.0),
            addition_d=draws.step(1.0, 3.0, 0.25),
        )

    def kind(self, case: JumpCase) -> NumberAnswer:
        """Return the kind: an amount of prism."""
        return NumberAnswer(unit="prism dioptres", also=PRISM_DIOPTRE, tolerance=0.02, digits=2)

    def answer(self, case: JumpCase, slips: Set[str] = NONE) -> float:
        """Return the amount; another power or another distance goes the same way."""
        power, below = case.addition_d, case.segment.centre_below_top_mm
        if "distance-power-for-addition" in slips:
            power = abs(case.sphere_d)
        if "near-power-for-addition" in slips:
            power = abs(case.sphere_d + case.addition_d)
        if "depth-for-centre" in slips:
            below = case.segment.depth_mm
        factor = MM_PER_CM if CENTIMETRES.name in slips else 1.0
        return factor * image_jump_prism_d(power, centre_below_top_mm=below)

    def prompt(self, case: JumpCase) -> tuple[str, ...]:
        """Return the lens and what is asked."""
        return (
            f"An invented bifocal, {case.segment.words}: {written_power(case.sphere_d)} D for distance. Its "
            "segment is described beside this.",
            "How large is the image jump at the top of the segment? Answer in prism dioptres, to 0.01.",
        )

    def given(self, case: JumpCase) -> tuple[Term, ...]:
        """Return the addition and the sizes of the segment."""
        centre = case.segment.centre_below_top_mm
        return (
            Term(symbol="Add", value=case.addition_d, unit="D", digits=2, meaning="addition"),
            millimetres("w", case.segment.width_mm, "width of the segment"),
            millimetres("g", case.segment.depth_mm, "depth of the segment"),
            millimetres("c", centre, "its optical centre below its top"),
        )

    def solution(self, case: JumpCase) -> Solution:
        """Return Prentice's rule at the top."""
        return Solution(
            words=(
                "At the top the eye passes into the segment, and the power of the addition begins. "
                "Prentice's rule for that power alone, at the distance of the top from the segment's own "
                "optical centre. The centre lies below the top, so the base is down and the image jumps up.",
            ),
            workings=(case.working,),
        )

    def hints(self, case: JumpCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "What is new below the top that was not there above it?",
            "Prentice's rule: power times distance in centimetres. From which point of the segment does the "
            "distance count?",
        )
