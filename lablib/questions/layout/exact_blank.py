"""A question about the blank: the least one that covers, measured on the outline and not by the rule."""

from collections.abc import Set
from dataclasses import dataclass

import numpy as np

from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import blank_allowance_mm, blank_reaching_mm, least_blank
from lablib.optics.layout_workings import blank_reaching_working
from lablib.questions.layout.frames import draw_frame, outline_drawing
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working

_SHAPES = (OutlineShape(), OutlineShape.superellipse(3.0), OutlineShape.superellipse(3.6))
_UP_MM = (-3.0, -2.5, -2.0, 2.0, 2.5, 3.0, 3.5, 4.0)
_ALLOWANCE, _ACROSS = "the allowance for the rim", "the way across to the farthest point"


@dataclass(frozen=True, slots=True, kw_only=True)
class ExactCase:
    """A lens whose outline reaches farthest at a point.

    frame: the frame; eye: which lens.
    in_mm, up_mm: the optical centre from the boxed centre [mm].
    temporal_mm, upward_mm: the point, from the boxed centre, as it is told [mm].
    """

    frame: Frame
    eye: Eye
    in_mm: float
    up_mm: float
    temporal_mm: float
    upward_mm: float


class LeastBlankExact(Maker[ExactCase]):
    """The least blank from the farthest point of the outline, the optical centre raised or lowered."""

    name = "least-blank-exact"
    lesson = "05"
    skill = "least-blank"
    slips = (
        Slip(
            name="about-the-boxed-centre",
            step=_ACROSS,
            words="You measured across from the boxed centre. A blank is round about the optical centre, "
            "which lies inwards of it.",
        ),
        Slip(
            name="decentration-taken-off",
            step=_ACROSS,
            words="You took the decentration off the way across. The point lies temporally and the centre "
            "was moved to the nose: the way grows.",
        ),
        Slip(
            name="height-left-out",
            step="the way up to the farthest point",
            words="You left out that the optical centre lies off the midline. The way up counts from it.",
        ),
        Slip(
            name="radius-for-diameter",
            step="from the farthest way to a diameter",
            words="You did not double it. The way to the farthest point is half of the blank.",
        ),
        Slip(
            name="rim-left-out",
            step=_ALLOWANCE,
            words="You left the allowance out. The rim of a blank is not used.",
        ),
        Slip(
            name="rim-on-both-sides",
            step=_ALLOWANCE,
            words="You added the allowance twice. It belongs to the diameter and counts once.",
        ),
    )

    def draw(self, draws: Draws) -> ExactCase:
        """Return a lens whose optical centre lies off the midline."""
        frame, eye = draw_frame(draws, _SHAPES), draws.one_of(EYES)
        inward, up = draws.step(2.0, 5.0, 0.5), draws.one_of(_UP_MM)
        outline = frame.outline(eye)
        farthest = least_blank(outline, eye=eye, in_mm=inward, up_mm=up).farthest_deg
        reach = np.interp(farthest, outline.angle_deg, outline.radius_mm)
        return ExactCase(
            frame=frame,
            eye=eye,
            in_mm=inward,
            up_mm=up,
            temporal_mm=round(abs(float(reach * np.cos(np.radians(farthest)))), 1),
            upward_mm=round(float(reach * np.sin(np.radians(farthest))), 1),
        )

    def kind(self, case: ExactCase) -> NumberAnswer:
        """Return the kind: a diameter."""
        return NumberAnswer(unit="mm", tolerance=0.2, digits=1)

    def answer(self, case: ExactCase, slips: Set[str] = NONE) -> float:
        """Return the least blank. A wrong allowance is one that is added or taken off once more."""
        inward = 0.0 if "about-the-boxed-centre" in slips else case.in_mm
        if "decentration-taken-off" in slips:
            inward = -inward
        up = 0.0 if "height-left-out" in slips else case.up_mm
        bare = blank_reaching_mm(case.temporal_mm + inward, case.upward_mm - up) - blank_allowance_mm()
        if "radius-for-diameter" in slips:
            bare /= 2.0
        times = 1 + ("rim-on-both-sides" in slips) - ("rim-left-out" in slips)
        return bare + times * blank_allowance_mm()

    def prompt(self, case: ExactCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The {case.eye} lens of an invented pair. Seen from the optical centre its outline reaches "
            "farthest at one point, on the temporal side; where the point lies was measured from the boxed "
            "centre.",
            "How large must the blank be at least, measured on the outline? Answer in mm, to 0.1 mm.",
        )

    def given(self, case: ExactCase) -> tuple[Term, ...]:
        """Return the point, the optical centre and the allowance."""
        rows = (
            ("x_t", case.temporal_mm, "the point, temporally of the boxed centre"),
            ("y_t", case.upward_mm, "the point, above the boxed centre (minus: below)"),
            ("d_in", case.in_mm, "optical centre, inwards of the boxed centre"),
            ("d_up", case.up_mm, "optical centre, above the boxed centre (minus: below)"),
            ("a", blank_allowance_mm(), "allowance for the rim"),
        )
        return tuple(
            Term(symbol=symbol, value=value, unit="mm", digits=1, meaning=meaning)
            for symbol, value, meaning in rows
        )

    def solution(self, case: ExactCase) -> Solution:
        """Return the way: across, up, and the blank that reaches so far."""
        temporal, upward, inward, up, _ = self.given(case)
        across = Working(
            what="across, from the optical centre to the point",
            symbol="x",
            formula="x_t + d_in",
            terms=(temporal, inward),
            value=case.temporal_mm + case.in_mm,
            unit="mm",
        )
        above = Working(
            what="up, from the optical centre to the point",
            symbol="y",
            formula="y_t - d_up",
            terms=(upward, up),
            value=case.upward_mm - case.up_mm,
            unit="mm",
        )
        least = least_blank(case.frame.outline(case.eye), eye=case.eye, in_mm=case.in_mm, up_mm=case.up_mm)
        words = least.words[0].upper() + least.words[1:]
        return Solution(
            words=(
                "A blank is round about the optical centre, so the farthest point of the outline decides, "
                "and the way to it is half of the blank.",
                f"By the rule of thumb, on this outline, it would be {least.rule_mm:.1f} mm. {words}.",
            ),
            workings=(across, above, blank_reaching_working(across.as_term(), above.as_term())),
        )

    def hints(self, case: ExactCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Make a sketch with the boxed centre, the optical centre and the point. On which side is the "
            "nose?",
            "How far is the point from the optical centre across, and how far up or down? Then the longest "
            "side of a right triangle.",
        )

    def drawing(self, case: ExactCase) -> Drawing:
        """Return the outline with its optical centre."""
        return outline_drawing(
            "blank",
            case.frame.outline(case.eye),
            centre_x_mm=case.eye.nasal_sign * case.in_mm,
            centre_y_mm=case.up_mm,
        )
