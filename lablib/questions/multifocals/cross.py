"""A question about how far in the fitting cross of a progressive lies."""

from collections.abc import Set
from dataclasses import dataclass, replace

from lablib.optics.eye import Eye
from lablib.optics.layout_workings import decentration_workings
from lablib.optics.progressive_layout import ProgressiveLayout
from lablib.questions.multifocals.case import (
    millimetres,
    pair_drawing,
)
from lablib.questions.multifocals.progressive_case import draw_layout
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_HALF = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class CrossCase:
    """A pair of progressives to be laid out.

    layout: of the eye asked about; other_pd_mm: far distance of the other eye [mm].
    """

    layout: ProgressiveLayout
    other_pd_mm: float

    def with_distance(self, pd_mm: float) -> ProgressiveLayout:
        """Return the layout at another distance.

        pd_mm: from the middle of the bridge [mm].
        """
        return replace(self.layout, monocular_pd_mm=pd_mm)


class CrossInset(Maker[CrossCase]):
    """How far inwards of the boxed centre the fitting cross lies."""

    name = "cross-inset"
    lesson = "08"
    skill = "progressive-layout"
    slips = (
        Slip(
            name="half-of-both",
            step="the choice of this eye's own distance",
            words="You halved the distance between the pupils. The eyes differ, and a progressive has a "
            "narrow way down: each lens needs its own distance.",
        ),
        Slip(
            name="eyes-exchanged",
            step="the choice of this eye's own distance",
            words="You used the distance of the other eye. That happens when a lens is marked face down: "
            "seen from the back, right and left change places.",
        ),
        Slip(
            name="near-inset-added",
            step="what lies straight above and below the cross",
            words="You moved the cross inwards by the near inset. The cross belongs before the pupil that "
            "looks far; the near inset is built into the lens.",
        ),
        Slip(
            name="bridge-left-out",
            step="the way from the middle of the bridge to the boxed centre",
            words="You took half of A and left the bridge out. The boxed centre lies half of A and half of "
            "DBL from the middle of the bridge.",
        ),
    )

    def draw(self, draws: Draws) -> CrossCase:
        """Return a wearer whose two distances differ."""
        layout = draw_layout(draws)
        other = layout.monocular_pd_mm + draws.one_of((-3.0, -2.5, -2.0, -1.5, 1.5, 2.0, 2.5, 3.0))
        return CrossCase(layout=layout, other_pd_mm=other)

    def kind(self, case: CrossCase) -> NumberAnswer:
        """Return the kind: a distance in quarter millimetres at the finest, marked to 0.2 mm."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: CrossCase, slips: Set[str] = NONE) -> float:
        """Return the decentration of the cross; the bridge left out is half of DBL."""
        pd = case.layout.monocular_pd_mm
        if "half-of-both" in slips:
            pd = (pd + case.other_pd_mm) * _HALF
        if "eyes-exchanged" in slips:
            pd = case.other_pd_mm
        inward = case.with_distance(pd).cross_mm[0]
        inward += case.layout.design.near_inset_mm if "near-inset-added" in slips else 0.0
        return inward - (case.layout.frame.dbl_mm * _HALF if "bridge-left-out" in slips else 0.0)

    def prompt(self, case: CrossCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            "Layout of an invented pair of progressives. Each eye's far distance was measured by itself.",
            f"How far in from the boxed centre does the fitting cross of the {case.layout.eye} lens lie? In "
            "is towards the nose; write out as minus. Answer in mm, to 0.1 mm.",
        )

    def given(self, case: CrossCase) -> tuple[Term, ...]:
        """Return A, DBL, both distances and the near inset."""
        layout = case.layout
        other = layout.eye.other
        return (
            millimetres("A", layout.frame.a_mm, "boxed width"),
            millimetres("DBL", layout.frame.dbl_mm, "distance between lenses"),
            millimetres("PD", layout.monocular_pd_mm, f"far distance, {layout.eye} eye"),
            millimetres("PD_o", case.other_pd_mm, f"far distance, {other} eye"),
            millimetres("n_in", layout.design.near_inset_mm, "near inset, by the chart"),
        )

    def solution(self, case: CrossCase) -> Solution:
        """Return the decentration of this eye alone."""
        layout = case.layout
        return Solution(
            words=(
                "The fitting cross stands before the pupil that looks far, at this eye's own distance. The "
                "near inset is built into the lens and needs no room in the layout.",
                "The engravings lie half of 34 mm to either side of the cross, whatever the eye.",
            ),
            workings=decentration_workings(
                layout.frame, monocular_pd_mm=layout.monocular_pd_mm, height_mm=None
            ),
        )

    def hints(self, case: CrossCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Before which pupil does the fitting cross stand, and is the wearer looking far or near?",
            "Count the boxed centre and the pupil from the middle of the bridge.",
        )

    def drawing(self, case: CrossCase) -> Drawing:
        """Return both rims with both far distances."""
        layout = case.layout
        own, other = layout.monocular_pd_mm, case.other_pd_mm
        right, left = (own, other) if layout.eye is Eye.RIGHT else (other, own)
        return pair_drawing(layout.frame, layout.eye, right_pd_mm=right, left_pd_mm=left)
