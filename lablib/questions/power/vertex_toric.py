"""A question about a toric lens that is worn at another distance: both meridians move."""

from collections.abc import Set
from dataclasses import replace

from lablib.optics.power_workings import vertex_distance_workings
from lablib.optics.prescription import Prescription, at_vertex_distance
from lablib.optics.terms import axis_term, sphere_and_cylinder
from lablib.questions.answers.prescription import PrescriptionAnswer
from lablib.questions.power.vertex import WRONG_WAY, VertexCase
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.question import Slip, Solution
from lablib.working import Term

_CYLINDER = "the cylinder at the new distance"
_SPHERE_ALONE = Slip(
    name="sphere-moved-alone",
    step=_CYLINDER,
    words="You moved the sphere and kept the cylinder. The power across the axis moves by an amount of its "
    "own, so the cylinder, their difference, changes too.",
)
_BY_ITSELF = Slip(
    name="cylinder-moved-by-itself",
    step=_CYLINDER,
    words="You moved the cylinder as if it were a power that stands alone. Move the power across the axis, "
    "sphere and cylinder together, and take the new sphere off again.",
)


class VertexToric(Maker[VertexCase]):
    """The toric lens that does the same at another vertex distance."""

    name = "vertex-toric"
    lesson = "03"
    skill = "toric-vertex-distance"
    slips = (WRONG_WAY, _SPHERE_ALONE, _BY_ITSELF)

    def draw(self, draws: Draws) -> VertexCase:
        """Return a strong lens with a cylinder large enough to show, on its way to the cornea."""
        sphere = draws.step(4.0, 10.0, 0.25) * draws.one_of((-1.0, -1.0, 1.0))
        rx = Prescription(
            sphere_d=sphere,
            cylinder_d=-draws.step(2.75, 4.5, 0.25),
            axis_deg=draws.step(5.0, 180.0, 5.0),
        )
        return VertexCase(rx=rx, from_mm=draws.step(12.0, 15.0, 1.0), to_mm=0.0)

    def kind(self, case: VertexCase) -> PrescriptionAnswer:
        """Return the kind: a prescription in either form, near enough to tell the two slips apart."""
        return PrescriptionAnswer(form="either", tolerance_d=0.03)

    def answer(self, case: VertexCase, slips: Set[str] = NONE) -> Prescription:
        """Return the lens as worn."""
        ends = {"from_mm": case.from_mm, "to_mm": case.to_mm}
        if WRONG_WAY.name in slips:
            ends = {"from_mm": case.to_mm, "to_mm": case.from_mm}
        moved = at_vertex_distance(case.rx, **ends)
        if _SPHERE_ALONE.name in slips:
            return replace(moved, cylinder_d=case.rx.cylinder_d)
        if _BY_ITSELF.name in slips:
            alone = at_vertex_distance(Prescription(sphere_d=case.rx.cylinder_d), **ends)
            return replace(moved, cylinder_d=alone.sphere_d)
        return moved

    def prompt(self, case: VertexCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            case.words,
            "Write the lens that has the same effect there, exactly in both meridians. Give both powers with "
            "their signs, to 0.01 D, and the axis in whole degrees.",
        )

    def given(self, case: VertexCase) -> tuple[Term, ...]:
        """Return the parts of the lens and the distances."""
        return (*sphere_and_cylinder(case.rx), axis_term(case.rx), *case.terms)

    def solution(self, case: VertexCase) -> Solution:
        """Return why each meridian is moved by itself, and the steps."""
        return Solution(
            words=(
                "A lens of two powers has two foci. Each has to stay where it is, so each power is moved by "
                "itself: the sphere along the axis, sphere and cylinder together across it.",
                "The cylinder is what lies between the two when both are there. The axis does not move.",
                f"Written out: {self.answer(case)}.",
                "The prescriber is asked before a power is changed.",
            ),
            workings=vertex_distance_workings(case.rx, from_mm=case.from_mm, to_mm=case.to_mm),
        )

    def hints(self, case: VertexCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Write the two powers of the lens: along its axis, and across it.",
            "Move each of them by itself. What lies between them then?",
        )
