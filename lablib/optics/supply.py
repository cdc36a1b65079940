"""Where a lens comes from: stock, surfaced, or neither until the frame or the blanks change; with reasons.

The optical centre is never among the choices: where it lies is decided by the wearer's eye.
"""

from dataclasses import dataclass

from lablib.errors import LabError, require_between
from lablib.optics.limits import require_in_limits

STOCK, SURFACED, OTHER_FRAME = "stock", "surfaced", "another-frame"
# Why a stock lens will not do, and why it will: stable names of reasons.
NO_BLANK_COVERS, STOCK_TOO_SMALL = "no-blank-covers", "stock-too-small"
STOCK_WITH_PRISM, STOCK_THICK_PLUS, STOCK_DOES = "stock-with-prism", "stock-thick-plus", "stock-does"


@dataclass(frozen=True, slots=True, kw_only=True)
class Blanks:
    """The blanks there are for a lens.

    stock_mm: diameters of stock lenses in the power ordered, the smallest first [mm]; empty for none.
    surfacing_mm: the largest blank for surfacing [mm].

    Raises LabError for a diameter no blank has, or diameters that do not rise.
    """

    stock_mm: tuple[float, ...]
    surfacing_mm: float

    def __post_init__(self) -> None:
        for one in (*self.stock_mm, self.surfacing_mm):
            require_in_limits("blank", one, "blank_diameter_mm")
        if list(self.stock_mm) != sorted(set(self.stock_mm)):
            raise LabError(f"stock blanks {self.stock_mm} do not rise: give the smallest first, each once")

    def smallest_stock_mm(self, least_blank_mm: float) -> float | None:
        """Return the smallest stock blank that covers [mm]; None where there is none.

        least_blank_mm: what covers the outline [mm].
        """
        return next((one for one in self.stock_mm if one >= least_blank_mm), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """A decision on supply.

    decision: "stock", "surfaced" or "another-frame".
    reason: the stable name of what decided.
    blank_mm: the stock blank to take [mm]; None for the other two.
    words: the reason for the bench.
    """

    decision: str
    reason: str
    words: str
    blank_mm: float | None = None


def supply(
    blanks: Blanks,
    *,
    least_blank_mm: float,
    prism_prism_d: float = 0.0,
    saving_mm: float = 0.0,
    worth_mm: float = 1.0,
) -> Supply:
    """Return where a lens comes from, and why.

    blanks: what there is.
    least_blank_mm: what covers the outline about the optical centre, allowance included [mm].
    prism_prism_d: prescribed prism, whatever its base [prism D].
    saving_mm: what surfacing takes off the centre of a plus lens, 0 for a minus lens [mm].
    worth_mm: how much that must be before it is paid for: the lab's own rule [mm].

    Raises LabError for a least blank or a prism that cannot be.
    Source: common practice: a stock lens where power, blank and thickness allow; surfaced for prism, thin
    plus lenses, or a stock blank that will not cover; another frame or a larger blank where neither does.
    """
    require_between("least blank", least_blank_mm, low=0.0, high=200.0, unit="mm", open_low=True)
    require_in_limits("prescribed prism", prism_prism_d, "prescribed_prism_d")
    stock = blanks.smallest_stock_mm(least_blank_mm)
    least = f"least blank {least_blank_mm:.1f} mm"
    refused = _why_not_stock(stock, least, prism_prism_d, saving_mm, worth_mm)
    if refused is None:
        words = f"{least}, and the stock blank of {stock:g} mm covers"
        return Supply(decision=STOCK, reason=STOCK_DOES, words=words, blank_mm=stock)
    reason, words = refused
    if least_blank_mm <= blanks.surfacing_mm:
        return Supply(decision=SURFACED, reason=reason, words=f"{words}: surfaced")
    return Supply(
        decision=OTHER_FRAME,
        reason=NO_BLANK_COVERS,
        words=f"{words}, and for surfacing {blanks.surfacing_mm:g} mm is the largest: hold for another frame "
        "or a larger blank",
    )


def _why_not_stock(
    stock_mm: float | None, least: str, prism_prism_d: float, saving_mm: float, worth_mm: float
) -> tuple[str, str] | None:
    """The reason why stock will not do, and its words; None where it does."""
    if stock_mm is None:
        return STOCK_TOO_SMALL, f"{least}, and no stock blank covers"
    if prism_prism_d:
        return STOCK_WITH_PRISM, f"{prism_prism_d:g} prism dioptres: a stock lens is made without"
    if saving_mm > worth_mm:
        words = f"surfaced for its outline, this plus lens is {saving_mm:.1f} mm thinner in the middle"
        return STOCK_THICK_PLUS, words
    return None
