"""Questions about the edge of a minus lens, worked by hand from its two surfaces."""

from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES, Eye
from lablib.optics.form import edge_of_surfaces_mm
from lablib.optics.form_workings import edge_of_surfaces_workings
from lablib.optics.frame import Frame, OutlineShape
from lablib.optics.layout import decentration_mm, sides_of_box_mm
from lablib.optics.layout_workings import decentration_workings
from lablib.optics.surface import curvature_per_mm, sagitta_approximate_mm
from lablib.questions.layout.frames import box_terms, draw_frame
from lablib.questions.lens_form.terms import index_for, surface_terms
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Drawing, Slip, Solution
from lablib.working import Term, Working


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeCase:
    """A minus lens in a frame, its centre on the horizontal midline.

    frame: the frame; eye: which lens; pd_mm: monocular distance [mm].
    front_d, back_d: surface powers [D]; index: of the lens.
    centre_mm: centre thickness [mm].
    is_temporal: whether the temporal edge is asked, or the nasal one.
    """

    frame: Frame
    eye: Eye
    pd_mm: float
    front_d: float
    back_d: float
    index: float
    centre_mm: float
    is_temporal: bool

    @property
    def in_mm(self) -> float:
        """Decentration in [mm]."""
        return decentration_mm(self.frame, monocular_pd_mm=self.pd_mm)[0]

    @property
    def side(self) -> str:
        """The edge asked for, in words."""
        return "temporal" if self.is_temporal else "nasal"

    def away_mm(self, *, is_temporal: bool, in_mm: float) -> float:
        """Return how far an edge on the midline lies from the optical centre [mm].

        is_temporal: which edge; in_mm: decentration in [mm].
        """
        temporal, nasal = sides_of_box_mm(self.frame, in_mm=in_mm)
        return temporal if is_temporal else nasal


class TemporalEdge(Maker[EdgeCase]):
    """How thick the temporal or the nasal edge of a minus lens is."""

    name = "temporal-edge"
    lesson = "07"
    skill = "edge-thickness"
    slips = (
        Slip(
            name="decentration-left-out",
            step="the distance from the optical centre to the edge",
            words="You took half of A. Thickness is counted from the optical centre, and that does not lie "
            "in the middle of the box.",
        ),
        Slip(
            name="other-side",
            step="the distance from the optical centre to the edge",
            words="You worked out the edge on the other side. Where the centre lies in, the temporal edge is "
            "farther from it and the nasal edge nearer; where it lies out, the other way round.",
        ),
        Slip(
            name="sagittae-exchanged",
            step="which sagitta is added and which is taken away",
            words="You exchanged the two sagittae. The back adds its depth to the edge, the front takes its "
            "depth away. A minus lens thinner at its edge than at its centre should alarm you.",
        ),
        Slip(
            name="short-formula",
            step="the formula for the sagitta",
            words="You used the short formula for both sagittae. It takes each cap for a parabola and comes "
            "out too shallow, most of all for the deeper back.",
        ),
    )

    def draw(self, draws: Draws) -> EdgeCase:
        """Return a minus lens in an index its power is dispensed in."""
        power = draws.step(-7.0, -2.5, 0.25)
        front = draws.step(2.0, 4.5, 0.25)
        return EdgeCase(
            frame=draw_frame(draws, (OutlineShape(),), a_mm=(46.0, 54.0)),
            eye=draws.one_of(EYES),
            pd_mm=draws.step(29.0, 34.0, 0.5),
            front_d=front,
            back_d=power - front,
            index=index_for(power),
            centre_mm=draws.step(1.4, 2.2, 0.1),
            is_temporal=draws.whole(3) > 0,
        )

    def kind(self, case: EdgeCase) -> NumberAnswer:
        """Return the kind: a thickness."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=2)

    def slips_in(self, case: EdgeCase) -> tuple[Slip, ...]:
        """Return all, the short formula only where its edge is clearly another."""
        short = self.kind(case).apart(self.answer(case), self.answer(case, {"short-formula"}))
        return self.slips if short else self.slips[:-1]

    def answer(self, case: EdgeCase, slips: Set[str] = NONE) -> float:
        """Return the edge. With the sagittae exchanged, what it gains over the centre is lost instead."""
        away = case.away_mm(
            is_temporal=case.is_temporal != ("other-side" in slips),
            in_mm=0.0 if "decentration-left-out" in slips else case.in_mm,
        )
        if "short-formula" in slips:
            gain = sagitta_approximate_mm(-case.back_d - case.front_d, case.index, away)
            edge = case.centre_mm + gain
        else:
            edge = edge_of_surfaces_mm(
                case.front_d,
                case.back_d,
                index=case.index,
                centre_thickness_mm=case.centre_mm,
                away_mm=away,
            )
        return 2.0 * case.centre_mm - edge if "sagittae-exchanged" in slips else edge

    def prompt(self, case: EdgeCase) -> tuple[str, ...]:
        """Return what is asked."""
        return (
            f"The {case.eye} lens of an invented job, both surfaces spheres. Its optical centre lies before "
            "the pupil, on the horizontal midline.",
            f"How thick is its {case.side} edge on that midline? Use the exact sagitta. Answer in mm, to "
            "0.1 mm.",
        )

    def given(self, case: EdgeCase) -> tuple[Term, ...]:
        """Return frame, wearer and lens."""
        return (
            *box_terms(case.frame),
            Term(symbol="PD", value=case.pd_mm, unit="mm", digits=1, meaning="monocular distance"),
            *surface_terms(case.front_d, case.back_d, case.index),
            Term(symbol="t", value=case.centre_mm, unit="mm", digits=1, meaning="centre thickness"),
        )

    def solution(self, case: EdgeCase) -> Solution:
        """Return the way: how far, how deep, what is left between."""
        away = self._away(case)
        return Solution(
            words=(
                "First how far the edge lies from the optical centre, then how deep each surface is there. "
                "The edge is the centre, and what the back is deeper than the front.",
            ),
            workings=(
                *decentration_workings(case.frame, monocular_pd_mm=case.pd_mm, height_mm=None),
                away,
                *edge_of_surfaces_workings(
                    case.front_d,
                    case.back_d,
                    index=case.index,
                    centre_thickness_mm=case.centre_mm,
                    away=away.as_term(),
                    name=f"{case.side} edge",
                ),
            ),
        )

    def hints(self, case: EdgeCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "How far is it from the optical centre to this edge? Make a sketch with the boxed centre, the "
            "optical centre and the nose.",
            "Each surface is a cap of a sphere. Work out both radii, then both depths at that distance.",
            "Edge = centre thickness + sagitta of the back - sagitta of the front.",
        )

    def drawing(self, case: EdgeCase) -> Drawing:
        """Return the lens cut along the midline, as an observer facing the wearer has left and right."""
        temporal, nasal = sides_of_box_mm(case.frame, in_mm=case.in_mm)
        # The right eye's temporal side lies to the observer's left.
        sides = ((temporal, "temporal"), (nasal, "nasal"))
        (left, left_words), (right, right_words) = sides if case.eye is Eye.RIGHT else sides[::-1]
        return Drawing(
            name="section",
            values={
                "half_left_mm": left,
                "half_right_mm": right,
                "front_radius_mm": 1.0 / curvature_per_mm(case.front_d, case.index),
                "back_radius_mm": 1.0 / curvature_per_mm(-case.back_d, case.index),
                "centre_mm": case.centre_mm,
                "left_words": left_words,
                "right_words": right_words,
                "side": "left" if (case.eye is Eye.RIGHT) == case.is_temporal else "right",
            },
        )

    def _away(self, case: EdgeCase) -> Working:
        return Working(
            what=f"from the optical centre to the {case.side} edge",
            symbol="y",
            formula="A / 2 + d_in" if case.is_temporal else "A / 2 - d_in",
            terms=(
                box_terms(case.frame)[0],
                Term(symbol="d_in", value=case.in_mm, unit="mm", meaning="decentration in"),
            ),
            value=case.away_mm(is_temporal=case.is_temporal, in_mm=case.in_mm),
            unit="mm",
        )
