"""A question about a toric minus lens: which of two axes makes the thicker edge, and where."""

from collections.abc import Mapping, Set
from dataclasses import dataclass, replace
from functools import lru_cache
from types import MappingProxyType

import numpy as np

from lablib.optics.base_curve import stronger_meridian_d
from lablib.optics.eye import EYES
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import sides_of_box_mm
from lablib.optics.prescription import Prescription
from lablib.questions.layout.frames import draw_frame
from lablib.questions.lens_form.terms import index_for
from lablib.questions.lens_form.toric import FramedLens
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_ROUND = OutlineShape.named("round")
_AXES_DEG = (90, 180)
_TEMPORAL, _UPRIGHT = "temporal", "upright"
_PLACES = {_TEMPORAL: "at the temporal side", _UPRIGHT: "at the bottom"}
# The thickest of the four edges leads by this, or a question could hang on a tenth.
_CLEARLY_MM = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class AxisCase:
    """A lens whose axis may be one of two.

    lens: with the first of the two axes.
    """

    lens: FramedLens

    @property
    def is_plus_form(self) -> bool:
        """Whether it is written with a plus cylinder."""
        return self.lens.prescription.cylinder_d > 0.0


@lru_cache(maxsize=32)
def edges_mm(case: AxisCase) -> Mapping[tuple[int, str], float]:
    """Return the edge for each axis, on the temporal side and at the bottom [mm].

    case: the lens, its centre not below the middle, so that the bottom is never nearer than the top. Kept,
        because one question asks for the same edges several times.
    """
    frame, lens = case.lens.frame, case.lens
    away, _ = sides_of_box_mm(frame, in_mm=lens.in_mm)
    x = np.array([lens.centre_x_mm - lens.eye.nasal_sign * away, 0.0])
    y = np.array([0.0, -frame.b_mm / 2.0])
    found = {}
    for axis in _AXES_DEG:
        rx = replace(lens.prescription, axis_deg=float(axis))
        temporal, upright = replace(lens, prescription=rx).thickness_mm(x, y).tolist()
        found |= {(axis, _TEMPORAL): temporal, (axis, _UPRIGHT): upright}
    return MappingProxyType(found)


class ThickAxis(Maker[AxisCase]):
    """Which of two axes makes the thicker edge, and where."""

    name = "thick-axis"
    lesson = "07"
    skill = "axis-and-thickness"
    slips = (
        Slip(
            name="axis-for-meridian-of-power",
            step="the meridian in which the cylinder works",
            words="You took the axis for the meridian of the power. A minus cylinder works at right angles "
            "to its axis.",
        ),
        Slip(
            name="thick-along-the-axis",
            step="the meridian in which the cylinder works",
            words="You looked for the thick edge along the axis. The axis is the one direction the cylinder "
            "leaves alone.",
        ),
        Slip(
            name="plus-cylinder-read-as-minus",
            step="which meridian has the stronger minus power",
            words="You read the plus cylinder as a minus one. A plus cylinder takes minus power away across "
            "its axis, so the stronger minus power lies along the axis.",
        ),
        Slip(
            name="thick-across-a-plus-cylinder",
            step="which meridian has the stronger minus power",
            words="You looked across the axis. That holds for a minus cylinder; a plus cylinder takes minus "
            "power away there.",
        ),
        Slip(
            name="distance-overlooked",
            step="which edge lies farther from the optical centre",
            words="You put the stronger power towards the nearer edge. It makes most thickness where the "
            "edge lies farthest from the optical centre.",
        ),
    )

    def draw(self, draws: Draws) -> AxisCase:
        """Return a toric minus lens of which one edge leads the other three."""
        return draws.until("a toric minus lens", _draw_case, _is_clear)

    def kind(self, case: AxisCase) -> ChoiceAnswer:
        """Return the kind: two axes, each with two places."""
        return ChoiceAnswer(
            options=tuple(
                Option(key=_key(axis, place), words=f"axis {axis}, {_PLACES[place]}")
                for place in (_TEMPORAL, _UPRIGHT)
                for axis in _AXES_DEG
            )
        )

    def slips_in(self, case: AxisCase) -> tuple[Slip, ...]:
        """Return the slips of the form the lens is written in."""
        return self.slips[2:] if case.is_plus_form else (*self.slips[:2], self.slips[4])

    def answer(self, case: AxisCase, slips: Set[str] = NONE) -> str:
        """Return the axis and the place of the thickest edge."""
        edges = edges_mm(case)
        axis, place = max(edges, key=edges.__getitem__)
        if slips & {"axis-for-meridian-of-power", "plus-cylinder-read-as-minus", "distance-overlooked"}:
            axis = 270 - axis
        if slips & {"thick-along-the-axis", "thick-across-a-plus-cylinder", "distance-overlooked"}:
            place = _UPRIGHT if place == _TEMPORAL else _TEMPORAL
        return _key(axis, place)

    def pairs(self, case: AxisCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: AxisCase) -> tuple[str, ...]:
        """Return what is asked."""
        rx = case.lens.prescription
        return (
            "An order with an unreadable axis is held and the prescriber asked. What hangs on it?",
            f"A lens of {rx.sphere_d:+.2f} {rx.cylinder_d:+.2f} for the {case.lens.eye} eye of an invented "
            "wearer: the axis is 90 or 180, nobody can tell which. All else is the same.",
            f"Compare the edge on the temporal side and the one {_PLACES[_UPRIGHT]}, for both axes. Which of "
            "the four is the thickest?",
        )

    def given(self, case: AxisCase) -> tuple[Term, ...]:
        """Return power, frame and centre."""
        return case.lens.terms

    def solution(self, case: AxisCase) -> Solution:
        """Return why, and all four edges."""
        rx, edges = case.lens.prescription, edges_mm(case)
        stronger = stronger_meridian_d(rx)
        where = "along the axis" if case.is_plus_form else "across the axis"
        axis, place = max(edges, key=edges.__getitem__)
        placed = {_TEMPORAL: "the temporal side lies", _UPRIGHT: "the bottom lies"}[place]
        lines = (
            f"axis {one}, {edges[one, _TEMPORAL]:.1f} mm {_PLACES[_TEMPORAL]} and "
            f"{edges[one, _UPRIGHT]:.1f} mm {_PLACES[_UPRIGHT]}"
            for one in _AXES_DEG
        )
        return Solution(
            words=(
                f"The stronger minus power is {stronger:+.2f} D, and it lies {where}.",
                f"Seen from the optical centre, {placed} farther away. The edge is thickest where the "
                f"stronger power points that way: axis {axis}.",
                f"With {case.lens.made_words}: {'; '.join(lines)}.",
            )
        )

    def hints(self, case: AxisCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Which edge lies farther from the optical centre: the temporal one, or the one at the bottom?",
            "Write down the power along the axis and the power across it. Which is the stronger minus?",
        )


def _key(axis: int, place: str) -> str:
    return f"{axis}-{place}"


def _draw_case(draws: Draws) -> AxisCase:
    """A wide frame, or a round and deep one with the centre well above its middle."""
    is_deep = draws.whole(2) > 0
    frame = _deep_frame(draws) if is_deep else draw_frame(draws, (_ROUND, OutlineShape()))
    sphere, cylinder = draws.step(-5.0, -1.5, 0.25), draws.step(-3.0, -1.0, 0.25)
    form = Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=90.0)
    return AxisCase(
        lens=FramedLens(
            frame=frame,
            eye=draws.one_of(EYES),
            prescription=form.in_form(draws.one_of(("minus", "plus"))),
            index=index_for(sphere + cylinder),
            front_d=draws.step(2.0, 4.5, 0.5),
            centre_mm=1.8,
            in_mm=draws.step(0.0, 1.0, 0.5) if is_deep else draws.step(1.0, 5.0, 0.5),
            up_mm=draws.step(3.0, 4.0, 0.5) if is_deep else draws.step(0.0, 3.0, 0.5),
        )
    )


def _deep_frame(draws: Draws) -> Frame:
    return draw_frame(draws, (_ROUND,), a_mm=(42.0, 46.0), lower_mm=(0.0, 2.0, 4.0))


def _is_clear(case: AxisCase) -> bool:
    """Whether the thickest of the four edges leads the next by enough."""
    second, first = sorted(edges_mm(case).values())[-2:]
    return first - second >= _CLEARLY_MM
