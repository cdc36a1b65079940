"""Questions about a plus lens: how thick its centre must be, surfaced for an outline or from stock."""

import math
from collections.abc import Set
from dataclasses import dataclass

from lablib.optics.eye import EYES
from lablib.optics.form import centre_for_edge_mm
from lablib.optics.form_workings import centre_for_edge_workings
from lablib.optics.frame import OutlineShape
from lablib.optics.layout import blank_allowance_mm, decentration_mm, minimum_blank_mm
from lablib.optics.material import material
from lablib.questions.layout.frames import draw_frame
from lablib.questions.lens_form.terms import DISPENSED_MATERIALS, surface_terms
from lablib.questions.practice import usual
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.number import NumberAnswer
from lablib.study.question import Slip, Solution
from lablib.working import Term, Working

_SHAPES = (OutlineShape(), OutlineShape.named("rectangle"))


@dataclass(frozen=True, slots=True, kw_only=True)
class PlusCase:
    """A plus lens of two spheres.

    front_d, back_d: surface powers [D]; index: of the lens.
    least_mm: how thick its thinnest place is to be [mm].
    a_mm: boxed width of the frame [mm].
    farthest_mm: from the optical centre to the farthest point of the outline [mm].
    blank_mm: diameter of the stock blank [mm].
    is_stock: whether the lens comes from stock, or is surfaced for the outline.
    """

    front_d: float
    back_d: float
    index: float
    least_mm: float
    a_mm: float
    farthest_mm: float
    blank_mm: float
    is_stock: bool


class PlusCentre(Maker[PlusCase]):
    """The centre thickness of a plus lens, surfaced or from stock."""

    name = "plus-centre"
    lesson = "07"
    skill = "centre-thickness"
    slips = (
        Slip(
            name="over-the-round-blank",
            step="where this lens is thinnest",
            words="You left the thickness at the rim of the round blank. That is the stock lens. A surfaced "
            "lens is thinned to its outline.",
        ),
        Slip(
            name="over-the-outline",
            step="where this lens is thinnest",
            words="You left the thickness at the outline. That is a surfaced lens. A stock lens is made "
            "before anybody knows the frame, and is thin at its own rim.",
        ),
        Slip(
            name="half-of-a",
            step="where this lens is thinnest",
            words="You took half of A. A plus lens is thinnest where the outline lies farthest from the "
            "optical centre.",
        ),
        Slip(
            name="sagittae-exchanged",
            step="which sagitta is added and which is taken away",
            words="You exchanged the two sagittae. On a plus lens the front is the deeper cap, and the "
            "centre must make up for it. A plus lens thinner at its centre than at its edge should alarm "
            "you.",
        ),
        Slip(
            name="edge-forgotten",
            step="the thickness that is to be left",
            words="You left out the thickness that is to remain. Your lens ends in a knife edge.",
        ),
    )

    def draw(self, draws: Draws) -> PlusCase:
        """Return a plus lens and a frame a stock blank covers."""
        frame, eye = draw_frame(draws, _SHAPES, a_mm=(46.0, 52.0)), draws.one_of(EYES)
        inward = decentration_mm(frame, monocular_pd_mm=draws.step(30.0, 34.0, 0.5))[0]
        least_blank = minimum_blank_mm(frame.outline(eye), x_mm=eye.nasal_sign * inward, y_mm=0.0)
        # Diameters blanks are made in, the next one up from what covers, or the one after it.
        step = usual("blank_step")
        fits = step * math.ceil(round(least_blank, 3) / step)
        is_stock = draws.whole(3) == 0
        return PlusCase(
            front_d=draws.step(6.0, 9.0, 0.25),
            back_d=draws.step(-4.0, -2.0, 0.25),
            index=material(draws.one_of(DISPENSED_MATERIALS)).index,
            least_mm=draws.step(0.8, 1.2 if is_stock else 2.0, 0.2),
            a_mm=frame.a_mm,
            farthest_mm=round((least_blank - blank_allowance_mm()) / 2.0, 1),
            blank_mm=fits + draws.one_of((0.0, step)),
            is_stock=is_stock,
        )

    def kind(self, case: PlusCase) -> NumberAnswer:
        """Return the kind: a thickness."""
        return NumberAnswer(unit="mm", tolerance=0.1, digits=2)

    def slips_in(self, case: PlusCase) -> tuple[Slip, ...]:
        """Return the slips of this supply."""
        others = {"over-the-round-blank", "half-of-a"} if case.is_stock else {"over-the-outline"}
        return tuple(slip for slip in self.slips if slip.name not in others)

    def answer(self, case: PlusCase, slips: Set[str] = NONE) -> float:
        """Return the centre. With the sagittae exchanged, what it has more than the edge is taken off it."""
        over_blank = "over-the-round-blank" in slips or (case.is_stock and "over-the-outline" not in slips)
        away = case.blank_mm / 2.0 if over_blank else case.farthest_mm
        if "half-of-a" in slips:
            away = case.a_mm / 2.0
        centre = centre_for_edge_mm(
            case.front_d, case.back_d, index=case.index, edge_mm=case.least_mm, away_mm=away
        )
        if "sagittae-exchanged" in slips:
            centre = 2.0 * case.least_mm - centre
        return centre - case.least_mm if "edge-forgotten" in slips else centre

    def prompt(self, case: PlusCase) -> tuple[str, ...]:
        """Return what is asked."""
        supply = (
            "It is a stock lens, finished as a round blank before anybody knew the frame; that blank has "
            "its least thickness all round its own rim."
            if case.is_stock
            else "It is surfaced for this one frame, so that the edged lens has its least thickness at the "
            "farthest point of the outline."
        )
        return (
            f"A plus lens of an invented job, both surfaces spheres. {supply}",
            "How thick is it at its centre? Use the exact sagitta. Answer in mm, to 0.1 mm.",
        )

    def given(self, case: PlusCase) -> tuple[Term, ...]:
        """Return lens, outline and blank: the one that is not needed as well."""
        return (
            *surface_terms(case.front_d, case.back_d, case.index),
            Term(symbol="e", value=case.least_mm, unit="mm", digits=1, meaning="least thickness"),
            Term(symbol="A", value=case.a_mm, unit="mm", digits=0, meaning="boxed width"),
            self._farthest(case),
            self._blank(case),
        )

    def solution(self, case: PlusCase) -> Solution:
        """Return the way, and what the other supply would have given."""
        away = self._away(case)
        other = self.answer(case, {"over-the-outline" if case.is_stock else "over-the-round-blank"})
        other_supply = (
            f"surfaced for this outline, the centre would be {other:.2f} mm"
            if case.is_stock
            else f"from a stock blank of {case.blank_mm:g} mm, the centre would be {other:.2f} mm"
        )
        return Solution(
            words=(
                "A plus lens is thinnest as far from its optical centre as it goes. Work out how deep both "
                "surfaces are there. The centre is what must be left, and what the front is deeper than the "
                "back.",
                f"With the same surfaces, {other_supply}.",
            ),
            workings=(
                away,
                *centre_for_edge_workings(
                    case.front_d,
                    case.back_d,
                    index=case.index,
                    edge_mm=case.least_mm,
                    away=away.as_term(),
                ),
            ),
        )

    def hints(self, case: PlusCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Where is this lens to have its least thickness: at the rim of a round blank, or at the outline?",
            "You need one distance from the optical centre, two radii, and the depth of both caps there.",
            "The front is the deeper cap of a plus lens, so the centre is thicker than the edge by what the "
            "two depths differ.",
        )

    def _farthest(self, case: PlusCase) -> Term:
        return Term(
            symbol="y_far",
            value=case.farthest_mm,
            unit="mm",
            digits=1,
            meaning="from the optical centre to the farthest point of the outline",
        )

    def _blank(self, case: PlusCase) -> Term:
        return Term(
            symbol="D", value=case.blank_mm, unit="mm", digits=0, meaning="diameter of the stock blank"
        )

    def _away(self, case: PlusCase) -> Working:
        """Where this lens is to be thinnest."""
        return Working(
            what="from the optical centre to the "
            + ("rim of the blank" if case.is_stock else "farthest point of the outline"),
            symbol="y",
            formula="D / 2" if case.is_stock else "y_far",
            terms=(self._blank(case) if case.is_stock else self._farthest(case),),
            value=case.blank_mm / 2.0 if case.is_stock else case.farthest_mm,
            unit="mm",
            digits=1,
        )
