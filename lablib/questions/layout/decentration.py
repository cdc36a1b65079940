"""Questions about layout: how far the optical centre lies from the boxed centre."""

from collections.abc import Set

from lablib.optics.eye import EYES
from lablib.optics.frame import OutlineShape
from lablib.optics.layout import decentration_mm
from lablib.questions.layout.case import LayoutCase
from lablib.questions.layout.frames import box_terms, draw_frame
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term


class Decentration(Maker[LayoutCase]):
    """How far in or out of the boxed centre the optical centre lies."""

    name = "decentration"
    lesson = "05"
    skill = "decentration"
    slips = (
        Slip(
            name="total-for-one-eye",
            step="sharing the total between the two eyes",
            words="You gave the decentration of both eyes together. Each lens has its own share of it.",
        ),
        Slip(
            name="bridge-left-out",
            step="the way from the middle of the bridge to the boxed centre",
            words="You took half of A and left the bridge out. The boxed centre lies half of A and half of "
            "DBL from the middle of the bridge.",
        ),
        Slip(
            name="bridge-added-twice",
            step="the way from the middle of the bridge to the boxed centre",
            words="You added the whole bridge on one side. Only half of DBL lies on each side of its middle.",
        ),
        Slip(
            name="frame-and-wearer-swapped",
            step="which distance is taken from which",
            words="You took the frame's distance from the wearer's. Where the frame's is the larger, the "
            "pupil lies nearer the nose than the boxed centre: in.",
        ),
        Slip(
            name="other-eye",
            step="the choice of this eye's own distance",
            words="You used the distance of the other eye. Facing the wearer, the right eye is on your left.",
        ),
        Slip(
            name="half-of-both",
            step="the choice of this eye's own distance",
            words="You halved the distance between the pupils. Both monocular distances are given, and they "
            "differ.",
        ),
    )

    def draw(self, draws: Draws) -> LayoutCase:
        """Return a frame and a wearer, the optical centre in more often than out."""
        frame = draw_frame(draws, (OutlineShape(),), a_mm=(46.0, 54.0))
        right = draws.step(29.0, 35.0, 0.5)
        is_binocular = draws.whole(2) == 0
        other = 0.0 if is_binocular else draws.one_of((-2.0, -1.5, -1.0, 1.0, 1.5, 2.0))
        return LayoutCase(
            frame=frame,
            eye=draws.one_of(EYES),
            right_pd_mm=right,
            left_pd_mm=right + other,
            is_binocular=is_binocular,
        )

    def kind(self, case: LayoutCase) -> NumberAnswer:
        """Return the kind: a distance in whole and half millimetres."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def slips_in(self, case: LayoutCase) -> tuple[Slip, ...]:
        """Return all but those that need two different distances, where only one is told."""
        return self.slips[:-2] if case.is_binocular else self.slips

    def answer(self, case: LayoutCase, slips: Set[str] = NONE) -> float:
        """Return the decentration in. The wrong steps are sums of their own, on the distances as given."""
        pd = case.pd_mm
        if "other-eye" in slips:
            pd = case.both_mm - pd
        if "half-of-both" in slips:
            pd = case.both_mm / 2.0
        inward = decentration_mm(case.frame, monocular_pd_mm=pd)[0]
        other = decentration_mm(case.frame, monocular_pd_mm=case.both_mm - pd)[0]
        bridge = ("bridge-added-twice" in slips) - ("bridge-left-out" in slips)
        shift = bridge * case.frame.dbl_mm / 2.0
        given = inward + shift + (other + shift if "total-for-one-eye" in slips else 0.0)
        return -given if "frame-and-wearer-swapped" in slips else given

    def prompt(self, case: LayoutCase) -> tuple[str, ...]:
        """Return what is asked."""
        wearer = (
            "Both pupils lie equally far from the middle of the bridge."
            if case.is_binocular
            else "The wearer's two monocular distances differ."
        )
        return (
            f"Layout of an invented pair. {wearer}",
            f"How far in from the boxed centre does the optical centre of the {case.eye} lens lie? In is "
            "towards the nose; write out as minus. Answer in mm, to 0.1 mm.",
        )

    def given(self, case: LayoutCase) -> tuple[Term, ...]:
        """Return A, DBL and the wearer's distances."""
        return (*box_terms(case.frame), *case.distances)

    def solution(self, case: LayoutCase) -> Solution:
        """Return the way: both distances from the middle of the bridge, one taken from the other."""
        side = "in" if case.in_mm > 0.0 else "out"
        return Solution(
            words=(
                "Count both points from the middle of the bridge. The boxed centre lies half of A and half "
                "of DBL away, the pupil its monocular distance. What the frame has more than the wearer is "
                f"decentration in; what it has less is out. Here it is {side}.",
            ),
            workings=case.workings,
        )

    def hints(self, case: LayoutCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Draw a line from the middle of the bridge to each of the two points: the boxed centre and the "
            "pupil.",
            "The boxed centre lies (A + DBL) / 2 from the middle of the bridge. Which point is nearer the "
            "nose?",
        )

    def drawing(self, case: LayoutCase) -> Drawing:
        """Return both rims, and the pupils where both distances are told: else the halving would show."""
        return Drawing(
            name="pair",
            values={
                "a_mm": case.frame.a_mm,
                "b_mm": case.frame.b_mm,
                "dbl_mm": case.frame.dbl_mm,
                "right_pd_mm": 0.0 if case.is_binocular else case.right_pd_mm,
                "left_pd_mm": 0.0 if case.is_binocular else case.left_pd_mm,
                "eye": case.eye.value,
                "measured_from": "boxed centre",
            },
        )
