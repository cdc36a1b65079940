"""A question about where the edge of a minus lens is thickest, answered on its outline."""

from collections.abc import Set
from dataclasses import replace

import numpy as np

from lablib.optics.frame import OutlineShape
from lablib.optics.prescription import Prescription
from lablib.questions.layout.frames import EYES, draw_frame, outline_drawing
from lablib.questions.lens_form.terms import index_for
from lablib.questions.lens_form.toric import FramedLens, edge_each_degree_mm
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.marker import MarkerAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

_SHAPES = (
    OutlineShape(),
    *(OutlineShape.named(name) for name in ("round", "rectangle", "panto", "pilot")),
)
_LOWER_MM = (8.0, 12.0)
_TOLERANCE_DEG = 15
# Beyond the tolerance the edge must be thinner by this, or the marker could not be put fairly.
_CLEARLY_MM = 0.2
_TOP_DEG = _QUARTER_DEG = 90


class ThickestEdgePlace(Maker[FramedLens]):
    """Where the edge of a minus lens is thickest."""

    name = "thickest-edge-place"
    lesson = "07"
    skill = "place-of-thickest-edge"
    slips = (
        Slip(
            name="nasal-for-temporal",
            step="which side of the optical centre is the longer one",
            words="You took the centre to lie on the other side of the boxed centre. It lies in, towards the "
            "nose, so the temporal edge is the farther one. Facing the wearer, a right eye has its nose on "
            "your right.",
        ),
        Slip(
            name="along-the-axis",
            step="the meridian of the stronger power",
            words="You looked along the axis. A minus cylinder has its power at right angles to its axis, so "
            "the edge grows thickest across it.",
        ),
        Slip(
            name="always-on-the-midline",
            step="the farthest place, seen from the optical centre",
            words="You marked the temporal end of the midline. Here another place of the outline lies "
            "farther from the optical centre, or nearer to the meridian of the stronger power.",
        ),
        Slip(
            name="takes-the-top",
            step="the farthest place, seen from the optical centre",
            words="You marked the top. That is the nearer edge of a lens wider than it is high, all the more "
            "where the centre is raised.",
        ),
    )

    def draw(self, draws: Draws) -> FramedLens:
        """Return a minus lens that is clearly thickest in one place."""
        # The outline is drawn once, or rounder ones, on which most lenses are not clear, would be rare.
        shape = draws.one_of(_SHAPES)
        lens = _draw_lens(draws, shape)
        while not _is_clear(lens):
            lens = _draw_lens(draws, shape)
        return lens

    def kind(self, case: FramedLens) -> MarkerAnswer:
        """Return the kind: a direction from the boxed centre."""
        right = _thickest_deg(case)
        # The marker stands below the lens at first, or above it where the answer is below.
        start = 270 if abs(right - 270) > 2 * _TOLERANCE_DEG else _TOP_DEG
        return MarkerAnswer(
            label="thickest edge",
            unit="degrees",
            low=0.0,
            high=360.0,
            step=1.0,
            start=float(start),
            tolerance=float(_TOLERANCE_DEG),
            wraps=True,
        )

    def slips_in(self, case: FramedLens) -> tuple[Slip, ...]:
        """Return the slips that lead clearly elsewhere; about the nose only where the place is temporal."""
        kind, right = self.kind(case), _thickest_deg(case)
        is_nasal = kind.distance(right, case.temporal_deg) > _QUARTER_DEG
        return tuple(
            slip
            for slip in self.slips
            if not (is_nasal and slip.name == "nasal-for-temporal")
            and kind.apart(self.answer(case, {slip.name}), right)
        )

    def answer(self, case: FramedLens, slips: Set[str] = NONE) -> float:
        """Return the direction of the thickest edge from the boxed centre [degrees]."""
        if "takes-the-top" in slips:
            return float(_TOP_DEG)
        if "always-on-the-midline" in slips:
            return float(case.temporal_deg)
        if "nasal-for-temporal" in slips:
            case = replace(case, in_mm=-case.in_mm)
        if "along-the-axis" in slips:
            case = replace(case, prescription=_turned(case.prescription))
        return float(_thickest_deg(case))

    def prompt(self, case: FramedLens) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.prescription} for the {case.eye} eye of an invented wearer. The picture shows "
            "its outline and its optical centre. You face the wearer.",
            "Where is its edge thickest? Move the marker there; within fifteen degrees is near enough.",
        )

    def given(self, case: FramedLens) -> tuple[Term, ...]:
        """Return power, frame and centre."""
        return case.terms

    def solution(self, case: FramedLens) -> Solution:
        """Return why it is there, and what the edge measures there and elsewhere."""
        edge, right = edge_each_degree_mm(case), _thickest_deg(case)
        words = [
            "A minus lens grows thicker with the distance from its optical centre, roughly with its square. "
            "Look for the farthest place of the outline, seen from the optical centre and not from the "
            "middle of the box."
        ]
        if case.prescription.cylinder_d:
            words.append(
                "Then look where the stronger power lies: across the axis. A place in that meridian can be "
                "nearer and still be thicker."
            )
        words.append(
            f"With {case.centre_mm:.1f} mm at the centre, the edge is {edge[right]:.1f} mm at {right} "
            "degrees. It is "
            f"{edge[180 - case.temporal_deg]:.1f} mm on the nasal side, {edge[case.temporal_deg]:.1f} mm "
            f"on the temporal side, {edge[90]:.1f} mm at the top and {edge[270]:.1f} mm at the bottom."
        )
        return Solution(words=tuple(words))

    def hints(self, case: FramedLens) -> tuple[str, ...]:
        """Return hints."""
        first = "Which side of the picture is the nose on? Which side of the lens is the longer, seen from "
        hints = (
            f"{first}the optical centre?",
            "Lay a pencil on the optical centre and turn it. Where does the outline lie farthest?",
        )
        if not case.prescription.cylinder_d:
            return hints
        return (
            *hints,
            "The cylinder adds minus power across its axis. Does that meridian have a far edge as well?",
        )

    def drawing(self, case: FramedLens) -> Drawing:
        """Return the outline with optical centre and axis."""
        return outline_drawing(
            "edge-place",
            case.frame.outline(case.eye),
            centre_x_mm=case.centre_x_mm,
            centre_y_mm=case.up_mm,
            axis_deg=case.prescription.axis_deg or 0.0,
            eye=case.eye.value,
        )


def _draw_lens(draws: Draws, shape: OutlineShape) -> FramedLens:
    sphere = draws.step(-5.0, -0.5, 0.25)
    cylinder = draws.one_of((0.0, 1.0, 1.0)) * draws.step(-3.5, -1.0, 0.25)
    return FramedLens(
        frame=draw_frame(draws, (shape,), a_mm=(48.0, 56.0), lower_mm=_LOWER_MM),
        eye=draws.one_of(EYES),
        prescription=Prescription(sphere_d=sphere, cylinder_d=cylinder, axis_deg=draws.step(5.0, 180.0, 5.0)),
        index=index_for(sphere + cylinder),
        front_d=draws.step(2.0, 4.5, 0.5),
        centre_mm=1.8,
        in_mm=draws.step(1.0, 5.0, 0.5),
        up_mm=draws.step(0.0, 4.0, 0.5),
    )


def _thickest_deg(lens: FramedLens) -> int:
    return int(np.argmax(edge_each_degree_mm(lens)))


def _is_clear(lens: FramedLens) -> bool:
    """Whether the edge is clearly thinner everywhere but near its thickest place."""
    edge, at = edge_each_degree_mm(lens), _thickest_deg(lens)
    elsewhere = np.roll(edge, -at)[_TOLERANCE_DEG + 1 : -_TOLERANCE_DEG]
    return bool(elsewhere.max() <= edge[at] - _CLEARLY_MM)


def _turned(rx: Prescription) -> Prescription:
    """The prescription with its power laid along its axis."""
    if not rx.cylinder_d:
        return rx
    return replace(rx, axis_deg=rx.axis_deg - 90.0 if rx.axis_deg > 90.0 else rx.axis_deg + 90.0)
