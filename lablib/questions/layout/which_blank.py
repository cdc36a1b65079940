"""A question about supply: which blank a lens is cut from, once the least one has been worked out."""

from collections.abc import Mapping, Set
from dataclasses import dataclass

from lablib.optics.eye import EYES
from lablib.optics.frame import OutlineShape
from lablib.optics.layout import blank_allowance_mm, minimum_blank_rule_mm
from lablib.optics.layout_workings import minimum_blank_rule_working
from lablib.optics.supply import OTHER_FRAME, STOCK, SURFACED, Blanks, Supply, supply
from lablib.questions.layout.case import LayoutCase
from lablib.questions.layout.frames import box_terms, draw_frame
from lablib.questions.practice import usual_rows
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_SHAPES = (OutlineShape(), OutlineShape.superellipse(3.0), OutlineShape.named("panto"))
# Those with two stock blanks, so that there is a choice among them.
_BLANKS = tuple(row for row in usual_rows("blanks") if len(row["stock_mm"]) > 1)
# Decisions that hang on less than this are not asked [mm].
_CLEARLY_MM = 0.4


@dataclass(frozen=True, slots=True, kw_only=True)
class WhichCase:
    """A lens, and the blanks there are.

    layout: frame and wearer; effective_diameter_mm: of the outline, as it is told [mm].
    blanks: what can be had.
    """

    layout: LayoutCase
    effective_diameter_mm: float
    blanks: Blanks

    @property
    def least_mm(self) -> float:
        """The least blank by the rule of thumb [mm]."""
        return minimum_blank_rule_mm(self.effective_diameter_mm, self.layout.in_mm)

    @property
    def decided(self) -> Supply:
        """What is done."""
        return supply(self.blanks, least_blank_mm=self.least_mm)


def _stock(diameter_mm: float) -> str:
    return f"stock-{diameter_mm:g}"


class WhichBlank(Maker[WhichCase]):
    """Which blank a lens is cut from: a stock one, one for surfacing, or none of them."""

    name = "which-blank"
    lesson = "05"
    skill = "supply"
    slips = (
        Slip(
            name="a-size-too-small",
            step="how large the least blank is",
            words="This stock blank is smaller than the least blank. The decentration counts twice, and the "
            "rim of a blank is not used.",
        ),
        Slip(
            name="far-too-small",
            step="how large the least blank is",
            words="This stock blank is smaller than the least blank by far. It may cover the outline while "
            "it lies in the middle, but its centre has to be moved inwards.",
        ),
        Slip(
            name="surfaced-too-small",
            step="what surfacing changes",
            words="You had it surfaced. Surfacing changes powers and thickness and makes no blank larger.",
        ),
        Slip(
            name="larger-than-needed",
            step="which of the blanks that cover is taken",
            words="A smaller stock blank covers. A larger one costs more, has more to take off, and turns "
            "more easily on its block.",
        ),
        Slip(
            name="surfaced-without-need",
            step="what is taken where stock will do",
            words="You had it surfaced although a stock blank covers, and nothing else asks for surfacing.",
        ),
        Slip(
            name="frame-refused",
            step="when a frame is sent back",
            words="You refused the frame although one of these blanks covers.",
        ),
    )

    def draw(self, draws: Draws) -> WhichCase:
        """Return an order whose decision does not hang on a few tenths."""
        return draws.until("an order and its blanks", self._order, self._is_clear)

    def _order(self, draws: Draws) -> WhichCase:
        frame, eye = draw_frame(draws, _SHAPES, a_mm=(46.0, 60.0)), draws.one_of(EYES)
        pd, row = draws.step(29.0, 34.0, 0.5), draws.one_of(_BLANKS)
        return WhichCase(
            layout=LayoutCase(frame=frame, eye=eye, right_pd_mm=pd, left_pd_mm=pd, is_binocular=True),
            effective_diameter_mm=round(frame.outline(eye).effective_diameter_mm, 1),
            blanks=Blanks(stock_mm=tuple(row["stock_mm"]), surfacing_mm=row["surfacing_mm"]),
        )

    def _is_clear(self, case: WhichCase) -> bool:
        every = (*case.blanks.stock_mm, case.blanks.surfacing_mm)
        return all(abs(case.least_mm - one) >= _CLEARLY_MM for one in every)

    def kind(self, case: WhichCase) -> ChoiceAnswer:
        """Return the kind: the stock blanks, surfacing, or neither."""
        stock = [Option(key=_stock(one), words=f"a stock lens of {one:g} mm") for one in case.blanks.stock_mm]
        return ChoiceAnswer(
            options=(
                *stock,
                Option(key=SURFACED, words=f"surfaced, from a blank of {case.blanks.surfacing_mm:g} mm"),
                Option(
                    key=OTHER_FRAME, words="none of these: hold the job for another frame or a larger blank"
                ),
            )
        )

    def _leads_to(self, case: WhichCase) -> Mapping[str, str]:
        """Where each slip that fits this case leads: every option but the right one."""
        decided, (small, large) = case.decided, case.blanks.stock_mm
        found = {}
        if decided.decision == STOCK:
            found["surfaced-without-need"] = SURFACED
            other = (
                ("larger-than-needed", large) if decided.blank_mm == small else ("a-size-too-small", small)
            )
            found[other[0]] = _stock(other[1])
        else:
            found |= {"a-size-too-small": _stock(large), "far-too-small": _stock(small)}
        if decided.decision == OTHER_FRAME:
            return found | {"surfaced-too-small": SURFACED}
        return found | {"frame-refused": OTHER_FRAME}

    def slips_in(self, case: WhichCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        return tuple(slip for slip in self.slips if slip.name in self._leads_to(case))

    def answer(self, case: WhichCase, slips: Set[str] = NONE) -> str:
        """Return the decision, or the one a slip leads to."""
        wrong = next((key for name, key in self._leads_to(case).items() if name in slips), None)
        if wrong is not None:
            return wrong
        decided = case.decided
        return _stock(decided.blank_mm) if decided.decision == STOCK else decided.decision

    def pairs(self, case: WhichCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: WhichCase) -> tuple[str, ...]:
        """Return what is asked."""
        small, large = case.blanks.stock_mm
        return (
            f"The {case.layout.eye} lens of an invented order, a weak minus lens without prism. Both pupils "
            "lie equally far from the middle of the bridge, the optical centre on the horizontal midline.",
            f"Stock lenses of it come in {small:g} and {large:g} mm, blanks for surfacing in "
            f"{case.blanks.surfacing_mm:g} mm. A stock lens costs less, a smaller one is easier to cut.",
            "Work out the least blank by the rule of thumb. What do you take?",
        )

    def given(self, case: WhichCase) -> tuple[Term, ...]:
        """Return frame, wearer, effective diameter and allowance."""
        return (
            *box_terms(case.layout.frame),
            *case.layout.distances,
            Term(
                symbol="ED",
                value=case.effective_diameter_mm,
                unit="mm",
                digits=1,
                meaning="effective diameter",
            ),
            Term(
                symbol="a", value=blank_allowance_mm(), unit="mm", digits=0, meaning="allowance for the rim"
            ),
        )

    def solution(self, case: WhichCase) -> Solution:
        """Return the least blank, and what covers."""
        words = case.decided.words
        return Solution(
            words=(
                f"Worked out below: {words}.",
                "The optical centre is never moved to suit a blank: the wearer's eye decides where it lies.",
            ),
            workings=(
                *case.layout.workings,
                minimum_blank_rule_working(case.effective_diameter_mm, case.layout.in_mm),
            ),
        )

    def hints(self, case: WhichCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "Decentration first. Then the effective diameter, twice the decentration, and the allowance.",
            "Compare the least blank with the blanks there are, the smallest first.",
        )
