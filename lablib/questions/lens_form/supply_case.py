"""An order for one lens and the blanks there are, as the question about supply tells them."""

from dataclasses import dataclass, replace

from lablib.optics.base_curve import bhootra_front_curve_d
from lablib.optics.eye import EYES, Eye
from lablib.optics.frame import OutlineShape
from lablib.optics.layout import blank_allowance_mm, decentration_mm, minimum_blank_mm
from lablib.optics.lens import lens_with_least_thickness
from lablib.optics.prescription import Prescription
from lablib.optics.supply import STOCK_THICK_PLUS, STOCK_TOO_SMALL, STOCK_WITH_PRISM, Blanks, Supply, supply
from lablib.questions.layout.frames import draw_frame
from lablib.questions.lens_form.terms import index_for
from lablib.questions.practice import usual, usual_rows
from lablib.study.draws import Draws

_SHAPES = (OutlineShape(), OutlineShape.superellipse(3.2))
_BLANKS = usual_rows("blanks")
# The invented lab's own rule, told in the question: what surfacing must save at the centre [mm].
WORTH_MM = usual("surfacing_saving")
# The slip of taking stock, by the reason against it.
_STOCK_SLIPS = {
    STOCK_TOO_SMALL: "stock-too-small",
    STOCK_WITH_PRISM: "stock-with-prism",
    STOCK_THICK_PLUS: "stock-for-a-thick-plus",
}
# Decisions that hang on less than this are not asked [mm].
_CLEARLY_MM = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyCase:
    """An order for one lens, and what can be had.

    eye: which lens; power_d: its sphere [D]; prism_prism_d: prescribed base in, 0 for none [prism D].
    least_blank_mm: what covers its outline [mm].
    stock_mm: diameters of the stock blanks, the smallest first [mm].
    surfacing_mm: the largest blank for surfacing [mm].
    stock_centre_mm, surfaced_centre_mm: centre of a plus lens from the smallest stock blank that covers, and
        surfaced [mm]; 0 where they are not told.
    """

    eye: Eye
    power_d: float
    prism_prism_d: float
    least_blank_mm: float
    stock_mm: tuple[float, ...]
    surfacing_mm: float
    stock_centre_mm: float = 0.0
    surfaced_centre_mm: float = 0.0

    @property
    def smallest_stock_mm(self) -> float | None:
        """The smallest stock blank that covers; None where there is none."""
        return self.blanks.smallest_stock_mm(self.least_blank_mm)

    @property
    def blanks(self) -> Blanks:
        """What can be had."""
        return Blanks(stock_mm=self.stock_mm, surfacing_mm=self.surfacing_mm)

    @property
    def decided(self) -> Supply:
        """What the lab does."""
        return supply(
            self.blanks,
            least_blank_mm=self.least_blank_mm,
            prism_prism_d=self.prism_prism_d,
            saving_mm=self.saving_mm,
            worth_mm=WORTH_MM,
        )

    @property
    def saving_mm(self) -> float:
        """What surfacing saves at the centre of a plus lens, as told [mm]."""
        return round(self.stock_centre_mm - self.surfaced_centre_mm, 1)

    @property
    def why_not_stock(self) -> str | None:
        """The slip of whoever takes stock all the same; None where stock is right."""
        if self.smallest_stock_mm is None:
            return _STOCK_SLIPS[STOCK_TOO_SMALL]
        return _STOCK_SLIPS.get(self.decided.reason)


def draw_order(draws: Draws) -> SupplyCase | None:
    """Return an order, or nothing where its decision would hang on a few tenths.

    draws: to draw its numbers from.
    """
    frame, eye = draw_frame(draws, _SHAPES, a_mm=(46.0, 60.0)), draws.one_of(EYES)
    inward = decentration_mm(frame, monocular_pd_mm=draws.step(29.0, 34.0, 0.5))[0]
    least = minimum_blank_mm(frame.outline(eye), x_mm=eye.nasal_sign * inward, y_mm=0.0)
    blanks = draws.one_of(_BLANKS)
    stock, surfacing = tuple(blanks["stock_mm"]), blanks["surfacing_mm"]
    power, prism = draws.step(2.0, 6.0, 0.25), 0.0
    if draws.whole(5) == 0:
        # So weak that no blank is large enough to make the prism by decentring a stock lens.
        power, prism = draws.one_of((0.5, 0.75)), draws.step(1.5, 2.5, 0.5)
    case = SupplyCase(
        eye=eye,
        power_d=power * draws.one_of((1.0, 1.0, -1.0)),
        prism_prism_d=prism,
        least_blank_mm=round(least, 1),
        stock_mm=stock,
        surfacing_mm=surfacing,
    )
    if any(abs(case.least_blank_mm - one) < _CLEARLY_MM for one in (*stock, surfacing)):
        return None
    return _with_centres(case, (least - blank_allowance_mm()) / 2.0)


def _with_centres(case: SupplyCase, farthest_mm: float) -> SupplyCase | None:
    """The case with both centres where they decide, or nothing where they decide by a few tenths."""
    blank = case.smallest_stock_mm
    if case.power_d < 0.0 or case.prism_prism_d or blank is None:
        return case
    told = replace(
        case,
        stock_centre_mm=_centre_mm(case.power_d, blank / 2.0),
        surfaced_centre_mm=_centre_mm(case.power_d, farthest_mm),
    )
    return None if abs(told.saving_mm - WORTH_MM) < _CLEARLY_MM else told


def _centre_mm(power_d: float, away_mm: float) -> float:
    """Centre of a plus lens that has its least edge at a distance from its optical centre, as told."""
    rx = Prescription(sphere_d=power_d)
    lens = lens_with_least_thickness(
        rx,
        index=index_for(power_d),
        front_curve_d=bhootra_front_curve_d(rx),
        least_mm=usual("least_edge"),
        x_mm=[away_mm],
        y_mm=[0.0],
    )
    return round(lens.centre_thickness_mm, 1)
