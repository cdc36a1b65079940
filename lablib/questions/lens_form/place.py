"""A question about where the edge of a minus lens is thickest, answered on its outline."""

from collections.abc import Set
from dataclasses import replace

from lablib.optics.power import wrapped_axis_deg
from lablib.optics.prescription import Prescription
from lablib.questions.layout.frames import outline_drawing
from lablib.questions.lens_form.place_lens import (
    BLUNT,
    CORNERED,
    TOLERANCE_DEG,
    draw_lens,
    is_clear,
    thickest_deg,
)
from lablib.questions.lens_form.toric import FramedLens, edge_each_degree_mm, meridian_ends
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.marker import MarkerAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term

# Of the two ends of a meridian one must be farther by this, or neither could be called the nearer.
_FARTHER_MM = 0.5
_TOP_DEG = _QUARTER_DEG = 90
_LIKELY = ("always-on-the-midline", "nearer-end-of-the-meridian", "meridian-alone")
# Slips about the meridian of a cylinder, which a sphere has not.
_OF_A_CYLINDER = {"nearer-end-of-the-meridian", "meridian-alone"}


class ThickestEdgePlace(Maker[FramedLens]):
    """Where the edge of a minus lens is thickest."""

    name = "thickest-edge-place"
    lesson = "07"
    skill = "place-of-thickest-edge"
    # Where two would lead to nearly one place, the first of them is meant.
    slips = (
        Slip(
            name="nearer-end-of-the-meridian",
            step="the farther end, seen from the optical centre",
            words="You found the meridian of the stronger power but took its nearer end. Seen from the "
            "optical centre, the other end lies farther away.",
        ),
        Slip(
            name="always-on-the-midline",
            step="the farthest place, seen from the optical centre",
            words="You marked the temporal end of the midline. Here another place of the outline lies "
            "farther from the optical centre, or nearer to the meridian of the stronger power.",
        ),
        Slip(
            name="meridian-alone",
            step="power and distance weighed against each other",
            words="You went to the end of the meridian of the stronger power and left the distance at that. "
            "Another place lies so much farther from the optical centre that it is thicker with less power.",
        ),
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
            name="takes-the-top",
            step="the farthest place, seen from the optical centre",
            words="You marked the top. That is the nearer edge of a lens wider than it is high, all the more "
            "where the centre is raised.",
        ),
    )

    def draw(self, draws: Draws) -> FramedLens:
        """Return a minus lens that is clearly thickest in one place."""
        # The outline is drawn once, or blunt ones, on which fewer lenses are clear, would be rare.
        shape = draws.one_of((*CORNERED, *BLUNT))
        return draws.until(
            "a lens that is thickest in one place",
            lambda more: draw_lens(more, shape),
            lambda lens: is_clear(lens) and self._is_tellable(lens),
        )

    def kind(self, case: FramedLens) -> MarkerAnswer:
        """Return the kind: a direction from the boxed centre."""
        right = thickest_deg(case)
        # The marker stands below the lens at first, or above it where the answer is below.
        start = 270 if abs(right - 270) > 2 * TOLERANCE_DEG else _TOP_DEG
        return MarkerAnswer(
            label="thickest edge",
            unit="degrees",
            low=0.0,
            high=360.0,
            step=1.0,
            start=float(start),
            tolerance=float(TOLERANCE_DEG),
            wraps=True,
        )

    def slips_in(self, case: FramedLens) -> tuple[Slip, ...]:
        """Return the slips that lead clearly elsewhere, and each to a place of its own."""
        kind, right = self.kind(case), self.answer(case)
        is_nasal = kind.distance(right, case.temporal_deg) > _QUARTER_DEG
        left_out = {"nasal-for-temporal"} if is_nasal else set()
        if not case.prescription.cylinder_d:
            left_out |= _OF_A_CYLINDER
        kept, known = [], [right]
        for slip in self.slips:
            if slip.name not in left_out:
                value = self.answer(case, {slip.name})
                if all(kind.apart(value, one) for one in known):
                    kept.append(slip)
                    known.append(value)
        return tuple(kept)

    def _is_tellable(self, case: FramedLens) -> bool:
        """Whether each of the likeliest wrong places has its slip named, or is the right place here."""
        kind, known = self.kind(case), [self.answer(case)]
        for name in _LIKELY if case.prescription.cylinder_d else _LIKELY[:1]:
            value = self.answer(case, {name})
            if all(kind.apart(value, one) for one in known):
                known.append(value)
            elif not any(kind.matches(value, one) for one in known):
                return False
        return not case.prescription.cylinder_d or self._has_a_nearer_end(case)

    def _has_a_nearer_end(self, case: FramedLens) -> bool:
        """Whether one end of the meridian is clearly the nearer, and not on the thickest place's side."""
        (farther, away), (nearer, less) = meridian_ends(case)
        kind, right = self.kind(case), thickest_deg(case)
        return away - less >= _FARTHER_MM and kind.distance(right, farther) < kind.distance(right, nearer)

    def answer(self, case: FramedLens, slips: Set[str] = NONE) -> float:
        """Return the direction of the thickest edge from the boxed centre [degrees]."""
        if "takes-the-top" in slips:
            return float(_TOP_DEG)
        if "always-on-the-midline" in slips:
            return float(case.temporal_deg)
        if slips & _OF_A_CYLINDER:
            farther, nearer = (float(degrees) for degrees, _ in meridian_ends(case))
            return nearer if "nearer-end-of-the-meridian" in slips else farther
        if "nasal-for-temporal" in slips:
            case = replace(case, in_mm=-case.in_mm)
        if "along-the-axis" in slips:
            case = replace(case, prescription=_turned(case.prescription))
        return float(thickest_deg(case))

    def prompt(self, case: FramedLens) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"A lens of {case.prescription} for the {case.eye} eye of an invented wearer. The picture shows "
            "its outline and its optical centre. You face the wearer. Degrees are counted about the boxed "
            "centre (x).",
            "Where is its edge thickest? Move the marker there; within twelve degrees is near enough.",
        )

    def given(self, case: FramedLens) -> tuple[Term, ...]:
        """Return power, frame and centre."""
        return case.terms

    def solution(self, case: FramedLens) -> Solution:
        """Return why it is there, and what the edge measures there and elsewhere."""
        edge, right = edge_each_degree_mm(case), thickest_deg(case)
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
            f"With {case.made_words}, the edge is {edge[right]:.1f} mm at {right} "
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


def _turned(rx: Prescription) -> Prescription:
    """The prescription with its power laid along its axis."""
    if not rx.cylinder_d:
        return rx
    return replace(rx, axis_deg=wrapped_axis_deg(rx.axis_deg + 90.0))
