"""A question about supply: from stock, surfaced, or neither."""

from collections.abc import Set

from lablib.optics.power import written_power
from lablib.optics.prescription import Prescription
from lablib.optics.prism import decentration_for
from lablib.optics.supply import OTHER_FRAME, STOCK, SURFACED
from lablib.questions.lens_form.supply_case import WORTH_MM, SupplyCase, draw_order
from lablib.study.draws import Draws
from lablib.study.maker import NONE, Maker
from lablib.study.picked import ChoiceAnswer, Option
from lablib.study.question import Mistake, Slip, Solution
from lablib.working import Term

_SHIFT = "shift-the-centre"
# Which option a slip leads to.
_LEADS_TO = {
    "stock-too-small": STOCK,
    "stock-with-prism": STOCK,
    "stock-for-a-thick-plus": STOCK,
    "surfaced-needlessly": SURFACED,
    "surfaced-too-small": SURFACED,
    "another-frame-needlessly": OTHER_FRAME,
    "shifts-the-centre": _SHIFT,
}


class StockOrSurfaced(Maker[SupplyCase]):
    """Whether a lens comes from stock, is surfaced, or needs another frame or a larger blank."""

    name = "stock-or-surfaced"
    lesson = "07"
    skill = "supply"
    slips = (
        Slip(
            name="shifts-the-centre",
            step="where the optical centre belongs",
            words="You moved the optical centre to suit a blank. The wearer's eye decides where it lies; "
            "moved, it puts prism before the eye that nobody prescribed.",
        ),
        Slip(
            name="stock-too-small",
            step="whether a blank covers the outline",
            words="You took a stock blank that does not cover. The largest is smaller than the least blank.",
        ),
        Slip(
            name="stock-with-prism",
            step="what a stock lens is made with",
            words="You took stock although prism is prescribed. A stock lens is not made with prism, and one "
            "so weak cannot be decentred far enough to give it.",
        ),
        Slip(
            name="stock-for-a-thick-plus",
            step="where a plus lens is thinned",
            words="You took stock for a plus lens. It is thin at the rim of its blank, and your outline is "
            "cut out of the thick middle: surfacing saves more than this lab asks for.",
        ),
        Slip(
            name="surfaced-needlessly",
            step="what surfacing would gain",
            words="You had it surfaced although a stock lens covers and has the power. Surfacing costs more, "
            "and this lab pays that only where a plus lens gets thinner by more than it asks for.",
        ),
        Slip(
            name="surfaced-too-small",
            step="whether a blank covers the outline",
            words="You had it surfaced. Surfacing makes no blank larger, and the largest is smaller than the "
            "least blank.",
        ),
        Slip(
            name="another-frame-needlessly",
            step="whether a blank covers the outline",
            words="You sent the frame away although a blank covers and the lens can be made.",
        ),
    )

    def draw(self, draws: Draws) -> SupplyCase:
        """Return an order whose decision does not hang on a few tenths."""
        return draws.until("an order for one lens", draw_order, lambda case: case is not None)

    def kind(self, case: SupplyCase) -> ChoiceAnswer:
        """Return the kind: three decisions, and one that is never right."""
        return ChoiceAnswer(
            options=(
                Option(key=STOCK, words="a stock lens"),
                Option(key=SURFACED, words="a surfaced lens"),
                Option(key=_SHIFT, words="a stock lens, its centre moved so that a smaller blank does"),
                Option(
                    key=OTHER_FRAME, words="none of these: hold the job for another frame or a larger blank"
                ),
            )
        )

    def slips_in(self, case: SupplyCase) -> tuple[Slip, ...]:
        """Return one slip for each wrong option."""
        right = self.answer(case)
        names = {case.why_not_stock, "shifts-the-centre"}
        if right == STOCK:
            names.add("surfaced-needlessly")
        names.add("surfaced-too-small" if right == OTHER_FRAME else "another-frame-needlessly")
        return tuple(slip for slip in self.slips if slip.name in names)

    def answer(self, case: SupplyCase, slips: Set[str] = NONE) -> str:
        """Return the decision, or the one a slip leads to."""
        wrong = next((key for name, key in _LEADS_TO.items() if name in slips), None)
        return case.decided.decision if wrong is None else wrong

    def pairs(self, case: SupplyCase, kind: ChoiceAnswer, known: tuple[object, ...]) -> tuple[Mistake, ...]:
        """Return nothing: every wrong option has its own slip."""
        return ()

    def prompt(self, case: SupplyCase) -> tuple[str, ...]:
        """Return what is asked."""
        stock = " or ".join(f"{one:g}" for one in case.stock_mm)
        prism = (
            f"with {case.prism_prism_d:g} prism dioptres base in" if case.prism_prism_d else "without prism"
        )
        return (
            f"An invented order: {written_power(case.power_d)} D, {case.eye} eye, {prism}. Stock lenses "
            f"of it come in {stock} mm and without prism, blanks for surfacing in up to "
            f"{case.surfacing_mm:g} mm.",
            "A stock lens costs less, and this lab takes one wherever it will do. A plus lens is surfaced "
            f"where that makes its centre thinner by more than {WORTH_MM:g} mm.",
            "What do you do?",
        )

    def given(self, case: SupplyCase) -> tuple[Term, ...]:
        """Return the least blank and, where both can be had, the centres of a plus lens."""
        least = Term(
            symbol="D_least",
            value=case.least_blank_mm,
            unit="mm",
            digits=1,
            meaning="least blank, measured on the outline, allowance included",
        )
        if not case.stock_centre_mm:
            return (least,)
        return (
            least,
            _centre("t_stock", case.stock_centre_mm, "from the smallest stock blank that covers"),
            _centre("t_surfaced", case.surfaced_centre_mm, "surfaced for this outline"),
        )

    def solution(self, case: SupplyCase) -> Solution:
        """Return the reasons in the order in which they decide."""
        return Solution(
            words=(
                _size_words(case),
                *_kind_words(case),
                "The optical centre is never moved to suit a blank: it would put prism before the eye.",
            )
        )

    def hints(self, case: SupplyCase) -> tuple[str, ...]:
        """Return hints."""
        return (
            "First compare the least blank with the blanks there are, of both kinds.",
            "Then ask what a stock lens is not made with, and where a plus lens from stock is thin.",
        )


def _centre(symbol: str, value: float, supply: str) -> Term:
    return Term(symbol=symbol, value=value, unit="mm", digits=1, meaning=f"centre thickness, {supply}")


def _size_words(case: SupplyCase) -> str:
    least, largest = f"The least blank is {case.least_blank_mm:.1f} mm", case.stock_mm[-1]
    if case.least_blank_mm > case.surfacing_mm:
        return (
            f"{least}. The largest blank of either kind is {case.surfacing_mm:g} mm, and none covers. "
            "Surfacing makes no blank larger: hold the job and ask."
        )
    if case.smallest_stock_mm is None:
        return (
            f"{least}. The largest stock blank is {largest:g} mm and does not cover; a blank for surfacing "
            "does. It is surfaced."
        )
    return f"{least}, so the stock blank of {case.smallest_stock_mm:g} mm covers."


def _kind_words(case: SupplyCase) -> tuple[str, ...]:
    """What decides between stock and surfaced, where a stock blank covers."""
    if case.smallest_stock_mm is None:
        return ()
    if case.prism_prism_d:
        away, _ = decentration_for(
            Prescription(sphere_d=case.power_d), eye=case.eye, in_prism_d=case.prism_prism_d, up_prism_d=0.0
        )
        return (
            "A stock lens is not made with prism. To borrow it from a lens so weak, the centre would have to "
            f"move {abs(away):.0f} mm, and no blank is large enough. It is surfaced.",
        )
    if case.power_d < 0.0:
        return (
            "A minus lens is thinnest in its middle, and the middle stays: how thick it is does not hang on "
            f"the rim of its blank. The rule of {WORTH_MM:g} mm is for plus lenses. It comes from stock.",
        )
    saves = f"Surfaced, the centre of this plus lens is {case.saving_mm:.1f} mm thinner"
    if case.saving_mm > WORTH_MM:
        return (f"{saves}, because a stock lens is thin only at its own rim. It is surfaced.",)
    return (f"{saves}, not more than the {WORTH_MM:g} mm asked for. It comes from stock.",)
